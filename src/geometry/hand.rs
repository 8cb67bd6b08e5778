//! The clock face of the plan, and the one place where it is turned round to be seen from the other side.
//!
//! Clock angles: 0 at 12 o'clock, clockwise positive, seen from the lens side; radians, as everywhere on this floor.

use super::Point;
use super::sector::wrapped;

/// The side from which a plan is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// From the lens toward the sensor: angles as they are stored.
    Lens,
    /// From the body toward the lens: every angle and every x runs the other way.
    Body,
}

/// A clock angle as it reads from a side, 0 to below a full turn. Turning round twice gives the angle back, so the
/// same function leads from what is read on the body side to what is stored.
#[must_use]
pub fn seen_from(side: Side, clock_rad: f64) -> f64 {
    match side {
        Side::Lens => wrapped(clock_rad),
        Side::Body => wrapped(-clock_rad),
    }
}

/// The place in the plan at a radius and a clock angle: x to the right, y up.
#[must_use]
pub fn plan_point(radius: f64, clock_rad: f64) -> Point {
    let (sin, cos) = clock_rad.sin_cos();
    Point::new(radius * sin, radius * cos)
}

/// The clock angle of a place in the plan, 0 to below a full turn.
#[must_use]
pub fn clock_of(point: Point) -> f64 {
    wrapped(point.x.atan2(point.y))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An asymmetric pattern, as one reads it off the two faces of a clock drawn on glass.
    const PATTERN: [(f64, f64); 4] = [(0.0, 0.0), (30.0, 330.0), (100.0, 260.0), (275.0, 85.0)];

    #[test]
    fn an_asymmetric_pattern_from_both_sides() {
        for (lens, body) in PATTERN {
            let stored = f64::to_radians(lens);
            assert!((seen_from(Side::Body, stored).to_degrees() - body).abs() < 1e-12);
            assert!((seen_from(Side::Lens, stored).to_degrees() - lens).abs() < 1e-12);
            let back = seen_from(Side::Body, seen_from(Side::Body, stored));
            assert!((back.to_degrees() - lens).abs() < 1e-12);
            // The place itself is mirrored left to right.
            let there = plan_point(10.0, stored).mirrored();
            assert!(there.distance(plan_point(10.0, seen_from(Side::Body, stored))) < 1e-13);
            assert!((clock_of(there).to_degrees() - body).abs() < 1e-12);
        }
    }

    #[test]
    fn three_o_clock_is_on_the_right() {
        assert!(plan_point(2.0, 90_f64.to_radians()).distance(Point::new(2.0, 0.0)) < 1e-15);
        assert!((clock_of(Point::new(-1.0, 0.0)).to_degrees() - 270.0).abs() < 1e-12);
    }
}
