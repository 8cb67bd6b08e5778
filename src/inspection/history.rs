//! The corrections that were made, each with what was found after it.

use super::inspect::{Basis, error_by, instrument};
use super::proposal::Measured;
use super::register::{RegisterMethod, register};
use crate::document::{Correction, Design, RingKey, SizeOf};
use crate::mount::Unit;
use crate::workshop::Workshop;

/// A correction with what came of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Followed<'d> {
    /// The correction.
    pub correction: &'d Correction,
    /// The register error that was found after it and before the next, and from what.
    pub after: Option<(Basis, Measured)>,
}

/// Every correction of a design, the first one first. Seat heights count from `seat_height_mm`, the drawn one.
#[must_use]
pub fn history<'d>(
    design: &'d Design,
    workshop: &Workshop,
    method: RegisterMethod,
    seat_height_mm: f64,
) -> Vec<Followed<'d>> {
    let followed = |(place, correction)| Followed {
        correction,
        after: by_trial(design, place)
            .or_else(|| by_readings(design, workshop, method, seat_height_mm, place)),
    };
    design
        .corrections
        .iter()
        .zip(1..)
        .map(|(one, place)| (place, one))
        .map(followed)
        .collect()
}

fn by_trial(design: &Design, after: usize) -> Option<(Basis, Measured)> {
    let mut trials = design.trials.iter().rev();
    let trial = trials.find(|trial| trial.after_corrections == after)?;
    Some((Basis::Trial, error_by(design, trial).ok()?))
}

fn by_readings(
    design: &Design,
    workshop: &Workshop,
    method: RegisterMethod,
    seat_height_mm: f64,
    after: usize,
) -> Option<(Basis, Measured)> {
    let seat = SizeOf::Ring(RingKey::SeatHeight);
    let mut readings = design.readings.iter().rev();
    let reading = readings.find(|one| one.after_corrections == after && one.dimension == seat)?;
    let found = register(
        &reading.values,
        reading.places,
        method,
        instrument(workshop, reading).ok()?,
    )
    .ok()?;
    let measured = Measured {
        error_mm: found.mean_mm - seat_height_mm,
        doubt: found.doubt,
    };
    Some((Basis::SeatReadings, measured))
}

impl Followed<'_> {
    /// What was done, in words.
    #[must_use]
    pub fn done_text(&self) -> String {
        let done = self.correction;
        if done.remade {
            "made again".to_owned()
        } else if done.skim_mm < 0.0 {
            format!("shim of {} laid on the seat", Unit::Mm.show(-done.skim_mm))
        } else {
            format!("{} skimmed off the seat", Unit::Mm.show(done.skim_mm))
        }
    }

    /// What was found before, expected, and found after, each where it is known.
    #[must_use]
    pub fn errors_text(&self) -> String {
        let show = |error_mm: f64, expanded_mm: f64| {
            format!(
                "{} ± {}",
                Unit::Mm.show(error_mm),
                Unit::Mm.show(expanded_mm)
            )
        };
        let mut parts = Vec::new();
        if let Some(found) = self.correction.found {
            parts.push(format!("found {}", show(found.error_mm, found.expanded_mm)));
        }
        if let Some(expected) = self.correction.expected {
            let words = show(expected.error_mm, expected.expanded_mm);
            parts.push(format!("expected then {words}"));
        }
        if let Some((basis, after)) = self.after {
            let words = show(after.error_mm, after.doubt.expanded);
            parts.push(format!("found then {words} by {}", basis.words()));
        }
        if let Some(mark_deg) = self.correction.mark_before_deg {
            parts.push(format!(
                "the lens's mark stood at {}",
                Unit::Deg.show(mark_deg)
            ));
        }
        parts.join("; ")
    }
}
