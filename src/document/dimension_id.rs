//! The names of the dimensions, call-outs and signs of a sheet, so that what the user does to one is kept.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::RingKey;

/// A face of the ring that lies square to the axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Face {
    /// The lens seat.
    Seat,
    /// Front face of the plate.
    PlateFront,
    /// Rear face of the flange.
    FlangeRear,
    /// Face of the lugs toward the flange.
    LugFront,
    /// Face of the lugs toward the sensor.
    LugRear,
    /// Rear end of the spigot.
    Nose,
    /// End of the full thread.
    ThreadEnd,
    /// Far end of the relief.
    ReliefEnd,
    /// Face of the lip toward the lens.
    LipFront,
    /// Face of the lip toward the sensor.
    LipRear,
    /// Floor of the pin annulus.
    AnnulusFloor,
}

impl Face {
    /// Every face.
    pub const ALL: [Self; 11] = [
        Self::Seat,
        Self::PlateFront,
        Self::FlangeRear,
        Self::LugFront,
        Self::LugRear,
        Self::Nose,
        Self::ThreadEnd,
        Self::ReliefEnd,
        Self::LipFront,
        Self::LipRear,
        Self::AnnulusFloor,
    ];

    /// The words on screen.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Seat => "lens seat",
            Self::PlateFront => "plate, front face",
            Self::FlangeRear => "flange rear face",
            Self::LugFront => "lug, front face",
            Self::LugRear => "lug, rear face",
            Self::Nose => "nose face",
            Self::ThreadEnd => "end of the thread",
            Self::ReliefEnd => "far end of the relief",
            Self::LipFront => "lip face",
            Self::LipRear => "lip, rear face",
            Self::AnnulusFloor => "floor of the pin annulus",
        }
    }

    /// The name in the file.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Seat => "seat",
            Self::PlateFront => "plate_front",
            Self::FlangeRear => "flange_rear",
            Self::LugFront => "lug_front",
            Self::LugRear => "lug_rear",
            Self::Nose => "nose",
            Self::ThreadEnd => "thread_end",
            Self::ReliefEnd => "relief_end",
            Self::LipFront => "lip_front",
            Self::LipRear => "lip_rear",
            Self::AnnulusFloor => "annulus_floor",
        }
    }
}

/// A dimension, call-out or sign of the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub enum DimensionId {
    /// The size of a ring dimension.
    Size(RingKey),
    /// The thread by its designation.
    Thread,
    /// The relief: width and diameter.
    Relief,
    /// The lock hole: diameter, depth and circle.
    LockHole,
    /// Chamfer behind the lugs.
    LeadIn,
    /// Datum A, the flange rear face.
    DatumFlange,
    /// Datum B, the axis of the spigot.
    DatumSpigot,
    /// Parallelism of the seat to datum A, with its surface texture.
    SeatParallelism,
    /// Run-out of the thread to datum B.
    ThreadRunOut,
    /// Surface texture of the flange rear face.
    FlangeTexture,
    /// A distance between two faces that the user added, for information; the faces in the order of [`Face::ALL`].
    Between(Face, Face),
}

/// What a dimension may not be called.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("no dimension of the sheet is called \"{0}\"")]
pub struct DimensionNameError(String);

/// What stands between the two faces of an added distance.
const BETWEEN: &str = "..";

impl DimensionId {
    /// Those that are no size of a ring dimension and not added by the user.
    pub const SIGNS: [Self; 9] = [
        Self::Thread,
        Self::Relief,
        Self::LockHole,
        Self::LeadIn,
        Self::DatumFlange,
        Self::DatumSpigot,
        Self::SeatParallelism,
        Self::ThreadRunOut,
        Self::FlangeTexture,
    ];

    /// The distance between two faces; none for one face alone.
    #[must_use]
    pub fn between(one: Face, other: Face) -> Option<Self> {
        (one != other).then(|| Self::Between(one.min(other), one.max(other)))
    }

    /// Whether the user added it.
    #[must_use]
    pub const fn is_added(self) -> bool {
        matches!(self, Self::Between(..))
    }

    /// The words on screen.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::Size(key) => key.label().to_owned(),
            Self::Thread => "Thread".to_owned(),
            Self::Relief => "Relief".to_owned(),
            Self::LockHole => "Lock hole".to_owned(),
            Self::LeadIn => "Lug lead-in".to_owned(),
            Self::DatumFlange => "Datum A".to_owned(),
            Self::DatumSpigot => "Datum B".to_owned(),
            Self::SeatParallelism => "Seat: parallelism and texture".to_owned(),
            Self::ThreadRunOut => "Thread: run-out".to_owned(),
            Self::FlangeTexture => "Flange: texture".to_owned(),
            Self::Between(one, other) => format!("{} to {}", one.words(), other.words()),
        }
    }
}

impl fmt::Display for DimensionId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Size(key) => f.write_str(key.name()),
            Self::Thread => f.write_str("thread"),
            Self::Relief => f.write_str("relief"),
            Self::LockHole => f.write_str("lock_hole"),
            Self::LeadIn => f.write_str("lead_in"),
            Self::DatumFlange => f.write_str("datum_a"),
            Self::DatumSpigot => f.write_str("datum_b"),
            Self::SeatParallelism => f.write_str("seat_parallelism"),
            Self::ThreadRunOut => f.write_str("thread_run_out"),
            Self::FlangeTexture => f.write_str("flange_texture"),
            Self::Between(one, other) => write!(f, "{}{BETWEEN}{}", one.name(), other.name()),
        }
    }
}

impl FromStr for DimensionId {
    type Err = DimensionNameError;

    fn from_str(text: &str) -> Result<Self, DimensionNameError> {
        let key = RingKey::ALL.iter().find(|key| key.name() == text);
        let size = key.map(|key| Self::Size(*key));
        let sign = || {
            Self::SIGNS
                .into_iter()
                .find(|sign| sign.to_string() == text)
        };
        let face = |name: &str| Face::ALL.into_iter().find(|face| face.name() == name);
        let between = || {
            let (one, other) = text.split_once(BETWEEN)?;
            Self::between(face(one)?, face(other)?)
        };
        size.or_else(sign)
            .or_else(between)
            .ok_or_else(|| DimensionNameError(text.to_owned()))
    }
}

impl TryFrom<String> for DimensionId {
    type Error = DimensionNameError;

    fn try_from(text: String) -> Result<Self, DimensionNameError> {
        text.parse()
    }
}

impl From<DimensionId> for String {
    fn from(id: DimensionId) -> Self {
        id.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_name_is_read_back() {
        let sizes = RingKey::ALL.iter().map(|key| DimensionId::Size(*key));
        let between = Face::ALL.into_iter().flat_map(|one| {
            Face::ALL
                .into_iter()
                .filter_map(move |other| DimensionId::between(one, other))
        });
        for id in sizes.chain(DimensionId::SIGNS).chain(between) {
            assert_eq!(id.to_string().parse(), Ok(id), "{id}");
        }
    }

    #[test]
    fn a_distance_has_one_name_whichever_face_comes_first() {
        let one = DimensionId::between(Face::Seat, Face::Nose);
        assert_eq!(one, DimensionId::between(Face::Nose, Face::Seat));
        assert_eq!(DimensionId::between(Face::Nose, Face::Nose), None);
        assert!(
            "nose..nose".parse::<DimensionId>().is_err() && "bolt".parse::<DimensionId>().is_err()
        );
    }
}
