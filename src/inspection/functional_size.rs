//! The sizes that decide whether the ring works, with their limits and what to read them with.

use super::instrument_choice::{Grip, best_instrument};
use super::register::RegisterMethod;
use crate::document::{RingKey, SeatKind, SizeOf};
use crate::evaluate::Evaluation;
use crate::mount::Unit;
use crate::ring::{INDEXED_DEG, ResolvedRing};
use crate::standards::{Side, thread_gauge};
use crate::tolerance::Limits;
use crate::workshop::Workshop;

/// A size to inspect.
#[derive(Clone, Debug, PartialEq)]
pub struct FunctionalSize {
    /// What it is of.
    pub of: SizeOf,
    /// Its name on the sheet.
    pub label: String,
    /// Its unit; the limits are in it.
    pub unit: Unit,
    /// What it should be.
    pub nominal: f64,
    /// Its limits.
    pub limits: Limits,
    /// How it is taken hold of.
    pub grip: Grip,
    /// How it is measured, in words.
    pub how: &'static str,
    /// The instrument of the workshop that reads it best; none where none suits.
    pub instrument: Option<String>,
}

/// Every functional size of a ring, the register first; empty without a whole ring.
#[must_use]
pub fn functional_sizes(evaluation: &Evaluation, workshop: &Workshop) -> Vec<FunctionalSize> {
    let Some(ring) = evaluation.derivation.ring.as_ref() else {
        return Vec::new();
    };
    let mut sizes: Vec<FunctionalSize> = RingKey::ALL
        .iter()
        .filter_map(|key| of_ring(evaluation, ring, workshop, *key))
        .collect();
    sizes.extend(lugs(ring, workshop));
    sizes.extend(over_balls(ring, workshop));
    sizes
}

/// Place and width of every lug, to what an index head sets: a general tolerance of angles is far too loose for lugs.
fn lugs(ring: &ResolvedRing, workshop: &Workshop) -> Vec<FunctionalSize> {
    let angle = |of: SizeOf, label: String, nominal: f64| FunctionalSize {
        of,
        label,
        unit: Unit::Deg,
        nominal,
        limits: Limits {
            low_mm: nominal - INDEXED_DEG,
            high_mm: nominal + INDEXED_DEG,
        },
        grip: Grip::Angle,
        how: LUG_HOW,
        instrument: best_instrument(&workshop.instruments, Grip::Angle, nominal)
            .map(|one| one.name.clone()),
    };
    ring.lugs
        .iter()
        .zip(1..)
        .flat_map(|(lug, number)| {
            [
                angle(
                    SizeOf::LugStart(number),
                    format!("Lug {number} begins, from the lens side"),
                    lug.start_deg.rem_euclid(360.0),
                ),
                angle(
                    SizeOf::LugWidth(number),
                    format!("Lug {number}, width at its tip"),
                    lug.extent_deg,
                ),
            ]
        })
        .collect()
}

fn of_ring(
    evaluation: &Evaluation,
    ring: &ResolvedRing,
    workshop: &Workshop,
    key: RingKey,
) -> Option<FunctionalSize> {
    let grip = grip_of(key, ring, workshop)?;
    let state = evaluation.derivation.dimension(key)?;
    let nominal = state.value?;
    let (low, high) = state.deviations;
    let instrument = best_instrument(&workshop.instruments, grip, nominal.abs());
    Some(FunctionalSize {
        of: SizeOf::Ring(key),
        label: if key.unit() == Unit::Deg {
            format!("{}, from the lens side", key.label())
        } else {
            key.label().to_owned()
        },
        unit: key.unit(),
        nominal,
        limits: Limits {
            low_mm: nominal + low,
            high_mm: nominal + high,
        },
        grip,
        how: how_of(key, grip, ring, workshop),
        instrument: instrument.map(|one| one.name.clone()),
    })
}

fn over_balls(ring: &ResolvedRing, workshop: &Workshop) -> Option<FunctionalSize> {
    let gauge = thread_gauge(&ring.thread, Side::Internal)?;
    let nominal = f64::midpoint(gauge.least_mm, gauge.greatest_mm);
    let instrument = best_instrument(&workshop.instruments, Grip::Inside, nominal);
    Some(FunctionalSize {
        of: SizeOf::ThreadOverBalls,
        label: format!("Thread over balls {:.3}", gauge.ball_mm),
        unit: Unit::Mm,
        nominal,
        limits: Limits {
            low_mm: gauge.least_mm,
            high_mm: gauge.greatest_mm,
        },
        grip: Grip::Inside,
        how: "two equal balls of this diameter opposite each other in the groove, measured between their inner sides \
              and twice the ball added; turned on by a third of a turn between readings",
        instrument: instrument.map(|one| one.name.clone()),
    })
}

/// How the seat height of this ring is measured here: as its seat asks for, but over blocks where no micrometer of the
/// workshop spans a flush plate as well as a depth gauge reads it.
#[must_use]
pub fn register_method(ring: &ResolvedRing, workshop: &Workshop) -> RegisterMethod {
    let error = |grip: Grip| {
        best_instrument(&workshop.instruments, grip, ring.sizes.seat_height.abs())
            .map_or(f64::INFINITY, |one| one.permissible_error_mm)
    };
    match RegisterMethod::for_seat(ring.seat) {
        RegisterMethod::Micrometer if error(Grip::Outside) <= error(Grip::Depth) => {
            RegisterMethod::Micrometer
        }
        RegisterMethod::Micrometer | RegisterMethod::OverBlocks => RegisterMethod::OverBlocks,
    }
}

const LUG_HOW: &str = "seen from the lens side with the ring locked, clockwise from 12 o'clock: a photograph square on \
                       from far away, or the ring on the dividing head with an indicator on each flank";

/// How a dimension is measured.
fn how_of(key: RingKey, grip: Grip, ring: &ResolvedRing, workshop: &Workshop) -> &'static str {
    if key == RingKey::SeatHeight {
        register_method(ring, workshop).how()
    } else if key == RingKey::LockHoleCircle {
        "a close pin in the hole: over the pin to the far side of the spigot, half of both diameters taken off"
    } else {
        grip.how()
    }
}

/// How a dimension is taken hold of; none for what does not decide whether the ring works, or is not there.
fn grip_of(key: RingKey, ring: &ResolvedRing, workshop: &Workshop) -> Option<Grip> {
    let has_lip = !ring.thread_runs_through;
    let has_hole = ring.sizes.lock_hole_diameter > 0.0;
    let has_annulus = ring.sizes.annulus_depth > 0.0;
    let when = |is_there: bool, grip: Grip| is_there.then_some(grip);
    match key {
        RingKey::SeatHeight => Some(match register_method(ring, workshop) {
            RegisterMethod::Micrometer => Grip::Outside,
            RegisterMethod::OverBlocks => Grip::Depth,
        }),
        RingKey::PlateThickness
        | RingKey::GrooveRootDiameter
        | RingKey::NoseDiameter
        | RingKey::LugDiameter
        | RingKey::LugThickness
        | RingKey::FlangeDiameter => Some(Grip::Outside),
        RingKey::GrooveWidth | RingKey::RearBore => Some(Grip::Inside),
        RingKey::SpigotLength | RingKey::ThreadLength => Some(Grip::Depth),
        RingKey::SeatDiameter => Some(match ring.seat {
            SeatKind::Counterbore => Grip::Inside,
            SeatKind::Boss | SeatKind::Flush => Grip::Outside,
        }),
        RingKey::LipFaceDepth | RingKey::LipThickness => when(has_lip, Grip::Depth),
        RingKey::ReliefWidth | RingKey::ReliefDiameter => {
            when(has_lip && ring.sizes.relief_width > 0.0, Grip::Inside)
        }
        RingKey::LipBore => when(has_lip, Grip::Inside),
        RingKey::AnnulusInner => when(has_annulus, Grip::Outside),
        RingKey::AnnulusOuter => when(has_annulus, Grip::Inside),
        RingKey::AnnulusDepth => when(has_annulus, Grip::Depth),
        RingKey::LockHoleDiameter | RingKey::LockHoleCircle => when(has_hole, Grip::Inside),
        RingKey::LockHoleDepth => when(has_hole, Grip::Depth),
        RingKey::LockHoleAngle => when(has_hole, Grip::Angle),
        RingKey::LugLeadIn
        | RingKey::ThreadChamfer
        | RingKey::IndexMarkAngle
        | RingKey::EdgeBreak => None,
    }
}
