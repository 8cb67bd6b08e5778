//! `lens-barrel`: the rear barrel passes lip and bores while screwing in and over the whole focusing motion.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_least;
use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::geometry::{Clearance, clearance_where};
use crate::mount::{BarrelStep, Unit};
use crate::ring::{Feature, LensPart};

const KEY: FindingKey = FindingKey::LensBarrel;

/// Judges the least distance between the ring and everything the barrel sweeps.
///
/// # Errors
/// [`NotJudged`] while the barrel is unknown at one end of the focus.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let lens = &cx.design.lens;
    let (at_infinity, at_close) = both(
        cx.known(FieldRef::BarrelAtInfinity, &lens.barrel_at_infinity),
        cx.known(FieldRef::BarrelAtCloseFocus, &lens.barrel_at_close_focus),
    )?;
    let Some(swept) = &cx.parts.barrel_swept else {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "no rear barrel stands behind the seat",
        ));
    };
    let found = clearance_where(&cx.parts.between_lugs, may_meet_the_barrel, swept, |_| true);
    let Some(nearest) = found else {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the ring has no bore that the rear barrel could meet",
        ));
    };
    let steps: Vec<BarrelStep> = at_infinity.iter().chain(at_close).copied().collect();
    let barrel = Barrel {
        nearest,
        steps: &steps,
    };
    let bounds = cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution);
    let working = Working::new("gap between rear barrel and ring", barrel.gap(cx), Unit::Mm, LORE)
        .assuming("the barrel moves straight along the axis and its steps were measured at both ends of the focus");
    let value = working.term.value();
    let finding = at_least(KEY, working, bounds);
    let message = format!("{} (at the {})", finding.message, nearest.tag_a.label());
    Ok(finding
        .saying(message)
        .at(Place::Span {
            a: (nearest.a.x, nearest.a.y),
            b: (nearest.b.x, nearest.b.y),
        })
        .at(Place::Feature(nearest.tag_a))
        .cured_by(barrel.remedy(cx, bounds.caution, value)))
}

/// The thread takes the lens's own thread, and the seat its shoulder: the barrel stands inside both.
fn may_meet_the_barrel(feature: Feature) -> bool {
    !matches!(
        feature,
        Feature::Seat | Feature::Thread | Feature::ThreadChamfer
    )
}

struct Barrel<'a> {
    nearest: Clearance<Feature, LensPart>,
    steps: &'a [BarrelStep],
}

impl Barrel<'_> {
    /// The distance; where barrel and lip meet, how far the bore is too narrow, as a negative number.
    fn gap(&self, cx: &Context) -> Term {
        let distance = Term::named("least distance, by search", self.nearest.distance, Unit::Mm);
        if self.nearest.distance > 0.0 {
            return distance;
        }
        let behind = self.widest_behind(cx.ring.sizes.lip_face_depth);
        match behind {
            Some(widest) if widest > cx.ring.sizes.lip_bore => {
                (cx.size(RingKey::LipBore)
                    - Term::named("rear barrel behind the lip face", widest, Unit::Mm))
                    / 2.0
            }
            Some(_) | None => distance,
        }
    }

    /// Widest step that reaches behind a depth below the seat, mm.
    fn widest_behind(&self, depth_mm: f64) -> Option<f64> {
        self.steps
            .iter()
            .filter(|step| step.depth_mm > depth_mm)
            .map(|step| step.diameter_mm)
            .reduce(f64::max)
    }

    /// A wider bore where the barrel goes through one, a deeper lip face where it ends before it.
    fn remedy(&self, cx: &Context, wanted: f64, gap: f64) -> Remedy {
        let sizes = &cx.ring.sizes;
        let lip = self
            .widest_behind(sizes.lip_face_depth)
            .map(|widest| widest + 2.0 * wanted);
        if let Some(bore) = lip.filter(|bore| *bore > sizes.lip_bore) {
            return wider_bore(cx, RingKey::LipBore, bore);
        }
        let rear = self
            .widest_behind(sizes.lip_face_depth + sizes.lip_thickness)
            .map(|widest| widest + 2.0 * wanted);
        if let Some(bore) = rear.filter(|bore| *bore > sizes.rear_bore) {
            return wider_bore(cx, RingKey::RearBore, bore);
        }
        if self.nearest.tag_a == Feature::LipFace {
            return Remedy::dimension(RingKey::LipFaceDepth, sizes.lip_face_depth + wanted - gap);
        }
        Remedy::words(format!(
            "give the {} more room round the barrel",
            self.nearest.tag_a.label()
        ))
    }
}

/// A bore wider than the thread cannot stand behind it.
fn wider_bore(cx: &Context, key: RingKey, bore: f64) -> Remedy {
    if bore < cx.ring.thread_minor {
        return Remedy::dimension(key, bore);
    }
    Remedy::words(format!(
        "the barrel asks for a bore of {}, wider than the thread ({}): measure the barrel again",
        Unit::Mm.show(bore),
        Unit::Mm.show(cx.ring.thread_minor)
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking, with};
    use crate::document::Design;
    use crate::mount::Interface;

    fn barrel(steps: &[(f64, f64)]) -> Interface<Vec<BarrelStep>> {
        let steps = steps.iter().map(|(depth_mm, diameter_mm)| BarrelStep {
            depth_mm: *depth_mm,
            diameter_mm: *diameter_mm,
        });
        Interface::measured(steps.collect(), "caliper")
    }

    /// Lip bore 34.4 set by hand, lip face 7.0 below the seat, a barrel of 33 that ends at the given depths.
    fn with_barrels(at_infinity: &[(f64, f64)], at_close: &[(f64, f64)]) -> Design {
        let mut design = with(&[(RingKey::LipBore, 34.4)]);
        design.lens.barrel_at_infinity = barrel(at_infinity);
        design.lens.barrel_at_close_focus = barrel(at_close);
        design
    }

    #[test]
    fn a_barrel_through_the_lip_has_the_radial_gap() {
        let finding = judged(check, &with_barrels(&[(9.0, 33.0)], &[(4.0, 33.0)]));
        assert_eq!(finding.severity, Severity::Ok);
        assert!(
            (finding.value.unwrap() - 0.7).abs() < 1e-9,
            "{}",
            finding.message
        );
    }

    #[test]
    fn a_wide_barrel_is_cured_by_a_wider_bore() {
        for (diameter, severity) in [
            (34.1, Severity::Caution),
            (34.3, Severity::Clash),
            (35.4, Severity::Clash),
        ] {
            let design = with_barrels(&[(9.0, diameter)], &[(4.0, diameter)]);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert!(
                (finding.value.unwrap() - (34.4 - diameter) / 2.0).abs() < 1e-9,
                "{}",
                finding.message
            );
            let first = cured(&design, &finding);
            let again = judged(check, &first);
            assert!(again.value.unwrap() > finding.value.unwrap());
            let after = if again.severity == Severity::Ok {
                again
            } else {
                judged(check, &cured(&first, &again))
            };
            assert_eq!(after.severity, Severity::Ok, "{}", after.message);
        }
    }

    /// Clear at both ends of the focus, and yet the deepest step sweeps where the widest one was.
    #[test]
    fn the_close_end_of_the_focus_counts_as_well() {
        let design = with_barrels(&[(4.0, 33.0)], &[(8.0, 34.3)]);
        assert_eq!(judged(check, &design).severity, Severity::Clash);
    }

    #[test]
    fn a_barrel_that_ends_before_the_lip_needs_depth() {
        let design = with_barrels(&[(6.85, 36.0)], &[(3.0, 36.0)]);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        assert!(
            (finding.value.unwrap() - 0.15).abs() < 1e-9,
            "{}",
            finding.message
        );
        assert_eq!(
            judged(check, &cured(&design, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn both_ends_of_the_focus_must_be_known() {
        let mut design = design();
        design.lens.barrel_at_close_focus = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::BarrelAtCloseFocus])
        );
    }
}
