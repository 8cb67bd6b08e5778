//! `lock-hole`: the hole takes the body's sprung pin, stands over it when locked, and has metal round it.

use super::aspects::{both, worst_aspect};
use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_least, at_most};
use crate::document::{FieldRef, LORE, LimitKey, RingKey, SeatKind, Term, Working};
use crate::mount::{BodyField, Presence, Unit};

const KEY: FindingKey = FindingKey::LockHole;

/// Faces nearer than this are the same face, mm.
const SAME: f64 = 1e-6;

/// Judges fit, place, depth and rims of the lock hole.
///
/// # Errors
/// [`NotJudged`] when nobody has looked for a lock pin, or nothing of it is known.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    match cx.design.body.lock_pin {
        Presence::Unknown => return Err(FieldRef::LockPin.into()),
        Presence::Absent => {
            return Ok(Finding::said(
                KEY,
                Severity::Ok,
                "no lock pin: nothing to drill for it",
            ));
        }
        Presence::Present => {}
    }
    if cx.ring.sizes.lock_hole_diameter <= 0.0 {
        return Ok(no_hole(cx));
    }
    let mut aspects = vec![
        least_play(cx),
        greatest_play(cx),
        off_the_pin(cx),
        depth(cx),
    ];
    aspects.extend(floor(cx).map(Ok));
    aspects.extend(rims(cx).into_iter().map(Ok));
    worst_aspect(KEY, aspects).map(|finding| finding.at(hole(cx)))
}

fn no_hole(cx: &Context) -> Finding {
    let change = cx
        .design
        .body
        .lock_pin_diameter
        .number()
        .map(|_| Change::LetGo(RingKey::LockHoleDiameter));
    Finding::said(
        KEY,
        Severity::Clash,
        "the body has a lock pin and the ring no hole for it: the ring does not lock",
    )
    .at(Place::Field(FieldRef::Ring(RingKey::LockHoleDiameter)))
    .cured_by(Remedy {
        text: "let the lock hole diameter follow its rule".to_owned(),
        change,
    })
}

fn hole(cx: &Context) -> Place {
    let sizes = &cx.ring.sizes;
    Place::Hole {
        angle_deg: sizes.lock_hole_angle,
        radius_mm: sizes.lock_hole_circle / 2.0,
        diameter_mm: sizes.lock_hole_diameter,
    }
}

fn play(cx: &Context, deviation: f64, name: &'static str) -> Result<Term, NotJudged> {
    let pin = cx.body(BodyField::LockPinDiameter)?;
    Ok(cx.size(RingKey::LockHoleDiameter) + Term::named(name, deviation, Unit::Mm) - pin)
}

/// The hole that gives the play of the rule at its least.
fn fitting_hole(cx: &Context, pin: f64) -> Remedy {
    let (lower, _) = cx.deviations(RingKey::LockHoleDiameter);
    Remedy::dimension(
        RingKey::LockHoleDiameter,
        pin + cx.limits().lock_hole_gap - lower,
    )
}

fn least_play(cx: &Context) -> Result<Finding, NotJudged> {
    let pin = cx.body(BodyField::LockPinDiameter)?.value();
    let term = play(
        cx,
        cx.deviations(RingKey::LockHoleDiameter).0,
        "its lower deviation",
    )?;
    let working = Working::new(
        "lock hole over the pin, diameter at least",
        term,
        Unit::Mm,
        LORE,
    );
    let bounds = Bounds {
        clash: 0.0,
        caution: cx.limits().lock_hole_gap,
        scale: 1.0,
    };
    Ok(at_least(KEY, working, bounds).cured_by(fitting_hole(cx, pin)))
}

fn greatest_play(cx: &Context) -> Result<Finding, NotJudged> {
    let pin = cx.body(BodyField::LockPinDiameter)?.value();
    let term = play(
        cx,
        cx.deviations(RingKey::LockHoleDiameter).1,
        "its upper deviation",
    )?;
    let working = Working::new(
        "lock hole over the pin, diameter at most",
        term,
        Unit::Mm,
        LORE,
    );
    let bounds = Bounds {
        clash: f64::INFINITY,
        caution: cx.limits().lock_hole_play_caution,
        scale: 1.0,
    };
    Ok(at_most(KEY, working, bounds).cured_by(fitting_hole(cx, pin)))
}

/// How far the hole's centre stands off the pin's, ring locked; within half the play the pin drops by itself.
fn off_the_pin(cx: &Context) -> Result<Finding, NotJudged> {
    let (circle, angle) = both(
        cx.body(BodyField::LockPinCircle),
        cx.body(BodyField::LockPinAngle),
    )?;
    let least = play(
        cx,
        cx.deviations(RingKey::LockHoleDiameter).0,
        "its lower deviation",
    )?
    .value();
    let pin_circle = circle.value();
    let radial = (cx.size(RingKey::LockHoleCircle) - circle.clone()) / 2.0;
    let turned = (cx.size(RingKey::LockHoleAngle) - angle).apply("least turn", least_turn);
    let turn = turned.value();
    let tangential = circle / 2.0 * turned.apply("radians", f64::to_radians);
    let remedy = if radial.value().abs() > tangential.value().abs() {
        Remedy::dimension(RingKey::LockHoleCircle, pin_circle)
    } else {
        // The nearest of the angles that mean the same place, so that the number does not jump by a turn.
        Remedy::dimension(RingKey::LockHoleAngle, cx.ring.sizes.lock_hole_angle - turn)
    };
    let square = radial.clone() * radial.clone() + tangential.clone() * tangential.clone();
    let line = |result: &'static str, term: Term| Working::new(result, term, Unit::Mm, LORE);
    let working = line("lock hole off the pin", square.apply("root", f64::sqrt));
    let clash = cx.limits().lock_angle_clash;
    let bounds = Bounds {
        clash,
        caution: clash.min(least.max(0.0) / 2.0),
        scale: 1.0,
    };
    Ok(at_most(KEY, working, bounds)
        .worked(line("lock hole off the pin, radial", radial))
        .worked(line("lock hole off the pin, tangential", tangential))
        .cured_by(remedy))
}

/// The same turn between -180 and 180 degrees.
fn least_turn(turn_deg: f64) -> f64 {
    (turn_deg + 180.0).rem_euclid(360.0) - 180.0
}

/// Metal ahead of the flange rear face where the hole is drilled, mm.
fn metal_over_the_hole(cx: &Context) -> Term {
    let sizes = &cx.ring.sizes;
    let under_the_boss =
        cx.ring.seat == SeatKind::Boss && sizes.lock_hole_circle < sizes.seat_diameter;
    cx.size(if under_the_boss {
        RingKey::SeatHeight
    } else {
        RingKey::PlateThickness
    })
}

fn is_through(cx: &Context) -> bool {
    cx.ring.sizes.lock_hole_depth >= metal_over_the_hole(cx).value() - SAME
}

fn depth(cx: &Context) -> Result<Finding, NotJudged> {
    let pin = cx.body(BodyField::LockPinProtrusion)?;
    if is_through(cx) {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the lock hole goes right through",
        ));
    }
    let (lower, _) = cx.deviations(RingKey::LockHoleDepth);
    let caution = cx.limits().lock_hole_depth_gap;
    let bounds = Bounds {
        clash: -lower,
        caution: caution.max(-lower),
        scale: 1.0,
    };
    // Right through where a blind hole would leave too thin a floor.
    let (blind, through) = (
        pin.value() + bounds.caution,
        metal_over_the_hole(cx).value(),
    );
    let cured = if through - blind >= cx.limits().wall_caution {
        blind
    } else {
        through
    };
    let working = Working::new(
        "lock hole beyond the pin's tip",
        cx.size(RingKey::LockHoleDepth) - pin,
        Unit::Mm,
        LORE,
    );
    Ok(at_least(KEY, working, bounds).cured_by(Remedy::dimension(RingKey::LockHoleDepth, cured)))
}

/// The floor that a blind hole leaves; none under a hole right through.
fn floor(cx: &Context) -> Option<Finding> {
    if is_through(cx) {
        return None;
    }
    let metal = metal_over_the_hole(cx);
    let through = metal.value();
    let working = Working::new(
        "floor over the lock hole",
        metal - cx.size(RingKey::LockHoleDepth),
        Unit::Mm,
        LORE,
    );
    let bounds = cx.bounds(LimitKey::WallClash, LimitKey::WallCaution);
    Some(
        at_least(KEY, working, bounds).cured_by(Remedy::dimension(RingKey::LockHoleDepth, through)),
    )
}

/// Metal between the hole's edge and whatever is near it at its depth.
fn rims(cx: &Context) -> Vec<Finding> {
    let sizes = &cx.ring.sizes;
    let mut rims = vec![outer_rim(cx)];
    // Only what stands at the hole's depth, which runs from `hole_front` to the flange rear face, is near it.
    let hole_front = -sizes.lock_hole_depth;
    let thread_end = sizes.thread_length - sizes.seat_height;
    if thread_end > hole_front && sizes.seat_height > 0.0 {
        let major = Term::named("thread major diameter", cx.ring.thread_major, Unit::Mm);
        rims.push(inner_rim(cx, "the thread", major, None));
    }
    let mut beside =
        |what: &str, key: RingKey| rims.push(inner_rim(cx, what, cx.size(key), Some(key)));
    if sizes.relief_width > 0.0 && thread_end < 0.0 && thread_end + sizes.relief_width > hole_front
    {
        beside("the relief", RingKey::ReliefDiameter);
    }
    if cx.ring.seat == SeatKind::Counterbore && -sizes.seat_height > hole_front {
        beside("the counterbore", RingKey::SeatDiameter);
    }
    beside("the groove", RingKey::GrooveRootDiameter);
    rims
}

fn outer_rim(cx: &Context) -> Finding {
    let bounds = cx.bounds(LimitKey::HoleRimClash, LimitKey::HoleRimCaution);
    let edge = cx.size(RingKey::LockHoleCircle) + cx.size(RingKey::LockHoleDiameter);
    let wider = edge.value() + 2.0 * bounds.caution;
    let rim = (cx.size(RingKey::FlangeDiameter) - edge) / 2.0;
    at_least(
        KEY,
        Working::new("lock hole to the rim", rim, Unit::Mm, LORE),
        bounds,
    )
    .cured_by(Remedy::dimension(RingKey::FlangeDiameter, wider))
}

/// Metal between the hole and a diameter inside of it.
fn inner_rim(cx: &Context, what: &str, diameter: Term, key: Option<RingKey>) -> Finding {
    let bounds = cx.bounds(LimitKey::HoleRimClash, LimitKey::HoleRimCaution);
    let inner_edge = cx.size(RingKey::LockHoleCircle) - cx.size(RingKey::LockHoleDiameter);
    let narrower = inner_edge.value() - 2.0 * bounds.caution;
    let working = Working::new(
        format!("lock hole to {what}"),
        (inner_edge - diameter) / 2.0,
        Unit::Mm,
        LORE,
    );
    let remedy = key.map_or_else(
        || {
            Remedy::words(format!(
                "the lock hole breaks toward {what}: measure the lock pin circle again"
            ))
        },
        |key| Remedy::dimension(key, narrower),
    );
    at_least(KEY, working, bounds).cured_by(remedy)
}

#[cfg(test)]
#[path = "lock_hole_tests.rs"]
mod tests;
