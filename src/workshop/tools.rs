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

/// What a lathe tool is for, by its name and by whether it works in a bore.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ToolDuty {
    /// Turns grooves from outside, or parts off.
    OutsideGroove,
    /// Bores.
    Boring,
    /// Turns grooves in a bore.
    InsideGroove,
    /// Cuts threads in a bore.
    InsideThread,
}

impl TurningTool {
    /// What it is for: an outside tool has no least bore; "thread" and "groov" in the name of an inside tool say
    /// what it cuts, any other bores.
    #[must_use]
    pub fn duty(&self) -> ToolDuty {
        let name = self.name.to_lowercase();
        if self.least_bore_mm <= 0.0 {
            ToolDuty::OutsideGroove
        } else if name.contains("thread") {
            ToolDuty::InsideThread
        } else if name.contains("groov") {
            ToolDuty::InsideGroove
        } else {
            ToolDuty::Boring
        }
    }

    /// Diameter of the bar of an inside tool, mm: what the least bore leaves beside the edge and the gap.
    #[must_use]
    pub fn bar_diameter_mm(&self) -> f64 {
        (self.least_bore_mm - self.reach_mm - BAR_GAP_MM).max(0.0)
    }
}

/// Gap that the least bore leaves round bar and edge, mm; common practice, no source.
const BAR_GAP_MM: f64 = 0.5;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::Workshop;

    #[test]
    fn the_shipped_tools_do_every_job() {
        let tools = Workshop::default_set().unwrap().turning_tools;
        for duty in [
            ToolDuty::OutsideGroove,
            ToolDuty::Boring,
            ToolDuty::InsideGroove,
            ToolDuty::InsideThread,
        ] {
            assert!(tools.iter().any(|tool| tool.duty() == duty), "{duty:?}");
        }
        // An 8 mm bar with an edge 2.5 out of it enters 11.
        let bar = tools
            .iter()
            .find(|tool| tool.name == "boring bar 8")
            .unwrap();
        assert!((bar.bar_diameter_mm() - 8.0).abs() < 1e-12);
    }
}
