//! Sectors of the clock face against each other: the gaps between two, and what a list covers of one.

use crate::geometry::Interval;
use crate::mount::Sector;

/// The sectors as intervals of the circle; one without extent is none.
#[must_use]
pub fn intervals(sectors: &[Sector]) -> Vec<Interval> {
    sectors
        .iter()
        .filter_map(|sector| Interval::from_degrees(sector.start_deg, sector.extent_deg))
        .collect()
}

/// The angle of an interval that any of the others covers, degrees; the others do not overlap each other.
#[must_use]
pub fn covered_deg(interval: Interval, others: &[Interval]) -> f64 {
    others
        .iter()
        .map(|other| interval.overlap_length(*other))
        .sum::<f64>()
        .to_degrees()
}

/// Angle from the end of `other` to the start of `sector`, and from the end of `sector` to the start of `other`,
/// both clockwise, degrees. Where the two overlap the smaller overlap is given as a negative gap on its side.
#[must_use]
pub fn gaps_deg(sector: Sector, other: Sector) -> (f64, f64) {
    let free = 360.0 - sector.extent_deg - other.extent_deg;
    let after = (other.start_deg - sector.end_deg()).rem_euclid(360.0);
    // The same angle a turn less is the overlap on the far side.
    let wrapped = after - 360.0;
    let tighter = |after: f64| after.min(free - after);
    let after = if tighter(wrapped) > tighter(after) {
        wrapped
    } else {
        after
    };
    (free - after, after)
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

    fn close(a: f64, b: f64) -> bool {
        (a - b).abs() < 1e-9
    }

    // Plain arithmetic on the clock face.
    #[test]
    fn gaps_of_sectors_apart_close_the_circle() {
        let (before, after) = gaps_deg(sector(10.0, 30.0), sector(350.0, 10.0));
        assert!(close(before, 10.0) && close(after, 310.0));
    }

    #[test]
    fn the_smaller_overlap_is_the_negative_gap() {
        let (before, after) = gaps_deg(sector(10.0, 30.0), sector(38.0, 20.0));
        assert!(
            close(after, -2.0) && close(before, 312.0),
            "{before} {after}"
        );
        let (before, after) = gaps_deg(sector(10.0, 30.0), sector(352.0, 20.0));
        assert!(
            close(before, -2.0) && close(after, 312.0),
            "{before} {after}"
        );
        let (before, after) = gaps_deg(sector(355.0, 10.0), sector(4.0, 10.0));
        assert!(
            close(after, -1.0) && close(before, 341.0),
            "{before} {after}"
        );
    }

    #[test]
    fn covered_angles_add_up() {
        let ear = intervals(&[sector(350.0, 40.0)])[0];
        let covered = |others: &[Sector]| covered_deg(ear, &intervals(others));
        assert!(close(
            covered(&[sector(340.0, 20.0), sector(5.0, 10.0)]),
            20.0
        ));
        assert!(close(
            covered(&[sector(100.0, 20.0), sector(200.0, 0.0)]),
            0.0
        ));
        assert!(close(covered(&[]), 0.0));
    }
}
