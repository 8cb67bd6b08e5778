//! `lip-thickness`: the lip that holds the stop-down pin in is thick enough.

use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_least;
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Working};
use crate::mount::{Presence, Unit};
use crate::ring::{Feature, PinUse};

const KEY: FindingKey = FindingKey::LipThickness;

/// Judges the metal along the axis behind the lip face, to the lip's rear or to the end of the spigot.
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
    let behind = cx.size(RingKey::SeatHeight) + cx.size(RingKey::SpigotLength)
        - cx.size(RingKey::LipFaceDepth);
    let bounds = cx.bounds(LimitKey::LipClash, LimitKey::LipCaution);
    let remedy = remedy(cx, behind.value(), bounds.caution);
    let thickness = cx.size(RingKey::LipThickness).min(behind);
    Ok(at_least(
        KEY,
        Working::new("lip thickness", thickness, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(Feature::LipFace))
    .at(Place::Feature(Feature::LipBore))
    .cured_by(remedy))
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
