//! The lugs as the cutter really leaves them, asked over all radii at which they meet the ears.

use crate::mount::Sector;
use crate::ring::{ResolvedRing, lug_intrusion};

/// Radii looked at before the search narrows down: a flank has at most two kinks between root and tip.
const STATIONS: u32 = 32;
/// Steps of the golden section: 0.618 ^ 40 of a station is far under a nanometre.
const STEPS: u32 = 40;

/// Angle by which the lug stands beyond its true radial flank at a radius, each side, degrees.
#[must_use]
pub fn stands_out_deg(ring: &ResolvedRing, radius_mm: f64) -> f64 {
    (lug_intrusion(ring, radius_mm) / radius_mm).to_degrees()
}

/// The most that the lug stands out at any of the radii, degrees.
#[must_use]
pub fn widest_deg(ring: &ResolvedRing, radii_mm: (f64, f64)) -> f64 {
    most_in(radii_mm, |radius| stands_out_deg(ring, radius)).1
}

/// The least that the lug stands out at any of the radii, degrees; negative where too much is cut away.
#[must_use]
pub fn narrowest_deg(ring: &ResolvedRing, radii_mm: (f64, f64)) -> f64 {
    -most_in(radii_mm, |radius| -stands_out_deg(ring, radius)).1
}

/// The lug wider by an angle on both sides.
#[must_use]
pub fn widened(lug: Sector, by_deg: f64) -> Sector {
    Sector {
        start_deg: lug.start_deg - by_deg,
        extent_deg: lug.extent_deg + 2.0 * by_deg,
    }
}

/// The radius at which `what` is greatest, and its value there: stations first, then a golden section between the
/// neighbours of the best one.
pub fn most_in((inner_mm, outer_mm): (f64, f64), what: impl Fn(f64) -> f64) -> (f64, f64) {
    let step = (outer_mm - inner_mm) / f64::from(STATIONS);
    let at = |index: u32| {
        if index == STATIONS {
            outer_mm
        } else {
            inner_mm + f64::from(index) * step
        }
    };
    let (best, most) = (0..=STATIONS).map(|index| (index, what(at(index)))).fold(
        (0, f64::NEG_INFINITY),
        |best, next| {
            if next.1 > best.1 { next } else { best }
        },
    );
    let (mut low, mut high) = (at(best.saturating_sub(1)), at((best + 1).min(STATIONS)));
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    for _ in 0..STEPS {
        let (left, right) = (high - golden * (high - low), low + golden * (high - low));
        if what(left) > what(right) {
            high = right;
        } else {
            low = left;
        }
    }
    let middle = f64::midpoint(low, high);
    let found = what(middle);
    if found > most {
        (middle, found)
    } else {
        (at(best), most)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_greatest_is_found_inside_and_at_an_end() {
        let (radius, most) = most_in((1.0, 4.0), |x| -(x - 2.345) * (x - 2.345));
        assert!((radius - 2.345).abs() < 1e-6 && most.abs() < 1e-9);
        assert_eq!(most_in((1.0, 4.0), |x| -x), (1.0, -1.0));
        assert_eq!(most_in((1.0, 4.0), |x| x), (4.0, 4.0));
    }

    #[test]
    fn a_lug_is_widened_on_both_sides() {
        let lug = widened(
            Sector {
                start_deg: 10.0,
                extent_deg: 30.0,
            },
            2.0,
        );
        assert_eq!((lug.start_deg, lug.extent_deg), (8.0, 34.0));
    }
}
