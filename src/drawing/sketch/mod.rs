//! Sketches of what to measure: a lens or a body of no one's, with the asked size marked in colour.
//!
//! Proportions are chosen to be read, not to be true; nothing of a design enters them.

mod body;
mod explained;
mod lens;
mod marks;
mod plan;
mod register;
mod trial;

pub use explained::Topic;
pub use register::register_sketch;
pub use trial::trial_sketch;

use crate::document::FieldRef;
use crate::drawing::Scene;
use crate::mount::BodyField;

/// The sketch that shows where a value of lens or body is measured; none for what is not measured on them.
#[must_use]
pub fn sketch_of(field: FieldRef) -> Option<Scene> {
    match field {
        FieldRef::Lens(key) => Some(lens::sketch(lens::Asked::Number(key))),
        FieldRef::LensThread => Some(lens::sketch(lens::Asked::Thread)),
        FieldRef::BarrelAtInfinity => Some(lens::sketch(lens::Asked::BarrelAtInfinity)),
        FieldRef::BarrelAtCloseFocus => Some(lens::sketch(lens::Asked::BarrelAtCloseFocus)),
        FieldRef::ApertureRing => Some(lens::sketch(lens::Asked::ApertureRing)),
        FieldRef::StopDownPin => Some(lens::sketch(lens::Asked::Pin)),
        FieldRef::Body(key) => Some(if is_seen_from_ahead(key) {
            plan::sketch(plan::Asked::Number(key))
        } else {
            body::sketch(body::Asked::Number(key))
        }),
        FieldRef::Ears => Some(plan::sketch(plan::Asked::Ears)),
        FieldRef::TwistHand => Some(plan::sketch(plan::Asked::Hand)),
        FieldRef::Obstacles => Some(plan::sketch(plan::Asked::Obstacles)),
        FieldRef::Springs => Some(body::sketch(body::Asked::Springs)),
        FieldRef::Stop => Some(body::sketch(body::Asked::Stop)),
        FieldRef::LockPin => Some(body::sketch(body::Asked::LockPin)),
        FieldRef::FreeDepth => Some(body::sketch(body::Asked::FreeDepth)),
        FieldRef::Ring(_)
        | FieldRef::Limit(_)
        | FieldRef::Lugs
        | FieldRef::SeatKind
        | FieldRef::PinHandling
        | FieldRef::Trim
        | FieldRef::Finish
        | FieldRef::ThreadHold
        | FieldRef::Cutter
        | FieldRef::Material
        | FieldRef::Clocking
        | FieldRef::Pieces => None,
    }
}

/// Angles and the sensor are looked at from ahead; everything else along the axis.
const fn is_seen_from_ahead(key: BodyField) -> bool {
    match key {
        BodyField::Twist
        | BodyField::StopAngle
        | BodyField::LockPinAngle
        | BodyField::IndexAngle
        | BodyField::SensorWidth
        | BodyField::SensorHeight
        | BodyField::PixelPitch => true,
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
        | BodyField::LockPinProtrusion => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Role, Shape};
    use crate::mount::LensField;

    fn asked(scene: &Scene) -> Vec<&Shape> {
        let is_asked = |item: &&crate::drawing::Item| item.pen.role == Role::Highlight;
        scene
            .items
            .iter()
            .filter(is_asked)
            .map(|item| &item.shape)
            .collect()
    }

    #[test]
    fn every_value_of_lens_and_body_is_marked_and_named_in_its_sketch() {
        let lens = LensField::ALL.iter().map(|key| FieldRef::Lens(*key));
        let body = BodyField::ALL.iter().map(|key| FieldRef::Body(*key));
        let others = [
            FieldRef::LensThread,
            FieldRef::BarrelAtInfinity,
            FieldRef::BarrelAtCloseFocus,
            FieldRef::ApertureRing,
            FieldRef::StopDownPin,
            FieldRef::Ears,
            FieldRef::TwistHand,
            FieldRef::Springs,
            FieldRef::Stop,
            FieldRef::LockPin,
            FieldRef::FreeDepth,
            FieldRef::Obstacles,
        ];
        for field in lens.chain(body).chain(others) {
            let scene = sketch_of(field).unwrap();
            let marks = asked(&scene);
            assert!(marks.len() >= 2, "{}: nothing is marked", field.label());
            let has_words = marks.iter().any(|shape| matches!(shape, Shape::Text(_)));
            assert!(has_words, "{}: no words", field.label());
            let size = scene.bounds().unwrap();
            assert!(
                size.width() < 190.0 && size.height() < 160.0,
                "{}",
                field.label()
            );
        }
    }

    #[test]
    fn what_is_set_on_the_ring_has_no_sketch() {
        assert!(sketch_of(FieldRef::Lugs).is_none() && sketch_of(FieldRef::Trim).is_none());
    }
}
