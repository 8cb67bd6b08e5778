//! The page Limits: every limit and clearance with its default, its reason and a mark where it was changed.

use egui::{Frame, Margin, RichText, ScrollArea, Ui};

use super::command::Command;
use super::edit::Edit;
use super::explain_panel::field_lines;
use super::field::{NumberField, number_ui, step_of};
use super::rows::salt_of;
use super::view::View;
use crate::document::{FieldRef, LimitKey};

/// Room for the label, the mark of a change and the default, points.
const LABEL_WIDTH: f32 = 310.0;
const CHANGED_WIDTH: f32 = 64.0;
const DEFAULT_WIDTH: f32 = 130.0;

/// The page over all the room there is.
pub fn limits_ui(ui: &mut Ui, view: &mut View<'_>) {
    let changed = LimitKey::ALL
        .iter()
        .filter(|key| view.design.limits.is_changed(**key))
        .count();
    Frame::new().inner_margin(Margin::symmetric(12, 6)).show(ui, |ui| {
        ui.label(RichText::new("Limits and clearances").heading());
        ui.label(RichText::new(format!(
            "Common practice, no source, unless the reason names one. {changed} of {} differ from their default.",
            LimitKey::ALL.len()
        )).weak());
        let back = ui.add_enabled(changed > 0, egui::Button::new("All back to their defaults"));
        if back
            .on_hover_text("one step of undo takes it back")
            .clicked()
        {
            view.wish(Command::Edit(Edit::LimitsDefault));
        }
        ScrollArea::vertical().id_salt("limits").auto_shrink([false, false]).show(ui, |ui| {
            Frame::new().inner_margin(Margin { right: 12, ..Margin::ZERO }).show(ui, |ui| {
                for key in LimitKey::ALL {
                    limit_ui(ui, view, *key);
                }
            });
        });
    });
}

fn limit_ui(ui: &mut Ui, view: &mut View<'_>, key: LimitKey) {
    let field = FieldRef::Limit(key);
    let number = NumberField {
        label: key.label(),
        salt: salt_of(field),
        field: Some(field),
        value: Some(view.design.limits.get(key)),
        unit: key.unit(),
        label_width: Some(LABEL_WIDTH),
        hover: field_lines(field).join("\n"),
        step: step_of(key.unit()),
    };
    let changed = view.design.limits.is_changed(key);
    number_ui(
        ui,
        view,
        &number,
        |value| Edit::Limit(key, value),
        |ui, view| {
            let (mark, word) = if changed { ("*", "changed") } else { ("", "") };
            ui.allocate_ui(egui::vec2(CHANGED_WIDTH, 18.0), |ui| {
                ui.set_min_width(CHANGED_WIDTH);
                ui.label(
                    RichText::new(format!("{mark} {word}"))
                        .strong()
                        .color(view.palette.accent),
                );
            });
            ui.allocate_ui(egui::vec2(DEFAULT_WIDTH, 18.0), |ui| {
                ui.set_min_width(DEFAULT_WIDTH);
                default_ui(ui, view, key, changed);
            });
            ui.add(egui::Label::new(RichText::new(key.why()).weak()).wrap());
        },
    );
}

/// The default, as a way back where the limit was changed.
fn default_ui(ui: &mut Ui, view: &mut View<'_>, key: LimitKey, changed: bool) {
    let default = key.unit().show(key.default_value());
    if changed {
        let back = ui.small_button(format!("back to {default}"));
        if back
            .accessible_name(format!("{} back to its default", key.label()))
            .clicked()
        {
            view.wish(Command::Edit(Edit::LimitDefault(key)));
        }
    } else {
        ui.label(RichText::new(format!("default {default}")).weak());
    }
}
