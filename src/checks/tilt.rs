//! `tilt`: seat and flange lie parallel enough for the corners of the image.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy};
use super::judge::{Bounds, at_most};
use crate::document::{FieldRef, LimitKey, RingKey, Term, Working};
use crate::mount::{BodyField, LensField, Presence, Unit};
use crate::optics::{
    corner_defocus_mm, corner_height, greatest_parallelism_mm, half_depth_of_focus,
};
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::Tilt;
const SOURCE: &str = "r P / D at infinity, geometric optics";

/// Judges the defocus at the sensor's corner: seat out of parallel and unsprung play, over the seat's diameter.
///
/// # Errors
/// [`NotJudged`] while shoulder, sensor, f-number or, without springs, the ears are unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let optics = both(
        half_depth_of_focus(cx.design).map_err(NotJudged),
        corner_height(&cx.design.body).map_err(NotJudged),
    );
    let ((depth, corner), (shoulder, play)) =
        both(optics, both(cx.lens(LensField::ShoulderDiameter), play(cx)))?;
    let seat = cx.size(RingKey::SeatDiameter).min(shoulder);
    let (lower, upper) = cx.deviations(RingKey::SeatHeight);
    let height = (upper - lower).abs() / 2.0;
    let parallelism = cx.limit(LimitKey::Parallelism);
    let skew = match &play {
        Some(play) => parallelism.clone() + play.clone(),
        None => parallelism.clone(),
    };
    let defocus = corner_defocus_mm(skew.clone(), seat.clone(), corner.clone(), 0.0.into());
    let bounds = Bounds {
        clash: depth.value(),
        caution: depth.value() - height,
        scale: depth.value(),
    };
    let working = Working::new("defocus at the corner", defocus, Unit::Mm, SOURCE)
        .assuming("seat and flange are flat and the body's own mount is square to the sensor");
    let finding = at_most(KEY, working, bounds);
    let most = greatest_parallelism_mm(seat.value(), depth.value(), height, corner.value(), 0.0);
    let message = format!(
        "{} out of focus at the corner with the seat {} out of parallel over {}, wanted at most {}; parallelism up to {} would do",
        Unit::Mm.show(finding.value.unwrap_or_default()),
        Unit::Mm.show(skew.value()),
        Unit::Mm.show(seat.value()),
        Unit::Mm.show(finding.limit.unwrap_or_default()),
        Unit::Mm.show(most.max(0.0)),
    );
    let remedy = remedy(cx, most, play.as_ref().map_or(0.0, Term::value));
    let height = Term::named("tolerance of the seat height", height, Unit::Mm);
    Ok(finding
        .saying(message)
        .worked(Working::new(
            "half depth of focus",
            depth.clone(),
            Unit::Mm,
            "depth of focus N c at infinity",
        ))
        .worked(Working::new(
            "left of it for tilt",
            depth - height,
            Unit::Mm,
            SOURCE,
        ))
        .at(Place::Feature(Feature::Seat))
        .at(Place::Feature(Feature::FlangeRearFace))
        .cured_by(remedy))
}

/// Play of the ears in the groove at its widest, mm, where no springs take it up.
fn play(cx: &Context) -> Result<Option<Term>, NotJudged> {
    match cx.design.body.springs {
        Presence::Present => return Ok(None),
        Presence::Absent => {}
        Presence::Unknown => return Err(FieldRef::Springs.into()),
    }
    let (front, thickness) = both(
        cx.body(BodyField::EarFrontDepth),
        cx.body(BodyField::EarThickness),
    )?;
    let (_, upper) = cx.deviations(RingKey::GrooveWidth);
    let widest =
        cx.size(RingKey::GrooveWidth) + Term::named("its upper deviation", upper, Unit::Mm);
    Ok(Some((widest - front - thickness).max(0.0)))
}

/// A narrower groove where play is what tilts the ring, else a closer parallelism.
fn remedy(cx: &Context, most: f64, play: f64) -> Remedy {
    let parallelism = cx.limits().parallelism;
    let (_, upper) = cx.deviations(RingKey::GrooveWidth);
    let least_play = upper.max(0.0);
    if play > 0.0 && most - parallelism > least_play {
        let width = cx.ring.sizes.groove_width - (play - (most - parallelism));
        return Remedy::dimension(RingKey::GrooveWidth, width);
    }
    if most > play {
        return Remedy::words(format!(
            "hold the seat parallel within {}: measure the ring's height at five places round, face the seat on a shouldered arbor",
            Unit::Mm.show(most - play)
        ));
    }
    Remedy::words("nothing is left for tilt: stop the lens down, or let springs pull the ring home")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{cured, design, judged, lacking, set};
    use crate::document::Design;
    use crate::mount::Interface;

    /// P 0.02 over 47 and a corner of 21.63: 0.0092.
    #[test]
    fn sprung_and_parallel_passes() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        let corner = 36.0_f64.hypot(24.0) / 2.0;
        assert!((finding.value.unwrap() - corner * 0.02 / 47.0).abs() < 1e-12);
    }

    fn unsprung(groove: f64) -> Design {
        let mut design = design();
        design.body.springs = Presence::Absent;
        set(&mut design, &[(RingKey::GrooveWidth, groove)]);
        design
    }

    /// N c 0.0808, of which 0.04 is the seat's own tolerance.
    #[test]
    fn play_tilts_and_a_narrower_groove_cures() {
        for (groove, severity) in [
            (3.3 + 0.10, Severity::Caution),
            (3.3 + 0.30, Severity::Clash),
        ] {
            let design = unsprung(groove);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn a_loose_parallelism_is_told_how_close_it_must_be() {
        for (parallelism, severity) in [(0.12, Severity::Caution), (0.2, Severity::Clash)] {
            let mut design = design();
            design.limits.parallelism = parallelism;
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert!(
                finding
                    .remedy
                    .unwrap()
                    .text
                    .starts_with("hold the seat parallel")
            );
        }
    }

    #[test]
    fn a_lens_too_fast_for_its_seat_tolerance_leaves_nothing() {
        let mut design = design();
        design.limits.coc_divisor = 6000.0;
        design.limits.thick_least = 0.05;
        let finding = judged(check, &design);
        assert!(finding.remedy.unwrap().text.starts_with("nothing is left"));
    }

    #[test]
    fn whether_springs_pull_must_be_known() {
        let mut design = design();
        design.body.springs = Presence::Unknown;
        design.lens.f_number = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::FNumber), FieldRef::Springs])
        );
    }
}
