//! The row that opens below a value: where it came from, how sure it is, what was read.

use egui::{Id, RichText, Ui};

use super::cell_field::{Cell, cell_ui};
use super::edit::Edit;
use super::field::refusal_ui;
use super::origin::{OriginKind, origin_words, restated};
use super::text_field::{read_ui, text_ui};
use super::view::View;
use crate::document::parse_quantity;
use crate::mount::{Citation, Interface, Known, Origin, Unit};
use crate::tolerance::Measurement;
use crate::workshop::{Instrument, Workshop};

/// Origin of any value: kind and words.
pub fn origin_ui<T: Clone>(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    held: &Interface<T>,
    says: Option<f64>,
    edit: &dyn Fn(Interface<T>) -> Edit,
) {
    let Interface::Known(known) = held else {
        return;
    };
    let with = |origin: Origin| {
        edit(Interface::Known(Known {
            origin,
            ..known.clone()
        }))
    };
    let now = OriginKind::of(&known.origin);
    ui.horizontal_wrapped(|ui| {
        for kind in OriginKind::ALL {
            if ui
                .selectable_label(kind == now, RichText::new(kind.word()).small())
                .clicked()
                && kind != now
            {
                let words = origin_words(&known.origin);
                view.wish_from(salt, with(restated(&known.origin, kind, words, says)));
            }
        }
        let unknown = ui.selectable_label(false, RichText::new("unknown").small());
        if unknown.on_hover_text("forget the value").clicked() {
            view.wish_from(salt, edit(Interface::Unknown));
        }
    });
    let words = origin_words(&known.origin);
    if let Some(typed) = text_ui(
        ui,
        view,
        salt.with("words"),
        now.asks(),
        &words,
        "in your words",
    ) {
        view.wish_from(salt, with(restated(&known.origin, now, typed, says)));
    }
    refusal_ui(ui, view, salt);
}

/// What a number has besides: uncertainty, readings, other prints.
pub fn number_origin_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    held: &Interface<f64>,
    unit: Unit,
    edit: &dyn Fn(Interface<f64>) -> Edit,
) {
    origin_ui(ui, view, salt, held, held.number(), edit);
    let Interface::Known(known) = held else {
        return;
    };
    let uncertainty = salt.with("uncertainty");
    ui.horizontal(|ui| {
        let cell = Cell {
            id: uncertainty,
            word: "uncertainty (one sigma)",
            name: "uncertainty, one standard deviation; 0 where none is stated",
            value: known.uncertainty,
            unit,
        };
        cell_ui(ui, view, cell, |value| {
            edit(Interface::Known(Known {
                uncertainty: value,
                ..known.clone()
            }))
        });
    });
    refusal_ui(ui, view, uncertainty);
    match &known.origin {
        Origin::Measured {
            readings,
            instrument,
        } => {
            let workshop = view.workshop;
            readings_ui(ui, view, salt, unit, readings, |readings| {
                let gauge = view_gauge(workshop, instrument);
                Measurement::of(&readings, gauge).map(|measured| {
                    edit(Interface::Known(
                        measured.known(readings, instrument.clone()),
                    ))
                })
            });
        }
        Origin::Published(citations) => citations_ui(ui, view, salt, known, citations, unit, edit),
        Origin::Standard(_) | Origin::Assumed(_) => {}
    }
}

/// The instrument of the workshop by its name.
fn view_gauge<'w>(workshop: &'w Workshop, name: &str) -> Option<&'w Instrument> {
    let mut all = workshop.instruments.iter();
    all.find(|instrument| instrument.name == name)
}

/// The readings in one line; their mean becomes the value.
fn readings_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    unit: Unit,
    readings: &[f64],
    edit: impl FnOnce(Vec<f64>) -> Option<Edit>,
) {
    let shown = readings
        .iter()
        .map(ToString::to_string)
        .collect::<Vec<_>>()
        .join("; ");
    read_ui(
        ui,
        view,
        salt.with("readings"),
        "Readings",
        &shown,
        "17.52; 17.53; 17.53",
        |text| {
            let readings: Vec<f64> = text
                .split(';')
                .map(str::trim)
                .filter(|part| !part.is_empty())
                .map(|part| parse_quantity(part, unit).map_err(|error| error.to_string()))
                .collect::<Result<_, _>>()?;
            edit(readings)
                .ok_or_else(|| "no reading was typed; part readings by semicolons".to_owned())
        },
    );
}

/// Every print with what it says; several may disagree.
fn citations_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    known: &Known<f64>,
    citations: &[Citation],
    unit: Unit,
    edit: &dyn Fn(Interface<f64>) -> Edit,
) {
    let with = |citations: Vec<Citation>| {
        edit(Interface::Known(Known {
            origin: Origin::Published(citations),
            ..known.clone()
        }))
    };
    for (place, citation) in citations.iter().enumerate() {
        let id = salt.with(("print", place));
        let changed = |change: &dyn Fn(&mut Citation)| {
            let mut all = citations.to_vec();
            if let Some(one) = all.get_mut(place) {
                change(one);
            }
            with(all)
        };
        ui.horizontal(|ui| {
            let name = format!("what print {} says", place + 1);
            let cell = Cell {
                id,
                word: "says",
                name: &name,
                value: citation.says,
                unit,
            };
            cell_ui(ui, view, cell, |value| changed(&|one| one.says = value));
            if ui
                .small_button("remove")
                .on_hover_text("remove this print")
                .clicked()
                && citations.len() > 1
            {
                let mut fewer = citations.to_vec();
                fewer.remove(place);
                view.wish_from(id, with(fewer));
            }
        });
        if place > 0
            && let Some(source) = text_ui(
                ui,
                view,
                id.with("source"),
                "Where printed",
                &citation.source,
                "in your words",
            )
        {
            view.wish_from(id, changed(&|one| one.source.clone_from(&source)));
        }
        refusal_ui(ui, view, id);
    }
    if ui.small_button("Add another print").clicked() {
        let mut more = citations.to_vec();
        more.push(Citation {
            says: known.value,
            source: String::new(),
        });
        view.wish_from(salt, with(more));
    }
}
