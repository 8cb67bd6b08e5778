//! How far the image may lie from the sensor before it is seen: depth of focus, circle of confusion, diffraction.

use super::number::Number;
use super::ray_cone::corner_height;
use crate::document::{Design, FieldRef, Term};
use crate::mount::{BodyField, LensField, Unit};

/// Middle of the visible light, mm; from memory.
pub const WAVELENGTH_MM: f64 = 0.55e-3;

/// Half band of the depth of focus for a distant object, mm either way: `N c`.
///
/// The simple form errs on the strict side (public page on depth of focus).
#[must_use]
pub fn half_depth_mm<N: Number>(f_number: N, circle_mm: N) -> N {
    f_number * circle_mm
}

/// Diameter of the blur that an image out of place by `error_mm` makes of a distant point, mm: `e / N`, by similar
/// triangles behind a pupil of diameter `z / N`.
#[must_use]
pub fn blur_circle_mm<N: Number>(error_mm: N, f_number: N) -> N {
    error_mm / f_number
}

/// Half band of the depth of focus near by, mm either way: `N c (1 + m / P)` with magnification m and pupil
/// magnification P (exit pupil over entrance pupil). From memory, standard geometric optics; with P = 1 it
/// is the printed `N c (1 + m)`.
#[must_use]
pub fn half_depth_near_by_mm<N: Number>(
    f_number: N,
    circle_mm: N,
    magnification: N,
    pupil_magnification: N,
) -> N {
    half_depth_mm(f_number, circle_mm) * (N::from(1.0) + magnification / pupil_magnification)
}

/// Circle of confusion as a share of the format, mm: diagonal over a divisor. 1500 and 1000 are printed
/// conventions, 1730 is from memory.
#[must_use]
pub fn circle_of_format_mm<N: Number>(diagonal_mm: N, divisor: N) -> N {
    diagonal_mm / divisor
}

/// Circle of confusion of a sensor, mm: two pixels, the finest pair that it resolves; common practice, no source.
#[must_use]
pub fn circle_of_pixels_mm<N: Number>(pixel_pitch_mm: N) -> N {
    N::from(2.0) * pixel_pitch_mm
}

/// Defocus that diffraction hides, mm either way: `2 λ N²`, a quarter of a wave at the pupil's edge
/// (Rayleigh; from memory). Asking a ring for less is pointless.
#[must_use]
pub fn diffraction_half_depth_mm<N: Number>(f_number: N) -> N {
    N::from(2.0 * WAVELENGTH_MM) * f_number.clone() * f_number
}

/// What of a half band is left for the ring when the other parts take theirs in full, mm; negative where they
/// take more than there is.
#[must_use]
pub fn left_after_sum_mm(half_depth_mm: f64, others_mm: &[f64]) -> f64 {
    half_depth_mm - others_mm.iter().sum::<f64>()
}

/// What of a half band is left for the ring when the parts add by root sum square, mm; `None` where the
/// others take more than there is.
#[must_use]
pub fn left_after_root_sum_square_mm(half_depth_mm: f64, others_mm: &[f64]) -> Option<f64> {
    let left = half_depth_mm.powi(2) - others_mm.iter().map(|other| other * other).sum::<f64>();
    (left >= 0.0).then(|| left.sqrt())
}

/// The circle of two pixels of the body's sensor, mm.
///
/// # Errors
/// The pixel pitch, where it is unknown.
pub fn circle_by_pixels(design: &Design) -> Result<Term, Vec<FieldRef>> {
    let field = FieldRef::Body(BodyField::PixelPitch);
    let pitch = design
        .body
        .pixel_pitch
        .number()
        .ok_or_else(|| vec![field])?;
    Ok(circle_of_pixels_mm(Term::field(field, pitch)))
}

/// The defocus that diffraction hides at the lens's widest stop, mm either way.
///
/// # Errors
/// The f-number, where it is unknown.
pub fn diffraction_floor(design: &Design) -> Result<Term, Vec<FieldRef>> {
    let field = FieldRef::Lens(LensField::FNumber);
    let stop = design.lens.f_number.number().ok_or_else(|| vec![field])?;
    let stop = Term::field(field, stop);
    let wavelength = Term::named("wavelength", WAVELENGTH_MM * 1000.0, Unit::Um);
    Ok(2.0 * wavelength * stop.clone() * stop / 1000.0)
}

/// Image diagonal of the body's sensor, mm.
///
/// # Errors
/// Width or height, where they are unknown.
pub fn image_diagonal(design: &Design) -> Result<Term, Vec<FieldRef>> {
    Ok(2.0 * corner_height(&design.body)?)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mount::{Body, Interface, Lens};

    fn design() -> Design {
        let lens = Lens {
            f_number: Interface::measured(2.0, "engraved"),
            ..Lens::default()
        };
        let body = Body {
            pixel_pitch: Interface::measured(0.006, "data sheet"),
            sensor_width: Interface::measured(36.0, "data sheet"),
            sensor_height: Interface::measured(24.0, "data sheet"),
            ..Body::default()
        };
        Design::new(lens, body)
    }

    /// Two pixels of 6 um; f/2 and 0.55 um: 2 x 0.55 x 4 = 4.4 um; 36 x 24: 43.27. Worked by hand.
    #[test]
    fn terms_of_a_design() {
        let design = design();
        assert!((circle_by_pixels(&design).unwrap().value() - 0.012).abs() < 1e-12);
        let floor = diffraction_floor(&design).unwrap();
        assert!((floor.value() - diffraction_half_depth_mm(2.0)).abs() < 1e-15);
        assert!((floor.value() - 0.0044).abs() < 1e-12);
        assert!((image_diagonal(&design).unwrap().value() - 43.2666).abs() < 1e-4);
    }

    /// At the end of the depth of focus the blur is the circle of confusion: e = N c.
    #[test]
    fn the_blur_at_the_end_of_the_depth_is_the_circle() {
        let end = half_depth_mm(1.8, 0.029);
        assert!((blur_circle_mm(end, 1.8) - 0.029).abs() < 1e-15);
    }

    #[test]
    fn what_is_unknown_is_named() {
        let design = Design::new(Lens::default(), Body::default());
        let pitch = FieldRef::Body(BodyField::PixelPitch);
        assert_eq!(circle_by_pixels(&design).unwrap_err(), [pitch]);
        let stop = FieldRef::Lens(LensField::FNumber);
        assert_eq!(diffraction_floor(&design).unwrap_err(), [stop]);
        assert_eq!(image_diagonal(&design).unwrap_err().len(), 2);
    }

    #[test]
    fn nothing_is_left_where_the_others_take_all() {
        assert!(left_after_sum_mm(0.03, &[0.02, 0.02]) < 0.0);
        assert_eq!(left_after_root_sum_square_mm(0.01, &[0.02]), None);
        assert_eq!(left_after_root_sum_square_mm(0.02, &[]), Some(0.02));
    }
}
