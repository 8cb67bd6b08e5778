//! The page Limits: every limit and clearance with its default, its reason and a mark where it was changed.

use egui::{Frame, Margin, RichText, ScrollArea, Ui};

use super::command::Command;
use super::edit::Edit;
use super::field::{NumberField, number_ui, step_of};
use super::rows::salt_of;
use super::view::View;
use crate::document::{FieldRef, LimitKey};

/// Width of the part of a row that holds label and number, points.
const FIELD_WIDTH: f32 = 470.0;

/// The page over all the room there is.
pub fn limits_ui(ui: &mut Ui, view: &mut View<'_>) {
    let changed = LimitKey::ALL.iter().filter(|key| view.design.limits.is_changed(**key)).count();
    Frame::new().inner_margin(Margin::symmetric(12, 6)).show(ui, |ui| {
        ui.label(RichText::new("Limits and clearances").heading());
        ui.label(RichText::new(format!(
            "Common practice, no source, unless the reason names one. {changed} of {} differ from their default.",
            LimitKey::ALL.len()
        )).weak());
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
    let default = key.unit().show(key.default_value());
    let number = NumberField {
        label: key.label(),
        salt: salt_of(field),
        field: Some(field),
        value: Some(view.design.limits.get(key)),
        unit: key.unit(),
        hover: format!("default {default}: {}", key.why()),
        step: step_of(key.unit()),
    };
    let changed = view.design.limits.is_changed(key);
    ui.horizontal_top(|ui| {
        ui.allocate_ui(egui::vec2(FIELD_WIDTH, 20.0), |ui| {
            ui.vertical(|ui| {
                ui.set_width(FIELD_WIDTH);
                number_ui(ui, view, &number, |value| Edit::Limit(key, value), |ui, view| {
                    let mark = if changed { "*" } else { " " };
                    ui.label(RichText::new(mark).strong().color(view.palette.accent));
                });
            });
        });
        if changed {
            let back = ui.small_button(format!("back to {default}"));
            if back.accessible_name(format!("{} back to its default", key.label())).clicked() {
                view.wish(Command::Edit(Edit::LimitDefault(key)));
            }
            ui.label(RichText::new("changed").color(view.palette.accent));
        } else {
            ui.label(RichText::new(format!("default {default}")).weak());
        }
        ui.add(egui::Label::new(RichText::new(key.why()).weak()).wrap());
    });
}
