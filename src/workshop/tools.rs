//! Cutting tools and measuring instruments.

use serde::{Deserialize, Serialize};

/// An end mill.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cutter {
    /// Its name.
    pub name: String,
    /// Diameter as it cuts, run-out counted, mm.
    pub diameter_mm: f64,
    /// Cutting edges.
    pub flutes: u32,
    /// Length of the cutting edges, mm.
    pub cutting_length_mm: f64,
}

/// A lathe tool.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TurningTool {
    /// Its name.
    pub name: String,
    /// Width of the cutting edge along the axis, mm.
    pub width_mm: f64,
    /// How far it reaches sideways from its shank, mm.
    pub reach_mm: f64,
    /// The least bore it enters, mm; 0 for outside tools.
    pub least_bore_mm: f64,
}

/// A measuring instrument.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Instrument {
    /// Its name.
    pub name: String,
    /// Permissible error, mm either way.
    pub permissible_error_mm: f64,
    /// Smallest step it shows, mm.
    pub step_mm: f64,
}
