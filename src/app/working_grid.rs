//! The rows of a working: name, value, how it comes about.

use egui::{Label, RichText, Ui, vec2};

use crate::inspection::WorkingRow;

/// Width of the column of names, points.
const NAMES: f32 = 110.0;

/// The rows over the width there is.
pub fn working_grid_ui(ui: &mut Ui, rows: &[WorkingRow]) {
    for row in rows {
        ui.horizontal_top(|ui| {
            ui.spacing_mut().item_spacing = vec2(8.0, 1.0);
            ui.vertical(|ui| {
                ui.set_width(NAMES);
                ui.add(Label::new(RichText::new(&row.name).small()).wrap());
            });
            ui.vertical(|ui| {
                ui.label(RichText::new(&row.value).small().strong());
                ui.add(Label::new(RichText::new(&row.why).small().weak()).wrap());
            });
        });
    }
}
