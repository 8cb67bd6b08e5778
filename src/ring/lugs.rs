//! Rule for the lug angles: every slot shrunk until entry clears at every radius, turned through the twist.

use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{BodyField, Hand, Presence, Sector, Unit};

use super::flank::{LugFlank, most_in};
use super::plan::gaps_between;
use super::resolved::Twist;
use super::rules::{Missing, Rules, both};

/// Lugs and how they were found.
pub(super) struct Found {
    pub(super) lugs: Vec<Sector>,
    pub(super) working: Vec<Working>,
}

pub(super) fn work(
    rules: &Rules,
    cutter_radius: f64,
    twist: Option<Twist>,
) -> Result<Found, Missing> {
    let ears = rules
        .design
        .body
        .ears
        .value()
        .ok_or(Missing(vec![FieldRef::Ears]));
    let twist = twist.ok_or_else(|| {
        let mut fields = Vec::new();
        if rules.design.body.twist.number().is_none() {
            fields.push(FieldRef::Body(BodyField::Twist));
        }
        if rules.design.body.twist_hand.value().is_none() {
            fields.push(FieldRef::TwistHand);
        }
        Missing(fields)
    });
    let radii = both(
        both(
            rules.body(BodyField::Throat),
            rules.size(RingKey::LugDiameter),
        ),
        rules.size(RingKey::NoseDiameter),
    );
    let ((ears, twist), ((throat, tip), nose)) = both(both(ears, twist), radii)?;
    let flank = LugFlank::new(
        rules.design.ring.milling,
        cutter_radius,
        nose.value() / 2.0,
        tip.value() / 2.0,
    );
    let clearance = rules.limit(LimitKey::EntryClearance);
    let (radius, shrink) = worst_shrink(
        &flank,
        (throat.value() / 2.0, tip.value() / 2.0),
        clearance.value(),
    );
    let left = Term::named(
        "left standing by the cutter at that radius",
        flank.intrusion(radius),
        Unit::Mm,
    );
    let at = Term::named("radius of the least gap", radius, Unit::Mm);
    let angle = ((clearance + left) / at).apply("degrees", f64::to_degrees);
    let working = vec![Working::new(
        "each lug edge inside its slot edge",
        angle,
        Unit::Deg,
        LORE,
    )];
    let mut lugs: Vec<Sector> = gaps_between(ears)
        .into_iter()
        .map(|slot| Sector {
            start_deg: (slot.start_deg + shrink + twist.signed_deg()).rem_euclid(360.0),
            extent_deg: slot.extent_deg - 2.0 * shrink,
        })
        .filter(|lug| lug.extent_deg > 0.0)
        .collect();
    if lugs.is_empty() {
        return Err(Missing(vec![FieldRef::Ears, FieldRef::Cutter]));
    }
    trim_to_the_stop(rules, &flank, twist, &mut lugs);
    Ok(Found { lugs, working })
}

/// The radius that asks for the most, and the angle it asks for, degrees.
fn worst_shrink(flank: &LugFlank, radii: (f64, f64), clearance: f64) -> (f64, f64) {
    most_in(radii, |radius| {
        ((clearance + flank.intrusion(radius)) / radius).to_degrees()
    })
}

/// The lug that would run past the stop is cut back to it, so that stop and lock pin agree.
fn trim_to_the_stop(rules: &Rules, flank: &LugFlank, twist: Twist, lugs: &mut [Sector]) {
    if rules.design.body.stop != Presence::Present {
        return;
    }
    let (Ok(stop), Ok(radius)) = (
        rules.body(BodyField::StopAngle),
        rules.body(BodyField::StopRadius),
    ) else {
        return;
    };
    // The stop meets the flank as it really stands at its radius.
    let standing = (flank.intrusion(radius.value()) / radius.value()).to_degrees();
    for lug in lugs {
        let past = match twist.hand {
            Hand::Clockwise => lug.end_deg() + standing - stop.value(),
            Hand::Anticlockwise => stop.value() - (lug.start_deg - standing),
        }
        .rem_euclid(360.0);
        // Only the lug that runs into the stop: one that merely swept past began the turn beyond it.
        if past < lug.extent_deg.min(twist.degrees) {
            lug.extent_deg -= past;
            if twist.hand == Hand::Anticlockwise {
                lug.start_deg = (lug.start_deg + past).rem_euclid(360.0);
            }
        }
    }
}
