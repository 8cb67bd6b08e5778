//! The named features of the ring, lens and body that pieces of an outline belong to.

/// A feature of the ring's half-section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Feature {
    /// The face the lens shoulder stops against.
    Seat,
    /// Outside of the boss.
    BossSide,
    /// Wall of the counterbore.
    CounterboreSide,
    /// Front face of the plate.
    PlateFront,
    /// Outer rim of the flange.
    Rim,
    /// Rear face of the flange, z = 0.
    FlangeRearFace,
    /// Bottom of the groove.
    GrooveRoot,
    /// Face of the lug toward the flange.
    LugFront,
    /// Outside of the lug.
    LugTip,
    /// Chamfer behind the lug.
    LugLeadIn,
    /// Face of the lug toward the sensor.
    LugRear,
    /// Outside of the nose behind the lugs.
    Nose,
    /// Rear end face of the spigot.
    NoseFace,
    /// Bore behind the lip.
    RearBore,
    /// Bore of the lip.
    LipBore,
    /// Face of the lip that presses the pin, or the end of the thread chamber.
    LipFace,
    /// Bottom of the pin annulus.
    AnnulusFloor,
    /// Walls of the pin annulus.
    AnnulusSide,
    /// Far end of the relief.
    ReliefEnd,
    /// Bottom of the relief.
    ReliefFloor,
    /// End of the relief at the thread.
    ReliefStart,
    /// Thread, drawn at its minor diameter.
    Thread,
    /// Entry chamfer of the thread.
    ThreadChamfer,
}

impl Feature {
    /// The name on screen.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Seat => "lens seat",
            Self::BossSide => "boss",
            Self::CounterboreSide => "counterbore",
            Self::PlateFront => "plate, front face",
            Self::Rim => "rim",
            Self::FlangeRearFace => "flange rear face",
            Self::GrooveRoot => "groove root",
            Self::LugFront => "lug, front face",
            Self::LugTip => "lug tip",
            Self::LugLeadIn => "lug lead-in",
            Self::LugRear => "lug, rear face",
            Self::Nose => "nose",
            Self::NoseFace => "nose face",
            Self::RearBore => "rear bore",
            Self::LipBore => "lip bore",
            Self::LipFace => "lip face",
            Self::AnnulusFloor => "pin annulus, floor",
            Self::AnnulusSide => "pin annulus, wall",
            Self::ReliefEnd => "relief, far end",
            Self::ReliefFloor => "relief",
            Self::ReliefStart => "relief, thread end",
            Self::Thread => "thread",
            Self::ThreadChamfer => "thread entry chamfer",
        }
    }

    /// The dimensions that place or size this feature, the first one is edited when it is picked.
    #[must_use]
    pub const fn dimensions(self) -> &'static [crate::document::RingKey] {
        use crate::document::RingKey as Key;
        match self {
            Self::Seat | Self::FlangeRearFace => &[Key::SeatHeight],
            Self::BossSide | Self::CounterboreSide => &[Key::SeatDiameter],
            Self::PlateFront => &[Key::PlateThickness],
            Self::Rim => &[Key::FlangeDiameter],
            Self::GrooveRoot => &[Key::GrooveRootDiameter],
            Self::LugFront => &[Key::GrooveWidth],
            Self::LugTip => &[Key::LugDiameter],
            Self::LugLeadIn => &[Key::LugLeadIn],
            Self::LugRear => &[Key::LugThickness],
            Self::Nose => &[Key::NoseDiameter],
            Self::NoseFace => &[Key::SpigotLength],
            Self::RearBore => &[Key::RearBore],
            Self::LipBore => &[Key::LipBore],
            Self::LipFace => &[Key::LipFaceDepth],
            Self::AnnulusFloor => &[Key::AnnulusDepth],
            Self::AnnulusSide => &[Key::AnnulusOuter, Key::AnnulusInner],
            Self::ReliefEnd | Self::ReliefStart => &[Key::ReliefWidth],
            Self::ReliefFloor => &[Key::ReliefDiameter, Key::ReliefWidth],
            Self::Thread => &[Key::ThreadLength],
            Self::ThreadChamfer => &[Key::ThreadChamfer],
        }
    }
}

/// A part of the lens in the half-section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LensPart {
    /// Everything ahead of the seat up to the shoulder diameter.
    Shoulder,
    /// The male thread, at its major diameter.
    MaleThread,
    /// The rear barrel.
    Barrel,
    /// The turning aperture ring.
    ApertureRing,
    /// The stop-down pin.
    Pin,
}

/// A part of the body in the half-section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BodyPart {
    /// The flange and what carries it.
    Flange,
    /// An ear.
    Ear,
    /// The lock pin.
    LockPin,
    /// The mirror or whatever else ends the free depth.
    BehindFlange,
    /// A named obstacle, by its place in the list.
    Obstacle(usize),
}
