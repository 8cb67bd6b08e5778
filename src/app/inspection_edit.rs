//! Every way in which the window can change what was read, tried and done with the finished ring.

use crate::document::{Correction, Design, Reading, Trial};

/// One change to what is known of the finished ring.
#[derive(Clone, Debug, PartialEq)]
pub enum InspectionEdit {
    /// Put readings at a place of the list, or behind it; readings without a value are taken out.
    Readings(Option<usize>, Reading),
    /// Put a trial at a place of the list, or behind it.
    Trial(Option<usize>, Trial),
    /// Take note of a correction as done. What was read of the lens's mark before goes with it.
    Done(Correction),
    /// Forget the last correction: it was not done.
    ForgetLast,
}

/// Does it.
pub fn put_inspection(design: &mut Design, edit: InspectionEdit) {
    match edit {
        InspectionEdit::Readings(place, reading) => {
            put_at(&mut design.readings, place, reading);
            design.readings.retain(|reading| !reading.values.is_empty());
        }
        InspectionEdit::Trial(place, trial) => put_at(&mut design.trials, place, trial),
        InspectionEdit::Done(correction) => {
            if correction.mark_before_deg.is_some() {
                design.ring.clocking.trial_reading_deg = None;
            }
            design.corrections.push(correction);
        }
        InspectionEdit::ForgetLast => forget_last(design),
    }
}

fn put_at<T>(list: &mut Vec<T>, place: Option<usize>, one: T) {
    match place.and_then(|place| list.get_mut(place)) {
        Some(old) => *old = one,
        None => list.push(one),
    }
}

/// What was taken after the forgotten correction was taken after those before it.
fn forget_last(design: &mut Design) {
    let Some(forgotten) = design.corrections.pop() else {
        return;
    };
    let left = design.corrections.len();
    for reading in &mut design.readings {
        reading.after_corrections = reading.after_corrections.min(left);
    }
    for trial in &mut design.trials {
        trial.after_corrections = trial.after_corrections.min(left);
    }
    let clocking = &mut design.ring.clocking;
    clocking.trial_reading_deg = clocking.trial_reading_deg.or(forgotten.mark_before_deg);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::SizeOf;
    use crate::mount::{Body, Lens};

    fn reading(values: &[f64]) -> Reading {
        Reading {
            dimension: SizeOf::ThreadOverBalls,
            values: values.to_vec(),
            instrument: "caliper 0.02".to_owned(),
            places: 0,
            after_corrections: 0,
        }
    }

    #[test]
    fn readings_are_put_changed_and_taken_out() {
        let mut design = Design::new(Lens::default(), Body::default());
        put_inspection(
            &mut design,
            InspectionEdit::Readings(None, reading(&[41.0])),
        );
        put_inspection(
            &mut design,
            InspectionEdit::Readings(Some(0), reading(&[41.0, 41.1])),
        );
        assert_eq!(design.readings, [reading(&[41.0, 41.1])]);
        put_inspection(&mut design, InspectionEdit::Readings(Some(0), reading(&[])));
        assert!(design.readings.is_empty());
    }

    #[test]
    fn a_forgotten_correction_gives_its_readings_and_the_mark_back() {
        let mut design = Design::new(Lens::default(), Body::default());
        design.ring.clocking.trial_reading_deg = Some(12.0);
        let before = design.clone();
        let done = Correction {
            date: "May".to_owned(),
            note: String::new(),
            skim_mm: 0.05,
            remade: false,
            found: None,
            expected: None,
            mark_before_deg: Some(12.0),
        };
        put_inspection(&mut design, InspectionEdit::Done(done));
        assert_eq!(design.ring.clocking.trial_reading_deg, None);
        let mut later = reading(&[41.0]);
        later.after_corrections = 1;
        put_inspection(&mut design, InspectionEdit::Readings(None, later));
        put_inspection(&mut design, InspectionEdit::ForgetLast);
        assert_eq!(design.readings[0].after_corrections, 0);
        design.readings.clear();
        assert_eq!(design, before);
        put_inspection(&mut design, InspectionEdit::ForgetLast);
        assert_eq!(design, before);
    }
}
