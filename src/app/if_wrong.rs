//! What happens where a value is wrong: one sentence for each value of lens, body and ring.
//!
//! Common practice, no source; the checks give the numbers.

use crate::checks::FindingKey;
use crate::document::{FieldRef, LimitKey, RingKey};
use crate::mount::{BodyField, LensField};

/// What happens where this field is wrong.
#[must_use]
pub fn if_wrong(field: FieldRef) -> &'static str {
    match field {
        FieldRef::Lens(key) => lens(key),
        FieldRef::Body(key) => body(key),
        FieldRef::Ring(key) => ring(key),
        FieldRef::Limit(key) => limit(key),
        FieldRef::LensThread => {
            "a wrong thread cuts scrap, or starts and jams after a turn and spoils the lens"
        }
        FieldRef::BarrelAtInfinity => {
            "the rear barrel strikes the lip while the lens is screwed in"
        }
        FieldRef::BarrelAtCloseFocus => {
            "the barrel strikes the lip only when it is focused close, when nobody looks for it"
        }
        FieldRef::ApertureRing => "a ring that nobody reckoned with is jammed by the flange",
        FieldRef::StopDownPin => {
            "without the right answer the iris stays open, or the pin carries the lens off its seat"
        }
        FieldRef::Ears => {
            "lugs in the wrong places do not drop in, drop in twice, or let the ring fall out"
        }
        FieldRef::TwistHand => {
            "the ring locks the wrong way, and the lens unscrews when it is taken off"
        }
        FieldRef::Springs => {
            "counted on without being there, the ring rattles by the play of the groove"
        }
        FieldRef::Stop => "the ring turns past its lock, or stops short of it",
        FieldRef::LockPin => {
            "without its hole the pin holds the ring off the flange, or the ring never locks"
        }
        FieldRef::FreeDepth => {
            "the nose or the lip meets the mirror or the shutter: the costliest fault of all"
        }
        FieldRef::Obstacles => {
            "ring or lens strike contacts, grip or finder while the ring is turned to lock"
        }
        FieldRef::Lugs => {
            "too wide they do not enter, too narrow they hold too little, wrongly turned the mark is off"
        }
        FieldRef::SeatKind => {
            "a seat that cannot stand where it is asked for leaves no ring, or a lens that never reaches infinity"
        }
        FieldRef::PinHandling => "the iris does not close when it should, or never opens",
        FieldRef::Trim => {
            "too much lets infinity lie before the end of the scale; the wrong sign loses it"
        }
        FieldRef::Finish => {
            "a coating that was not counted makes the ring thick by twice its build-up, and infinity is gone"
        }
        FieldRef::ThreadHold => "the lens turns in its thread instead of the ring in its bayonet",
        FieldRef::Cutter => {
            "the flanks it leaves are others than those judged, and the lugs jam or hold too little"
        }
        FieldRef::Material => "speeds, strength and mass are worked for another metal",
        FieldRef::Clocking => "the lens's mark comes to rest somewhere else than at the top",
        FieldRef::Pieces => {
            "one piece cannot be clocked after threading; two pieces need a wall and screws that hold"
        }
    }
}

const fn lens(key: LensField) -> &'static str {
    match key {
        LensField::Register => {
            "the seat stands wrong by as much: too far out and infinity is lost, too far in and the scale is off"
        }
        LensField::MaleThreadLength => {
            "measured short, the thread bottoms on the lip before the shoulder meets the seat"
        }
        LensField::ThreadRunOut => {
            "the last, incomplete turns ride up in the ring's thread and the shoulder does not seat"
        }
        LensField::ShoulderFillet => {
            "the fillet sits on the edge of the thread mouth and tilts the lens"
        }
        LensField::ShoulderDiameter => {
            "the shoulder overhangs its boss, or does not enter its counterbore"
        }
        LensField::ApertureRingInner => "the boss rubs inside the ring and it no longer turns",
        LensField::ApertureRingOuter => "fingers and grips strike the flange",
        LensField::ApertureRingAhead => {
            "measured too large, the plate clamps the aperture ring when the lens is screwed home"
        }
        LensField::PinCircle => "the pin misses the lip, or the lip cuts off light for nothing",
        LensField::PinDiameter => "the lip covers the pin by half, and a worn pin slips off",
        LensField::PinFree => {
            "an annulus that is too shallow presses a pin that should be left free"
        }
        LensField::PinStoppedDown => "the lip stops too soon and the iris stays partly open",
        LensField::PinBottom => {
            "the lip stands too far forward, and the pin at its bottom carries the lens off its seat"
        }
        LensField::PinForce => "the lip bends more than was reckoned",
        LensField::FocalLength => {
            "depth of focus, and with it the tolerance of the seat, is worked for another lens"
        }
        LensField::FNumber => {
            "the ray cone is too narrow and the bores cut off the corners, or the tolerance is too wide"
        }
        LensField::ExitPupilDistance => "vignetting by lip and rear bore is judged wrongly",
        LensField::PupilMagnification => {
            "the cone toward the sensor is judged too wide or too narrow"
        }
        LensField::Mass => "plate, lug and thread are judged for a lighter lens than they carry",
        LensField::CentreOfGravityAhead => "the moment on plate and lugs is judged too small",
    }
}

const fn body(key: BodyField) -> &'static str {
    match key {
        BodyField::Register => {
            "the seat stands wrong by as much: infinity is lost, or the distance scale is off"
        }
        BodyField::Throat => {
            "measured large, the spigot does not enter; measured small, it is thin and loose"
        }
        BodyField::SlotDiameter => {
            "the lugs do not pass the slots, or they reach too little behind the ears"
        }
        BodyField::FlangeInner => "the flange bears on less face than was judged",
        BodyField::FlangeOuter => {
            "the flange hangs over the edge, or leaves the face and the lock pin uncovered"
        }
        BodyField::EarFrontDepth => {
            "the groove stands off the ears: the ring jams before it is home, or rattles"
        }
        BodyField::EarThickness => {
            "a groove too narrow never locks; too wide, the play goes into focus and tilt"
        }
        BodyField::SpringCircle => "the springs press beside the lugs",
        BodyField::SpringForce => {
            "springs that are weaker than stated leave the lens hanging with a tilt"
        }
        BodyField::Twist => {
            "the marks do not meet when the ring is locked, and the lock hole misses its pin"
        }
        BodyField::StopAngle => "a lug meets the stop too early or not at all",
        BodyField::StopRadius => {
            "the stop is passed by, or meets metal that is not there to meet it"
        }
        BodyField::StopDepth => "the stop catches the wrong face of the lug",
        BodyField::LockPinCircle => "the hole lies beside the pin and the ring never locks",
        BodyField::LockPinDiameter => {
            "the pin does not enter its hole, or the ring turns by the play"
        }
        BodyField::LockPinProtrusion => "a hole too shallow holds the ring off the flange",
        BodyField::LockPinAngle => "the pin drops in before or after the lugs are home",
        BodyField::IndexAngle => "the ring's mark stands wrong and shows the wrong way to enter",
        BodyField::SensorWidth | BodyField::SensorHeight => {
            "the corner of the image is nearer or farther than judged: light and tilt come out wrong"
        }
        BodyField::PixelPitch => "sharpness is judged finer or coarser than the sensor sees it",
    }
}

const fn ring(key: RingKey) -> &'static str {
    match key {
        RingKey::SeatHeight => {
            "0.02 too thick and a fast lens misses infinity; too thin and the distance scale is off"
        }
        RingKey::PlateThickness => {
            "too thin it springs in turning and bends under the lens; too thick it clamps the aperture ring"
        }
        RingKey::GrooveRootDiameter => {
            "too large it binds in the throat, too small the neck is weak"
        }
        RingKey::NoseDiameter => "too large it does not enter between the ears",
        RingKey::LugDiameter => {
            "too large the lugs do not pass the slots, too small they hold by a sliver"
        }
        RingKey::GrooveWidth => {
            "too narrow the ring does not turn to lock; too wide the play goes into focus and tilt"
        }
        RingKey::LugThickness => {
            "too thin the lugs shear, too thick they meet what lies behind the ears"
        }
        RingKey::LugLeadIn => {
            "without it the lugs catch on the ears; too large it eats the lug's face"
        }
        RingKey::ThreadChamfer => {
            "too small the fillet of the lens rides on the edge and the shoulder does not seat"
        }
        RingKey::LipFaceDepth => {
            "too near the seat the pin carries the lens off it; too far the iris stays open"
        }
        RingKey::ReliefWidth => {
            "too narrow there is no time to stop the tool before it meets the lip"
        }
        RingKey::ReliefDiameter => {
            "too small the tool does not run free of the thread; too large the wall over it is thin"
        }
        RingKey::ThreadLength => "too few turns let the lens tilt and the thread strip",
        RingKey::LipBore => {
            "too small it cuts off light or strikes the barrel; too large the pin slips off the lip"
        }
        RingKey::LipThickness => "too thin it bends under the pin and tears in turning",
        RingKey::SpigotLength => {
            "too long it meets the mirror; too short the lugs have no metal behind them"
        }
        RingKey::RearBore => "too small it shades the corners; too large the nose has no wall",
        RingKey::AnnulusInner | RingKey::AnnulusOuter => {
            "too narrow the annulus presses a pin that should be left free"
        }
        RingKey::AnnulusDepth => "too shallow the pin is pressed; too deep the floor is thin",
        RingKey::SeatDiameter => {
            "too small the shoulder overhangs; too large it meets the aperture ring"
        }
        RingKey::FlangeDiameter => {
            "too large it jams the aperture ring; too small it uncovers the lock pin"
        }
        RingKey::LockHoleDiameter => {
            "too small the pin does not drop in, too large the ring rattles round"
        }
        RingKey::LockHoleDepth => "too shallow the pin holds the ring off the flange",
        RingKey::LockHoleCircle => "the hole lies beside the pin and the ring never locks",
        RingKey::LockHoleAngle => "the ring locks before or after the lugs are home",
        RingKey::IndexMarkAngle => "the mark shows the wrong way to enter the body",
        RingKey::EdgeBreak => {
            "sharp edges cut fingers and shave the body's flange; broken too far they eat the faces"
        }
    }
}

/// A limit that judges, or an allowance that the rules work with.
fn limit(key: LimitKey) -> &'static str {
    let label = key.label();
    if label.contains("clash") || label.contains("caution") || label.contains("at most") {
        "too easy, and a ring with this fault is passed; too strict, and rings that would do are flagged"
    } else {
        "the rules work with it: another value moves the dimensions that follow it, too small until parts bind, too large until they are loose or weak"
    }
}

/// What happens at the bench or in the hand where this finding is a clash that nobody heeds.
#[must_use]
pub const fn if_unheeded(key: FindingKey) -> &'static str {
    match key {
        FindingKey::Register => "the lens does not reach infinity, or its distance scale is wrong",
        FindingKey::AssumedValues => {
            "the ring fits a mating part that nobody has measured, and perhaps no other"
        }
        FindingKey::LipThickness => "the lip bends under the pin, or tears while it is turned",
        FindingKey::PinLanding => "the pin slips off the lip and the iris stays open or jams",
        FindingKey::PinTravel => {
            "the iris does not close, or the pin carries the lens off its seat"
        }
        FindingKey::ThreadBottoming => {
            "the lens stops on the end of its thread instead of its shoulder: loose, tilted, too far out"
        }
        FindingKey::ThreadEngagement => {
            "the lens tilts while it is screwed in, and the thread strips"
        }
        FindingKey::Relief => "the threading tool cannot be stopped before it meets the lip",
        FindingKey::ThinWall => {
            "the wall springs away from the tool, breaks through, or dents in use"
        }
        FindingKey::FlangeStrength => {
            "the plate bends when the camera is set down hard, and infinity goes with it"
        }
        FindingKey::LugStrength => "a lug bends or shears and the lens falls",
        FindingKey::ThreadStrength => "the thread pulls out and the lens falls",
        FindingKey::ApertureRing => "the aperture ring does not turn, or grinds on the flange",
        FindingKey::LensBarrel => "the barrel strikes the ring, if not at infinity then close up",
        FindingKey::Throat => "the ring does not enter the body",
        FindingKey::EarRoom => "the ring does not turn to its lock, or it rattles in it",
        FindingKey::NoseDepth => "the mirror or the shutter strikes metal: a broken body",
        FindingKey::Obstacles => {
            "the ring stops half way against contacts, grip or finder, and scratches them"
        }
        FindingKey::FlangeBearing => {
            "the flange rocks on the body, or light and dust come in past the lock pin"
        }
        FindingKey::SeatBearing => "the narrow seat is bruised by the shoulder, and the lens tilts",
        FindingKey::ThreadHand => {
            "taking the ring off leaves it on the camera and the lens in the hand"
        }
        FindingKey::LensStart => {
            "the shoulder rides on fillet or run-out and never reaches its seat"
        }
        FindingKey::LugEntry => "the lugs do not drop through the slots",
        FindingKey::LugEngagement => {
            "the ears hold the ring by a sliver, and it comes off under a knock"
        }
        FindingKey::LugStop => "the ring stops before it is locked, or turns past",
        FindingKey::SingleEntry => {
            "the ring goes in the wrong way round and locks nowhere, or unlocks by itself"
        }
        FindingKey::LockHole => "the pin never drops in, or it tears out of a thin rim",
        FindingKey::Vignetting => "the corners of every picture are dark",
        FindingKey::FocusTolerance => {
            "of rings made to this drawing too many miss infinity, perhaps yours"
        }
        FindingKey::Tilt => "one side of the picture is soft",
        FindingKey::IndexMark => "the scales of the lens stand on its side or underneath",
        FindingKey::ToolAccess => {
            "the tool does not fit where it is to cut, which shows when the part is in the chuck"
        }
        FindingKey::Chucking => {
            "the ring is turned round while it is squeezed, and is three-cornered when let go"
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Words enough to say something.
    fn says_something(text: &str) -> bool {
        text.split_whitespace().count() >= 5
    }

    #[test]
    fn every_value_says_what_happens_if_it_is_wrong() {
        let lens = LensField::ALL.iter().map(|key| FieldRef::Lens(*key));
        let body = BodyField::ALL.iter().map(|key| FieldRef::Body(*key));
        let ring = RingKey::ALL.iter().map(|key| FieldRef::Ring(*key));
        let limits = LimitKey::ALL.iter().map(|key| FieldRef::Limit(*key));
        for field in lens.chain(body).chain(ring).chain(limits) {
            assert!(says_something(if_wrong(field)), "{}", field.label());
        }
    }

    #[test]
    fn every_finding_says_what_happens_if_it_is_not_heeded() {
        let mut all: Vec<&str> = FindingKey::ALL
            .iter()
            .map(|key| if_unheeded(*key))
            .collect();
        assert!(all.iter().all(|text| says_something(text)));
        all.sort_unstable();
        all.dedup();
        assert_eq!(
            all.len(),
            FindingKey::ALL.len(),
            "each has words of its own"
        );
    }
}
