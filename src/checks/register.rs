//! `register`: the seat stands as high as the two registers ask, and can stand there.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_most};
use crate::document::{Design, FieldRef, LimitKey, RingKey, Term, Working};
use crate::mount::{BodyField, Interface, LensField, Unit, show_number};
use crate::optics::{farthest_sharp, register_budget};
use crate::ring::{Derivation, Feature, Refusal};

const KEY: FindingKey = FindingKey::Register;
const SOURCE: &str = "from the definition of the register";
const BUDGET_SOURCE: &str =
    "depth of focus N c at infinity, geometric optics; the shares are common practice, no source";
/// From this share of the budget on, the rest is too little for the tolerances of the cut.
const CAUTION_SHARE: f64 = 0.5;
/// A register error under this is nothing that anybody can see or measure, mm.
const UNSEEN_MM: f64 = 5e-4;

/// Judges the seat height against the two registers.
///
/// # Errors
/// [`NotJudged`] while one of the registers is unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    judged(cx.design, cx.derivation)
}

/// The same from what is known, also where the ring is not whole.
pub(super) fn judged(design: &Design, derivation: &Derivation) -> Result<Finding, NotJudged> {
    if let Some(refusal) = &derivation.refusal {
        return Ok(refused(refusal));
    }
    let seat = Seat::of(design, derivation)?;
    let mut finding = if seat.error.value() >= 0.0 {
        too_thick(&seat)
    } else {
        too_thin(&seat)
    };
    let told = format!(
        "{}; {}",
        told_error(&seat, &finding),
        told_infinity(design, seat.off_infinity)
    );
    if finding.severity == Severity::Ok && seat.off_infinity > seat.budget.value() {
        finding.severity = Severity::Note;
    }
    finding = finding.worked(Working::new(
        "focus budget of the ring",
        seat.budget.clone(),
        Unit::Mm,
        BUDGET_SOURCE,
    ));
    Ok(finding
        .saying(format!("{told}{}", seat.told_budget()))
        .at(Place::Feature(Feature::Seat))
        .cured_by(Remedy::dimension(RingKey::SeatHeight, seat.wanted.value())))
}

/// The seat as it is and as it should be.
struct Seat {
    height: f64,
    wanted: Term,
    error: Term,
    /// How far behind the lens's own infinity the ring holds it, the trim counted in, mm.
    off_infinity: f64,
    budget: Term,
    budget_lacks: Vec<FieldRef>,
    thick_share: Term,
    thin: Bounds,
    kind: &'static str,
}

impl Seat {
    fn of(design: &Design, derivation: &Derivation) -> Result<Self, NotJudged> {
        let lens = known(FieldRef::Lens(LensField::Register), &design.lens.register);
        let body = known(FieldRef::Body(BodyField::Register), &design.body.register);
        let (lens, body) = both(lens, body)?;
        let field = FieldRef::Ring(RingKey::SeatHeight);
        let height = derivation
            .dimension(RingKey::SeatHeight)
            .and_then(|state| state.value)
            .ok_or(field)?;
        let ring = &design.ring;
        let mut wanted = lens - body;
        if ring.trim_mm != 0.0 {
            wanted = wanted + Term::field(FieldRef::Trim, ring.trim_mm);
        }
        if ring.finish.build_up_mm > 0.0 && !ring.finish.faces_masked {
            wanted = wanted - 2.0 * Term::field(FieldRef::Finish, ring.finish.build_up_mm);
        }
        let error = Term::field(field, height) - wanted.clone();
        let (budget, lacks) = register_budget(design);
        Ok(Self {
            height,
            off_infinity: error.value() + ring.trim_mm,
            wanted,
            error,
            budget,
            budget_lacks: lacks.unwrap_or_default(),
            thick_share: Term::field(
                FieldRef::Limit(LimitKey::ThickShare),
                design.limits.thick_share,
            ),
            thin: Bounds::of(&design.limits, LimitKey::ThinClash, LimitKey::ThinCaution),
            kind: derivation.ring.as_ref().map_or("", |ring| ring.seat.word()),
        })
    }

    fn told_budget(&self) -> String {
        if self.budget_lacks.is_empty() {
            return String::new();
        }
        let names: Vec<String> = self
            .budget_lacks
            .iter()
            .map(|field| field.long_label())
            .collect();
        format!(
            ". Judged by the least budget alone: {} unknown",
            names.join(", ")
        )
    }
}

fn known(field: FieldRef, value: &Interface<f64>) -> Result<Term, NotJudged> {
    value
        .number()
        .map(|number| Term::field(field, number))
        .ok_or_else(|| field.into())
}

fn too_thick(seat: &Seat) -> Finding {
    let clash = seat.budget.value() * seat.thick_share.value();
    let bounds = Bounds {
        clash,
        caution: clash * CAUTION_SHARE,
        scale: seat.budget.value(),
    };
    let working = Working::new("ring too thick by", seat.error.clone(), Unit::Mm, SOURCE);
    at_most(KEY, working, bounds)
}

fn too_thin(seat: &Seat) -> Finding {
    let working = Working::new("ring too thin by", -seat.error.clone(), Unit::Mm, SOURCE)
        .assuming("the lens focuses past infinity as far as the ring is thin");
    at_most(KEY, working, seat.thin)
}

fn refused(refusal: &Refusal) -> Finding {
    let mut finding = Finding::said(KEY, Severity::Clash, refusal.reason.clone());
    finding.places = refusal.fields.iter().copied().map(Place::Field).collect();
    finding.cured_by(Remedy::words(
        "take a body with a shorter register, or one whose throat takes the lens in; measure the values the numbers rest on",
    ))
}

fn told_error(seat: &Seat, finding: &Finding) -> String {
    let height = Unit::Mm.show(seat.height);
    let kind = if seat.kind.is_empty() {
        String::new()
    } else {
        format!(", {}", seat.kind)
    };
    let error = seat.error.value();
    if error.abs() < UNSEEN_MM {
        return format!("seat {height} from the flange{kind}, as the registers ask");
    }
    let side = if error > 0.0 { "too thick" } else { "too thin" };
    let limit = finding.limit.map_or(String::new(), |limit| {
        format!(", wanted at most {}", Unit::Mm.show(limit))
    });
    format!(
        "seat {height} from the flange{kind}: {} {side}{limit}",
        Unit::Mm.show(error.abs())
    )
}

/// What a register error does to infinity: thin lens, focused by moving the whole lens, scale at infinity.
fn told_infinity(design: &Design, off_infinity: f64) -> String {
    if off_infinity.abs() < UNSEEN_MM {
        return "infinity is where the lens has it".to_owned();
    }
    let distance = design
        .lens
        .focal_length
        .number()
        .and_then(|focal| farthest_sharp(focal, off_infinity.abs()));
    let metres = distance.map(|mm| format!("{} m", show_number(mm / 1000.0, 2)));
    let past = Unit::Mm.show(off_infinity.abs());
    match (off_infinity > 0.0, metres) {
        (true, Some(metres)) => {
            format!("at its infinity stop the lens is sharp at {metres} and not beyond (thin lens)")
        }
        (true, None) => format!(
            "at its infinity stop the lens stands {past} too far out to be sharp at infinity"
        ),
        (false, Some(metres)) => {
            format!(
                "the lens focuses {past} past infinity, which is sharp where its scale reads {metres} (thin lens)"
            )
        }
        (false, None) => format!("the lens focuses {past} past infinity"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged as of, lacking, set, with};
    use crate::mount::Interface;

    /// 45.46 - 44.00 = 1.46: published registers of the two mounts.
    #[test]
    fn the_rule_gives_the_difference_of_the_registers() {
        let finding = of(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!(
            finding.message.starts_with("seat 1.46 mm from the flange"),
            "{}",
            finding.message
        );
    }

    /// f/2.8 and 43.27 / 1500: N c = 0.0808, less 0.02 for body and lens each leaves 0.0408.
    #[test]
    fn too_thick_is_judged_by_what_is_left_of_the_depth_of_focus() {
        for (height, severity) in [
            (1.46 + 0.020, Severity::Ok),
            (1.46 + 0.021, Severity::Caution),
            (1.46 + 0.041, Severity::Clash),
        ] {
            let design = with(&[(RingKey::SeatHeight, height)]);
            let finding = of(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            if severity != Severity::Ok {
                assert_eq!(of(check, &cured(&design, &finding)).severity, Severity::Ok);
            }
        }
    }

    /// Thin lens: f 50 and 0.05 too thick is sharp to 50.05 m.
    #[test]
    fn the_farthest_sharp_distance_is_told() {
        let thick = of(check, &with(&[(RingKey::SeatHeight, 1.51)]));
        assert!(thick.message.contains("50.05 m"), "{}", thick.message);
        assert_eq!(thick.severity, Severity::Clash);
        let thin = of(check, &with(&[(RingKey::SeatHeight, 1.41)]));
        assert!(thin.message.contains("past infinity"), "{}", thin.message);
        assert_eq!(thin.severity, Severity::Ok);
    }

    #[test]
    fn too_thin_has_limits_of_its_own() {
        assert_eq!(
            of(check, &with(&[(RingKey::SeatHeight, 1.46 - 0.11)])).severity,
            Severity::Caution
        );
        let design = with(&[(RingKey::SeatHeight, 1.46 - 0.26)]);
        let finding = of(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        assert_eq!(of(check, &cured(&design, &finding)).severity, Severity::Ok);
    }

    #[test]
    fn a_coat_on_both_faces_counts_and_a_masked_one_does_not() {
        let mut design = with(&[(RingKey::SeatHeight, 1.46)]);
        design.ring.finish.build_up_mm = 0.03;
        let coated = of(check, &design);
        assert!((coated.value.unwrap() - 0.06).abs() < 1e-9);
        design.ring.finish.faces_masked = true;
        assert!(of(check, &design).value.unwrap().abs() < 1e-9);
    }

    #[test]
    fn a_wanted_trim_is_no_error_but_its_price_is_told() {
        let mut design = design();
        design.ring.trim_mm = -0.03;
        let past = of(check, &design);
        assert_eq!(past.severity, Severity::Ok);
        assert!(
            past.message.contains("0.03 mm past infinity"),
            "{}",
            past.message
        );
        design.ring.trim_mm = 1.0;
        assert_eq!(of(check, &design).severity, Severity::Note);
    }

    #[test]
    fn without_an_f_number_the_least_budget_counts() {
        let mut design = with(&[(RingKey::SeatHeight, 1.471)]);
        design.lens.f_number = Interface::Unknown;
        let finding = of(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            finding.message.contains("lens widest f-number unknown"),
            "{}",
            finding.message
        );
    }

    #[test]
    fn an_unknown_register_is_named() {
        let mut design = design();
        set(
            &mut design,
            &[(RingKey::SeatHeight, 1.46), (RingKey::PlateThickness, 1.46)],
        );
        design.lens.register = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::Register)])
        );
    }
}
