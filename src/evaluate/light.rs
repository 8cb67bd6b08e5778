//! The light over the image as the ring's bores leave it: a further pure function on an evaluation.

use super::Evaluation;
use crate::document::{Design, FieldRef};
use crate::mount::{BodyField, LensField};
use crate::optics::{
    BoreEdge, ExitPupil, LightCurve, Vignetting, corner_height, exit_pupil_distance,
};
use crate::ring::{Feature, bore_corners};

/// Full stops as they are engraved.
const ENGRAVED: [f64; 11] = [1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0];
/// So many f-numbers are shown, the widest counted in.
const SHOWN: usize = 5;
/// A stop nearer to the widest than this share of it is the same stop.
const SAME_STOP: f64 = 1.15;
/// Points along a curve.
const STEPS: u32 = 60;

/// The light over the image height.
#[derive(Clone, Debug, PartialEq)]
pub struct LightReport {
    /// Distance of the image's corner from its middle, mm.
    pub corner_mm: f64,
    /// Distance of the exit pupil from the image, mm.
    pub pupil_mm: f64,
    /// One curve for each f-number, the widest first.
    pub curves: Vec<LightCurve>,
    /// The bore that cuts most at the corner at the widest f-number, if one cuts.
    pub worst: Option<Feature>,
    /// The f-number from which on nothing is cut at the corner; none where stopping down never helps.
    pub clipping_ends_at: Option<f64>,
}

/// Looks through the ring from the image.
///
/// # Errors
/// The fields that are unknown; an empty list where they are known and yet there is no whole ring.
pub fn light_of(design: &Design, evaluation: &Evaluation) -> Result<LightReport, Vec<FieldRef>> {
    let number = |field: FieldRef, value: Option<f64>| value.ok_or_else(|| vec![field]);
    let pupil = exit_pupil_distance(&design.lens).map(|term| term.value());
    let stop = number(
        FieldRef::Lens(LensField::FNumber),
        design.lens.f_number.number(),
    );
    let corner = corner_height(&design.body).map(|term| term.value());
    let register = number(
        FieldRef::Body(BodyField::Register),
        design.body.register.number(),
    );
    let (Ok(pupil_mm), Ok(stop), Ok(corner_mm), Ok(register), Some(parts)) =
        (&pupil, &stop, &corner, &register, &evaluation.parts)
    else {
        let optics = [pupil, stop, corner, register];
        let mut lacks: Vec<FieldRef> = optics
            .into_iter()
            .filter_map(Result::err)
            .flatten()
            .collect();
        lacks.extend(&evaluation.derivation.missing);
        return Err(once_each(lacks));
    };
    let corners = bore_corners(&parts.through_lug, *register);
    let edges: Vec<BoreEdge> = corners.iter().map(|corner| corner.edge).collect();
    let seen = Vignetting::new(ExitPupil::at_infinity(*pupil_mm), edges);
    let worst = seen
        .light(*corner_mm, *stop)
        .worst_edge
        .and_then(|place| corners.get(place));
    Ok(LightReport {
        corner_mm: *corner_mm,
        pupil_mm: *pupil_mm,
        curves: seen.curves(&stops_from(*stop), *corner_mm, STEPS),
        worst: worst.map(|corner| corner.feature),
        clipping_ends_at: seen.clipping_ends_at(*corner_mm),
    })
}

/// The widest f-number and the engraved ones after it.
fn stops_from(widest: f64) -> Vec<f64> {
    let after = ENGRAVED
        .into_iter()
        .filter(|stop| *stop > widest * SAME_STOP);
    std::iter::once(widest).chain(after).take(SHOWN).collect()
}

/// Each field once, in its first place.
pub(super) fn once_each(fields: Vec<FieldRef>) -> Vec<FieldRef> {
    let mut kept: Vec<FieldRef> = Vec::new();
    for field in fields {
        if !kept.contains(&field) {
            kept.push(field);
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Choice, RingKey, demo_designs};
    use crate::evaluate::evaluate;
    use crate::mount::Interface;
    use crate::workshop::Workshop;

    fn demo() -> Design {
        demo_designs().unwrap().remove(0)
    }

    fn light(design: &Design) -> Result<LightReport, Vec<FieldRef>> {
        light_of(design, &evaluate(design, &Workshop::default_set().unwrap()))
    }

    #[test]
    fn the_widest_stop_is_followed_by_engraved_ones() {
        assert_eq!(stops_from(1.8), [1.8, 2.8, 4.0, 5.6, 8.0]);
        assert_eq!(stops_from(2.0), [2.0, 2.8, 4.0, 5.6, 8.0]);
        assert_eq!(stops_from(32.0), [32.0]);
    }

    /// Similar triangles, worked by hand: the slant alone leaves 1 / (1 + (21.63/60)²)² = 0.7832 at the corner.
    #[test]
    fn the_slant_is_kept_apart_from_the_bores() {
        let report = light(&demo()).unwrap();
        let corner = report.curves[0].points.last().unwrap();
        assert!((report.corner_mm - 21.633).abs() < 1e-3);
        assert!((corner.slant_share - 0.7832).abs() < 1e-4);
    }

    #[test]
    fn a_narrow_lip_darkens_the_corner_and_is_named() {
        let mut design = demo();
        let bore = |design: &mut Design, key, value| {
            design.ring.dimensions.get_mut(key).value = Choice::Set(value);
        };
        bore(&mut design, RingKey::LipBore, 24.0);
        bore(&mut design, RingKey::RearBore, 40.0);
        let report = light(&design).unwrap();
        let corner = report.curves[0].points.last().unwrap();
        assert!(corner.clear_share < 0.9, "{}", corner.clear_share);
        assert_eq!(report.worst, Some(Feature::LipBore));
    }

    #[test]
    fn what_is_unknown_is_named_once() {
        let mut design = demo();
        design.lens.exit_pupil_distance = Interface::Unknown;
        design.lens.pupil_magnification = Interface::Unknown;
        design.lens.f_number = Interface::Unknown;
        let lacks = light(&design).unwrap_err();
        assert!(lacks.contains(&FieldRef::Lens(LensField::ExitPupilDistance)));
        assert!(lacks.contains(&FieldRef::Lens(LensField::FNumber)));
        assert_eq!(lacks.len(), once_each(lacks.clone()).len());
    }
}
