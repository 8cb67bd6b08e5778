//! A ring derived wholly by rule has no clash that another ring would not have too.

use std::collections::BTreeMap;

use flangewright::checks::{Finding, FindingKey, Severity};
use flangewright::document::{Design, Term};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::mount::Unit;
use flangewright::optics::RayCone;
use flangewright::ring::PinUse;
use flangewright::workshop::Workshop;

use crate::pairs::plausible;

/// Whether no ring could do better: the reasons that are allowed here, each looked into by hand.
///
/// - Pin landing: the lip must cover the pin and leave the cone of rays; where the cone at the lip is wider than the
///   circle on which the pin's inner edge runs, less the landing, no bore does both.
/// - Vignetting: where the cone is wider than that, or than the nose leaves with the least wall, no bore clears it.
fn nothing_cures(design: &Design, evaluation: &Evaluation, finding: &Finding) -> bool {
    match finding.key {
        FindingKey::PinLanding => cone_meets_pin(design, evaluation).unwrap_or(false),
        FindingKey::Vignetting => {
            cone_meets_pin(design, evaluation).unwrap_or(false)
                || cone_meets_nose(design, evaluation).unwrap_or(false)
        }
        _ => false,
    }
}

/// Diameter of the cone of rays so far behind the lens seat, mm.
fn cone_at(design: &Design, depth_mm: f64) -> Option<f64> {
    let cone = RayCone::to_the_corner(&design.lens, &design.body).ok()?;
    let from_image = Term::named(
        "from the image",
        design.lens.register.number()? - depth_mm,
        Unit::Mm,
    );
    Some(2.0 * cone.radius_at(from_image).value())
}

/// Whether the cone at the lip is wider than a lip that holds the pin may be.
fn cone_meets_pin(design: &Design, evaluation: &Evaluation) -> Option<bool> {
    let ring = evaluation.derivation.ring.as_ref()?;
    let (circle, pin) = (
        design.lens.pin_circle.number()?,
        design.lens.pin_diameter.number()?,
    );
    let widest = circle - pin - 2.0 * design.limits.pin_landing_clash;
    Some(ring.pin == PinUse::Pressed && cone_at(design, ring.sizes.lip_face_depth)? > widest)
}

/// Whether the cone at the nose face is wider than the nose with the least wall.
fn cone_meets_nose(design: &Design, evaluation: &Evaluation) -> Option<bool> {
    let sizes = &evaluation.derivation.ring.as_ref()?.sizes;
    let widest = sizes.nose_diameter - 2.0 * design.limits.wall_clash;
    Some(cone_at(design, sizes.seat_height + sizes.spigot_length)? > widest)
}

#[test]
fn rules_leave_no_clash_that_they_could_have_avoided() {
    let workshop = Workshop::default_set().unwrap();
    let mut allowed: BTreeMap<FindingKey, usize> = BTreeMap::new();
    let (mut whole, mut avoidable) = (0, Vec::new());
    for (seed, count) in [(20, 300), (80, 300)] {
        for index in 0..count {
            let design = plausible(seed, index);
            let evaluation = evaluate(&design, &workshop);
            if evaluation.derivation.refusal.is_some() {
                continue;
            }
            assert!(
                evaluation.parts.is_some(),
                "{seed}/{index}: {:?} {:?}",
                evaluation.derivation.missing,
                evaluation.shape_fault
            );
            whole += 1;
            for finding in evaluation
                .findings
                .iter()
                .filter(|finding| finding.severity == Severity::Clash)
            {
                if nothing_cures(&design, &evaluation, finding) {
                    *allowed.entry(finding.key).or_default() += 1;
                } else {
                    avoidable.push(format!(
                        "{seed}/{index} {:?}: {}",
                        finding.key, finding.message
                    ));
                }
            }
        }
    }
    assert!(avoidable.is_empty(), "{}", avoidable.join("\n"));
    // Too many excuses would mean that the parts fit nobody.
    assert!(
        whole >= 500 && allowed.values().sum::<usize>() < whole / 10,
        "{whole} {allowed:?}"
    );
}
