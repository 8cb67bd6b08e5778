//! The lugs as the cutter really leaves them, asked over all radii at which they meet the ears.

use crate::mount::Sector;
use crate::ring::{ResolvedRing, lug_intrusion, most_in};

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

#[cfg(test)]
mod tests {
    use super::*;

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
