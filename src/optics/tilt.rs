//! A lens that sits askew or off centre: what that does to the corners of the image.

use super::number::Number;

/// Tangent of the tilt of a seat that is out of parallel by `parallelism_mm` over `seat_diameter_mm`.
///
/// The whole error counts: seat, flange, the body's own flange, and what springs let a heavy lens lift.
#[must_use]
pub fn tilt_slope<N: Number>(parallelism_mm: N, seat_diameter_mm: N) -> N {
    parallelism_mm / seat_diameter_mm
}

/// Defocus at `radius_mm` from the middle of the image, along the tilt, mm: `r P (1 + m) / D`.
///
/// Worked by hand; rays traced through a tilted thin lens gave the factor `1 + m` to four figures.
#[must_use]
pub fn corner_defocus_mm<N: Number>(
    parallelism_mm: N,
    seat_diameter_mm: N,
    radius_mm: N,
    magnification: N,
) -> N {
    radius_mm * tilt_slope(parallelism_mm, seat_diameter_mm) * (N::from(1.0) + magnification)
}

/// The most that seat and flange may be out of parallel for the corner to stay within the depth of focus, mm:
/// `D (half depth - |focus error|) / (r (1 + m))`. Negative where the focus error alone takes it all.
#[must_use]
pub fn greatest_parallelism_mm<N: Number>(
    seat_diameter_mm: N,
    half_depth_mm: N,
    focus_error_mm: N,
    radius_mm: N,
    magnification: N,
) -> N {
    seat_diameter_mm * (half_depth_mm - focus_error_mm)
        / (radius_mm * (N::from(1.0) + magnification))
}

/// Radius of the image circle that a lens must have when it sits `decentre_mm` off the axis, mm:
/// half the diagonal and the shift `s (1 + m)` of the image. Worked by hand.
#[must_use]
pub fn image_circle_radius_mm<N: Number>(
    half_diagonal_mm: N,
    decentre_mm: N,
    magnification: N,
) -> N {
    half_diagonal_mm + decentre_mm * (N::from(1.0) + magnification)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Term;
    use crate::mount::Unit;

    /// The greatest parallelism is the one whose corner defocus is just what is left.
    #[test]
    fn the_two_formulas_are_each_others_inverse() {
        let most = greatest_parallelism_mm(60.0, 0.0522, 0.02, 21.63, 0.1);
        let defocus = corner_defocus_mm(most, 60.0, 21.63, 0.1);
        assert!((defocus + 0.02 - 0.0522).abs() < 1e-12);
        assert!(greatest_parallelism_mm(60.0, 0.01, 0.02, 21.63, 0.0) < 0.0);
    }

    #[test]
    fn the_working_can_be_shown() {
        let term = |name, value| Term::named(name, value, Unit::Mm);
        let defocus = corner_defocus_mm(
            term("parallelism", 0.02),
            term("seat diameter", 60.0),
            term("corner of the sensor", 21.63),
            0.0.into(),
        );
        assert_eq!(
            defocus.formula(),
            "corner of the sensor × parallelism / seat diameter × (1 + 0)"
        );
        assert!((defocus.value() - 0.00721).abs() < 5e-6);
    }
}
