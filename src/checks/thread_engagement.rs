//! `thread-engagement`: enough full turns of the two threads lie in each other.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy};
use super::judge::at_least;
use super::thread_pair::ThreadPair;
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{LensField, Unit, show_number};
use crate::ring::{Feature, PinUse};
use crate::standards::engagement::normal_engagement;
use crate::standards::{Basis, Side};

const KEY: FindingKey = FindingKey::ThreadEngagement;
const OVERLAP_SOURCE: &str =
    "limits of ISO 965-1 over the 5/8 H of ISO 68-1 (or their likes of this thread form)";

/// Judges the full turns engaged; flank overlap over the thread tolerances stands in the working.
///
/// # Errors
/// [`NotJudged`] while length or run-out of the male thread is unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let lens = both(
        cx.lens(LensField::MaleThreadLength),
        cx.lens(LensField::ThreadRunOut),
    );
    let ((male, run_out), pair) = both(lens, ThreadPair::of(cx))?;
    let reach = Reach {
        pitch: cx.ring.thread.pitch_mm(),
        begin: cx.ring.sizes.thread_chamfer.max(run_out.value()),
        run_out: run_out.value(),
        male: male.value(),
    };
    let turns = engaged_length(cx)? / Term::named("pitch", reach.pitch, Unit::Mm);
    let bounds = cx.bounds(LimitKey::TurnsClash, LimitKey::TurnsCaution);
    let length = turns.value() * reach.pitch;
    let working = Working::new("full turns engaged", turns, Unit::Turns, LORE);
    let mut finding = at_least(KEY, working, bounds);
    let overlap = flank_overlap(cx, &pair);
    let wanted = finding.limit.unwrap_or(bounds.caution);
    let message = format!(
        "{} engaged over {}, wanted at least {}{}{}",
        Unit::Turns.show(length / reach.pitch),
        Unit::Mm.show(length),
        show_number(wanted, 2),
        group(cx, length),
        told(&overlap)
    );
    finding.working.extend(overlap);
    Ok(finding
        .saying(message)
        .at(Place::Feature(Feature::Thread))
        .at(Place::Field(FieldRef::Lens(LensField::MaleThreadLength)))
        .cured_by(remedy(cx, &reach, bounds.caution)))
}

/// Length over which full turns of both threads lie in each other, mm; 0 or less where none do.
///
/// # Errors
/// [`NotJudged`] while length or run-out of the male thread is unknown.
pub(super) fn engaged_length(cx: &Context) -> Result<Term, NotJudged> {
    let (male, run_out) = both(
        cx.lens(LensField::MaleThreadLength),
        cx.lens(LensField::ThreadRunOut),
    )?;
    let end = cx.size(RingKey::ThreadLength).min(male);
    let begin = cx.size(RingKey::ThreadChamfer).max(run_out);
    Ok(end - begin)
}

/// Where the male thread has full turns, mm below the seat.
struct Reach {
    pitch: f64,
    /// The first full turn of both.
    begin: f64,
    run_out: f64,
    male: f64,
}

/// Group of engagement length, and the class that the standard recommends for it.
fn group(cx: &Context, length: f64) -> String {
    let normal = normal_engagement(cx.ring.thread.nominal_mm(), cx.ring.thread.pitch_mm());
    let group = normal.group(length);
    let basis = match normal.basis {
        Basis::Table => "ISO 965-1",
        Basis::Computed | Basis::Basic => "formula of ISO 965-1",
    };
    format!(
        "; length {} by {basis}, which recommends {} for the ring",
        group.letter(),
        group.recommended_class(Side::Internal)
    )
}

/// Least and greatest radial overlap of the flanks as a share of the basic one.
fn flank_overlap(cx: &Context, pair: &ThreadPair) -> Vec<Working> {
    let depth = Term::named(
        "basic thread overlap",
        cx.ring.thread.basic().internal_depth,
        Unit::Mm,
    );
    let share = |major: Option<f64>,
                 minor: Option<f64>,
                 ends: (&'static str, &'static str, &'static str)| {
        let overlap = Term::named(ends.1, major?, Unit::Mm) - Term::named(ends.2, minor?, Unit::Mm);
        let term = 100.0 * (overlap / 2.0 / depth.clone());
        Some(Working::new(ends.0, term, Unit::Percent, OVERLAP_SOURCE))
    };
    let least = (
        "flank overlap, least",
        "male major, least",
        "ring minor, greatest",
    );
    let most = (
        "flank overlap, greatest",
        "male major, greatest",
        "ring minor, least",
    );
    [
        share(pair.external.major_min, pair.internal.minor_max, least),
        share(pair.external.major_max, pair.internal.minor_min, most),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn told(overlap: &[Working]) -> String {
    match overlap {
        [least, most] => format!(
            "; the flanks overlap by {} to {} % of the full thread",
            show_number(least.term.value(), 0),
            show_number(most.term.value(), 0)
        ),
        _ => String::new(),
    }
}

/// A longer thread, a narrower relief or a smaller chamfer, whichever the ring has room for.
fn remedy(cx: &Context, reach: &Reach, turns: f64) -> Remedy {
    let sizes = &cx.ring.sizes;
    let length = (reach.begin + turns * reach.pitch).min(reach.male);
    if length > sizes.thread_length {
        return longer_thread(cx, length, reach.pitch);
    }
    let chamfer = sizes.thread_length.min(reach.male) - turns * reach.pitch;
    if sizes.thread_chamfer > reach.run_out && chamfer >= reach.run_out {
        return Remedy::dimension(RingKey::ThreadChamfer, chamfer);
    }
    let most = ((reach.male - reach.run_out) / reach.pitch).max(0.0);
    Remedy::words(format!(
        "the male thread has only {} beyond its run-out: measure it again, and hold the thread with a set-screw or thread locking",
        Unit::Turns.show(most)
    ))
}

/// A longer thread in the ring, or a narrower relief, whichever the ring has room for.
pub(super) fn longer_thread(cx: &Context, length: f64, pitch: f64) -> Remedy {
    let sizes = &cx.ring.sizes;
    let thread_is_set = cx
        .derivation
        .dimension(RingKey::ThreadLength)
        .is_some_and(|state| state.is_set);
    let follows = cx
        .derivation
        .dimension(RingKey::LipFaceDepth)
        .is_some_and(|state| !state.is_set)
        && cx.ring.pin != PinUse::Pressed;
    let rest = sizes.lip_face_depth - length;
    if follows || rest >= sizes.relief_width {
        Remedy::dimension(RingKey::ThreadLength, length)
    } else if !thread_is_set && rest >= cx.limits().relief_pitches_clash * pitch {
        Remedy::dimension(RingKey::ReliefWidth, rest)
    } else {
        Remedy::words(format!(
            "a thread of {} would leave {} for the relief before the lip face: set the lip face deeper, as far as the pin allows",
            Unit::Mm.show(length),
            Unit::Mm.show(rest.max(0.0))
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, with};
    use crate::checks::{Change, Severity};
    use crate::mount::Interface;

    /// Lip face 7.0 less relief 2.5 is a thread of 4.5; less the chamfer of 0.5: four turns of 1 mm.
    #[test]
    fn the_rule_leaves_four_turns() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!((finding.value.unwrap() - 4.0).abs() < 1e-9);
    }

    /// ISO 965-1 table 2, 22.4 to 45, P 1: short up to 4, normal over 4 to 12.
    #[test]
    fn the_group_of_engagement_is_told() {
        assert!(
            judged(check, &design())
                .message
                .contains("length S by ISO 965-1, which recommends 5H")
        );
        let longer = with(&[(RingKey::ThreadChamfer, 0.3)]);
        assert!(judged(check, &longer).message.contains("length N"));
    }

    /// M42x1 6H/6g: (41.794 - 41.153) / 2 / 0.541266 = 59.2 %, (41.974 - 40.917) / 2 / 0.541266 = 97.6 %.
    #[test]
    fn flank_overlap_over_the_tolerances() {
        let finding = judged(check, &design());
        let share = |name: &str| {
            finding
                .working
                .iter()
                .find(|line| line.result == name)
                .unwrap()
                .term
                .value()
        };
        assert!((share("flank overlap, least") - 59.21).abs() < 0.02);
        assert!((share("flank overlap, greatest") - 97.64).abs() < 0.02);
    }

    #[test]
    fn too_few_turns_are_cured_by_what_the_ring_has_room_for() {
        for (sizes, severity, key) in [
            (
                vec![(RingKey::ThreadLength, 3.4)],
                Severity::Caution,
                RingKey::ThreadLength,
            ),
            (
                vec![(RingKey::ThreadLength, 2.4)],
                Severity::Clash,
                RingKey::ThreadLength,
            ),
            (
                vec![(RingKey::ReliefWidth, 4.0)],
                Severity::Caution,
                RingKey::ReliefWidth,
            ),
            (
                vec![(RingKey::ThreadChamfer, 2.4)],
                Severity::Caution,
                RingKey::ThreadChamfer,
            ),
        ] {
            let design = with(&sizes);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            let change = finding.remedy.clone().unwrap().change;
            assert!(
                matches!(change, Some(Change::Dimension(found, _)) if found == key),
                "{change:?}"
            );
            let after = judged(check, &cured(&design, &finding));
            assert!(after.value.unwrap() > finding.value.unwrap());
        }
    }

    #[test]
    fn a_long_run_out_leaves_less_and_is_said() {
        let mut design = design();
        design.lens.thread_run_out = measured(2.5);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        design.lens.thread_run_out = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::ThreadRunOut)])
        );
    }

    #[test]
    fn a_short_male_thread_is_beyond_the_ring() {
        let mut design = design();
        design.lens.male_thread_length = measured(2.0);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        assert_eq!(finding.remedy.unwrap().change, None);
    }
}
