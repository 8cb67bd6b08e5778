//! Bayonet bodies by chance.

use flangewright::mount::{Body, FreeDepth, Hand, Obstacle, Presence, Sector};

use crate::dice::Dice;
use crate::lenses::known;
use crate::pairs::{Plan, Stand};

/// Ears, the turn between them and its hand.
pub struct Bayonet {
    /// The ears.
    pub ears: Vec<Sector>,
    /// Degrees from entry to lock.
    pub twist: f64,
    /// Which way.
    pub hand: Hand,
}

/// Equal ears between slots of unlike width: a keyed pattern whose lugs, turned by nearly an ear, lie behind the ears.
pub fn bayonet(dice: &mut Dice, count: usize) -> Bayonet {
    let pitch = 360.0 / count as f64;
    let ear = pitch * dice.between(0.40, 0.43);
    let slots = 360.0 - ear * count as f64;
    // Widths from narrow to wide in steps; the narrowest still takes the turn.
    let spread = (pitch * 0.12).min(14.0);
    let mean = slots / count as f64;
    let mut widths: Vec<f64> = (0..count)
        .map(|place| {
            if count == 1 {
                mean
            } else {
                mean + spread * (2.0 * place as f64 / (count as f64 - 1.0) - 1.0)
            }
        })
        .collect();
    let shift = dice.below(count);
    widths.rotate_left(shift);
    let mut start = dice.between(0.0, 359.0);
    let mut ears = Vec::new();
    for width in widths {
        ears.push(Sector {
            start_deg: start % 360.0,
            extent_deg: ear,
        });
        start += ear + width;
    }
    let hand = if dice.chance(50) {
        Hand::Clockwise
    } else {
        Hand::Anticlockwise
    };
    Bayonet {
        ears,
        twist: ear * dice.between(0.93, 0.98),
        hand,
    }
}

/// A body for a plan.
pub fn body(dice: &mut Dice, plan: &Plan) -> Body {
    let throat = match plan.stand {
        Stand::Tall | Stand::Boss | Stand::Flush => plan.major + dice.between(4.0, 9.0),
        Stand::Counterbore => plan.shoulder + dice.between(3.4, 7.0),
        Stand::Refused => plan.major + 1.0,
    };
    let slot = throat + dice.between(3.0, 4.6);
    let flange_inner = slot + dice.between(0.2, 0.8);
    let lock_circle = flange_inner + dice.between(3.4, 4.4);
    let front = dice.between(1.0, 1.6);
    let ear_thickness = dice.between(1.1, 1.6);
    let bayonet = bayonet(dice, plan.ears);
    let depth =
        (plan.male + 7.5 - plan.height).max(front + ear_thickness + 3.0) + dice.between(0.0, 6.0);
    // Now and then one that is too large for the lens: the cone of rays then wants more than the ring can give.
    let sensor = match (dice.chance(8), plan.major < 30.0) {
        (true, _) => (36.0, 24.0),
        (false, true) => (8.8, 6.6),
        (false, false) => dice.pick(&[(13.0, 8.8), (17.3, 13.0)]),
    };
    let mut body = Body {
        name: format!("invented body, {} ears", plan.ears),
        notes: "invented".to_owned(),
        register: known(plan.register - plan.height),
        throat: known(throat),
        slot_diameter: known(slot),
        flange_inner: known(flange_inner),
        flange_outer: known(lock_circle + dice.between(5.2, 9.0)),
        ear_front_depth: known(front),
        ear_thickness: known(ear_thickness),
        springs: if dice.chance(70) {
            Presence::Present
        } else {
            Presence::Absent
        },
        spring_circle: known(f64::midpoint(throat, slot)),
        spring_force: known(dice.between(10.0, 30.0)),
        twist: known(bayonet.twist),
        twist_hand: known(bayonet.hand),
        stop: Presence::Absent,
        lock_pin: Presence::Absent,
        index_angle: known(dice.pick(&[0.0, 0.0, 30.0, 315.0])),
        free_depth: known(vec![
            FreeDepth {
                radius_mm: 0.0,
                depth_mm: depth + 2.0,
            },
            FreeDepth {
                radius_mm: slot / 2.0 + 1.0,
                depth_mm: depth,
            },
        ]),
        mirror: Presence::Absent,
        obstacles: known(Vec::new()),
        sensor_width: known(sensor.0),
        sensor_height: known(sensor.1),
        pixel_pitch: known(0.005),
        ..Body::default()
    };
    stop(dice, &bayonet, (throat, slot), &mut body);
    lock_pin(dice, lock_circle, &mut body);
    if dice.chance(30) {
        body.obstacles = known(vec![Obstacle {
            name: "overhang".to_owned(),
            sector: Sector {
                start_deg: 330.0,
                extent_deg: 60.0,
            },
            inner_radius_mm: slot,
            outer_radius_mm: slot + 20.0,
            from_z_mm: -40.0,
            to_z_mm: -1.0,
        }]);
    }
    body.ears = known(bayonet.ears);
    body
}

/// A stop that the leading lug runs into a little before the turn would end.
fn stop(dice: &mut Dice, bayonet: &Bayonet, bores: (f64, f64), body: &mut Body) {
    if dice.chance(40) {
        return;
    }
    let ear = bayonet.ears[dice.below(bayonet.ears.len())];
    let short = dice.between(0.5, 5.0);
    body.stop = Presence::Present;
    body.stop_angle = known(match bayonet.hand {
        Hand::Clockwise => (ear.start_deg + bayonet.twist - short).rem_euclid(360.0),
        Hand::Anticlockwise => (ear.end_deg() - bayonet.twist + short).rem_euclid(360.0),
    });
    body.stop_radius = known((bores.0 + bores.1) / 4.0 + 0.3);
    body.stop_depth =
        known(body.ear_front_depth.number().unwrap() + body.ear_thickness.number().unwrap() + 0.6);
}

fn lock_pin(dice: &mut Dice, circle: f64, body: &mut Body) {
    if dice.chance(25) {
        return;
    }
    body.lock_pin = Presence::Present;
    body.lock_pin_circle = known(circle);
    body.lock_pin_diameter = known(dice.between(1.2, 2.0));
    body.lock_pin_protrusion = known(dice.between(0.5, 1.1));
    body.lock_pin_angle = known(dice.between(0.0, 359.0));
}
