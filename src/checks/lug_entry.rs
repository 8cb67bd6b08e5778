//! `lug-entry`: the lugs, as the cutter leaves them, drop through the slots between the ears.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_least;
use super::lug_flank::stands_out_deg;
use super::plan_angles::gaps_deg;
use crate::document::{FieldRef, LimitKey, Term, Working};
use crate::mount::{BodyField, Sector, Unit};
use crate::ring::{Twist, lug_intrusion, most_in};

const KEY: FindingKey = FindingKey::LugEntry;

const SOURCE: &str = "derived: polar angle of a flank milled by a cutter of known radius";

/// Gaps are judged to a whole micrometre: no milled flank is known better, mm.
const MICROMETRE: f64 = 0.001;
/// Angles of a remedy are rounded up to this, degrees: under a micrometre at any lug.
const ANGLE_STEP: f64 = 0.001;
/// Angles nearer than this are the same, degrees.
const ROUNDING: f64 = 1e-6;
/// A lug shorter than this is not worth milling, degrees; common practice, no source.
const LEAST_LUG: f64 = 5.0;

/// The tightest of all lug edges.
#[derive(Clone, Copy, Debug)]
struct Tightest {
    gap_deg: f64,
    lug: usize,
    ear: Sector,
}

/// Judges the gap between every lug edge and the ear beside it, at every radius where they meet.
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
            Severity::Ok,
            "the lugs stay inside the throat: they pass, and hold nothing",
        ));
    }
    let entry: Vec<Sector> = cx
        .ring
        .lugs
        .iter()
        .map(|lug| turned(*lug, -twist.signed_deg()))
        .collect();
    let Some(tightest) = tightest_of(&entry, ears) else {
        return Ok(Finding::said(KEY, Severity::Ok, "no ears to pass"));
    };
    Ok(judge(cx, radii, twist, ears, tightest))
}

/// The bayonet's turn, or what of it is unknown.
///
/// # Errors
/// [`NotJudged`] with the twist, its hand or both.
pub fn twist_of(cx: &Context) -> Result<Twist, NotJudged> {
    let body = &cx.design.body;
    let hand = cx.known(FieldRef::TwistHand, &body.twist_hand);
    let (degrees, hand) = both(cx.body(BodyField::Twist), hand)?;
    Ok(Twist {
        degrees: degrees.value(),
        hand: *hand,
    })
}

/// The sector turned by a clock angle, degrees.
#[must_use]
pub fn turned(sector: Sector, by_deg: f64) -> Sector {
    Sector {
        start_deg: (sector.start_deg + by_deg).rem_euclid(360.0),
        ..sector
    }
}

fn tightest_of(lugs: &[Sector], ears: &[Sector]) -> Option<Tightest> {
    let mut tightest: Option<Tightest> = None;
    for (index, lug) in lugs.iter().enumerate() {
        for ear in ears {
            let (before, after) = gaps_deg(*lug, *ear);
            let gap_deg = before.min(after);
            if tightest.is_none_or(|known| gap_deg < known.gap_deg) {
                tightest = Some(Tightest {
                    gap_deg,
                    lug: index,
                    ear: *ear,
                });
            }
        }
    }
    tightest
}

fn judge(
    cx: &Context,
    radii: (f64, f64),
    twist: Twist,
    ears: &[Sector],
    tightest: Tightest,
) -> Finding {
    let gap_at =
        |radius: f64| radius * tightest.gap_deg.to_radians() - lug_intrusion(cx.ring, radius);
    let (radius, _) = most_in(radii, |radius| -gap_at(radius));
    let bounds = cx.bounds(LimitKey::EntryClearanceClash, LimitKey::EntryClearance);
    let gap = gap_term(cx, radius, tightest);
    let finding = at_least(
        KEY,
        Working::new("gap between lug and ear at entry", gap, Unit::Mm, SOURCE),
        bounds,
    );
    let mut finding = said(finding, tightest.lug + 1, radius);
    let plan = |sector| Place::Plan {
        sector,
        inner_mm: radii.0,
        outer_mm: radii.1,
    };
    finding
        .places
        .extend(cx.ring.lugs.get(tightest.lug).copied().map(plan));
    let finding = finding.at(plan(tightest.ear));
    if finding.severity == Severity::Ok {
        finding
    } else {
        finding.cured_by(remedy(cx, radii, twist, ears))
    }
}

/// The same with the lug and the radius in the sentence.
fn said(finding: Finding, number: usize, radius_mm: f64) -> Finding {
    let at = Unit::Mm.show(radius_mm);
    let (Some(gap), Some(limit)) = (finding.value, finding.limit) else {
        return finding;
    };
    let (value, wanted) = (Unit::Mm.show(gap.abs()), Unit::Mm.show(limit));
    finding.saying(if gap < 0.0 {
        format!("lug {number} runs onto an ear at entry, by {value} at radius {at}")
    } else {
        format!("lug {number} clears its ear at entry by {value} at radius {at}, wanted at least {wanted}")
    })
}

/// Radius times angle, less what the cutter leaves standing there.
fn gap_term(cx: &Context, radius: f64, tightest: Tightest) -> Term {
    let angle = Term::named("angle between lug and ear", tightest.gap_deg, Unit::Deg);
    let left = Term::named(
        "left standing by the cutter there",
        lug_intrusion(cx.ring, radius),
        Unit::Mm,
    );
    let at = Term::named("radius of the least gap", radius, Unit::Mm);
    let gap = at * angle.apply("radians", f64::to_radians) - left;
    gap.apply("to 0.001", |gap| (gap / MICROMETRE).round() * MICROMETRE)
}

/// The angle that every lug edge must stand off its ear at entry, degrees: the radius that asks for the most rules.
fn needed_deg(cx: &Context, radii: (f64, f64)) -> f64 {
    let clearance = cx.limits().entry_clearance;
    most_in(radii, |radius| {
        (clearance / radius).to_degrees() + stands_out_deg(cx.ring, radius)
    })
    .1
}

/// Whether these locked lugs would enter with the wanted clearance; true where ears, throat or twist are unknown.
#[must_use]
pub fn would_enter(cx: &Context, lugs: &[Sector]) -> bool {
    let body = &cx.design.body;
    let (Some(ears), Some(throat), Ok(twist)) =
        (body.ears.value(), body.throat.number(), twist_of(cx))
    else {
        return true;
    };
    let radii = (throat / 2.0, cx.ring.sizes.lug_diameter / 2.0);
    let entry: Vec<Sector> = lugs
        .iter()
        .map(|lug| turned(*lug, -twist.signed_deg()))
        .collect();
    radii.1 <= radii.0
        || tightest_of(&entry, ears)
            .is_none_or(|tightest| tightest.gap_deg >= needed_deg(cx, radii) - ROUNDING)
}

/// The lugs of the rule where others are set by hand; otherwise these lugs, each edge cut back by what it lacks.
fn remedy(cx: &Context, radii: (f64, f64), twist: Twist, ears: &[Sector]) -> Remedy {
    let by_rule = cx.derivation.lugs_by_rule.as_deref();
    if !cx.design.ring.lugs.is_derived() && by_rule.is_some_and(|lugs| would_enter(cx, lugs)) {
        return Remedy {
            text: "let the lugs follow their rule: every slot less what entry needs".to_owned(),
            change: Some(Change::LetLugsGo),
        };
    }
    let need_deg = needed_deg(cx, radii);
    let entry = cx
        .ring
        .lugs
        .iter()
        .map(|lug| turned(*lug, -twist.signed_deg()));
    let cut: Vec<Sector> = entry.map(|lug| cut_back(lug, ears, need_deg)).collect();
    if cut.iter().any(|lug| lug.extent_deg < LEAST_LUG) {
        return Remedy::words(
            "these lugs do not fit these slots: measure the ears again, or take a smaller cutter",
        );
    }
    let lugs = cut
        .into_iter()
        .map(|lug| turned(lug, twist.signed_deg()))
        .collect();
    Remedy {
        text: format!(
            "cut every lug edge back until it stands {} off its ear",
            Unit::Deg.show(need_deg)
        ),
        change: Some(Change::Lugs(lugs)),
    }
}

/// A lug at entry with both edges at least `need_deg` off every ear.
fn cut_back(lug: Sector, ears: &[Sector], need_deg: f64) -> Sector {
    let mut cut = lug;
    for ear in ears {
        let (before, after) = gaps_deg(cut, *ear);
        let short = |gap: f64| (((need_deg - gap) / ANGLE_STEP).ceil() * ANGLE_STEP).max(0.0);
        let (start, end) = (short(before), short(after));
        cut = Sector {
            start_deg: cut.start_deg + start,
            extent_deg: cut.extent_deg - start - end,
        };
    }
    cut
}

#[cfg(test)]
#[path = "lug_entry_tests.rs"]
mod tests;
