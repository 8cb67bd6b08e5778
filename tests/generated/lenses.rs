//! Lenses by chance.

use flangewright::mount::{BarrelStep, Interface, Lens, Presence};

use crate::dice::Dice;
use crate::pairs::{Pin, Plan, Stand};

/// A value measured with an invented instrument.
pub fn known<T>(value: T) -> Interface<T> {
    Interface::measured(value, "caliper 0.02")
}

/// A lens for a plan.
pub fn lens(dice: &mut Dice, plan: &Plan) -> Lens {
    let minor = plan.major - 1.3 * plan.pitch;
    let mut lens = Lens {
        name: format!("invented lens {}", plan.thread),
        notes: "invented".to_owned(),
        register: known(plan.register),
        thread: known(plan.thread.parse().unwrap()),
        male_thread_length: known(plan.male),
        thread_run_out: known(dice.between(0.0, 0.4)),
        shoulder_fillet: known(dice.between(0.0, 0.2)),
        shoulder_diameter: known(plan.shoulder),
        focal_length: known(dice.between(25.0, 135.0)),
        f_number: known(if plan.major < 30.0 {
            5.6
        } else {
            dice.pick(&[2.8, 3.5, 4.0])
        }),
        exit_pupil_distance: known(plan.register + dice.between(5.0, 25.0)),
        pupil_magnification: known(dice.between(0.8, 1.2)),
        mass: known(dice.between(80.0, 600.0)),
        centre_of_gravity_ahead: known(dice.between(5.0, 50.0)),
        stop_down_pin: Presence::Absent,
        ..Lens::default()
    };
    // A barrel that ends inside the male thread, or reaches behind it.
    let barrel = minor - dice.between(7.0, 10.0);
    let reach = if dice.chance(50) {
        plan.male * 0.6
    } else {
        plan.male + dice.between(0.5, 2.0)
    };
    lens.barrel_at_infinity = known(vec![BarrelStep {
        depth_mm: reach,
        diameter_mm: barrel,
    }]);
    lens.barrel_at_close_focus = known(vec![BarrelStep {
        depth_mm: reach * 0.5,
        diameter_mm: barrel,
    }]);
    if plan.pin != Pin::None {
        pin(dice, plan, minor, &mut lens);
    }
    aperture_ring(dice, plan, &mut lens);
    lens
}

/// A pin between barrel and thread, whose travel lies behind the male thread.
fn pin(dice: &mut Dice, plan: &Plan, minor: f64, lens: &mut Lens) {
    let bottom = plan.male + dice.between(1.6, 2.4) * plan.pitch.max(0.7);
    lens.stop_down_pin = Presence::Present;
    lens.pin_circle = known(minor - dice.between(3.0, 3.6));
    lens.pin_diameter = known(dice.between(1.2, 1.6));
    lens.pin_bottom = known(bottom);
    lens.pin_stopped_down = known(bottom + dice.between(0.6, 1.2));
    lens.pin_free = known(bottom + dice.between(1.6, 2.4));
    lens.pin_force = known(dice.between(0.5, 3.0));
}

/// An aperture ring round the shoulder, sometimes one that hangs over the seat.
fn aperture_ring(dice: &mut Dice, plan: &Plan, lens: &mut Lens) {
    if dice.chance(40) {
        lens.aperture_ring = Presence::Absent;
        return;
    }
    lens.aperture_ring = Presence::Present;
    let inner = plan.shoulder + dice.between(1.6, 3.0);
    lens.aperture_ring_inner = known(inner);
    lens.aperture_ring_outer = known(inner + dice.between(4.0, 12.0));
    let hangs = matches!(plan.stand, Stand::Tall) && dice.chance(30);
    let clear_of_plate = 1.9 - plan.height.min(1.2);
    lens.aperture_ring_ahead = known(if hangs {
        -0.3
    } else {
        dice.between(clear_of_plate.max(0.5), clear_of_plate.max(0.5) + 4.0)
    });
}
