//! `lens-start`: run-out and fillet at the male shoulder find room in the ring's entry chamfer.

use super::aspects::worst_aspect;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_least};
use super::thread_pair::ThreadPair;
use crate::document::{FieldRef, RingKey, Term, Working};
use crate::mount::{LensField, Unit};
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::LensStart;
const FILLET_SOURCE: &str = "from the shape of a 45 degree chamfer over a fillet";
const RUN_OUT_SOURCE: &str = "from the shape: in the run-out the root climbs evenly to the major diameter; limits of ISO 965-1";
/// Where the lens has no fillet or run-out there is nothing to measure it against, mm.
const NOTHING_MM: f64 = 1e-6;

/// Judges the chamfer against the fillet, across and along the axis, and against the run-out.
///
/// # Errors
/// [`NotJudged`] while both fillet and run-out are unknown; one of them alone makes a note.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    worst_aspect(KEY, vec![fillet(cx), run_out(cx)])
}

/// The chamfer's line lies outside the fillet when both its legs, seen from the male thread, exceed the radius.
fn fillet(cx: &Context) -> Result<Finding, NotJudged> {
    let radius = cx.lens(LensField::ShoulderFillet)?.value();
    if radius < NOTHING_MM {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the male shoulder has no fillet",
        ));
    }
    let male_major = ThreadPair::of(cx)?.male_major(cx);
    let minor = Term::named("thread minor diameter", cx.ring.thread_minor, Unit::Mm);
    let wanted = radius + (male_major.value() - cx.ring.thread_minor).max(0.0) / 2.0;
    let chamfer = cx.size(RingKey::ThreadChamfer);
    let room = chamfer.clone().min(chamfer + (minor - male_major) / 2.0);
    let bounds = Bounds {
        clash: radius,
        caution: radius,
        scale: 1.0,
    };
    let working = Working::new(
        "room for the fillet in the entry chamfer",
        room,
        Unit::Mm,
        FILLET_SOURCE,
    );
    Ok(at_least(KEY, working, bounds)
        .at(Place::Feature(Feature::ThreadChamfer))
        .at(Place::Field(FieldRef::Lens(LensField::ShoulderFillet)))
        .cured_by(Remedy::dimension(RingKey::ThreadChamfer, wanted)))
}

/// The ring's first crest must find a male root that is deep enough for it.
fn run_out(cx: &Context) -> Result<Finding, NotJudged> {
    let run_out = cx.lens(LensField::ThreadRunOut)?.value();
    if run_out < NOTHING_MM {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the male thread is full up to the shoulder",
        ));
    }
    let pair = ThreadPair::of(cx)?;
    let bounds = Bounds {
        clash: run_out * blocked_share(cx, &pair),
        caution: run_out,
        scale: 1.0,
    };
    let chamfer = Working::new(
        "entry chamfer over the run-out",
        cx.size(RingKey::ThreadChamfer),
        Unit::Mm,
        RUN_OUT_SOURCE,
    );
    Ok(at_least(KEY, chamfer, bounds)
        .at(Place::Feature(Feature::ThreadChamfer))
        .at(Place::Field(FieldRef::Lens(LensField::ThreadRunOut)))
        .cured_by(Remedy::dimension(RingKey::ThreadChamfer, run_out)))
}

/// The share of the run-out, from the shoulder on, in which the root stands higher than the ring's crests.
fn blocked_share(cx: &Context, pair: &ThreadPair) -> f64 {
    let (Some(root), Some(major)) = (pair.external.minor_max, pair.external.major_max) else {
        return 1.0;
    };
    let climb = major - root;
    if climb <= 0.0 {
        1.0
    } else {
        (1.0 - (cx.ring.thread_minor - root) / climb).clamp(0.0, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, with};
    use crate::mount::Interface;

    #[test]
    fn a_short_run_out_and_no_fillet_pass() {
        assert_eq!(judged(check, &design()).severity, Severity::Ok);
    }

    #[test]
    fn the_rule_makes_the_chamfer_as_wide_as_the_lens_asks() {
        let mut design = design();
        design.lens.thread_run_out = measured(0.8);
        design.lens.shoulder_fillet = measured(0.3);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }

    /// M42x1: minor 41.035 (6H, middle), male 40.891 to 41.974 (6g): the crests block 86.7 % of the run-out.
    #[test]
    fn a_long_run_out_keeps_the_lens_off_its_seat() {
        for (run_out, severity) in [
            (0.5, Severity::Ok),
            (0.55, Severity::Caution),
            (0.6, Severity::Clash),
        ] {
            let mut design = with(&[(RingKey::ThreadChamfer, 0.5)]);
            design.lens.thread_run_out = measured(run_out);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            if severity != Severity::Ok {
                assert_eq!(
                    judged(check, &cured(&design, &finding)).severity,
                    Severity::Ok
                );
            }
        }
    }

    /// Chamfer 0.5 from the minor 41.035 ends 0.0305 outside a male thread of 41.974.
    #[test]
    fn a_fillet_needs_a_wider_mouth() {
        let mut design = with(&[(RingKey::ThreadChamfer, 0.5)]);
        design.lens.shoulder_fillet = measured(0.3);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            (finding.value.unwrap() - 0.0305).abs() < 1e-9,
            "{}",
            finding.message
        );
        assert_eq!(
            judged(check, &cured(&design, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn what_is_unknown_is_named() {
        let mut design = with(&[(RingKey::ThreadChamfer, 0.5)]);
        design.lens.shoulder_fillet = Interface::Unknown;
        assert_eq!(judged(check, &design).severity, Severity::Note);
        design.lens.thread_run_out = Interface::Unknown;
        let missing = vec![
            FieldRef::Lens(LensField::ShoulderFillet),
            FieldRef::Lens(LensField::ThreadRunOut),
        ];
        assert_eq!(lacking(check, &design), NotJudged(missing));
    }
}
