//! `thread-bottoming`: the lens stops on its seat, never on the end of its thread.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_least;
use super::thread_pair::ThreadPair;
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Working};
use crate::mount::{LensField, Unit};
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::ThreadBottoming;

/// Judges what is left behind the male thread when the lens sits on its seat.
///
/// # Errors
/// [`NotJudged`] while the length of the male thread is unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let sizes = &cx.ring.sizes;
    let (male, pair) = both(cx.lens(LensField::MaleThreadLength), ThreadPair::of(cx))?;
    let male_major = pair.male_major(cx).value();
    let relief_takes_it = sizes.relief_width <= 0.0 || sizes.relief_diameter > male_major;
    let (end, key) = if cx.ring.thread_runs_through {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the thread runs right through: nothing stops the male thread",
        )
        .at(Place::Feature(Feature::Thread)));
    } else if !relief_takes_it {
        (Feature::ReliefStart, RingKey::ThreadLength)
    } else if sizes.lip_bore > male_major {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the bore behind the thread takes the male thread in",
        )
        .at(Place::Feature(Feature::LipBore)));
    } else {
        (Feature::LipFace, RingKey::LipFaceDepth)
    };
    let bounds = cx.bounds(LimitKey::ThreadEndClash, LimitKey::ThreadEndGap);
    let gap = cx.size(key) - male.clone();
    let remedy = if relief_takes_it {
        Remedy::dimension(key, male.value() + bounds.caution)
    } else {
        Remedy::dimension(
            RingKey::ReliefDiameter,
            cx.ring.thread_major + cut_over_the_major(cx),
        )
    };
    Ok(at_least(
        KEY,
        Working::new("gap behind the male thread", gap, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(end))
    .at(Place::Field(FieldRef::Lens(LensField::MaleThreadLength)))
    .cured_by(remedy))
}

/// What the relief is wider than the thread by the standard, mm.
fn cut_over_the_major(cx: &Context) -> f64 {
    super::relief::standard_excess_mm(cx)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking, set, with};
    use crate::mount::{Interface, Presence};

    #[test]
    fn the_lip_stands_behind_the_male_thread() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!((finding.value.unwrap() - 2.0).abs() < 1e-9);
    }

    #[test]
    fn a_lip_too_near_is_found_and_cured() {
        for (face, severity) in [
            (5.3, Severity::Ok),
            (5.2, Severity::Caution),
            (5.05, Severity::Clash),
        ] {
            let design = with(&[(RingKey::LipFaceDepth, face)]);
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

    /// M42x1-6g: major diameter at most 41.974 (ISO 965-1).
    #[test]
    fn a_relief_that_the_thread_does_not_enter_is_no_room() {
        let design = with(&[
            (RingKey::ReliefDiameter, 41.9),
            (RingKey::ThreadLength, 4.0),
        ]);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            (finding.value.unwrap() + 1.0).abs() < 1e-9,
            "{}",
            finding.message
        );
        assert_eq!(
            judged(check, &cured(&design, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn a_thread_right_through_never_stops_the_lens() {
        let mut design = design();
        design.lens.stop_down_pin = Presence::Absent;
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Ok);
        assert!(
            finding.message.contains("right through"),
            "{}",
            finding.message
        );
    }

    #[test]
    fn the_length_must_be_known() {
        let mut design = design();
        set(&mut design, &[(RingKey::LipFaceDepth, 7.0)]);
        design.lens.male_thread_length = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::MaleThreadLength)])
        );
    }
}
