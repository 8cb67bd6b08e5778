//! Whitworth form, 55 degrees, rounded crests and roots: the basic profile.
//!
//! Source: Machinery's Handbook 31 p. 2087 table 2. No tolerances are given here: lens threads of this form
//! are of no standard series, so limits are the basic sizes on one side and nothing on the other.

use super::limits::{Basis, Side, ThreadLimits};
use super::preferred::to_micrometre;

/// Half the flank angle, degrees.
pub const HALF_ANGLE_DEG: f64 = 27.5;
/// Height of the fundamental triangle over the pitch: 1 / (2 tan 27.5 deg).
pub const TRIANGLE_HEIGHT: f64 = 0.960_491_063_485_583;

/// Depth of thread over the pitch, 2/3 of the triangle.
pub const DEPTH: f64 = 2.0 / 3.0 * TRIANGLE_HEIGHT;
/// Radius at crest and root over the pitch.
pub const RADIUS: f64 = 0.137_329_083;
/// Height of the rounded crest above the end of the straight flank, over the pitch.
pub const ROUNDING_DEPTH: f64 = 0.073_917_569;

/// Basic limits in mm: least sizes of an internal thread, greatest of an external one.
#[must_use]
pub fn limits(nominal_mm: f64, pitch_mm: f64, side: Side) -> ThreadLimits {
    let mut limits = ThreadLimits::empty(
        side,
        Basis::Basic,
        "Whitworth form, basic profile (Machinery's Handbook 31 p. 2087)",
    );
    let major = Some(to_micrometre(nominal_mm));
    let pitch_diameter = Some(to_micrometre(nominal_mm - DEPTH * pitch_mm));
    let minor = Some(to_micrometre(nominal_mm - 2.0 * DEPTH * pitch_mm));
    match side {
        Side::Internal => {
            limits.major_min = major;
            limits.pitch_diameter_min = pitch_diameter;
            limits.minor_min = minor;
        }
        Side::External => {
            limits.major_max = major;
            limits.pitch_diameter_max = pitch_diameter;
            limits.minor_max = minor;
        }
    }
    limits.notes.push(
        "Basic sizes only: no tolerances are given for a Whitworth form outside its standard series; fit it to the mating thread.".to_owned(),
    );
    limits
}
