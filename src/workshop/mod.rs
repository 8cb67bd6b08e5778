//! Floor `workshop`: the user's machines, tools, instruments and materials, as data.
//!
//! May use `mount` (for units) and `document` (for its text form). Must not know of rings or checks.

mod dials;
mod fault;
mod machines;
mod materials;
mod tools;

use serde::{Deserialize, Serialize};

use crate::document::{ReadError, read_ron};

pub use dials::Dials;
pub use fault::faults_of;
pub use machines::{Chuck, ChuckKey, DividingHead, Lathe, Mill, RotaryTable};
pub use materials::{CuttingGroup, Material};
pub use tools::{Cutter, Instrument, ToolDuty, TurningTool};

/// Number of the workshop's file format.
const FORMAT: u32 = 1;

/// The default set, as shipped.
const DEFAULT_SET: &str = include_str!("../../assets/workshop.ron");

/// The user's workshop: kept apart from the designs, named by them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Workshop {
    /// Number of the file format.
    pub format: u32,
    /// The lathe.
    pub lathe: Lathe,
    /// The chuck on the lathe.
    #[serde(default)]
    pub chuck: Chuck,
    /// The mill.
    pub mill: Mill,
    /// The dividing head.
    pub dividing_head: DividingHead,
    /// The rotary table, if there is one.
    #[serde(default)]
    pub rotary_table: Option<RotaryTable>,
    /// End mills.
    pub cutters: Vec<Cutter>,
    /// Lathe tools.
    pub turning_tools: Vec<TurningTool>,
    /// Measuring instruments.
    pub instruments: Vec<Instrument>,
    /// Materials.
    pub materials: Vec<Material>,
}

impl Workshop {
    /// The default set.
    ///
    /// # Errors
    /// None in a whole program: a test reads the shipped set.
    pub fn default_set() -> Result<Self, ReadError> {
        read_ron(DEFAULT_SET)
    }

    /// A workshop from a file's text, refused where a value is one that no workshop may have.
    ///
    /// # Errors
    /// As [`read_ron`]; besides a newer format, and every faulty field by name, value and what is allowed.
    pub fn read(text: &str) -> Result<Self, ReadError> {
        let workshop: Self = read_ron(text)?;
        if workshop.format > FORMAT {
            return Err(ReadError::Newer {
                found: workshop.format,
            });
        }
        let faults = faults_of(&workshop);
        if faults.is_empty() {
            Ok(workshop)
        } else {
            Err(ReadError::Faults(faults))
        }
    }

    /// The default set as text, for the user to edit.
    #[must_use]
    pub const fn default_text() -> &'static str {
        DEFAULT_SET
    }

    /// The named end mill, or the first one when `name` is empty or unknown.
    #[must_use]
    pub fn cutter(&self, name: &str) -> Option<&Cutter> {
        self.cutters
            .iter()
            .find(|cutter| cutter.name == name)
            .or_else(|| self.cutters.first())
    }

    /// The named material, or the first one when `name` is empty or unknown.
    #[must_use]
    pub fn material(&self, name: &str) -> Option<&Material> {
        self.materials
            .iter()
            .find(|material| material.name == name)
            .or_else(|| self.materials.first())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_default_set_is_whole() {
        let workshop = Workshop::default_set().unwrap();
        assert!(
            workshop
                .cutters
                .iter()
                .all(|cutter| cutter.diameter_mm > 0.0)
        );
        assert!(
            workshop
                .materials
                .iter()
                .all(|material| material.density_kg_m3 > 1000.0)
        );
        assert!(
            workshop
                .lathe
                .spindle_rpm
                .contains(&workshop.lathe.threading_rpm)
        );
    }

    #[test]
    fn a_file_from_before_change_gears_and_prices_is_still_read() {
        let kept: Vec<&str> = DEFAULT_SET
            .lines()
            .filter(|line| !line.contains("change_gears") && !line.contains("rotary_table"))
            .collect();
        let mut text = kept.join("\n");
        for group in ["Aluminium", "Brass", "MildSteel", "FreeStainless", "Acetal"] {
            text = text.replace(&format!(", cutting: {group}"), "");
        }
        assert!(!text.contains("cutting:"));
        let old: Workshop = read_ron(&text).unwrap();
        assert!(old.lathe.change_gears.contains(&127));
        assert!(old.dividing_head.takes_lathe_chuck);
        assert_eq!(old.materials[0].cutting, CuttingGroup::Unknown);
        assert!(old.materials.iter().all(|one| one.price_per_kg <= 0.0));
    }
}
