//! A stretch of the circle.

use std::f64::consts::{PI, TAU};

/// Angles nearer than this are the same, radians; 1e-10 mm at a radius of 100 mm.
pub(super) const SAME_ANGLE: f64 = 1e-12;

/// An angle brought into 0 (with) to a full turn (without).
#[must_use]
pub fn wrapped(angle_rad: f64) -> f64 {
    let angle = angle_rad.rem_euclid(TAU);
    // A tiny negative angle rounds up to a full turn.
    if angle >= TAU { 0.0 } else { angle }
}

/// A stretch of the circle, clockwise from its start.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// Where it begins, radians, 0 to below a full turn.
    pub start_rad: f64,
    /// How far it reaches, radians, above 0 to a full turn.
    pub extent_rad: f64,
}

impl Interval {
    /// An interval from its start, whatever turn that is in, and its extent. More than a full turn is a full turn;
    /// `None` when the extent is not above 0 or a value is not a finite number.
    #[must_use]
    pub fn new(start_rad: f64, extent_rad: f64) -> Option<Self> {
        (start_rad.is_finite() && extent_rad > 0.0).then(|| Self {
            start_rad: wrapped(start_rad),
            extent_rad: extent_rad.min(TAU),
        })
    }

    /// The interval from one angle on to the next place of another; a full turn when they are the same.
    #[must_use]
    pub fn between(start_rad: f64, end_rad: f64) -> Option<Self> {
        let extent = wrapped(end_rad - start_rad);
        Self::new(start_rad, if extent > 0.0 { extent } else { TAU })
    }

    /// The same from degrees, as sizes on a drawing are given.
    #[must_use]
    pub fn from_degrees(start_deg: f64, extent_deg: f64) -> Option<Self> {
        Self::new(start_deg.to_radians(), extent_deg.to_radians())
    }

    /// The whole circle.
    #[must_use]
    pub const fn full_turn() -> Self {
        Self {
            start_rad: 0.0,
            extent_rad: TAU,
        }
    }

    /// Whether it goes right round.
    #[must_use]
    pub fn is_full_turn(self) -> bool {
        self.extent_rad >= TAU - SAME_ANGLE
    }

    /// Where it ends, radians, not wrapped: never below the start.
    #[must_use]
    pub fn end_rad(self) -> f64 {
        self.start_rad + self.extent_rad
    }

    /// Its middle, radians, wrapped.
    #[must_use]
    pub fn middle_rad(self) -> f64 {
        wrapped(self.start_rad + self.extent_rad / 2.0)
    }

    /// Whether an angle lies in it, ends included.
    #[must_use]
    pub fn contains(self, angle_rad: f64) -> bool {
        let past = wrapped(angle_rad - self.start_rad);
        past <= self.extent_rad + SAME_ANGLE || past >= TAU - SAME_ANGLE
    }

    /// How far an angle is from the interval, radians, 0 inside, at most half a turn.
    #[must_use]
    pub fn distance_to(self, angle_rad: f64) -> f64 {
        let from_middle = (wrapped(angle_rad - self.middle_rad() + PI) - PI).abs();
        (from_middle - self.extent_rad / 2.0).max(0.0)
    }

    /// Where two intervals overlap: none, one or two stretches.
    #[must_use]
    pub fn intersection(self, other: Self) -> Vec<Self> {
        if self.is_full_turn() {
            return vec![other];
        }
        // Seen from this start the other begins at `ahead`, and one full turn earlier.
        let ahead = wrapped(other.start_rad - self.start_rad);
        [ahead - TAU, ahead]
            .into_iter()
            .filter_map(|start| {
                let from = start.max(0.0);
                let to = (start + other.extent_rad).min(self.extent_rad);
                if to - from > SAME_ANGLE {
                    Self::new(self.start_rad + from, to - from)
                } else {
                    None
                }
            })
            .collect()
    }

    /// The angle two intervals share, radians.
    #[must_use]
    pub fn overlap_length(self, other: Self) -> f64 {
        self.intersection(other)
            .iter()
            .map(|part| part.extent_rad)
            .sum()
    }

    /// Made smaller at both ends by `by_rad` (larger when negative); `None` when nothing is left.
    #[must_use]
    pub fn shrunk(self, by_rad: f64) -> Option<Self> {
        Self::new(self.start_rad + by_rad, self.extent_rad - 2.0 * by_rad)
    }

    /// Turned by `by_rad`, clockwise positive.
    #[must_use]
    pub fn shifted(self, by_rad: f64) -> Self {
        Self {
            start_rad: wrapped(self.start_rad + by_rad),
            extent_rad: self.extent_rad,
        }
    }

    /// Seen from the other side, where angles run the other way.
    #[must_use]
    pub fn mirrored(self) -> Self {
        Self {
            start_rad: wrapped(-self.end_rad()),
            extent_rad: self.extent_rad,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn degrees(start: f64, extent: f64) -> Interval {
        Interval::from_degrees(start, extent).unwrap()
    }

    #[test]
    fn normalising() {
        assert!((degrees(-30.0, 60.0).start_rad - 330_f64.to_radians()).abs() < 1e-12);
        assert!(degrees(0.0, 400.0).is_full_turn());
        assert_eq!(Interval::from_degrees(0.0, 0.0), None);
        assert_eq!(Interval::from_degrees(0.0, f64::NAN), None);
        assert_eq!(Interval::from_degrees(f64::INFINITY, 1.0), None);
        assert!(wrapped(-1e-20) < TAU);
        assert!((Interval::between(6.0, 1.0).unwrap().extent_rad - (TAU - 5.0)).abs() < 1e-12);
    }

    #[test]
    fn overlaps_across_twelve_o_clock() {
        let over = degrees(350.0, 30.0);
        assert!(over.contains(0.0) && over.contains(20_f64.to_radians()) && !over.contains(3.0));
        assert!((over.overlap_length(degrees(10.0, 60.0)).to_degrees() - 10.0).abs() < 1e-12);
        // A 300 degree stretch meets a 120 degree one over the gap at both its ends.
        let both = degrees(0.0, 300.0).intersection(degrees(270.0, 120.0));
        assert_eq!(both.len(), 2);
        let total: f64 = both.iter().map(|part| part.extent_rad.to_degrees()).sum();
        assert!((total - 60.0).abs() < 1e-10);
        assert!(
            degrees(0.0, 30.0)
                .intersection(degrees(30.0, 30.0))
                .is_empty()
        );
        assert_eq!(Interval::full_turn().intersection(over), vec![over]);
        assert!((over.overlap_length(Interval::full_turn()).to_degrees() - 30.0).abs() < 1e-10);
    }

    #[test]
    fn shrinking_turning_mirroring() {
        let lug = degrees(10.0, 40.0);
        let shrunk = lug.shrunk(5_f64.to_radians()).unwrap();
        assert!((shrunk.start_rad.to_degrees() - 15.0).abs() < 1e-12);
        assert!((shrunk.extent_rad.to_degrees() - 30.0).abs() < 1e-12);
        assert_eq!(lug.shrunk(20_f64.to_radians()), None);
        assert!((lug.mirrored().start_rad.to_degrees() - 310.0).abs() < 1e-12);
        assert!(
            (lug.shifted(-0.5).middle_rad() - wrapped(30_f64.to_radians() - 0.5)).abs() < 1e-12
        );
        assert!((lug.distance_to(0.0).to_degrees() - 10.0).abs() < 1e-12);
        assert!(lug.distance_to(0.5).abs() < 1e-15);
    }
}
