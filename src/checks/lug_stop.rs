//! `lug-stop`: a lug comes to the body's fixed stop when the ring is locked, and not before.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_least, at_most};
use super::lug_entry::{twist_of, would_enter};
use super::lug_flank::{stands_out_deg, widened};
use crate::document::{FieldRef, LORE, Term, Working};
use crate::mount::{BodyField, Hand, Presence, Sector, Unit};
use crate::ring::Twist;

const KEY: FindingKey = FindingKey::LugStop;

/// Angles nearer than this are the same, degrees.
const ROUNDING: f64 = 1e-7;

/// The body's stop.
struct Stop {
    angle: Term,
    radius_mm: f64,
    depth_mm: f64,
}

/// Judges the angle between the leading face of the lug that meets the stop, and the stop, ring locked.
///
/// # Errors
/// [`NotJudged`] when nobody has looked for a stop, or its place or the twist is unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    match cx.design.body.stop {
        Presence::Unknown => return Err(FieldRef::Stop.into()),
        Presence::Absent => return without_a_stop(cx),
        Presence::Present => {}
    }
    let place = both(
        cx.body(BodyField::StopRadius),
        cx.body(BodyField::StopDepth),
    );
    let ((angle, (radius, depth)), twist) =
        both(both(cx.body(BodyField::StopAngle), place), twist_of(cx))?;
    let stop = Stop {
        angle,
        radius_mm: radius.value(),
        depth_mm: depth.value(),
    };
    if let Some(passed) = passes_by(cx, &stop) {
        return Ok(passed);
    }
    Ok(nearest(cx, &stop, twist).map_or_else(
        || {
            Finding::said(
                KEY,
                Severity::Caution,
                "the ring has no lugs to meet the stop",
            )
        },
        |meeting| judge(cx, &stop, twist, &meeting),
    ))
}

fn without_a_stop(cx: &Context) -> Result<Finding, NotJudged> {
    match cx.design.body.lock_pin {
        Presence::Unknown => Err(FieldRef::LockPin.into()),
        Presence::Present => Ok(Finding::said(
            KEY,
            Severity::Ok,
            "no stop: the lock pin ends the turn",
        )),
        Presence::Absent => Ok(Finding::said(
            KEY,
            Severity::Caution,
            "neither stop nor lock pin ends the turn",
        )
        .cured_by(Remedy::words(
            "set a pin in the ring that meets an ear when locked",
        ))),
    }
}

/// A stop beside the lugs, along the axis or in radius, meets none of them.
fn passes_by(cx: &Context, stop: &Stop) -> Option<Finding> {
    let sizes = &cx.ring.sizes;
    let (front, rear) = (sizes.groove_width, sizes.groove_width + sizes.lug_thickness);
    let (root, tip) = (sizes.nose_diameter / 2.0, sizes.lug_diameter / 2.0);
    let mm = |value: f64| Unit::Mm.show(value);
    let miss = if stop.depth_mm < front || stop.depth_mm > rear {
        format!(
            "it stands {} behind the flange, the lugs from {} to {}",
            mm(stop.depth_mm),
            mm(front),
            mm(rear)
        )
    } else if stop.radius_mm < root || stop.radius_mm > tip {
        format!(
            "it stands {} from the axis, the lugs from {} to {}",
            mm(stop.radius_mm),
            mm(root),
            mm(tip)
        )
    } else {
        return None;
    };
    let place = Place::Span {
        a: (front, stop.radius_mm),
        b: (rear, stop.radius_mm),
    };
    Some(
        Finding::said(
            KEY,
            Severity::Caution,
            format!("the stop passes by the lugs: {miss}"),
        )
        .at(place)
        .cured_by(Remedy::words(
            "measure stop radius and depth again, or bring a lug to it",
        )),
    )
}

/// The first lug that meets the stop.
struct Meeting {
    /// Its place in the list.
    index: usize,
    /// Turn from entry until its leading face meets the stop, degrees.
    turn_deg: f64,
    /// Whether it comes down on the stop when it drops in.
    lands_on_it: bool,
}

/// At the stop's radius the leading face is where the cutter left it.
fn nearest(cx: &Context, stop: &Stop, twist: Twist) -> Option<Meeting> {
    let out_deg = stands_out_deg(cx.ring, stop.radius_mm);
    let meetings = cx.ring.lugs.iter().enumerate().map(|(index, lug)| {
        let lug = widened(*lug, out_deg);
        let ahead =
            twist.hand.sign() * (stop.angle.value() - leading_deg(lug, twist.hand)) + twist.degrees;
        let turn_deg = ahead.rem_euclid(360.0);
        Meeting {
            index,
            turn_deg,
            lands_on_it: turn_deg > 360.0 - lug.extent_deg,
        }
    });
    meetings.min_by(|a, b| {
        b.lands_on_it
            .cmp(&a.lands_on_it)
            .then(a.turn_deg.total_cmp(&b.turn_deg))
    })
}

/// The face that goes first when the ring is turned to lock.
const fn leading_deg(lug: Sector, hand: Hand) -> f64 {
    match hand {
        Hand::Clockwise => lug.end_deg(),
        Hand::Anticlockwise => lug.start_deg,
    }
}

fn judge(cx: &Context, stop: &Stop, twist: Twist, meeting: &Meeting) -> Finding {
    let mut finding = judged(cx, twist, meeting);
    let sizes = &cx.ring.sizes;
    let (inner_mm, outer_mm) = (sizes.nose_diameter / 2.0, sizes.lug_diameter / 2.0);
    let lug = cx.ring.lugs.get(meeting.index).copied();
    finding.places.extend(lug.map(|sector| Place::Plan {
        sector,
        inner_mm,
        outer_mm,
    }));
    let mark = Sector {
        start_deg: stop.angle.value(),
        extent_deg: 0.0,
    };
    finding.at(Place::Plan {
        sector: mark,
        inner_mm: stop.radius_mm,
        outer_mm: stop.radius_mm,
    })
}

fn judged(cx: &Context, twist: Twist, meeting: &Meeting) -> Finding {
    let number = meeting.index + 1;
    if meeting.lands_on_it {
        return Finding::said(
            KEY,
            Severity::Clash,
            format!("lug {number} comes down on the stop when it drops in"),
        )
        .cured_by(Remedy::words(
            "let the lugs follow their rule, or measure stop angle and twist again",
        ));
    }
    let gap = meeting.turn_deg - twist.degrees;
    let turn = Term::named(
        "turn from entry until a lug meets the stop",
        meeting.turn_deg,
        Unit::Deg,
    );
    let whole = Term::field(FieldRef::Body(BodyField::Twist), twist.degrees);
    let working = Working::new(
        "lug short of the stop when locked",
        turn - whole,
        Unit::Deg,
        LORE,
    );
    let finding = if gap < -ROUNDING {
        met_too_early(cx, working)
    } else {
        met_late(cx, working)
    };
    if finding.severity == Severity::Ok {
        finding
    } else {
        finding.cured_by(remedy(cx, twist, meeting.index, gap))
    }
}

/// The turn ends before the lock: within the play of its hole the lock pin still drops.
fn met_too_early(cx: &Context, working: Working) -> Finding {
    let bounds = Bounds {
        clash: -pin_play_deg(cx),
        caution: 0.0,
        scale: 1.0,
    };
    let short = Unit::Deg.show(-working.term.value());
    let finding = at_least(KEY, working, bounds);
    match (finding.severity, cx.design.body.lock_pin) {
        (Severity::Clash, Presence::Present) => finding.saying(format!(
            "the stop is met {short} before the lock: the lock pin does not drop"
        )),
        (Severity::Clash | Severity::Caution | Severity::Note | Severity::Ok, _) => {
            finding.saying(format!("the stop is met {short} before the lock"))
        }
    }
}

/// Angle by which the ring may be short of the lock while the pin still finds its hole, degrees.
fn pin_play_deg(cx: &Context) -> f64 {
    let body = &cx.design.body;
    match (
        body.lock_pin,
        body.lock_pin_diameter.number(),
        body.lock_pin_circle.number(),
    ) {
        (Presence::Present, Some(pin), Some(circle)) if circle > 0.0 => {
            let play = (cx.ring.sizes.lock_hole_diameter - pin).max(0.0);
            (play / circle).to_degrees()
        }
        (Presence::Present | Presence::Absent | Presence::Unknown, _, _) => 0.0,
    }
}

fn met_late(cx: &Context, working: Working) -> Finding {
    let bounds = Bounds {
        clash: f64::INFINITY,
        caution: cx.limits().stop_gap_caution,
        scale: 1.0,
    };
    at_most(KEY, working, bounds)
}

/// The leading face of that lug moved onto the stop.
fn remedy(cx: &Context, twist: Twist, index: usize, gap: f64) -> Remedy {
    let mut lugs = cx.ring.lugs.clone();
    let again = "measure stop angle and twist again";
    let Some(lug) = lugs.get_mut(index) else {
        return Remedy::words(again);
    };
    lug.extent_deg += gap;
    if twist.hand == Hand::Anticlockwise {
        lug.start_deg -= gap;
    }
    if lug.extent_deg <= 0.0 {
        return Remedy::words(again);
    }
    if gap > 0.0 && !would_enter(cx, &lugs) {
        return Remedy::words(format!(
            "a lug that reaches the stop does not enter its slot: {again}"
        ));
    }
    let number = index + 1;
    let way = if gap < 0.0 {
        "cut back"
    } else {
        "bring forward"
    };
    let text = format!(
        "{way} the leading face of lug {number} by {}, or {again}",
        Unit::Deg.show(gap.abs())
    );
    Remedy {
        text,
        change: Some(Change::Lugs(lugs)),
    }
}

#[cfg(test)]
#[path = "lug_stop_tests.rs"]
mod tests;
