//! The dimensions of the sheet as a list: shown or hidden, moved, added, given back their places.

use egui::{Id, RichText, Ui};

use super::command::Command;
use super::edit::Edit;
use super::field::{NumberField, number_ui};
use super::group::group_ui;
use super::sheet_edit::SheetEdit;
use super::text_field::choice_ui;
use super::view::View;
use crate::document::{DimensionId, Face};
use crate::drawing::ring_faces::Faces;
use crate::mount::Unit;

/// The list with what is chosen in it.
#[derive(Debug, Default)]
pub struct DimensionList {
    /// The dimension whose place is shown, or that was clicked in the drawing.
    pub chosen: Option<DimensionId>,
    /// Whether the list is to be brought to it.
    pub jump: bool,
    from: Option<Face>,
}

impl DimensionList {
    /// The list of the dimensions on the sheet and of those that are hidden.
    pub fn list_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, on_sheet: &[DimensionId]) {
        let hidden = view.design.sheet.overrides.iter().filter(|own| own.hidden);
        let mut all: Vec<DimensionId> = hidden
            .map(|own| own.dimension)
            .chain(on_sheet.iter().copied())
            .collect();
        all.sort_unstable();
        all.dedup();
        group_ui(ui, view, "Dimensions", true, &[], |ui, view| {
            ui.label(
                RichText::new("Drag a text in the drawing to move it.")
                    .small()
                    .weak(),
            );
            for dimension in all {
                self.row_ui(ui, view, dimension);
            }
            self.add_ui(ui, view);
            let changed = !view.design.sheet.overrides.is_empty();
            let restore = egui::Button::new("All back to their places");
            if ui.add_enabled(changed, restore).clicked() {
                wish(view, SheetEdit::RestoreAll);
            }
        });
    }

    fn row_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, dimension: DimensionId) {
        let words = dimension.words();
        let sheet = &view.design.sheet;
        let (hidden, moved) = (sheet.hides(dimension), sheet.moved_mm(dimension));
        ui.horizontal(|ui| {
            let mut shown = !hidden;
            let hover = "whether it is on the sheet";
            let box_shown = ui.checkbox(&mut shown, "").on_hover_text(hover);
            box_shown.widget_info(|| {
                egui::WidgetInfo::selected(
                    egui::Role::CheckBox,
                    true,
                    shown,
                    format!("Show {words}"),
                )
            });
            if box_shown.changed() {
                wish(view, SheetEdit::Hide(dimension, !shown));
            }
            let mark = if moved == (0.0, 0.0) { "" } else { ", moved" };
            let label =
                ui.selectable_label(self.chosen == Some(dimension), format!("{words}{mark}"));
            if self.jump && self.chosen == Some(dimension) {
                label.scroll_to_me(Some(egui::Align::Center));
                self.jump = false;
            }
            if label.clicked() {
                self.chosen = (self.chosen != Some(dimension)).then_some(dimension);
            }
        });
        if self.chosen == Some(dimension) && !hidden {
            place_ui(ui, view, dimension, moved);
        }
    }

    /// A distance between two faces, for information.
    fn add_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        let Some(ring) = &view.evaluation.derivation.ring else {
            return;
        };
        let faces = Faces::of(view.design, view.evaluation, ring);
        ui.add_space(4.0);
        let named = |face: &Face| (Some(*face), face.words().to_owned());
        let choices: Vec<(Option<Face>, String)> = faces.all().iter().map(named).collect();
        let hover = "adds a distance in brackets, for information";
        let salt = Id::unique("added from");
        if let Some(from) = choice_ui(ui, salt, false, "Add from", &self.from, &choices, hover) {
            self.from = from;
        }
        let Some(from) = self.from else { return };
        let choices: Vec<(Option<Face>, String)> =
            faces.open_distances(from).iter().map(named).collect();
        let salt = Id::unique("added to");
        if let Some(Some(to)) = choice_ui(ui, salt, false, "to", &None, &choices, hover)
            && let Some(dimension) = DimensionId::between(from, to)
        {
            wish(view, SheetEdit::Add(dimension));
            self.chosen = Some(dimension);
            self.from = None;
        }
    }
}

/// How far the chosen dimension was moved, and the way back.
fn place_ui(ui: &mut Ui, view: &mut View<'_>, dimension: DimensionId, moved: (f64, f64)) {
    let number = |label, value| NumberField {
        label,
        salt: Id::unique(("moved", dimension, label)),
        field: None,
        value: Some(value),
        unit: Unit::Mm,
        label_width: None,
        hover: "how far it was moved from the place that the program gives it, mm on paper"
            .to_owned(),
        step: 0.5,
    };
    ui.indent(("place", dimension), |ui| {
        let (right, up) = moved;
        let by_right = |value| Edit::Sheet(SheetEdit::Move(dimension, (value, up)));
        number_ui(ui, view, &number("moved right", right), by_right, |_, _| {});
        let by_up = |value| Edit::Sheet(SheetEdit::Move(dimension, (right, value)));
        number_ui(ui, view, &number("moved up", up), by_up, |_, _| {});
        let words = if dimension.is_added() {
            "Take it out"
        } else {
            "Back to its place"
        };
        if ui.small_button(words).clicked() {
            wish(view, SheetEdit::Restore(dimension));
        }
    });
}

fn wish(view: &mut View<'_>, edit: SheetEdit) {
    view.wish(Command::Edit(Edit::Sheet(edit)));
}
