//! `focus-tolerance`: how many rings made to this drawing reach infinity, in closed form.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy};
use super::judge::at_least;
use crate::document::{LimitKey, RingKey, Term, Working};
use crate::mount::{Unit, show_number};
use crate::optics::half_depth_of_focus;
use crate::ring::Feature;
use crate::tolerance::{RegisterStack, normal_below, normal_quantile};

const KEY: FindingKey = FindingKey::FocusTolerance;
const SHARE_SOURCE: &str = "normal distribution of the sum (JCGM 100, G.2): share of rings with a focus error within the depth of focus";
const STACK_SOURCE: &str =
    "root of the sum of squares of the standard uncertainties (JCGM 100, 5.1.2)";
const DEPTH_SOURCE: &str = "depth of focus N c at infinity, geometric optics";
/// A spread under this is none, mm: keeps the share a number.
const NO_SPREAD_MM: f64 = 1e-6;
/// Seat heights are offered in such steps, mm.
const STEP_MM: f64 = 0.005;

/// Judges the share of rings that reach infinity, over the tolerances of ring, body and lens, play and warmth.
///
/// # Errors
/// [`NotJudged`] while a register, the f-number or the sensor is unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let span = cx.limits().temperature_span;
    let stack = RegisterStack::of(cx.design, cx.derivation, cx.workshop, span).map_err(NotJudged);
    let (found, depth) = both(stack, half_depth_of_focus(cx.design).map_err(NotJudged))?;
    let mean = Term::named("mean focus error", found.stack.mean_mm(), Unit::Mm);
    let spread = found.stack.standard_uncertainty_mm();
    let spread = Term::named("its standard uncertainty", spread, Unit::Mm).max(NO_SPREAD_MM);
    let room = depth.clone() - mean.clone();
    let share = 100.0 * (room.clone() / spread.clone()).apply("normal share below", normal_below);
    let bounds = cx.bounds(LimitKey::ReachShareClash, LimitKey::ReachShareCaution);
    let finding = at_least(
        KEY,
        Working::new(
            "rings that reach infinity",
            share,
            Unit::Percent,
            SHARE_SOURCE,
        ),
        bounds,
    );
    let message = told(cx, &finding, &found);
    let lower = lowered(bounds.caution, room.value(), spread.value());
    Ok(finding
        .saying(message)
        .worked(Working::new(
            "half depth of focus",
            depth,
            Unit::Mm,
            DEPTH_SOURCE,
        ))
        .worked(Working::new(
            "mean focus error",
            mean,
            Unit::Mm,
            "sum of the stack",
        ))
        .worked(Working::new(
            "its standard uncertainty",
            spread,
            Unit::Mm,
            STACK_SOURCE,
        ))
        .worked(Working::new(
            "worst case, either way",
            found.worst_case(),
            Unit::Mm,
            "sum of all tolerances",
        ))
        .at(Place::Feature(Feature::Seat))
        .cured_by(remedy(cx, &found, lower)))
}

fn told(cx: &Context, finding: &Finding, found: &RegisterStack) -> String {
    let stop = cx.design.lens.f_number.number().unwrap_or_default();
    let left_out = if found.left_out.is_empty() {
        String::new()
    } else {
        let names: Vec<String> = found
            .left_out
            .iter()
            .map(|field| field.long_label())
            .collect();
        format!("; not counted, because unknown: {}", names.join(", "))
    };
    format!(
        "{} of the rings made to this drawing reach infinity at f/{}, wanted at least {}; focus error ±{} at worst, ±{} by root sum square{left_out}",
        Unit::Percent.show(finding.value.unwrap_or_default()),
        show_number(stop, 1),
        Unit::Percent.show(finding.limit.unwrap_or_default()),
        Unit::Mm.show(found.stack.worst_case_mm()),
        Unit::Mm.show(found.stack.root_sum_square_mm()),
    )
}

/// By how much lower the seat must be for the wanted share, mm, in steps; 0 or less where it is low enough.
fn lowered(wanted_percent: f64, room: f64, spread: f64) -> f64 {
    let sigmas = normal_quantile((wanted_percent / 100.0).clamp(1e-6, 1.0 - 1e-6));
    ((sigmas * spread - room) / STEP_MM - 1e-9).ceil() * STEP_MM
}

/// A lower seat lets the lens focus past infinity; how far is what the register check allows.
fn remedy(cx: &Context, found: &RegisterStack, lower: f64) -> Remedy {
    let past = lower - found.stack.mean_mm();
    let largest = found
        .stack
        .contributors
        .iter()
        .max_by(|a, b| {
            a.standard_uncertainty_mm()
                .total_cmp(&b.standard_uncertainty_mm())
        })
        .map_or_else(String::new, |one| one.name.to_string());
    let best = format!("what spreads most is the {largest}: measure it better or hold it closer");
    if past > cx.limits().thin_caution {
        return Remedy::words(format!(
            "{best}; or stop the lens down: a seat lower by {} would put the distance scale off",
            Unit::Mm.show(lower)
        ));
    }
    let mut remedy = Remedy::dimension(RingKey::SeatHeight, cx.ring.sizes.seat_height - lower);
    remedy.text = format!(
        "{}: the lens then focuses past infinity by {}; or {best}",
        remedy.text,
        Unit::Mm.show(past.max(0.0))
    );
    remedy
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{Bench, cured, design, judged, lacking, with};
    use crate::document::FieldRef;
    use crate::mount::{Interface, LensField};

    #[test]
    fn the_share_is_that_of_the_stack() {
        let bench = Bench::of(design());
        let finding = check(&bench.cx()).unwrap();
        let stack =
            RegisterStack::of(&bench.design, &bench.derivation, &bench.workshop, 20.0).unwrap();
        let depth = half_depth_of_focus(&bench.design).unwrap().value();
        let share = 100.0 * stack.share_reaching_infinity(depth);
        assert!((finding.value.unwrap() - share).abs() < 1e-9);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }

    /// f/2.8 on 43.27 / 1500: N c is 0.0808. A seat higher by d keeps Φ((0.0808 - d) / u).
    #[test]
    fn a_seat_too_high_loses_rings_and_is_cured() {
        for (height, severity) in [
            (1.46 + 0.065, Severity::Caution),
            (1.46 + 0.09, Severity::Clash),
        ] {
            let design = with(&[(RingKey::SeatHeight, height)]);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn loose_parts_are_told_what_spreads_most() {
        let mut design = design();
        design.limits.body_register_tolerance = 0.2;
        design.limits.reach_share_caution = 99.9;
        let finding = judged(check, &design);
        let remedy = finding.remedy.unwrap();
        assert!(
            remedy.change.is_none() && remedy.text.contains("body register"),
            "{remedy:?}"
        );
    }

    #[test]
    fn no_spread_at_all_is_a_plain_answer() {
        assert!(lowered(90.0, 0.05, 1e-6) < 0.0);
        assert!((lowered(90.0, -0.05, 1e-6) - 0.055).abs() < 1e-9);
    }

    #[test]
    fn an_unknown_f_number_is_named() {
        let mut design = design();
        design.lens.f_number = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::FNumber)])
        );
    }
}
