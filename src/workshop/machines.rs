//! Lathe, mill and dividing head.

use serde::{Deserialize, Serialize};

/// A lathe.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lathe {
    /// Its name.
    pub name: String,
    /// Spindle speeds, rpm, lowest first.
    pub spindle_rpm: Vec<f64>,
    /// The speed used for threading, rpm.
    pub threading_rpm: f64,
    /// Pitch of the leadscrew, mm.
    pub leadscrew_pitch_mm: f64,
    /// Angle of the compound slide for threading, degrees from the cross-slide direction.
    pub compound_angle_deg: f64,
}

/// A mill.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mill {
    /// Its name.
    pub name: String,
    /// Spindle speeds, rpm, lowest first.
    pub spindle_rpm: Vec<f64>,
}

/// A dividing head.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DividingHead {
    /// Its name.
    pub name: String,
    /// Turns of the crank for one turn of the work.
    pub ratio: u32,
    /// Hole circles, plate by plate.
    pub plates: Vec<Vec<u32>>,
}
