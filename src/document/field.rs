//! A reference to any field of a design, for workings, remedies, messages and links.

use super::{LimitKey, RingKey};
use crate::mount::{BodyField, LensField, Unit};

/// Any field of a design.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum FieldRef {
    /// A number of the lens.
    Lens(LensField),
    /// A number of the body.
    Body(BodyField),
    /// A dimension of the ring.
    Ring(RingKey),
    /// A limit or clearance.
    Limit(LimitKey),
    /// The lens thread.
    LensThread,
    /// The rear barrel at infinity.
    BarrelAtInfinity,
    /// The rear barrel at close focus.
    BarrelAtCloseFocus,
    /// Whether the lens has an aperture ring.
    ApertureRing,
    /// Whether the lens has a stop-down pin.
    StopDownPin,
    /// The body's ears.
    Ears,
    /// The hand of the twist.
    TwistHand,
    /// Whether springs pull the lugs.
    Springs,
    /// Whether there is a stop.
    Stop,
    /// Whether there is a lock pin.
    LockPin,
    /// The free depth behind the flange.
    FreeDepth,
    /// The obstacles near the mount.
    Obstacles,
    /// The ring's lugs.
    Lugs,
    /// The seat kind.
    SeatKind,
    /// What the ring does with the pin.
    PinHandling,
    /// The trim.
    Trim,
    /// The finish.
    Finish,
    /// What keeps the lens from turning.
    ThreadHold,
    /// The milling cutter.
    Cutter,
    /// The material.
    Material,
    /// Where the threads begin, and the reading of a trial fit.
    Clocking,
    /// One piece or two.
    Pieces,
}

impl FieldRef {
    /// The label on screen.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Lens(key) => key.label(),
            Self::Body(key) => key.label(),
            Self::Ring(key) => key.label(),
            Self::Limit(key) => key.label(),
            Self::LensThread => "Lens thread",
            Self::BarrelAtInfinity => "Rear barrel at infinity",
            Self::BarrelAtCloseFocus => "Rear barrel at close focus",
            Self::ApertureRing => "Aperture ring",
            Self::StopDownPin => "Stop-down pin",
            Self::Ears => "Ears",
            Self::TwistHand => "Hand of the twist",
            Self::Springs => "Springs",
            Self::Stop => "Stop",
            Self::LockPin => "Lock pin",
            Self::FreeDepth => "Free depth behind the flange",
            Self::Obstacles => "Obstacles",
            Self::Lugs => "Lugs",
            Self::SeatKind => "Seat kind",
            Self::PinHandling => "Stop-down pin handling",
            Self::Trim => "Trim",
            Self::Finish => "Finish",
            Self::ThreadHold => "Thread hold",
            Self::Cutter => "Milling cutter",
            Self::Material => "Material",
            Self::Clocking => "Thread start and trial fit",
            Self::Pieces => "One piece or two",
        }
    }

    /// Label with its owner in front, for messages and formulas: "lens register".
    #[must_use]
    pub fn long_label(self) -> String {
        let label = self.label();
        let lower = lower_first(label);
        match self {
            Self::Lens(_)
            | Self::BarrelAtInfinity
            | Self::BarrelAtCloseFocus
            | Self::ApertureRing => {
                format!("lens {lower}")
            }
            Self::Body(_)
            | Self::Ears
            | Self::TwistHand
            | Self::Springs
            | Self::Stop
            | Self::LockPin
            | Self::Obstacles => {
                format!("body {lower}")
            }
            Self::Limit(_) => format!("limit \"{label}\""),
            Self::Ring(_)
            | Self::LensThread
            | Self::StopDownPin
            | Self::FreeDepth
            | Self::Lugs
            | Self::SeatKind
            | Self::PinHandling
            | Self::Trim
            | Self::Finish
            | Self::ThreadHold
            | Self::Cutter
            | Self::Material
            | Self::Clocking
            | Self::Pieces => lower,
        }
    }

    /// How to measure it, for fields of a mating part.
    #[must_use]
    pub const fn how(self) -> &'static str {
        match self {
            Self::Lens(key) => key.how(),
            Self::Body(key) => key.how(),
            Self::LensThread => {
                "Thread gauge or caliper over the crests, and a rule over ten turns"
            }
            Self::BarrelAtInfinity => {
                "Caliper and depth gauge on every step behind the shoulder, focused at infinity"
            }
            Self::BarrelAtCloseFocus => "The same at the closest focus",
            Self::ApertureRing | Self::StopDownPin => "Look at the lens from behind",
            Self::Ears => {
                "Photograph the throat straight on over a protractor, lens side; note start and extent of each ear"
            }
            Self::TwistHand => "Lock something and watch, seen from the lens side",
            Self::Springs | Self::Stop | Self::LockPin => "Look into the throat",
            Self::FreeDepth => {
                "Depth gauge behind the flange at several radii, mirror moved by hand"
            }
            Self::Obstacles => "Look round the flange and measure what stands out",
            Self::Clocking => {
                "Screw the lens home in the locked ring and read its mark on the clock face, seen from the lens side"
            }
            Self::Ring(_)
            | Self::Limit(_)
            | Self::Lugs
            | Self::SeatKind
            | Self::PinHandling
            | Self::Trim
            | Self::Finish
            | Self::ThreadHold
            | Self::Cutter
            | Self::Material
            | Self::Pieces => "",
        }
    }

    /// The unit of a numeric field.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Lens(key) => key.unit(),
            Self::Body(key) => key.unit(),
            Self::Ring(key) => key.unit(),
            Self::Limit(key) => key.unit(),
            Self::Trim
            | Self::Finish
            | Self::BarrelAtInfinity
            | Self::BarrelAtCloseFocus
            | Self::FreeDepth => Unit::Mm,
            Self::Ears | Self::Lugs | Self::Clocking => Unit::Deg,
            Self::LensThread
            | Self::ApertureRing
            | Self::StopDownPin
            | Self::TwistHand
            | Self::Springs
            | Self::Stop
            | Self::LockPin
            | Self::Obstacles
            | Self::SeatKind
            | Self::PinHandling
            | Self::ThreadHold
            | Self::Cutter
            | Self::Material
            | Self::Pieces => Unit::One,
        }
    }
}

fn lower_first(label: &str) -> String {
    let mut letters = label.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}
