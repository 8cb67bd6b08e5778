//! Rules for the seat: its height, the plate, and whether a ring can be built at all.

use crate::document::{Choice, FieldRef, LimitKey, RingKey, SeatKind, Term};
use crate::mount::{BodyField, LensField, Presence, Unit};

use super::derive::seat_kind_of;
use super::resolved::Refusal;
use super::rules::{Rules, Worked, both};

/// Metal that must stay between the floor of a counterbore and the flange rear face, where it can, mm.
const FLOOR_UNDER_COUNTERBORE: f64 = 0.4;

pub(super) fn work(rules: &mut Rules) {
    let seat_height = seat_height(rules);
    rules.settle_from(
        RingKey::SeatHeight,
        seat_height,
        "from the definition of the register",
    );
    let plate = plate_thickness(rules);
    rules.settle(RingKey::PlateThickness, plate);
    decide_seat(rules);
}

fn seat_height(rules: &Rules) -> Worked {
    let (lens, body) = both(
        rules.lens(LensField::Register),
        rules.body(BodyField::Register),
    )?;
    let ring = &rules.design.ring;
    let mut height = lens - body;
    if ring.trim_mm != 0.0 {
        height = height + Term::field(FieldRef::Trim, ring.trim_mm);
    }
    if ring.finish.build_up_mm > 0.0 && !ring.finish.faces_masked {
        height = height - 2.0 * Term::field(FieldRef::Finish, ring.finish.build_up_mm);
    }
    Ok(height)
}

/// Whether the seat is sunk: asked for, or the seat height leaves no proud plate.
fn is_sunk(rules: &Rules, seat_height: f64) -> bool {
    match rules.design.ring.seat {
        Choice::Set(kind) => kind == SeatKind::Counterbore,
        // Rounding of two registers must not turn 1.2 into a recess.
        Choice::Derived => seat_height < rules.design.limits.seat_proud_least - 1e-9,
    }
}

fn plate_thickness(rules: &Rules) -> Worked {
    let height = rules.size(RingKey::SeatHeight)?;
    if is_sunk(rules, height.value()) {
        let recessed = rules.limit(LimitKey::PlateRecessed);
        return Ok(recessed.max(height + FLOOR_UNDER_COUNTERBORE));
    }
    match rules.design.ring.seat {
        Choice::Set(SeatKind::Flush) => Ok(height),
        Choice::Set(SeatKind::Boss | SeatKind::Counterbore) | Choice::Derived => {
            Ok(height.min(rules.limit(LimitKey::PlateMost)))
        }
    }
}

fn decide_seat(rules: &mut Rules) {
    let (Ok(height), Ok(plate)) = (
        rules.size(RingKey::SeatHeight),
        rules.size(RingKey::PlateThickness),
    ) else {
        return;
    };
    let kind = seat_kind_of(height.value(), plate.value());
    rules.seat = Some(kind);
    if kind == SeatKind::Counterbore {
        rules.refusal = recess_refusal(rules, &height, &plate);
    }
}

/// Why a sunk seat cannot be built: shoulder and aperture ring must go inside the throat.
fn recess_refusal(rules: &Rules, height: &Term, plate: &Term) -> Option<Refusal> {
    let (shoulder, throat) = both(
        rules.lens(LensField::ShoulderDiameter),
        rules.body(BodyField::Throat),
    )
    .ok()?;
    let limits = &rules.design.limits;
    let recess = shoulder.value() + 2.0 * limits.counterbore_gap;
    let widest = throat.value() - 2.0 * (limits.spigot_clearance + limits.wall_clash);
    let mm = |value: f64| Unit::Mm.show(value);
    if recess > widest {
        let reason = format!(
            "the seat would stand only {} ahead of the flange (a proud seat needs {}), and a recess for the {} shoulder needs {} \
             where the {} throat leaves {}: no ring without optics can be built",
            mm(height.value()),
            mm(limits.seat_proud_least),
            mm(shoulder.value()),
            mm(recess),
            mm(throat.value()),
            mm(widest),
        );
        let fields = vec![
            FieldRef::Lens(LensField::ShoulderDiameter),
            FieldRef::Body(BodyField::Throat),
        ];
        return Some(Refusal { reason, fields });
    }
    aperture_ring_refusal(rules, height, plate, recess)
}

fn aperture_ring_refusal(
    rules: &Rules,
    height: &Term,
    plate: &Term,
    recess: f64,
) -> Option<Refusal> {
    if rules.design.lens.aperture_ring != Presence::Present {
        return None;
    }
    let (ahead, outer) = both(
        rules.lens(LensField::ApertureRingAhead),
        rules.lens(LensField::ApertureRingOuter),
    )
    .ok()?;
    let limits = &rules.design.limits;
    let gap = height.value() + ahead.value() - plate.value();
    if gap >= limits.turning_axial_clash
        || outer.value() + 2.0 * limits.turning_radial_clash <= recess
    {
        return None;
    }
    let reason = format!(
        "with the seat {} ahead of the flange the aperture ring ({} across) would stand {} from the plate and does not go \
         into the {} recess: no ring without optics can be built",
        Unit::Mm.show(height.value()),
        Unit::Mm.show(outer.value()),
        Unit::Mm.show(gap),
        Unit::Mm.show(recess),
    );
    let fields = vec![
        FieldRef::Lens(LensField::ApertureRingAhead),
        FieldRef::Lens(LensField::ApertureRingOuter),
    ];
    Some(Refusal { reason, fields })
}
