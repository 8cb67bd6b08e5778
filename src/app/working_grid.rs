//! The rows of a working: name, value, how it comes about.

use egui::{Grid, Id, Label, RichText, Ui};

use crate::inspection::WorkingRow;

/// Width of the column of names, points.
const NAMES: f32 = 110.0;

/// The rows over the width there is; `salt` sets them apart from others.
pub fn working_grid_ui(ui: &mut Ui, salt: &str, rows: &[WorkingRow]) {
    Grid::new(Id::unique(("working", salt)))
        .num_columns(2)
        .spacing([8.0, 3.0])
        .show(ui, |ui| {
            for row in rows {
                ui.scope(|ui| {
                    ui.set_width(NAMES);
                    ui.add(Label::new(RichText::new(&row.name).small()).wrap());
                });
                ui.vertical(|ui| {
                    ui.label(RichText::new(&row.value).small().strong());
                    ui.add(Label::new(RichText::new(&row.why).small().weak()).wrap());
                });
                ui.end_row();
            }
        });
}
