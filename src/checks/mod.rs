//! Floor `checks`: one finding a file: formula, limit, remedy.
//!
//! May use `ring` and every floor under it. Must not derive a dimension or draw.

mod aperture_ring;
mod aspects;
mod assumed_values;
mod chucking;
mod context;
mod ear_room;
mod finding;
#[cfg(test)]
mod fixture;
mod flange_bearing;
mod flange_strength;
mod focus_tolerance;
mod index_mark;
mod interface_values;
mod judge;
mod lens_barrel;
mod lens_start;
mod lip_thickness;
mod loads;
mod lock_hole;
mod lug_engagement;
mod lug_entry;
mod lug_flank;
mod lug_stop;
mod lug_strength;
mod nose_depth;
mod obstacle_gap;
mod obstacles;
mod pin_landing;
mod pin_room;
mod pin_travel;
mod plan_angles;
mod register;
mod relief;
mod seat_bearing;
mod single_entry;
mod thin_ring;
mod thin_wall;
mod thread_bottoming;
mod thread_engagement;
mod thread_hand;
mod thread_pair;
mod thread_strength;
mod throat;
mod tilt;
mod tool_access;
mod tool_jobs;
mod tool_milling;
mod two_piece;
mod vignetting;

use crate::document::Design;
use crate::ring::Derivation;

pub use assumed_values::{count_assumed, rests_on_assumed};
pub use context::{Context, NotJudged};
pub use finding::{Change, Finding, FindingKey, Place, Remedy, Severity};

/// One finding for every check, in the order of [`FindingKey::ALL`].
#[must_use]
pub fn all(cx: &Context) -> Vec<Finding> {
    FindingKey::ALL
        .iter()
        .map(|key| {
            run(*key, cx).unwrap_or_else(|NotJudged(missing)| Finding::not_judged(*key, &missing))
        })
        .collect()
}

fn run(key: FindingKey, cx: &Context) -> Result<Finding, NotJudged> {
    match key {
        FindingKey::Register => register::check(cx),
        FindingKey::AssumedValues => Ok(assumed_values::check(cx.design, cx.derivation)),
        FindingKey::LipThickness => lip_thickness::check(cx),
        FindingKey::PinLanding => pin_landing::check(cx),
        FindingKey::PinTravel => pin_travel::check(cx),
        FindingKey::ThreadBottoming => thread_bottoming::check(cx),
        FindingKey::ThreadEngagement => thread_engagement::check(cx),
        FindingKey::Relief => relief::check(cx),
        FindingKey::ThinWall => Ok(thin_wall::check(cx)),
        FindingKey::FlangeStrength => flange_strength::check(cx),
        FindingKey::LugStrength => lug_strength::check(cx),
        FindingKey::ThreadStrength => thread_strength::check(cx),
        FindingKey::ApertureRing => aperture_ring::check(cx),
        FindingKey::LensBarrel => lens_barrel::check(cx),
        FindingKey::Throat => throat::check(cx),
        FindingKey::EarRoom => ear_room::check(cx),
        FindingKey::NoseDepth => nose_depth::check(cx),
        FindingKey::Obstacles => obstacles::check(cx),
        FindingKey::FlangeBearing => flange_bearing::check(cx),
        FindingKey::SeatBearing => seat_bearing::check(cx),
        FindingKey::ThreadHand => thread_hand::check(cx),
        FindingKey::LensStart => lens_start::check(cx),
        FindingKey::LugEntry => lug_entry::check(cx),
        FindingKey::LugEngagement => lug_engagement::check(cx),
        FindingKey::LugStop => lug_stop::check(cx),
        FindingKey::SingleEntry => single_entry::check(cx),
        FindingKey::LockHole => lock_hole::check(cx),
        FindingKey::Vignetting => vignetting::check(cx),
        FindingKey::FocusTolerance => focus_tolerance::check(cx),
        FindingKey::Tilt => tilt::check(cx),
        FindingKey::IndexMark => index_mark::check(cx),
        FindingKey::ToolAccess => tool_access::check(cx),
        FindingKey::Chucking => chucking::check(cx),
    }
}

/// The findings of a design whose ring is not whole, or whose sizes make no shape: what is known is judged, what
/// stops the ring is told, and every other check says that it was not judged.
#[must_use]
pub fn without_a_ring(
    design: &Design,
    derivation: &Derivation,
    shape_fault: Option<&str>,
) -> Vec<Finding> {
    FindingKey::ALL
        .iter()
        .map(|key| without(*key, design, derivation, shape_fault))
        .collect()
}

fn without(
    key: FindingKey,
    design: &Design,
    derivation: &Derivation,
    shape_fault: Option<&str>,
) -> Finding {
    if key == FindingKey::Register {
        return register::judged(design, derivation)
            .unwrap_or_else(|NotJudged(missing)| Finding::not_judged(key, &missing));
    }
    if key != FindingKey::AssumedValues {
        return Finding::said(key, Severity::Note, "not judged: the ring is not whole");
    }
    match shape_fault {
        None => assumed_values::check(design, derivation),
        Some(fault) => Finding::said(key, Severity::Clash, fault).cured_by(Remedy::words(
            "change the sizes it names, or let them follow their rules again",
        )),
    }
}

#[cfg(test)]
mod tests {
    use super::fixture::{Bench, cured, design, with, workshop};
    use super::*;
    use crate::document::{FieldRef, RingKey};
    use crate::mount::{BodyField, Interface};
    use crate::ring::{derive, parts_of};

    /// Findings of a design, where its sizes make a shape.
    fn findings(design: &Design) -> Option<Vec<Finding>> {
        let workshop = workshop();
        let derivation = derive(design, &workshop);
        let ring = derivation.ring.clone()?;
        let parts = parts_of(design, &ring).ok()?;
        Some(all(&Context {
            design,
            workshop: &workshop,
            derivation: &derivation,
            ring: &ring,
            parts: &parts,
        }))
    }

    /// Every dimension set off its rule, both ways, near and far.
    #[test]
    fn a_remedy_never_makes_its_own_finding_worse() {
        let plain = Bench::of(design());
        let mut tried = 0;
        for key in RingKey::ALL {
            let rule = plain.cx().ring.sizes.get(*key);
            for off in [-6.0, -2.0, -0.6, -0.2, 0.2, 0.6, 2.0, 6.0] {
                let off_rule = with(&[(*key, rule + off)]);
                for before in findings(&off_rule).unwrap_or_default() {
                    if before
                        .remedy
                        .as_ref()
                        .is_none_or(|remedy| remedy.change.is_none())
                    {
                        continue;
                    }
                    let Some(after) = findings(&cured(&off_rule, &before)) else {
                        continue;
                    };
                    let after = after
                        .into_iter()
                        .find(|finding| finding.key == before.key)
                        .unwrap();
                    assert!(
                        !judge::is_worse(&after, &before),
                        "{key} off by {off}: {:?}\nbefore {}\nafter {}",
                        before.remedy,
                        before.message,
                        after.message
                    );
                    tried += 1;
                }
            }
        }
        assert!(tried > 100, "only {tried} remedies were tried");
    }

    fn keys(findings: &[Finding]) -> Vec<FindingKey> {
        findings.iter().map(|finding| finding.key).collect()
    }

    #[test]
    fn every_check_has_one_finding_in_order() {
        let bench = Bench::of(design());
        let findings = all(&bench.cx());
        assert_eq!(keys(&findings), FindingKey::ALL);
    }

    #[test]
    fn the_rules_pass_their_own_checks() {
        for finding in all(&Bench::of(design()).cx()) {
            assert_ne!(
                finding.severity,
                Severity::Clash,
                "{:?}: {}",
                finding.key,
                finding.message
            );
        }
    }

    #[test]
    fn an_unknown_throat_stops_the_ring_and_says_so() {
        let mut design = design();
        design.body.throat = Interface::Unknown;
        let derivation = derive(&design, &workshop());
        let findings = without_a_ring(&design, &derivation, None);
        assert_eq!(keys(&findings), FindingKey::ALL);
        assert_eq!(
            findings[0].severity,
            Severity::Ok,
            "{}",
            findings[0].message
        );
        assert_eq!(findings[1].severity, Severity::Clash);
        assert!(
            findings[1]
                .places
                .contains(&Place::Field(FieldRef::Body(BodyField::Throat)))
        );
        let rest = findings.iter().skip(2);
        assert!(
            rest.clone()
                .all(|finding| finding.severity == Severity::Note),
            "{findings:?}"
        );
        assert!(
            rest.clone()
                .all(|finding| finding.message == "not judged: the ring is not whole")
        );
    }

    /// A lens of register 44.5 on a body of 44.0 with a shoulder wider than the throat: nothing can be built.
    #[test]
    fn a_refusal_is_a_clash_of_the_register_with_its_numbers() {
        let mut design = design();
        design.lens.register = Interface::measured(44.5, "depth micrometer");
        design.lens.shoulder_diameter = Interface::measured(52.0, "caliper");
        let findings = without_a_ring(&design, &derive(&design, &workshop()), None);
        assert_eq!(findings[0].severity, Severity::Clash);
        assert!(
            findings[0].message.contains("52.00 mm"),
            "{}",
            findings[0].message
        );
    }

    #[test]
    fn a_shape_fault_is_told() {
        let bench = Bench::of(design());
        let findings = without_a_ring(
            &bench.design,
            &bench.derivation,
            Some("the nose is wider than the lugs"),
        );
        assert_eq!(findings[1].severity, Severity::Clash);
        assert_eq!(findings[1].message, "the nose is wider than the lugs");
    }
}
