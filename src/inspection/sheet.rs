//! The inspection sheet as plain text: limits to read against, room for readings, and the verdict on those taken.

use super::correction::{Corrected, correct};
use super::functional_size::FunctionalSize;
use super::history::history;
use super::inspect::{Basis, Inspection, allowed_errors, inspect};
use super::judgement::{DEFAULT_RULE, Judgement};
use super::proposal::Measured;
use super::register::Register;
use super::working_rows::{RULE, advice};
use crate::document::{Design, Trial, columns, wrapped};
use crate::evaluate::Evaluation;
use crate::mount::{Unit, show_number};
use crate::workshop::Workshop;

/// What is done before anything is read.
pub const BEFORE: &str = "Deburred, washed, cooled to 20 °C. At least five places a size, the same force, zero checked \
                          between.";
/// How an infinity trial is made.
pub const TRIAL_HOW: &str = "Widest stop, on a stand, an object with fine detail at a known distance of 50 to 200 focal \
                             lengths from the image plane: focus by the sharpest image, five times anew, and note the \
                             scale each time. A star or a far ridge shows a ring too thin; too thick only a nearer object \
                             shows, for the scale ends at infinity.";
/// Letters in a line of text.
const WIDTH: usize = 100;
/// Room to write a reading.
const ROOM: &str = "________";
/// Readings of an unmeasured size that there is room for.
const PLACES: usize = 5;

/// The sheet as text; without a whole ring it says so.
#[must_use]
pub fn inspection_sheet(design: &Design, workshop: &Workshop, evaluation: &Evaluation) -> String {
    let mut lines = vec![format!("INSPECTION  {}", design.name), String::new()];
    let Some(found) = inspect(design, workshop, evaluation) else {
        lines.push("There is no whole ring to inspect: measure what is missing first.".to_owned());
        return lines.join("\n");
    };
    lines.push(BEFORE.to_owned());
    lines.push(format!("Rule: {RULE}"));
    lines.push(format!("Register: {}.", found.method.how()));
    lines.push(String::new());
    lines.push(table_to_fill(&found));
    lines.extend(headed("READINGS TAKEN"));
    lines.extend(taken(design, &found));
    lines.extend(register_lines(&found));
    lines.extend(trial_lines(design, &found));
    lines.extend(correction_lines(design, workshop, evaluation, &found));
    lines.extend(history_lines(design, workshop, &found));
    let broken: Vec<String> = lines
        .iter()
        .map(|line| {
            if line.contains('\n') {
                line.clone()
            } else {
                wrapped(line, WIDTH, 4)
            }
        })
        .collect();
    broken.join("\n")
}

/// A headline with an empty line before it.
fn headed(title: &str) -> [String; 3] {
    [
        String::new(),
        title.to_owned(),
        "-".repeat(title.chars().count()),
    ]
}

fn table_to_fill(found: &Inspection) -> String {
    let rows: Vec<Vec<String>> = found
        .sizes
        .iter()
        .map(|one| {
            let size = &one.size;
            let is_taken = one.place.is_some();
            let room = if is_taken {
                "below".to_owned()
            } else {
                [ROOM; PLACES].join(" ")
            };
            vec![
                if is_taken { "[x]" } else { "[ ]" }.to_owned(),
                size.label.clone(),
                number(size, size.limits.low_mm),
                number(size, size.limits.high_mm),
                size.unit.sign().to_owned(),
                size.instrument
                    .clone()
                    .unwrap_or_else(|| "none in the workshop suits".to_owned()),
                room,
            ]
        })
        .collect();
    columns(
        &["", "size", "least", "greatest", "", "read with", "readings"],
        &rows,
    )
}

fn taken(design: &Design, found: &Inspection) -> Vec<String> {
    let mut lines: Vec<String> = found
        .sizes
        .iter()
        .filter_map(|one| {
            let reading = design.readings.get(one.place?)?;
            Some(match &one.judged {
                Ok(judged) => {
                    let advice = advice(&one.size, judged, one.better.as_deref())
                        .map_or_else(String::new, |advice| format!(". {advice}"));
                    format!(
                        "{}{advice}",
                        verdict(&one.size, &reading.instrument, judged)
                    )
                }
                Err(reason) => format!("{}: {reason}", one.size.label),
            })
        })
        .collect();
    if lines.is_empty() {
        lines.push("none yet".to_owned());
    }
    lines
}

fn verdict(size: &FunctionalSize, instrument: &str, judgement: &Judgement) -> String {
    let zone = judgement.accepted.map_or_else(String::new, |zone| {
        format!(
            ", proved from {} to {}",
            number(size, zone.low_mm),
            number(size, zone.high_mm)
        )
    });
    format!(
        "{}: {} give or take {} (95 %, {} readings, {instrument}){zone}: {}",
        size.label,
        size.unit.show(judgement.mean),
        show_number(judgement.doubt.expanded, 4),
        judgement.count,
        judgement.word()
    )
}

fn register_lines(found: &Inspection) -> Vec<String> {
    let Some(register) = &found.register else {
        return vec![
            String::new(),
            "Register and parallelism follow from five or more readings of the seat height."
                .to_owned(),
        ];
    };
    let mut lines = headed("REGISTER").to_vec();
    lines.extend(tilt_lines(register));
    if let Some(measured) = found.error(Basis::SeatReadings) {
        lines.push(off_text(measured));
    }
    lines
}

/// How far the register is off, in words.
#[must_use]
pub fn off_text(measured: Measured) -> String {
    format!(
        "{} {} than drawn, give or take {} (95 %).",
        Unit::Mm.show(measured.error_mm.abs()),
        if measured.error_mm > 0.0 {
            "thicker"
        } else {
            "thinner"
        },
        Unit::Mm.show(measured.doubt.expanded)
    )
}

/// Seat height and parallelism, a sentence each.
#[must_use]
pub fn tilt_lines(found: &Register) -> Vec<String> {
    let mean = format!(
        "Seat height {} give or take {} (95 %), readings span {}.",
        Unit::Mm.show(found.mean_mm),
        show_number(found.doubt.expanded, 4),
        show_number(found.range_mm, 4)
    );
    let tilt = found.tilt.map(|tilt| {
        format!(
            "Seat to flange parallel within {} give or take {}, highest at {} (clock angle seen from the lens side).",
            show_number(tilt.parallelism_mm, 4),
            show_number(tilt.expanded_mm, 4),
            Unit::Deg.show(tilt.highest_deg)
        )
    });
    std::iter::once(mean).chain(tilt).collect()
}

fn trial_lines(design: &Design, found: &Inspection) -> Vec<String> {
    let mut lines = headed("INFINITY TRIAL").to_vec();
    let trial = design
        .present_trial()
        .and_then(|place| design.trials.get(place));
    match (trial, &found.trial) {
        (Some(trial), Some(said)) => {
            lines.push(trial_text(trial));
            lines.push(match said {
                Ok(measured) => format!("Lens, ring and body together: {}", off_text(*measured)),
                Err(error) => error.to_string(),
            });
        }
        (None, _) | (_, None) => lines.extend([
            TRIAL_HOW.to_owned(),
            format!("Object at {ROOM} m, known within {ROOM} m. The scale reads, in m, each time from well off:"),
            [ROOM; PLACES].join("  "),
        ]),
    }
    lines
}

/// A trial in one line, distances in metres.
#[must_use]
pub fn trial_text(trial: &Trial) -> String {
    let at = |distance: &Option<f64>| {
        distance.map_or_else(
            || "infinity".to_owned(),
            |distance| show_number(distance / 1000.0, 3),
        )
    };
    let read: Vec<String> = trial.scale_mm.iter().map(at).collect();
    format!(
        "Object at {} m, known within {}; the scale read {} m, good to {}.",
        at(&trial.object_mm),
        show_number(trial.object_error_mm / 1000.0, 3),
        read.join("  "),
        show_number(trial.scale_error_mm / 1000.0, 3)
    )
}

/// The correction by every basis on which the register error is known.
#[must_use]
pub fn proposals(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    found: &Inspection,
) -> Vec<(Basis, Corrected)> {
    Basis::ALL
        .into_iter()
        .filter_map(|basis| {
            let measured = found.error(basis)?;
            let limits = allowed_errors(basis, design, evaluation)?;
            let corrected = correct(design, workshop, evaluation, measured, limits, DEFAULT_RULE)?;
            Some((basis, corrected))
        })
        .collect()
}

fn correction_lines(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    found: &Inspection,
) -> Vec<String> {
    let mut lines = headed("CORRECTION").to_vec();
    let all = proposals(design, workshop, evaluation, found);
    for (basis, corrected) in &all {
        lines.push(format!("By {}: {}", basis.words(), corrected.text()));
    }
    if all.is_empty() {
        lines.push(
            "It follows from readings of the seat height or from an infinity trial.".to_owned(),
        );
    }
    lines.push(format!(
        "[ ] done: {ROOM} mm off the seat, {ROOM} mm of shim, on {ROOM}{ROOM}"
    ));
    lines
}

fn history_lines(design: &Design, workshop: &Workshop, found: &Inspection) -> Vec<String> {
    if design.corrections.is_empty() {
        return Vec::new();
    }
    let mut lines = headed("CORRECTIONS MADE").to_vec();
    for followed in history(design, workshop, found.method, found.seat_height_mm) {
        let done = followed.correction;
        let errors = followed.errors_text();
        let parts = [done.note.as_str(), errors.as_str()];
        let more: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        lines.push(format!(
            "{}: {}. {}",
            done.date,
            followed.done_text(),
            more.join(". ")
        ));
    }
    lines
}

fn number(size: &FunctionalSize, value: f64) -> String {
    show_number(value, size.unit.decimals())
}

#[cfg(test)]
#[path = "sheet_tests.rs"]
mod tests;
