//! The infinity trial: an object at a known distance, the lens on its ring, and the scale that is read.

use super::marks::{along, at, axis, line, part, pointed, words};
use crate::drawing::{LineType, Role, Scene};

const OBJECT: f64 = -70.0;
const FRONT: f64 = 8.0;
const SEAT: f64 = 36.0;
const RING: f64 = 41.0;
const IMAGE: f64 = 62.0;
const HALF: f64 = 15.0;

/// The sketch.
#[must_use]
pub fn trial_sketch() -> Scene {
    let mut scene = Scene::view();
    axis(&mut scene, OBJECT - 6.0, IMAGE + 8.0);
    for step in [-12.0, -6.0, 0.0, 6.0, 12.0] {
        let wide = LineType::ContinuousWide;
        line(
            &mut scene,
            Role::Body,
            wide,
            at(OBJECT - 4.0, step - 2.5),
            at(OBJECT + 4.0, step + 2.5),
        );
    }
    words(&mut scene, at(OBJECT, -22.0), "fine detail");
    part(
        &mut scene,
        Role::Lens,
        [
            at(FRONT, -HALF),
            at(FRONT, HALF),
            at(SEAT, HALF),
            at(SEAT, -HALF),
        ],
    );
    part(
        &mut scene,
        Role::Ring,
        [
            at(SEAT, -20.0),
            at(SEAT, 20.0),
            at(RING, 20.0),
            at(RING, -20.0),
        ],
    );
    part(
        &mut scene,
        Role::Body,
        [
            at(RING, -26.0),
            at(RING, 26.0),
            at(IMAGE + 4.0, 26.0),
            at(IMAGE + 4.0, -26.0),
        ],
    );
    let image = LineType::ContinuousWide;
    line(
        &mut scene,
        Role::Highlight,
        image,
        at(IMAGE, -11.0),
        at(IMAGE, 11.0),
    );
    for mark in 0..5 {
        let x = FRONT + 6.0 + 4.0 * f64::from(mark);
        let narrow = LineType::ContinuousNarrow;
        line(
            &mut scene,
            Role::Lens,
            narrow,
            at(x, HALF),
            at(x, HALF - 4.0),
        );
    }
    pointed(
        &mut scene,
        at(FRONT + 14.0, HALF - 2.0),
        at(-6.0, 34.0),
        "scale when sharp",
    );
    along(
        &mut scene,
        at(OBJECT, -14.0),
        at(IMAGE, -11.0),
        -36.0,
        "object distance",
    );
    scene
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_things_that_are_asked_for_are_marked() {
        let scene = trial_sketch();
        let asked = scene
            .items
            .iter()
            .filter(|item| item.pen.role == Role::Highlight);
        assert!(asked.count() > 4);
        assert!(scene.bounds().unwrap().width() < 190.0);
    }
}
