//! The body: flange, ears, lock and everything else that the ring has to meet or to miss.

use serde::{Deserialize, Serialize};

use super::fields::interface_fields;
use super::{Interface, Presence, RowReadings};

/// An angular stretch on the clock face seen from the lens side, degrees, clockwise positive.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sector {
    /// Where it begins, clock degrees.
    pub start_deg: f64,
    /// How far it reaches clockwise, degrees.
    pub extent_deg: f64,
}

impl Sector {
    /// Where it ends, clock degrees, not wrapped.
    #[must_use]
    pub const fn end_deg(&self) -> f64 {
        self.start_deg + self.extent_deg
    }

    /// Its middle, clock degrees, not wrapped.
    #[must_use]
    pub const fn middle_deg(&self) -> f64 {
        self.start_deg + self.extent_deg / 2.0
    }
}

/// The way the ring is turned to lock it, seen from the lens side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hand {
    /// Clockwise seen from the lens side.
    Clockwise,
    /// Anticlockwise seen from the lens side.
    Anticlockwise,
}

impl Hand {
    /// +1 for clockwise, -1 for anticlockwise: the sign of a clock angle.
    #[must_use]
    pub const fn sign(self) -> f64 {
        match self {
            Self::Clockwise => 1.0,
            Self::Anticlockwise => -1.0,
        }
    }

    /// The word on screen.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Clockwise => "clockwise",
            Self::Anticlockwise => "anticlockwise",
        }
    }
}

/// A point of the depth that stays free behind the flange.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FreeDepth {
    /// Distance from the axis, mm.
    pub radius_mm: f64,
    /// Free depth behind the flange there, mm, anything that sweeps (a mirror) counted.
    pub depth_mm: f64,
}

/// Something fixed to the body that ring or lens could meet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Obstacle {
    /// What it is.
    pub name: String,
    /// Where it stands on the clock face.
    pub sector: Sector,
    /// Inner radius, mm.
    pub inner_radius_mm: f64,
    /// Outer radius, mm.
    pub outer_radius_mm: f64,
    /// Its end toward the lens, mm from the flange, negative ahead of it.
    pub from_z_mm: f64,
    /// Its end toward the sensor, mm from the flange.
    pub to_z_mm: f64,
}

/// A bayonet body. Lengths mm, z positive behind the flange.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Body {
    /// Name, the user's own.
    pub name: String,
    /// Free notes; an invented part says so here.
    pub notes: String,
    /// Flange to image plane, mm.
    pub register: Interface<f64>,
    /// Clear bore inside the ears, mm.
    pub throat: Interface<f64>,
    /// Bore in which the lugs pass, mm.
    pub slot_diameter: Interface<f64>,
    /// Inner diameter of the flange's bearing face, mm.
    pub flange_inner: Interface<f64>,
    /// Outer diameter of the flange's bearing face, mm.
    pub flange_outer: Interface<f64>,
    /// Front face of the ears behind the flange, mm.
    pub ear_front_depth: Interface<f64>,
    /// Ear thickness along the axis, mm.
    pub ear_thickness: Interface<f64>,
    /// The ears on the clock face.
    pub ears: Interface<Vec<Sector>>,
    /// Whether springs pull the lugs against the ears.
    pub springs: Presence,
    /// Diameter on which the springs pull, mm.
    pub spring_circle: Interface<f64>,
    /// Pull of all springs together, N.
    pub spring_force: Interface<f64>,
    /// Turn from entry to lock, degrees.
    pub twist: Interface<f64>,
    /// The way of that turn.
    pub twist_hand: Interface<Hand>,
    /// Whether a fixed stop ends the turn.
    pub stop: Presence,
    /// Clock angle of the stop face that a lug meets, degrees.
    pub stop_angle: Interface<f64>,
    /// Distance of the stop from the axis, mm.
    pub stop_radius: Interface<f64>,
    /// Depth of the stop behind the flange, mm.
    pub stop_depth: Interface<f64>,
    /// Whether a sprung lock pin falls into the ring.
    pub lock_pin: Presence,
    /// Diameter of the circle on which the lock pin stands, mm.
    pub lock_pin_circle: Interface<f64>,
    /// Lock pin diameter, mm.
    pub lock_pin_diameter: Interface<f64>,
    /// How far the lock pin stands out of the flange, mm.
    pub lock_pin_protrusion: Interface<f64>,
    /// Clock angle of the lock pin, degrees.
    pub lock_pin_angle: Interface<f64>,
    /// Clock angle of the body's index mark, degrees.
    pub index_angle: Interface<f64>,
    /// Depth free behind the flange by radius.
    pub free_depth: Interface<Vec<FreeDepth>>,
    /// Whether what ends the free depth moves (a mirror) or stands still.
    pub mirror: Presence,
    /// Things fixed to the body near the mount.
    pub obstacles: Interface<Vec<Obstacle>>,
    /// Sensor or film gate width, mm.
    pub sensor_width: Interface<f64>,
    /// Sensor or film gate height, mm.
    pub sensor_height: Interface<f64>,
    /// Pixel pitch, mm.
    pub pixel_pitch: Interface<f64>,
    /// Readings of the numbers of its lists.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub row_readings: Vec<RowReadings>,
}

interface_fields! {
    /// The scalar values of a body.
    BodyField of Body {
        Register = register, Mm, "Register", (1.0, 400.0), "Depth micrometer from the flange to the film gate or sensor cover, cover glass allowed for";
        Throat = throat, Mm, "Throat", (5.0, 300.0), "Caliper, inside jaws on opposite ears; with three ears measure ear to axis with a plug";
        SlotDiameter = slot_diameter, Mm, "Slot diameter", (5.0, 300.0), "Caliper, inside jaws in the slots between the ears";
        FlangeInner = flange_inner, Mm, "Bearing face, inside", (5.0, 300.0), "Caliper, inside jaws on the edge of the flange face";
        FlangeOuter = flange_outer, Mm, "Bearing face, outside", (5.0, 400.0), "Caliper across the flange face";
        EarFrontDepth = ear_front_depth, Mm, "Ear front depth", (0.0, 30.0), "Depth gauge from the flange to the front of an ear";
        EarThickness = ear_thickness, Mm, "Ear thickness", (0.1, 30.0), "Feeler or pin gauge behind the ear, or depth gauge to both faces of an ear";
        SpringCircle = spring_circle, Mm, "Spring circle", (5.0, 300.0), "Caliper over the leaf springs behind the ears";
        SpringForce = spring_force, N, "Spring pull", (0.0, 500.0), "Spring balance on a plain plug until the flange gapes";
        Twist = twist, Deg, "Twist to lock", (1.0, 300.0), "Protractor: turn from the entry mark to the lock";
        StopAngle = stop_angle, Deg, "Stop angle", (-360.0, 720.0), "Photograph over a protractor, seen from the lens side";
        StopRadius = stop_radius, Mm, "Stop radius", (2.0, 200.0), "Caliper from the axis side of the throat";
        StopDepth = stop_depth, Mm, "Stop depth", (0.0, 60.0), "Depth gauge from the flange to the stop";
        LockPinCircle = lock_pin_circle, Mm, "Lock pin circle", (5.0, 400.0), "Caliper from the throat edge to the pin, twice, plus the throat";
        LockPinDiameter = lock_pin_diameter, Mm, "Lock pin diameter", (0.3, 20.0), "Caliper";
        LockPinProtrusion = lock_pin_protrusion, Mm, "Lock pin protrusion", (0.1, 20.0), "Depth gauge from the pin tip to the flange";
        LockPinAngle = lock_pin_angle, Deg, "Lock pin angle", (-360.0, 720.0), "Photograph over a protractor, seen from the lens side";
        IndexAngle = index_angle, Deg, "Index mark angle", (-360.0, 720.0), "Photograph over a protractor, seen from the lens side";
        SensorWidth = sensor_width, Mm, "Sensor width", (1.0, 300.0), "From the maker's sheet, or a caliper in the film gate";
        SensorHeight = sensor_height, Mm, "Sensor height", (1.0, 300.0), "From the maker's sheet, or a caliper in the film gate";
        PixelPitch = pixel_pitch, Mm, "Pixel pitch", (0.0003, 0.1), "Sensor width over the pixels across it";
    }
}
