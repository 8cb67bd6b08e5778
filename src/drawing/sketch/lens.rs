//! The lens cut along its axis, front to the left, seat at 0.

use super::marks::{across, along, at, axis, diameter, line, part, pointed, turned_part, words};
use crate::drawing::{LineType, Role, Scene};
use crate::mount::LensField;

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    Number(LensField),
    Thread,
    BarrelAtInfinity,
    BarrelAtCloseFocus,
    ApertureRing,
    Pin,
}

const FRONT: f64 = -42.0;
const SHOULDER: f64 = 24.0;
const THREAD: f64 = 18.0;
const THREAD_ROOT: f64 = 16.8;
const THREAD_END: f64 = 9.0;
const RUN_OUT: f64 = 2.5;
const BARREL: f64 = 12.0;
const BARREL_END: f64 = 15.0;
const RING: (f64, f64) = (-22.0, -8.0);
const RING_INNER: f64 = 21.0;
const RING_OUTER: f64 = 30.0;
const PIN: f64 = 14.5;
const PIN_HALF: f64 = 0.9;
const PIN_FREE: f64 = 18.0;
const IMAGE: f64 = 58.0;
const IMAGE_HALF: f64 = 14.0;
/// Places of dimension lines.
const ABOVE: f64 = 40.0;
const BELOW: f64 = -40.0;
const LEFT: f64 = -54.0;
const RIGHT: f64 = 32.0;

/// The lens with what is asked for marked.
pub(super) fn sketch(asked: Asked) -> Scene {
    let mut scene = Scene::view();
    draw_lens(&mut scene, asked);
    match asked {
        Asked::Number(key) => number(&mut scene, key),
        Asked::Thread => pointed(
            &mut scene,
            at(5.0, THREAD),
            at(20.0, 34.0),
            "thread: gauge or crests, and pitch",
        ),
        Asked::BarrelAtInfinity | Asked::BarrelAtCloseFocus => {
            along(
                &mut scene,
                at(0.0, -SHOULDER),
                at(BARREL_END, -BARREL),
                BELOW,
                "depth of the step",
            );
            diameter(&mut scene, BARREL_END, BARREL, RIGHT, "its diameter");
        }
        Asked::ApertureRing => pointed(
            &mut scene,
            at(-15.0, RING_OUTER),
            at(4.0, ABOVE),
            "does a ring turn here?",
        ),
        Asked::Pin => pointed(
            &mut scene,
            at(PIN_FREE, PIN),
            at(30.0, 30.0),
            "is there a pin?",
        ),
    }
    scene
}

fn draw_lens(scene: &mut Scene, asked: Asked) {
    axis(scene, FRONT - 6.0, IMAGE + 6.0);
    let close = if asked == Asked::BarrelAtCloseFocus {
        -3.0
    } else {
        0.0
    };
    let end = BARREL_END + close;
    let body = [
        (FRONT, 0.0),
        (FRONT, RING_INNER),
        (RING.1, RING_INNER),
        (RING.1, SHOULDER),
        (0.0, SHOULDER),
        (0.0, THREAD),
        (THREAD_END, THREAD),
        (THREAD_END, BARREL),
        (end, BARREL),
        (end, 0.0),
    ];
    turned_part(scene, Role::Lens, &body);
    let ring = [
        (RING.0, RING_INNER),
        (RING.0, RING_OUTER),
        (RING.1, RING_OUTER),
        (RING.1, RING_INNER),
    ];
    turned_part(scene, Role::Lens, &ring);
    for side in [1.0, -1.0] {
        let root = |x| at(x, THREAD_ROOT * side);
        let kind = LineType::ContinuousNarrow;
        line(scene, Role::Lens, kind, root(RUN_OUT), root(THREAD_END));
        line(
            scene,
            Role::Lens,
            kind,
            at(0.0, THREAD * side),
            root(RUN_OUT),
        );
    }
    draw_pin(scene, asked);
    let image = [at(IMAGE, -IMAGE_HALF), at(IMAGE, IMAGE_HALF)];
    line(
        scene,
        Role::Body,
        LineType::ContinuousWide,
        image[0],
        image[1],
    );
    words(scene, at(IMAGE, -IMAGE_HALF - 5.0), "image");
}

/// The pin, as far out as the question has it.
fn draw_pin(scene: &mut Scene, asked: Asked) {
    let out = match asked {
        Asked::Number(LensField::PinStoppedDown) => 15.0,
        Asked::Number(LensField::PinBottom) => 12.0,
        Asked::Number(_)
        | Asked::Thread
        | Asked::BarrelAtInfinity
        | Asked::BarrelAtCloseFocus
        | Asked::ApertureRing
        | Asked::Pin => PIN_FREE,
    };
    let corners = |end| {
        [
            at(THREAD_END, PIN - PIN_HALF),
            at(THREAD_END, PIN + PIN_HALF),
            at(end, PIN + PIN_HALF),
            at(end, PIN - PIN_HALF),
        ]
    };
    part(scene, Role::Pin, corners(out));
}

fn number(scene: &mut Scene, key: LensField) {
    let name = key.label();
    match key {
        LensField::Register => along(scene, at(0.0, SHOULDER), at(IMAGE, IMAGE_HALF), ABOVE, name),
        LensField::MaleThreadLength => along(
            scene,
            at(0.0, -SHOULDER),
            at(THREAD_END, -THREAD),
            BELOW,
            name,
        ),
        LensField::ThreadRunOut => {
            along(scene, at(0.0, -SHOULDER), at(RUN_OUT, -THREAD), BELOW, name);
        }
        LensField::ShoulderFillet => pointed(scene, at(0.2, THREAD + 0.2), at(14.0, 34.0), name),
        LensField::ShoulderDiameter => diameter(scene, 0.0, SHOULDER, RIGHT, name),
        LensField::ApertureRingInner => diameter(scene, RING.0, RING_INNER, LEFT, name),
        LensField::ApertureRingOuter => diameter(scene, RING.0, RING_OUTER, LEFT, name),
        LensField::ApertureRingAhead => along(
            scene,
            at(RING.1, -RING_OUTER),
            at(0.0, -SHOULDER),
            BELOW,
            name,
        ),
        LensField::PinCircle => diameter(scene, PIN_FREE, PIN, RIGHT, name),
        LensField::PinDiameter => across(
            scene,
            at(PIN_FREE, PIN - PIN_HALF),
            at(PIN_FREE, PIN + PIN_HALF),
            RIGHT,
            name,
        ),
        LensField::PinFree => along(scene, at(0.0, SHOULDER), at(PIN_FREE, PIN), ABOVE, name),
        LensField::PinStoppedDown => along(scene, at(0.0, SHOULDER), at(15.0, PIN), ABOVE, name),
        LensField::PinBottom => along(scene, at(0.0, SHOULDER), at(12.0, PIN), ABOVE, name),
        LensField::PinForce => pointed(scene, at(PIN_FREE, PIN), at(34.0, 26.0), name),
        LensField::FocalLength | LensField::FNumber => {
            pointed(
                scene,
                at(FRONT, 14.0),
                at(FRONT + 8.0, ABOVE - 4.0),
                "engraved on the front",
            );
            words(scene, at(FRONT + 20.0, BELOW), name);
        }
        LensField::ExitPupilDistance => {
            iris(scene, -12.0, 8.0);
            along(scene, at(-12.0, 8.0), at(IMAGE, IMAGE_HALF), ABOVE, name);
        }
        LensField::PupilMagnification => {
            iris(scene, -12.0, 9.0);
            iris(scene, -26.0, 7.0);
            diameter(scene, -12.0, 9.0, RIGHT, "seen from behind");
            diameter(scene, -26.0, 7.0, LEFT, "seen from ahead");
        }
        LensField::Mass => pointed(
            scene,
            at(-30.0, -RING_INNER),
            at(-20.0, BELOW),
            "whole lens on a scale",
        ),
        LensField::CentreOfGravityAhead => {
            let edge = [
                at(-16.0, -RING_OUTER),
                at(-20.0, -RING_OUTER - 6.0),
                at(-12.0, -RING_OUTER - 6.0),
            ];
            part(scene, Role::Annotation, edge);
            along(
                scene,
                at(-16.0, -RING_OUTER - 6.0),
                at(0.0, -SHOULDER),
                BELOW - 6.0,
                name,
            );
        }
    }
}

/// A picture of the iris.
fn iris(scene: &mut Scene, z: f64, radius: f64) {
    let kind = LineType::ContinuousWide;
    line(scene, Role::Light, kind, at(z, -radius), at(z, radius));
}
