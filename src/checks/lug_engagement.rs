//! `lug-engagement`: how much of each ear its lug covers when locked.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_least;
use super::lug_entry::twist_of;
use super::lug_flank::{narrowest_deg, widened};
use super::plan_angles::{covered_deg, intervals};
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::geometry::Interval;
use crate::geometry::sector::{joined, wrapped};
use crate::mount::{BodyField, Sector, Unit};
use crate::ring::Twist;

const KEY: FindingKey = FindingKey::LugEngagement;

/// Angles nearer than this are the same, degrees.
const SAME: f64 = 1e-6;

/// Judges the share of the worst ear's angle that a lug stands behind when locked.
///
/// # Errors
/// [`NotJudged`] when ears or throat are unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let ears = cx.known(FieldRef::Ears, &cx.design.body.ears);
    let (ears, throat) = both(ears, cx.body(BodyField::Throat))?;
    let radii = (throat.value() / 2.0, cx.ring.sizes.lug_diameter / 2.0);
    if radii.1 <= radii.0 {
        return Ok(holds_nothing(
            "the lugs do not reach behind the ears: they hold nothing",
        ));
    }
    let pattern = Pattern::of(&cx.ring.lugs, narrowest_deg(cx.ring, radii), ears);
    let Some(worst) = pattern.worst_ear() else {
        return Ok(holds_nothing(
            "the body has no ears: nothing holds the ring",
        ));
    };
    Ok(judge(cx, throat, radii, &pattern, worst))
}

fn holds_nothing(message: &str) -> Finding {
    Finding::said(KEY, Severity::Clash, message)
        .at(Place::Field(FieldRef::Lugs))
        .cured_by(Remedy::words(
            "make the lugs wider than the throat, or measure throat, slots and ears again",
        ))
}

/// Lugs and ears on the clock face, ring locked.
struct Pattern {
    lugs: Vec<Interval>,
    ears: Vec<Interval>,
}

/// An ear, and the angle of it that is covered, degrees.
type CoveredEar = (Interval, f64);

impl Pattern {
    /// The lugs as they stand where the cutter took most.
    fn of(lugs: &[Sector], stands_out_deg: f64, ears: &[Sector]) -> Self {
        let lugs: Vec<Sector> = lugs
            .iter()
            .map(|lug| widened(*lug, stands_out_deg))
            .collect();
        Self {
            lugs: joined(&intervals(&lugs)),
            ears: intervals(ears),
        }
    }

    fn worst_ear(&self) -> Option<CoveredEar> {
        let covered = self
            .ears
            .iter()
            .map(|ear| (*ear, covered_deg(*ear, &self.lugs)));
        covered.min_by(|a, b| share(*a).total_cmp(&share(*b)))
    }

    fn total_deg(&self) -> f64 {
        self.ears
            .iter()
            .map(|ear| covered_deg(*ear, &self.lugs))
            .sum()
    }

    /// How far before the lock, degrees, that ear was covered most, and that angle. The covered angle runs straight
    /// between the turns at which an edge of a lug meets an edge of the ear, so one of these is the greatest.
    fn best_on_the_way(&self, ear: Interval, twist: Twist) -> CoveredMost {
        let sign = twist.hand.sign();
        let edges = |interval: Interval| [interval.start_rad, interval.end_rad()];
        let meetings = self.lugs.iter().flat_map(|lug| {
            edges(*lug)
                .into_iter()
                .flat_map(move |lug| edges(ear).map(|ear| wrapped(sign * (lug - ear))))
        });
        let mut best = CoveredMost {
            back_deg: 0.0,
            covered_deg: covered_deg(ear, &self.lugs),
        };
        for back_rad in meetings.filter(|back| back.to_degrees() < twist.degrees) {
            // The ear turned with the locked ring is the ring turned back before the ear.
            let covered = covered_deg(ear.shifted(sign * back_rad), &self.lugs);
            if covered > best.covered_deg + SAME {
                best = CoveredMost {
                    back_deg: back_rad.to_degrees(),
                    covered_deg: covered,
                };
            }
        }
        best
    }
}

/// Where an ear is covered most.
struct CoveredMost {
    back_deg: f64,
    covered_deg: f64,
}

fn share((ear, covered_deg): CoveredEar) -> f64 {
    covered_deg / ear.extent_rad.to_degrees()
}

fn judge(
    cx: &Context,
    throat: Term,
    radii: (f64, f64),
    pattern: &Pattern,
    (ear, covered): CoveredEar,
) -> Finding {
    let sector = Sector {
        start_deg: ear.start_rad.to_degrees(),
        extent_deg: ear.extent_rad.to_degrees(),
    };
    let term = Term::named("angle of the ear that a lug covers", covered, Unit::Deg)
        / Term::named("angle of the ear", sector.extent_deg, Unit::Deg)
        * 100.0;
    let working = Working::new("ear covered when locked", term, Unit::Percent, LORE);
    let finding = at_least(
        KEY,
        working,
        cx.bounds(LimitKey::LugOverlapClash, LimitKey::LugOverlapCaution),
    )
    .worked(area(cx, throat, pattern))
    .at(Place::Plan {
        sector,
        inner_mm: radii.0,
        outer_mm: radii.1,
    });
    if finding.severity == Severity::Ok {
        return finding;
    }
    let best = twist_of(cx)
        .ok()
        .map(|twist| pattern.best_on_the_way(ear, twist));
    let finding = match best.filter(|best| best.back_deg > 0.0) {
        Some(best) => past_its_best(finding, &best),
        None => finding,
    };
    finding.cured_by(remedy(cx, radii, pattern, share((ear, covered))))
}

/// The same with where it would have been better.
fn past_its_best(finding: Finding, best: &CoveredMost) -> Finding {
    let past = Unit::Deg.show(best.back_deg);
    let message = format!(
        "{}; the lugs run {past} past where they cover it most",
        finding.message
    );
    let term = Term::named(
        "greatest angle of that ear covered on the way",
        best.covered_deg,
        Unit::Deg,
    );
    finding
        .saying(message)
        .worked(Working::new("ear covered at most", term, Unit::Deg, LORE))
}

/// Area of the ears that the lugs stand behind.
fn area(cx: &Context, throat: Term, pattern: &Pattern) -> Working {
    let angle = Term::named("angle covered, all ears", pattern.total_deg(), Unit::Deg);
    let angle = angle.apply("radians", f64::to_radians);
    let (tip, bore) = (cx.size(RingKey::LugDiameter) / 2.0, throat / 2.0);
    let area = angle / 2.0 * (tip.clone() * tip - bore.clone() * bore);
    Working::new(
        "area of the ears behind which lugs stand",
        area,
        Unit::Mm2,
        "area of an annular sector",
    )
}

fn remedy(cx: &Context, radii: (f64, f64), pattern: &Pattern, now: f64) -> Remedy {
    let by_rule = cx
        .derivation
        .lugs_by_rule
        .as_ref()
        .filter(|_| !cx.design.ring.lugs.is_derived());
    let stands_out_deg = narrowest_deg(cx.ring, radii);
    let rule_share = by_rule.and_then(|lugs| {
        let lugs: Vec<Sector> = lugs
            .iter()
            .map(|lug| widened(*lug, stands_out_deg))
            .collect();
        Pattern {
            lugs: joined(&intervals(&lugs)),
            ears: pattern.ears.clone(),
        }
        .worst_ear()
        .map(share)
    });
    if rule_share.is_some_and(|share| share > now) {
        return Remedy {
            text: "let the lugs follow their rule: they fill their slots and cover what the twist lets them".to_owned(),
            change: Some(Change::LetLugsGo),
        };
    }
    Remedy::words(
        "lugs that enter these slots cover no more after this twist: a smaller cutter leaves longer lugs; measure ears \
         and twist again",
    )
}

#[cfg(test)]
#[path = "lug_engagement_tests.rs"]
mod tests;
