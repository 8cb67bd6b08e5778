//! `ear-room`: the ears go into the groove, with little play, and the lugs stand far enough behind them.

use super::aspects::{both, worst_aspect};
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_least, at_most};
use super::throat::{least_radial_gap, running_fit};
use crate::document::{LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{BodyField, Presence, Unit};
use crate::ring::Feature;

const KEY: FindingKey = FindingKey::EarRoom;

/// Lugs that reach behind the ears by less hold nothing once edges are broken, mm; common practice, no source.
const HOLD_CLASH: f64 = 0.5;
/// Lugs that reach behind the ears by less hold little, mm; common practice, no source.
const HOLD_CAUTION: f64 = 1.0;
/// Springs take up the play the rule gives and as much again for its tolerance; common practice, no source.
const SPRUNG_PLAYS: f64 = 2.0;

/// Judges the axial play of the ears in the groove, and the radial room of ear and lug.
///
/// # Errors
/// [`NotJudged`] when neither the ears' place along the axis nor the throat is known.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let mut aspects = vec![least_play(cx)];
    match cx.design.body.springs {
        Presence::Present => aspects.push(sprung_play(cx)),
        Presence::Absent => aspects.extend([nominal_play(cx), greatest_play(cx)]),
        Presence::Unknown => {
            aspects.extend([
                nominal_play(cx).map(doubtful),
                greatest_play(cx).map(doubtful),
            ]);
        }
    }
    aspects.extend([radial_hold(cx), groove_root(cx)]);
    worst_aspect(KEY, aspects)
}

/// Ear front depth + ear thickness: what the groove has to take.
fn ear_rear(cx: &Context) -> Result<Term, NotJudged> {
    let (front, thickness) = both(
        cx.body(BodyField::EarFrontDepth),
        cx.body(BodyField::EarThickness),
    )?;
    Ok(front + thickness)
}

fn groove(cx: &Context, deviation: f64, name: &'static str) -> Term {
    cx.size(RingKey::GrooveWidth) + Term::named(name, deviation, Unit::Mm)
}

/// The play that the rule would give.
fn wanted_play(cx: &Context) -> f64 {
    let limits = cx.limits();
    match cx.design.body.springs {
        Presence::Present => limits.groove_play_sprung,
        Presence::Absent | Presence::Unknown => limits.play_caution,
    }
}

/// The groove that gives the wanted play, kept inside both limits by its tolerance.
fn wider_or_narrower(cx: &Context, ear_rear: f64) -> Remedy {
    let (lower, upper) = cx.deviations(RingKey::GrooveWidth);
    let most = match cx.design.body.springs {
        Presence::Present => SPRUNG_PLAYS * cx.limits().groove_play_sprung - upper,
        Presence::Absent | Presence::Unknown => cx.limits().play_clash - upper,
    };
    if most < -lower {
        return Remedy::words(
            "narrow the tolerance of the groove width: it is wider than the play may be",
        );
    }
    Remedy::dimension(
        RingKey::GrooveWidth,
        ear_rear + wanted_play(cx).clamp(-lower, most),
    )
}

fn placed(finding: Finding) -> Finding {
    finding
        .at(Place::Feature(Feature::GrooveRoot))
        .at(Place::Feature(Feature::LugFront))
}

fn least_play(cx: &Context) -> Result<Finding, NotJudged> {
    let rear = ear_rear(cx)?;
    let (lower, _) = cx.deviations(RingKey::GrooveWidth);
    let remedy = wider_or_narrower(cx, rear.value());
    let play = groove(cx, lower, "its lower deviation") - rear;
    let finding = at_least(
        KEY,
        Working::new("least play of the ears in the groove", play, Unit::Mm, LORE),
        Bounds {
            clash: 0.0,
            caution: 0.0,
            scale: cx.limits().groove_play_sprung,
        },
    );
    Ok(placed(finding).cured_by(remedy))
}

/// Play as drawn: it goes into focus and tilt, so more than a little is a caution.
fn nominal_play(cx: &Context) -> Result<Finding, NotJudged> {
    let rear = ear_rear(cx)?;
    let remedy = wider_or_narrower(cx, rear.value());
    let working = Working::new(
        "play of the ears in the groove",
        cx.size(RingKey::GrooveWidth) - rear,
        Unit::Mm,
        LORE,
    )
    .assuming("no spring takes it up");
    let bounds = Bounds {
        clash: f64::INFINITY,
        caution: cx.limits().play_caution,
        scale: 1.0,
    };
    Ok(placed(at_most(KEY, working, bounds)).cured_by(remedy))
}

/// Play of the widest groove that the tolerance lets through.
fn greatest_play(cx: &Context) -> Result<Finding, NotJudged> {
    let rear = ear_rear(cx)?;
    let (_, upper) = cx.deviations(RingKey::GrooveWidth);
    let remedy = wider_or_narrower(cx, rear.value());
    let play = groove(cx, upper, "its upper deviation") - rear;
    let working = Working::new(
        "greatest play of the ears in the groove",
        play,
        Unit::Mm,
        LORE,
    )
    .assuming("no spring takes it up");
    let most = cx.limits().play_clash;
    Ok(placed(at_most(
        KEY,
        working,
        Bounds {
            clash: most,
            caution: most,
            scale: 1.0,
        },
    ))
    .cured_by(remedy))
}

fn sprung_play(cx: &Context) -> Result<Finding, NotJudged> {
    let rear = ear_rear(cx)?;
    let (_, upper) = cx.deviations(RingKey::GrooveWidth);
    let remedy = wider_or_narrower(cx, rear.value());
    let play = groove(cx, upper, "its upper deviation") - rear;
    let working = Working::new(
        "greatest play of the ears, taken up by the springs",
        play,
        Unit::Mm,
        LORE,
    )
    .assuming("the springs reach so far");
    let most = SPRUNG_PLAYS * cx.limits().groove_play_sprung;
    let bounds = Bounds {
        clash: f64::INFINITY,
        caution: most,
        scale: 1.0,
    };
    Ok(placed(at_most(KEY, working, bounds)).cured_by(remedy))
}

/// Nobody has looked for springs: judged without them, but they may be there.
fn doubtful(mut finding: Finding) -> Finding {
    if matches!(finding.severity, Severity::Clash | Severity::Caution) {
        finding.severity = Severity::Caution;
        finding
            .message
            .push_str(" unless springs take it up: look for springs");
    }
    finding
}

/// How far the narrowest lug reaches behind the ears.
fn radial_hold(cx: &Context) -> Result<Finding, NotJudged> {
    let throat = cx.body(BodyField::Throat)?;
    let (lower, _) = cx.deviations(RingKey::LugDiameter);
    let cured = throat.value() - lower + 2.0 * HOLD_CAUTION;
    let lug = cx.size(RingKey::LugDiameter) + Term::named("its lower deviation", lower, Unit::Mm);
    let working = Working::new(
        "lug behind the ears, radial",
        (lug - throat) / 2.0,
        Unit::Mm,
        LORE,
    );
    let remedy = match cx.design.body.slot_diameter.number() {
        Some(slot) if cured + 2.0 * cx.limits().lug_clearance > slot => Remedy::words(
            "slots and throat leave the lugs too little: measure both again, a lug cannot be wider than its slot",
        ),
        Some(_) | None => Remedy::dimension(RingKey::LugDiameter, cured),
    };
    let bounds = Bounds {
        clash: HOLD_CLASH,
        caution: HOLD_CAUTION,
        scale: 1.0,
    };
    Ok(at_least(KEY, working, bounds)
        .at(Place::Feature(Feature::LugTip))
        .cured_by(remedy))
}

/// The ears turn round the groove root.
fn groove_root(cx: &Context) -> Result<Finding, NotJudged> {
    let gap = least_radial_gap(cx, RingKey::GrooveRootDiameter, BodyField::Throat)?;
    let bounds = running_fit(cx, LimitKey::SpigotClearance);
    let cured = cx.size(RingKey::GrooveRootDiameter).value() - 2.0 * (bounds.caution - gap.value());
    let working = Working::new("groove root to the ears, radial", gap, Unit::Mm, LORE);
    Ok(at_least(KEY, working, bounds)
        .at(Place::Feature(Feature::GrooveRoot))
        .cured_by(Remedy::dimension(RingKey::GrooveRootDiameter, cured)))
}

#[cfg(test)]
#[path = "ear_room_tests.rs"]
mod tests;
