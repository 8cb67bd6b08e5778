//! Readings of one value, the instrument, and what they come to: mean, spread, uncertainty.

use egui::{ComboBox, Grid, Id, RichText, Ui};

use super::edit::Edit;
use super::field::{refusal_ui, shown, typed_ui};
use super::row_readings_editor::{RowReadingsEditor, list_of};
use super::view::{Typed, View};
use super::working_panel::link_ui;
use crate::document::{FieldRef, parse_quantity};
use crate::mount::{Interface, Known, Origin, Unit, show_number};
use crate::tolerance::{Coverage, Measurement};
use crate::workshop::{Instrument, Workshop};

/// The editor; it keeps the instrument that is chosen before the first reading.
#[derive(Default)]
pub struct ReadingsEditor {
    chosen: Option<(FieldRef, String)>,
    rows: RowReadingsEditor,
}

/// Share that the expanded uncertainty holds.
const COVERAGE: f64 = 0.95;

impl ReadingsEditor {
    /// Readings of one value of lens or body.
    pub fn readings_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, field: FieldRef) {
        ui.label(RichText::new("Readings").heading());
        let held = match field {
            FieldRef::Lens(key) => view.design.lens.field(key).clone(),
            FieldRef::Body(key) => view.design.body.field(key).clone(),
            FieldRef::Ring(_)
            | FieldRef::Limit(_)
            | FieldRef::LensThread
            | FieldRef::BarrelAtInfinity
            | FieldRef::BarrelAtCloseFocus
            | FieldRef::ApertureRing
            | FieldRef::StopDownPin
            | FieldRef::Ears
            | FieldRef::TwistHand
            | FieldRef::Springs
            | FieldRef::Stop
            | FieldRef::LockPin
            | FieldRef::FreeDepth
            | FieldRef::Obstacles
            | FieldRef::Lugs
            | FieldRef::SeatKind
            | FieldRef::PinHandling
            | FieldRef::Trim
            | FieldRef::Finish
            | FieldRef::ThreadHold
            | FieldRef::Cutter
            | FieldRef::Material
            | FieldRef::Clocking
            | FieldRef::Pieces => {
                match list_of(field) {
                    Some(list) => self.rows.list_ui(ui, view, field, list),
                    None => list_words_ui(ui, view, field),
                }
                return;
            }
        };
        now_ui(ui, &held, field.unit());
        let (readings, kept) = readings_of(&held);
        let instrument = self.instrument(view.workshop, field, kept);
        self.instrument_ui(ui, view, field, &readings, &instrument);
        if let Some(changed) = rows_ui(ui, view, id_of(field), &readings, field.unit()) {
            wish(view, field, changed, instrument.clone());
        }
        let gauge = gauge(view.workshop, field.unit(), &instrument);
        match Measurement::of(&readings, gauge) {
            Some(measured) => measured_ui(ui, view, &measured, gauge, field.unit()),
            None => {
                ui.label(
                    RichText::new("No readings yet. The first one makes this a measured value; three to five at places round the part also show its spread.")
                        .small(),
                );
            }
        }
    }

    /// The instrument: that of the readings, else the one chosen here, else a usual one.
    fn instrument(&self, workshop: &Workshop, field: FieldRef, kept: Option<String>) -> String {
        let chosen = self.chosen.as_ref().filter(|(of, _)| *of == field);
        kept.or_else(|| chosen.map(|(_, name)| name.clone()))
            .unwrap_or_else(|| usual(workshop, field.unit()))
    }

    fn instrument_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        field: FieldRef,
        readings: &[f64],
        now: &str,
    ) {
        let mut picked = None;
        let suited = is_gauged(field.unit());
        ui.horizontal(|ui| {
            let label = ui.label("Instrument");
            let id = id_of(field).with("instrument");
            if suited {
                let combo = ComboBox::from_id_salt(id).selected_text(now).width(190.0);
                let shown = combo.show_ui(ui, |ui| {
                    for instrument in &view.workshop.instruments {
                        let name = &instrument.name;
                        if ui.selectable_label(name == now, name).clicked() {
                            picked = Some(name.clone());
                        }
                    }
                });
                shown.response.labelled_by(label.id);
            } else {
                let (response, typed) = typed_ui(ui, view, id, now, 190.0, "kitchen scale");
                response.labelled_by(label.id);
                if let Typed::Finished(name) = typed {
                    picked = Some(name);
                }
            }
        });
        if let Some(name) = picked {
            if readings.is_empty() {
                self.chosen = Some((field, name));
            } else {
                wish(view, field, readings.to_vec(), name);
            }
        }
    }
}

fn id_of(field: FieldRef) -> Id {
    Id::unique(("measured", field))
}

/// Lengths and angles are read with the workshop's instruments.
const fn is_gauged(unit: Unit) -> bool {
    matches!(unit, Unit::Mm | Unit::Deg)
}

/// The instrument of the workshop by its name, where it reads this unit.
pub fn gauge<'w>(workshop: &'w Workshop, unit: Unit, name: &str) -> Option<&'w Instrument> {
    let mut all = workshop.instruments.iter();
    all.find(|instrument| instrument.name == name && is_gauged(unit))
}

/// The instrument that is proposed: a protractor for angles, else the first of the list.
pub fn usual(workshop: &Workshop, unit: Unit) -> String {
    let all = &workshop.instruments;
    let protractor = || all.iter().find(|one| one.name.contains("protractor"));
    let found = match unit {
        Unit::Mm => all.first(),
        Unit::Deg => protractor().or_else(|| all.first()),
        Unit::M
        | Unit::Um
        | Unit::N
        | Unit::G
        | Unit::Mpa
        | Unit::S
        | Unit::Mm2
        | Unit::One
        | Unit::Percent
        | Unit::Turns
        | Unit::Stops
        | Unit::K
        | Unit::Nmm => None,
    };
    found.map(|one| one.name.clone()).unwrap_or_default()
}

/// The readings of a value and their instrument, where it is measured.
fn readings_of(held: &Interface<f64>) -> (Vec<f64>, Option<String>) {
    match held {
        Interface::Known(Known {
            origin:
                Origin::Measured {
                    readings,
                    instrument,
                },
            ..
        }) => (readings.clone(), Some(instrument.clone())),
        Interface::Known(_) | Interface::Unknown => (Vec::new(), None),
    }
}

/// Writes readings into the design: their mean becomes the value, their uncertainty goes with it.
fn wish(view: &mut View<'_>, field: FieldRef, readings: Vec<f64>, instrument: String) {
    let gauge = gauge(view.workshop, field.unit(), &instrument);
    let Some(measured) = Measurement::of(&readings, gauge) else {
        return;
    };
    let value = Interface::Known(measured.known(readings, instrument));
    let edit = if let FieldRef::Lens(key) = field {
        Edit::Lens(key, value)
    } else if let FieldRef::Body(key) = field {
        Edit::Body(key, value)
    } else {
        return;
    };
    view.wish_from(id_of(field), edit);
}

fn now_ui(ui: &mut Ui, held: &Interface<f64>, unit: Unit) {
    let words = held.number().map_or_else(
        || "unknown".to_owned(),
        |value| {
            let sure = held.uncertainty();
            let spread = if sure > 0.0 {
                format!(", standard uncertainty {}", unit.show(sure))
            } else {
                String::new()
            };
            format!("{}{spread}", unit.show(value))
        },
    );
    ui.label(RichText::new(words).strong());
    ui.label(
        RichText::new(format!("{} {}", held.standing().mark(), held.origin_text()))
            .small()
            .weak(),
    );
}

/// A row for each reading and one for the next; the changed readings come back.
pub fn rows_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    id: Id,
    readings: &[f64],
    unit: Unit,
) -> Option<Vec<f64>> {
    let mut changed = None;
    for (place, reading) in readings.iter().enumerate() {
        let row = id.with(place);
        ui.horizontal(|ui| {
            let name = format!("reading {}", place + 1);
            if let Some(value) = box_ui(ui, view, row, &name, &shown(*reading, unit), unit) {
                let mut all = readings.to_vec();
                if let Some(one) = all.get_mut(place) {
                    *one = value;
                }
                changed = Some(all);
            }
            if readings.len() > 1 {
                let remove = format!("remove reading {}", place + 1);
                let button = ui.small_button("×").accessible_name(&remove);
                if button.on_hover_text(remove).clicked() {
                    let mut fewer = readings.to_vec();
                    fewer.remove(place);
                    changed = Some(fewer);
                }
            }
        });
        refusal_ui(ui, view, row);
    }
    let more = id.with("new");
    ui.horizontal(|ui| {
        if let Some(value) = box_ui(ui, view, more, "next reading", "", unit) {
            let mut all = readings.to_vec();
            all.push(value);
            changed = Some(all);
            // The next one is typed without a reach for the mouse.
            ui.memory_mut(|memory| memory.request_focus(more));
        }
    });
    refusal_ui(ui, view, more);
    refusal_ui(ui, view, id);
    changed
}

/// Width of the names of readings, points.
const NAME_WIDTH: f32 = 118.0;

/// A box for one reading, its name in a column of its own; a finished number comes back.
pub fn box_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    id: Id,
    name: &str,
    holds: &str,
    unit: Unit,
) -> Option<f64> {
    let label = ui
        .scope(|ui| {
            ui.set_width(NAME_WIDTH);
            ui.label(RichText::new(name).small())
        })
        .inner;
    let (response, typed) = typed_ui(ui, view, id, holds, 84.0, "type, Enter");
    response.labelled_by(label.id);
    ui.label(RichText::new(unit.sign()).small().weak());
    let Typed::Finished(text) = typed else {
        return None;
    };
    match parse_quantity(&text, unit) {
        Ok(value) => {
            view.typing.forget_refusal(id);
            Some(value)
        }
        Err(error) => {
            view.typing.refuse(id, error.to_string());
            None
        }
    }
}

/// What the readings come to, each figure with its rule.
pub fn measured_ui(
    ui: &mut Ui,
    view: &View<'_>,
    measured: &Measurement,
    gauge: Option<&Instrument>,
    unit: Unit,
) {
    ui.separator();
    let show = |value: f64| fine(value, unit);
    let mut rows = vec![("mean", show(measured.mean), "the value".to_owned())];
    match &measured.spread {
        Some(spread) => {
            let count = spread.dof + 1.0;
            rows.push((
                "spread s",
                show(spread.deviation),
                format!("of one reading, {count:.0} readings (JCGM 100 4.2.2)"),
            ));
            rows.push((
                "type A",
                show(spread.standard_uncertainty),
                format!("s / √{count:.0} (JCGM 100 4.2.3)"),
            ));
            rows.push((
                "range",
                show(spread.range),
                "greatest less least".to_owned(),
            ));
        }
        None => rows.push((
            "type A",
            "none".to_owned(),
            "one reading shows no spread; take more".to_owned(),
        )),
    }
    if let Some(gauge) = gauge {
        rows.push((
            "instrument",
            format!("±{}", show(gauge.permissible_error_mm)),
            format!(
                "permissible error, step {}; over √3 as a standard uncertainty (JCGM 100 4.3.7)",
                show(gauge.step_mm)
            ),
        ));
    }
    let combined = measured.combined;
    rows.push((
        "combined",
        show(combined.standard_uncertainty),
        "root of the sum of squares (JCGM 100 5.1.2); kept with the value".to_owned(),
    ));
    let factor = combined.factor(Coverage::Share(COVERAGE));
    rows.push((
        "expanded",
        format!("±{}", show(combined.expanded(Coverage::Share(COVERAGE)))),
        format!(
            "95 %, factor {} by Student's t (JCGM 100 G.4)",
            show_number(factor, 2)
        ),
    ));
    Grid::new("what the readings come to")
        .num_columns(3)
        .show(ui, |ui| {
            for (name, value, why) in rows {
                ui.label(RichText::new(name).small());
                ui.label(RichText::new(value).small().strong());
                ui.add(egui::Label::new(RichText::new(why).small().weak()).wrap());
                ui.end_row();
            }
        });
    if gauge.is_none() {
        ui.label(
            RichText::new(
                "This instrument is not in the workshop: its permissible error is not counted.",
            )
            .small()
            .color(view.palette.caution),
        );
    }
}

/// A figure of uncertainty needs a decimal more than the value.
fn fine(value: f64, unit: Unit) -> String {
    format!(
        "{} {}",
        show_number(value, unit.decimals() + 1),
        unit.sign()
    )
}

/// Lists and threads are typed where they stand.
fn list_words_ui(ui: &mut Ui, view: &mut View<'_>, field: FieldRef) {
    ui.label("This is no single number: it is typed in its own rows.");
    link_ui(ui, view, field, &format!("go to {}", field.long_label()));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_angle_is_read_with_a_protractor_and_a_weight_with_no_gauge() {
        let workshop = Workshop::default_set().unwrap();
        assert!(usual(&workshop, Unit::Deg).contains("protractor"));
        assert!(gauge(&workshop, Unit::Mm, &usual(&workshop, Unit::Mm)).is_some());
        assert_eq!(usual(&workshop, Unit::G), "");
        assert!(gauge(&workshop, Unit::G, "caliper 0.02").is_none());
    }

    #[test]
    fn uncertainty_is_told_to_a_tenth_of_a_micrometre() {
        assert_eq!(fine(0.002_886, Unit::Mm), "0.0029 mm");
        assert_eq!(fine(45.46, Unit::Mm), "45.46 mm");
    }
}
