//! The cone of rays that reaches the corner of the image: what a bore must leave clear.

use crate::document::{FieldRef, Term};
use crate::mount::{Body, BodyField, Lens, LensField, Unit};

/// The rays from a uniformly lit circular exit pupil to one image point.
///
/// Paraxial, lens at infinity focus: clear radius at distance z from the image is
/// `h (1 - z / z_e) + z / (2 N)`. From similar triangles; the pupil diameter is `z_e / N` (paraxial identity).
#[derive(Clone, Debug)]
pub struct RayCone {
    image_height: Term,
    pupil_distance: Term,
    f_number: Term,
}

impl RayCone {
    /// The cone to the sensor's corner.
    ///
    /// # Errors
    /// The fields that are unknown.
    pub fn to_the_corner(lens: &Lens, body: &Body) -> Result<Self, Vec<FieldRef>> {
        let mut missing = Vec::new();
        let mut lens_value = |key: LensField| {
            let field = FieldRef::Lens(key);
            lens.field(key)
                .number()
                .map(|value| Term::field(field, value))
                .or_else(|| {
                    missing.push(field);
                    None
                })
        };
        let pupil = lens_value(LensField::ExitPupilDistance);
        let stop = lens_value(LensField::FNumber);
        let corner = corner_height(body);
        if let Err(fields) = &corner {
            missing.extend(fields);
        }
        match (pupil, stop, corner) {
            (Some(pupil_distance), Some(f_number), Ok(image_height)) => Ok(Self {
                image_height,
                pupil_distance,
                f_number,
            }),
            _ => Err(missing),
        }
    }

    /// Radius that must stay clear at `distance` mm from the image, mm.
    #[must_use]
    pub fn radius_at(&self, distance: Term) -> Term {
        self.image_height.clone() * (1.0 - distance.clone() / self.pupil_distance.clone())
            + distance / (2.0 * self.f_number.clone())
    }
}

/// Distance of the sensor's corner from the axis, mm.
///
/// # Errors
/// The fields that are unknown.
pub fn corner_height(body: &Body) -> Result<Term, Vec<FieldRef>> {
    let keys = [BodyField::SensorWidth, BodyField::SensorHeight];
    let missing: Vec<FieldRef> = keys
        .iter()
        .filter(|key| body.field(**key).number().is_none())
        .map(|key| FieldRef::Body(*key))
        .collect();
    match (body.sensor_width.number(), body.sensor_height.number()) {
        (Some(width), Some(height)) => Ok(Term::named(
            "corner of the sensor",
            width.hypot(height) / 2.0,
            Unit::Mm,
        )),
        _ => Err(missing),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cone(height: f64, pupil: f64, stop: f64) -> RayCone {
        RayCone {
            image_height: height.into(),
            pupil_distance: pupil.into(),
            f_number: stop.into(),
        }
    }

    /// Similar triangles, worked by hand: h 21.63, pupil at 60, N 1.8.
    #[test]
    fn clear_radius_at_two_distances() {
        let cone = cone(21.63, 60.0, 1.8);
        assert!((cone.radius_at(44.0.into()).value() - 17.990).abs() < 5e-4);
        assert!((cone.radius_at(18.0.into()).value() - 20.141).abs() < 5e-4);
    }

    /// At the pupil the cone is the pupil, at the image it is the image point.
    #[test]
    fn ends_of_the_cone() {
        let cone = cone(10.0, 50.0, 2.0);
        assert!((cone.radius_at(50.0.into()).value() - 12.5).abs() < 1e-12);
        assert!((cone.radius_at(0.0.into()).value() - 10.0).abs() < 1e-12);
    }
}
