//! `throat`: the spigot goes through the throat and the lugs through the slots.

use super::aspects::worst_aspect;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy};
use super::judge::{Bounds, at_least};
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{BodyField, Unit};
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::Throat;

/// Judges the radial gaps of groove root and nose in the throat, and of the lugs in the slots.
///
/// # Errors
/// [`NotJudged`] when both throat and slot diameter are unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let (throat, slot) = (BodyField::Throat, BodyField::SlotDiameter);
    let (spigot, lug) = (LimitKey::SpigotClearance, LimitKey::LugClearance);
    worst_aspect(
        KEY,
        vec![
            passes(
                cx,
                RingKey::GrooveRootDiameter,
                throat,
                spigot,
                Feature::GrooveRoot,
            ),
            passes(cx, RingKey::NoseDiameter, throat, spigot, Feature::Nose),
            passes(cx, RingKey::LugDiameter, slot, lug, Feature::LugTip),
        ],
    )
}

fn passes(
    cx: &Context,
    key: RingKey,
    bore: BodyField,
    wanted: LimitKey,
    feature: Feature,
) -> Result<Finding, NotJudged> {
    let gap = least_radial_gap(cx, key, bore)?;
    let bounds = running_fit(cx, wanted);
    let result = format!(
        "{}, radial gap in {}",
        key.label().to_lowercase(),
        FieldRef::Body(bore).long_label()
    );
    let shortfall = bounds.caution - gap.value();
    let cured = cx.size(key).value() - 2.0 * shortfall;
    Ok(
        at_least(KEY, Working::new(result, gap, Unit::Mm, LORE), bounds)
            .at(Place::Feature(feature))
            .cured_by(Remedy::dimension(key, cured)),
    )
}

/// Radial gap between the widest that `key` may be turned and a bore of the body, mm.
///
/// # Errors
/// [`NotJudged`] when the bore is unknown.
pub fn least_radial_gap(cx: &Context, key: RingKey, bore: BodyField) -> Result<Term, NotJudged> {
    let (_, upper) = cx.deviations(key);
    let widest = cx.size(key) + Term::named("its upper deviation", upper, Unit::Mm);
    Ok((cx.body(bore)? - widest) / 2.0)
}

/// Limits of a running fit: the clearance that the rule gives is enough, however narrow the user wants it.
pub fn running_fit(cx: &Context, wanted: LimitKey) -> Bounds {
    let wanted = cx.limits().get(wanted);
    let bounds = cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution);
    Bounds {
        clash: bounds.clash.min(wanted),
        caution: bounds.caution.min(wanted),
        ..bounds
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{cured, design, judged, with};
    use crate::mount::Interface;

    // Throat 50.0, slots 54.0; clearances 0.15 radial by rule: common practice, no source. The shaft tolerance is
    // h9, so the upper deviation is 0 (ISO 286-1) and the least gap is the nominal one.
    #[test]
    fn the_rule_gives_a_running_fit() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!((finding.value.unwrap() - 0.15).abs() < 1e-9);
        assert_eq!(finding.working.len(), 3);
    }

    #[test]
    fn a_tight_nose_is_a_caution_and_a_fat_lug_a_clash() {
        let tight = judged(check, &with(&[(RingKey::NoseDiameter, 49.75)]));
        assert_eq!(tight.severity, Severity::Caution);
        assert!((tight.value.unwrap() - 0.125).abs() < 1e-9);
        let fat = with(&[(RingKey::LugDiameter, 53.9)]);
        let finding = judged(check, &fat);
        assert_eq!(finding.severity, Severity::Clash);
        assert!((finding.value.unwrap() - 0.05).abs() < 1e-9);
        assert_eq!(judged(check, &cured(&fat, &finding)).severity, Severity::Ok);
    }

    #[test]
    fn a_spigot_wider_than_the_throat_has_a_negative_gap() {
        let finding = judged(check, &with(&[(RingKey::GrooveRootDiameter, 50.4)]));
        assert_eq!(finding.severity, Severity::Clash);
        assert!((finding.value.unwrap() + 0.2).abs() < 1e-9);
    }

    #[test]
    fn the_tolerance_eats_into_the_gap() {
        let mut loose = with(&[(RingKey::LugDiameter, 53.7)]);
        loose.ring.dimensions.lug_diameter.tolerance = crate::document::Tolerance::PlusMinus(0.06);
        let finding = judged(check, &loose);
        assert_eq!(finding.severity, Severity::Caution);
        assert!((finding.value.unwrap() - 0.12).abs() < 1e-9);
        assert_eq!(
            judged(check, &cured(&loose, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn an_unknown_slot_diameter_is_named_beside_what_was_judged() {
        let mut unknown = with(&[(RingKey::LugDiameter, 53.7)]);
        unknown.body.slot_diameter = Interface::Unknown;
        let finding = judged(check, &unknown);
        assert_eq!(finding.severity, Severity::Note);
        assert_eq!(finding.message, "not judged: body slot diameter unknown");
    }
}
