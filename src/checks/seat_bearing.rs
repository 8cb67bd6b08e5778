//! `seat-bearing`: enough flat seat is left under the lens shoulder.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy};
use super::judge::at_least;
use super::thread_pair::ThreadPair;
use crate::document::{FieldRef, LORE, LimitKey, RingKey, SeatKind, Term, Working};
use crate::mount::{LensField, Unit};
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::SeatBearing;

/// Judges the radial width on which shoulder and seat touch.
///
/// # Errors
/// [`NotJudged`] while the shoulder diameter is unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let (shoulder, pair) = both(cx.lens(LensField::ShoulderDiameter), ThreadPair::of(cx))?;
    let rim = rim_of_the_seat(cx);
    let mouth = Term::named("thread minor diameter", cx.ring.thread_minor, Unit::Mm)
        + 2.0 * cx.size(RingKey::ThreadChamfer);
    let male_major = pair.male_major(cx);
    let inner = mouth.max(male_major.clone());
    let outer = shoulder.clone().min(cx.size(rim));
    let width = (outer.clone() - inner.clone()) / 2.0;
    let bounds = cx.bounds(LimitKey::SeatBearingClash, LimitKey::SeatBearingCaution);
    let remedy = remedy(
        cx,
        rim,
        (shoulder.value(), male_major.value()),
        (inner.value(), outer.value()),
        bounds.caution,
    );
    Ok(at_least(
        KEY,
        Working::new("seat under the shoulder", width, Unit::Mm, LORE),
        bounds,
    )
    .at(Place::Feature(Feature::Seat))
    .at(Place::Field(FieldRef::Lens(LensField::ShoulderDiameter)))
    .cured_by(remedy))
}

/// The dimension that ends the seat outward.
const fn rim_of_the_seat(cx: &Context) -> RingKey {
    match cx.ring.seat {
        SeatKind::Flush => RingKey::FlangeDiameter,
        SeatKind::Boss | SeatKind::Counterbore => RingKey::SeatDiameter,
    }
}

/// A wider seat where the shoulder reaches further, else a smaller thread chamfer; lens: shoulder and male major,
/// land: inner and outer diameter of what bears, mm.
fn remedy(cx: &Context, rim: RingKey, lens: (f64, f64), land: (f64, f64), wanted: f64) -> Remedy {
    let ((shoulder, male_major), (inner, outer)) = (lens, land);
    let wider = (inner + 2.0 * wanted).min(shoulder);
    if wider > outer {
        return Remedy::dimension(rim, wider);
    }
    let chamfer = ((outer - 2.0 * wanted).max(male_major) - cx.ring.thread_minor) / 2.0;
    if chamfer < cx.ring.sizes.thread_chamfer {
        return Remedy::dimension(RingKey::ThreadChamfer, chamfer);
    }
    Remedy::words(format!(
        "the shoulder itself leaves only {} outside the thread: measure it again; nothing on the ring widens it",
        Unit::Mm.show((shoulder - male_major) / 2.0)
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, with};
    use crate::mount::Interface;

    /// Shoulder 47; M42x1-6H minor 41.035 in the middle, chamfer 0.5: (47 - 42.035) / 2 = 2.4825.
    #[test]
    fn the_rule_leaves_a_broad_seat() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok);
        assert!(
            (finding.value.unwrap() - 2.4825).abs() < 1e-9,
            "{}",
            finding.message
        );
    }

    #[test]
    fn a_wide_chamfer_eats_the_seat() {
        for (chamfer, severity) in [(2.2, Severity::Caution), (2.6, Severity::Clash)] {
            let design = with(&[(RingKey::ThreadChamfer, chamfer)]);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn a_narrow_boss_is_widened() {
        let design = with(&[
            (RingKey::PlateThickness, 1.0),
            (RingKey::SeatDiameter, 43.0),
        ]);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
        assert_eq!(
            judged(check, &cured(&design, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn a_narrow_shoulder_is_beyond_the_ring() {
        let mut design = design();
        design.lens.shoulder_diameter = measured(43.0);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash);
        let partly = judged(check, &cured(&design, &finding));
        assert!(partly.value.unwrap() > finding.value.unwrap());
        assert_eq!(partly.remedy.unwrap().change, None);
        design.lens.shoulder_diameter = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::Lens(LensField::ShoulderDiameter)])
        );
    }
}
