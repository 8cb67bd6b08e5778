//! The infinity trial: the object, where the scale stands, and what that says of the register.

use egui::{Button, Id, Label, RichText, Ui};

use super::edit::Edit;
use super::field::{refusal_ui, shown, typed_ui};
use super::inspection_edit::InspectionEdit;
use super::view::{Typed, View};
use super::working_grid::working_grid_ui;
use crate::document::{Trial, parse_quantity};
use crate::inspection::{Inspection, TrialError};
use crate::inspection::{TRIAL_HOW, fine, trial_rows, trial_worked};
use crate::mount::Unit;

/// Share of its distance by which an object is taken to be off until somebody says better; common practice, no source.
const OBJECT_SHARE: f64 = 0.01;
/// The same for the engraving and reading of a scale; common practice, no source.
const SCALE_SHARE: f64 = 0.03;

/// Width of the names, points.
const NAME_WIDTH: f32 = 96.0;
/// The words for what is infinitely far away.
const INFINITY: &str = "infinity";

/// The editor of the present trial.
pub fn trial_ui(ui: &mut Ui, view: &mut View<'_>, found: &Inspection) {
    ui.label(RichText::new("Infinity trial").heading());
    ui.add(Label::new(RichText::new(TRIAL_HOW).small()).wrap());
    ui.separator();
    let place = view.design.present_trial();
    let trial = place
        .and_then(|place| view.design.trials.get(place))
        .cloned();
    let now = trial.clone().unwrap_or_else(|| Trial {
        object_mm: None,
        object_error_mm: 0.0,
        scale_mm: Vec::new(),
        scale_error_mm: 0.0,
        after_corrections: view.design.corrections.len(),
    });
    rows_ui(ui, view, place, &now);
    ui.separator();
    said_ui(ui, view, found, trial.as_ref());
    if !now.scale_mm.is_empty() {
        again_ui(ui, view, &now);
    }
    former_ui(ui, view, place);
}

fn id() -> Id {
    Id::unique("infinity trial")
}

fn wish(view: &mut View<'_>, field: Id, place: Option<usize>, trial: Trial) {
    let edit = InspectionEdit::Trial(place, trial);
    view.wish_from(field, Edit::Inspection(edit));
}

fn rows_ui(ui: &mut Ui, view: &mut View<'_>, place: Option<usize>, now: &Trial) {
    let holds = if place.is_some() {
        distance_words(now.object_mm)
    } else {
        String::new()
    };
    if let Some(object_mm) = row_ui(ui, view, "Object at", id().with("object"), &holds) {
        let object_mm = kept(object_mm);
        let trial = Trial {
            object_mm,
            object_error_mm: object_mm.map_or(0.0, |object| object * OBJECT_SHARE),
            ..now.clone()
        };
        wish(view, id().with("object"), place, trial);
    }
    if now.object_mm.is_some() {
        let field = id().with("object error");
        let holds = shown(now.object_error_mm / 1000.0, Unit::M);
        if let Some(error) = row_ui(ui, view, "known within ±", field, &holds) {
            let trial = Trial {
                object_error_mm: error,
                ..now.clone()
            };
            wish(view, field, place, trial);
        }
    }
    ui.label(RichText::new("Scale when sharp, focused anew each time").small());
    for (number, reading) in now.scale_mm.iter().enumerate() {
        setting_ui(ui, view, place, now, (number, *reading));
    }
    next_ui(ui, view, place, now);
    if now.scale_mm.iter().any(Option::is_some) {
        let field = id().with("scale error");
        let holds = shown(now.scale_error_mm / 1000.0, Unit::M);
        if let Some(error) = row_ui(ui, view, "scale good to ±", field, &holds) {
            let trial = Trial {
                scale_error_mm: error,
                ..now.clone()
            };
            wish(view, field, place, trial);
        }
    }
}

fn setting_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    place: Option<usize>,
    now: &Trial,
    (number, reading): (usize, Option<f64>),
) {
    let field = id().with(number);
    let name = format!("setting {}", number + 1);
    let mut with = now.clone();
    let mut changed = false;
    ui.horizontal(|ui| {
        if let Some(value) = box_ui(ui, view, &name, field, &distance_words(reading))
            && let Some(one) = with.scale_mm.get_mut(number)
        {
            *one = kept(value);
            changed = true;
        }
        let remove = format!("remove setting {}", number + 1);
        let button = ui.small_button("×").accessible_name(&remove);
        if button.on_hover_text(remove).clicked() {
            with.scale_mm.remove(number);
            changed = true;
        }
    });
    refusal_ui(ui, view, field);
    if changed {
        wish(view, field, place, with);
    }
}

fn next_ui(ui: &mut Ui, view: &mut View<'_>, place: Option<usize>, now: &Trial) {
    let field = id().with("new");
    if let Some(value) = row_ui(ui, view, "next setting", field, "") {
        let mut trial = now.clone();
        if value.is_finite() && trial.scale_error_mm <= 0.0 {
            trial.scale_error_mm = value * SCALE_SHARE;
        }
        trial.scale_mm.push(kept(value));
        wish(view, field, place, trial);
        ui.memory_mut(|memory| memory.request_focus(field));
    }
}

/// A row with a box for a distance; a finished one comes back, mm, and may be infinite.
fn row_ui(ui: &mut Ui, view: &mut View<'_>, name: &str, field: Id, holds: &str) -> Option<f64> {
    let typed = ui
        .horizontal(|ui| box_ui(ui, view, name, field, holds))
        .inner;
    refusal_ui(ui, view, field);
    typed
}

fn box_ui(ui: &mut Ui, view: &mut View<'_>, name: &str, field: Id, holds: &str) -> Option<f64> {
    let label = ui
        .scope(|ui| {
            ui.set_width(NAME_WIDTH);
            ui.label(RichText::new(name).small())
        })
        .inner;
    let (response, typed) = typed_ui(ui, view, field, holds, 104.0, "10 or infinity");
    response.labelled_by(label.id);
    ui.label(RichText::new(Unit::M.sign()).small().weak());
    let Typed::Finished(text) = typed else {
        return None;
    };
    match distance_of(&text) {
        Ok(distance_mm) => {
            view.typing.forget_refusal(field);
            Some(distance_mm)
        }
        Err(why) => {
            view.typing.refuse(field, why);
            None
        }
    }
}

/// A distance as the design keeps it: none for infinity.
fn kept(distance_mm: f64) -> Option<f64> {
    distance_mm.is_finite().then_some(distance_mm)
}

/// A typed distance, mm.
fn distance_of(text: &str) -> Result<f64, String> {
    let word = text.trim().to_lowercase();
    if ["infinity", "inf", "inf.", "oo", "∞"].contains(&word.as_str()) {
        return Ok(f64::INFINITY);
    }
    parse_quantity(text, Unit::M)
        .map(|metres| metres * 1000.0)
        .map_err(|error| format!("{error}; or infinity"))
}

fn distance_words(distance_mm: Option<f64>) -> String {
    distance_mm.map_or_else(
        || INFINITY.to_owned(),
        |distance| shown(distance / 1000.0, Unit::M),
    )
}

fn said_ui(ui: &mut Ui, view: &View<'_>, found: &Inspection, trial: Option<&Trial>) {
    let Some(trial) = trial else {
        let words = "No trial yet. Type how far away the object stands, press Enter, then each setting of the scale.";
        ui.add(Label::new(words).wrap());
        return;
    };
    match &found.trial {
        Some(Ok(measured)) => {
            let word = if measured.error_mm > 0.0 {
                "too thick"
            } else {
                "too thin"
            };
            let words = format!(
                "Register {word} by {} ± {}",
                Unit::Mm.show(measured.error_mm.abs()),
                fine(measured.doubt.expanded, Unit::Mm)
            );
            ui.label(RichText::new(words).strong());
            let words = "of lens, ring and body together; 95 %";
            ui.label(RichText::new(words).small().weak());
            if let Ok(worked) = trial_worked(view.design, trial) {
                working_grid_ui(ui, &trial_rows(&worked));
            }
        }
        Some(Err(
            reason @ (TrialError::NoReadings
            | TrialError::TooNear { .. }
            | TrialError::Lacks(_)
            | TrialError::NoSpread
            | TrialError::Readings(_)),
        )) => {
            ui.add(Label::new(RichText::new(reason.to_string()).color(view.palette.note)).wrap());
        }
        None => {}
    }
}

/// A button for a further trial, on another object; the present one stays as history.
fn again_ui(ui: &mut Ui, view: &mut View<'_>, now: &Trial) {
    let button = ui.add(Button::new("Begin another trial"));
    let hover = "on another object, or after a change of the set-up; this one is kept as history";
    if button.on_hover_text(hover).clicked() {
        let trial = Trial {
            scale_mm: Vec::new(),
            ..now.clone()
        };
        wish(view, id(), None, trial);
    }
}

fn former_ui(ui: &mut Ui, view: &View<'_>, present: Option<usize>) {
    let former: Vec<&Trial> = view
        .design
        .trials
        .iter()
        .enumerate()
        .filter(|(place, _)| Some(*place) != present)
        .map(|(_, trial)| trial)
        .collect();
    if former.is_empty() {
        return;
    }
    ui.separator();
    ui.label(RichText::new("Before, kept as history").strong());
    for trial in former {
        let read: Vec<String> = trial
            .scale_mm
            .iter()
            .map(|one| distance_words(*one))
            .collect();
        let words = format!(
            "after {} corrections: object at {} m, scale {} m",
            trial.after_corrections,
            distance_words(trial.object_mm),
            read.join("  ")
        );
        ui.add(Label::new(RichText::new(words).small()).wrap());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distances_are_typed_in_metres_or_as_infinity() {
        assert_eq!(distance_of("10"), Ok(10_000.0));
        assert_eq!(distance_of("850 mm"), Ok(850.0));
        for text in ["infinity", " INF ", "∞"] {
            assert_eq!(distance_of(text), Ok(f64::INFINITY), "{text}");
        }
        let why = distance_of("far").unwrap_err();
        assert!(why.contains("far") && why.contains("infinity"), "{why}");
        assert_eq!(distance_words(None), "infinity");
        assert_eq!(distance_words(Some(12_500.0)), "12.50");
    }
}
