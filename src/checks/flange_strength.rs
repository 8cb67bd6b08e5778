//! `flange-strength`: the plate bears the lens, handled hard.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy};
use super::judge::at_most;
use super::loads::{
    ESTIMATE, LOAD_SOURCE, Loads, Strength, bearing_radius, force_on_one_lug, narrowest_root,
};
use crate::document::{RingKey, SeatKind, Term, Working};
use crate::mount::Unit;
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::FlangeStrength;
const SOURCE: &str = "strip of the plate from groove root to the edge of its bearing, σ = 6 w a / t², w = F / b; hoop support not counted (beam theory)";
/// A plate thinner than this is none, mm: keeps the stress a number.
const NO_PLATE_MM: f64 = 0.01;
/// Thicknesses are offered in such steps, mm.
const STEP_MM: f64 = 0.05;

/// Judges the bending of the plate where it stands on the body opposite the lug that pulls.
///
/// # Errors
/// [`NotJudged`] while mass or centre of gravity of the lens are unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let (loads, strength) = both(Loads::about_the_flange(cx), Strength::of(cx))?;
    let (_, width) = narrowest_root(cx)?;
    let force = force_on_one_lug(cx, &loads);
    let arm = (bearing_radius(cx) - cx.size(RingKey::GrooveRootDiameter) / 2.0).max(0.0);
    let thickness = plate(cx);
    let line_load = Term::named("force on one lug", force.value(), Unit::N)
        / Term::named("width of its root", width.value(), Unit::Mm);
    let stress = strip_mpa(line_load.clone(), arm.clone(), thickness.clone());
    let working = Working::new("stress in the plate", stress, Unit::Mpa, SOURCE).assuming(ESTIMATE);
    let finding = at_most(KEY, working, strength.bounds);
    let message = format!(
        "{} in a plate of {}, wanted at most {} ({}); {}",
        Unit::Mpa.show(finding.value.unwrap_or_default()),
        Unit::Mm.show(thickness.value()),
        Unit::Mpa.show(finding.limit.unwrap_or_default()),
        strength.material,
        loads.told(cx),
    );
    let wanted = (6.0 * line_load.value() * arm.value() / strength.bounds.caution).sqrt();
    Ok(finding
        .saying(message)
        .worked(Working::new(
            "force on one lug",
            force,
            Unit::N,
            LOAD_SOURCE,
        ))
        .worked(Working::new(
            "width of its root",
            width,
            Unit::Mm,
            "root arc",
        ))
        .worked(Working::new(
            "strength that counts",
            strength.reckoned,
            Unit::Mpa,
            "material table of the workshop",
        ))
        .at(Place::Feature(Feature::PlateFront))
        .at(Place::Feature(Feature::FlangeRearFace))
        .cured_by(thicker(cx, wanted)))
}

/// Bending stress of a strip, MPa: load in N for each mm of width, arm and thickness in mm.
fn strip_mpa(line_load: Term, arm: Term, thickness: Term) -> Term {
    6.0 * line_load * arm / (thickness.clone() * thickness)
}

/// The plate's thickness outside the spigot, mm: what a counterbore wider than the spigot leaves of it.
fn plate(cx: &Context) -> Term {
    let plate = cx.size(RingKey::PlateThickness);
    let sizes = &cx.ring.sizes;
    let thickness = match cx.ring.seat {
        SeatKind::Counterbore if sizes.seat_diameter > sizes.groove_root_diameter => {
            plate.min(cx.size(RingKey::SeatHeight))
        }
        SeatKind::Counterbore | SeatKind::Boss | SeatKind::Flush => plate,
    };
    thickness.max(NO_PLATE_MM)
}

/// A thicker plate, as far as the seat stands proud of it.
fn thicker(cx: &Context, wanted: f64) -> Remedy {
    let stepped = (wanted / STEP_MM - 1e-9).ceil() * STEP_MM;
    if stepped <= cx.ring.sizes.seat_height {
        let mut remedy = Remedy::dimension(RingKey::PlateThickness, stepped);
        remedy.text = format!("{}; or take a stronger material", remedy.text);
        return remedy;
    }
    Remedy::words(format!(
        "a plate of {} is wanted and the seat stands only {} over the flange: take a stronger material, or hold the lens by a support of its own",
        Unit::Mm.show(stepped),
        Unit::Mm.show(cx.ring.sizes.seat_height)
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, set};
    use crate::document::{Design, FieldRef};
    use crate::mount::{Interface, LensField};

    /// A tall ring: the seat 20 mm ahead of the flange leaves room for a thicker plate.
    fn tall(mass: f64, plate: f64) -> Design {
        let mut design = design();
        design.lens.register = measured(64.0);
        design.lens.mass = measured(mass);
        design.lens.centre_of_gravity_ahead = measured(60.0);
        set(&mut design, &[(RingKey::PlateThickness, plate)]);
        design
    }

    /// Found by spoiling designs: a limit of nothing made the remedy a number that is none.
    #[test]
    fn a_limit_of_nothing_leaves_the_remedy_a_number() {
        let mut design = tall(0.3, 1.5);
        (design.limits.stress_caution, design.limits.stress_clash) = (-0.0, 0.0);
        let remedy = judged(check, &design).remedy.unwrap().text;
        assert!(
            !remedy.contains("NaN") && !remedy.contains("inf"),
            "{remedy}"
        );
    }

    /// F 138.5 on 25.13 mm is 5.51 N/mm; 5 mm out on 1.5: 73.5 MPa, worked by hand.
    #[test]
    fn a_worked_example() {
        let strip = strip_mpa((138.5 / 25.13).into(), 5.0.into(), 1.5.into()).value();
        assert!((strip - 73.5).abs() < 0.1, "{strip}");
        let finding = judged(check, &design());
        let line = |name: &str| {
            let found = finding.working.iter().find(|line| line.result == name);
            found.unwrap().term.value()
        };
        let (force, width) = (line("force on one lug"), line("width of its root"));
        let arm = (64.0 - 49.7) / 2.0;
        let stress = 6.0 * force / width * arm / (1.46 * 1.46);
        assert!((finding.value.unwrap() - stress).abs() < 1e-9);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }

    #[test]
    fn a_thin_plate_is_cured_by_a_thicker_one() {
        for (mass, severity) in [(700.0, Severity::Caution), (1600.0, Severity::Clash)] {
            let design = tall(mass, 1.0);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn where_the_seat_leaves_no_room_that_is_said() {
        let mut design = design();
        design.lens.mass = measured(9000.0);
        design.lens.centre_of_gravity_ahead = measured(100.0);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        let remedy = finding.remedy.unwrap();
        assert!(
            remedy.change.is_none() && remedy.text.contains("stronger material"),
            "{remedy:?}"
        );
    }

    #[test]
    fn an_unknown_centre_of_gravity_is_named() {
        let mut design = design();
        design.lens.centre_of_gravity_ahead = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::CentreOfGravityAhead)])
        );
    }
}
