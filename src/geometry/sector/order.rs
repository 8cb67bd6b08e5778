//! Whether the sectors of a list keep out of each other's way.

use std::f64::consts::TAU;

use thiserror::Error;

use super::Interval;
use super::interval::{SAME_ANGLE, wrapped};

/// Two sectors of one list that overlap.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
#[error("sectors {} and {} overlap; each must end before the next begins", first + 1, second + 1)]
pub struct OverlapError {
    /// Index of one, counted from 0.
    pub first: usize,
    /// Index of the other.
    pub second: usize,
}

/// Refuses a list of which two overlap, and so also one that exceeds a full turn. Sectors may touch.
///
/// # Errors
/// [`OverlapError`] with two that overlap, the lower index first.
pub fn disjoint(list: &[Interval]) -> Result<(), OverlapError> {
    let mut order: Vec<usize> = (0..list.len()).collect();
    order.sort_by(|a, b| list[*a].start_rad.total_cmp(&list[*b].start_rad));
    let nexts = order.iter().cycle().skip(1);
    for (&this, &next) in order.iter().zip(nexts) {
        let way = wrapped(list[next].start_rad - list[this].start_rad);
        // Alone on the circle, a sector meets itself after a full turn.
        let room = if this == next { TAU } else { way };
        let is_together = room > TAU - SAME_ANGLE && this != next;
        if is_together || list[this].extent_rad > room + SAME_ANGLE {
            return Err(OverlapError {
                first: this.min(next),
                second: this.max(next),
            });
        }
    }
    Ok(())
}

/// The same for pairs of start and extent in degrees, as a document holds them.
///
/// # Errors
/// The indices of two that overlap; of one twice when it is no sector at all (extent not above 0 or over a full
/// turn, or not a number).
pub fn disjoint_degrees(list: &[(f64, f64)]) -> Result<(), (usize, usize)> {
    let mut intervals = Vec::with_capacity(list.len());
    for (index, &(start_deg, extent_deg)) in list.iter().enumerate() {
        match Interval::from_degrees(start_deg, extent_deg) {
            Some(interval) if extent_deg <= 360.0 => intervals.push(interval),
            Some(_) | None => return Err((index, index)),
        }
    }
    disjoint(&intervals).map_err(|overlap| (overlap.first, overlap.second))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn touching_is_allowed_and_overlap_is_named() {
        assert_eq!(
            disjoint_degrees(&[(0.0, 120.0), (120.0, 120.0), (240.0, 120.0)]),
            Ok(())
        );
        assert_eq!(
            disjoint_degrees(&[(240.0, 121.0), (120.0, 120.0), (0.0, 120.0)]),
            Err((0, 2))
        );
        assert_eq!(disjoint_degrees(&[(350.0, 20.0), (5.0, 20.0)]), Err((0, 1)));
        assert_eq!(disjoint_degrees(&[(10.0, 20.0), (10.0, 20.0)]), Err((0, 1)));
        assert_eq!(disjoint_degrees(&[(10.0, 360.0)]), Ok(()));
        assert_eq!(disjoint_degrees(&[(10.0, 361.0)]), Err((0, 0)));
        assert_eq!(
            disjoint_degrees(&[(10.0, 20.0), (f64::NAN, 3.0)]),
            Err((1, 1))
        );
        assert_eq!(disjoint_degrees(&[(10.0, 360.0), (50.0, 1.0)]), Err((0, 1)));
        assert_eq!(disjoint_degrees(&[]), Ok(()));
    }

    #[test]
    fn the_message_counts_from_one() {
        let fault = OverlapError {
            first: 0,
            second: 2,
        };
        assert!(fault.to_string().starts_with("sectors 1 and 3 overlap"));
    }
}
