//! Readings of the numbers of a list on the page Measure: ears, barrel steps, free depth, obstacles.

use egui::{Button, ComboBox, Id, Label, RichText, Ui, vec2};

use super::edit::Edit;
use super::readings_editor::{gauge, measured_ui, rows_ui, usual};
use super::row_edit::{row_numbers, row_readings};
use super::view::View;
use super::working_panel::link_ui;
use crate::document::FieldRef;
use crate::mount::{RowList, RowNumber, RowReadings};
use crate::tolerance::Measurement;

/// The editor; it keeps the number that is asked about and the instrument that is chosen before its first reading.
#[derive(Default)]
pub struct RowReadingsEditor {
    asked: Option<RowNumber>,
    chosen: Option<(RowNumber, String)>,
}

/// The list behind a field; none for what is no list of numbers.
#[must_use]
pub const fn list_of(field: FieldRef) -> Option<RowList> {
    match field {
        FieldRef::BarrelAtInfinity => Some(RowList::BarrelAtInfinity),
        FieldRef::BarrelAtCloseFocus => Some(RowList::BarrelAtCloseFocus),
        FieldRef::Ears => Some(RowList::Ears),
        FieldRef::FreeDepth => Some(RowList::FreeDepth),
        FieldRef::Obstacles => Some(RowList::Obstacles),
        FieldRef::Lens(_)
        | FieldRef::Body(_)
        | FieldRef::Ring(_)
        | FieldRef::Limit(_)
        | FieldRef::LensThread
        | FieldRef::ApertureRing
        | FieldRef::StopDownPin
        | FieldRef::TwistHand
        | FieldRef::Springs
        | FieldRef::Stop
        | FieldRef::LockPin
        | FieldRef::Lugs
        | FieldRef::SeatKind
        | FieldRef::PinHandling
        | FieldRef::Trim
        | FieldRef::Finish
        | FieldRef::ThreadHold
        | FieldRef::Cutter
        | FieldRef::Material
        | FieldRef::Clocking
        | FieldRef::Pieces => None,
    }
}

impl RowReadingsEditor {
    /// The numbers of the list, and the readings of the one that is asked about.
    pub fn list_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, field: FieldRef, list: RowList) {
        let numbers = row_numbers(view.design, list);
        if numbers.is_empty() {
            let words = format!(
                "No {} is entered yet. Enter the rows as well as they are known, then read each number here as often as you like.",
                list.one()
            );
            ui.add(Label::new(words).wrap());
            link_ui(ui, view, field, &format!("go to {}", field.long_label()));
            return;
        }
        let asked = self
            .asked
            .filter(|asked| numbers.iter().any(|(at, _)| at == asked));
        let first = numbers.first().map(|(at, _)| *at);
        for (at, value) in &numbers {
            self.number_ui(ui, view, (*at, *value), asked.or(first) == Some(*at));
        }
        link_ui(ui, view, field, "add, remove or type rows");
        ui.separator();
        if let Some(at) = asked.or(first) {
            self.readings_ui(ui, view, at);
        }
    }

    fn number_ui(
        &mut self,
        ui: &mut Ui,
        view: &View<'_>,
        (at, value): (RowNumber, f64),
        is_asked: bool,
    ) {
        let count = row_readings(view.design, at).map_or(0, |one| one.values.len());
        let read = match count {
            0 => "not read".to_owned(),
            1 => "1 reading".to_owned(),
            several => format!("{several} readings"),
        };
        let number = format!("{}   {read}", at.column.unit().show(value));
        let button = Button::selectable(is_asked, RichText::new(at.label()).small())
            .right_text(RichText::new(number).small())
            .truncate()
            .min_size(vec2(ui.available_width(), 18.0));
        let response = ui
            .add(button)
            .accessible_name(format!("{}, {read}", at.label()));
        if response.clicked() {
            self.asked = Some(at);
        }
    }

    fn readings_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, at: RowNumber) {
        let unit = at.column.unit();
        ui.label(RichText::new(at.label()).strong());
        let held = row_readings(view.design, at).cloned();
        let chosen = self.chosen.as_ref().filter(|(of, _)| *of == at);
        let instrument = held
            .as_ref()
            .map(|one| one.instrument.clone())
            .or_else(|| chosen.map(|(_, name)| name.clone()))
            .unwrap_or_else(|| usual(view.workshop, unit));
        let now = held.unwrap_or_else(|| RowReadings {
            list: at.list,
            row: at.row,
            column: at.column,
            values: Vec::new(),
            instrument,
        });
        let id = id_of(at);
        self.instrument_ui(ui, view, at, &now);
        if let Some(values) = rows_ui(ui, view, id, &now.values, unit) {
            let changed = RowReadings {
                values,
                ..now.clone()
            };
            view.wish_from(id, Edit::RowReadings(changed));
        }
        let gauge = gauge(view.workshop, unit, &now.instrument);
        if let Some(measured) = Measurement::of(&now.values, gauge) {
            measured_ui(ui, view, &measured, gauge, unit);
        } else {
            let words = "No readings yet: the number was typed, or came with the mount. The mean of the readings takes \
                         its place.";
            ui.add(Label::new(RichText::new(words).small()).wrap());
        }
    }

    fn instrument_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        at: RowNumber,
        now: &RowReadings,
    ) {
        let mut picked = None;
        ui.horizontal(|ui| {
            let label = ui.label("Instrument");
            let combo = ComboBox::from_id_salt(id_of(at).with("instrument"))
                .selected_text(&now.instrument)
                .width(190.0);
            let shown = combo.show_ui(ui, |ui| {
                for instrument in &view.workshop.instruments {
                    let name = &instrument.name;
                    if ui.selectable_label(*name == now.instrument, name).clicked() {
                        picked = Some(name.clone());
                    }
                }
            });
            shown.response.labelled_by(label.id);
        });
        let Some(instrument) = picked else { return };
        if now.values.is_empty() {
            self.chosen = Some((at, instrument));
        } else {
            let changed = RowReadings {
                instrument,
                ..now.clone()
            };
            view.wish_from(id_of(at), Edit::RowReadings(changed));
        }
    }
}

fn id_of(at: RowNumber) -> Id {
    Id::unique(("row readings", at))
}
