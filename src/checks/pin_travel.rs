//! `pin-travel`: the lip stops the pin between fully stopped down and its bottom, or leaves it out altogether.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_least};
use super::pin_room::{Annulus, annulus_of};
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{LensField, Presence, Unit};
use crate::ring::{Feature, PinUse};

const KEY: FindingKey = FindingKey::PinTravel;

/// Judges how far the ring lets the pin out.
///
/// # Errors
/// [`NotJudged`] while nobody has said whether there is a pin, or how far it goes.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    match (cx.ring.pin, cx.design.lens.stop_down_pin) {
        (PinUse::None, Presence::Unknown) => Err(FieldRef::StopDownPin.into()),
        (PinUse::None, Presence::Absent | Presence::Present) => Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the lens has no stop-down pin",
        )),
        (PinUse::Pressed, _) => pressed(cx),
        (PinUse::LeftFree, _) => left_free(cx),
    }
}

fn pressed(cx: &Context) -> Result<Finding, NotJudged> {
    let (bottom, stopped) = both(
        cx.lens(LensField::PinBottom),
        cx.lens(LensField::PinStoppedDown),
    )?;
    let face = cx.size(RingKey::LipFaceDepth);
    let (lower, upper) = cx.deviations(RingKey::LipFaceDepth);
    let at_bottom = face.clone() + Term::named("lower deviation", lower, Unit::Mm) - bottom.clone();
    let at_stop = stopped.clone() - (face + Term::named("upper deviation", upper, Unit::Mm));
    let margin = cx.limits().pin_travel_margin;
    let bounds = Bounds {
        clash: 0.0,
        caution: margin,
        scale: margin.max(f64::MIN_POSITIVE),
    };
    let worse_end = if at_bottom.value() < at_stop.value() {
        "its bottom"
    } else {
        "full stop-down"
    };
    let least = Working::new(
        "pin travel left at the nearer end",
        at_bottom.min(at_stop),
        Unit::Mm,
        LORE,
    );
    let value = least.term.value();
    let finding = at_least(KEY, least, bounds);
    let message = format!(
        "the lip stops the pin {} from {worse_end}, tolerance counted, wanted at least {}; its travel is {} to {}",
        Unit::Mm.show(value),
        Unit::Mm.show(finding.limit.unwrap_or(margin)),
        Unit::Mm.show(bottom.value()),
        Unit::Mm.show(stopped.value()),
    );
    let middle = f64::midpoint(bottom.value(), stopped.value()) - f64::midpoint(lower, upper);
    Ok(finding
        .saying(message)
        .at(Place::Feature(Feature::LipFace))
        .at(Place::Field(FieldRef::Lens(LensField::PinStoppedDown)))
        .cured_by(Remedy::dimension(RingKey::LipFaceDepth, middle)))
}

fn left_free(cx: &Context) -> Result<Finding, NotJudged> {
    let outer = both(
        cx.lens(LensField::PinCircle),
        cx.lens(LensField::PinDiameter),
    );
    let (free, (circle, diameter)) = both(cx.lens(LensField::PinFree), outer)?;
    let pin_outer = circle.value() + diameter.value();
    let (floor, key) = match annulus_of(cx) {
        Annulus::Cut { .. } => (Feature::AnnulusFloor, RingKey::AnnulusDepth),
        Annulus::None if cx.ring.thread_runs_through || pin_outer <= cx.ring.sizes.lip_bore => {
            return Ok(
                Finding::said(KEY, Severity::Ok, "nothing stands behind the free pin")
                    .at(Place::Feature(Feature::LipBore)),
            );
        }
        Annulus::None => (Feature::LipFace, RingKey::LipFaceDepth),
    };
    let room = cx.size(key) - free.clone();
    let bounds = cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution);
    let wanted = free.value() + cx.limits().annulus_depth_gap.max(bounds.caution);
    Ok(at_least(
        KEY,
        Working::new("room behind the free pin", room, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(floor))
    .cured_by(Remedy::dimension(key, wanted)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, set, with};
    use crate::document::{Choice, PinHandling, Tolerance};
    use crate::mount::Interface;

    /// Pin 6.6 at its bottom, 7.4 stopped down: the middle is 7.0, each end 0.4 away less the tolerance of 0.05.
    #[test]
    fn the_rule_puts_the_lip_in_the_middle() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!(
            (finding.value.unwrap() - 0.35).abs() < 1e-9,
            "{}",
            finding.message
        );
    }

    #[test]
    fn both_ends_are_judged_over_the_tolerance() {
        for (face, severity) in [
            (6.75, Severity::Ok),
            (6.74, Severity::Caution),
            (6.64, Severity::Clash),
            (7.25, Severity::Ok),
            (7.26, Severity::Caution),
            (7.36, Severity::Clash),
        ] {
            let design = with(&[(RingKey::LipFaceDepth, face)]);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{face}: {}", finding.message);
            if severity != Severity::Ok {
                assert_eq!(
                    judged(check, &cured(&design, &finding)).severity,
                    Severity::Ok
                );
            }
        }
        let mut wide = with(&[(RingKey::LipFaceDepth, 7.0)]);
        wide.ring.dimensions.lip_face_depth.tolerance = Tolerance::PlusMinus(0.35);
        assert_eq!(judged(check, &wide).severity, Severity::Caution);
    }

    /// Pin out to 9.2 before a chamber of 8.5: the pocket behind it goes to 9.7 by rule.
    #[test]
    fn a_free_pin_needs_a_deeper_floor() {
        let mut design = with(&[(RingKey::SpigotLength, 10.0)]);
        design.ring.pin = Choice::Set(PinHandling::LeftFree);
        design.lens.pin_free = measured(9.2);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!((finding.value.unwrap() - 0.5).abs() < 1e-9);
        for (depth, severity) in [(9.35, Severity::Caution), (9.25, Severity::Clash)] {
            let mut shallow = design.clone();
            set(&mut shallow, &[(RingKey::AnnulusDepth, depth)]);
            let finding = judged(check, &shallow);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&shallow, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn a_free_pin_through_an_open_thread_meets_nothing() {
        let mut design = design();
        design.ring.pin = Choice::Set(PinHandling::LeftFree);
        let finding = judged(check, &design);
        assert_eq!(
            (finding.severity, finding.value),
            (Severity::Ok, None),
            "{}",
            finding.message
        );
    }

    #[test]
    fn the_travel_must_be_known() {
        let mut design = with(&[(RingKey::LipFaceDepth, 7.0)]);
        design.lens.pin_bottom = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::PinBottom)])
        );
    }
}
