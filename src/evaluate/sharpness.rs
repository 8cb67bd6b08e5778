//! What a ring too thick or too thin does to a distant point: a further pure function on an evaluation.

use super::{Evaluation, focus_error};
use crate::document::{Design, FieldRef};
use crate::mount::LensField;
use crate::optics::{blur_circle_mm, farthest_sharp, half_depth_of_focus};

use super::light::once_each;

/// Points to either side of the right thickness.
const STEPS: i32 = 100;
/// The curve reaches so many half depths of focus either way.
const HALF_DEPTHS: f64 = 3.0;
/// At least so far, mm.
const LEAST_REACH_MM: f64 = 0.1;
/// And beyond the present error by this factor.
const BEYOND: f64 = 1.3;

/// A point of the curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SharpPoint {
    /// How much too thick the ring is, mm.
    pub error_mm: f64,
    /// Diameter of the blur of a point at infinity, lens at its infinity stop, um.
    pub blur_um: f64,
    /// Farthest distance that can be made sharp, m; none where infinity can.
    pub farthest_m: Option<f64>,
}

/// Sharpness over the error of thickness.
#[derive(Clone, Debug, PartialEq)]
pub struct Sharpness {
    /// The f-number it holds for: the widest.
    pub f_number: f64,
    /// Half depth of focus, mm.
    pub half_depth_mm: f64,
    /// The circle of confusion, um.
    pub circle_um: f64,
    /// How much too thick the ring as drawn is, mm; negative too thin.
    pub error_mm: f64,
    /// The curve, thin to thick.
    pub points: Vec<SharpPoint>,
}

/// Works the curve.
///
/// # Errors
/// The fields that are unknown.
pub fn sharpness_of(design: &Design, evaluation: &Evaluation) -> Result<Sharpness, Vec<FieldRef>> {
    let depth = half_depth_of_focus(design).map(|term| term.value());
    let error = focus_error(design, evaluation).map(|term| term.value());
    let focal = number(LensField::FocalLength, design);
    let stop = number(LensField::FNumber, design);
    let (Ok(half_depth_mm), Ok(error_mm), Ok(focal), Ok(f_number)) =
        (&depth, &error, &focal, &stop)
    else {
        let lacks = [depth, error, focal, stop];
        return Err(once_each(
            lacks
                .into_iter()
                .filter_map(Result::err)
                .flatten()
                .collect(),
        ));
    };
    let reach = (half_depth_mm * HALF_DEPTHS)
        .max(error_mm.abs() * BEYOND)
        .max(LEAST_REACH_MM);
    let point = |step: i32| {
        let error_mm = reach * f64::from(step) / f64::from(STEPS);
        SharpPoint {
            error_mm,
            blur_um: blur_circle_mm(error_mm.abs(), *f_number) * 1000.0,
            farthest_m: farthest_sharp(*focal, error_mm).map(|distance| distance / 1000.0),
        }
    };
    Ok(Sharpness {
        f_number: *f_number,
        half_depth_mm: *half_depth_mm,
        circle_um: half_depth_mm / f_number * 1000.0,
        error_mm: *error_mm,
        points: (-STEPS..=STEPS).map(point).collect(),
    })
}

fn number(key: LensField, design: &Design) -> Result<f64, Vec<FieldRef>> {
    design
        .lens
        .field(key)
        .number()
        .ok_or_else(|| vec![FieldRef::Lens(key)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Choice, RingKey, demo_designs};
    use crate::evaluate::evaluate;
    use crate::mount::Interface;
    use crate::workshop::Workshop;

    fn sharpness(design: &Design) -> Result<Sharpness, Vec<FieldRef>> {
        sharpness_of(design, &evaluate(design, &Workshop::default_set().unwrap()))
    }

    /// Thin lens, worked by hand: f 58, 0.05 too thick is sharp at most to 58²/0.05 + 58 = 67.338 m.
    #[test]
    fn a_thick_ring_ends_before_infinity() {
        let mut design = demo_designs().unwrap().remove(0);
        let dimension = design.ring.dimensions.get_mut(RingKey::SeatHeight);
        dimension.value = Choice::Set(1.51);
        let found = sharpness(&design).unwrap();
        assert!((found.error_mm - 0.05).abs() < 1e-9);
        let at = found
            .points
            .iter()
            .min_by(|a, b| {
                (a.error_mm - 0.05)
                    .abs()
                    .total_cmp(&(b.error_mm - 0.05).abs())
            })
            .unwrap();
        let by_hand = 58.0 * 58.0 / at.error_mm / 1000.0 + 0.058;
        assert!((at.farthest_m.unwrap() - by_hand).abs() < 1e-9);
        assert!((at.blur_um - at.error_mm * 500.0).abs() < 1e-9);
        assert!(found.points[0].farthest_m.is_none() && found.points[0].error_mm < -0.1);
    }

    #[test]
    fn unknown_optics_are_named() {
        let mut design = demo_designs().unwrap().remove(0);
        design.lens.focal_length = Interface::Unknown;
        design.body.sensor_width = Interface::Unknown;
        let lacks = sharpness(&design).unwrap_err();
        assert!(lacks.contains(&FieldRef::Lens(LensField::FocalLength)));
        assert_eq!(lacks.len(), 2, "{lacks:?}");
    }
}
