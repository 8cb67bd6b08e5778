//! `lip-thickness`: the lip that holds the stop-down pin in is thick enough, and bears the pin.

use super::aspects::{both, worst_aspect};
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{at_least, at_most};
use super::loads::Strength;
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{LensField, Presence, Unit};
use crate::ring::{Feature, PinUse};

const KEY: FindingKey = FindingKey::LipThickness;
const BENDING_SOURCE: &str = "cantilever strip from the chamber wall, the load spreading at 45 degrees: σ = 6 F a / (b t²), b = pin + 2 a; beam theory, conservative because the ring holds its own hoop";

/// Judges the metal along the axis behind the lip face, to the lip's rear or to the end of the spigot, and its
/// bending under the pin.
///
/// # Errors
/// [`NotJudged`] while nobody has said whether there is a pin to press.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    if cx.ring.pin != PinUse::Pressed {
        if cx.design.lens.stop_down_pin == Presence::Unknown {
            return Err(FieldRef::StopDownPin.into());
        }
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "no pin to press: the ring has no lip",
        ));
    }
    worst_aspect(KEY, vec![Ok(thickness(cx)), bending(cx)])
}

/// Metal behind the lip face, to the end of the spigot.
fn behind_the_face(cx: &Context) -> Term {
    cx.size(RingKey::SeatHeight) + cx.size(RingKey::SpigotLength) - cx.size(RingKey::LipFaceDepth)
}

fn thickness(cx: &Context) -> Finding {
    let behind = behind_the_face(cx);
    let bounds = cx.bounds(LimitKey::LipClash, LimitKey::LipCaution);
    let remedy = remedy(cx, behind.value(), bounds.caution);
    let thickness = cx.size(RingKey::LipThickness).min(behind);
    at_least(
        KEY,
        Working::new("lip thickness", thickness, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(Feature::LipFace))
    .at(Place::Feature(Feature::LipBore))
    .cured_by(remedy)
}

/// The pin presses the lip between its bore and the wall of the chamber.
fn bending(cx: &Context) -> Result<Finding, NotJudged> {
    let pin = both(
        cx.lens(LensField::PinCircle),
        cx.lens(LensField::PinDiameter),
    );
    let ((circle, pin), force) = both(pin, cx.lens(LensField::PinForce))?;
    let strength = Strength::of(cx)?;
    let sizes = &cx.ring.sizes;
    let reaches_the_lip = sizes.thread_length + sizes.relief_width >= sizes.lip_face_depth;
    let wall = if reaches_the_lip {
        cx.size(RingKey::ReliefDiameter)
    } else {
        Term::named("thread minor diameter", cx.ring.thread_minor, Unit::Mm)
    };
    let arm = ((wall - circle) / 2.0).max(0.0);
    let thickness = cx.size(RingKey::LipThickness).min(behind_the_face(cx));
    let width = pin + 2.0 * arm.clone();
    let load = 6.0 * force.clone() * arm.clone() / width.clone();
    let stress = load.clone() / (thickness.clone() * thickness);
    let wanted = (load.value() / strength.bounds.caution).sqrt();
    let working = Working::new(
        "bending of the lip under the pin",
        stress,
        Unit::Mpa,
        BENDING_SOURCE,
    );
    let finding = at_most(KEY, working, strength.bounds);
    let message = format!(
        "{} in the lip under a pin of {}, wanted at most {} ({})",
        Unit::Mpa.show(finding.value.unwrap_or_default()),
        Unit::N.show(force.value()),
        Unit::Mpa.show(finding.limit.unwrap_or_default()),
        strength.material
    );
    let wanted = wanted.max(cx.limits().lip_caution);
    Ok(finding
        .saying(message)
        .at(Place::Feature(Feature::LipFace))
        .cured_by(remedy(cx, behind_the_face(cx).value(), wanted)))
}

/// A spigot that follows its rule follows the lip; one set by hand must be lengthened itself.
fn remedy(cx: &Context, behind: f64, wanted: f64) -> Remedy {
    let is_set = |key| {
        cx.derivation
            .dimension(key)
            .is_some_and(|state| state.is_set)
    };
    if behind < wanted && is_set(RingKey::SpigotLength) {
        return Remedy::dimension(
            RingKey::SpigotLength,
            cx.ring.sizes.spigot_length + wanted - behind,
        );
    }
    if behind < wanted && !is_set(RingKey::LipThickness) {
        return Remedy::words(format!(
            "the free depth behind the flange leaves {} for the lip: set the lip face nearer the seat, as far as the pin allows",
            Unit::Mm.show(behind)
        ));
    }
    Remedy::dimension(RingKey::LipThickness, wanted)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking, with};

    #[test]
    fn the_rule_gives_a_whole_lip() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!((finding.value.unwrap() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_thin_lip_is_cured() {
        for (thickness, severity) in [(0.9, Severity::Caution), (0.7, Severity::Clash)] {
            let design = with(&[(RingKey::LipThickness, thickness)]);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn a_spigot_that_ends_in_the_lip_is_lengthened() {
        let design = with(&[(RingKey::SpigotLength, 6.2)]);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
        assert!((finding.value.unwrap() - 0.66).abs() < 1e-9);
        assert_eq!(
            judged(check, &cured(&design, &finding)).severity,
            Severity::Ok
        );
    }

    /// 6 x 2 x 2.75 / ((1.6 + 5.5) x 1): wall of the relief 42.5, pin circle 37.
    #[test]
    fn the_lip_bends_under_the_pin() {
        let finding = judged(check, &design());
        let line = finding.working.iter().find(|line| line.unit == Unit::Mpa);
        let arm = (42.5 - 37.0) / 2.0;
        let stress = 6.0 * 2.0 * arm / (1.6 + 2.0 * arm);
        let found = line.unwrap().term.value();
        assert!((found - stress).abs() < 1e-9, "{found}");
        assert!(
            finding.message.starts_with("lip thickness"),
            "{}",
            finding.message
        );
    }

    #[test]
    fn a_strong_spring_under_a_soft_lip_wants_it_thicker() {
        for (force, severity) in [(7.0, Severity::Caution), (12.0, Severity::Clash)] {
            let mut design = with(&[(RingKey::LipThickness, 1.0)]);
            design.lens.pin_force = crate::checks::fixture::measured(force);
            design.ring.material = "acetal copolymer".to_owned();
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert!(
                finding.message.contains("under a pin of"),
                "{}",
                finding.message
            );
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn whether_there_is_a_pin_must_be_known() {
        let mut design = design();
        design.lens.stop_down_pin = Presence::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::StopDownPin])
        );
        design.lens.stop_down_pin = Presence::Absent;
        assert_eq!(judged(check, &design).severity, Severity::Ok);
    }
}
