//! Readings of one size of the finished ring, their instrument, and what they prove.

use egui::{ComboBox, Id, Label, RichText, Ui};

use super::edit::Edit;
use super::field::{refusal_ui, shown};
use super::inspection_edit::InspectionEdit;
use super::readings_editor::box_ui;
use super::severity_sign::sign_ui;
use super::view::View;
use super::working_grid::working_grid_ui;
use crate::checks::Severity;
use crate::document::{Reading, RingKey, SizeOf};
use crate::inspection::{
    InspectedSize, Inspection, Judgement, RULE, Unjudged, WorkingRow, advice, fine, instrument,
    suits, working_rows,
};
use crate::mount::{Unit, show_number};
use crate::tolerance::Conformity;

/// The seat height.
pub const SEAT: SizeOf = SizeOf::Ring(RingKey::SeatHeight);
/// Numbers of places round the ring to choose from.
const PLACES: [usize; 4] = [5, 6, 8, 12];
/// The number that is proposed.
const USUAL_PLACES: usize = 6;
/// Width of the list of instruments, points.
const INSTRUMENT_WIDTH: f32 = 180.0;

/// The editor; it keeps what is chosen before the first reading.
#[derive(Default)]
pub struct FinishedReadings {
    chosen: Option<(SizeOf, String)>,
    places: Option<usize>,
}

/// The severity whose sign and colour a verdict has.
#[must_use]
pub const fn severity_of(verdict: Conformity) -> Severity {
    match verdict {
        Conformity::Inside => Severity::Ok,
        Conformity::Outside => Severity::Clash,
        Conformity::NotProvable => Severity::Caution,
    }
}

impl FinishedReadings {
    /// The editor of one size.
    pub fn readings_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        found: &Inspection,
        one: &InspectedSize,
    ) {
        let size = &one.size;
        let unit = size.unit;
        ui.label(RichText::new(&size.label).heading());
        let limits = format!(
            "{} to {}, nominal {}",
            unit.show(size.limits.low_mm),
            unit.show(size.limits.high_mm),
            unit.show(size.nominal)
        );
        ui.label(RichText::new(limits).strong());
        ui.add(Label::new(RichText::new(size.how).small()).wrap());
        if size.of == SEAT && view.design.shims_mm() > 0.0 {
            let shims = format!(
                "With the shim of {} on the seat.",
                Unit::Mm.show(view.design.shims_mm())
            );
            ui.label(RichText::new(shims).small().color(view.palette.caution));
        }
        ui.separator();
        let now = self.present(view, one);
        self.instrument_ui(ui, view, one, &now);
        if size.of == SEAT {
            self.places_ui(ui, view, one, &now);
        }
        rows_ui(ui, view, one, &now);
        ui.separator();
        verdict_ui(ui, view, one);
        if size.of == SEAT {
            tilt_ui(ui, found);
        }
        former_ui(ui, view, one);
    }

    /// The present readings, or none with what is chosen for them.
    fn present(&self, view: &View<'_>, one: &InspectedSize) -> Reading {
        let present = one.place.and_then(|place| view.design.readings.get(place));
        if let Some(present) = present {
            return present.clone();
        }
        let of = one.size.of;
        let chosen = self.chosen.as_ref().filter(|(size, _)| *size == of);
        let first = || {
            view.workshop
                .instruments
                .first()
                .map(|one| one.name.clone())
        };
        let instrument = chosen
            .map(|(_, name)| name.clone())
            .or_else(|| one.size.instrument.clone())
            .or_else(first)
            .unwrap_or_default();
        let places = if of == SEAT {
            self.places.unwrap_or(USUAL_PLACES)
        } else {
            0
        };
        Reading {
            dimension: of,
            values: Vec::new(),
            instrument,
            places,
            after_corrections: view.design.corrections.len(),
        }
    }

    fn instrument_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        one: &InspectedSize,
        now: &Reading,
    ) {
        let mut picked = None;
        ui.horizontal(|ui| {
            let label = ui.label("Instrument");
            let combo = ComboBox::from_id_salt(id_of(one).with("instrument"))
                .selected_text(&now.instrument)
                .width(INSTRUMENT_WIDTH)
                .truncate();
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
        if let Ok(in_hand) = instrument(view.workshop, now) {
            let words = format!(
                "permissible error ±{}, step {}",
                fine(in_hand.permissible_error_mm, one.size.unit),
                fine(in_hand.step_mm, one.size.unit)
            );
            ui.label(RichText::new(words).small().weak());
            if !suits(in_hand, one.size.grip, one.size.nominal.abs()) {
                let words = "By its name this instrument does not take hold of this size.";
                ui.label(RichText::new(words).small().color(view.palette.caution));
            }
        }
        if let Some(name) = picked {
            if now.values.is_empty() {
                self.chosen = Some((one.size.of, name));
            } else {
                let with = Reading {
                    instrument: name,
                    ..now.clone()
                };
                wish(view, one, with);
            }
        }
    }

    fn places_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, one: &InspectedSize, now: &Reading) {
        let mut picked = None;
        ui.horizontal(|ui| {
            let label = ui.label("Places round");
            let words = |places: usize| {
                if places == 0 {
                    "as many as readings".to_owned()
                } else {
                    places.to_string()
                }
            };
            let shown = ComboBox::from_id_salt(id_of(one).with("places"))
                .selected_text(words(now.places))
                .width(60.0)
                .show_ui(ui, |ui| {
                    for places in PLACES {
                        if ui
                            .selectable_label(places == now.places, words(places))
                            .clicked()
                        {
                            picked = Some(places);
                        }
                    }
                });
            shown.response.labelled_by(label.id).on_hover_text(
                "readings go round and round through so many places, the first at 12 o'clock",
            );
        });
        if let Some(places) = picked {
            self.places = Some(places);
            if !now.values.is_empty() {
                let with = Reading {
                    places,
                    ..now.clone()
                };
                wish(view, one, with);
            }
        }
    }
}

fn id_of(one: &InspectedSize) -> Id {
    Id::unique(("inspected", one.size.of))
}

fn wish(view: &mut View<'_>, one: &InspectedSize, reading: Reading) {
    let edit = InspectionEdit::Readings(one.place, reading);
    view.wish_from(id_of(one), Edit::Inspection(edit));
}

/// A row for each reading and one for the next.
fn rows_ui(ui: &mut Ui, view: &mut View<'_>, one: &InspectedSize, now: &Reading) {
    let unit = one.size.unit;
    let id = id_of(one);
    for (place, reading) in now.values.iter().enumerate() {
        let row = id.with(place);
        ui.horizontal(|ui| {
            let name = name_of(now, place);
            if let Some(value) = box_ui(ui, view, row, &name, &shown(*reading, unit), unit) {
                let mut with = now.clone();
                if let Some(changed) = with.values.get_mut(place) {
                    *changed = value;
                }
                wish(view, one, with);
            }
            let remove = format!("remove reading {}", place + 1);
            let button = ui.small_button("×").accessible_name(&remove);
            if button.on_hover_text(remove).clicked() {
                let mut with = now.clone();
                with.values.remove(place);
                wish(view, one, with);
            }
        });
        refusal_ui(ui, view, row);
    }
    let more = id.with("new");
    ui.horizontal(|ui| {
        let name = format!("next {}", name_of(now, now.values.len()));
        if let Some(value) = box_ui(ui, view, more, &name, "", unit) {
            let mut with = now.clone();
            with.values.push(value);
            wish(view, one, with);
            // The next one is typed without a reach for the mouse.
            ui.memory_mut(|memory| memory.request_focus(more));
        }
    });
    refusal_ui(ui, view, more);
    refusal_ui(ui, view, id);
}

/// The name of a reading; of the seat height it says where round the ring.
fn name_of(now: &Reading, place: usize) -> String {
    let number = place + 1;
    if now.places == 0 {
        return format!("reading {number}");
    }
    let share = |count: usize| (0..count).map(|_| 1.0).sum::<f64>();
    let angle = 360.0 * share(place % now.places) / share(now.places);
    let words = show_number(angle, 1);
    format!("reading {number} at {}°", words.trim_end_matches(".0"))
}

fn verdict_ui(ui: &mut Ui, view: &View<'_>, one: &InspectedSize) {
    let judged = match &one.judged {
        Ok(judged) => judged,
        Err(Unjudged::NoReadings) => {
            let words = "No readings yet. Type the first one and press Enter; five or more show what the spread is.";
            ui.add(Label::new(words).wrap());
            return;
        }
        Err(reason @ (Unjudged::Readings(_) | Unjudged::NoInstrument(_))) => {
            ui.add(Label::new(RichText::new(reason.to_string()).color(view.palette.note)).wrap());
            return;
        }
    };
    let severity = severity_of(judged.verdict);
    ui.horizontal_wrapped(|ui| {
        sign_ui(ui, view.palette, severity);
        let words = RichText::new(told(one, judged)).strong();
        ui.label(words.color(view.palette.severity(severity)));
    });
    if let Some(advice) = advice(&one.size, judged, one.better.as_deref()) {
        ui.add(Label::new(advice).wrap());
    }
    ui.add(Label::new(RichText::new(RULE).small().weak()).wrap());
    working_grid_ui(ui, &working_rows(&one.size, judged));
}

/// The mean, how well it is known, and the verdict.
fn told(one: &InspectedSize, judged: &Judgement) -> String {
    format!(
        "{} ± {}: {}",
        one.size.unit.show(judged.mean),
        fine(judged.doubt.expanded, one.size.unit),
        judged.word()
    )
}

/// How the seat leans.
fn tilt_ui(ui: &mut Ui, found: &Inspection) {
    ui.separator();
    ui.label(RichText::new("Parallelism of seat and flange").strong());
    let Some(tilt) = found.register.as_ref().and_then(|register| register.tilt) else {
        let words = "It follows from five or more readings at three or more places round the ring.";
        ui.add(Label::new(RichText::new(words).small()).wrap());
        return;
    };
    let rows = [
        WorkingRow {
            name: "parallel within".to_owned(),
            value: format!(
                "{} ± {}",
                fine(tilt.parallelism_mm, Unit::Mm),
                fine(tilt.expanded_mm, Unit::Mm)
            ),
            why: "highest less lowest of one wave in a turn, fitted by least squares; 95 %, from the spread about it"
                .to_owned(),
        },
        WorkingRow {
            name: "highest at".to_owned(),
            value: Unit::Deg.show(tilt.highest_deg),
            why: "clock angle seen from the lens side".to_owned(),
        },
    ];
    working_grid_ui(ui, &rows);
}

/// Readings that a correction has made history.
fn former_ui(ui: &mut Ui, view: &View<'_>, one: &InspectedSize) {
    let former: Vec<&Reading> = view
        .design
        .readings
        .iter()
        .enumerate()
        .filter(|(place, reading)| reading.dimension == one.size.of && Some(*place) != one.place)
        .map(|(_, reading)| reading)
        .collect();
    if former.is_empty() {
        return;
    }
    ui.separator();
    ui.label(RichText::new("Before, kept as history").strong());
    for reading in former {
        let values: Vec<String> = reading
            .values
            .iter()
            .map(|value| show_number(*value, one.size.unit.decimals()))
            .collect();
        let words = format!(
            "before correction {}: {} ({})",
            reading.after_corrections + 1,
            values.join("  "),
            reading.instrument
        );
        ui.add(Label::new(RichText::new(words).small()).wrap());
    }
}
