//! Every way in which the window can change a design, and the one door through which it does.

use super::inspection_edit::{InspectionEdit, put_inspection};
use super::row_edit::{keep_true, put_row_readings};
use super::sheet_edit::{SheetEdit, put_sheet};
use crate::checks::Change;
use crate::document::{
    Choice, Clocking, Design, Fault, FieldRef, Finish, LimitKey, Limits, MillingMethod, Paper,
    Pieces, PinHandling, RingKey, Route, SeatKind, ThreadHold, Tolerance, faults_of,
};
use crate::mount::{
    BarrelStep, BodyField, FreeDepth, Hand, Interface, LensField, Obstacle, Presence, RowList,
    RowReadings, Sector,
};
use crate::standards::Thread;

/// The two focus ends at which a rear barrel is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Focus {
    /// Focused at infinity.
    Infinity,
    /// Focused as close as it goes.
    Close,
}

/// A part that lens or body may have or lack.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fitted {
    /// The lens's turning aperture ring.
    ApertureRing,
    /// The lens's stop-down pin.
    StopDownPin,
    /// The body's springs.
    Springs,
    /// The body's stop.
    Stop,
    /// The body's lock pin.
    LockPin,
    /// The body's mirror.
    Mirror,
}

impl Fitted {
    /// The question on screen.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::ApertureRing => "Aperture ring",
            Self::StopDownPin => "Stop-down pin",
            Self::Springs => "Springs on the lugs",
            Self::Stop => "Stop",
            Self::LockPin => "Lock pin",
            Self::Mirror => "Mirror behind",
        }
    }

    /// The field behind the question; the mirror is asked about beside the free depth.
    #[must_use]
    pub const fn field(self) -> FieldRef {
        match self {
            Self::ApertureRing => FieldRef::ApertureRing,
            Self::StopDownPin => FieldRef::StopDownPin,
            Self::Springs => FieldRef::Springs,
            Self::Stop => FieldRef::Stop,
            Self::LockPin => FieldRef::LockPin,
            Self::Mirror => FieldRef::FreeDepth,
        }
    }

    /// Whether the design has it.
    #[must_use]
    pub const fn of(self, design: &Design) -> Presence {
        match self {
            Self::ApertureRing => design.lens.aperture_ring,
            Self::StopDownPin => design.lens.stop_down_pin,
            Self::Springs => design.body.springs,
            Self::Stop => design.body.stop,
            Self::LockPin => design.body.lock_pin,
            Self::Mirror => design.body.mirror,
        }
    }

    fn place(self, design: &mut Design) -> &mut Presence {
        match self {
            Self::ApertureRing => &mut design.lens.aperture_ring,
            Self::StopDownPin => &mut design.lens.stop_down_pin,
            Self::Springs => &mut design.body.springs,
            Self::Stop => &mut design.body.stop,
            Self::LockPin => &mut design.body.lock_pin,
            Self::Mirror => &mut design.body.mirror,
        }
    }
}

/// One change to the design.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Name the design.
    Name(String),
    /// Write its notes.
    Notes(String),
    /// Set a ring dimension by hand, in its unit.
    Dimension(RingKey, f64),
    /// Let a ring dimension follow its rule again.
    LetGo(RingKey),
    /// Give a ring dimension a tolerance.
    Tolerance(RingKey, Tolerance),
    /// Name the lens.
    LensName(String),
    /// Change a number of the lens.
    Lens(LensField, Interface<f64>),
    /// Change the lens thread.
    Thread(Interface<Thread>),
    /// Change the rear barrel at one end of the focus.
    Barrel(Focus, Interface<Vec<BarrelStep>>),
    /// Name the body.
    BodyName(String),
    /// Change a number of the body.
    Body(BodyField, Interface<f64>),
    /// Change the ears.
    Ears(Interface<Vec<Sector>>),
    /// Change the hand of the twist.
    TwistHand(Interface<Hand>),
    /// Change the free depth.
    FreeDepth(Interface<Vec<FreeDepth>>),
    /// Change the obstacles.
    Obstacles(Interface<Vec<Obstacle>>),
    /// Read a number of a row of ears, barrel steps, free depth or obstacles.
    RowReadings(RowReadings),
    /// Say whether a part is there.
    Presence(Fitted, Presence),
    /// Set the seat kind, or let it follow its rule.
    Seat(Choice<SeatKind>),
    /// Set what becomes of the pin, or let it follow its rule.
    Pin(Choice<PinHandling>),
    /// Set the lugs, or let them follow their rule.
    Lugs(Choice<Vec<Sector>>),
    /// Set the trim, mm.
    Trim(f64),
    /// Choose what keeps the lens from turning.
    Hold(ThreadHold),
    /// Choose how the gaps are milled.
    Milling(MillingMethod),
    /// Choose the way through the shop, or let it follow its rule.
    Route(Choice<Route>),
    /// Choose the end mill by name; empty takes the first that fits.
    Cutter(String),
    /// Choose the material by name; empty takes the first.
    Material(String),
    /// Change the finish.
    Finish(Finish),
    /// One piece or two.
    Pieces(Pieces),
    /// Say where the threads begin and what a trial fit showed.
    Clocking(Clocking),
    /// Set a limit, in its unit.
    Limit(LimitKey, f64),
    /// Put a limit back to its default.
    LimitDefault(LimitKey),
    /// Put every limit back to its default.
    LimitsDefault,
    /// Turn the cutting line, clock degrees.
    SectionAngle(f64),
    /// Choose the paper.
    Paper(Paper),
    /// Set the resolution, dots an inch.
    Dpi(u32),
    /// Change the sheet.
    Sheet(SheetEdit),
    /// Change what is known of the finished ring.
    Inspection(InspectionEdit),
    /// Do what a finding proposes.
    Remedy(Change),
}

/// The design after `edit`, or the first fault that the edit would bring into it.
///
/// # Errors
/// The fault, naming field, value and what is allowed; the design given is never touched.
pub fn edited(design: &Design, edit: &Edit) -> Result<Design, Fault> {
    let mut next = design.clone();
    put(&mut next, edit.clone());
    let before = faults_of(design);
    match faults_of(&next)
        .into_iter()
        .find(|fault| !before.contains(fault))
    {
        Some(fault) => Err(fault),
        None => Ok(next),
    }
}

fn put(design: &mut Design, edit: Edit) {
    match edit {
        Edit::Name(name) => design.name = name,
        Edit::Notes(notes) => design.notes = notes,
        Edit::Dimension(key, value) => set_dimension(design, key, Choice::Set(value)),
        Edit::LetGo(key) => set_dimension(design, key, Choice::Derived),
        Edit::Tolerance(key, tolerance) => {
            design.ring.dimensions.get_mut(key).tolerance = tolerance;
        }
        Edit::LensName(name) => design.lens.name = name,
        Edit::Lens(key, value) => *design.lens.field_mut(key) = value,
        Edit::Thread(thread) => design.lens.thread = thread,
        Edit::Barrel(Focus::Infinity, steps) => {
            let before = std::mem::replace(&mut design.lens.barrel_at_infinity, steps.clone());
            keep_true(design, RowList::BarrelAtInfinity, &before, &steps);
        }
        Edit::Barrel(Focus::Close, steps) => {
            let before = std::mem::replace(&mut design.lens.barrel_at_close_focus, steps.clone());
            keep_true(design, RowList::BarrelAtCloseFocus, &before, &steps);
        }
        Edit::RowReadings(readings) => put_row_readings(design, readings),
        Edit::BodyName(name) => design.body.name = name,
        Edit::Body(key, value) => *design.body.field_mut(key) = value,
        Edit::Ears(ears) => {
            let before = std::mem::replace(&mut design.body.ears, ears.clone());
            keep_true(design, RowList::Ears, &before, &ears);
        }
        Edit::TwistHand(hand) => design.body.twist_hand = hand,
        Edit::FreeDepth(points) => {
            let before = std::mem::replace(&mut design.body.free_depth, points.clone());
            keep_true(design, RowList::FreeDepth, &before, &points);
        }
        Edit::Obstacles(obstacles) => {
            let before = std::mem::replace(&mut design.body.obstacles, obstacles.clone());
            keep_true(design, RowList::Obstacles, &before, &obstacles);
        }
        Edit::Presence(part, presence) => *part.place(design) = presence,
        Edit::Seat(seat) => design.ring.seat = seat,
        Edit::Pin(pin) => design.ring.pin = pin,
        Edit::Lugs(lugs) => design.ring.lugs = lugs,
        Edit::Trim(trim_mm) => design.ring.trim_mm = trim_mm,
        Edit::Hold(hold) => design.ring.thread_hold = hold,
        Edit::Milling(method) => design.ring.milling = method,
        Edit::Route(route) => design.ring.route = route,
        Edit::Cutter(name) => design.ring.cutter = name,
        Edit::Material(name) => design.ring.material = name,
        Edit::Finish(finish) => design.ring.finish = finish,
        Edit::Pieces(pieces) => design.ring.pieces = pieces,
        Edit::Clocking(clocking) => design.ring.clocking = clocking,
        Edit::Limit(key, value) => *design.limits.get_mut(key) = value,
        Edit::LimitDefault(key) => *design.limits.get_mut(key) = key.default_value(),
        Edit::LimitsDefault => design.limits = Limits::default(),
        Edit::SectionAngle(angle_deg) => design.sheet.section_angle_deg = whole_turn(angle_deg),
        Edit::Paper(paper) => design.sheet.paper = paper,
        Edit::Dpi(dpi) => design.sheet.dpi = dpi,
        Edit::Sheet(edit) => put_sheet(&mut design.sheet, edit),
        Edit::Inspection(edit) => put_inspection(design, edit),
        Edit::Remedy(change) => put_remedy(design, change),
    }
}

fn put_remedy(design: &mut Design, change: Change) {
    match change {
        Change::Dimension(key, value) => set_dimension(design, key, Choice::Set(value)),
        Change::LetGo(key) => set_dimension(design, key, Choice::Derived),
        Change::Lugs(lugs) => design.ring.lugs = Choice::Set(lugs),
        Change::LetLugsGo => design.ring.lugs = Choice::Derived,
        Change::ThreadHold(hold) => design.ring.thread_hold = hold,
        Change::Cutter(name) => design.ring.cutter = name,
    }
}

fn set_dimension(design: &mut Design, key: RingKey, value: Choice<f64>) {
    design.ring.dimensions.get_mut(key).value = value;
}

/// An angle brought into 0 to 360 degrees; what is no number stays as it is and is refused later.
fn whole_turn(angle_deg: f64) -> f64 {
    if angle_deg.is_finite() {
        angle_deg.rem_euclid(360.0)
    } else {
        angle_deg
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mount::{Body, Lens};

    fn design() -> Design {
        Design::new(Lens::default(), Body::default())
    }

    #[test]
    fn a_refused_edit_names_field_value_and_range() {
        let fault = edited(&design(), &Edit::Dimension(RingKey::SeatHeight, f64::NAN)).unwrap_err();
        assert!(fault.field.contains("seat height"), "{fault}");
        let fault = edited(&design(), &Edit::Dimension(RingKey::SeatHeight, 9e9)).unwrap_err();
        assert!(fault.to_string().contains("allowed is"), "{fault}");
    }

    #[test]
    fn set_and_let_go_come_back_to_the_same_design() {
        let set = edited(&design(), &Edit::Dimension(RingKey::LipBore, 31.5)).unwrap();
        assert_eq!(
            set.ring.dimensions.get(RingKey::LipBore).value,
            Choice::Set(31.5)
        );
        assert_eq!(
            edited(&set, &Edit::LetGo(RingKey::LipBore)).unwrap(),
            design()
        );
    }

    #[test]
    fn the_cutting_line_goes_round() {
        let turned = edited(&design(), &Edit::SectionAngle(-30.0)).unwrap();
        assert!((turned.sheet.section_angle_deg - 330.0).abs() < 1e-12);
        assert!(edited(&design(), &Edit::SectionAngle(f64::INFINITY)).is_err());
    }

    #[test]
    fn values_that_contradict_each_other_are_refused() {
        let known = |value| Interface::assumed(value, "test");
        let first = edited(&design(), &Edit::Body(BodyField::Throat, known(44.0))).unwrap();
        let fault = edited(&first, &Edit::Body(BodyField::SlotDiameter, known(40.0))).unwrap_err();
        assert!(fault.allowed.contains("less than"), "{fault}");
    }
}
