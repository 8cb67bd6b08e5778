//! The values of lens and body that rules and checks ask for, and how far each can be trusted.

use crate::document::{Choice, Design, FieldRef, PinHandling};
use crate::mount::{BodyField, LensField, Presence, Standing};

/// How far a value of a mating part can be trusted; `None` for a field that belongs to neither.
pub(super) fn standing_of(design: &Design, field: FieldRef) -> Option<Standing> {
    let (lens, body) = (&design.lens, &design.body);
    Some(match field {
        FieldRef::Lens(key) => lens.field(key).standing(),
        FieldRef::Body(key) => body.field(key).standing(),
        FieldRef::LensThread => lens.thread.standing(),
        FieldRef::BarrelAtInfinity => lens.barrel_at_infinity.standing(),
        FieldRef::BarrelAtCloseFocus => lens.barrel_at_close_focus.standing(),
        FieldRef::ApertureRing => looked_at(lens.aperture_ring),
        FieldRef::StopDownPin => looked_at(lens.stop_down_pin),
        FieldRef::Ears => body.ears.standing(),
        FieldRef::TwistHand => body.twist_hand.standing(),
        FieldRef::Springs => looked_at(body.springs),
        FieldRef::Stop => looked_at(body.stop),
        FieldRef::LockPin => looked_at(body.lock_pin),
        FieldRef::FreeDepth => body.free_depth.standing(),
        FieldRef::Obstacles => body.obstacles.standing(),
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
        | FieldRef::Pieces => return None,
    })
}

/// What one sees by looking is known as well as what one measures.
const fn looked_at(presence: Presence) -> Standing {
    match presence {
        Presence::Unknown => Standing::Unknown,
        Presence::Absent | Presence::Present => Standing::Measured,
    }
}

/// Every value that some check asks of these two parts: what a part does not have is not asked for.
pub(super) fn asked_for(design: &Design) -> Vec<FieldRef> {
    let mut fields = vec![
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
    fields.extend(lens_values(design).into_iter().map(FieldRef::Lens));
    fields.extend(body_values(design).into_iter().map(FieldRef::Body));
    fields
}

fn lens_values(design: &Design) -> Vec<LensField> {
    use LensField as Key;
    let mut keys = vec![
        Key::Register,
        Key::MaleThreadLength,
        Key::ThreadRunOut,
        Key::ShoulderFillet,
        Key::ShoulderDiameter,
        Key::FocalLength,
        Key::FNumber,
        Key::ExitPupilDistance,
        Key::Mass,
        Key::CentreOfGravityAhead,
    ];
    if design.lens.aperture_ring == Presence::Present {
        keys.extend([
            Key::ApertureRingInner,
            Key::ApertureRingOuter,
            Key::ApertureRingAhead,
        ]);
    }
    if design.lens.stop_down_pin == Presence::Present {
        keys.extend([Key::PinCircle, Key::PinDiameter]);
        match design.ring.pin {
            Choice::Set(PinHandling::LeftFree) => keys.push(Key::PinFree),
            Choice::Derived | Choice::Set(PinHandling::Pressed) => {
                keys.extend([Key::PinStoppedDown, Key::PinBottom, Key::PinForce]);
            }
        }
    }
    keys
}

fn body_values(design: &Design) -> Vec<BodyField> {
    use BodyField as Key;
    let body = &design.body;
    let mut keys = vec![
        Key::Register,
        Key::Throat,
        Key::SlotDiameter,
        Key::FlangeInner,
        Key::FlangeOuter,
        Key::EarFrontDepth,
        Key::EarThickness,
        Key::Twist,
        Key::SensorWidth,
        Key::SensorHeight,
        Key::IndexAngle,
    ];
    if body.springs == Presence::Present {
        keys.push(Key::SpringForce);
    }
    if body.stop == Presence::Present {
        keys.extend([Key::StopAngle, Key::StopRadius, Key::StopDepth]);
    }
    if body.lock_pin == Presence::Present {
        keys.extend([
            Key::LockPinCircle,
            Key::LockPinDiameter,
            Key::LockPinProtrusion,
            Key::LockPinAngle,
        ]);
    }
    keys
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::design;

    #[test]
    fn the_fixture_has_everything_that_is_asked_for() {
        let design = design();
        for field in asked_for(&design) {
            assert_eq!(
                standing_of(&design, field),
                Some(Standing::Measured),
                "{}",
                field.long_label()
            );
        }
    }

    #[test]
    fn what_a_part_does_not_have_is_not_asked_for() {
        let mut design = design();
        assert!(asked_for(&design).contains(&FieldRef::Lens(LensField::PinBottom)));
        design.lens.stop_down_pin = Presence::Absent;
        design.body.lock_pin = Presence::Absent;
        let asked = asked_for(&design);
        assert!(!asked.contains(&FieldRef::Lens(LensField::PinBottom)));
        assert!(!asked.contains(&FieldRef::Body(BodyField::LockPinAngle)));
        assert!(asked.contains(&FieldRef::Lens(LensField::Register)));
    }
}
