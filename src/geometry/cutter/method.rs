//! The ways to mill the gap between two lugs, and why one does not work.

use thiserror::Error;

/// How the gaps are milled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// End mill parallel to the axis, fed radially on the centre line.
    CentreFeed,
    /// End mill parallel to the axis, fed radially beside the centre line by its radius: a true radial flank.
    OffsetFeed,
    /// End mill parallel to the axis, plunged and the work turned.
    PlungeAndTurn,
    /// End mill pointing at the axis.
    RadialOnCentre,
    /// End mill pointing past the axis by its radius: a true radial flank and a sharp corner.
    RadialOffset,
}

/// Which way the lugs stand out from the gap floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Lugs standing outward from a neck; the cutter comes from outside.
    Outward,
    /// Lugs standing inward from a bore; the cutter works inside it.
    Inward,
}

/// Why a gap cannot be milled like this.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum CutterError {
    /// A radius that is not above 0, or floor and tip the same.
    #[error(
        "gap floor {floor} and lug tip {tip} must be two different radii, and the cutter radius {cutter} above 0"
    )]
    Radii {
        /// Radius of the gap floor, mm.
        floor: f64,
        /// Radius of the lug tip, mm.
        tip: f64,
        /// Radius of the cutter, mm.
        cutter: f64,
    },
    /// A cutter that does not go into the bore.
    #[error(
        "a cutter of radius {cutter} cannot work inside this bore; take one of at most {limit:.3}"
    )]
    TooLarge {
        /// Radius of the cutter, mm.
        cutter: f64,
        /// Largest radius that works, mm.
        limit: f64,
    },
    /// A cutter pointing at the axis, for lugs that stand inward.
    #[error(
        "lugs inside a bore cannot be milled with the cutter pointing at the axis; set it parallel to the axis"
    )]
    RadialInside,
    /// A reference radius off the lug.
    #[error(
        "the radius {radius} that the lug angle refers to is not between gap floor and lug tip"
    )]
    Reference {
        /// The radius, mm.
        radius: f64,
    },
    /// A gap narrower than one plunge.
    #[error(
        "a gap of {gap_deg:.3} degrees is narrower than the cutter makes in one pass, {least_deg:.3}; take a smaller cutter"
    )]
    GapTooNarrow {
        /// The gap, degrees.
        gap_deg: f64,
        /// The least gap, degrees.
        least_deg: f64,
    },
}

/// What a radial cutter leaves standing of a flank at the back face when it runs over it by `overrun` only, mm;
/// nothing when it runs over by its radius.
#[must_use]
pub fn left_standing(cutter: f64, overrun: f64) -> f64 {
    let short = (cutter - overrun).clamp(0.0, cutter);
    cutter - (cutter * cutter - short * short).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn too_little_overrun() {
        // Own table for a cutter of radius 3.
        for (overrun, standing) in [
            (0.0, 3.000),
            (1.0, 0.764),
            (2.0, 0.172),
            (3.0, 0.0),
            (9.0, 0.0),
        ] {
            assert!((left_standing(3.0, overrun) - standing).abs() < 5e-4);
        }
    }
}
