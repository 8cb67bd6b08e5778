//! The exit pupil: the bright disc that the sensor looks at.

use super::number::Number;
use crate::document::{FieldRef, Term};
use crate::mount::{Lens, LensField};

/// A round, evenly lit, centred exit pupil. It keeps its diameter when the whole lens is moved to focus.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExitPupil {
    at_infinity_mm: f64,
    distance_mm: f64,
}

impl ExitPupil {
    /// The pupil of a lens focused at infinity, `distance_mm` from the image plane.
    #[must_use]
    pub const fn at_infinity(distance_mm: f64) -> Self {
        Self {
            at_infinity_mm: distance_mm,
            distance_mm,
        }
    }

    /// The same pupil when the lens stands `extension_mm` out to focus near by.
    #[must_use]
    pub const fn moved_out(self, extension_mm: f64) -> Self {
        Self {
            at_infinity_mm: self.at_infinity_mm,
            distance_mm: self.at_infinity_mm + extension_mm,
        }
    }

    /// Its distance from the image plane, mm.
    #[must_use]
    pub const fn distance_mm(&self) -> f64 {
        self.distance_mm
    }

    /// Its diameter at an engraved f-number, mm: the infinity distance over N (paraxial identity; a trace of
    /// the 50 mm f/2 prescription of US patent 2,673,491 gives the same).
    #[must_use]
    pub fn diameter_mm(&self, f_number: f64) -> f64 {
        self.at_infinity_mm / f_number
    }

    /// Fall-off of the light that comes from the slant alone, `cos⁴`, at `height_mm` from the middle of the
    /// image. It is the lens's own and no fault of a ring.
    #[must_use]
    pub fn slant_share(&self, height_mm: f64) -> f64 {
        let square = 1.0 + (height_mm / self.distance_mm).powi(2);
        1.0 / (square * square)
    }
}

/// Radius that must stay clear at `distance_mm` from the image for a pupil at `pupil_distance_mm` with
/// `pupil_diameter_mm`, so that the point at `height_mm` sees all of it, mm. From similar triangles; holds
/// between image and pupil.
#[must_use]
pub fn clear_radius_mm<N: Number>(
    height_mm: N,
    distance_mm: N,
    pupil_distance_mm: N,
    pupil_diameter_mm: N,
) -> N {
    let share = distance_mm / pupil_distance_mm;
    height_mm * (N::from(1.0) - share.clone()) + pupil_diameter_mm / N::from(2.0) * share
}

/// The exit pupil's distance from the image at infinity, mm: as measured, else focal length times pupil
/// magnification, which is the same by paraxial optics.
///
/// # Errors
/// The exit pupil's field, where neither way is known.
pub fn exit_pupil_distance(lens: &Lens) -> Result<Term, Vec<FieldRef>> {
    let term = |key: LensField| {
        lens.field(key)
            .number()
            .map(|value| Term::field(FieldRef::Lens(key), value))
    };
    let by_pupils = || Some(term(LensField::FocalLength)? * term(LensField::PupilMagnification)?);
    term(LensField::ExitPupilDistance)
        .or_else(by_pupils)
        .ok_or_else(|| vec![FieldRef::Lens(LensField::ExitPupilDistance)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mount::Interface;

    #[test]
    fn a_measured_pupil_comes_before_a_reckoned_one() {
        let known = |value| Interface::measured(value, "rule");
        let mut lens = Lens {
            focal_length: known(50.0),
            ..Lens::default()
        };
        let field = FieldRef::Lens(LensField::ExitPupilDistance);
        assert_eq!(exit_pupil_distance(&lens).unwrap_err(), [field]);
        lens.pupil_magnification = known(1.2);
        assert!((exit_pupil_distance(&lens).unwrap().value() - 60.0).abs() < 1e-12);
        lens.exit_pupil_distance = known(62.0);
        assert!((exit_pupil_distance(&lens).unwrap().value() - 62.0).abs() < 1e-12);
    }

    #[test]
    fn the_pupil_moves_out_and_keeps_its_size() {
        let near = ExitPupil::at_infinity(60.0).moved_out(5.0);
        assert!((near.distance_mm() - 65.0).abs() < 1e-12);
        assert!((near.diameter_mm(2.0) - 30.0).abs() < 1e-12);
        assert!((near.slant_share(0.0) - 1.0).abs() < 1e-15);
    }
}
