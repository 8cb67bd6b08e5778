//! The body cut along its axis, flange to the left at 0, sensor to the right.

use super::marks::{across, along, at, axis, diameter, line, part, pointed, turned_part, words};
use crate::drawing::{LineType, Role, Scene};
use crate::mount::BodyField;

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    Number(BodyField),
    Springs,
    Stop,
    LockPin,
    FreeDepth,
}

const THROAT: f64 = 20.0;
const SLOT: f64 = 25.0;
const INNER: f64 = 27.5;
const OUTER: f64 = 40.0;
const STEP: f64 = 1.5;
const EAR: (f64, f64) = (4.0, 8.0);
const BACK: f64 = 14.0;
const SPRING: (f64, f64) = (9.0, 10.5);
const SPRING_RADIUS: f64 = 23.0;
const STOP: (f64, f64) = (6.5, 11.0);
const STOP_RADIUS: f64 = 22.5;
const PIN: f64 = 34.0;
const PIN_HALF: f64 = 1.2;
const PIN_OUT: f64 = -4.0;
const IMAGE: f64 = 60.0;
const IMAGE_HALF: f64 = 14.0;
/// Places of dimension lines.
const ABOVE: f64 = 50.0;
const LEFT: f64 = -16.0;
const RIGHT: f64 = 30.0;
const WITHIN: f64 = -8.0;

/// The body with what is asked for marked.
pub(super) fn sketch(asked: Asked) -> Scene {
    let mut scene = Scene::view();
    draw_body(&mut scene, asked);
    match asked {
        Asked::Number(key) => number(&mut scene, key),
        Asked::Springs => pointed(
            &mut scene,
            at(SPRING.1, SPRING_RADIUS),
            at(26.0, 34.0),
            "do springs pull behind the ears?",
        ),
        Asked::Stop => pointed(
            &mut scene,
            at(STOP.1, STOP_RADIUS),
            at(26.0, 34.0),
            "does something end the turn?",
        ),
        Asked::LockPin => pointed(
            &mut scene,
            at(PIN_OUT, PIN),
            at(-10.0, ABOVE),
            "is there a sprung pin?",
        ),
        Asked::FreeDepth => {
            along(&mut scene, at(0.0, 12.0), at(34.4, 12.0), 12.0, "depth");
            across(
                &mut scene,
                at(34.4, 0.0),
                at(34.4, 12.0),
                44.0,
                "at this radius",
            );
        }
    }
    scene
}

fn draw_body(scene: &mut Scene, asked: Asked) {
    axis(scene, -10.0, IMAGE + 6.0);
    let body = [
        (0.0, INNER),
        (0.0, OUTER),
        (BACK, OUTER),
        (BACK, SLOT),
        (STEP, SLOT),
        (STEP, INNER),
    ];
    turned_part(scene, Role::Body, &body);
    let through_the_slots = asked == Asked::Number(BodyField::SlotDiameter);
    if !through_the_slots {
        let ear = [
            (EAR.0, THROAT),
            (EAR.0, SLOT),
            (EAR.1, SLOT),
            (EAR.1, THROAT),
        ];
        turned_part(scene, Role::Body, &ear);
    }
    fittings(scene, asked);
    mirror(scene);
    let kind = LineType::ContinuousWide;
    line(
        scene,
        Role::Body,
        kind,
        at(IMAGE, -IMAGE_HALF),
        at(IMAGE, IMAGE_HALF),
    );
    words(scene, at(IMAGE, -IMAGE_HALF - 5.0), "sensor");
}

/// Springs, stop and lock pin, each where it is asked about; the pin always.
fn fittings(scene: &mut Scene, asked: Asked) {
    let rectangle =
        |z: (f64, f64), r: (f64, f64)| [at(z.0, r.0), at(z.0, r.1), at(z.1, r.1), at(z.1, r.0)];
    match asked {
        Asked::Springs | Asked::Number(BodyField::SpringCircle | BodyField::SpringForce) => {
            let spring = [
                (SPRING.0, SPRING_RADIUS - 1.0),
                (SPRING.0, SLOT),
                (SPRING.1, SLOT),
                (SPRING.1, SPRING_RADIUS - 1.0),
            ];
            turned_part(scene, Role::Pin, &spring);
        }
        Asked::Stop | Asked::Number(BodyField::StopRadius | BodyField::StopDepth) => {
            part(scene, Role::Pin, rectangle(STOP, (STOP_RADIUS, SLOT)));
        }
        Asked::Number(_) | Asked::LockPin | Asked::FreeDepth => {}
    }
    let pin = rectangle((PIN_OUT, BACK), (PIN - PIN_HALF, PIN + PIN_HALF));
    part(scene, Role::Pin, pin);
}

/// The mirror with its sweep ahead of the sensor.
fn mirror(scene: &mut Scene) {
    let kind = LineType::ContinuousWide;
    line(scene, Role::Hidden, kind, at(30.0, 18.0), at(52.0, -12.0));
    words(scene, at(50.0, 8.0), "mirror");
}

fn number(scene: &mut Scene, key: BodyField) {
    let name = key.label();
    match key {
        BodyField::Register => along(scene, at(0.0, OUTER), at(IMAGE, IMAGE_HALF), ABOVE, name),
        BodyField::Throat => diameter(scene, EAR.0, THROAT, LEFT, name),
        BodyField::SlotDiameter => diameter(scene, STEP, SLOT, LEFT, name),
        BodyField::FlangeInner => diameter(scene, 0.0, INNER, LEFT, name),
        BodyField::FlangeOuter => diameter(scene, 0.0, OUTER, LEFT, name),
        BodyField::EarFrontDepth => {
            along(scene, at(0.0, -THROAT), at(EAR.0, -THROAT), WITHIN, name);
        }
        BodyField::EarThickness => {
            along(scene, at(EAR.0, -THROAT), at(EAR.1, -THROAT), WITHIN, name);
        }
        BodyField::SpringCircle => diameter(scene, SPRING.1, SPRING_RADIUS, RIGHT, name),
        BodyField::SpringForce => pointed(scene, at(SPRING.0, SPRING_RADIUS), at(26.0, 32.0), name),
        BodyField::StopRadius => {
            across(scene, at(STOP.1, 0.0), at(STOP.1, STOP_RADIUS), RIGHT, name);
        }
        BodyField::StopDepth => along(
            scene,
            at(0.0, STOP_RADIUS),
            at(STOP.0, STOP_RADIUS),
            8.0,
            name,
        ),
        BodyField::LockPinCircle => {
            line(
                scene,
                Role::Axis,
                LineType::LongDashDotNarrow,
                at(-8.0, -PIN),
                at(BACK, -PIN),
            );
            diameter(scene, PIN_OUT, PIN, LEFT, name);
        }
        BodyField::LockPinDiameter => across(
            scene,
            at(PIN_OUT, PIN - PIN_HALF),
            at(PIN_OUT, PIN + PIN_HALF),
            LEFT,
            name,
        ),
        BodyField::LockPinProtrusion => along(scene, at(PIN_OUT, PIN), at(0.0, OUTER), ABOVE, name),
        BodyField::Twist
        | BodyField::StopAngle
        | BodyField::LockPinAngle
        | BodyField::IndexAngle
        | BodyField::SensorWidth
        | BodyField::SensorHeight
        | BodyField::PixelPitch => pointed(scene, at(IMAGE, 0.0), at(IMAGE - 14.0, ABOVE), name),
    }
}
