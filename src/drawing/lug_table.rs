//! The angles of the lugs as they are set on the dividing head: from the body side, clockwise from the index mark.

use crate::drawing::number::{DecimalMark, plain};
use crate::geometry::{Side, seen_from};
use crate::ring::ResolvedRing;

/// Tolerance of an angle set on a dividing head, degrees (common practice, no source).
const INDEXED_DEG: f64 = 0.1;

/// A head of two lines, a line for each lug, and one for the lock hole where there is one.
#[must_use]
pub fn lug_table(ring: &ResolvedRing, mark: DecimalMark) -> Vec<String> {
    let number = |value: f64| plain(value, 2, mark);
    let index = ring.sizes.index_mark_angle;
    let behind =
        |clock_deg: f64| seen_from(Side::Body, (clock_deg - index).to_radians()).to_degrees();
    let mut lines = vec![
        "Lugs, seen from the body side,".to_owned(),
        "clockwise from the index mark:".to_owned(),
    ];
    for (place, lug) in numbered(ring) {
        // Seen from behind, the end of a lug comes first.
        let start = behind(lug.end_deg());
        lines.push(format!(
            "{place}: {}\u{b0} to {}\u{b0} \u{b1}{}\u{b0}",
            number(start),
            number(start + lug.extent_deg),
            number(INDEXED_DEG)
        ));
    }
    if ring.sizes.lock_hole_diameter > 0.0 {
        let hole = behind(ring.sizes.lock_hole_angle);
        lines.push(format!(
            "lock hole: {}\u{b0} \u{b1}{}\u{b0}",
            number(hole),
            number(INDEXED_DEG)
        ));
    }
    lines
}

/// The lugs with the numbers they have on every drawing.
pub fn numbered(ring: &ResolvedRing) -> impl Iterator<Item = (usize, &crate::mount::Sector)> {
    (1..).zip(&ring.lugs)
}
