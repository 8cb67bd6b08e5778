//! Fields for words, and for one of a few choices, with the same habits as the field for a number.

use egui::{ComboBox, Id, RichText, Ui};

use super::edit::Edit;
use super::field::{refusal_ui, typed_ui};
use super::view::{Typed, View};

/// A row of words: label in front, the box takes what is left.
pub fn text_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    label: &str,
    holds: &str,
    hint: &'static str,
) -> Option<String> {
    let id = salt.with("box");
    let typed = ui
        .horizontal(|ui| {
            let label = ui.label(label);
            let width = (ui.available_width() - 8.0).max(60.0);
            let (response, typed) = typed_ui(ui, view, id, holds, width, hint);
            response.labelled_by(label.id);
            typed
        })
        .inner;
    refusal_ui(ui, view, id);
    match typed {
        Typed::Finished(text) => Some(text),
        Typed::Nothing => None,
    }
}

/// Lines of words in a box over the whole width: Enter begins a new line, leaving the box finishes them.
pub fn lines_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    label: &str,
    holds: &str,
) -> Option<String> {
    let id = salt.with("box");
    let label = ui.label(label);
    let mut text = view.typing.text_for(id, holds);
    let edit = egui::TextEdit::multiline(&mut text)
        .id(id)
        .desired_rows(3)
        .desired_width(ui.available_width() - 8.0);
    let response = ui.add(edit).labelled_by(label.id);
    let mut typed = Typed::Nothing;
    if response.has_focus() {
        view.typing.keep(id, text, holds);
    } else {
        let given_up = ui.input(|input| input.key_pressed(egui::Key::Escape));
        typed = view.typing.finish(id, given_up);
    }
    refusal_ui(ui, view, id);
    match typed {
        Typed::Finished(text) => Some(text),
        Typed::Nothing => None,
    }
}

/// The same where the words can be refused: `read` turns them into an edit or says why not.
pub fn read_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    label: &str,
    holds: &str,
    hint: &'static str,
    read: impl FnOnce(&str) -> Result<Edit, String>,
) {
    if let Some(text) = text_ui(ui, view, salt, label, holds, hint) {
        let id = salt.with("box");
        match read(&text) {
            Ok(edit) => view.wish_from(id, edit),
            Err(why) => view.typing.refuse(id, why),
        }
    }
}

/// One of a few choices; the chosen one when it was changed. A jump brings it into sight and into the keyboard's
/// reach.
pub fn choice_ui<T: PartialEq + Clone>(
    ui: &mut Ui,
    salt: Id,
    jump: bool,
    label: &str,
    now: &T,
    choices: &[(T, String)],
    hover: &str,
) -> Option<T> {
    let shown = choices
        .iter()
        .find(|(choice, _)| choice == now)
        .map_or("", |(_, words)| words.as_str());
    let mut chosen = None;
    ui.horizontal(|ui| {
        let label = ui.label(label);
        let width = (ui.available_width() - 8.0).max(60.0);
        let combo = ComboBox::from_id_salt(salt)
            .selected_text(RichText::new(shown))
            .width(width)
            .truncate();
        let shown = combo.show_ui(ui, |ui| {
            for (choice, words) in choices {
                if ui.selectable_label(choice == now, words.as_str()).clicked() && choice != now {
                    chosen = Some(choice.clone());
                }
            }
        });
        if jump {
            shown.response.request_focus();
            shown.response.scroll_to_me(Some(egui::Align::Center));
        }
        shown.response.labelled_by(label.id).on_hover_text(hover);
    });
    chosen
}
