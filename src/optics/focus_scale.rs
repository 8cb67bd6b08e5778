//! Where a lens is really sharp when the ring holds it too near or too far, and what its scale then reads.
//!
//! Thin-lens equation for a lens that is focused by moving the whole of it; worked by hand. The shift of the
//! image is right for every lens; distances hold for a lens with internal focusing only at its infinity mark.
//! An error is positive where the ring is too thick, which is the lens too far from the sensor.

use super::number::Number;

/// Distance of the object that is sharp when the lens stands `extension_mm` farther out than for infinity,
/// mm from the front principal plane: `f + f² / extension`.
///
/// `extension_mm` must be positive. It is the error of a ring too thick at the infinity stop (the farthest
/// sharp distance), or the amount of a ring too thin (the reading of the scale at which infinity is sharp).
#[must_use]
pub fn object_distance_mm<N: Number>(focal_length_mm: N, extension_mm: N) -> N {
    focal_length_mm.clone() + focal_length_mm.clone() * focal_length_mm / extension_mm
}

/// How far the lens stands out from its infinity place to be sharp at `distance_mm` from the front principal
/// plane, mm: `f² / (distance - f)`. The distance must exceed the focal length.
#[must_use]
pub fn extension_mm<N: Number>(focal_length_mm: N, distance_mm: N) -> N {
    focal_length_mm.clone() * focal_length_mm.clone() / (distance_mm - focal_length_mm)
}

/// Reading of the distance scale at which true infinity is sharp, mm from the front principal plane, when
/// the ring is off by `error_mm`. `None` where the lens does not reach infinity at all (ring too thick);
/// infinite where it stands exactly right.
#[must_use]
pub fn infinity_mark_mm(focal_length_mm: f64, error_mm: f64) -> Option<f64> {
    (error_mm <= 0.0).then(|| object_distance_mm(focal_length_mm, error_mm.abs()))
}

/// The distance scale of a lens, which counts from the image plane as engraved scales do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FocusScale {
    /// Focal length, mm.
    pub focal_length_mm: f64,
    /// Distance between the two principal planes, mm; 0 where it is not known.
    pub principal_gap_mm: f64,
}

impl FocusScale {
    /// The scale of a thin lens.
    #[must_use]
    pub const fn thin(focal_length_mm: f64) -> Self {
        Self {
            focal_length_mm,
            principal_gap_mm: 0.0,
        }
    }

    /// The least distance from object to image plane that the lens can bridge, mm: `4 f` and the gap.
    #[must_use]
    pub const fn least_distance_mm(&self) -> f64 {
        4.0 * self.focal_length_mm + self.principal_gap_mm
    }

    /// Distance of the object from the front principal plane when it stands `distance_mm` from the image
    /// plane, mm. `None` where that is nearer than the lens can bridge.
    #[must_use]
    pub fn from_principal_plane_mm(&self, distance_mm: f64) -> Option<f64> {
        let between = distance_mm - self.principal_gap_mm;
        let under_the_root = between * (between - 4.0 * self.focal_length_mm);
        (under_the_root >= 0.0 && between > 0.0)
            .then(|| f64::midpoint(between, under_the_root.sqrt()))
    }

    /// How far the lens stands out from its infinity place when the scale reads `distance_mm`, mm.
    /// `None` where that is nearer than the lens can bridge; 0 where it reads infinity.
    #[must_use]
    pub fn extension_mm(&self, distance_mm: f64) -> Option<f64> {
        if distance_mm == f64::INFINITY {
            return Some(0.0);
        }
        let object = self.from_principal_plane_mm(distance_mm)?;
        Some(extension_mm(self.focal_length_mm, object))
    }

    /// Magnification when the lens stands `extension_mm` out from its infinity place.
    #[must_use]
    pub fn magnification(&self, extension_mm: f64) -> f64 {
        extension_mm / self.focal_length_mm
    }

    /// Where the lens is really sharp when its scale reads `scale_mm` and the ring is off by `error_mm`, mm
    /// from the image plane. Infinite where it stands at infinity or beyond; `None` where the scale cannot
    /// read so near.
    #[must_use]
    pub fn sharp_at_mm(&self, scale_mm: f64, error_mm: f64) -> Option<f64> {
        let extension = self.extension_mm(scale_mm)? + error_mm;
        if extension <= 0.0 {
            return Some(f64::INFINITY);
        }
        let object = object_distance_mm(self.focal_length_mm, extension);
        Some(object + self.principal_gap_mm + self.focal_length_mm + extension)
    }

    /// From where to where the lens can be focused on a ring that is off by `error_mm`, when its scale runs
    /// from `close_limit_mm` to infinity. `None` where no lens of this focal length focuses so near.
    #[must_use]
    pub fn reach(&self, close_limit_mm: f64, error_mm: f64) -> Option<Reach> {
        Some(Reach {
            nearest_mm: self.sharp_at_mm(close_limit_mm, error_mm)?,
            farthest_mm: self.sharp_at_mm(f64::INFINITY, error_mm)?,
        })
    }
}

/// The distances at which a lens can be made sharp, mm from the image plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// The nearest.
    pub nearest_mm: f64,
    /// The farthest; infinite where infinity is reached.
    pub farthest_mm: f64,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{FieldRef, Term};
    use crate::mount::{LensField, Unit};

    /// The thin-lens equation itself: 1/f = 1/u + 1/v, v = f + extension.
    #[test]
    fn conjugates_obey_the_lens_equation() {
        for (focal, extension) in [(28.0, 0.05), (50.0, 0.05), (50.0, 7.2949), (135.0, 20.0)] {
            let object = object_distance_mm(focal, extension);
            assert!((1.0 / focal - 1.0 / object - 1.0 / (focal + extension)).abs() < 1e-15);
            assert!((extension_mm(focal, object) - extension).abs() < 1e-9);
        }
    }

    #[test]
    fn a_term_shows_the_same_formula() {
        let focal = Term::field(FieldRef::Lens(LensField::FocalLength), 50.0);
        let mark = object_distance_mm(focal, Term::named("too thin by", 0.05, Unit::Mm));
        assert!((mark.value() - 50_050.0).abs() < 1e-6);
        assert_eq!(
            mark.formula(),
            "lens focal length + lens focal length × lens focal length / too thin by"
        );
    }

    #[test]
    fn infinity_is_lost_on_a_thick_ring_and_moves_on_a_thin_one() {
        assert_eq!(infinity_mark_mm(50.0, 0.05), None);
        assert_eq!(infinity_mark_mm(50.0, 0.0), Some(f64::INFINITY));
        assert!((infinity_mark_mm(50.0, -0.05).unwrap() - 50_050.0).abs() < 1e-6);
        let reach = FocusScale::thin(50.0).reach(450.0, -0.1).unwrap();
        assert!(reach.farthest_mm.is_infinite());
    }

    #[test]
    fn a_scale_without_error_is_right() {
        let scale = FocusScale {
            focal_length_mm: 50.0,
            principal_gap_mm: 3.0,
        };
        for distance in [203.1, 450.0, 3000.0, 1e6] {
            assert!((scale.sharp_at_mm(distance, 0.0).unwrap() / distance - 1.0).abs() < 1e-9);
        }
        assert_eq!(scale.sharp_at_mm(f64::INFINITY, 0.0), Some(f64::INFINITY));
    }

    #[test]
    fn too_near_for_the_lens_is_none() {
        let scale = FocusScale::thin(50.0);
        assert_eq!(scale.extension_mm(scale.least_distance_mm() - 0.1), None);
        assert_eq!(scale.extension_mm(-10.0), None);
        assert!((scale.extension_mm(200.0).unwrap() - 50.0).abs() < 1e-9);
        assert_eq!(scale.reach(100.0, 0.0), None);
        assert_eq!(scale.extension_mm(f64::NAN), None);
    }
}
