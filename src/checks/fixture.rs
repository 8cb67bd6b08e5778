//! A complete invented lens and body for the tests of the checks, and a bench to judge them on.

use super::context::{Context, NotJudged};
use super::finding::{Change, Finding};
use crate::document::{Choice, Design, RingKey};
use crate::mount::{
    BarrelStep, Body, FreeDepth, Hand, Interface, Lens, Obstacle, Presence, Sector,
};
use crate::ring::{Derivation, Parts, ResolvedRing, derive, parts_of};
use crate::workshop::Workshop;

const INSTRUMENT: &str = "depth micrometer";

fn known<T>(value: T) -> Interface<T> {
    Interface::measured(value, INSTRUMENT)
}

/// A value counted as measured.
pub fn measured(value: f64) -> Interface<f64> {
    known(value)
}

fn step(depth_mm: f64, diameter_mm: f64) -> BarrelStep {
    BarrelStep {
        depth_mm,
        diameter_mm,
    }
}

/// An invented 50 mm f/2.8 lens with an M42x1 thread, register 45.46, and a stop-down pin.
pub fn lens() -> Lens {
    Lens {
        name: "lens of the tests".to_owned(),
        notes: "invented".to_owned(),
        register: known(45.46),
        thread: known("M42x1".parse().unwrap()),
        male_thread_length: known(5.0),
        thread_run_out: known(0.4),
        shoulder_fillet: known(0.0),
        shoulder_diameter: known(47.0),
        barrel_at_infinity: known(vec![step(6.0, 33.0)]),
        barrel_at_close_focus: known(vec![step(2.0, 33.0)]),
        aperture_ring: Presence::Present,
        aperture_ring_inner: known(50.0),
        aperture_ring_outer: known(62.0),
        aperture_ring_ahead: known(2.0),
        stop_down_pin: Presence::Present,
        pin_circle: known(37.0),
        pin_diameter: known(1.6),
        pin_free: known(8.2),
        pin_stopped_down: known(7.4),
        pin_bottom: known(6.6),
        pin_force: known(2.0),
        focal_length: known(50.0),
        f_number: known(2.8),
        exit_pupil_distance: known(60.0),
        pupil_magnification: known(1.0),
        mass: known(220.0),
        centre_of_gravity_ahead: known(18.0),
        row_readings: Vec::new(),
    }
}

/// An invented bayonet body, register 44.00, with three unequal ears, a lock pin and a stop.
pub fn body() -> Body {
    let sector = |start_deg, extent_deg| Sector {
        start_deg,
        extent_deg,
    };
    Body {
        name: "body of the tests".to_owned(),
        notes: "invented".to_owned(),
        register: known(44.0),
        throat: known(50.0),
        slot_diameter: known(54.0),
        flange_inner: known(54.5),
        flange_outer: known(64.0),
        ear_front_depth: known(1.5),
        ear_thickness: known(1.8),
        ears: known(vec![
            sector(20.0, 60.0),
            sector(152.0, 50.0),
            sector(260.0, 56.0),
        ]),
        springs: Presence::Present,
        spring_circle: known(51.0),
        spring_force: known(20.0),
        twist: known(62.0),
        twist_hand: known(Hand::Clockwise),
        stop: Presence::Present,
        stop_angle: known(79.0),
        stop_radius: known(26.2),
        stop_depth: known(4.2),
        lock_pin: Presence::Present,
        lock_pin_circle: known(59.0),
        lock_pin_diameter: known(2.0),
        lock_pin_protrusion: known(1.0),
        lock_pin_angle: known(230.0),
        index_angle: known(0.0),
        free_depth: known(vec![
            FreeDepth {
                radius_mm: 0.0,
                depth_mm: 12.0,
            },
            FreeDepth {
                radius_mm: 32.0,
                depth_mm: 12.0,
            },
        ]),
        mirror: Presence::Present,
        obstacles: known(vec![Obstacle {
            name: "contact block".to_owned(),
            sector: sector(170.0, 20.0),
            inner_radius_mm: 18.0,
            outer_radius_mm: 23.0,
            from_z_mm: 9.5,
            to_z_mm: 12.0,
        }]),
        sensor_width: known(36.0),
        sensor_height: known(24.0),
        pixel_pitch: known(0.006),
        row_readings: Vec::new(),
    }
}

/// Lens on body, every dimension by its rule.
pub fn design() -> Design {
    Design::new(lens(), body())
}

/// The shipped workshop.
pub fn workshop() -> Workshop {
    Workshop::default_set().unwrap()
}

/// The fixture with some dimensions set by hand.
pub fn with(sizes: &[(RingKey, f64)]) -> Design {
    let mut design = design();
    set(&mut design, sizes);
    design
}

/// Sets dimensions by hand.
pub fn set(design: &mut Design, sizes: &[(RingKey, f64)]) {
    for (key, value) in sizes {
        design.ring.dimensions.get_mut(*key).value = Choice::Set(*value);
    }
}

/// A design with everything that a check looks at.
pub struct Bench {
    /// The design.
    pub design: Design,
    /// The workshop.
    pub workshop: Workshop,
    /// What became of the rules.
    pub derivation: Derivation,
    ring: ResolvedRing,
    parts: Parts,
}

impl Bench {
    /// Derives a design whose ring must be whole.
    pub fn of(design: Design) -> Self {
        Self::in_shop(design, workshop())
    }

    /// The same in another workshop.
    pub fn in_shop(design: Design, workshop: Workshop) -> Self {
        let derivation = derive(&design, &workshop);
        let ring = derivation.ring.clone().unwrap_or_else(|| {
            panic!(
                "no ring: missing {:?}, refused {:?}",
                derivation.missing, derivation.refusal
            )
        });
        let parts = parts_of(&design, &ring).unwrap();
        Self {
            design,
            workshop,
            derivation,
            ring,
            parts,
        }
    }

    /// What the checks are given.
    pub fn cx(&self) -> Context<'_> {
        Context {
            design: &self.design,
            workshop: &self.workshop,
            derivation: &self.derivation,
            ring: &self.ring,
            parts: &self.parts,
        }
    }
}

/// A check.
pub type Check = fn(&Context) -> Result<Finding, NotJudged>;

/// What a check says of a design.
pub fn judged(check: Check, design: &Design) -> Finding {
    check(&Bench::of(design.clone()).cx()).unwrap()
}

/// The fields a check lacks on a design.
pub fn lacking(check: Check, design: &Design) -> NotJudged {
    check(&Bench::of(design.clone()).cx()).unwrap_err()
}

/// The design with the one change that the finding's remedy names.
pub fn cured(design: &Design, finding: &Finding) -> Design {
    let mut design = design.clone();
    let change = finding
        .remedy
        .as_ref()
        .and_then(|remedy| remedy.change.clone());
    let ring = &mut design.ring;
    match change.unwrap_or_else(|| panic!("no change would cure: {}", finding.message)) {
        Change::Dimension(key, value) => ring.dimensions.get_mut(key).value = Choice::Set(value),
        Change::LetGo(key) => ring.dimensions.get_mut(key).value = Choice::Derived,
        Change::Lugs(lugs) => ring.lugs = Choice::Set(lugs),
        Change::LetLugsGo => ring.lugs = Choice::Derived,
        Change::ThreadHold(hold) => ring.thread_hold = hold,
        Change::Cutter(name) => ring.cutter = name,
    }
    design
}
