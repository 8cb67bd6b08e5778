//! Designs that nobody would make, yet whose every value is allowed: what a hand in a hurry, or a spiteful one, types.

use flangewright::document::{
    Choice, Design, LimitKey, MillingMethod, Pieces, PinHandling, RingKey, SeatKind, Tolerance,
    faults_of,
};
use flangewright::mount::{
    BarrelStep, BodyField, FreeDepth, Hand, Interface, LensField, Obstacle, Presence, Sector,
};

use crate::dice::Dice;
use crate::pairs::plausible;

/// Kinds of distortion.
const KINDS: usize = 16;

/// A design with some values spoilt; every one of them is one that the document allows.
pub fn hostile(seed: u64, index: usize) -> Design {
    let mut dice = Dice::new(seed.wrapping_mul(7_919).wrapping_add(index as u64));
    let mut design = plausible(seed ^ 0x5a5a, index);
    let times = 1 + dice.below(12);
    for _ in 0..times {
        let mut spoilt = design.clone();
        let kind = dice.below(KINDS);
        spoil(&mut dice, &mut spoilt, kind);
        if faults_of(&spoilt).is_empty() {
            design = spoilt;
        }
    }
    design
}

/// A plausible design in which a few things are not known, or only assumed.
pub fn half_known(seed: u64, index: usize) -> Design {
    let mut dice = Dice::new(seed.wrapping_mul(104_729).wrapping_add(index as u64));
    let mut design = plausible(seed ^ 0x3c3c, index);
    for _ in 0..=dice.below(3) {
        let kind = dice.below(3);
        spoil(&mut dice, &mut design, kind);
    }
    design
}

fn spoil(dice: &mut Dice, design: &mut Design, kind: usize) {
    match kind {
        0 => *design.lens.field_mut(dice.pick(LensField::ALL)) = Interface::Unknown,
        1 => *design.body.field_mut(dice.pick(BodyField::ALL)) = Interface::Unknown,
        2 => something_unknown(dice, design),
        3 => {
            let key = dice.pick(LensField::ALL);
            *design.lens.field_mut(key) =
                Interface::assumed(in_range(dice, key.range()), "a guess");
        }
        4 => {
            let key = dice.pick(BodyField::ALL);
            *design.body.field_mut(key) =
                Interface::assumed(in_range(dice, key.range()), "a guess");
        }
        5 => scale_lens(dice, design),
        6 => scale_body(dice, design),
        7 | 8 => set_dimension(dice, design),
        9 => design.ring.lugs = Choice::Set(sectors(dice)),
        10 => design.body.ears = Interface::assumed(sectors(dice), "a guess"),
        11 => choices(dice, design),
        12 => barrels(dice, design),
        13 => depths(dice, design),
        14 => obstacles(dice, design),
        _ => {
            *design.limits.get_mut(dice.pick(LimitKey::ALL)) =
                dice.pick(&[0.0, 0.01, 1.0, 7.5, 100.0, 1000.0])
        }
    }
}

/// Somewhere in a range, its ends included.
fn in_range(dice: &mut Dice, (least, most): (f64, f64)) -> f64 {
    match dice.below(4) {
        0 => least,
        1 => most,
        _ => dice.between(least, least + (most - least) * 0.2),
    }
}

fn something_unknown(dice: &mut Dice, design: &mut Design) {
    let (lens, body) = (&mut design.lens, &mut design.body);
    match dice.below(12) {
        0 => lens.thread = Interface::Unknown,
        1 => lens.barrel_at_infinity = Interface::Unknown,
        2 => lens.barrel_at_close_focus = Interface::Unknown,
        3 => lens.aperture_ring = Presence::Unknown,
        4 => lens.stop_down_pin = Presence::Unknown,
        5 => body.ears = Interface::Unknown,
        6 => body.springs = Presence::Unknown,
        7 => body.twist_hand = Interface::Unknown,
        8 => body.stop = Presence::Unknown,
        9 => body.lock_pin = Presence::Unknown,
        10 => body.free_depth = Interface::Unknown,
        _ => body.obstacles = Interface::Unknown,
    }
}

fn scale_lens(dice: &mut Dice, design: &mut Design) {
    let field = design.lens.field_mut(dice.pick(LensField::ALL));
    if let Some(value) = field.number() {
        *field = Interface::measured(value * dice.between(0.2, 2.5), "caliper 0.02");
    }
}

fn scale_body(dice: &mut Dice, design: &mut Design) {
    let field = design.body.field_mut(dice.pick(BodyField::ALL));
    if let Some(value) = field.number() {
        *field = Interface::measured(value * dice.between(0.2, 2.5), "caliper 0.02");
    }
}

fn set_dimension(dice: &mut Dice, design: &mut Design) {
    let key = dice.pick(RingKey::ALL);
    let value = in_range(dice, key.range());
    let near = dice.between(0.2, 60.0).clamp(key.range().0, key.range().1);
    let dimension = design.ring.dimensions.get_mut(key);
    dimension.value = Choice::Set(if dice.chance(30) { value } else { near });
    dimension.tolerance = match dice.below(4) {
        0 => Tolerance::PlusMinus(0.1),
        1 => Tolerance::Deviations(-0.3, 0.2),
        2 => Tolerance::Fit("H7".to_owned()),
        _ => Tolerance::Derived,
    };
}

/// Sectors that do not overlap; some touch, some are slivers.
fn sectors(dice: &mut Dice) -> Vec<Sector> {
    let most = if dice.chance(5) { 60 } else { 8 };
    let count = 1 + dice.below(most);
    let pitch = 360.0 / count as f64;
    let turn = dice.between(-360.0, 360.0);
    (0..count)
        .map(|place| Sector {
            start_deg: turn + pitch * place as f64,
            extent_deg: (pitch * dice.pick(&[0.02, 0.3, 0.5, 0.8, 0.999])).max(0.1),
        })
        .collect()
}

fn choices(dice: &mut Dice, design: &mut Design) {
    let ring = &mut design.ring;
    match dice.below(6) {
        0 => {
            ring.seat =
                Choice::Set(dice.pick(&[SeatKind::Boss, SeatKind::Flush, SeatKind::Counterbore]))
        }
        1 => ring.pin = Choice::Set(dice.pick(&[PinHandling::Pressed, PinHandling::LeftFree])),
        2 => ring.milling = dice.pick(&MillingMethod::ALL),
        3 => dice
            .pick(&["end mill 2", "end mill 3", "end mill 8", "none such"])
            .clone_into(&mut ring.cutter),
        4 => ring.trim_mm = dice.between(-5.0, 5.0),
        _ => {
            ring.pieces = Pieces::Two {
                clamp_wall_mm: dice.between(0.2, 5.0),
                screw_diameter_mm: 2.0,
                screw_count: 3,
            };
        }
    }
    if dice.chance(20) {
        design.body.twist_hand = Interface::assumed(
            dice.pick(&[Hand::Clockwise, Hand::Anticlockwise]),
            "a guess",
        );
    }
}

fn barrels(dice: &mut Dice, design: &mut Design) {
    let mut depth = 0.0;
    let steps = (0..dice.below(6))
        .map(|_| {
            depth += dice.between(0.01, 12.0);
            BarrelStep {
                depth_mm: depth,
                diameter_mm: dice.between(0.5, 60.0),
            }
        })
        .collect();
    let barrel = Interface::assumed(steps, "a guess");
    if dice.chance(50) {
        design.lens.barrel_at_infinity = barrel;
    } else {
        design.lens.barrel_at_close_focus = barrel;
    }
}

fn depths(dice: &mut Dice, design: &mut Design) {
    let points = (0..dice.below(6))
        .map(|_| FreeDepth {
            radius_mm: dice.between(0.0, 40.0),
            depth_mm: dice.between(0.0, 30.0),
        })
        .collect();
    design.body.free_depth = Interface::assumed(points, "a guess");
    design.body.mirror = dice.pick(&[Presence::Present, Presence::Absent, Presence::Unknown]);
}

fn obstacles(dice: &mut Dice, design: &mut Design) {
    let list = (0..dice.below(5))
        .map(|place| {
            let (inner, z) = (dice.between(0.0, 40.0), dice.between(-40.0, 20.0));
            Obstacle {
                name: format!("obstacle {place}"),
                sector: Sector {
                    start_deg: dice.between(-360.0, 360.0),
                    extent_deg: dice.between(0.1, 360.0),
                },
                inner_radius_mm: inner,
                outer_radius_mm: inner + dice.between(0.1, 30.0),
                from_z_mm: z,
                to_z_mm: z + dice.between(0.1, 30.0),
            }
        })
        .collect();
    design.body.obstacles = Interface::assumed(list, "a guess");
}
