//! `lug-strength`: a single lug bears the lens, handled hard.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy};
use super::judge::at_most;
use super::loads::{ESTIMATE, LOAD_SOURCE, Loads, Strength, force_on_one_lug, narrowest_root};
use crate::document::{RingKey, Term, Working};
use crate::mount::Unit;
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::LugStrength;
const SOURCE: &str =
    "cantilever plate: σ = 6 F a / (b t²), τ = 1.5 F / (b t), von Mises √(σ² + 3 τ²); beam theory";
/// Poisson's ratio of the usual metals (from memory).
const POISSON: f64 = 0.33;
/// Thicknesses are offered in such steps, mm.
const STEP_MM: f64 = 0.05;
/// Three times the square of the peak factor 1.5 of shear in a rectangle.
const SHEAR_SHARE: f64 = 6.75;

/// Judges the stress in the root of the narrowest lug, which alone takes the load at its tip.
///
/// # Errors
/// [`NotJudged`] while mass or centre of gravity of the lens are unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let (loads, strength) = both(Loads::about_the_flange(cx), Strength::of(cx))?;
    let (lug, width) = narrowest_root(cx)?;
    let force = force_on_one_lug(cx, &loads);
    let arm = (cx.size(RingKey::LugDiameter) - cx.size(RingKey::NoseDiameter)) / 2.0;
    let thickness = cx.size(RingKey::LugThickness);
    let on_it = Term::named("force on the lug", force.value(), Unit::N);
    let root = Term::named("width of its root", width.value(), Unit::Mm);
    let Stress {
        bending,
        shear,
        together,
    } = Stress::of(&on_it, &root, &arm, &thickness);
    let working =
        Working::new("stress in the lug root", together, Unit::Mpa, SOURCE).assuming(ESTIMATE);
    let finding = at_most(KEY, working, strength.bounds);
    let message = format!(
        "{} in the root of the narrowest lug under {}, wanted at most {} ({}); {}",
        Unit::Mpa.show(finding.value.unwrap_or_default()),
        Unit::N.show(force.value()),
        Unit::Mpa.show(finding.limit.unwrap_or_default()),
        strength.material,
        loads.told(cx),
    );
    let wanted = least_thickness(
        force.value() / width.value(),
        arm.value(),
        strength.bounds.caution,
    );
    let gives = tip_deflection(
        force.value(),
        width.value(),
        arm.value(),
        thickness.value(),
        &strength,
    );
    Ok(finding
        .saying(message)
        .worked(Working::new(
            "force on the lug",
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
        .worked(Working::new("bending", bending, Unit::Mpa, SOURCE))
        .worked(Working::new("shear", shear, Unit::Mpa, SOURCE))
        .worked(Working::new(
            "strength that counts",
            strength.reckoned,
            Unit::Mpa,
            "material table of the workshop",
        ))
        .worked(Working::new(
            "the lug tip gives by",
            gives,
            Unit::Um,
            "beam theory, 4 F a³ / (E b t³) + 1.2 F a / (G b t)",
        ))
        .at(Place::Plan {
            sector: lug,
            inner_mm: cx.ring.sizes.nose_diameter / 2.0,
            outer_mm: cx.ring.sizes.lug_diameter / 2.0,
        })
        .at(Place::Feature(Feature::LugFront))
        .cured_by(thicker(wanted)))
}

/// Stress in the root of a lug, MPa.
struct Stress {
    bending: Term,
    /// At its peak, in the middle of the thickness.
    shear: Term,
    /// By von Mises.
    together: Term,
}

impl Stress {
    /// Force in N; width of the root, arm and thickness in mm.
    fn of(force: &Term, root: &Term, arm: &Term, thickness: &Term) -> Self {
        let section = root.clone() * thickness.clone();
        let bending = 6.0 * force.clone() * arm.clone() / (section.clone() * thickness.clone());
        let shear = 1.5 * force.clone() / section;
        let sigma = Term::named("bending", bending.value(), Unit::Mpa);
        let tau = Term::named("shear", shear.value(), Unit::Mpa);
        let together = (sigma.clone() * sigma + 3.0 * tau.clone() * tau).apply("√", f64::sqrt);
        Self {
            bending,
            shear,
            together,
        }
    }
}

/// The thickness at which the stress is just `limit`, mm, rounded up; `load` is force over root width, N/mm.
fn least_thickness(load: f64, arm: f64, limit: f64) -> f64 {
    // 36 a² x² + 6.75 x = (limit / load)², x = 1 / t².
    let wanted = (limit / load).powi(2);
    let square = if arm > 0.0 {
        let root = (SHEAR_SHARE.powi(2) + 144.0 * arm * arm * wanted).sqrt();
        (root - SHEAR_SHARE) / (72.0 * arm * arm)
    } else {
        wanted / SHEAR_SHARE
    };
    (1.0 / square.sqrt() / STEP_MM - 1e-9).ceil() * STEP_MM
}

fn thicker(thickness: f64) -> Remedy {
    let (low, high) = RingKey::LugThickness.range();
    if !(low..=high).contains(&thickness) {
        return Remedy::words(
            "take a stronger material, wider lugs, or hold the lens by a support of its own",
        );
    }
    let mut remedy = Remedy::dimension(RingKey::LugThickness, thickness);
    remedy.text = format!("{}; or take a stronger material", remedy.text);
    remedy
}

/// How far the tip gives, µm.
fn tip_deflection(force: f64, width: f64, arm: f64, thickness: f64, strength: &Strength) -> Term {
    let modulus = strength.youngs_modulus_mpa;
    let shear_modulus = modulus / (2.0 * (1.0 + POISSON));
    let bends = 4.0 * force * arm.powi(3) / (modulus * width * thickness.powi(3));
    let shears = 1.2 * force * arm / (shear_modulus * width * thickness);
    1000.0
        * (Term::named("by bending", bends, Unit::Mm) + Term::named("by shear", shears, Unit::Mm))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, set, with};
    use crate::document::{Design, FieldRef};
    use crate::mount::{Interface, LensField};

    /// Worked by hand: F 138.5, root 25.13 wide, arm 3, 1.5 thick: 44.1 bending, 5.51 peak shear, 45.1 together.
    #[test]
    fn a_worked_example() {
        let stress = |t: f64| Stress::of(&138.5.into(), &25.13.into(), &3.0.into(), &t.into());
        let one = stress(1.5);
        assert!((one.bending.value() - 44.1).abs() < 0.1);
        assert!((one.shear.value() - 5.51).abs() < 0.01);
        assert!((one.together.value() - 45.1).abs() < 0.1);
        let least = least_thickness(138.5 / 25.13, 3.0, 45.12);
        assert!(
            (least - 1.5).abs() < STEP_MM + 1e-9 && stress(least).together.value() <= 45.12,
            "{least}"
        );
        let strength = Strength {
            material: String::new(),
            reckoned: 240.0.into(),
            bounds: crate::checks::judge::Bounds {
                clash: 240.0,
                caution: 120.0,
                scale: 1.0,
            },
            youngs_modulus_mpa: 69_000.0,
        };
        let gives = tip_deflection(138.5, 25.13, 3.0, 1.5, &strength).value();
        assert!((gives - 3.1).abs() < 0.1, "{gives} µm, worked 2.6 + 0.5");
    }

    fn heavy(mass: f64, thickness: f64) -> Design {
        let mut design = with(&[(RingKey::LugThickness, thickness)]);
        design.lens.mass = measured(mass);
        design.lens.centre_of_gravity_ahead = measured(120.0);
        design
    }

    #[test]
    fn a_light_lens_passes_and_heavier_ones_are_cured() {
        let light = judged(check, &design());
        assert_eq!(light.severity, Severity::Ok, "{}", light.message);
        for (mass, severity) in [(3000.0, Severity::Caution), (9000.0, Severity::Clash)] {
            let design = heavy(mass, 1.3);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    /// Acetal: 65 MPa, of which a third counts.
    #[test]
    fn of_a_plastic_a_third_counts() {
        let mut design = design();
        design.ring.material = "acetal copolymer".to_owned();
        let finding = judged(check, &design);
        assert!((finding.limit.unwrap() - 65.0 * 0.333 / 2.0).abs() < 0.01);
    }

    #[test]
    fn a_cutter_that_eats_the_flank_narrows_the_root() {
        let mut design = design();
        let whole = judged(check, &design).value.unwrap();
        design.ring.milling = crate::document::MillingMethod::CentreFeed;
        set(&mut design, &[(RingKey::LugThickness, 1.3)]);
        assert!(judged(check, &design).value.unwrap() > whole * 0.99);
    }

    #[test]
    fn an_unknown_mass_is_named() {
        let mut design = design();
        design.lens.mass = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::Mass)])
        );
    }
}
