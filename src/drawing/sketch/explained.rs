//! How mounts work, in pictures: registers, thread, seat, ears and slots, entering, locking, lock pin, stop-down pin.
//!
//! Invented proportions, chosen to be read; nothing of a design enters them.

use super::marks::{across, along, at, axis, clockwise, line, part, pointed, turned_part, words};
use super::plan::{EARS, OUTER, SLOT, THROAT, TWIST_DEG, draw_body, placed};
use crate::drawing::{LineType, Role, Scene};

/// A part of a mount that is explained.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Topic {
    /// The two registers and what lies between them.
    Register,
    /// The thread with its relief.
    Thread,
    /// Where the lens seat stands to the plate.
    Seat,
    /// Ears and slots of the body.
    Ears,
    /// The lugs dropping through the slots.
    Entering,
    /// The lugs turned behind the ears.
    Locking,
    /// The body's pin and the ring's hole.
    LockPin,
    /// The pin that closes the iris.
    StopDownPin,
}

impl Topic {
    /// Every topic, in the order of a first reading.
    pub const ALL: [Self; 8] = [
        Self::Register,
        Self::Thread,
        Self::Seat,
        Self::Ears,
        Self::Entering,
        Self::Locking,
        Self::LockPin,
        Self::StopDownPin,
    ];

    /// Its title.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Register => "Register",
            Self::Thread => "Thread and relief",
            Self::Seat => "Lens seat",
            Self::Ears => "Ears and slots",
            Self::Entering => "Entering",
            Self::Locking => "Locking",
            Self::LockPin => "Lock pin",
            Self::StopDownPin => "Stop-down pin",
        }
    }

    /// What there is to know of it.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Self::Register => {
                "A lens focused at infinity wants its seat at one distance from the image: its register. A body holds its \
                 flange at another: the body's register. The ring fills the difference, and that is its seat height. Is the \
                 lens's register the smaller one, no ring can help: the lens stands too far out already. A few hundredths \
                 too thick and infinity is lost."
            }
            Self::Thread => {
                "The lens screws in until its shoulder meets the seat; never until its thread ends. Behind the thread the \
                 ring has a relief: a groove in which the threading tool is stopped. The lip behind it is what the tool \
                 must not meet. A thread is named by diameter and pitch; the register does not follow from it."
            }
            Self::Seat => {
                "The seat is the face that the shoulder stops against. With room to spare it stands proud on a boss; where \
                 the seat height is just the plate's thickness it is flush; where there is less room than a plate is thick \
                 it is sunk in a counterbore, if shoulder and aperture ring fit into it. It must lie parallel to the flange \
                 rear face, or one side of the picture is soft."
            }
            Self::Ears => {
                "The body holds a bayonet by its ears: flanges inside the throat with slots between them. Measure the clear \
                 bore inside the ears, the bore in the slots, how deep the ears lie behind the flange and how thick they \
                 are, and photograph them straight on for their angles. Nobody publishes these."
            }
            Self::Entering => {
                "The ring's lugs drop through the slots. They must pass with a little room on both sides, at every radius, \
                 with the flanks that the cutter really leaves. One slot or lug is usually wider than the others, so that \
                 there is one way in only."
            }
            Self::Locking => {
                "Then the ring is turned until its lugs lie behind the ears, which now sit in the ring's groove. How much of \
                 an ear its lug covers is what holds the lens. Springs behind the ears pull the flange home; without them \
                 the groove must be close, for its play goes straight into focus."
            }
            Self::LockPin => {
                "A sprung pin in the body's flange drops into a hole of the ring when the lugs are home. The hole needs its \
                 circle, its angle with the ring locked, and depth enough; until it is reached the flange must cover the \
                 pin. A stop in the body ends the turn, so that the pin does not have to."
            }
            Self::StopDownPin => {
                "Some lenses close their iris only while a pin behind the shoulder is pressed in. A lip in the ring holds it \
                 in: deep enough that the iris closes, not so deep that the pin comes to its bottom and carries the lens off \
                 the seat. Where the pin is to stay out, the ring leaves room for it in an annulus."
            }
        }
    }

    /// Its picture.
    #[must_use]
    pub fn scene(self) -> Scene {
        let mut scene = Scene::view();
        match self {
            Self::Register => register(&mut scene),
            Self::Thread => thread(&mut scene),
            Self::Seat => seat(&mut scene),
            Self::Ears => ears(&mut scene),
            Self::Entering => entering(&mut scene),
            Self::Locking => locking(&mut scene),
            Self::LockPin => lock_pin(&mut scene),
            Self::StopDownPin => stop_down_pin(&mut scene),
        }
        scene
    }
}

/// Places along the axis, mm: the seat, the flange rear face, the image.
const SEAT: f64 = -10.0;
const IMAGE: f64 = 70.0;

fn register(scene: &mut Scene) {
    axis(scene, -40.0, IMAGE + 6.0);
    let lens = [
        (-34.0, 0.0),
        (-34.0, 24.0),
        (SEAT, 24.0),
        (SEAT, 16.0),
        (4.0, 16.0),
        (4.0, 0.0),
    ];
    turned_part(scene, Role::Lens, &lens);
    let ring = [
        (SEAT, 16.0),
        (SEAT, 34.0),
        (0.0, 34.0),
        (0.0, 22.0),
        (8.0, 22.0),
        (8.0, 16.0),
    ];
    turned_part(scene, Role::Ring, &ring);
    let body = [(0.0, 24.0), (0.0, 40.0), (22.0, 40.0), (22.0, 24.0)];
    turned_part(scene, Role::Body, &body);
    let image = [at(IMAGE, -14.0), at(IMAGE, 14.0)];
    line(
        scene,
        Role::Body,
        LineType::ContinuousWide,
        image[0],
        image[1],
    );
    words(scene, at(IMAGE, -19.0), "image");
    along(
        scene,
        at(SEAT, 34.0),
        at(IMAGE, 14.0),
        58.0,
        "lens register",
    );
    along(scene, at(0.0, 40.0), at(IMAGE, 14.0), 49.0, "body register");
    along(scene, at(SEAT, -34.0), at(0.0, -40.0), -50.0, "seat height");
}

fn thread(scene: &mut Scene) {
    let ring = [
        at(0.0, 30.0),
        at(0.0, 52.0),
        at(9.0, 52.0),
        at(9.0, 44.0),
        at(44.0, 44.0),
        at(44.0, 20.0),
        at(36.0, 20.0),
        at(36.0, 34.0),
        at(26.0, 34.0),
        at(26.0, 29.0),
        at(2.0, 29.0),
    ];
    let lens = [
        at(-24.0, 8.0),
        at(-24.0, 42.0),
        at(0.0, 42.0),
        at(0.0, 30.0),
        at(20.0, 30.0),
        at(20.0, 8.0),
    ];
    part(scene, Role::Lens, lens);
    part(scene, Role::Ring, ring);
    pointed(
        scene,
        at(0.0, 40.0),
        at(-14.0, 58.0),
        "shoulder on the seat",
    );
    pointed(scene, at(12.0, 29.5), at(20.0, 62.0), "thread");
    pointed(scene, at(31.0, 34.0), at(52.0, 56.0), "relief");
    pointed(scene, at(40.0, 22.0), at(54.0, 12.0), "lip");
}

fn seat(scene: &mut Scene) {
    let kinds: [(&str, f64, f64); 3] = [
        ("proud", 0.0, -9.0),
        ("flush", 62.0, 0.0),
        ("sunk", 124.0, 5.0),
    ];
    for (name, from, height) in kinds {
        let (front, rear) = (from, from + 10.0);
        let face = front + height;
        let ring = [
            at(face, 10.0),
            at(face, 24.0),
            at(front, 24.0),
            at(front, 40.0),
            at(rear, 40.0),
            at(rear, 18.0),
            at(rear + 14.0, 18.0),
            at(rear + 14.0, 10.0),
        ];
        part(scene, Role::Ring, ring);
        line(
            scene,
            Role::Highlight,
            LineType::ContinuousWide,
            at(face, 10.0),
            at(face, 24.0),
        );
        words(scene, at(front + 6.0, 3.0), name);
    }
    pointed(scene, at(62.0, 20.0), at(48.0, 50.0), "lens seat");
    pointed(scene, at(134.0, 32.0), at(146.0, 50.0), "flange rear face");
}

fn ears(scene: &mut Scene) {
    draw_body(scene);
    let (start, extent) = EARS[0];
    pointed(
        scene,
        placed(f64::midpoint(THROAT, SLOT), start + extent / 2.0),
        at(50.0, 46.0),
        "ear",
    );
    pointed(
        scene,
        placed(f64::midpoint(THROAT, SLOT), 130.0),
        at(52.0, -40.0),
        "slot",
    );
    across(
        scene,
        placed(THROAT, 350.0),
        placed(THROAT, 190.0),
        -52.0,
        "throat",
    );
    words(scene, at(0.0, -OUTER - 8.0), "seen from the lens side");
}

/// A lug of this start and extent at the radii of the ears, shown as metal of the ring.
fn lug(scene: &mut Scene, start_deg: f64, extent_deg: f64) {
    const STEPS: u32 = 12;
    let angle = |step: u32| start_deg + extent_deg * f64::from(step) / f64::from(STEPS);
    let outer = (0..=STEPS).map(|step| placed(SLOT - 0.8, angle(step)));
    let inner = (0..=STEPS)
        .rev()
        .map(|step| placed(THROAT - 2.5, angle(step)));
    part(scene, Role::Ring, outer.chain(inner));
}

/// The slots: what the ears leave.
fn slots() -> impl Iterator<Item = (f64, f64)> {
    EARS.iter().enumerate().map(|(place, (start, extent))| {
        let end = start + extent;
        let next = EARS[(place + 1) % EARS.len()].0;
        (end, (next - end).rem_euclid(360.0))
    })
}

/// Room on each side of a lug in its slot, degrees; wider here than in a ring, to be seen.
const ROOM_DEG: f64 = 4.0;

fn lugs(scene: &mut Scene, turned_deg: f64) {
    for (start, extent) in slots() {
        lug(
            scene,
            start + ROOM_DEG + turned_deg,
            extent - 2.0 * ROOM_DEG,
        );
    }
}

fn entering(scene: &mut Scene) {
    draw_body(scene);
    lugs(scene, 0.0);
    pointed(
        scene,
        placed(SLOT - 2.0, 130.0),
        at(52.0, -40.0),
        "lug in its slot",
    );
    words(
        scene,
        at(0.0, -OUTER - 8.0),
        "the ring drops in, seen from the lens side",
    );
}

fn locking(scene: &mut Scene) {
    draw_body(scene);
    lugs(scene, TWIST_DEG);
    clockwise(scene, 130.0, TWIST_DEG, OUTER + 8.0, SLOT, "turned to lock");
    pointed(
        scene,
        placed(SLOT - 2.0, 65.0),
        at(52.0, 46.0),
        "lug behind its ear",
    );
    words(
        scene,
        at(0.0, -OUTER - 14.0),
        "locked, seen from the lens side",
    );
}

fn lock_pin(scene: &mut Scene) {
    let ring = [
        at(-12.0, 10.0),
        at(-12.0, 46.0),
        at(0.0, 46.0),
        at(0.0, 33.5),
        at(-8.0, 33.5),
        at(-8.0, 26.5),
        at(0.0, 26.5),
        at(0.0, 10.0),
    ];
    part(scene, Role::Ring, ring);
    let body = [at(0.0, 20.0), at(0.0, 52.0), at(24.0, 52.0), at(24.0, 20.0)];
    part(scene, Role::Body, body);
    let pin = [
        at(-6.0, 27.5),
        at(-6.0, 32.5),
        at(18.0, 32.5),
        at(18.0, 27.5),
    ];
    part(scene, Role::Pin, pin);
    pointed(
        scene,
        at(-4.0, 30.0),
        at(-26.0, 56.0),
        "lock pin in its hole",
    );
    pointed(scene, at(-12.0, 16.0), at(-30.0, 4.0), "flange of the ring");
    along(scene, at(-6.0, 27.5), at(0.0, 20.0), 4.0, "protrusion");
}

fn stop_down_pin(scene: &mut Scene) {
    for (from, pressed) in [(0.0, true), (86.0, false)] {
        let lip = if pressed { 18.0 } else { 30.0 };
        let x = |z: f64| from + z;
        let lens = [
            at(x(-20.0), 4.0),
            at(x(-20.0), 40.0),
            at(x(0.0), 40.0),
            at(x(0.0), 30.0),
            at(x(12.0), 30.0),
            at(x(12.0), 4.0),
        ];
        part(scene, Role::Lens, lens);
        let ring = [
            at(x(0.0), 31.0),
            at(x(0.0), 50.0),
            at(x(10.0), 50.0),
            at(x(10.0), 40.0),
            at(x(34.0), 40.0),
            at(x(34.0), 12.0),
            at(x(lip), 12.0),
            at(x(lip), 31.0),
        ];
        part(scene, Role::Ring, ring);
        let out = if pressed { lip } else { 25.0 };
        let pin = [
            at(x(0.0), 19.0),
            at(x(0.0), 23.0),
            at(x(out), 23.0),
            at(x(out), 19.0),
        ];
        part(scene, Role::Pin, pin);
        words(
            scene,
            at(x(6.0), -2.0),
            if pressed {
                "held in by the lip"
            } else {
                "left free"
            },
        );
    }
    pointed(scene, at(17.0, 21.0), at(44.0, 58.0), "pin");
    pointed(scene, at(116.0, 20.0), at(128.0, 56.0), "room for the pin");
}

#[cfg(test)]
#[path = "explained_tests.rs"]
mod tests;
