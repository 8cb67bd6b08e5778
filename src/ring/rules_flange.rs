//! Rules for the flange, the boss or counterbore, the lock hole, the index mark and the edges.

use crate::document::{FieldRef, LimitKey, RingKey, SeatKind, Term};
use crate::mount::{BodyField, LensField, Presence, Unit};

use super::rules::{Missing, Rules, Worked, both};
use super::rules_thread::FemaleThread;

/// Break of every edge, mm.
const EDGE_BREAK: f64 = 0.15;

pub(super) fn work(rules: &mut Rules, thread: Option<&FemaleThread>) {
    lock_hole(rules);
    let flange = flange_diameter(rules);
    rules.settle(RingKey::FlangeDiameter, flange);
    let seat = seat_diameter(rules, thread);
    rules.settle(RingKey::SeatDiameter, seat);
    let index = Ok(rules
        .body(BodyField::IndexAngle)
        .unwrap_or_else(|_| Term::named("12 o'clock", 0.0, Unit::Deg)));
    rules.settle(RingKey::IndexMarkAngle, index);
    rules.settle(RingKey::EdgeBreak, Ok(Term::from(EDGE_BREAK)));
}

fn lock_hole(rules: &mut Rules) {
    let keys = [
        RingKey::LockHoleDiameter,
        RingKey::LockHoleDepth,
        RingKey::LockHoleCircle,
        RingKey::LockHoleAngle,
    ];
    if rules.design.body.lock_pin != Presence::Present {
        for key in keys {
            rules.settle(key, Ok(Term::from(0.0)));
        }
        return;
    }
    let diameter = rules
        .body(BodyField::LockPinDiameter)
        .map(|pin| pin + rules.limit(LimitKey::LockHoleGap));
    let depth = lock_hole_depth(rules);
    let circle = rules.body(BodyField::LockPinCircle);
    let angle = rules.body(BodyField::LockPinAngle);
    for (key, worked) in keys.into_iter().zip([diameter, depth, circle, angle]) {
        rules.settle(key, worked);
    }
}

/// Blind where the plate leaves a floor, else right through.
fn lock_hole_depth(rules: &Rules) -> Worked {
    let wanted =
        rules.body(BodyField::LockPinProtrusion)? + rules.limit(LimitKey::LockHoleDepthGap);
    let plate = rules.size(RingKey::PlateThickness)?;
    let floor = plate.value() - wanted.value();
    if floor >= rules.design.limits.wall_caution {
        Ok(wanted)
    } else {
        Ok(plate)
    }
}

fn flange_diameter(rules: &Rules) -> Worked {
    let mut flange = rules.body(BodyField::FlangeOuter)?;
    if let Some(inside_ring) =
        under_the_aperture_ring(rules, &rules.size(RingKey::PlateThickness)?)?
    {
        flange = flange.min(inside_ring);
    }
    if rules.design.body.lock_pin == Presence::Present {
        let (circle, hole) = both(
            rules.size(RingKey::LockHoleCircle),
            rules.size(RingKey::LockHoleDiameter),
        )?;
        flange = flange.max(circle + hole + 2.0 * rules.limit(LimitKey::HoleRimCaution));
    }
    Ok(flange)
}

/// The diameter that stays inside a turning aperture ring, where a face `thickness` ahead of the flange rear
/// face would come too near it along the axis.
fn under_the_aperture_ring(rules: &Rules, thickness: &Term) -> Result<Option<Term>, Missing> {
    if rules.design.lens.aperture_ring != Presence::Present {
        return Ok(None);
    }
    let (ahead, inner) = both(
        rules.lens(LensField::ApertureRingAhead),
        rules.lens(LensField::ApertureRingInner),
    )?;
    let gap = rules.size(RingKey::SeatHeight)?.value() + ahead.value() - thickness.value();
    if gap >= rules.design.limits.turning_axial_caution {
        return Ok(None);
    }
    Ok(Some(
        inner - 2.0 * rules.limit(LimitKey::TurningRadialCaution),
    ))
}

fn seat_diameter(rules: &Rules, thread: Option<&FemaleThread>) -> Worked {
    let kind = rules.seat.ok_or_else(|| {
        Missing(
            rules
                .size(RingKey::SeatHeight)
                .err()
                .map_or_else(Vec::new, |m| m.0),
        )
    })?;
    match kind {
        SeatKind::Flush => rules.size(RingKey::FlangeDiameter),
        SeatKind::Counterbore => {
            Ok(rules.lens(LensField::ShoulderDiameter)?
                + 2.0 * rules.limit(LimitKey::CounterboreGap))
        }
        SeatKind::Boss => boss_diameter(rules, thread),
    }
}

fn boss_diameter(rules: &Rules, thread: Option<&FemaleThread>) -> Worked {
    let shoulder = rules.lens(LensField::ShoulderDiameter)?;
    let thread = thread.ok_or(Missing(vec![FieldRef::LensThread]))?;
    let major = Term::named("thread major diameter", thread.major, Unit::Mm);
    let boss = (shoulder + 2.0 * rules.limit(LimitKey::BossLand))
        .max(major + 2.0 * rules.limit(LimitKey::BossWall));
    let height = rules.size(RingKey::SeatHeight)?;
    let boss = match under_the_aperture_ring(rules, &height)? {
        Some(inside_ring) => boss.min(inside_ring),
        None => boss,
    };
    Ok(boss.min(rules.size(RingKey::FlangeDiameter)?))
}
