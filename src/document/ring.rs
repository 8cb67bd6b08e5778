//! The ring as the user states it: every dimension follows its rule or is set by hand.

use serde::{Deserialize, Serialize};

use super::Route;
use crate::mount::{Sector, Unit};

/// Follows the rule, or set by hand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub enum Choice<T> {
    /// By the stated rule from the two mating parts.
    #[default]
    Derived,
    /// By hand.
    Set(T),
}

impl<T> Choice<T> {
    /// The value set by hand, if any.
    pub const fn set(&self) -> Option<&T> {
        match self {
            Self::Derived => None,
            Self::Set(value) => Some(value),
        }
    }

    /// Whether it follows its rule.
    pub const fn is_derived(&self) -> bool {
        matches!(self, Self::Derived)
    }
}

/// The tolerance of a ring dimension.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub enum Tolerance {
    /// By the stated rule.
    #[default]
    Derived,
    /// Plus and minus the same, in the unit of the dimension.
    PlusMinus(f64),
    /// Lower and upper deviation, in the unit of the dimension.
    Deviations(f64, f64),
    /// An ISO 286 fit such as `h9` or `H7`.
    Fit(String),
}

/// A ring dimension: its value and its tolerance.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Dimension {
    /// The value, in the unit of the dimension.
    #[serde(skip_serializing_if = "Choice::is_derived")]
    pub value: Choice<f64>,
    /// The tolerance.
    #[serde(skip_serializing_if = "tolerance_is_derived")]
    pub tolerance: Tolerance,
}

fn tolerance_is_derived(tolerance: &Tolerance) -> bool {
    *tolerance == Tolerance::Derived
}

fn dimension_is_derived(dimension: &Dimension) -> bool {
    *dimension == Dimension::default()
}

/// How the lens seat stands to the flange.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum SeatKind {
    /// On a boss in front of the plate.
    Boss,
    /// Flush with the plate's front face.
    Flush,
    /// Sunk in a counterbore.
    Counterbore,
}

impl SeatKind {
    /// The word on screen.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Boss => "proud, on a boss",
            Self::Flush => "flush with the plate",
            Self::Counterbore => "recessed, in a counterbore",
        }
    }
}

/// What the ring does with a stop-down pin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum PinHandling {
    /// A lip holds it in.
    Pressed,
    /// An annulus leaves it out.
    LeftFree,
}

/// What keeps the lens from turning in its thread while the ring is turned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum ThreadHold {
    /// Nothing but the friction of the seat.
    #[default]
    Friction,
    /// The ring has a grip of its own and is turned by it.
    GripOnRing,
    /// A set-screw on the lens thread or shoulder.
    SetScrew,
    /// Removable thread locking on the thread.
    ThreadLocking,
}

impl ThreadHold {
    /// Every way, in the order shown.
    pub const ALL: [Self; 4] = [
        Self::Friction,
        Self::GripOnRing,
        Self::SetScrew,
        Self::ThreadLocking,
    ];

    /// The words on screen.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Friction => "seat friction only",
            Self::GripOnRing => "grip on the ring",
            Self::SetScrew => "set-screw",
            Self::ThreadLocking => "removable thread locking",
        }
    }
}

/// How the gaps between the lugs are milled.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum MillingMethod {
    /// End mill parallel to the axis, offset by its radius: leaves a true radial flank.
    #[default]
    OffsetFeed,
    /// End mill parallel to the axis, fed along the centre line.
    CentreFeed,
    /// End mill parallel to the axis, plunged and turned.
    PlungeAndTurn,
    /// End mill pointing at the axis, offset by its radius.
    RadialCutter,
}

impl MillingMethod {
    /// Every method, in the order shown.
    pub const ALL: [Self; 4] = [
        Self::OffsetFeed,
        Self::CentreFeed,
        Self::PlungeAndTurn,
        Self::RadialCutter,
    ];

    /// The words on screen.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::OffsetFeed => "offset feed",
            Self::CentreFeed => "centre-line feed",
            Self::PlungeAndTurn => "plunge and turn",
            Self::RadialCutter => "radial cutter",
        }
    }
}

/// One piece, or a threaded insert clamped in the ring.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub enum Pieces {
    /// One piece.
    #[default]
    One,
    /// A threaded insert, turned to the mark and clamped by set-screws.
    Two {
        /// Wall of the ring around the insert, mm.
        clamp_wall_mm: f64,
        /// Thread diameter of the set-screws, mm.
        screw_diameter_mm: f64,
        /// How many set-screws.
        screw_count: u32,
    },
}

/// Where the threads of ring and lens begin, as far as somebody has looked; clock degrees.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Clocking {
    /// Where the groove of the ring's thread, carried on, meets the plane of the flange rear face: clock angle of
    /// the locked ring seen from the lens side. That plane stays where it is when the seat is skimmed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thread_start_deg: Option<f64>,
    /// Where the ridge of the lens's thread, carried on, meets the shoulder: clockwise from the lens's mark, seen
    /// from the front of the lens.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lens_start_deg: Option<f64>,
    /// Where the lens's mark came to rest in a trial fit, ring locked: clock angle seen from the lens side.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trial_reading_deg: Option<f64>,
}

fn clocking_is_unknown(clocking: &Clocking) -> bool {
    *clocking == Clocking::default()
}

/// A coating that changes the ring's size.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Finish {
    /// Build-up on each face, mm; 0 for bare metal.
    pub build_up_mm: f64,
    /// Whether seat and flange rear face are masked.
    pub faces_masked: bool,
    /// Whether the inside is blackened or stepped against reflections.
    pub inside_blackened: bool,
}

/// Writes the key enum, the document struct and the struct of plain resolved numbers.
macro_rules! ring_dimensions {
    ($($variant:ident = $field:ident, $unit:ident, $label:literal, $range:expr, $rule:literal;)*) => {
        /// The dimensions of the ring.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum RingKey { $(#[doc = $label] $variant,)* }

        impl RingKey {
            /// Every key, in the order in which the rules are worked.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];
            /// How many dimensions there are.
            pub const COUNT: usize = Self::ALL.len();

            /// The name in the file, in `check --json` and in formulas.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => stringify!($field),)* }
            }

            /// The label on screen.
            #[must_use]
            pub const fn label(self) -> &'static str {
                match self { $(Self::$variant => $label,)* }
            }

            /// The unit of the stored value.
            #[must_use]
            pub const fn unit(self) -> Unit {
                match self { $(Self::$variant => Unit::$unit,)* }
            }

            /// Least and greatest value that is not absurd.
            #[must_use]
            pub const fn range(self) -> (f64, f64) {
                match self { $(Self::$variant => $range,)* }
            }

            /// The rule by which it is derived, in words.
            #[must_use]
            pub const fn rule(self) -> &'static str {
                match self { $(Self::$variant => $rule,)* }
            }
        }

        /// The dimensions of the ring as the user states them.
        #[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
        #[serde(deny_unknown_fields, default)]
        pub struct RingDimensions {
            $(#[doc = $label] #[serde(skip_serializing_if = "dimension_is_derived")] pub $field: Dimension,)*
        }

        impl RingDimensions {
            /// The dimension behind `key`.
            #[must_use]
            pub const fn get(&self, key: RingKey) -> &Dimension {
                match key { $(RingKey::$variant => &self.$field,)* }
            }

            /// The dimension behind `key`, to change.
            pub const fn get_mut(&mut self, key: RingKey) -> &mut Dimension {
                match key { $(RingKey::$variant => &mut self.$field,)* }
            }
        }

        /// The resolved sizes of a ring: mm, and degrees for angles.
        #[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
        pub struct RingSizes {
            $(#[doc = $label] pub $field: f64,)*
        }

        impl RingSizes {
            /// The size behind `key`.
            #[must_use]
            pub const fn get(&self, key: RingKey) -> f64 {
                match key { $(RingKey::$variant => self.$field,)* }
            }

            /// The size behind `key`, to change.
            pub const fn get_mut(&mut self, key: RingKey) -> &mut f64 {
                match key { $(RingKey::$variant => &mut self.$field,)* }
            }
        }
    };
}

ring_dimensions! {
    SeatHeight = seat_height, Mm, "Seat height", (-60.0, 300.0), "lens register - body register + trim - finish on both faces";
    PlateThickness = plate_thickness, Mm, "Plate thickness", (0.3, 60.0), "the seat height, at most 2.5; under 1.2 of seat height: 1.5 with a counterbore";
    GrooveRootDiameter = groove_root_diameter, Mm, "Groove root diameter", (3.0, 300.0), "throat - 2 x spigot clearance";
    NoseDiameter = nose_diameter, Mm, "Nose diameter", (3.0, 300.0), "throat - 2 x spigot clearance";
    LugDiameter = lug_diameter, Mm, "Lug diameter", (4.0, 300.0), "slot diameter - 2 x lug clearance";
    GrooveWidth = groove_width, Mm, "Groove width", (0.2, 60.0), "ear front depth + ear thickness + play";
    LugThickness = lug_thickness, Mm, "Lug thickness", (0.2, 30.0), "1.3, at most what the body leaves behind the ears less 0.3";
    LugLeadIn = lug_lead_in, Mm, "Lug lead-in chamfer", (0.0, 5.0), "0.3 at 45 degrees";
    ThreadChamfer = thread_chamfer, Mm, "Thread entry chamfer", (0.0, 10.0), "half a pitch at 45 degrees; more where fillet or run-out at the male shoulder needs it";
    LipFaceDepth = lip_face_depth, Mm, "Lip face below the seat", (0.2, 200.0), "pressed: middle of the pin's protrusion at its bottom and fully stopped down, at least male thread + 0.3; otherwise thread length + relief width";
    ReliefWidth = relief_width, Mm, "Relief width", (0.0, 40.0), "short thread undercut where three turns remain, else what is left, never under 1.5 pitches; none where the thread runs through";
    ReliefDiameter = relief_diameter, Mm, "Relief diameter", (3.0, 300.0), "thread major diameter + the standard's excess";
    ThreadLength = thread_length, Mm, "Thread length", (0.2, 200.0), "with a lip: lip face depth - relief width; without: male thread + 1, or right through";
    LipBore = lip_bore, Mm, "Lip bore", (1.0, 300.0), "pressed: pin circle - pin diameter - 2 x pin landing; over the rear barrel where it reaches the lip, without a lip over the whole of it; never under the ray cone; at most the thread's minor diameter";
    LipThickness = lip_thickness, Mm, "Lip thickness", (0.1, 200.0), "1.0; without a pressed pin: what stands behind the relief";
    SpigotLength = spigot_length, Mm, "Spigot length", (0.2, 100.0), "the longer of groove + lug, and lip face + lip - seat height, without a lip thread entry chamfer + three turns - seat height; at most the free depth - 0.5";
    RearBore = rear_bore, Mm, "Rear bore", (1.0, 300.0), "lip bore, opening toward the sensor by the ray cone as far as the nose leaves a wall";
    AnnulusInner = annulus_inner, Mm, "Pin annulus, inside", (0.0, 300.0), "pin left free: pin circle - pin diameter - 2 x clearance, or the lip bore where that leaves a thin wall; 0 for none";
    AnnulusOuter = annulus_outer, Mm, "Pin annulus, outside", (0.0, 300.0), "pin left free: pin circle + pin diameter + 2 x clearance; 0 for none";
    AnnulusDepth = annulus_depth, Mm, "Pin annulus depth below the seat", (0.0, 200.0), "pin left free: free protrusion + 0.5; 0 for none";
    SeatDiameter = seat_diameter, Mm, "Seat diameter", (4.0, 400.0), "boss: shoulder + 2 x 0.5, at least thread major + 2 x 1.5; counterbore: shoulder + 2 x 0.2";
    FlangeDiameter = flange_diameter, Mm, "Flange diameter", (5.0, 400.0), "outer diameter of the body's bearing face; less under an aperture ring; never less than covers the lock pin through the whole twist";
    LockHoleDiameter = lock_hole_diameter, Mm, "Lock hole diameter", (0.0, 30.0), "body pin + 0.15; 0 for none";
    LockHoleDepth = lock_hole_depth, Mm, "Lock hole depth", (0.0, 60.0), "pin protrusion + 0.3, or through";
    LockHoleCircle = lock_hole_circle, Mm, "Lock hole circle", (0.0, 400.0), "the body's lock pin circle";
    LockHoleAngle = lock_hole_angle, Deg, "Lock hole angle", (-360.0, 720.0), "the body's lock pin angle, ring locked";
    IndexMarkAngle = index_mark_angle, Deg, "Index mark angle", (-360.0, 720.0), "the body's index angle, ring locked; 0 where it is unknown";
    EdgeBreak = edge_break, Mm, "Edge break", (0.0, 2.0), "0.15";
}

/// The ring.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Ring {
    /// The dimensions that carry a number.
    pub dimensions: RingDimensions,
    /// How the seat stands to the flange.
    pub seat: Choice<SeatKind>,
    /// The lugs when locked, on the clock face seen from the lens side.
    pub lugs: Choice<Vec<Sector>>,
    /// What the ring does with a stop-down pin.
    pub pin: Choice<PinHandling>,
    /// Added to the seat height on purpose, mm; negative lets the lens focus past infinity.
    pub trim_mm: f64,
    /// What keeps the lens from turning in the ring.
    pub thread_hold: ThreadHold,
    /// One piece or two.
    pub pieces: Pieces,
    /// How the gaps between the lugs are milled.
    pub milling: MillingMethod,
    /// The way through the shop; by its rule the first that the workshop can take.
    #[serde(skip_serializing_if = "Choice::is_derived")]
    pub route: Choice<Route>,
    /// The end mill for the gaps, by its name in the workshop file; empty takes the first that fits.
    pub cutter: String,
    /// The material, by its name in the workshop file.
    pub material: String,
    /// Coating and blackening.
    pub finish: Finish,
    /// Where the threads begin, and what a trial fit showed.
    #[serde(skip_serializing_if = "clocking_is_unknown")]
    pub clocking: Clocking,
}
