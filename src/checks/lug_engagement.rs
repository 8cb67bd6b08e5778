//! `lug-engagement`: how much of each ear its lug covers when locked.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_least;
use super::lug_entry::{turned, twist_of};
use super::lug_flank::{narrowest_deg, widened};
use super::plan_angles::covered_deg;
use crate::document::{FieldRef, LORE, LimitKey, Term, Working};
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
    let (ears, throat) = both(
        cx.known(FieldRef::Ears, &cx.design.body.ears),
        cx.body(BodyField::Throat),
    )?;
    let radii = (throat.value() / 2.0, cx.ring.sizes.lug_diameter / 2.0);
    if radii.1 <= radii.0 {
        return Ok(Finding::said(
            KEY,
            Severity::Clash,
            "the lugs do not reach behind the ears: they hold nothing",
        )
        .at(Place::Field(FieldRef::Lugs))
        .cured_by(Remedy::words(
            "make the lugs wider than the throat, or measure throat and slots again",
        )));
    }
    let lugs = lugs_behind(&cx.ring.lugs, narrowest_deg(cx.ring, radii));
    let Some((ear, covered)) = worst_ear(&lugs, ears) else {
        return Ok(Finding::said(
            KEY,
            Severity::Clash,
            "the body has no ears: nothing holds the ring",
        )
        .at(Place::Field(FieldRef::Ears)));
    };
    Ok(judge(cx, radii, ears, &lugs, (ear, covered)))
}

/// The lugs as they stand where the cutter took most.
fn lugs_behind(lugs: &[Sector], stands_out_deg: f64) -> Vec<Sector> {
    lugs.iter()
        .map(|lug| widened(*lug, stands_out_deg))
        .collect()
}

fn worst_ear(lugs: &[Sector], ears: &[Sector]) -> Option<(Sector, f64)> {
    let share = |(ear, covered): &(Sector, f64)| covered / ear.extent_deg;
    ears.iter()
        .map(|ear| (*ear, covered_deg(*ear, lugs)))
        .min_by(|a, b| share(a).total_cmp(&share(b)))
}

fn worst_share(lugs: &[Sector], ears: &[Sector]) -> f64 {
    worst_ear(lugs, ears).map_or(0.0, |(ear, covered)| covered / ear.extent_deg)
}

fn judge(
    cx: &Context,
    radii: (f64, f64),
    ears: &[Sector],
    lugs: &[Sector],
    (ear, covered): (Sector, f64),
) -> Finding {
    let covered = Term::named("angle of the ear that a lug covers", covered, Unit::Deg);
    let whole = Term::named("angle of the ear", ear.extent_deg, Unit::Deg);
    let working = Working::new(
        "ear covered when locked",
        covered / whole * 100.0,
        Unit::Percent,
        LORE,
    );
    let bounds = cx.bounds(LimitKey::LugOverlapClash, LimitKey::LugOverlapCaution);
    let mut finding = at_least(KEY, working, bounds)
        .worked(area(cx, ears, lugs))
        .at(Place::Plan {
            sector: ear,
            inner_mm: radii.0,
            outer_mm: radii.1,
        });
    if let Ok(twist) = twist_of(cx) {
        let (turn, most) = greatest_on_the_way(lugs, ears, twist);
        let now = total_deg(lugs, ears);
        if most > now + SAME {
            let past = twist.degrees - turn;
            let term = Term::named("greatest angle covered on the way", most, Unit::Deg);
            finding = finding.worked(Working::new(
                "ears covered, greatest",
                term,
                Unit::Deg,
                LORE,
            ));
            if matches!(finding.severity, Severity::Clash | Severity::Caution) {
                let past = format!(
                    "; the lugs run {} past where they cover most",
                    Unit::Deg.show(past)
                );
                finding.message.push_str(&past);
            }
        }
    }
    finding.cured_by(remedy(cx, radii, ears, lugs))
}

/// Area of the ears that the lugs stand behind.
fn area(cx: &Context, ears: &[Sector], lugs: &[Sector]) -> Working {
    let angle = Term::named("angle covered, all ears", total_deg(lugs, ears), Unit::Deg)
        .apply("radians", f64::to_radians);
    let tip = cx.size(crate::document::RingKey::LugDiameter) / 2.0;
    // The throat was known before the lugs were counted.
    let throat = cx
        .body(BodyField::Throat)
        .unwrap_or_else(|_| Term::from(0.0))
        / 2.0;
    let area = angle / 2.0 * (tip.clone() * tip - throat.clone() * throat);
    Working::new(
        "area of the ears behind which lugs stand",
        area,
        Unit::Mm2,
        "area of an annular sector",
    )
}

fn total_deg(lugs: &[Sector], ears: &[Sector]) -> f64 {
    ears.iter().map(|ear| covered_deg(*ear, lugs)).sum()
}

/// The turn from entry at which the ears are covered most, and that angle, degrees. The covered angle is a straight
/// line between the turns at which an edge of a lug meets an edge of an ear, so one of these is the greatest.
fn greatest_on_the_way(lugs: &[Sector], ears: &[Sector], twist: Twist) -> (f64, f64) {
    let sign = twist.hand.sign();
    let mut turns = vec![twist.degrees, 0.0];
    for lug in lugs {
        for ear in ears {
            for (lug_edge, ear_edge) in [
                (lug.start_deg, ear.start_deg),
                (lug.start_deg, ear.end_deg()),
                (lug.end_deg(), ear.start_deg),
                (lug.end_deg(), ear.end_deg()),
            ] {
                // Turned back from the lock until the two edges meet.
                let back = (sign * (lug_edge - ear_edge)).rem_euclid(360.0);
                if back < twist.degrees {
                    turns.push(twist.degrees - back);
                }
            }
        }
    }
    let covered = |turn: f64| {
        let there: Vec<Sector> = lugs
            .iter()
            .map(|lug| turned(*lug, sign * (turn - twist.degrees)))
            .collect();
        total_deg(&there, ears)
    };
    turns
        .into_iter()
        .map(|turn| (turn, covered(turn)))
        .fold((twist.degrees, 0.0), |best, next| {
            if next.1 > best.1 + SAME { next } else { best }
        })
}

fn remedy(cx: &Context, radii: (f64, f64), ears: &[Sector], lugs: &[Sector]) -> Remedy {
    let by_rule = cx
        .derivation
        .lugs_by_rule
        .as_ref()
        .map(|lugs| lugs_behind(lugs, narrowest_deg(cx.ring, radii)));
    match by_rule {
        Some(rule) if !cx.design.ring.lugs.is_derived() && worst_share(&rule, ears) > worst_share(lugs, ears) => Remedy {
            text: "let the lugs follow their rule: they fill their slots and cover what the twist lets them".to_owned(),
            change: Some(Change::LetLugsGo),
        },
        Some(_) | None => Remedy::words(
            "lugs that enter these slots cover no more after this twist: a smaller cutter leaves longer lugs; measure \
             ears and twist again",
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking};
    use crate::document::{Choice, Design, MillingMethod};
    use crate::mount::{Hand, Interface};

    /// Three ears of the fixture at 20..80, 152..202 and 260..316; lugs of a radial cutter, which have no fillet.
    fn with_lugs(lugs: &[(f64, f64)]) -> Design {
        let mut design = design();
        let sectors = lugs.iter().map(|(start_deg, extent_deg)| Sector {
            start_deg: *start_deg,
            extent_deg: *extent_deg,
        });
        design.ring.lugs = Choice::Set(sectors.collect());
        design.ring.milling = MillingMethod::RadialCutter;
        design
    }

    #[test]
    fn the_rule_covers_its_ears() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }

    // Angles counted on the clock face: 45 of 60, 50 of 50 and 56 of 56 degrees; area 151 degrees between radii 25
    // and 26.85 (annular sector: angle / 2 x difference of the squares).
    #[test]
    fn the_worst_ear_is_judged() {
        let some = judged(
            check,
            &with_lugs(&[(35.0, 60.0), (150.0, 60.0), (258.0, 60.0)]),
        );
        assert_eq!(some.severity, Severity::Caution);
        assert!((some.value.unwrap() - 75.0).abs() < 1e-9);
        let area = some
            .working
            .iter()
            .find(|line| line.unit == Unit::Mm2)
            .unwrap()
            .term
            .value();
        let expected = 151.0_f64.to_radians() / 2.0 * (26.85 * 26.85 - 625.0);
        assert!((area - expected).abs() < 1e-9, "{area} {expected}");
    }

    #[test]
    fn a_lug_that_misses_its_ear_clashes_and_the_rule_cures_it() {
        let design = with_lugs(&[(20.0, 60.0), (150.0, 60.0), (290.0, 40.0)]);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        assert!((finding.value.unwrap() - 26.0 / 56.0 * 100.0).abs() < 1e-9);
        assert_eq!(
            judged(check, &cured(&design, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn lugs_that_run_past_their_ears_are_told() {
        // Locked 30 degrees too far: 30 degrees before the lock every ear was covered.
        let finding = judged(
            check,
            &with_lugs(&[(50.0, 60.0), (182.0, 50.0), (290.0, 56.0)]),
        );
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            finding.message.contains("run 30.00° past"),
            "{}",
            finding.message
        );
        assert!(
            finding
                .working
                .iter()
                .any(|line| (line.term.value() - 166.0).abs() < 1e-9)
        );
    }

    #[test]
    fn the_covered_angle_grows_until_the_edges_meet() {
        let ears = [Sector {
            start_deg: 350.0,
            extent_deg: 60.0,
        }];
        let lugs = [Sector {
            start_deg: 0.0,
            extent_deg: 60.0,
        }];
        let twist = Twist {
            degrees: 90.0,
            hand: Hand::Clockwise,
        };
        let (turn, most) = greatest_on_the_way(&lugs, &ears, twist);
        assert!(
            (turn - 80.0).abs() < 1e-9 && (most - 60.0).abs() < 1e-9,
            "{turn} {most}"
        );
        let twist = Twist {
            degrees: 90.0,
            hand: Hand::Anticlockwise,
        };
        let (turn, most) = greatest_on_the_way(&lugs, &ears, twist);
        assert!(
            (turn - 90.0).abs() < 1e-9 && (most - 50.0).abs() < 1e-9,
            "{turn} {most}"
        );
    }

    #[test]
    fn lugs_no_wider_than_the_throat_hold_nothing() {
        let mut design = with_lugs(&[(20.0, 60.0)]);
        design.ring.dimensions.lug_diameter.value = Choice::Set(50.0);
        design.ring.dimensions.nose_diameter.value = Choice::Set(49.0);
        assert_eq!(judged(check, &design).severity, Severity::Clash);
    }

    #[test]
    fn unknown_ears_are_named() {
        let mut design = with_lugs(&[(20.0, 60.0)]);
        design.body.ears = Interface::Unknown;
        assert_eq!(lacking(check, &design), NotJudged(vec![FieldRef::Ears]));
    }
}
