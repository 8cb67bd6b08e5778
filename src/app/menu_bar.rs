//! The menus and the page bar, all from the list of commands.

use std::path::Path;

use egui::{Button, RichText, TextStyle, TextWrapMode, Ui, WidgetText};

use super::command::{Command, menus};
use super::keys_list::key_words;
use super::look::Look;
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
    /// The look in force.
    pub look: Look,
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

/// The menus, the pages, and undo, redo and save: in one row where there is room, else the pages in a row of their own.
pub(super) fn menu_bar_ui(
    ui: &mut Ui,
    possible: Possible,
    recent: &[RecentFile],
    palette: Palette,
    commands: &mut Vec<Command>,
) {
    let one_row = width_of_all(ui) <= ui.available_width();
    ui.horizontal(|ui| {
        menus_ui(ui, possible, recent, commands);
        ui.separator();
        if one_row {
            pages_ui(ui, possible, commands);
            ui.separator();
        }
        for command in BUTTONS {
            button_ui(ui, possible, &command, commands);
        }
    });
    if !one_row {
        ui.horizontal_wrapped(|ui| pages_ui(ui, possible, commands));
    }
    let line = egui::Stroke::new(1.0, palette.border);
    ui.painter()
        .hline(ui.max_rect().x_range(), ui.min_rect().bottom() + 2.0, line);
}

/// The commands with a button beside the pages.
const BUTTONS: [Command; 3] = [Command::Undo, Command::Redo, Command::Save];

/// The width of the whole bar in one row, points.
fn width_of_all(ui: &Ui) -> f32 {
    let (between, padding) = (
        ui.spacing().item_spacing.x,
        2.0 * ui.spacing().button_padding.x,
    );
    let words = menus()
        .into_iter()
        .map(|menu| menu.title)
        .chain(Page::ALL.into_iter().map(Page::title))
        .chain(BUTTONS.iter().map(Command::label));
    let two_lines = 2.0 * (between + 6.0);
    words
        .map(|words| width_of(ui, words) + padding + between)
        .sum::<f32>()
        + two_lines
}

fn width_of(ui: &Ui, words: &str) -> f32 {
    let galley = WidgetText::from(words).into_galley(
        ui,
        Some(TextWrapMode::Extend),
        f32::INFINITY,
        TextStyle::Button,
    );
    galley.size().x
}

fn menus_ui(ui: &mut Ui, possible: Possible, recent: &[RecentFile], commands: &mut Vec<Command>) {
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
}

fn pages_ui(ui: &mut Ui, possible: Possible, commands: &mut Vec<Command>) {
    for page in Page::ALL {
        let words = RichText::new(page.title()).strong();
        let key = keys_in_brackets(ui, &Command::Show(page));
        let tab = ui
            .selectable_label(possible.page == page, words)
            .on_hover_text(format!("{}{key}", page.explains()));
        if tab.clicked() {
            commands.push(Command::Show(page));
        }
    }
}

fn keys_in_brackets(ui: &Ui, command: &Command) -> String {
    command
        .keys()
        .first()
        .map(|key| format!(" ({})", key_words(ui.ctx(), *key)))
        .unwrap_or_default()
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
    let in_force = matches!(command, Command::Look(choice) if possible.look.has(*choice));
    let mut button = Button::new(command.label()).selected(in_force);
    if let Some(key) = command.keys().first() {
        button = button.shortcut_text(key_words(ui.ctx(), *key));
    }
    let response = ui
        .add_enabled(possible.can(command), button)
        .on_hover_text(command.explains());
    if response.clicked() {
        commands.push(command.clone());
        ui.close();
    }
}

/// A button for a command, its hover text with the key.
pub fn button_ui(ui: &mut Ui, possible: Possible, command: &Command, commands: &mut Vec<Command>) {
    let key = keys_in_brackets(ui, command);
    let response = ui.add_enabled(possible.can(command), Button::new(command.label()));
    if response
        .on_hover_text(format!("{}{key}", command.explains()))
        .clicked()
    {
        commands.push(command.clone());
    }
}
