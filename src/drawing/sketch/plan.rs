//! The body from ahead, as the lens sees it: clock angles, ears, sensor.

use super::marks::{across, along, at, clockwise, line, part, pointed, words};
use crate::drawing::{LineType, Path, Role, Scene, Shape};
use crate::geometry::{Point, Side, plan_point, seen_from};
use crate::mount::BodyField;

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    Number(BodyField),
    Ears,
    Hand,
    Obstacles,
}

pub(super) const THROAT: f64 = 22.0;
pub(super) const SLOT: f64 = 27.0;
pub(super) const OUTER: f64 = 40.0;
const PIN: f64 = 34.0;
const PIN_DEG: f64 = 150.0;
const STOP_DEG: f64 = 112.0;
const INDEX_DEG: f64 = 24.0;
pub(super) const TWIST_DEG: f64 = 60.0;
/// Start and extent of each ear.
pub(super) const EARS: [(f64, f64); 3] = [(40.0, 55.0), (165.0, 60.0), (290.0, 50.0)];
const SENSOR: (f64, f64) = (16.0, 11.0);
/// Radii of the dimension lines.
const LINE: f64 = 52.0;
const NEAR_LINE: f64 = 46.0;

pub(super) fn placed(radius: f64, clock_deg: f64) -> Point {
    plan_point(radius, seen_from(Side::Lens, clock_deg.to_radians()))
}

/// The body from ahead with what is asked for marked.
pub(super) fn sketch(asked: Asked) -> Scene {
    let mut scene = Scene::view();
    draw_body(&mut scene);
    words(
        &mut scene,
        at(0.0, -OUTER - 8.0),
        "seen from the lens side, 12 o'clock is 0°",
    );
    match asked {
        Asked::Number(key) => number(&mut scene, key),
        Asked::Ears => {
            let (start, extent) = EARS[0];
            clockwise(&mut scene, 0.0, start, NEAR_LINE, SLOT, "start");
            clockwise(&mut scene, start, extent, LINE, SLOT, "extent");
        }
        Asked::Hand => clockwise(
            &mut scene,
            0.0,
            TWIST_DEG,
            LINE,
            OUTER,
            "which way does it lock?",
        ),
        Asked::Obstacles => {
            let block = [(60.0, 120.0), (52.0, 120.0), (52.0, 100.0), (60.0, 100.0)];
            part(
                &mut scene,
                Role::Pin,
                block.map(|(radius, clock)| placed(radius, clock)),
            );
            clockwise(&mut scene, 0.0, 100.0, NEAR_LINE, OUTER, "from");
            let radius = placed(52.0, 110.0);
            pointed(&mut scene, radius, at(62.0, -40.0), "radii and depths");
        }
    }
    scene
}

pub(super) fn draw_body(scene: &mut Scene) {
    let middle = at(0.0, 0.0);
    for (radius_mm, line) in [
        (OUTER, LineType::ContinuousWide),
        (SLOT, LineType::ContinuousNarrow),
    ] {
        let centre = middle;
        scene.draw(Shape::Circle { centre, radius_mm }, line, Role::Body);
    }
    for (start, extent) in EARS {
        let stretch = |radius, from: f64, by: f64| Path::arc(middle, radius, 90.0 - from, -by);
        let inner = stretch(THROAT, start, extent);
        scene.draw(Shape::Path(inner), LineType::ContinuousWide, Role::Body);
        for angle in [start, start + extent] {
            let kind = LineType::ContinuousWide;
            line(
                scene,
                Role::Body,
                kind,
                placed(THROAT, angle),
                placed(SLOT, angle),
            );
        }
    }
    let dash = LineType::LongDashDotNarrow;
    line(
        scene,
        Role::Axis,
        dash,
        at(0.0, -OUTER - 3.0),
        at(0.0, OUTER + 8.0),
    );
    line(
        scene,
        Role::Axis,
        dash,
        at(-OUTER - 3.0, 0.0),
        at(OUTER + 3.0, 0.0),
    );
    let pin = Shape::Circle {
        centre: placed(PIN, PIN_DEG),
        radius_mm: 1.5,
    };
    scene.draw(pin, LineType::ContinuousWide, Role::Pin);
    let kind = LineType::ContinuousWide;
    line(
        scene,
        Role::Pin,
        kind,
        placed(SLOT - 3.0, STOP_DEG),
        placed(SLOT, STOP_DEG),
    );
    let mark = [
        placed(OUTER - 4.0, INDEX_DEG),
        placed(OUTER, INDEX_DEG - 3.0),
        placed(OUTER, INDEX_DEG + 3.0),
    ];
    part(scene, Role::Annotation, mark);
}

fn number(scene: &mut Scene, key: BodyField) {
    let name = key.label();
    let (half_width, half_height) = SENSOR;
    match key {
        BodyField::Twist => {
            clockwise(scene, INDEX_DEG, TWIST_DEG, LINE, OUTER, name);
            words(scene, placed(OUTER + 4.0, INDEX_DEG - 6.0), "entry");
        }
        BodyField::StopAngle => clockwise(scene, 0.0, STOP_DEG, LINE, SLOT, name),
        BodyField::LockPinAngle => clockwise(scene, 0.0, PIN_DEG, LINE, PIN, name),
        BodyField::IndexAngle => clockwise(scene, 0.0, INDEX_DEG, LINE, OUTER, name),
        BodyField::SensorWidth => {
            sensor(scene);
            let y = -half_height;
            along(scene, at(-half_width, y), at(half_width, y), y - 6.0, name);
        }
        BodyField::SensorHeight => {
            sensor(scene);
            let x = half_width;
            across(
                scene,
                at(x, -half_height),
                at(x, half_height),
                x + 30.0,
                name,
            );
        }
        BodyField::PixelPitch => {
            sensor(scene);
            pointed(
                scene,
                at(6.0, 4.0),
                at(30.0, 48.0),
                "width over pixels across",
            );
        }
        BodyField::Register
        | BodyField::Throat
        | BodyField::SlotDiameter
        | BodyField::FlangeInner
        | BodyField::FlangeOuter
        | BodyField::EarFrontDepth
        | BodyField::EarThickness
        | BodyField::SpringCircle
        | BodyField::SpringForce
        | BodyField::StopRadius
        | BodyField::StopDepth
        | BodyField::LockPinCircle
        | BodyField::LockPinDiameter
        | BodyField::LockPinProtrusion => pointed(scene, placed(OUTER, 45.0), at(46.0, 48.0), name),
    }
}

fn sensor(scene: &mut Scene) {
    let (x, y) = SENSOR;
    part(
        scene,
        Role::Body,
        [at(-x, -y), at(x, -y), at(x, y), at(-x, y)],
    );
}
