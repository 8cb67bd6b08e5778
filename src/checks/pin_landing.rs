//! `pin-landing`: the lip covers the whole pin circle, or leaves the pin free all round.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{at_least, worst_of};
use super::pin_room::{Annulus, annulus_of};
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{LensField, Presence, Unit};
use crate::ring::{Feature, PinUse};

const KEY: FindingKey = FindingKey::PinLanding;

/// Judges what the ring leaves beside the pin: lip under it, or room round it.
///
/// # Errors
/// [`NotJudged`] while nobody has said whether there is a pin, or where it stands.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    match (cx.ring.pin, cx.design.lens.stop_down_pin) {
        (PinUse::None, Presence::Unknown) => Err(FieldRef::StopDownPin.into()),
        (PinUse::None, Presence::Absent | Presence::Present) => Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the lens has no stop-down pin",
        )),
        (PinUse::Pressed, _) => {
            let pin = Pin::of(cx)?;
            worst_of(vec![on_the_lip(cx, &pin), in_the_thread(cx, &pin)])
        }
        (PinUse::LeftFree, _) => {
            let (pin, free) = both(Pin::of(cx), cx.lens(LensField::PinFree))?;
            let mut aspects = vec![in_the_thread(cx, &pin)];
            aspects.extend(beside_the_free_pin(cx, &pin, free.value()));
            worst_of(aspects)
        }
    }
}

/// Diameters of the cylinders that touch the pin from inside and from outside.
struct Pin {
    inner: Term,
    outer: Term,
}

impl Pin {
    fn of(cx: &Context) -> Result<Self, NotJudged> {
        let (circle, diameter) = both(
            cx.lens(LensField::PinCircle),
            cx.lens(LensField::PinDiameter),
        )?;
        Ok(Self {
            inner: circle.clone() - diameter.clone(),
            outer: circle + diameter,
        })
    }
}

fn on_the_lip(cx: &Context, pin: &Pin) -> Finding {
    let bounds = cx.bounds(LimitKey::PinLandingClash, LimitKey::PinLanding);
    let landing = (pin.inner.clone() - cx.size(RingKey::LipBore)) / 2.0;
    let wanted = pin.inner.value() - 2.0 * bounds.caution;
    at_least(
        KEY,
        Working::new("lip inside the pin circle", landing, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(Feature::LipBore))
    .at(Place::Field(FieldRef::Lens(LensField::PinCircle)))
    .cured_by(if wanted > 0.0 {
        Remedy::dimension(RingKey::LipBore, wanted)
    } else {
        Remedy::words("the pin stands too near the axis for a lip: measure the pin circle again")
    })
}

/// The pin goes in through the thread with the lens: it must clear the crests.
fn in_the_thread(cx: &Context, pin: &Pin) -> Finding {
    let crests = Term::named("thread minor diameter", cx.ring.thread_minor, Unit::Mm);
    let room = (crests - pin.outer.clone()) / 2.0;
    at_least(
        KEY,
        Working::new("room between pin and thread crests", room, Unit::Mm, LORE),
        cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution),
    )
    .at(Place::Feature(Feature::Thread))
    .cured_by(Remedy::words(
        "no ring with this thread clears the pin: measure pin circle and pin diameter again",
    ))
}

fn beside_the_free_pin(cx: &Context, pin: &Pin, free_mm: f64) -> Vec<Finding> {
    match annulus_of(cx) {
        Annulus::Cut { opens_to_the_bore } => {
            let mut aspects = vec![outside_in_the_annulus(cx, pin)];
            if !opens_to_the_bore {
                aspects.push(inside_in_the_annulus(cx, pin));
            }
            aspects
        }
        Annulus::None if free_mm > cx.ring.sizes.lip_face_depth => vec![through_the_bore(cx, pin)],
        Annulus::None => Vec::new(),
    }
}

fn outside_in_the_annulus(cx: &Context, pin: &Pin) -> Finding {
    let bounds = cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution);
    let room = (cx.size(RingKey::AnnulusOuter) - pin.outer.clone()) / 2.0;
    at_least(
        KEY,
        Working::new("annulus outside the pin", room, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(Feature::AnnulusSide))
    .cured_by(Remedy::dimension(
        RingKey::AnnulusOuter,
        pin.outer.value() + 2.0 * bounds.caution,
    ))
}

fn inside_in_the_annulus(cx: &Context, pin: &Pin) -> Finding {
    let bounds = cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution);
    let room = (pin.inner.clone() - cx.size(RingKey::AnnulusInner)) / 2.0;
    at_least(
        KEY,
        Working::new("annulus inside the pin", room, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(Feature::AnnulusSide))
    .cured_by(Remedy::dimension(
        RingKey::AnnulusInner,
        (pin.inner.value() - 2.0 * bounds.caution).max(0.0),
    ))
}

fn through_the_bore(cx: &Context, pin: &Pin) -> Finding {
    let bounds = cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution);
    let room = (cx.size(RingKey::LipBore) - pin.outer.clone()) / 2.0;
    at_least(
        KEY,
        Working::new("bore outside the free pin", room, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(Feature::LipBore))
    .cured_by(Remedy::dimension(
        RingKey::LipBore,
        pin.outer.value() + 2.0 * bounds.caution,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, with};
    use crate::document::{Choice, PinHandling};
    use crate::mount::Interface;

    /// Pin 1.6 on a circle of 37: inner edge 35.4, so a landing of 0.5 asks for a bore of 34.4.
    #[test]
    fn the_rule_leaves_half_a_millimetre_of_lip() {
        let design = design();
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        let landing = finding
            .working
            .iter()
            .find(|line| line.result == "lip inside the pin circle")
            .unwrap();
        assert!((landing.term.value() - 0.5).abs() < 1e-9);
    }

    #[test]
    fn a_wide_bore_lets_the_pin_slip_off() {
        for (bore, severity) in [
            (34.5, Severity::Caution),
            (35.1, Severity::Clash),
            (36.0, Severity::Clash),
        ] {
            let design = with(&[(RingKey::LipBore, bore)]);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    /// M42x1-6H: minor diameter 40.917 to 41.153 (ISO 965-1), middle 41.035; a pin out to 41 leaves 0.0175.
    #[test]
    fn a_pin_in_the_thread_is_a_clash_that_no_ring_cures() {
        let mut design = design();
        design.lens.pin_circle = measured(39.4);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            (finding.value.unwrap() - 0.0175).abs() < 1e-9,
            "{}",
            finding.message
        );
        assert_eq!(finding.remedy.unwrap().change, None);
    }

    /// A plate and spigot deep enough for a pocket round a pin of 9.2, outer 37 + 1.6 + 2 x 0.5, and a bore that
    /// leaves a wall inside it.
    #[test]
    fn a_free_pin_has_room_on_both_sides() {
        let mut design = with(&[(RingKey::SpigotLength, 10.0), (RingKey::LipBore, 32.0)]);
        design.ring.pin = Choice::Set(PinHandling::LeftFree);
        design.lens.pin_free = measured(9.2);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!(
            finding
                .working
                .iter()
                .any(|line| line.result == "annulus inside the pin"),
            "{:?}",
            finding.working
        );
        for (key, value) in [(RingKey::AnnulusOuter, 38.7), (RingKey::AnnulusInner, 35.3)] {
            let mut tight = design.clone();
            crate::checks::fixture::set(&mut tight, &[(key, value)]);
            let finding = judged(check, &tight);
            assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&tight, &finding)).severity,
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
        design.lens.stop_down_pin = Presence::Present;
        crate::checks::fixture::set(&mut design, &[(RingKey::LipBore, 34.4)]);
        design.lens.pin_circle = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::PinCircle)])
        );
    }
}
