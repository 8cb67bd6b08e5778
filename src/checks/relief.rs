//! `relief`: room to stop the threading tool in, deep enough to run it out freely.

use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_least, worst_of};
use super::thread_pair::ThreadPair;
use crate::document::{LORE, RingKey, Term, Working};
use crate::mount::Unit;
use crate::ring::{Feature, PinUse};
use crate::standards::undercut::{UndercutForm, undercut};
use crate::workshop::TurningTool;

const KEY: FindingKey = FindingKey::Relief;
const WIDTH_SOURCE: &str =
    "DIN 76-1 form D (short) as the wish; least width: common practice, no source";
const DIAMETER_SOURCE: &str =
    "ISO 965-1, D max by a sharp tool (Machinery's Handbook 27, p. 1794); DIN 76-1 at most";
const STOP_SOURCE: &str =
    "t = 60 (w - tool width) / (P n), from the feed; common practice, no source";
/// Excess over the thread's major where no undercut standard covers the pitch, mm (common practice, no source).
const EXCESS_BEYOND_THE_TABLES_MM: f64 = 0.5;
/// Short undercut in pitches where no standard covers the pitch (common practice, no source).
const SHORT_PITCHES_BEYOND_THE_TABLES: f64 = 2.5;

/// Judges width, diameter, time to stop and place of the relief.
///
/// # Errors
/// [`NotJudged`] where the thread has no limits.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    if cx.ring.thread_runs_through {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the thread runs right through and needs no relief",
        )
        .at(Place::Feature(Feature::Thread)));
    }
    let pair = ThreadPair::of(cx)?;
    let mut aspects = vec![width(cx), diameter(cx, &pair), time_to_stop(cx)];
    aspects.extend(past_the_lip_face(cx));
    worst_of(aspects)
}

/// Excess of the relief's diameter over the thread's major by the standard, mm.
pub(super) fn standard_excess_mm(cx: &Context) -> f64 {
    undercut(UndercutForm::Din76InternalShort, cx.ring.thread.pitch_mm())
        .map_or(EXCESS_BEYOND_THE_TABLES_MM, |row| row.diameter_excess_mm)
}

/// Thread and relief that do not end at the lip face but would reach behind it.
fn past_the_lip_face(cx: &Context) -> Option<Finding> {
    let sizes = &cx.ring.sizes;
    let left = cx.size(RingKey::LipFaceDepth)
        - cx.size(RingKey::ThreadLength)
        - cx.size(RingKey::ReliefWidth);
    let over = -left.value();
    let bounds = Bounds {
        clash: 0.0,
        caution: 0.0,
        scale: 1.0,
    };
    let finding = at_least(
        KEY,
        Working::new("room behind thread and relief", left, Unit::Mm, LORE),
        bounds,
    );
    if finding.severity == Severity::Ok {
        return None;
    }
    let message = format!(
        "thread {} and relief {} reach {} past the lip face at {}",
        mm(sizes.thread_length),
        mm(sizes.relief_width),
        mm(over),
        mm(sizes.lip_face_depth),
    );
    let finding = finding
        .saying(message)
        .at(Place::Feature(Feature::ReliefEnd))
        .at(Place::Feature(Feature::LipFace));
    Some(finding.cured_by(shorter_chamber(cx)))
}

/// Lets go of what was set too long; where thread and lip face are both wanted as they are, a narrower relief.
fn shorter_chamber(cx: &Context) -> Remedy {
    let is_set = |key| {
        cx.derivation
            .dimension(key)
            .is_some_and(|state| state.is_set)
    };
    let width = cx.ring.sizes.lip_face_depth - cx.ring.sizes.thread_length;
    if is_set(RingKey::ThreadLength) && is_set(RingKey::LipFaceDepth) && width > 0.0 {
        return Remedy::dimension(RingKey::ReliefWidth, width);
    }
    let (key, text) = if is_set(RingKey::ThreadLength) {
        (
            RingKey::ThreadLength,
            "let the thread length follow its rule again: it ends where the relief begins",
        )
    } else {
        (
            RingKey::LipFaceDepth,
            "let the lip face follow its rule again: it stands behind thread and relief",
        )
    };
    Remedy {
        text: text.to_owned(),
        change: Some(Change::LetGo(key)),
    }
}

fn width(cx: &Context) -> Finding {
    let pitch = cx.ring.thread.pitch_mm();
    let clash = cx.limits().relief_pitches_clash * pitch;
    let short = undercut(UndercutForm::Din76InternalShort, pitch)
        .map_or(SHORT_PITCHES_BEYOND_THE_TABLES * pitch, |row| {
            row.width_min_mm
        });
    let caution = short.max(clash);
    let bounds = Bounds {
        clash,
        caution,
        scale: 1.0,
    };
    let working = Working::new(
        "relief width",
        cx.size(RingKey::ReliefWidth),
        Unit::Mm,
        WIDTH_SOURCE,
    );
    let finding = at_least(KEY, working, bounds);
    let message = format!(
        "relief {} wide: the short undercut of DIN 76-1 for this pitch is {}, {} pitches ({}) are the least",
        Unit::Mm.show(cx.ring.sizes.relief_width),
        Unit::Mm.show(short),
        cx.limits().relief_pitches_clash,
        Unit::Mm.show(clash),
    );
    finding
        .saying(message)
        .at(Place::Feature(Feature::ReliefFloor))
        .cured_by(wider(cx, caution))
}

/// A wider relief; a thread that was set by hand gives way with it.
fn wider(cx: &Context, width: f64) -> Remedy {
    let is_set = |key| {
        cx.derivation
            .dimension(key)
            .is_some_and(|state| state.is_set)
    };
    let room = cx.ring.sizes.lip_face_depth - cx.ring.sizes.thread_length;
    let lip_stays = cx.ring.pin == PinUse::Pressed || is_set(RingKey::LipFaceDepth);
    if lip_stays && is_set(RingKey::ThreadLength) && room < width {
        return Remedy {
            text: format!(
                "let the thread length follow its rule again, then set relief width to {}",
                Unit::Mm.show(width)
            ),
            change: Some(Change::LetGo(RingKey::ThreadLength)),
        };
    }
    let mut remedy = Remedy::dimension(RingKey::ReliefWidth, width);
    let rest = cx.ring.sizes.lip_face_depth - width;
    if rest <= cx.ring.sizes.thread_chamfer {
        remedy.text = format!(
            "{}; the lip face is too near for it, set that deeper too",
            remedy.text
        );
    }
    remedy
}

/// As far over the thread's major as a sharp tool may cut, but never more than the standard's relief.
fn diameter(cx: &Context, pair: &ThreadPair) -> Finding {
    let major = Term::named("thread major diameter", cx.ring.thread_major, Unit::Mm);
    let standard = standard_excess_mm(cx);
    let caution = pair.internal.major_max_reference.map_or(standard, |sharp| {
        (sharp - cx.ring.thread_major).min(standard)
    });
    let bounds = Bounds {
        clash: 0.0,
        caution,
        scale: standard,
    };
    let excess = cx.size(RingKey::ReliefDiameter) - major;
    at_least(
        KEY,
        Working::new(
            "relief over the thread's major diameter",
            excess,
            Unit::Mm,
            DIAMETER_SOURCE,
        ),
        bounds,
    )
    .at(Place::Feature(Feature::ReliefFloor))
    .cured_by(Remedy::dimension(
        RingKey::ReliefDiameter,
        cx.ring.thread_major + caution,
    ))
}

fn time_to_stop(cx: &Context) -> Finding {
    let Some(tool) = threading_tool(&cx.workshop.turning_tools) else {
        return Finding::said(
            KEY,
            Severity::Note,
            "time to stop not judged: the workshop has no inside threading tool",
        );
    };
    let rpm = cx.workshop.lathe.threading_rpm;
    let pitch = cx.ring.thread.pitch_mm();
    let wanted = cx.limits().stop_time_caution;
    let free = cx.size(RingKey::ReliefWidth) - Term::named("tool width", tool.width_mm, Unit::Mm);
    let speed =
        Term::named("pitch", pitch, Unit::Mm) * Term::named("spindle speed", rpm, Unit::One);
    let working = Working::new(
        "time to stop in the relief",
        60.0 * free / speed,
        Unit::S,
        STOP_SOURCE,
    );
    let seconds = working.term.value();
    let cured_width = tool.width_mm + wanted * pitch * rpm / 60.0;
    let bounds = Bounds {
        clash: 0.0,
        caution: wanted,
        scale: wanted.max(f64::MIN_POSITIVE),
    };
    let finding = at_least(KEY, working, bounds);
    let message = if seconds < 0.0 {
        format!(
            "the threading tool is {} wide, the relief only {}",
            mm(tool.width_mm),
            mm(cx.ring.sizes.relief_width)
        )
    } else {
        format!(
            "{} to stop the tool at {rpm} rpm, wanted at least {}",
            Unit::S.show(seconds),
            Unit::S.show(wanted)
        )
    };
    let mut remedy = wider(cx, cured_width);
    remedy.text = format!(
        "{}; or thread slower, turn the spindle by hand, or cut outward from the relief",
        remedy.text
    );
    finding
        .saying(message)
        .at(Place::Feature(Feature::ReliefFloor))
        .cured_by(remedy)
}

fn mm(value: f64) -> String {
    Unit::Mm.show(value)
}

/// The tool that cuts threads in a bore: named so, and not an outside tool.
fn threading_tool(tools: &[TurningTool]) -> Option<&TurningTool> {
    tools
        .iter()
        .find(|tool| tool.least_bore_mm > 0.0 && tool.name.to_lowercase().contains("thread"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{Bench, cured, design, judged, set, with, workshop};
    use crate::document::Design;
    use crate::mount::{Interface, Presence};
    use crate::workshop::Workshop;

    /// The shipped shop with tools of one width.
    fn with_tools(width_mm: f64) -> Workshop {
        let mut workshop = workshop();
        for tool in &mut workshop.turning_tools {
            tool.width_mm = width_mm;
        }
        workshop.lathe.threading_rpm = 70.0;
        workshop
    }

    /// Judged in a shop whose tool is narrow enough that the time is no question.
    fn in_narrow_shop(design: &Design) -> Finding {
        check(&Bench::in_shop(design.clone(), with_tools(0.5)).cx()).unwrap()
    }

    /// DIN 76-1, pitch 1: short internal undercut 2.5 wide, D + 0.5.
    #[test]
    fn the_rule_gives_the_short_undercut() {
        let design = design();
        let finding = in_narrow_shop(&design);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        let bench = Bench::of(design);
        assert!((bench.cx().ring.sizes.relief_width - 2.5).abs() < 1e-9);
        assert!((bench.cx().ring.sizes.relief_diameter - 42.5).abs() < 1e-9);
    }

    #[test]
    fn narrower_than_the_standard_is_a_caution_and_under_one_and_a_half_pitches_a_clash() {
        for (width, severity) in [(2.4, Severity::Caution), (1.4, Severity::Clash)] {
            let design = with(&[(RingKey::ReliefWidth, width)]);
            let finding = in_narrow_shop(&design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                in_narrow_shop(&cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    /// w 2, P 1, 100 rpm: 1.20 s; w 1.5, P 0.75, 70 rpm: 1.71 s (worked by hand from the feed).
    #[test]
    fn seconds_to_stop() {
        let mut shop = with_tools(0.5);
        shop.lathe.threading_rpm = 100.0;
        let bench = Bench::in_shop(with(&[(RingKey::ReliefWidth, 2.5)]), shop);
        let finding = time_to_stop(&bench.cx());
        assert!((finding.value.unwrap() - 1.2).abs() < 1e-9);
        let mut fine = design();
        fine.lens.thread = Interface::measured("M42x0.75".parse().unwrap(), "gauge");
        set(&mut fine, &[(RingKey::ReliefWidth, 2.0)]);
        let finding = time_to_stop(&Bench::in_shop(fine, with_tools(0.5)).cx());
        assert!((finding.value.unwrap() - 1.714_285_714).abs() < 1e-6);
    }

    #[test]
    fn too_little_time_is_a_caution_with_the_width_that_gives_it() {
        let design = design();
        let in_shop =
            |design: &Design| check(&Bench::in_shop(design.clone(), with_tools(1.5)).cx()).unwrap();
        let finding = in_shop(&design);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        assert_eq!(finding.unit, Unit::S);
        assert_eq!(in_shop(&cured(&design, &finding)).severity, Severity::Ok);
        let narrow_relief = with(&[(RingKey::ReliefWidth, 1.5)]);
        let finding = time_to_stop(&Bench::in_shop(narrow_relief, with_tools(2.0)).cx());
        assert_eq!(finding.severity, Severity::Clash);
    }

    /// M42x1-6H by a sharp tool: 41.520 + 0.793857 = 42.314 (Machinery's Handbook 27, p. 1794).
    #[test]
    fn the_relief_is_wider_than_the_thread() {
        for (diameter, severity) in [
            (42.32, Severity::Ok),
            (42.3, Severity::Caution),
            (41.9, Severity::Clash),
        ] {
            let design = with(&[(RingKey::ReliefDiameter, diameter)]);
            let finding = in_narrow_shop(&design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            if severity != Severity::Ok {
                assert_eq!(
                    in_narrow_shop(&cured(&design, &finding)).severity,
                    Severity::Ok
                );
            }
        }
    }

    #[test]
    fn thread_and_relief_past_the_lip_face_are_a_clash_with_the_numbers() {
        let design = with(&[(RingKey::ThreadLength, 5.0)]);
        let finding = in_narrow_shop(&design);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            finding.message.contains("0.50 mm past the lip face"),
            "{}",
            finding.message
        );
        assert_eq!(
            in_narrow_shop(&cured(&design, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn a_thread_right_through_needs_none() {
        let mut design = design();
        design.lens.stop_down_pin = Presence::Absent;
        assert_eq!(judged(check, &design).severity, Severity::Ok);
    }

    #[test]
    fn without_a_threading_tool_the_time_is_not_judged() {
        let mut shop = workshop();
        shop.turning_tools.clear();
        let finding = check(&Bench::in_shop(design(), shop).cx()).unwrap();
        assert_eq!(finding.severity, Severity::Note, "{}", finding.message);
    }
}
