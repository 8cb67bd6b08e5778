//! The table of focus numbers: each with unit, meaning and, opened, its working.

use std::collections::BTreeSet;

use egui::{Id, RichText, Ui};

use super::field::{refusal_ui, typed_ui};
use super::rows::below_ui;
use super::view::{Typed, View};
use super::working_panel::{link_ui, working_ui};
use crate::document::parse_quantity;
use crate::evaluate::{FocusNumber, focus_numbers};
use crate::mount::{LensField, Unit, show_number};

/// The mark that is looked at where none was typed, in focal lengths: about as near as most lenses focus.
const USUAL_NEAREST: f64 = 10.0;
/// The mark where the focal length is unknown, mm.
const SOME_MARK_MM: f64 = 500.0;
const LABEL_WIDTH: f32 = 280.0;
const VALUE_WIDTH: f32 = 110.0;

/// The table with its one input.
#[derive(Default)]
pub struct FocusTable {
    mark_mm: Option<f64>,
    open: BTreeSet<&'static str>,
}

impl FocusTable {
    /// The table.
    pub fn focus_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        ui.label(RichText::new("Numbers of focus").heading());
        self.mark_ui(ui, view);
        let mark = self.mark_in_force(view);
        for number in focus_numbers(view.design, view.evaluation, mark) {
            self.row_ui(ui, view, &number);
        }
    }

    fn mark_in_force(&self, view: &View<'_>) -> f64 {
        let focal = view.design.lens.field(LensField::FocalLength).number();
        let usual = focal.map_or(SOME_MARK_MM, |focal| focal * USUAL_NEAREST);
        self.mark_mm.unwrap_or(usual)
    }

    /// The mark of the distance scale that is looked at; it belongs to the page and not to the design.
    fn mark_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        let id = Id::unique("mark of the distance scale");
        let holds = show_number(self.mark_in_force(view), 0);
        ui.horizontal(|ui| {
            let label = ui.label("Mark of the distance scale");
            let (response, typed) = typed_ui(ui, view, id, &holds, 70.0, "500");
            response
                .labelled_by(label.id)
                .on_hover_text("such as the nearest one engraved, counted from the image");
            ui.label(RichText::new("mm from the image, such as the nearest one engraved").weak());
            if let Typed::Finished(text) = typed {
                match parse_quantity(&text, Unit::Mm) {
                    Ok(mark) if mark > 0.0 => {
                        self.mark_mm = Some(mark);
                        view.typing.forget_refusal(id);
                    }
                    Ok(_) => view.typing.refuse(id, "type a distance over 0".to_owned()),
                    Err(error) => view.typing.refuse(id, error.to_string()),
                }
            }
        });
        refusal_ui(ui, view, id);
    }

    fn row_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, number: &FocusNumber) {
        let open = self.open.contains(number.label);
        ui.horizontal_wrapped(|ui| {
            let button = egui::Button::new(RichText::new("f(x)").small()).selected(open);
            let button = ui
                .add(button)
                .accessible_name(format!("Working of {}", number.label));
            if button.on_hover_text("the working").clicked() && !self.open.remove(number.label) {
                self.open.insert(number.label);
            }
            cell_ui(ui, LABEL_WIDTH, RichText::new(number.label));
            match &number.working {
                Ok(working) => {
                    let value = number
                        .reads
                        .map_or_else(|| shown(working.unit, working.term.value()), str::to_owned);
                    cell_ui(ui, VALUE_WIDTH, RichText::new(value).strong());
                }
                Err(lacks) => {
                    cell_ui(
                        ui,
                        VALUE_WIDTH,
                        RichText::new(number.reads.unwrap_or("unknown")),
                    );
                    for field in lacks {
                        link_ui(ui, view, *field, &format!("measure {}", field.long_label()));
                    }
                }
            }
            ui.label(RichText::new(&number.says).small().weak());
        });
        if let Ok(working) = &number.working
            && open
        {
            below_ui(ui, |ui| working_ui(ui, view, working));
        }
    }
}

/// Long distances are read in metres.
fn shown(unit: Unit, value: f64) -> String {
    const LONG_MM: f64 = 1000.0;
    if unit == Unit::Mm && value.abs() >= LONG_MM {
        return format!("{} m", show_number(value / 1000.0, 2));
    }
    if unit == Unit::Mm && value.abs() < 0.01 && value != 0.0 {
        return format!("{} µm", show_number(value * 1000.0, 1));
    }
    unit.show(value)
}

fn cell_ui(ui: &mut Ui, width: f32, words: RichText) {
    ui.allocate_ui_with_layout(
        egui::vec2(width, 18.0),
        egui::Layout::left_to_right(egui::Align::Center),
        |ui| {
            ui.set_min_width(width);
            ui.label(words);
        },
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_length_is_read_in_a_unit_of_its_size() {
        assert_eq!(shown(Unit::Mm, 67_338.0), "67.34 m");
        assert_eq!(shown(Unit::Mm, 0.0044), "4.4 µm");
        assert_eq!(shown(Unit::Mm, 0.0577), "0.058 mm");
        assert_eq!(shown(Unit::Mm, 0.0), "0.00 mm");
    }
}
