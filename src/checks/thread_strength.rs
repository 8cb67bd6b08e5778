//! `thread-strength`: the flanks engaged bear the lens, handled hard.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_most;
use super::loads::{ESTIMATE, Loads, Strength};
use super::thread_engagement::{engaged_length, longer_thread};
use super::thread_pair::ThreadPair;
use crate::document::{LORE, Term, Working};
use crate::mount::Unit;
use crate::ring::Feature;
use crate::standards::shear_area::{least_shear_areas, simplified_shear_areas};

const KEY: FindingKey = FindingKey::ThreadStrength;
const AREA_SOURCE: &str = "FED-STD-H28/2B, shear area of the internal thread at the limits of size";
const STRESS_SOURCE: &str = "√3 F / A (von Mises), half of the area because the first turns carry most: common practice, no source";
/// The share of the flanks that is reckoned with.
const HALF: f64 = 0.5;

/// Judges the shear of the ring's flanks: the thread pulls where the lens tips about the edge of its seat.
///
/// # Errors
/// [`NotJudged`] while mass, centre of gravity, length or run-out of the male thread are unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let known = both(Loads::about_the_seat(cx), Strength::of(cx));
    let ((loads, strength), length) = both(known, engaged_length(cx))?;
    if length.value() <= 0.0 {
        return Ok(Finding::said(
            KEY,
            Severity::Clash,
            "no full turn is engaged: nothing holds the lens",
        )
        .at(Place::Feature(Feature::Thread))
        .cured_by(Remedy::words(
            "see thread engagement: make the ring's thread longer",
        )));
    }
    let radius = Term::named(
        "pitch radius",
        cx.ring.thread.basic().pitch_diameter / 2.0,
        Unit::Mm,
    );
    let force = loads.moment.clone() / radius + loads.axial.clone();
    let per_mm = area_per_mm(cx)?;
    let area = Term::named("shear area for each mm", per_mm, Unit::Mm2) * length.clone();
    let pull = Term::named("pull on the thread", force.value(), Unit::N);
    let stress = 3.0_f64.sqrt() * pull / (HALF * area.clone());
    let working =
        Working::new("stress in the flanks", stress, Unit::Mpa, STRESS_SOURCE).assuming(ESTIMATE);
    let finding = at_most(KEY, working, strength.bounds);
    let message = format!(
        "{} in the flanks over {} engaged, wanted at most {} ({}); {}",
        Unit::Mpa.show(finding.value.unwrap_or_default()),
        Unit::Mm.show(length.value()),
        Unit::Mpa.show(finding.limit.unwrap_or_default()),
        strength.material,
        loads.told(cx),
    );
    let missing =
        length.value() * (finding.value.unwrap_or_default() / strength.bounds.caution - 1.0);
    let remedy = longer(cx, missing);
    Ok(finding
        .saying(message)
        .worked(Working::new("pull on the thread", force, Unit::N, LORE))
        .worked(Working::new(
            "shear area of the ring's thread",
            area,
            Unit::Mm2,
            AREA_SOURCE,
        ))
        .worked(Working::new(
            "strength that counts",
            strength.reckoned,
            Unit::Mpa,
            "material table of the workshop",
        ))
        .at(Place::Feature(Feature::Thread))
        .cured_by(remedy))
}

/// A thread longer by `missing` mm, as far as the male thread fills it.
fn longer(cx: &Context, missing: f64) -> Remedy {
    let own = cx.ring.sizes.thread_length;
    let male = cx.design.lens.male_thread_length.number().unwrap_or(own);
    if own + missing > male {
        return Remedy::words(
            "the male thread is too short for it: take a stronger material, or hold the lens by a support of its own",
        );
    }
    longer_thread(cx, own + missing, cx.ring.thread.pitch_mm())
}

/// Least shear area of the ring's thread for each millimetre, mm²; by the pitch diameter where a form sets no limits.
fn area_per_mm(cx: &Context) -> Result<f64, NotJudged> {
    let thread = &cx.ring.thread;
    let pair = ThreadPair::of(cx)?;
    let areas = least_shear_areas(
        &pair.internal,
        &pair.external,
        thread.pitch_mm(),
        thread.half_angle_deg(),
    );
    let areas = areas.unwrap_or_else(|| simplified_shear_areas(thread.basic().pitch_diameter));
    Ok(areas.internal_mm2_per_mm)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, measured, with};
    use crate::document::{Design, RingKey};

    /// M42x1-6H/6g over 3.5 mm: 302.3 mm² (FED-STD-H28/2B formula, worked by hand from the ISO 965-1 limits).
    #[test]
    fn the_shear_area_is_the_standards() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        let area = finding
            .working
            .iter()
            .find(|line| line.result.starts_with("shear area"));
        let per_mm = area.unwrap().term.value() / 4.0;
        assert!((per_mm * 3.5 - 302.3).abs() < 0.2, "{per_mm}");
    }

    /// So short a thread under so heavy a lens is far from use; it shows the limits.
    fn heavy(mass: f64) -> Design {
        let mut design = with(&[(RingKey::ThreadLength, 1.0), (RingKey::ThreadChamfer, 0.5)]);
        design.lens.mass = measured(mass);
        design.lens.centre_of_gravity_ahead = measured(400.0);
        design.ring.material = "acetal copolymer".to_owned();
        design
    }

    #[test]
    fn a_heavy_lens_wants_a_longer_thread() {
        for (mass, severity) in [(300.0, Severity::Caution), (600.0, Severity::Clash)] {
            let design = heavy(mass);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn no_turn_at_all_holds_nothing() {
        let mut design = design();
        design.lens.male_thread_length = measured(0.4);
        assert_eq!(judged(check, &design).severity, Severity::Clash);
    }
}
