//! `aperture-ring`: the ring's flange and boss leave the turning aperture ring alone.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{at_least, is_worse, worst_of};
use crate::document::{FieldRef, LORE, LimitKey, RingKey, SeatKind, Term, Working};
use crate::mount::{LensField, Presence, Unit};
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::ApertureRing;
/// A flange or boss is never made so small that less than this of it stands outside what carries it, mm.
const LEAST_STEP_MM: f64 = 0.5;

/// Judges plate and boss against the space the aperture ring turns in. A gap either along the axis or across it
/// is enough; the better of the two counts.
///
/// # Errors
/// [`NotJudged`] while nobody has said whether there is such a ring, or where it turns.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    match cx.design.lens.aperture_ring {
        Presence::Unknown => Err(FieldRef::ApertureRing.into()),
        Presence::Absent => Ok(Finding::said(
            KEY,
            Severity::Ok,
            "no aperture ring turns near the seat",
        )),
        Presence::Present => {
            let turning = Turning::of(cx)?;
            let mut metal = vec![plate(cx, &turning)];
            if cx.ring.seat == SeatKind::Boss {
                metal.push(boss(cx, &turning));
            }
            worst_of(metal)
        }
    }
}

/// The space the aperture ring turns in.
struct Turning {
    inner: Term,
    outer: Term,
    /// Its rear face ahead of the flange rear face.
    rear: Term,
    ahead: Term,
}

impl Turning {
    fn of(cx: &Context) -> Result<Self, NotJudged> {
        let sizes = both(
            cx.lens(LensField::ApertureRingInner),
            cx.lens(LensField::ApertureRingOuter),
        );
        let ((inner, outer), ahead) = both(sizes, cx.lens(LensField::ApertureRingAhead))?;
        Ok(Self {
            inner,
            outer,
            rear: cx.size(RingKey::SeatHeight) + ahead.clone(),
            ahead,
        })
    }
}

/// The plate, with a counterbore's mouth in it.
fn plate(cx: &Context, turning: &Turning) -> Finding {
    let along = turning.rear.clone() - cx.size(RingKey::PlateThickness);
    let inside = (turning.inner.clone() - cx.size(RingKey::FlangeDiameter)) / 2.0;
    let mut ways = vec![
        axial(
            cx,
            Working::new(
                "gap from plate to aperture ring along the axis",
                along,
                Unit::Mm,
                LORE,
            ),
        ),
        radial(
            cx,
            Working::new(
                "gap from rim to aperture ring across the axis",
                inside,
                Unit::Mm,
                LORE,
            ),
        ),
    ];
    if cx.ring.seat == SeatKind::Counterbore {
        let within = (cx.size(RingKey::SeatDiameter) - turning.outer.clone()) / 2.0;
        ways.push(radial(
            cx,
            Working::new(
                "gap round the aperture ring in the counterbore",
                within,
                Unit::Mm,
                LORE,
            ),
        ));
    }
    best_of(ways)
        .at(Place::Feature(Feature::PlateFront))
        .at(Place::Feature(Feature::Rim))
        .cured_by(plate_remedy(cx, turning))
}

/// The boss under the lens shoulder.
fn boss(cx: &Context, turning: &Turning) -> Finding {
    let across = (turning.inner.clone() - cx.size(RingKey::SeatDiameter)) / 2.0;
    let wanted = turning.inner.value() - 2.0 * cx.limits().turning_radial_caution;
    let mouth = cx.ring.thread_minor + 2.0 * cx.ring.sizes.thread_chamfer;
    best_of(vec![
        axial(
            cx,
            Working::new(
                "gap from seat to aperture ring along the axis",
                turning.ahead.clone(),
                Unit::Mm,
                LORE,
            ),
        ),
        radial(
            cx,
            Working::new(
                "gap from boss to aperture ring across the axis",
                across,
                Unit::Mm,
                LORE,
            ),
        ),
    ])
    .at(Place::Feature(Feature::BossSide))
    .at(Place::Feature(Feature::Seat))
    .cured_by(if wanted > mouth + 2.0 * LEAST_STEP_MM {
        Remedy::dimension(RingKey::SeatDiameter, wanted)
    } else {
        Remedy::words(
            "no boss fits inside the aperture ring: measure its inner diameter and place again",
        )
    })
}

/// A smaller flange; where that would uncover the lock pin or leave too little bearing, a thinner plate.
fn plate_remedy(cx: &Context, turning: &Turning) -> Remedy {
    let sizes = &cx.ring.sizes;
    let carried = match cx.ring.seat {
        SeatKind::Flush => sizes.groove_root_diameter,
        SeatKind::Boss | SeatKind::Counterbore => {
            sizes.groove_root_diameter.max(sizes.seat_diameter)
        }
    };
    let flange = turning.inner.value() - 2.0 * cx.limits().turning_radial_caution;
    let is_flange = flange > carried + 2.0 * LEAST_STEP_MM;
    if is_flange && flange >= least_flange(cx) {
        return Remedy::dimension(RingKey::FlangeDiameter, flange);
    }
    let plate = turning.rear.value() - cx.limits().turning_axial_caution;
    if plate >= cx.limits().seat_proud_least && cx.ring.seat != SeatKind::Counterbore {
        return Remedy::dimension(RingKey::PlateThickness, plate);
    }
    if is_flange {
        return Remedy::dimension(RingKey::FlangeDiameter, flange);
    }
    Remedy::words(
        "neither a smaller flange nor a thinner plate clears the aperture ring: measure where it turns again",
    )
}

/// The flange that still bears on the body and still covers the lock hole, mm.
fn least_flange(cx: &Context) -> f64 {
    let (body, limits, sizes) = (&cx.design.body, cx.limits(), &cx.ring.sizes);
    let bears = body.flange_inner.number().map_or(0.0, |inner| {
        inner + 2.0 * (limits.flange_bearing_clash + sizes.edge_break)
    });
    let covers = if body.lock_pin == Presence::Present {
        sizes.lock_hole_circle + sizes.lock_hole_diameter + 2.0 * limits.hole_rim_clash
    } else {
        0.0
    };
    bears.max(covers)
}

fn axial(cx: &Context, working: Working) -> Finding {
    at_least(
        KEY,
        working,
        cx.bounds(LimitKey::TurningAxialClash, LimitKey::TurningAxialCaution),
    )
}

fn radial(cx: &Context, working: Working) -> Finding {
    at_least(
        KEY,
        working,
        cx.bounds(LimitKey::TurningRadialClash, LimitKey::TurningRadialCaution),
    )
}

/// The best of several ways to miss, with the workings of all.
fn best_of(ways: Vec<Finding>) -> Finding {
    let better_first = |first: Finding, second: Finding| {
        let (mut better, other) = if is_worse(&first, &second) {
            (second, first)
        } else {
            (first, second)
        };
        better.working.extend(other.working);
        better
    };
    ways.into_iter()
        .reduce(better_first)
        .unwrap_or_else(|| Finding::said(KEY, Severity::Ok, "no aperture ring turns near the seat"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, with};
    use crate::document::Design;

    /// The aperture ring hangs low enough over a wide flange that only its diameter can help.
    fn low_ring(ahead: f64) -> Design {
        let mut design = with(&[(RingKey::FlangeDiameter, 64.0)]);
        design.lens.aperture_ring_inner = measured(60.0);
        design.lens.aperture_ring_outer = measured(70.0);
        design.lens.aperture_ring_ahead = measured(ahead);
        design
    }

    #[test]
    fn well_ahead_it_turns_freely() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok);
        assert!(
            (finding.value.unwrap() - 2.0).abs() < 1e-9,
            "{}",
            finding.message
        );
    }

    #[test]
    fn low_over_the_plate_is_cured_by_a_smaller_flange() {
        for (ahead, severity) in [
            (0.3, Severity::Ok),
            (0.2, Severity::Caution),
            (0.1, Severity::Clash),
            (-0.4, Severity::Clash),
        ] {
            let mut design = low_ring(ahead);
            design.body.lock_pin = Presence::Absent;
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            if severity != Severity::Ok {
                let cured = cured(&design, &finding);
                assert_eq!(judged(check, &cured).severity, Severity::Ok);
                assert_eq!(
                    cured.ring.dimensions.flange_diameter.value.set(),
                    Some(&59.0)
                );
            }
        }
    }

    /// A flange of 59 would uncover the hole on a circle of 59.
    #[test]
    fn where_the_lock_pin_needs_the_flange_the_plate_gives_way() {
        let design = low_ring(0.2);
        let cured = cured(&design, &judged(check, &design));
        assert_eq!(judged(check, &cured).severity, Severity::Ok);
        let sizes = &cured.ring.dimensions;
        let flange = &design.ring.dimensions.flange_diameter;
        assert_eq!(&sizes.flange_diameter, flange);
        assert!(!sizes.plate_thickness.value.is_derived());
    }

    #[test]
    fn inside_the_ring_the_radial_gap_counts() {
        let mut design = low_ring(-0.4);
        for (flange, severity) in [
            (59.0, Severity::Ok),
            (59.2, Severity::Caution),
            (59.5, Severity::Clash),
        ] {
            crate::checks::fixture::set(&mut design, &[(RingKey::FlangeDiameter, flange)]);
            assert_eq!(judged(check, &design).severity, severity);
        }
    }

    #[test]
    fn a_boss_under_the_ring_is_made_smaller() {
        let mut design = with(&[
            (RingKey::PlateThickness, 1.0),
            (RingKey::SeatDiameter, 50.0),
        ]);
        design.lens.aperture_ring_inner = measured(50.4);
        design.lens.aperture_ring_ahead = measured(-0.1);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
        assert_eq!(
            judged(check, &cured(&design, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn whether_there_is_one_must_be_known() {
        let mut design = design();
        design.lens.aperture_ring = Presence::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::ApertureRing])
        );
        design.lens.aperture_ring = Presence::Absent;
        assert_eq!(judged(check, &design).severity, Severity::Ok);
    }
}
