//! What stands in place of the drawing while the ring is not whole: why, and what to measure.

use egui::{RichText, ScrollArea, Ui};

use super::command::Command;
use super::view::{Lit, View};
use crate::document::FieldRef;

/// Whether there is anything to say instead of a drawing.
#[must_use]
pub fn ring_is_whole(view: &View<'_>) -> bool {
    view.evaluation.derivation.ring.is_some() && view.evaluation.parts.is_some()
}

/// The reasons and the list of values to measure.
pub fn missing_ui(ui: &mut Ui, view: &mut View<'_>) {
    let evaluation = view.evaluation;
    ScrollArea::vertical().id_salt("missing").auto_shrink([false, false]).show(ui, |ui| {
        egui::Frame::new().inner_margin(14.0).show(ui, |ui| {
            ui.label(RichText::new("There is no whole ring yet").heading());
            if let Some(refusal) = &evaluation.derivation.refusal {
                reason_ui(ui, view, &refusal.reason);
                for field in &refusal.fields {
                    jump_ui(ui, view, *field);
                }
            }
            if let Some(fault) = &evaluation.shape_fault {
                reason_ui(ui, view, fault);
            }
            let missing = &evaluation.derivation.missing;
            if missing.is_empty() {
                return;
            }
            ui.label(format!(
                "{} must be known before every dimension can be worked out. Measure, then type the value into its column; nothing is invented.",
                counted(missing.len())
            ));
            if is_blank(view) {
                start_ui(ui, view);
            }
            ui.add_space(6.0);
            for field in missing {
                ui.horizontal_wrapped(|ui| {
                    jump_ui(ui, view, *field);
                    ui.label(RichText::new(field.how()).weak());
                });
            }
        });
    });
}

fn counted(count: usize) -> String {
    if count == 1 {
        "1 value".to_owned()
    } else {
        format!("{count} values")
    }
}

fn is_blank(view: &View<'_>) -> bool {
    view.design.lens == crate::mount::Lens::default()
        && view.design.body == crate::mount::Body::default()
}

fn start_ui(ui: &mut Ui, view: &mut View<'_>) {
    ui.add_space(6.0);
    ui.horizontal(|ui| {
        if ui
            .button("Choose lens and body…")
            .on_hover_text(Command::New.explains())
            .clicked()
        {
            view.wish(Command::New);
        }
        if ui
            .button("Open a design…")
            .on_hover_text(Command::Open.explains())
            .clicked()
        {
            view.wish(Command::Open);
        }
    });
}

fn reason_ui(ui: &mut Ui, view: &View<'_>, reason: &str) {
    ui.label(RichText::new(reason).color(view.palette.clash));
}

fn jump_ui(ui: &mut Ui, view: &mut View<'_>, field: FieldRef) {
    let link = ui.link(field.long_label()).on_hover_text("go to its field");
    if link.hovered() {
        view.selection.point_at(Lit::Field(field));
    }
    if link.clicked() {
        view.go_to(field);
    }
}
