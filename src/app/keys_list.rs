//! The list of all keys: those of the commands, and those that fields and drawings hear while they have the keyboard.

use egui::{Context, Grid, KeyboardShortcut, RichText, Ui};

use super::command::Command;
use super::menus::menus;

/// A key of the list and what it does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyRow {
    /// The key in words, as it is printed on the keyboard.
    pub keys: String,
    /// What it does.
    pub does: String,
}

/// Keys that no command has: heard by the widget that has the keyboard.
const OF_WIDGETS: [(&str, &[(&str, &str)]); 3] = [
    (
        "In a field",
        &[
            ("Enter", "take the number"),
            ("Escape", "give up and keep the value before"),
            ("Up, Down", "a step more or less"),
            ("Shift+Up, Shift+Down", "ten steps more or less"),
        ],
    ),
    ("On a drawing", super::hand_keys::ROWS),
    (
        "Everywhere",
        &[
            (
                "Tab, Shift+Tab",
                "go to the next field, or to the one before",
            ),
            ("Space or Enter", "press the button that has the keyboard"),
            ("Escape", "close what lies in front of the page"),
        ],
    ),
];

/// Every key, in groups with a title.
#[must_use]
pub fn all_keys(context: &Context) -> Vec<(&'static str, Vec<KeyRow>)> {
    let mut groups: Vec<(&'static str, Vec<KeyRow>)> = menus()
        .into_iter()
        .map(|menu| {
            let commands = menu.commands.into_iter().flatten();
            let rows = commands.filter_map(|command| row_of(context, &command));
            (menu.title, rows.collect())
        })
        .collect();
    groups.extend(OF_WIDGETS.iter().map(|(title, rows)| {
        let rows = rows.iter().map(|(keys, does)| KeyRow {
            keys: (*keys).to_owned(),
            does: (*does).to_owned(),
        });
        (*title, rows.collect())
    }));
    groups.retain(|(_, rows)| !rows.is_empty());
    groups
}

fn row_of(context: &Context, command: &Command) -> Option<KeyRow> {
    let keys: Vec<String> = command
        .keys()
        .iter()
        .map(|key| key_words(context, *key))
        .collect();
    (!keys.is_empty()).then(|| KeyRow {
        keys: keys.join(" or "),
        does: format!("{}: {}", command.label(), command.explains()),
    })
}

/// The words of a key, with the sign on the key where it has one.
#[must_use]
pub fn key_words(context: &Context, shortcut: KeyboardShortcut) -> String {
    let key = shortcut.logical_key;
    let words = context.format_shortcut(&shortcut);
    words.strip_suffix(key.name()).map_or_else(
        || words.clone(),
        |held| format!("{held}{}", key.symbol_or_name()),
    )
}

/// The list.
pub fn keys_ui(ui: &mut Ui) {
    for (title, rows) in all_keys(ui.ctx()) {
        ui.add_space(4.0);
        ui.label(RichText::new(title).strong());
        let does_width = (ui.available_width() - 170.0).max(120.0);
        Grid::new(("keys", title))
            .num_columns(2)
            .min_col_width(150.0)
            .striped(true)
            .show(ui, |ui| {
                for row in rows {
                    ui.label(RichText::new(row.keys).strong());
                    ui.scope(|ui| {
                        ui.set_max_width(does_width);
                        ui.add(egui::Label::new(row.does).wrap());
                    });
                    ui.end_row();
                }
            });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::command::keyed;

    #[test]
    fn every_key_of_a_command_is_in_the_list() {
        let context = Context::default();
        let listed: Vec<KeyRow> = all_keys(&context)
            .into_iter()
            .flat_map(|(_, rows)| rows)
            .collect();
        for (key, command) in keyed() {
            let words = key_words(&context, key);
            assert!(
                listed
                    .iter()
                    .any(|row| row.keys.contains(&words) && row.does.contains(command.explains())),
                "{words} of {command:?}"
            );
        }
    }
}
