//! The menus and the page bar, all from the list of commands.

use std::path::Path;

use egui::{Button, KeyboardShortcut, RichText, Ui};

use super::command::{Command, menus};
use super::page::Page;
use super::palette::Palette;
use super::path_words::path_shown;
use super::recent::RecentFile;

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
pub(super) fn menu_bar_ui(
    ui: &mut Ui,
    possible: Possible,
    recent: &[RecentFile],
    palette: Palette,
    commands: &mut Vec<Command>,
) {
    // The pages are many: in a narrow window they take a second line.
    ui.horizontal_wrapped(|ui| {
        for menu in menus() {
            ui.menu_button(menu.title, |ui| {
                for entry in &menu.commands {
                    match entry {
                        Some(command) => {
                            entry_ui(ui, possible, command, commands);
                            if *command == Command::Open {
                                recent_ui(ui, possible, recent, commands);
                            }
                        }
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

/// The files that were open last, as a menu in the menu; those that are not there say so.
fn recent_ui(ui: &mut Ui, possible: Possible, recent: &[RecentFile], commands: &mut Vec<Command>) {
    ui.menu_button("Recent files", |ui| {
        if recent.is_empty() {
            ui.label("none yet");
            return;
        }
        for file in recent {
            let path = path_shown(&file.path);
            let name = file.path.file_name().map(Path::new).map(path_shown);
            let name = name.as_ref().unwrap_or(&path);
            let missing = if file.missing { " (not there)" } else { "" };
            let shown = ui.button(format!("{name}{missing}")).on_hover_text(&path);
            if shown.clicked() {
                commands.push(Command::OpenRecent(file.path.clone()));
                ui.close();
            }
        }
        ui.separator();
        entry_ui(ui, possible, &Command::ClearRecent, commands);
    });
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
