//! Rules for thread, relief, lip, bores and spigot length: what stands behind the lens seat.

use crate::document::{FieldRef, LORE, LimitKey, RingKey, Term};
use crate::mount::{BarrelStep, BodyField, LensField, Unit};
use crate::optics::RayCone;
use crate::standards::Thread;
use crate::standards::undercut::{Undercut, UndercutForm, undercut};

use super::resolved::PinUse;
use super::rules::{Missing, Rules, Worked, both};
use super::rules_bayonet::least_depth;

/// The female thread of the ring.
pub(super) struct FemaleThread {
    pub(super) thread: Thread,
    pub(super) minor: f64,
    pub(super) major: f64,
    pitch: Term,
    short_undercut: Option<Undercut>,
}

/// Radial gap of an annulus round a pin left free, mm.
const ANNULUS_GAP: f64 = 0.5;
/// Diameter excess of the relief over the thread's major where no undercut standard covers the pitch, mm.
const RELIEF_EXCESS: f64 = 0.5;

pub(super) fn work(rules: &mut Rules) -> Result<FemaleThread, Missing> {
    let thread = female_thread(rules);
    let from_thread = |make: &dyn Fn(&FemaleThread) -> Worked| match &thread {
        Ok(thread) => make(thread),
        Err(missing) => Err(missing.clone()),
    };
    let chamfer = from_thread(&|thread| Ok(entry_chamfer(rules, thread)));
    rules.settle(RingKey::ThreadChamfer, chamfer);
    let relief_diameter = from_thread(&|thread| Ok(relief_diameter(thread)));
    rules.settle_from(
        RingKey::ReliefDiameter,
        relief_diameter,
        "DIN 76-1, internal thread undercut",
    );
    match rules.pin {
        PinUse::Pressed => pressed(rules, &thread),
        PinUse::None | PinUse::LeftFree => without_lip(rules, &thread),
    }
    annulus(rules, &thread);
    let rear = rear_bore(rules);
    rules.settle(RingKey::RearBore, rear);
    thread
}

fn female_thread(rules: &Rules) -> Result<FemaleThread, Missing> {
    let field = FieldRef::LensThread;
    let thread = rules
        .design
        .lens
        .thread
        .value()
        .ok_or(Missing(vec![field]))?
        .without_class();
    let limits = thread.internal().map_err(|_| Missing(vec![field]))?;
    let basic = thread.basic();
    let least = limits.minor_min.unwrap_or(basic.minor_diameter);
    let minor = f64::midpoint(least, limits.minor_max.unwrap_or(least));
    let pitch = Term::named("pitch", thread.pitch_mm(), Unit::Mm);
    let short_undercut = undercut(UndercutForm::Din76InternalShort, thread.pitch_mm()).ok();
    Ok(FemaleThread {
        minor,
        major: thread.nominal_mm(),
        pitch,
        short_undercut,
        thread,
    })
}

/// Half a pitch; more where the fillet or the run-out at the male shoulder asks for it.
fn entry_chamfer(rules: &Rules, thread: &FemaleThread) -> Term {
    let mut chamfer = 0.5 * thread.pitch.clone();
    if let Ok(fillet) = rules.lens(LensField::ShoulderFillet)
        && fillet.value() > 0.0
    {
        let major = Term::named("thread major diameter", thread.major, Unit::Mm);
        let minor = minor_diameter(thread);
        chamfer = chamfer.max((major - minor) / 2.0 + fillet);
    }
    if let Ok(run_out) = rules.lens(LensField::ThreadRunOut) {
        chamfer = chamfer.max(run_out);
    }
    chamfer
}

fn relief_diameter(thread: &FemaleThread) -> Term {
    let excess = thread
        .short_undercut
        .as_ref()
        .map_or(RELIEF_EXCESS, |row| row.diameter_excess_mm);
    Term::named("thread major diameter", thread.major, Unit::Mm)
        + Term::named("excess of the undercut", excess, Unit::Mm)
}

/// Short undercut (g1) where the wanted turns remain, else what is left, never under the least relief.
fn relief_width(rules: &Rules, thread: &FemaleThread, room: &Term) -> Worked {
    let least = rules.limit(LimitKey::ReliefPitchesClash) * thread.pitch.clone();
    let short = match &thread.short_undercut {
        Some(row) => Term::named("short undercut g1", row.width_min_mm, Unit::Mm),
        None => 2.5 * thread.pitch.clone(),
    };
    let turns = rules.limit(LimitKey::ThreadTurns) * thread.pitch.clone();
    let left = room.clone() - rules.size(RingKey::ThreadChamfer)? - turns;
    Ok(short.min(left).max(least))
}

/// With a lip: from the pin to the lip face, from there forward to the thread and back to the spigot.
fn pressed(rules: &mut Rules, thread: &Result<FemaleThread, Missing>) {
    let face = lip_face_depth(rules);
    rules.settle(RingKey::LipFaceDepth, face);
    let relief = match thread {
        Ok(thread) => rules
            .size(RingKey::LipFaceDepth)
            .and_then(|face| relief_width(rules, thread, &face)),
        Err(missing) => Err(missing.clone()),
    };
    rules.settle_from(
        RingKey::ReliefWidth,
        relief,
        "DIN 76-1 form D, shortened: common practice, no source",
    );
    let length = both(
        rules.size(RingKey::LipFaceDepth),
        rules.size(RingKey::ReliefWidth),
    )
    .map(|(face, relief)| face - relief);
    rules.settle(RingKey::ThreadLength, length);
    let spigot = spigot_with_lip(rules);
    rules.settle(RingKey::SpigotLength, spigot);
    let thickness = lip_thickness_pressed(rules);
    rules.settle(RingKey::LipThickness, thickness);
    let bore = match thread {
        Ok(thread) => lip_bore_pressed(rules, thread),
        Err(missing) => Err(missing.clone()),
    };
    rules.settle(RingKey::LipBore, bore);
}

fn lip_face_depth(rules: &Rules) -> Worked {
    let (bottom, stopped) = both(
        rules.lens(LensField::PinBottom),
        rules.lens(LensField::PinStoppedDown),
    )?;
    let middle = (bottom + stopped) / 2.0;
    let male = rules.lens(LensField::MaleThreadLength)?;
    Ok(middle.max(male + rules.limit(LimitKey::ThreadEndGap)))
}

fn lip_wanted(rules: &Rules) -> Term {
    rules
        .set_by_hand(RingKey::LipThickness)
        .unwrap_or_else(|| rules.limit(LimitKey::LipThickness))
}

fn behind_lugs(rules: &Rules) -> Worked {
    let (groove, lug) = both(
        rules.size(RingKey::GrooveWidth),
        rules.size(RingKey::LugThickness),
    )?;
    Ok(groove + lug)
}

/// Length cut short by what is free behind the flange, lip bore to nose.
fn within_free_depth(rules: &Rules, length: Term) -> Term {
    let Some(points) = rules.design.body.free_depth.value() else {
        return length;
    };
    let Ok(nose) = rules.size(RingKey::NoseDiameter) else {
        return length;
    };
    let inner = rules
        .lens(LensField::PinCircle)
        .map_or(0.0, |circle| circle.value() / 2.0);
    let Some(depth) = least_depth(points, inner.min(nose.value() / 2.0), nose.value() / 2.0) else {
        return length;
    };
    length.min(
        Term::named("least free depth at the nose", depth, Unit::Mm)
            - rules.limit(LimitKey::NoseGap),
    )
}

fn spigot_with_lip(rules: &Rules) -> Worked {
    let (lugs, face) = both(behind_lugs(rules), rules.size(RingKey::LipFaceDepth))?;
    let height = rules.size(RingKey::SeatHeight)?;
    Ok(within_free_depth(
        rules,
        lugs.max(face + lip_wanted(rules) - height),
    ))
}

fn lip_thickness_pressed(rules: &Rules) -> Worked {
    let (spigot, face) = both(
        rules.size(RingKey::SpigotLength),
        rules.size(RingKey::LipFaceDepth),
    )?;
    let behind = rules.size(RingKey::SeatHeight)? + spigot - face;
    Ok(rules.limit(LimitKey::LipThickness).min(behind))
}

/// Widest part of the rear barrel that reaches behind `depth`, over both ends of the focus, mm.
fn barrel_behind(rules: &Rules, depth: f64) -> Result<Option<Term>, Missing> {
    let lens = &rules.design.lens;
    let at_infinity = lens
        .barrel_at_infinity
        .value()
        .ok_or(Missing(vec![FieldRef::BarrelAtInfinity]))?;
    let at_close: &[BarrelStep] = lens
        .barrel_at_close_focus
        .value()
        .map_or(&[], Vec::as_slice);
    let widest = at_infinity
        .iter()
        .chain(at_close)
        .filter(|step| step.depth_mm > depth)
        .map(|step| step.diameter_mm)
        .fold(None, |widest: Option<f64>, diameter| {
            Some(widest.map_or(diameter, |known| known.max(diameter)))
        });
    Ok(widest.map(|diameter| Term::named("rear barrel at the bore", diameter, Unit::Mm)))
}

/// Diameter of the ray cone at a depth behind the seat; `None` while optics or sensor are unknown.
fn ray_cone_at(rules: &Rules, depth: Term) -> Option<Term> {
    let cone = RayCone::to_the_corner(&rules.design.lens, &rules.design.body).ok()?;
    let register = rules.body(BodyField::Register).ok()?;
    let height = rules.size(RingKey::SeatHeight).ok()?;
    let from_image = register + height - depth;
    (from_image.value() > 0.0).then(|| 2.0 * cone.radius_at(from_image))
}

fn lip_bore_pressed(rules: &Rules, thread: &FemaleThread) -> Worked {
    let (circle, pin) = both(
        rules.lens(LensField::PinCircle),
        rules.lens(LensField::PinDiameter),
    )?;
    let (face, lip) = both(
        rules.size(RingKey::LipFaceDepth),
        rules.size(RingKey::LipThickness),
    )?;
    let mut bore = circle - pin - 2.0 * rules.limit(LimitKey::PinLanding);
    if let Some(barrel) = barrel_behind(rules, face.value())? {
        bore = bore.max(barrel + 2.0 * rules.limit(LimitKey::BarrelClearance));
    }
    for depth in [face.clone(), face + lip] {
        if let Some(cone) = ray_cone_at(rules, depth) {
            bore = bore.max(cone);
        }
    }
    // A wider cone would leave no lip at all, and no shape in which to show what is wrong.
    Ok(bore.min(minor_diameter(thread)))
}

fn minor_diameter(thread: &FemaleThread) -> Term {
    Term::named("thread minor diameter", thread.minor, Unit::Mm)
}

/// Behind the lugs; longer where a seat sunk behind the flange would leave the thread too few turns.
fn spigot_without_lip(rules: &Rules, thread: &Result<FemaleThread, Missing>) -> Worked {
    let (lugs, height) = both(behind_lugs(rules), rules.size(RingKey::SeatHeight))?;
    let thread = thread.as_ref().map_err(Clone::clone)?;
    let turns = rules.limit(LimitKey::ThreadTurns) * thread.pitch.clone();
    let needed = rules.size(RingKey::ThreadChamfer)? + turns - height;
    Ok(within_free_depth(rules, lugs.max(needed)))
}

/// Without a lip: the thread runs through, or it ends blind with a relief before a bore.
fn without_lip(rules: &mut Rules, thread: &Result<FemaleThread, Missing>) {
    let spigot = spigot_without_lip(rules, thread);
    rules.settle(RingKey::SpigotLength, spigot);
    let whole = both(
        rules.size(RingKey::SeatHeight),
        rules.size(RingKey::SpigotLength),
    )
    .map(|(height, spigot)| height + spigot);
    let male = rules.lens(LensField::MaleThreadLength);
    let (length, relief) = match (both(whole.clone(), male), thread) {
        (Ok((whole, male)), Ok(thread)) => blind_thread(rules, thread, &whole, &male),
        (Err(missing), _) => (Err(missing.clone()), Err(missing)),
        (_, Err(missing)) => (Err(missing.clone()), Err(missing.clone())),
    };
    rules.settle(RingKey::ThreadLength, length);
    rules.settle_from(
        RingKey::ReliefWidth,
        relief,
        "DIN 76-1 form D, shortened: common practice, no source",
    );
    let face = both(
        rules.size(RingKey::ThreadLength),
        rules.size(RingKey::ReliefWidth),
    )
    .map(|(length, relief)| length + relief);
    rules.settle(RingKey::LipFaceDepth, face);
    let land =
        both(whole, rules.size(RingKey::LipFaceDepth)).map(|(whole, face)| (whole - face).max(0.0));
    rules.settle(RingKey::LipThickness, land);
    let bore = match thread {
        Ok(thread) => bore_without_lip(rules, thread),
        Err(missing) => Err(missing.clone()),
    };
    rules.settle(RingKey::LipBore, bore);
}

fn blind_thread(
    rules: &mut Rules,
    thread: &FemaleThread,
    whole: &Term,
    male: &Term,
) -> (Worked, Worked) {
    let chamfer = rules.size(RingKey::ThreadChamfer);
    let Ok(chamfer) = chamfer else {
        return (chamfer.clone(), chamfer);
    };
    let turns = rules.limit(LimitKey::ThreadTurns) * thread.pitch.clone();
    let length = (male.clone() + 1.0).max(chamfer + turns);
    let relief = relief_width(
        rules,
        thread,
        &(whole.clone() - rules.limit(LimitKey::LipThickness)),
    );
    let Ok(relief) = relief else {
        return (relief.clone(), relief);
    };
    let needed = length.value() + relief.value() + rules.design.limits.lip_thickness;
    rules.runs_through =
        needed > whole.value() && rules.set_by_hand(RingKey::ThreadLength).is_none();
    if rules.runs_through {
        (Ok(whole.clone()), Ok(Term::from(0.0)))
    } else {
        (Ok(length), Ok(relief))
    }
}

fn bore_without_lip(rules: &Rules, thread: &FemaleThread) -> Worked {
    let minor = minor_diameter(thread);
    if rules.runs_through {
        return Ok(minor);
    }
    let (face, land) = both(
        rules.size(RingKey::LipFaceDepth),
        rules.size(RingKey::LipThickness),
    )?;
    // The whole barrel, not only what reaches the bore: with no pin to press nothing asks for a narrower one.
    let mut bore: Option<Term> = barrel_behind(rules, 0.0)?
        .map(|barrel| barrel + 2.0 * rules.limit(LimitKey::BarrelClearance));
    for depth in [face.clone(), face + land] {
        if let Some(cone) = ray_cone_at(rules, depth) {
            bore = Some(match bore {
                Some(known) => known.max(cone),
                None => cone,
            });
        }
    }
    if let Some(pin) = pin_through(rules)? {
        bore = Some(match bore {
            Some(known) => known.max(pin),
            None => pin,
        });
    }
    // Nothing known asks for less: leave the bore as wide as the thread allows.
    Ok(bore.map_or(minor.clone(), |bore| bore.min(minor)))
}

/// Bore that leaves a free pin room right through, where an annulus would leave no floor.
fn pin_through(rules: &Rules) -> Result<Option<Term>, Missing> {
    if rules.pin != PinUse::LeftFree {
        return Ok(None);
    }
    let whole = rules.size(RingKey::SeatHeight)? + rules.size(RingKey::SpigotLength)?;
    let depth = rules.lens(LensField::PinFree)? + rules.limit(LimitKey::AnnulusDepthGap);
    if whole.value() - depth.value() >= rules.design.limits.wall_caution {
        return Ok(None);
    }
    let (circle, pin) = both(
        rules.lens(LensField::PinCircle),
        rules.lens(LensField::PinDiameter),
    )?;
    Ok(Some(circle + pin + 2.0 * ANNULUS_GAP))
}

/// The annulus that leaves a pin free, where the bore does not leave it free already.
fn annulus(rules: &mut Rules, thread: &Result<FemaleThread, Missing>) {
    let sizes = annulus_sizes(rules, thread);
    let (inner, outer, depth) = match sizes {
        Ok(Some([inner, outer, depth])) => (Ok(inner), Ok(outer), Ok(depth)),
        Ok(None) => (
            Ok(Term::from(0.0)),
            Ok(Term::from(0.0)),
            Ok(Term::from(0.0)),
        ),
        Err(missing) => (Err(missing.clone()), Err(missing.clone()), Err(missing)),
    };
    rules.settle_from(RingKey::AnnulusInner, inner, LORE);
    rules.settle_from(RingKey::AnnulusOuter, outer, LORE);
    rules.settle_from(RingKey::AnnulusDepth, depth, LORE);
}

fn annulus_sizes(
    rules: &Rules,
    thread: &Result<FemaleThread, Missing>,
) -> Result<Option<[Term; 3]>, Missing> {
    if rules.pin != PinUse::LeftFree {
        return Ok(None);
    }
    let thread = thread.as_ref().map_err(Clone::clone)?;
    let (circle, pin) = both(
        rules.lens(LensField::PinCircle),
        rules.lens(LensField::PinDiameter),
    )?;
    let (free, face) = both(
        rules.lens(LensField::PinFree),
        rules.size(RingKey::LipFaceDepth),
    )?;
    let bore = rules.size(RingKey::LipBore)?;
    let depth = free + rules.limit(LimitKey::AnnulusDepthGap);
    let outer = circle.clone() + pin.clone() + 2.0 * ANNULUS_GAP;
    if depth.value() <= face.value() || outer.value() <= bore.value() {
        return Ok(None);
    }
    let inner = circle - pin - 2.0 * ANNULUS_GAP;
    // A thin wall between pocket and bore springs away from the tool: the pocket then opens into the bore.
    let is_thin = inner.value() < bore.value() + 2.0 * rules.design.limits.wall_caution;
    let inner = if is_thin { bore } else { inner };
    Ok(Some([inner, outer.min(minor_diameter(thread)), depth]))
}

fn rear_bore(rules: &Rules) -> Worked {
    let (bore, spigot) = both(
        rules.size(RingKey::LipBore),
        rules.size(RingKey::SpigotLength),
    )?;
    let end = rules.size(RingKey::SeatHeight)? + spigot;
    Ok(match ray_cone_at(rules, end) {
        // A cone wider than the nose would leave no metal, and no shape in which to show what is wrong.
        Some(cone) if !rules.runs_through => {
            let nose = rules.size(RingKey::NoseDiameter)?;
            bore.max(cone.min(nose - 2.0 * rules.limit(LimitKey::WallCaution)))
        }
        _ => bore,
    })
}
