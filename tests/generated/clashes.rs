//! A ring derived wholly by rule has no clash that another ring would not have too.

use std::collections::BTreeMap;

use flangewright::checks::{Finding, FindingKey, Severity};
use flangewright::document::{Design, Term};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::mount::Unit;
use flangewright::optics::RayCone;
use flangewright::workshop::Workshop;

use crate::pairs::plausible;

/// Whether no ring could do better: the one reason that is allowed here, looked into by hand.
///
/// The lip must cover the pin and leave the cone of rays: where the cone at the lip is wider than the circle on
/// which the pin's inner edge runs, less the landing, no bore does both.
fn nothing_cures(design: &Design, evaluation: &Evaluation, finding: &Finding) -> bool {
    if finding.key != FindingKey::PinLanding {
        return false;
    }
    let (Ok(cone), Some(ring)) = (
        RayCone::to_the_corner(&design.lens, &design.body),
        evaluation.derivation.ring.as_ref(),
    ) else {
        return false;
    };
    let number = |value: &flangewright::mount::Interface<f64>| value.number().unwrap();
    let depth = ring.sizes.lip_face_depth;
    let from_image = number(&design.lens.register) - depth;
    let widest = 2.0
        * cone
            .radius_at(Term::named("image to lip", from_image, Unit::Mm))
            .value();
    widest
        > number(&design.lens.pin_circle)
            - number(&design.lens.pin_diameter)
            - 2.0 * design.limits.pin_landing_clash
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
