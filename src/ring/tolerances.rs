//! The tolerance of every ring dimension: by rule, or as set by hand.

use crate::document::{Design, Dimension, RingKey, Tolerance};
use crate::mount::{Presence, Unit, show_number};
use crate::optics::register_budget;
use crate::standards::{FitClass, GeneralClass};

use super::derive::is_running_diameter;

/// Seat height tolerances are given in steps that a micrometer shows, mm.
const STEP: f64 = 0.005;
/// The widest tolerance of the seat height, mm: beyond this the scale is off, whatever the depth of focus.
const WIDEST: f64 = 0.05;
/// Tolerance of a hole drilled to size, mm.
const DRILLED: f64 = 0.05;
/// Tolerance of an angle set on a dividing head, degrees either way; common practice, no source.
pub const INDEXED_DEG: f64 = 0.1;

/// Lower and upper deviation of `key` at `value`, and the tolerance as it is printed.
pub(super) fn of(design: &Design, key: RingKey, value: f64) -> ((f64, f64), String) {
    let dimension: &Dimension = design.ring.dimensions.get(key);
    match &dimension.tolerance {
        Tolerance::Derived => by_rule(design, key, value),
        Tolerance::PlusMinus(half) => plus_minus(*half, key.unit()),
        Tolerance::Deviations(lower, upper) => (
            (*lower, *upper),
            deviations_text(*lower, *upper, key.unit()),
        ),
        Tolerance::Fit(fit) => of_fit(fit, value).unwrap_or_else(|| general(key, value)),
    }
}

fn by_rule(design: &Design, key: RingKey, value: f64) -> ((f64, f64), String) {
    if is_running_diameter(key) {
        return of_fit("h9", value).unwrap_or_else(|| general(key, value));
    }
    match key {
        RingKey::SeatHeight => plus_minus(seat_tolerance(design), Unit::Mm),
        RingKey::GrooveWidth => groove(design),
        RingKey::LockHoleDiameter => ((0.0, DRILLED), deviations_text(0.0, DRILLED, Unit::Mm)),
        RingKey::LockHoleAngle | RingKey::IndexMarkAngle => plus_minus(INDEXED_DEG, Unit::Deg),
        RingKey::LockHoleCircle | RingKey::LipFaceDepth => plus_minus(DRILLED, Unit::Mm),
        RingKey::PlateThickness
        | RingKey::GrooveRootDiameter
        | RingKey::NoseDiameter
        | RingKey::LugDiameter
        | RingKey::LugThickness
        | RingKey::LugLeadIn
        | RingKey::ThreadChamfer
        | RingKey::ReliefWidth
        | RingKey::ReliefDiameter
        | RingKey::ThreadLength
        | RingKey::LipBore
        | RingKey::LipThickness
        | RingKey::SpigotLength
        | RingKey::RearBore
        | RingKey::AnnulusInner
        | RingKey::AnnulusOuter
        | RingKey::AnnulusDepth
        | RingKey::SeatDiameter
        | RingKey::FlangeDiameter
        | RingKey::LockHoleDepth
        | RingKey::EdgeBreak => general(key, value),
    }
}

/// How the tolerance of a dimension follows where it is not set, in words with the source.
#[must_use]
pub const fn rule(key: RingKey) -> &'static str {
    match key {
        RingKey::GrooveRootDiameter | RingKey::NoseDiameter | RingKey::LugDiameter => {
            "h9 of ISO 286: a running fit; common practice, no source"
        }
        RingKey::SeatHeight => {
            "what the depth of focus leaves beside body and lens, in steps of 0.005, at least the least budget of the limits and at most ±0.05; common practice, no source"
        }
        RingKey::GrooveWidth => {
            "plus what springs take up; without springs what the play limits leave, at least 0.01; common practice, no source"
        }
        RingKey::LockHoleDiameter => "+0.05/0: a hole drilled to size; common practice, no source",
        RingKey::LockHoleAngle | RingKey::IndexMarkAngle => {
            "±0.1°: an angle set on a dividing head; common practice, no source"
        }
        RingKey::LockHoleCircle | RingKey::LipFaceDepth => {
            "±0.05: set by the dials; common practice, no source"
        }
        RingKey::ThreadChamfer | RingKey::LugLeadIn | RingKey::EdgeBreak => {
            "ISO 2768-m, broken edges"
        }
        RingKey::PlateThickness
        | RingKey::LugThickness
        | RingKey::ReliefWidth
        | RingKey::ReliefDiameter
        | RingKey::ThreadLength
        | RingKey::LipBore
        | RingKey::LipThickness
        | RingKey::SpigotLength
        | RingKey::RearBore
        | RingKey::AnnulusInner
        | RingKey::AnnulusOuter
        | RingKey::AnnulusDepth
        | RingKey::SeatDiameter
        | RingKey::FlangeDiameter
        | RingKey::LockHoleDepth => "ISO 2768-m, linear dimensions",
    }
}

/// What the focus budget leaves, in steps of a micrometer, at least the finest a hobby lathe holds.
fn seat_tolerance(design: &Design) -> f64 {
    let budget = register_budget(design).0.value();
    let stepped = (budget.min(WIDEST) / STEP + 1e-9).floor() * STEP;
    stepped.max(design.limits.thick_least)
}

/// Springs take up a wider groove; without them the groove must stay inside the play limit.
fn groove(design: &Design) -> ((f64, f64), String) {
    let limits = &design.limits;
    let upper = match design.body.springs {
        Presence::Present => limits.groove_play_sprung,
        Presence::Absent | Presence::Unknown => (limits.play_clash - limits.play_caution).max(0.01),
    };
    ((0.0, upper), deviations_text(0.0, upper, Unit::Mm))
}

fn of_fit(fit: &str, diameter: f64) -> Option<((f64, f64), String)> {
    let class: FitClass = fit.parse().ok()?;
    let deviations = class.deviations(diameter).ok()?;
    Some(((deviations.lower_mm, deviations.upper_mm), fit.to_owned()))
}

/// ISO 2768-m; nothing where the table has no row.
fn general(key: RingKey, value: f64) -> ((f64, f64), String) {
    let half = match key.unit() {
        Unit::Deg => INDEXED_DEG,
        _ if matches!(
            key,
            RingKey::ThreadChamfer | RingKey::LugLeadIn | RingKey::EdgeBreak
        ) =>
        {
            GeneralClass::Medium
                .broken_edge_mm(value.abs())
                .unwrap_or(0.0)
        }
        _ => GeneralClass::Medium.linear_mm(value.abs()).unwrap_or(0.0),
    };
    ((-half, half), String::new())
}

fn plus_minus(half: f64, unit: Unit) -> ((f64, f64), String) {
    (
        (-half, half),
        format!("±{}", show_number(half, unit.decimals())),
    )
}

fn deviations_text(lower: f64, upper: f64, unit: Unit) -> String {
    let signed = |value: f64| {
        if value == 0.0 {
            "0".to_owned()
        } else {
            format!(
                "{}{}",
                if value > 0.0 { "+" } else { "" },
                show_number(value, unit.decimals())
            )
        }
    };
    format!("{}/{}", signed(upper), signed(lower))
}
