//! `flange-bearing`: enough of the flange sits on the body, and the lock pin stays under it while it is turned.

use super::aspects::{both, worst_aspect};
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy};
use super::judge::{Bounds, at_least};
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{BodyField, Presence, Unit};
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::FlangeBearing;

/// Judges the width of the bearing face and the cover over the lock pin's circle.
///
/// # Errors
/// [`NotJudged`] when neither is known.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let mut aspects = vec![bearing(cx)];
    match cx.design.body.lock_pin {
        Presence::Present => aspects.extend([pin_under_the_rim(cx), pin_outside_the_spigot(cx)]),
        Presence::Absent => {}
        Presence::Unknown => aspects.push(Err(FieldRef::LockPin.into())),
    }
    worst_aspect(KEY, aspects)
}

/// Diameter of the flat rear face: the broken edge does not bear.
fn face_diameter(cx: &Context) -> Term {
    cx.size(RingKey::FlangeDiameter) - 2.0 * cx.size(RingKey::EdgeBreak)
}

fn bearing(cx: &Context) -> Result<Finding, NotJudged> {
    let (inner, outer) = both(
        cx.body(BodyField::FlangeInner),
        cx.body(BodyField::FlangeOuter),
    )?;
    let bounds = cx.bounds(LimitKey::FlangeBearingClash, LimitKey::FlangeBearingCaution);
    let (inner_mm, outer_mm) = (inner.value(), outer.value());
    let from = inner.max(cx.size(RingKey::GrooveRootDiameter));
    let wanted = from.value() + 2.0 * bounds.caution + 2.0 * cx.ring.sizes.edge_break;
    let remedy = if wanted - 2.0 * cx.ring.sizes.edge_break > outer_mm {
        Remedy::words(format!(
            "the body's bearing face runs from {} to {}: no flange bears on more than that",
            Unit::Mm.show(inner_mm),
            Unit::Mm.show(outer_mm)
        ))
    } else {
        Remedy::dimension(RingKey::FlangeDiameter, wanted)
    };
    let (a, b) = (
        from.value() / 2.0,
        face_diameter(cx).value().min(outer_mm) / 2.0,
    );
    let width = (face_diameter(cx).min(outer) - from) / 2.0;
    let working = Working::new("flange on the bearing face, radial", width, Unit::Mm, LORE);
    Ok(at_least(KEY, working, bounds)
        .at(Place::Span {
            a: (0.0, a),
            b: (0.0, b),
        })
        .cured_by(remedy))
}

/// Limits of the cover: a pin half beside the flange is not pressed in.
fn cover(cx: &Context) -> Bounds {
    Bounds {
        clash: 0.0,
        caution: cx.limits().clearance_caution,
        scale: 1.0,
    }
}

fn pin_under_the_rim(cx: &Context) -> Result<Finding, NotJudged> {
    let (circle, pin) = both(
        cx.body(BodyField::LockPinCircle),
        cx.body(BodyField::LockPinDiameter),
    )?;
    let bounds = cover(cx);
    let edge = circle + pin;
    let wanted = edge.value() + 2.0 * bounds.caution + 2.0 * cx.ring.sizes.edge_break;
    let working = Working::new(
        "flange beyond the lock pin, radial",
        (face_diameter(cx) - edge) / 2.0,
        Unit::Mm,
        LORE,
    );
    Ok(at_least(KEY, working, bounds)
        .at(Place::Feature(Feature::Rim))
        .cured_by(Remedy::dimension(RingKey::FlangeDiameter, wanted)))
}

fn pin_outside_the_spigot(cx: &Context) -> Result<Finding, NotJudged> {
    let (circle, pin) = both(
        cx.body(BodyField::LockPinCircle),
        cx.body(BodyField::LockPinDiameter),
    )?;
    let bounds = cover(cx);
    let edge = circle - pin;
    let remedy = Remedy::dimension(
        RingKey::GrooveRootDiameter,
        edge.value() - 2.0 * bounds.caution,
    );
    let working = Working::new(
        "lock pin outside the groove root, radial",
        (edge - cx.size(RingKey::GrooveRootDiameter)) / 2.0,
        Unit::Mm,
        LORE,
    );
    Ok(at_least(KEY, working, bounds)
        .at(Place::Feature(Feature::FlangeRearFace))
        .cured_by(remedy))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{cured, design, judged, with};
    use crate::document::Design;
    use crate::mount::Interface;

    fn no_pin(design: Design) -> Design {
        let mut design = design;
        design.body.lock_pin = Presence::Absent;
        design
    }

    #[test]
    fn the_rule_covers_bearing_face_and_pin() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }

    // Bearing face from 54.5: 59.8 less 0.3 of broken edges leaves 2.5 of width, the caution limit; common
    // practice, no source.
    #[test]
    fn a_narrow_flange_is_a_caution_and_then_a_clash() {
        let at_limit = judged(check, &no_pin(with(&[(RingKey::FlangeDiameter, 59.8)])));
        assert_eq!(at_limit.severity, Severity::Ok, "{}", at_limit.message);
        let narrow = no_pin(with(&[(RingKey::FlangeDiameter, 59.0)]));
        let finding = judged(check, &narrow);
        assert_eq!(finding.severity, Severity::Caution);
        assert!((finding.value.unwrap() - 2.1).abs() < 1e-9);
        assert_eq!(
            judged(check, &cured(&narrow, &finding)).severity,
            Severity::Ok
        );
        let narrower = no_pin(with(&[(RingKey::FlangeDiameter, 57.0)]));
        assert_eq!(judged(check, &narrower).severity, Severity::Clash);
    }

    #[test]
    fn a_pin_that_peeps_out_beside_the_flange_clashes() {
        let small = with(&[(RingKey::FlangeDiameter, 60.0)]);
        let finding = judged(check, &small);
        // Pin edge at 59 + 2 = 61, face at 60 - 0.3.
        assert_eq!(finding.severity, Severity::Clash);
        assert!((finding.value.unwrap() + 0.65).abs() < 1e-9);
        assert_eq!(
            judged(check, &cured(&small, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn a_body_with_a_narrow_face_has_no_remedy_by_dimension() {
        let mut narrow = design();
        narrow.body.flange_inner = Interface::measured(60.0, "caliper");
        let finding = judged(check, &narrow);
        assert_eq!(finding.severity, Severity::Caution);
        assert_eq!(finding.remedy.unwrap().change, None);
    }

    #[test]
    fn an_unknown_bearing_face_is_named() {
        let mut unknown = design();
        unknown.body.flange_inner = Interface::Unknown;
        assert_eq!(
            judged(check, &unknown).message,
            "not judged: body bearing face, inside unknown"
        );
    }
}
