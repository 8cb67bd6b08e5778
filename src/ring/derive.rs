//! From two mating parts to a whole ring: every rule once, in a fixed order without cycles.

use crate::document::{Choice, Design, FieldRef, PinHandling, RingKey, SeatKind};
use crate::mount::Presence;
use crate::workshop::Workshop;

use super::resolved::{Derivation, PinUse, ResolvedRing, Twist};
use super::rules::{Missing, Rules};
use super::{lugs, rules_bayonet, rules_flange, rules_seat, rules_thread};

/// Radius of the end mill where the workshop has none, mm.
const NO_CUTTER_RADIUS: f64 = 2.0;

/// Works every rule.
#[must_use]
pub fn derive(design: &Design, workshop: &Workshop) -> Derivation {
    let mut rules = Rules::new(design, pin_use(design));
    rules_seat::work(&mut rules);
    rules_bayonet::work(&mut rules);
    let thread = rules_thread::work(&mut rules);
    rules_flange::work(&mut rules, thread.as_ref().ok());

    let twist = design
        .body
        .twist
        .number()
        .zip(design.body.twist_hand.value())
        .map(|(degrees, hand)| Twist {
            degrees,
            hand: *hand,
        });
    let cutter_radius = workshop
        .cutter(&design.ring.cutter)
        .map_or(NO_CUTTER_RADIUS, |cutter| cutter.diameter_mm / 2.0);
    let found = lugs::work(&rules, cutter_radius, twist);
    let (lugs_by_rule, lug_working, lugs_missing) = match found {
        Ok(found) => (Some(found.lugs), found.working, Vec::new()),
        Err(Missing(fields)) => (None, Vec::new(), fields),
    };
    let lugs_in_force = match &design.ring.lugs {
        Choice::Set(lugs) => Some(lugs.clone()),
        Choice::Derived => lugs_by_rule.clone(),
    };

    let mut missing: Vec<FieldRef> = rules
        .states
        .iter()
        .flat_map(|state| state.missing.iter().copied())
        .collect();
    if lugs_in_force.is_none() {
        missing.extend(lugs_missing);
    }
    if let Err(Missing(fields)) = &thread {
        missing.extend(fields);
    }
    let mut seen = std::collections::HashSet::new();
    missing.retain(|field| seen.insert(*field));

    let ring = match (thread, lugs_in_force, rules.seat, &rules.refusal) {
        (Ok(thread), Some(lugs), Some(seat), None) if missing.is_empty() => Some(ResolvedRing {
            sizes: rules.sizes,
            seat,
            lugs,
            pin: rules.pin,
            thread_minor: thread.minor,
            thread_major: thread.major,
            thread: thread.thread,
            twist,
            cutter_radius,
            milling: design.ring.milling,
            thread_runs_through: rules.runs_through,
        }),
        _ => None,
    };
    let mut dimensions = rules.states;
    dimensions.sort_by_key(|state| state.key);
    Derivation {
        dimensions,
        lug_working,
        lugs_by_rule,
        ring,
        missing,
        refusal: rules.refusal,
    }
}

/// What becomes of the stop-down pin: pressed unless the user says otherwise.
fn pin_use(design: &Design) -> PinUse {
    match (design.lens.stop_down_pin, &design.ring.pin) {
        (Presence::Absent | Presence::Unknown, _) => PinUse::None,
        (Presence::Present, Choice::Derived | Choice::Set(PinHandling::Pressed)) => PinUse::Pressed,
        (Presence::Present, Choice::Set(PinHandling::LeftFree)) => PinUse::LeftFree,
    }
}

/// How the seat stands for a seat height and plate, when the user does not say.
#[must_use]
pub(super) fn seat_kind_of(seat_height: f64, plate: f64) -> SeatKind {
    const SAME: f64 = 1e-6;
    if (seat_height - plate).abs() < SAME {
        SeatKind::Flush
    } else if seat_height > plate {
        SeatKind::Boss
    } else {
        SeatKind::Counterbore
    }
}

/// The keys whose value is a diameter that goes with an ISO 286 shaft tolerance.
#[must_use]
pub(super) const fn is_running_diameter(key: RingKey) -> bool {
    matches!(
        key,
        RingKey::GrooveRootDiameter | RingKey::NoseDiameter | RingKey::LugDiameter
    )
}
