//! The menus and the page bar, all from the list of commands.

use egui::{Button, KeyboardShortcut, RichText, Ui};

use super::command::{Command, menus};
use super::page::Page;
use super::palette::Palette;

/// What the menus must know to grey out what cannot be done.
#[derive(Clone, Copy, Debug)]
pub struct Possible {
    /// Whether there is a step back.
    pub undo: bool,
    /// Whether there is a step forward.
    pub redo: bool,
    /// Whether there is a whole ring to draw.
    pub export: bool,
    /// The page in sight.
    pub page: Page,
}

impl Possible {
    const fn can(self, command: &Command) -> bool {
        (self.undo || !matches!(command, Command::Undo))
            && (self.redo || !matches!(command, Command::Redo))
            && (self.export
                || !matches!(
                    command,
                    Command::Export | Command::CopyDrawing | Command::Print(_)
                ))
    }
}

/// Menus on the left, then the pages, then undo and redo.
pub fn menu_bar_ui(ui: &mut Ui, possible: Possible, palette: Palette, commands: &mut Vec<Command>) {
    ui.horizontal(|ui| {
        for menu in menus() {
            ui.menu_button(menu.title, |ui| {
                for entry in &menu.commands {
                    match entry {
                        Some(command) => entry_ui(ui, possible, command, commands),
                        None => {
                            ui.separator();
                        }
                    }
                }
            });
        }
        ui.separator();
        for page in Page::ALL {
            let words = RichText::new(page.title()).strong();
            let tab = ui
                .selectable_label(possible.page == page, words)
                .on_hover_text(page.explains());
            if tab.clicked() {
                commands.push(Command::Show(page));
            }
        }
        ui.separator();
        for command in [Command::Undo, Command::Redo, Command::Save] {
            button_ui(ui, possible, &command, commands);
        }
    });
    let line = egui::Stroke::new(1.0, palette.border);
    ui.painter()
        .hline(ui.max_rect().x_range(), ui.min_rect().bottom() + 2.0, line);
}

fn entry_ui(ui: &mut Ui, possible: Possible, command: &Command, commands: &mut Vec<Command>) {
    let mut button = Button::new(command.label());
    if let Some(key) = command.keys().first() {
        button = button.shortcut_text(key_words(ui, *key));
    }
    let response = ui
        .add_enabled(possible.can(command), button)
        .on_hover_text(command.explains());
    if response.clicked() {
        commands.push(command.clone());
        ui.close();
    }
}

/// The words of a key, with the sign on the key where it has one.
fn key_words(ui: &Ui, shortcut: KeyboardShortcut) -> String {
    let key = shortcut.logical_key;
    let words = ui.ctx().format_shortcut(&shortcut);
    words.strip_suffix(key.name()).map_or_else(
        || words.clone(),
        |held| format!("{held}{}", key.symbol_or_name()),
    )
}

/// A button for a command, its hover text with the key.
pub fn button_ui(ui: &mut Ui, possible: Possible, command: &Command, commands: &mut Vec<Command>) {
    let key = command
        .keys()
        .first()
        .map(|key| format!(" ({})", key_words(ui, *key)))
        .unwrap_or_default();
    let response = ui.add_enabled(possible.can(command), Button::new(command.label()));
    if response
        .on_hover_text(format!("{}{key}", command.explains()))
        .clicked()
    {
        commands.push(command.clone());
    }
}
