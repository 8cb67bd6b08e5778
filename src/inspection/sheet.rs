//! The inspection sheet as plain text: limits to read against, room for readings, and the verdict on those taken.

use super::correction::correct;
use super::functional_size::{FunctionalSize, SizeOf, functional_sizes, register_method};
use super::judgement::{DEFAULT_RULE, Judgement, Unjudged, judge};
use super::proposal::Measured;
use super::register::{Register, RegisterMethod, register};
use crate::document::{Design, Reading, RingKey, columns, wrapped};
use crate::evaluate::Evaluation;
use crate::mount::{Unit, show_number};
use crate::workshop::{Instrument, Workshop};

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
    let sizes = functional_sizes(evaluation, workshop);
    let Some(ring) = evaluation.derivation.ring.as_ref() else {
        lines.push("There is no whole ring to inspect: measure what is missing first.".to_owned());
        return lines.join("\n");
    };
    let method = register_method(ring, workshop);
    lines.push(
        "Deburred, washed, cooled to 20 °C. At least five places a size, the same force, zero checked between.".to_owned(),
    );
    lines.push(
        "Rule: ISO 14253-1, the limits drawn in by 1.645 standard uncertainties, so that a size called in is in with \
         95 % likelihood."
            .to_owned(),
    );
    lines.push(format!("Register: {}.", method.how()));
    lines.push(String::new());
    lines.push(table_to_fill(design, &sizes));
    lines.push(String::new());
    lines.push("READINGS TAKEN".to_owned());
    lines.push("--------------".to_owned());
    lines.extend(taken(design, workshop, &sizes, method));
    lines.extend(register_lines(design, workshop, evaluation, method));
    lines.extend(history(design));
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

fn table_to_fill(design: &Design, sizes: &[FunctionalSize]) -> String {
    let rows: Vec<Vec<String>> = sizes
        .iter()
        .map(|size| {
            let is_taken = reading_of(design, size).is_some();
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

fn taken(
    design: &Design,
    workshop: &Workshop,
    sizes: &[FunctionalSize],
    method: RegisterMethod,
) -> Vec<String> {
    let mut lines: Vec<String> = sizes
        .iter()
        .filter_map(|size| {
            let reading = reading_of(design, size)?;
            Some(match judged(workshop, size, reading, method) {
                Ok(judgement) => verdict(size, reading, &judgement),
                Err(reason) => format!("{}: {reason}", size.label),
            })
        })
        .collect();
    if lines.is_empty() {
        lines.push("none yet".to_owned());
    }
    lines
}

fn judged(
    workshop: &Workshop,
    size: &FunctionalSize,
    reading: &Reading,
    method: RegisterMethod,
) -> Result<Judgement, Unjudged> {
    let instrument = instrument(workshop, reading)?;
    let besides = if size.of == SizeOf::Ring(RingKey::SeatHeight) {
        method.besides()
    } else {
        Vec::new()
    };
    judge(
        &reading.values,
        instrument,
        &besides,
        size.limits,
        DEFAULT_RULE,
    )
}

fn verdict(size: &FunctionalSize, reading: &Reading, judgement: &Judgement) -> String {
    let zone = judgement.accepted.map_or_else(String::new, |zone| {
        format!(
            ", proved from {} to {}",
            number(size, zone.low_mm),
            number(size, zone.high_mm)
        )
    });
    format!(
        "{}: {} {} give or take {} (95 %, {} readings, {}){zone}: {}",
        size.label,
        number(size, judgement.mean),
        size.unit.sign(),
        show_number(judgement.doubt.expanded, 4),
        judgement.count,
        reading.instrument,
        judgement.word()
    )
}

fn register_lines(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    method: RegisterMethod,
) -> Vec<String> {
    let found = design
        .readings
        .iter()
        .find(|reading| reading.dimension == RingKey::SeatHeight)
        .and_then(|reading| {
            let instrument = instrument(workshop, reading).ok()?;
            register(&reading.values, method, instrument).ok()
        });
    let Some(found) = found else {
        return vec![
            String::new(),
            "Register, parallelism and correction follow from five or more readings of the seat height.".to_owned(),
        ];
    };
    let mut lines = vec![String::new(), "REGISTER".to_owned(), "--------".to_owned()];
    lines.extend(tilt_lines(&found));
    let nominal = evaluation
        .derivation
        .dimension(RingKey::SeatHeight)
        .and_then(|state| state.value);
    let corrected = nominal.and_then(|nominal| {
        let measured = Measured {
            error_mm: found.mean_mm - nominal,
            doubt: found.doubt,
        };
        correct(design, workshop, evaluation, measured, DEFAULT_RULE)
            .map(|corrected| (measured.error_mm, corrected))
    });
    if let Some((error, corrected)) = corrected {
        lines.push(format!(
            "{} {} than drawn.",
            Unit::Mm.show(error.abs()),
            if error > 0.0 { "thicker" } else { "thinner" }
        ));
        lines.push(corrected.text());
    }
    lines
}

fn tilt_lines(found: &Register) -> Vec<String> {
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

fn history(design: &Design) -> Vec<String> {
    if design.corrections.is_empty() {
        return Vec::new();
    }
    let mut lines = vec![
        String::new(),
        "CORRECTIONS MADE".to_owned(),
        "----------------".to_owned(),
    ];
    lines.extend(design.corrections.iter().map(|done| {
        let what = if done.skim_mm < 0.0 {
            format!("shim of {}", Unit::Mm.show(-done.skim_mm))
        } else {
            format!("{} off the seat", Unit::Mm.show(done.skim_mm))
        };
        format!("{}: {what}. {}", done.date, done.note)
    }));
    lines
}

fn reading_of<'a>(design: &'a Design, size: &FunctionalSize) -> Option<&'a Reading> {
    match size.of {
        SizeOf::Ring(key) => design
            .readings
            .iter()
            .find(|reading| reading.dimension == key),
        SizeOf::LugStart(_) | SizeOf::LugWidth(_) | SizeOf::ThreadOverBalls => None,
    }
}

fn instrument<'a>(workshop: &'a Workshop, reading: &Reading) -> Result<&'a Instrument, Unjudged> {
    workshop
        .instruments
        .iter()
        .find(|instrument| instrument.name == reading.instrument)
        .ok_or_else(|| Unjudged::NoInstrument(reading.instrument.clone()))
}

fn number(size: &FunctionalSize, value: f64) -> String {
    show_number(value, size.unit.decimals())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::evaluate::evaluate;

    fn sheet(change: impl FnOnce(&mut Design)) -> String {
        let workshop = Workshop::default_set().unwrap();
        let mut design = demo_designs().unwrap().remove(0);
        design.readings.clear();
        change(&mut design);
        inspection_sheet(&design, &workshop, &evaluate(&design, &workshop))
    }

    fn readings(dimension: RingKey, values: &[f64], instrument: &str) -> Reading {
        Reading {
            dimension,
            values: values.to_vec(),
            instrument: instrument.to_owned(),
        }
    }

    #[test]
    fn an_empty_sheet_has_room_for_every_size() {
        let text = sheet(|_| {});
        assert!(
            text.contains("[ ]  Seat height") && text.contains(ROOM),
            "{text}"
        );
        assert!(text.contains("none yet") && text.contains("ISO 14253-1"));
        assert!(text.contains("Lug 1") && text.contains("Thread over balls"));
    }

    #[test]
    fn a_thick_seat_is_judged_and_corrected() {
        let text = sheet(|design| {
            let values: Vec<f64> = [1.56, 1.57, 1.56, 1.57, 1.56, 1.56]
                .iter()
                .map(|value| value - 1.46)
                .map(|off| seat_of(design) + off)
                .collect();
            design
                .readings
                .push(readings(RingKey::SeatHeight, &values, "depth micrometer"));
        });
        for told in [
            "OUT",
            "thicker than drawn",
            "Skim 0.10",
            "clockwise",
            "parallel within",
        ] {
            assert!(text.contains(told), "{told}: {text}");
        }
    }

    fn seat_of(design: &Design) -> f64 {
        let workshop = Workshop::default_set().unwrap();
        evaluate(design, &workshop)
            .derivation
            .dimension(RingKey::SeatHeight)
            .unwrap()
            .value
            .unwrap()
    }

    #[test]
    fn an_instrument_that_is_not_there_is_named() {
        let text = sheet(|design| {
            let reading = readings(RingKey::LugDiameter, &[53.7, 53.7], "laser");
            design.readings.push(reading);
        });
        assert!(text.contains("no instrument called \"laser\""), "{text}");
    }
}
