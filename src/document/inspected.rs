//! What was read on the finished ring, tried with it and done to it, in the order in which it happened.
//!
//! Every reading and every trial says after how many corrections it was taken. A correction turns the readings of what
//! it changes into history: they stay in the file and are not used as present.

use serde::{Deserialize, Serialize};

use super::{Design, RingKey, SeatKind, SizeOf};

/// Readings of one size of the finished ring.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Reading {
    /// What was read.
    pub dimension: SizeOf,
    /// The readings, in the unit of the size; of the seat height in their order round the ring.
    pub values: Vec<f64>,
    /// The instrument, by its name in the workshop file.
    pub instrument: String,
    /// How many places evenly round the ring they go through, round after round, the first at 12 o'clock, on clockwise
    /// seen from the lens side; 0 for as many as there are readings.
    #[serde(default, skip_serializing_if = "is_none_yet")]
    pub places: usize,
    /// How many corrections had been made before.
    #[serde(default, skip_serializing_if = "is_none_yet")]
    pub after_corrections: usize,
}

/// A trial on an object at a known distance: where the lens's scale stands when it is sharp. Distances from the image
/// plane.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Trial {
    /// Distance of the object, mm; none for one as good as infinitely far away.
    pub object_mm: Option<f64>,
    /// How far off that may be, either way, mm.
    #[serde(default)]
    pub object_error_mm: f64,
    /// What the scale reads when the object is sharp, each time it was focused anew, mm; none for its infinity mark.
    pub scale_mm: Vec<Option<f64>>,
    /// How far off the scale may be engraved and read there, either way, mm.
    #[serde(default)]
    pub scale_error_mm: f64,
    /// How many corrections had been made before.
    #[serde(default, skip_serializing_if = "is_none_yet")]
    pub after_corrections: usize,
}

/// An error of the register, positive where the ring is too thick, and what holds 95 % either way.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RegisterError {
    /// The error, mm.
    pub error_mm: f64,
    /// Its expanded uncertainty, mm.
    pub expanded_mm: f64,
}

/// A correction made to the finished ring.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Correction {
    /// When, as the user wrote it.
    pub date: String,
    /// Why.
    pub note: String,
    /// Taken off the seat, mm; negative for a shim laid on it.
    pub skim_mm: f64,
    /// Whether the ring was made again.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub remade: bool,
    /// The error that was found before.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub found: Option<RegisterError>,
    /// The error that was to be expected after.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub expected: Option<RegisterError>,
    /// Where the lens's mark stood in the trial fit before, clock degrees.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mark_before_deg: Option<f64>,
}

#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "the serializer hands out references"
)]
fn is_none_yet(count: &usize) -> bool {
    *count == 0
}

impl Correction {
    /// Whether it changes a size of a ring with this seat: a ring made again is another ring; a skim or a shim moves
    /// the seat and with it every depth that is measured from it, and a skim of a flush seat thins the plate.
    #[must_use]
    pub fn changes(&self, size: SizeOf, seat: SeatKind) -> bool {
        if self.remade {
            return true;
        }
        if self.skim_mm.to_bits() << 1 == 0 {
            return false;
        }
        match size {
            SizeOf::Ring(
                RingKey::SeatHeight
                | RingKey::LipFaceDepth
                | RingKey::ThreadLength
                | RingKey::AnnulusDepth,
            ) => true,
            SizeOf::Ring(RingKey::PlateThickness) => self.skim_mm > 0.0 && seat == SeatKind::Flush,
            SizeOf::Ring(_)
            | SizeOf::LugStart(_)
            | SizeOf::LugWidth(_)
            | SizeOf::ThreadOverBalls => false,
        }
    }
}

impl Design {
    /// Whether no correction since these readings were taken has changed what they are of.
    #[must_use]
    pub fn is_present(&self, reading: &Reading, seat: SeatKind) -> bool {
        !self
            .corrections
            .iter()
            .skip(reading.after_corrections)
            .any(|correction| correction.changes(reading.dimension, seat))
    }

    /// The place in the list of the present readings of a size: the newest that still hold.
    #[must_use]
    pub fn present_reading(&self, size: SizeOf, seat: SeatKind) -> Option<usize> {
        self.readings
            .iter()
            .rposition(|reading| reading.dimension == size && self.is_present(reading, seat))
    }

    /// The place in the list of the present trial: the newest since the last correction.
    #[must_use]
    pub fn present_trial(&self) -> Option<usize> {
        self.trials
            .iter()
            .rposition(|trial| trial.after_corrections == self.corrections.len())
    }

    /// What lies on the seat now, mm: the shims since the ring was last made.
    #[must_use]
    pub fn shims_mm(&self) -> f64 {
        self.corrections
            .iter()
            .rev()
            .take_while(|correction| !correction.remade)
            .map(|correction| (-correction.skim_mm).max(0.0))
            .sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mount::{Body, Lens};

    fn reading(size: SizeOf, after_corrections: usize) -> Reading {
        Reading {
            dimension: size,
            values: vec![1.46, 1.47],
            instrument: "depth micrometer".to_owned(),
            places: 0,
            after_corrections,
        }
    }

    fn correction(skim_mm: f64, remade: bool) -> Correction {
        Correction {
            date: String::new(),
            note: String::new(),
            skim_mm,
            remade,
            found: None,
            expected: None,
            mark_before_deg: None,
        }
    }

    const SEAT: SizeOf = SizeOf::Ring(RingKey::SeatHeight);
    const LUG: SizeOf = SizeOf::Ring(RingKey::LugDiameter);

    #[test]
    fn a_skim_makes_history_of_what_it_changes_and_of_nothing_else() {
        let mut design = Design::new(Lens::default(), Body::default());
        design.readings = vec![reading(SEAT, 0), reading(LUG, 0)];
        assert_eq!(design.present_reading(SEAT, SeatKind::Boss), Some(0));
        design.corrections.push(correction(0.05, false));
        assert_eq!(design.present_reading(SEAT, SeatKind::Boss), None);
        assert_eq!(design.present_reading(LUG, SeatKind::Boss), Some(1));
        design.readings.push(reading(SEAT, 1));
        assert_eq!(design.present_reading(SEAT, SeatKind::Boss), Some(2));
        design.corrections.push(correction(0.0, true));
        assert_eq!(design.present_reading(LUG, SeatKind::Boss), None);
    }

    #[test]
    fn a_plate_is_thinned_by_a_skim_of_a_flush_seat_alone() {
        let plate = SizeOf::Ring(RingKey::PlateThickness);
        assert!(correction(0.05, false).changes(plate, SeatKind::Flush));
        assert!(!correction(0.05, false).changes(plate, SeatKind::Boss));
        assert!(!correction(-0.05, false).changes(plate, SeatKind::Flush));
        assert!(!correction(-0.0, false).changes(SEAT, SeatKind::Flush));
    }

    #[test]
    fn shims_are_counted_since_the_ring_was_made() {
        let mut design = Design::new(Lens::default(), Body::default());
        design.corrections = vec![
            correction(-0.1, false),
            correction(0.0, true),
            correction(-0.03, false),
            correction(0.02, false),
            correction(-0.02, false),
        ];
        assert!((design.shims_mm() - 0.05).abs() < 1e-12);
    }
}
