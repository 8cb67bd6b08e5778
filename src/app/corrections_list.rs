//! The corrections that were made, the newest first, each with what was found before and after.

use egui::{Id, Label, RichText, Ui};

use super::edit::Edit;
use super::field::refusal_ui;
use super::inspection_edit::InspectionEdit;
use super::view::View;
use crate::inspection::{Followed, Inspection, history};

/// The list over the width there is.
pub fn corrections_ui(ui: &mut Ui, view: &mut View<'_>, found: &Inspection) {
    ui.label(RichText::new("Corrections made").strong());
    let (design, workshop) = (view.design, view.workshop);
    if design.corrections.is_empty() {
        ui.label(RichText::new("none yet").small().weak());
        return;
    }
    let all = history(design, workshop, found.method, found.seat_height_mm);
    let salt = Id::unique("corrections made");
    for (number, followed) in (1..=all.len()).rev().zip(all.iter().rev()) {
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new(head(number, followed)).strong());
            if number == all.len() {
                let name = "forget the last correction";
                let button = ui.small_button("×").accessible_name(name);
                let hover = "it was not done: takes it out, and what was read after it counts as read before";
                if button.on_hover_text(hover).clicked() {
                    view.wish_from(salt, Edit::Inspection(InspectionEdit::ForgetLast));
                }
            }
        });
        let errors = followed.errors_text();
        for words in [followed.correction.note.as_str(), errors.as_str()] {
            if !words.is_empty() {
                ui.add(Label::new(RichText::new(words).small()).wrap());
            }
        }
    }
    refusal_ui(ui, view, salt);
}

fn head(number: usize, followed: &Followed<'_>) -> String {
    let date = followed.correction.date.as_str();
    if date.is_empty() {
        format!("{number}: {}", followed.done_text())
    } else {
        format!("{number}: {}, {date}", followed.done_text())
    }
}
