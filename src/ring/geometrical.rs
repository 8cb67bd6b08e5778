//! Geometrical tolerances of the ring: how true its faces and axes must be to each other.

use super::resolved::Derivation;
use crate::document::RingKey;

/// Form and position tolerances of one ring, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Geometrical {
    /// Parallelism of the lens seat to the flange rear face, mm.
    pub seat_parallelism_mm: f64,
    /// Circular run-out of the thread to the axis of the spigot, mm.
    pub thread_run_out_mm: f64,
}

/// Finest parallelism that is asked for, mm (common practice, no source).
const FINEST: f64 = 0.01;
/// Run-out of a thread chased in the setting in which the spigot was turned, mm (common practice, no source).
const RUN_OUT: f64 = 0.05;

/// The tolerances of a ring. The seat is parallel to the flange within half the width of its height tolerance, so
/// that a height measured at one place holds all round (common practice, no source).
#[must_use]
pub fn geometrical(derivation: &Derivation) -> Geometrical {
    let half_width = derivation
        .dimension(RingKey::SeatHeight)
        .map_or(0.0, |state| (state.deviations.1 - state.deviations.0) / 2.0);
    Geometrical {
        seat_parallelism_mm: half_width.max(FINEST),
        thread_run_out_mm: RUN_OUT,
    }
}
