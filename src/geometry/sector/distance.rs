//! The distance between sectors, and from a sector to a round hole or pin.

use super::AnnularSector;
use crate::geometry::closest::closest;
use crate::geometry::{Point, Segment, plan_point};

impl AnnularSector {
    /// The distance to another sector about the same axis, mm; 0 when they touch or overlap.
    #[must_use]
    pub fn distance_to(&self, other: &Self) -> f64 {
        let radial = (other.inner - self.outer).max(self.inner - other.outer);
        if !self.interval.intersection(other.interval).is_empty() {
            return radial.max(0.0);
        }
        // Without a shared angle the nearest places lie on flanks, or on a flank and an arc's end.
        let mut least = f64::INFINITY;
        for one in self.flanks() {
            for two in other.flanks() {
                least = least.min(closest(&one, &two).square);
            }
        }
        least.sqrt()
    }

    /// The distance to a disc, a pin or a hole, mm; 0 when they touch or overlap.
    #[must_use]
    pub fn distance_to_disc(&self, centre: Point, radius: f64) -> f64 {
        (self.distance_to_point(centre) - radius).max(0.0)
    }

    /// The metal between a round hole inside the sector and the sector's edge, mm; negative when the hole breaks
    /// out.
    #[must_use]
    pub fn edge_around_hole(&self, centre: Point, radius: f64) -> f64 {
        let from_axis = centre.norm();
        let mut least = self.outer - from_axis;
        if self.inner > 0.0 {
            least = least.min(from_axis - self.inner);
        }
        if !self.interval.is_full_turn() {
            for flank in self.flanks() {
                least = least.min(flank.nearest(centre).distance(centre));
            }
        }
        let is_inside = self.contains(centre);
        (if is_inside {
            least
        } else {
            -self.distance_to_point(centre)
        }) - radius
    }

    fn distance_to_point(&self, point: Point) -> f64 {
        let radius = point.norm();
        let radial = (self.inner - radius).max(radius - self.outer).max(0.0);
        if self.interval.is_full_turn() || self.interval.contains(crate::geometry::clock_of(point))
        {
            return radial;
        }
        let [start, end] = self.flanks();
        start
            .nearest(point)
            .distance(point)
            .min(end.nearest(point).distance(point))
    }

    fn flanks(&self) -> [Segment; 2] {
        [self.interval.start_rad, self.interval.end_rad()].map(|clock| {
            Segment::line(plan_point(self.inner, clock), plan_point(self.outer, clock))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::super::Interval;
    use super::*;
    use crate::geometry::clearance;

    fn sector(inner: f64, outer: f64, start: f64, extent: f64) -> AnnularSector {
        AnnularSector::new(inner, outer, Interval::from_degrees(start, extent).unwrap()).unwrap()
    }

    #[test]
    fn agrees_with_the_outlines() {
        let lug = sector(20.0, 23.0, 350.0, 40.0);
        let others = [
            sector(20.0, 23.0, 40.0, 30.0),
            sector(24.0, 25.0, 0.0, 30.0),
            sector(24.0, 25.0, 60.0, 30.0),
            sector(10.0, 11.0, 100.0, 150.0),
            sector(5.0, 30.0, 31.0, 300.0),
        ];
        for other in others {
            let exact = clearance(
                &lug.outline(0.0, 0.0).unwrap(),
                &other.outline(0.0, 0.0).unwrap(),
            );
            assert!(
                (lug.distance_to(&other) - exact.distance).abs() < 1e-12,
                "{other:?}"
            );
            assert!((other.distance_to(&lug) - exact.distance).abs() < 1e-12);
        }
        assert!(lug.distance_to(&sector(22.0, 25.0, 20.0, 30.0)) <= 0.0);
    }

    #[test]
    fn pins_and_holes() {
        let lug = sector(20.0, 24.0, 350.0, 20.0);
        assert!((lug.distance_to_disc(Point::new(0.0, 26.0), 0.5) - 1.5).abs() < 1e-12);
        assert!(lug.distance_to_disc(Point::new(0.0, 24.2), 0.5) <= 0.0);
        assert!((lug.edge_around_hole(Point::new(0.0, 22.5), 0.5) - 1.0).abs() < 1e-12);
        let near_flank = plan_point(22.0, 5_f64.to_radians());
        let expected = 22.0 * 5_f64.to_radians().sin() - 0.5;
        assert!((lug.edge_around_hole(near_flank, 0.5) - expected).abs() < 1e-12);
        assert!((lug.edge_around_hole(Point::new(0.0, 25.0), 0.5) + 1.5).abs() < 1e-12);
        let ring = sector(20.0, 24.0, 0.0, 360.0);
        assert!((ring.edge_around_hole(Point::new(0.0, -22.0), 0.5) - 1.5).abs() < 1e-12);
    }
}
