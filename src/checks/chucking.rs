//! `chucking`: the chuck squeezes the finished neck of the ring out of round.

use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{at_most, worst_of};
use super::loads::Strength;
use super::thin_ring::ThinRing;
use crate::document::{LimitKey, Term, Working};
use crate::mount::Unit;
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::Chucking;
const SOURCE: &str = "thin ring under equal point loads, bending only (Roark, Formulas for Stress and Strain, table of circular rings; case number from memory)";
const ASSUMPTION: &str = "the jaws press at points on a wall thin against its radius (under a fifth); wide soft jaws do far less";

/// Judges the ring gripped by its neck for the second setting, bore and thread already cut.
///
/// # Errors
/// [`NotJudged`] while the workshop has no material.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let strength = Strength::of(cx)?;
    let ring = neck(cx, strength.youngs_modulus_mpa);
    let chuck = &cx.workshop.chuck;
    let limits = cx.limits();
    let most = ring
        .force_for_n(chuck.jaws, limits.roundness_caution)
        .max(0.0);
    let Some(force) = chuck.force_of_a_jaw_n() else {
        let message = format!(
            "how hard the chuck grips is unknown: gripped by its neck in {} jaws, the ring stays round within {} up to {} on each",
            chuck.jaws,
            Unit::Mm.show(limits.roundness_caution),
            Unit::N.show(most)
        );
        let working = Working::new(
            "most on each jaw",
            Term::named("from the ring formula", most, Unit::N),
            Unit::N,
            SOURCE,
        );
        return Ok(Finding::said(KEY, Severity::Note, message)
            .worked(working.assuming(ASSUMPTION))
            .at(Place::Feature(Feature::GrooveRoot)));
    };
    let jaw = Term::named("force of a jaw", force, Unit::N);
    let out_of_round = jaw.clone()
        * Term::named(
            "out of round for each newton",
            ring.out_of_round_mm(chuck.jaws, 1.0),
            Unit::One,
        );
    let bounds = cx.bounds(LimitKey::RoundnessClash, LimitKey::RoundnessCaution);
    let working = Working::new("out of round in the chuck", out_of_round, Unit::Mm, SOURCE)
        .assuming(ASSUMPTION);
    let roundness = at_most(KEY, working, bounds);
    let message = format!(
        "{} out of round under {} on each of {} jaws, wanted at most {}",
        Unit::Mm.show(roundness.value.unwrap_or_default()),
        Unit::N.show(force),
        chuck.jaws,
        Unit::Mm.show(roundness.limit.unwrap_or_default())
    );
    let stress = jaw
        * Term::named(
            "stress for each newton",
            ring.stress_mpa(chuck.jaws, 1.0),
            Unit::One,
        );
    let stress = at_most(
        KEY,
        Working::new("stress under a jaw", stress, Unit::Mpa, SOURCE),
        strength.bounds,
    );
    let remedy = format!(
        "grip with at most {} on each jaw; else bore and thread before the ring is thin, hold it in soft jaws bored to size or on a mandrel, or clamp it along the axis. A two-point micrometer does not show it: three lobes measure the same across",
        Unit::N.show(most)
    );
    let both = vec![roundness.saying(message), stress];
    Ok(worst_of(both)?
        .at(Place::Feature(Feature::GrooveRoot))
        .cured_by(Remedy::words(remedy)))
}

/// The neck behind the flange: groove root over the thread's bore, as long as the spigot.
fn neck(cx: &Context, modulus_mpa: f64) -> ThinRing {
    let sizes = &cx.ring.sizes;
    let (outer, inner) = (sizes.groove_root_diameter, cx.ring.thread_minor);
    ThinRing {
        radius_mm: (outer + inner) / 4.0,
        wall_mm: (outer - inner).max(0.0) / 2.0,
        length_mm: sizes.spigot_length,
        modulus_mpa,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{Bench, design, judged, workshop};

    fn gripped(force: f64) -> Finding {
        let mut shop = workshop();
        shop.chuck.jaw_force_n = Some(force);
        check(&Bench::in_shop(design(), shop).cx()).unwrap()
    }

    #[test]
    fn a_hard_grip_leaves_three_lobes() {
        for (force, severity) in [
            (20.0, Severity::Ok),
            (100.0, Severity::Caution),
            (600.0, Severity::Clash),
        ] {
            let finding = gripped(force);
            assert_eq!(finding.severity, severity, "{}", finding.message);
        }
        assert!(gripped(600.0).remedy.unwrap().text.contains("soft jaws"));
    }

    #[test]
    fn an_unknown_force_is_said_with_what_would_do() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Note);
        let most = finding.working[0].term.value();
        assert_eq!(gripped(most * 0.999).severity, Severity::Ok);
        assert_eq!(gripped(most * 1.001).severity, Severity::Caution);
    }
}
