//! A lens and a body that somebody could own: what stands between them is chosen first, the parts follow from it.

use flangewright::document::{
    Choice, Design, Finish, MillingMethod, Paper, PinHandling, ThreadHold,
};

use crate::bodies::body;
use crate::dice::Dice;
use crate::lenses::lens;

/// How the seat must stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stand {
    /// Far ahead of the flange.
    Tall,
    /// On a boss.
    Boss,
    /// Flush with the plate.
    Flush,
    /// In a counterbore.
    Counterbore,
    /// Where no ring without optics can be built.
    Refused,
}

/// What becomes of a stop-down pin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pin {
    /// There is none.
    None,
    /// It is pressed.
    Pressed,
    /// It is left free.
    Free,
}

/// What was chosen before the parts.
#[derive(Clone, Copy, Debug)]
pub struct Plan {
    /// How the seat stands.
    pub stand: Stand,
    /// What becomes of the pin.
    pub pin: Pin,
    /// Thread designation.
    pub thread: &'static str,
    /// Its diameter, mm.
    pub major: f64,
    /// Its pitch, mm.
    pub pitch: f64,
    /// Lens register less body register, mm.
    pub height: f64,
    /// Lens register, mm.
    pub register: f64,
    /// Shoulder diameter, mm.
    pub shoulder: f64,
    /// Length of the male thread, mm.
    pub male: f64,
    /// Number of ears.
    pub ears: usize,
}

/// Threads of the three forms: designation, diameter, pitch.
const THREADS: [(&str, f64, f64); 10] = [
    ("M42x1", 42.0, 1.0),
    ("M39x1", 39.0, 1.0),
    ("M40x0.75", 40.0, 0.75),
    ("M25x0.5", 25.0, 0.5),
    ("M58x0.75", 58.0, 0.75),
    ("M65x1", 65.0, 1.0),
    ("M52x1.5", 52.0, 1.5),
    ("1-32 UN", 25.4, 0.793_75),
    ("1 1/2-24 UNS", 38.1, 25.4 / 24.0),
    ("39 x 26 tpi Whitworth", 39.0, 25.4 / 26.0),
];

fn plan(dice: &mut Dice, index: usize) -> Plan {
    let stands = [
        Stand::Tall,
        Stand::Boss,
        Stand::Flush,
        Stand::Counterbore,
        Stand::Boss,
    ];
    let pins = [Pin::Pressed, Pin::None, Pin::Free];
    let stand = if index % 17 == 16 {
        Stand::Refused
    } else {
        stands[index % stands.len()]
    };
    let (thread, major, pitch) = dice.pick(&THREADS);
    let height = match stand {
        Stand::Tall => dice.between(9.0, 35.0),
        Stand::Boss => dice.between(2.6, 8.0),
        Stand::Flush => dice.between(1.2, 2.5),
        Stand::Counterbore => dice.between(-4.0, 1.0),
        Stand::Refused => dice.between(-6.0, 1.1),
    };
    let shoulder = major + dice.between(3.0, 9.0);
    // Four turns at least, so that three remain beside the chamfer.
    let male = 3.0_f64.max(5.0 * pitch) + dice.between(0.0, 2.0);
    Plan {
        stand,
        pin: pins[(index / 5) % pins.len()],
        thread,
        major,
        pitch,
        height,
        register: dice.between(40.0, 75.0),
        shoulder,
        male,
        ears: 1 + index % 6,
    }
}

/// A plausible design, every dimension by its rule.
pub fn plausible(seed: u64, index: usize) -> Design {
    let mut dice = Dice::new(seed.wrapping_mul(1_000_003).wrapping_add(index as u64));
    let plan = plan(&mut dice, index);
    let mut design = Design::new(lens(&mut dice, &plan), body(&mut dice, &plan));
    design.name = format!("generated ring {index}");
    if plan.pin == Pin::Free {
        design.ring.pin = Choice::Set(PinHandling::LeftFree);
    }
    design.ring.thread_hold = ThreadHold::SetScrew;
    "aluminium 6061-T6".clone_into(&mut design.ring.material);
    if dice.chance(20) {
        design.ring.finish = Finish {
            build_up_mm: 0.01,
            faces_masked: dice.chance(50),
            inside_blackened: true,
        };
    }
    if dice.chance(15) {
        design.ring.milling = MillingMethod::CentreFeed;
    }
    if dice.chance(30) {
        design.sheet.paper = Paper::A3Landscape;
    }
    design.sheet.decimal_comma = dice.chance(40);
    design.sheet.section_angle_deg = dice.between(0.0, 360.0);
    design
}

/// What a plausible design was made for.
pub fn stand_of(index: usize, seed: u64) -> Stand {
    let mut dice = Dice::new(seed.wrapping_mul(1_000_003).wrapping_add(index as u64));
    plan(&mut dice, index).stand
}
