//! Gaps between an obstacle and what moves past it: turned bodies that drop in, and lugs that turn besides.

use crate::geometry::{
    AnnularSector, Interval, Outline, OutlineBuilder, Point, clearance, interference,
};
use crate::mount::{Obstacle, Sector};

use super::plan_angles::gaps_deg;

/// A drop along the axis begins this far out, mm: farther than any lens is long.
const DROP: f64 = 1000.0;

/// An annular sector with a thickness: lengths mm, angles clock degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Box3 {
    /// From and to along the axis.
    pub z: (f64, f64),
    /// Inner and outer radius.
    pub r: (f64, f64),
    /// Place on the clock face.
    pub sector: Sector,
}

impl Box3 {
    /// The obstacle as it stands.
    #[must_use]
    pub const fn of(obstacle: &Obstacle) -> Self {
        Self {
            z: (obstacle.from_z_mm, obstacle.to_z_mm),
            r: (obstacle.inner_radius_mm, obstacle.outer_radius_mm),
            sector: obstacle.sector,
        }
    }

    fn in_plan(self) -> Option<AnnularSector> {
        let interval = Interval::from_degrees(self.sector.start_deg, self.sector.extent_deg)?;
        AnnularSector::new(self.r.0, self.r.1, interval).ok()
    }

    /// All that it passes, seen from a ring that drops in toward the sensor.
    #[must_use]
    pub fn swept_to_the_rear(self) -> Self {
        Self {
            z: (self.z.0, self.z.1 + DROP),
            ..self
        }
    }
}

/// Gap between an obstacle and a body of revolution that drops in along the axis, mm; negative by the depth to which
/// they run into each other.
#[must_use]
pub fn gap_to_turned<T: Copy + PartialEq>(body: &Outline<T>, obstacle: &Obstacle) -> f64 {
    let swept = Box3::of(obstacle).swept_to_the_rear();
    let outline = OutlineBuilder::start(Point::new(swept.z.0, swept.r.0))
        .line_to(Point::new(swept.z.1, swept.r.0), ())
        .line_to(Point::new(swept.z.1, swept.r.1), ())
        .line_to(Point::new(swept.z.0, swept.r.1), ())
        .close(());
    // A plate without thickness is met where its edge is met.
    let Ok(outline) = outline else {
        return body.nearest(Point::new(swept.z.0, swept.r.0)).2;
    };
    let nearest = clearance(body, &outline);
    if nearest.is_free() {
        nearest.distance
    } else {
        -interference(body, &outline).map_or(0.0, |clash| clash.depth)
    }
}

/// Gap between a lug and an obstacle, mm; negative by the least of the three overlaps where they share a place.
#[must_use]
pub fn gap_to_lug(lug: Box3, obstacle: Box3) -> f64 {
    let along = span_gap(lug.z, obstacle.z);
    let in_plan = match (lug.in_plan(), obstacle.in_plan()) {
        (Some(lug), Some(obstacle)) => lug.distance_to(&obstacle),
        // An obstacle without width or angle is no obstacle.
        (None | Some(_), None) | (None, Some(_)) => return f64::INFINITY,
    };
    if in_plan > 0.0 || along > 0.0 {
        return along.max(0.0).hypot(in_plan);
    }
    let (before, after) = gaps_deg(lug.sector, obstacle.sector);
    let around = before.min(after).to_radians() * lug.r.0.max(obstacle.r.0);
    along.max(span_gap(lug.r, obstacle.r)).max(around)
}

/// From the end of one span to the start of the other, negative where they overlap.
fn span_gap(a: (f64, f64), b: (f64, f64)) -> f64 {
    (b.0 - a.1).max(a.0 - b.1)
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn sector(start_deg: f64, extent_deg: f64) -> Sector {
        Sector {
            start_deg,
            extent_deg,
        }
    }

    const LUG: Box3 = Box3 {
        z: (3.0, 4.0),
        r: (24.0, 27.0),
        sector: sector(0.0, 60.0),
    };

    fn close(a: f64, b: f64) -> bool {
        (a - b).abs() < 1e-9
    }

    // Plain trigonometry.
    #[test]
    fn gaps_along_the_axis_and_in_radius() {
        assert!(close(
            gap_to_lug(
                LUG,
                Box3 {
                    z: (5.0, 8.0),
                    ..LUG
                }
            ),
            1.0
        ));
        assert!(close(
            gap_to_lug(
                LUG,
                Box3 {
                    z: (7.0, 8.0),
                    r: (31.0, 40.0),
                    ..LUG
                }
            ),
            5.0
        ));
    }

    #[test]
    fn a_gap_round_the_axis_is_the_distance_of_the_edges() {
        // 60 degrees apart, radii 24..27 both: nearest at the inner ends, a triangle with three equal sides.
        let other = Box3 {
            sector: sector(120.0, 10.0),
            ..LUG
        };
        assert!(close(gap_to_lug(LUG, other), 24.0));
        // 90 degrees apart: the inner end of one over the axis of the other.
        let square = Box3 {
            sector: sector(150.0, 10.0),
            ..LUG
        };
        assert!(close(gap_to_lug(LUG, square), 24.0 * 2.0_f64.sqrt()));
    }

    #[test]
    fn a_shared_place_is_a_negative_gap() {
        let shared = Box3 {
            z: (3.9, 6.0),
            r: (20.0, 25.0),
            sector: sector(59.0, 5.0),
        };
        assert!(close(gap_to_lug(LUG, shared), -0.1));
    }

    #[test]
    fn a_turned_body_cannot_drop_past_what_stands_over_it() {
        let disc = OutlineBuilder::start(Point::new(-2.0, 10.0))
            .line_to(Point::new(0.0, 10.0), ())
            .line_to(Point::new(0.0, 30.0), ())
            .line_to(Point::new(-2.0, 30.0), ())
            .close(())
            .unwrap();
        let overhang = |inner_radius_mm: f64| Obstacle {
            name: "overhang".to_owned(),
            sector: sector(0.0, 30.0),
            inner_radius_mm,
            outer_radius_mm: 60.0,
            from_z_mm: -30.0,
            to_z_mm: -20.0,
        };
        assert!(close(gap_to_turned(&disc, &overhang(30.4)), 0.4));
        assert!(close(gap_to_turned(&disc, &overhang(29.5)), -0.5));
    }
}
