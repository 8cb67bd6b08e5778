//! `single-entry`: the ring can be entered at one angle only, and it is the intended one.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_most};
use super::lug_entry::{turned, twist_of};
use super::lug_flank::{widened, widest_deg};
use super::plan_angles::intervals;
use crate::document::{FieldRef, Term, Working};
use crate::geometry::Interval;
use crate::geometry::sector::rotations_where_disjoint;
use crate::mount::{BodyField, Sector, Unit};
use crate::ring::Twist;

const KEY: FindingKey = FindingKey::SingleEntry;

const SOURCE: &str = "derived: each pair of lug and ear forbids one interval of rotations";
/// Angles told one by one; a pattern of many equal lugs has as many.
const LISTED: usize = 5;

/// Judges every rotation at which the lugs, as the cutter leaves them, pass between the ears.
///
/// # Errors
/// [`NotJudged`] when ears, throat, twist or its hand are unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let ears = cx.known(FieldRef::Ears, &cx.design.body.ears);
    let ((ears, throat), twist) = both(both(ears, cx.body(BodyField::Throat)), twist_of(cx))?;
    let radii = (throat.value() / 2.0, cx.ring.sizes.lug_diameter / 2.0);
    if radii.1 <= radii.0 {
        return Ok(Finding::said(
            KEY,
            Severity::Clash,
            "the lugs do not reach the ears: the ring enters at any angle",
        )
        .cured_by(Remedy::words(
            "make the lugs wider than the throat, or measure throat and slots again",
        )));
    }
    let out_deg = widest_deg(cx.ring, radii);
    let entries = entries(&cx.ring.lugs, out_deg, ears, twist);
    let finding = match entries.iter().position(|entry| entry.contains(0.0)) {
        Some(intended) => several(cx, &entries, intended, twist),
        None => not_at_the_mark(&entries),
    };
    if finding.severity == Severity::Ok {
        return Ok(finding);
    }
    // Only lugs set by hand can be worse than the rule's.
    let by_rule = cx
        .derivation
        .lugs_by_rule
        .as_deref()
        .filter(|_| !cx.design.ring.lugs.is_derived());
    let by_rule = by_rule.map(|lugs| self::entries(lugs, out_deg, ears, twist));
    Ok(finding.cured_by(remedy(&entries, by_rule.as_deref())))
}

/// The rotations of the ring away from its entry, clockwise, at which it drops in.
fn entries(lugs: &[Sector], out_deg: f64, ears: &[Sector], twist: Twist) -> Vec<Interval> {
    let at_entry: Vec<Sector> = lugs
        .iter()
        .map(|lug| turned(widened(*lug, out_deg), -twist.signed_deg()))
        .collect();
    rotations_where_disjoint(&intervals(&at_entry), &intervals(ears), 0.0)
}

fn remedy(entries: &[Interval], by_rule: Option<&[Interval]>) -> Remedy {
    let enters = |entries: &[Interval]| entries.iter().any(|entry| entry.contains(0.0));
    let is_better =
        |rule: &[Interval]| enters(rule) && (!enters(entries) || rule.len() < entries.len());
    if by_rule.is_some_and(is_better) {
        Remedy {
            text: "let the lugs follow their rule".to_owned(),
            change: Some(Change::LetLugsGo),
        }
    } else if enters(entries) {
        Remedy::words("the body's own slots are alike: mark the entry on ring and body")
    } else {
        Remedy::words("lugs and ears do not match: measure ears, twist and its hand again")
    }
}

/// Middle of an interval as a clock angle between -180 and 180 degrees.
fn middle_deg(entry: Interval) -> f64 {
    (entry.middle_rad().to_degrees() + 180.0).rem_euclid(360.0) - 180.0
}

/// The middles in words, no more than can be read at a glance.
fn listed(angles_deg: &[f64]) -> String {
    let shown: Vec<String> = angles_deg
        .iter()
        .take(LISTED)
        .map(|angle| Unit::Deg.show(*angle))
        .collect();
    let more = angles_deg.len().saturating_sub(LISTED);
    if more > 0 {
        format!("{} and at {more} more angles", shown.join(", "))
    } else {
        shown.join(", ")
    }
}

fn several(cx: &Context, entries: &[Interval], intended: usize, twist: Twist) -> Finding {
    let finding = counted(entries);
    let others = entries
        .iter()
        .enumerate()
        .filter(|(index, _)| *index != intended);
    let others: Vec<f64> = others.map(|(_, entry)| middle_deg(*entry)).collect();
    if others.is_empty() {
        return finding.saying("the ring enters at one angle only, the intended one");
    }
    let mut finding = finding.saying(format!(
        "the ring also enters {} from its entry: locked from there its marks and lock hole stand wrong",
        listed(&others)
    ));
    let sizes = &cx.ring.sizes;
    let (inner_mm, outer_mm) = (sizes.nose_diameter / 2.0, sizes.lug_diameter / 2.0);
    // Where the first lug would stand.
    let first = cx.ring.lugs.first().copied();
    let places = others
        .iter()
        .filter_map(|angle| first.map(|lug| turned(lug, angle - twist.signed_deg())));
    finding.places.extend(places.map(|sector| Place::Plan {
        sector,
        inner_mm,
        outer_mm,
    }));
    finding
}

fn counted(entries: &[Interval]) -> Finding {
    let count = entries.iter().map(|_| 1.0).sum::<f64>();
    let name = "rotations in 0 to 360 degrees that keep every lug off every ear";
    let term = Term::named(name, count, Unit::One);
    let working = Working::new(
        "angles at which the ring can be entered",
        term,
        Unit::One,
        SOURCE,
    );
    at_most(
        KEY,
        working,
        Bounds {
            clash: f64::INFINITY,
            caution: 1.0,
            scale: 1.0,
        },
    )
}

fn not_at_the_mark(entries: &[Interval]) -> Finding {
    let angles: Vec<f64> = entries.iter().map(|entry| middle_deg(*entry)).collect();
    let message = if angles.is_empty() {
        "the ring cannot be entered at any angle".to_owned()
    } else {
        format!(
            "the ring enters only {} from its entry, not at it",
            listed(&angles)
        )
    };
    Finding::said(KEY, Severity::Clash, message).at(Place::Field(FieldRef::Lugs))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{Bench, cured, design, judged};
    use crate::document::{Choice, Design};
    use crate::mount::Interface;

    fn sectors(pairs: &[(f64, f64)]) -> Vec<Sector> {
        pairs
            .iter()
            .map(|(start_deg, extent_deg)| Sector {
                start_deg: *start_deg,
                extent_deg: *extent_deg,
            })
            .collect()
    }

    /// Three equal ears of 60 degrees, twist 60 clockwise, and equal lugs of 50: three entries by symmetry.
    fn alike() -> Design {
        let mut design = design();
        design.body.ears = Interface::measured(
            sectors(&[(0.0, 60.0), (120.0, 60.0), (240.0, 60.0)]),
            "protractor photograph",
        );
        design.body.twist = Interface::measured(60.0, "protractor photograph");
        design.ring.lugs = Choice::Set(sectors(&[(5.0, 50.0), (125.0, 50.0), (245.0, 50.0)]));
        design
    }

    #[test]
    fn unequal_ears_leave_one_entry() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert_eq!(finding.value, Some(1.0));
    }

    #[test]
    fn three_equal_lugs_enter_three_times() {
        let finding = judged(check, &alike());
        assert_eq!(finding.severity, Severity::Caution);
        assert_eq!(finding.value, Some(3.0));
        assert!(
            finding.message.contains("120.00°, -120.00°"),
            "{}",
            finding.message
        );
        assert_eq!(finding.remedy.unwrap().change, None);
    }

    #[test]
    fn short_lugs_lose_the_key_and_the_rule_gives_it_back() {
        let mut short = design();
        // At entry in the middle of each slot: 106..126, 221..241 and 338..358, turned by 62.
        short.ring.lugs = Choice::Set(sectors(&[(168.0, 20.0), (283.0, 20.0), (40.0, 20.0)]));
        let finding = judged(check, &short);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        assert_eq!(
            judged(check, &cured(&short, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn lugs_too_long_never_enter_and_others_enter_elsewhere() {
        let mut long = alike();
        long.ring.lugs = Choice::Set(sectors(&[(0.0, 70.0), (120.0, 70.0), (240.0, 70.0)]));
        let finding = judged(check, &long);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            finding.message.contains("at any angle"),
            "{}",
            finding.message
        );
        assert_eq!(
            judged(check, &cured(&long, &finding)).severity,
            Severity::Caution
        );
        let mut off = design();
        off.ring.lugs = Choice::Set(sectors(&[
            (147.0 + 30.0, 60.0),
            (269.0 + 30.0, 46.0),
            (23.0 + 30.0, 52.0),
        ]));
        let finding = judged(check, &off);
        assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
        assert!(
            finding.message.contains("enters only"),
            "{}",
            finding.message
        );
    }

    #[test]
    fn unknown_ears_are_named() {
        let bench = Bench::of(alike());
        let mut unknown = alike();
        unknown.body.ears = Interface::Unknown;
        let lacking = check(&Context {
            design: &unknown,
            ..bench.cx()
        })
        .unwrap_err();
        assert_eq!(lacking, NotJudged(vec![FieldRef::Ears]));
    }
}
