//! Values that no reading, no trial and no correction may have.

use super::fault::{Fault, range};
use super::{Correction, Design, Reading, RegisterError, Trial};
use crate::mount::{RowReadings, Unit};

/// Most entries of each list.
const MOST_ENTRIES: usize = 2000;
/// Most readings of one size, and most settings of one trial.
const MOST_READINGS: usize = 360;
/// Most places round the ring.
const MOST_PLACES: usize = 72;
/// Most letters of a name or a date.
const MOST_LETTERS: usize = 80;
/// Most letters of a note.
const MOST_IN_NOTES: usize = 1200;
/// Nearest and farthest that a trial or a scale may be, mm; farther is as good as infinity.
const DISTANCES_MM: (f64, f64) = (10.0, 1e8);
/// A register that is farther off belongs to another ring, mm.
const REGISTER_MM: (f64, f64) = (-10.0, 10.0);

/// Adds every fault of what was read, tried and done.
pub(super) fn inspected_faults(design: &Design, faults: &mut Vec<Fault>) {
    let done = design.corrections.len();
    for (name, count) in [
        ("readings", design.readings.len()),
        ("infinity trials", design.trials.len()),
        ("corrections", done),
    ] {
        at_most(faults, name, count, MOST_ENTRIES);
    }
    for reading in design.readings.iter().take(MOST_ENTRIES) {
        reading_faults(reading, done, faults);
    }
    for trial in design.trials.iter().take(MOST_ENTRIES) {
        trial_faults(trial, done, faults);
    }
    for correction in design.corrections.iter().take(MOST_ENTRIES) {
        correction_faults(correction, faults);
    }
}

fn reading_faults(reading: &Reading, done: usize, faults: &mut Vec<Fault>) {
    let size = reading.dimension;
    let field = format!("reading of {}", size.label());
    at_most(faults, &field, reading.values.len(), MOST_READINGS);
    if reading.places > MOST_PLACES {
        faults.push(Fault::new(
            format!("{field}, places round the ring"),
            reading.places.to_string(),
            format!("at most {MOST_PLACES}"),
        ));
    }
    for value in reading.values.iter().take(MOST_READINGS) {
        range(faults, &field, *value, size.unit(), size.range());
    }
    let field = format!("{field}, instrument");
    text_faults(faults, &field, &reading.instrument, MOST_LETTERS, false);
    not_after_more(faults, &field, reading.after_corrections, done);
}

/// Adds every fault of the readings of a mount's rows.
pub(super) fn row_reading_faults(
    faults: &mut Vec<Fault>,
    owner: &str,
    all: &[RowReadings],
    is_lens: bool,
) {
    at_most(
        faults,
        &format!("{owner}, readings of rows"),
        all.len(),
        MOST_ENTRIES,
    );
    for readings in all.iter().take(MOST_ENTRIES) {
        let field = format!("{owner} reading of {}", readings.number().label());
        if readings.list.is_of_the_lens() != is_lens {
            faults.push(Fault::new(
                &field,
                "a row of the other mount",
                "a lens has barrel steps, a body ears, free depth and obstacles",
            ));
        }
        at_most(faults, &field, readings.values.len(), MOST_READINGS);
        for value in readings.values.iter().take(MOST_READINGS) {
            range(
                faults,
                &field,
                *value,
                readings.column.unit(),
                readings.column.range(),
            );
        }
        let field = format!("{field}, instrument");
        text_faults(faults, &field, &readings.instrument, MOST_LETTERS, false);
    }
}

fn trial_faults(trial: &Trial, done: usize, faults: &mut Vec<Fault>) {
    let mut distance = |field: &str, mm: f64, allowed_mm: (f64, f64)| {
        let metres = (allowed_mm.0 / 1000.0, allowed_mm.1 / 1000.0);
        range(faults, field, mm / 1000.0, Unit::M, metres);
    };
    let errors_mm = (0.0, DISTANCES_MM.1);
    if let Some(object) = trial.object_mm {
        distance("infinity trial, object", object, DISTANCES_MM);
    }
    distance(
        "infinity trial, error of the object",
        trial.object_error_mm,
        errors_mm,
    );
    distance(
        "infinity trial, error of the scale",
        trial.scale_error_mm,
        errors_mm,
    );
    for reading in trial.scale_mm.iter().take(MOST_READINGS).flatten() {
        distance("infinity trial, scale", *reading, DISTANCES_MM);
    }
    let field = "infinity trial, settings";
    at_most(faults, field, trial.scale_mm.len(), MOST_READINGS);
    not_after_more(faults, field, trial.after_corrections, done);
}

fn correction_faults(correction: &Correction, faults: &mut Vec<Fault>) {
    range(
        faults,
        "correction",
        correction.skim_mm,
        Unit::Mm,
        REGISTER_MM,
    );
    for (field, error) in [
        ("correction, error found", correction.found),
        ("correction, error expected", correction.expected),
    ] {
        let Some(RegisterError {
            error_mm,
            expanded_mm,
        }) = error
        else {
            continue;
        };
        range(faults, field, error_mm, Unit::Mm, REGISTER_MM);
        let field = format!("{field}, uncertainty");
        range(faults, &field, expanded_mm, Unit::Mm, (0.0, REGISTER_MM.1));
    }
    if let Some(mark_deg) = correction.mark_before_deg {
        let field = "correction, lens mark before";
        range(faults, field, mark_deg, Unit::Deg, (-720.0, 720.0));
    }
    text_faults(
        faults,
        "correction, date",
        &correction.date,
        MOST_LETTERS,
        false,
    );
    text_faults(
        faults,
        "correction, note",
        &correction.note,
        MOST_IN_NOTES,
        true,
    );
}

fn at_most(faults: &mut Vec<Fault>, field: &str, count: usize, most: usize) {
    if count > most {
        faults.push(Fault::new(
            field,
            format!("{count} of them"),
            format!("at most {most} are kept"),
        ));
    }
}

fn not_after_more(faults: &mut Vec<Fault>, field: &str, after: usize, done: usize) {
    if after > done {
        faults.push(Fault::new(
            field,
            format!("taken after {after} corrections"),
            format!("the design knows of {done}"),
        ));
    }
}

fn text_faults(faults: &mut Vec<Fault>, field: &str, text: &str, most: usize, has_lines: bool) {
    let letters = text.chars().count();
    if letters > most {
        faults.push(Fault::new(
            field,
            format!("{letters} letters"),
            format!("at most {most} are kept"),
        ));
    }
    if text.contains(|sign: char| sign.is_control() && !(has_lines && sign == '\n')) {
        faults.push(Fault::new(
            field,
            format!("{text:?}"),
            "words without control signs",
        ));
    }
}

#[cfg(test)]
mod tests {
    use crate::document::{Design, faults_of, read_design, write_ron};
    use crate::mount::{Body, Lens};

    /// A design with this written into its lists, as a file would bring it.
    fn read(lists: &str) -> Result<Design, String> {
        let text = format!("(format: 1, lens: (), body: (), {lists})");
        read_design(&text).map_err(|error| error.to_string())
    }

    #[test]
    fn a_file_from_before_trials_is_read_and_keeps_its_readings() {
        let design = read(
            "readings: [(dimension: \"seat_height\", values: [1.46, 1.47], instrument: \"depth micrometer\")], \
             corrections: [(date: \"May\", note: \"\", skim_mm: 0.02)]",
        )
        .unwrap();
        assert_eq!(design.readings[0].after_corrections, 0);
        assert!(design.trials.is_empty() && !design.corrections[0].remade);
        let again = read_design(&write_ron(&design).unwrap()).unwrap();
        assert_eq!(again, design);
    }

    #[test]
    fn trials_and_angles_of_lugs_come_back() {
        let design = read(
            "readings: [(dimension: \"lug_start_2\", values: [120.1], instrument: \"protractor\"), \
                        (dimension: \"thread_over_balls\", values: [41.2], instrument: \"caliper\")], \
             trials: [(object_mm: Some(10000.0), scale_mm: [Some(9000.0), None])]",
        )
        .unwrap();
        assert_eq!(read_design(&write_ron(&design).unwrap()).unwrap(), design);
        assert_eq!(design.present_trial(), Some(0));
    }

    #[test]
    fn absurd_values_are_refused_by_name_value_and_what_is_allowed() {
        for (lists, told) in [
            (
                "readings: [(dimension: \"seat_height\", values: [4000.0], instrument: \"\")]",
                "reading of Seat height: 4000.00 mm is refused; allowed is -60.00 mm to 300.00 mm",
            ),
            (
                "readings: [(dimension: \"lug_width_1\", values: [0.0], instrument: \"\")]",
                "reading of Lug 1, width at its tip: 0.00° is refused",
            ),
            (
                "readings: [(dimension: \"seat_height\", values: [], instrument: \"\", after_corrections: 3)]",
                "taken after 3 corrections is refused; the design knows of 0",
            ),
            (
                "trials: [(object_mm: Some(-5.0), scale_mm: [])]",
                "infinity trial, object",
            ),
            (
                "trials: [(object_mm: None, scale_mm: [Some(NaN)])]",
                "infinity trial, scale: NaN m is refused",
            ),
            (
                "trials: [(object_mm: None, scale_mm: [], scale_error_mm: inf)]",
                "error of the scale",
            ),
            (
                "corrections: [(date: \"\", note: \"\", skim_mm: 99.0)]",
                "correction: 99.00 mm is refused",
            ),
            (
                "corrections: [(date: \"\", note: \"\", skim_mm: 0.1, found: Some(error_mm: 0.1, expanded_mm: -1.0))]",
                "correction, error found, uncertainty: -1.00 mm is refused",
            ),
            (
                "corrections: [(date: \"a\\u{7}b\", note: \"\", skim_mm: 0.1)]",
                "control signs",
            ),
            (
                "readings: [(dimension: \"seat_hight\", values: [], instrument: \"\")]",
                "no size of a ring is called \"seat_hight\"",
            ),
            (
                "trials: [(object_mm: None, scale_mm: [], weather: 3)]",
                "weather",
            ),
        ] {
            let error = read(lists).unwrap_err();
            assert!(error.contains(told), "{told}: {error}");
        }
    }

    #[test]
    fn readings_of_rows_are_read_and_absurd_ones_are_named() {
        let row = |values: &str, list: &str| {
            let text = format!(
                "(format: 1, lens: (), body: (row_readings: [(list: {list}, row: 2, column: start, values: [{values}], \
                 instrument: \"protractor\")]))"
            );
            read_design(&text).map_err(|error| error.to_string())
        };
        let design = row("119.9, 120.1", "ears").unwrap();
        assert_eq!(read_design(&write_ron(&design).unwrap()).unwrap(), design);
        let error = row("9000.0", "ears").unwrap_err();
        assert!(
            error.contains("body reading of ear 2, start: 9000.00° is refused"),
            "{error}"
        );
        let error = row("1.0", "barrel_at_infinity").unwrap_err();
        assert!(error.contains("a row of the other mount"), "{error}");
    }

    #[test]
    fn endless_lists_are_refused() {
        let mut design = Design::new(Lens::default(), Body::default());
        let many = vec![1.46; 361];
        design.readings.push(super::Reading {
            dimension: crate::document::SizeOf::ThreadOverBalls,
            values: many,
            instrument: "x".repeat(81),
            places: 73,
            after_corrections: 0,
        });
        let faults = faults_of(&design);
        let told: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert!(
            told.iter().any(|text| text.contains("361 of them")),
            "{told:?}"
        );
        assert!(
            told.iter().any(|text| text.contains("81 letters")),
            "{told:?}"
        );
    }
}
