//! Where the half-section of a ring is best cut.

use super::resolved::ResolvedRing;

/// Clock angle through the middle of the first lug, degrees from 0 to 360: there the section shows the lug. 0 for a
/// ring without lugs.
#[must_use]
pub fn cut_through_a_lug(ring: &ResolvedRing) -> f64 {
    ring.lugs
        .first()
        .map_or(0.0, |lug| lug.middle_deg().rem_euclid(360.0))
}
