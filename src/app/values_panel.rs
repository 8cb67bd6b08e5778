//! Three columns of values in the order of the optical axis: lens, ring, body.

use egui::{Frame, Margin, Rect, RichText, ScrollArea, Ui, UiBuilder, pos2};

use super::body_column::body_ui;
use super::lens_column::lens_ui;
use super::ring_column::ring_ui;
use super::view::View;

/// Wider than this a column only moves its numbers away from their names, points.
const WIDEST: f32 = 460.0;

/// What draws the values of one column.
type ColumnUi = fn(&mut Ui, &mut View<'_>);

/// The three columns over all the room there is.
pub fn values_ui(ui: &mut Ui, view: &mut View<'_>) {
    let room = ui.available_rect_before_wrap();
    let width = room.width() / 3.0;
    let columns: [(&str, ColumnUi); 3] = [("Lens", lens_ui), ("Ring", ring_ui), ("Body", body_ui)];
    let mut left = room.left();
    for (title, add) in columns {
        let rect = Rect::from_min_max(pos2(left, room.top()), pos2(left + width, room.bottom()));
        left += width;
        if title != "Lens" {
            let line = egui::Stroke::new(1.0, view.palette.border);
            ui.painter().vline(rect.left(), rect.y_range(), line);
        }
        ui.scope_builder(
            UiBuilder::new()
                .id_salt(title)
                .max_rect(rect.shrink2(egui::vec2(5.0, 2.0))),
            |ui| {
                column_ui(ui, view, title, add);
            },
        );
    }
    ui.advance_cursor_after_rect(room);
}

fn column_ui(ui: &mut Ui, view: &mut View<'_>, title: &str, add: ColumnUi) {
    ui.label(RichText::new(title).heading());
    ScrollArea::vertical()
        .id_salt(title)
        .auto_shrink([false, false])
        .show(ui, |ui| {
            // Room for the scroll bar, so that it covers no button.
            Frame::new()
                .inner_margin(Margin {
                    right: 10,
                    bottom: 8,
                    ..Margin::ZERO
                })
                .show(ui, |ui| {
                    ui.set_max_width(ui.available_width().min(WIDEST));
                    add(ui, view);
                });
        });
}
