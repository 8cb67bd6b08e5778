//! What each rule takes for granted: where that does not hold, its dimension is wrong.

use crate::document::RingKey;

/// What must be so for the rule of `key` to be right, as the end of a sentence that begins with "if".
#[must_use]
pub(super) const fn of(key: RingKey) -> &'static str {
    match key {
        RingKey::SeatHeight => {
            "both registers are those of these very parts, and a cover glass is counted in the body's"
        }
        RingKey::PlateThickness => "the plate carries the lens without a rib",
        RingKey::GrooveRootDiameter | RingKey::NoseDiameter => {
            "the throat is round and its least diameter was measured"
        }
        RingKey::LugDiameter => "the slots are cut to one diameter all round",
        RingKey::GrooveWidth => "all ears stand at one depth and are equally thick",
        RingKey::LugThickness => "nothing but what was measured stands behind the ears",
        RingKey::LugLeadIn => "the body's ears have a lead-in or broken edges of their own",
        RingKey::ThreadChamfer => "fillet and run-out at the lens shoulder were measured",
        RingKey::LipFaceDepth => {
            "the pin's two protrusions were measured from the seat and not from the thread's end"
        }
        RingKey::ReliefWidth => {
            "the threading tool can be stopped in this width at the threading speed"
        }
        RingKey::ReliefDiameter => "the threading tool cuts no deeper than the major diameter",
        RingKey::ThreadLength => {
            "the male thread is as long as was measured, its run-out counted in"
        }
        RingKey::LipBore => {
            "the barrel grows no wider between the two focus ends, and the pin stands upright"
        }
        RingKey::LipThickness => "the pin's force is that of one finger",
        RingKey::SpigotLength => {
            "the free depth was measured with the mirror moved through its whole sweep"
        }
        RingKey::RearBore => "the exit pupil is a round disc on the axis, lens at infinity",
        RingKey::AnnulusInner | RingKey::AnnulusOuter => "the pin stands upright on its circle",
        RingKey::AnnulusDepth => "the pin was measured untouched, at the widest stop",
        RingKey::SeatDiameter => "the shoulder is flat out to its edge",
        RingKey::FlangeDiameter => {
            "nothing of the body stands nearer than its bearing face is wide"
        }
        RingKey::LockHoleDiameter => "the pin is straight, or was measured at its root",
        RingKey::LockHoleDepth => "the pin was measured standing free",
        RingKey::LockHoleCircle => "the pin moves along the axis only",
        RingKey::LockHoleAngle => "the angle was read from the lens side, 12 o'clock as 0",
        RingKey::IndexMarkAngle => {
            "the body's mark is the one that the ring's should meet when locked"
        }
        RingKey::EdgeBreak => "no edge is a seat or a bearing face's working corner",
    }
}
