//! The head of a column of the page Compare: name, what it is, how it stands, and what can be done with it.

use egui::{Button, RichText, Ui};

use super::command::Command;
use super::compared::{Column, Who};
use super::edit::Edit;
use super::field::{refusal_ui, typed_ui};
use super::severity_sign::sign_ui;
use super::variant_edit::VariantEdit;
use super::view::{Typed, View};
use crate::checks::Severity;
use crate::compare::Subject;

/// Height of a head, points.
pub const HEAD: f32 = 98.0;

/// The head over all the room there is.
pub fn head_ui(ui: &mut Ui, view: &mut View<'_>, column: &Column, subject: &Subject<'_>) {
    ui.spacing_mut().item_spacing.y = 3.0;
    match (&column.who, column.variant) {
        (Who::Variant(_), Some(place)) => variant_ui(ui, view, place),
        (Who::File(number), _) => {
            let path = column.path.as_ref().map(|path| path.display().to_string());
            name_ui(ui, &column.name, path.as_deref().unwrap_or_default());
            small_ui(ui, "from a file, read only");
            if ui
                .button("Take out")
                .accessible_name(format!("Take out {}", column.name))
                .on_hover_text(Command::TakeOut(*number).explains())
                .clicked()
            {
                view.wish(Command::TakeOut(*number));
            }
        }
        (Who::Open | Who::Variant(_), _) => {
            name_ui(ui, &column.name, &column.name);
            small_ui(ui, "the open design");
        }
    }
    verdict_ui(ui, view, subject);
}

fn name_ui(ui: &mut Ui, name: &str, hover: &str) {
    ui.add(egui::Label::new(RichText::new(name).strong()).truncate())
        .on_hover_text(hover);
}

fn small_ui(ui: &mut Ui, words: &str) {
    ui.add(egui::Label::new(RichText::new(words).small().weak()).truncate());
}

/// How many findings of each severity: sign and number, the word under the pointer and where there is room.
fn verdict_ui(ui: &mut Ui, view: &View<'_>, subject: &Subject<'_>) {
    let roomy = ui.available_width() > 230.0;
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 3.0;
        for severity in [Severity::Clash, Severity::Caution, Severity::Note] {
            let count = subject.evaluation.count(severity);
            let words = if roomy {
                format!("{count} {}  ", severity.word())
            } else {
                format!("{count} ")
            };
            sign_ui(ui, view.palette, severity);
            let colour = if count == 0 {
                view.palette.faint_ink
            } else {
                view.palette.severity(severity)
            };
            ui.label(RichText::new(words).small().color(colour))
                .on_hover_text(format!("{count} {}", severity.word()));
        }
    });
}

fn variant_ui(ui: &mut Ui, view: &mut View<'_>, place: usize) {
    let Some(variant) = view.design.variants.get(place) else {
        return;
    };
    let number = place + 1;
    let width = ui.available_width() - 10.0;
    let id = egui::Id::unique(("variant name", place));
    let (response, typed) = typed_ui(ui, view, id, &variant.name, width, "name");
    response
        .accessible_name(format!("Name of variant {number}"))
        .on_hover_text(format!("variant {number}: {}", variant.name));
    if let Typed::Finished(name) = typed {
        view.wish_from(id, Edit::Variant(VariantEdit::Rename(place, name)));
    }
    refusal_ui(ui, view, id);
    let id = egui::Id::unique(("variant note", place));
    let (response, typed) = typed_ui(ui, view, id, &variant.note, width, "why it is kept");
    response
        .accessible_name(format!("Note of variant {number}"))
        .on_hover_text(&variant.note);
    if let Typed::Finished(note) = typed {
        view.wish_from(id, Edit::Variant(VariantEdit::Note(place, note)));
    }
    refusal_ui(ui, view, id);
    buttons_ui(ui, view, place);
}

fn buttons_ui(ui: &mut Ui, view: &mut View<'_>, place: usize) {
    let number = place + 1;
    ui.horizontal(|ui| {
        let actions = [
            (
                "Swap in",
                VariantEdit::SwapIn(place),
                "work on with this ring; the ring at work is kept as a variant where none holds it yet",
            ),
            (
                "Delete",
                VariantEdit::Delete(place),
                "forget this variant; undo brings it back",
            ),
        ];
        for (words, edit, hover) in actions {
            let button = ui
                .add(Button::new(words).small())
                .accessible_name(format!("{words} variant {number}"));
            if button.on_hover_text(hover).clicked() {
                view.wish(Command::Edit(Edit::Variant(edit)));
            }
        }
    });
}
