//! The piece of bar to begin with, what becomes of it, and what it costs.
//!
//! Allowances are common practice, no source; mass is `ρ π/4 D² L`.

use crate::ring::{ResolvedRing, Solid};
use crate::workshop::{Material, ToolDuty, TurningTool, Workshop};

/// Bar over the largest finished diameter, at least, mm.
const OVER_DIAMETER_MM: f64 = 2.0;
/// Taken off to face one end, mm.
pub(super) const FACING_MM: f64 = 0.75;
/// Left on the parted face for facing it, mm.
pub(super) const PARTED_FACE_MM: f64 = 0.5;
/// Kerf of a saw where there is no parting blade, mm.
const SAW_MM: f64 = 2.0;
/// The chuck grips at least so much, mm.
const LEAST_GRIP_MM: f64 = 10.0;
/// And at least this share of the diameter.
const GRIP_SHARE: f64 = 0.25;

/// The bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stock {
    /// Diameter, whole mm.
    pub diameter_mm: f64,
    /// Length of the ring itself, mm.
    pub ring_length_mm: f64,
    /// Kerf of blade or saw, mm.
    pub kerf_mm: f64,
    /// Left in the chuck, mm.
    pub grip_mm: f64,
    /// Length to saw off the bar, mm.
    pub length_mm: f64,
    /// Mass of that piece, kg.
    pub mass_kg: f64,
    /// Mass of the finished ring, kg.
    pub ring_kg: f64,
    /// What it costs in the user's own money; `None` while the price of a kilogram is not given.
    pub cost: Option<f64>,
}

impl Stock {
    /// Mass that becomes chips and stump, kg.
    #[must_use]
    pub fn waste_kg(&self) -> f64 {
        self.mass_kg - self.ring_kg
    }

    /// Bought mass over used mass.
    #[must_use]
    pub fn buy_to_use(&self) -> f64 {
        self.mass_kg / self.ring_kg
    }
}

/// Mass of a round bar, kg: density in kg/m3, lengths in mm.
///
/// ```
/// use flangewright::plan::bar_mass_kg;
/// assert!((bar_mass_kg(2700.0, 65.0, 30.0) - 0.2688).abs() < 5e-5);
/// ```
#[must_use]
pub const fn bar_mass_kg(density_kg_m3: f64, diameter_mm: f64, length_mm: f64) -> f64 {
    density_kg_m3 * std::f64::consts::FRAC_PI_4 * diameter_mm * diameter_mm * length_mm * 1e-9
}

/// The bar for a ring of this material.
#[must_use]
pub fn stock(
    ring: &ResolvedRing,
    solid: &Solid,
    material: &Material,
    workshop: &Workshop,
) -> Stock {
    let sizes = &ring.sizes;
    let largest = sizes
        .flange_diameter
        .max(sizes.seat_diameter)
        .max(sizes.lug_diameter);
    let diameter_mm = (largest + OVER_DIAMETER_MM).ceil();
    let ring_length_mm = sizes.plate_thickness.max(sizes.seat_height) + sizes.spigot_length;
    let kerf_mm = parting_tool(workshop).map_or(SAW_MM, |tool| tool.width_mm);
    let grip_mm = LEAST_GRIP_MM.max(GRIP_SHARE * diameter_mm).ceil();
    let length_mm = (FACING_MM + ring_length_mm + PARTED_FACE_MM + kerf_mm + grip_mm).ceil();
    let mass_kg = bar_mass_kg(material.density_kg_m3, diameter_mm, length_mm);
    Stock {
        diameter_mm,
        ring_length_mm,
        kerf_mm,
        grip_mm,
        length_mm,
        mass_kg,
        ring_kg: solid.mass_g / 1000.0,
        cost: (material.price_per_kg > 0.0).then_some(material.price_per_kg * mass_kg),
    }
}

/// The workshop's parting blade: an outside tool that is named so.
#[must_use]
pub fn parting_tool(workshop: &Workshop) -> Option<&TurningTool> {
    workshop.turning_tools.iter().find(|tool| {
        tool.duty() == ToolDuty::OutsideGroove && tool.name.to_lowercase().contains("part")
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::evaluate::evaluate;

    /// Worked by hand: brass bar 65 x 30 weighs 0.8452 kg, a ring 60/42 x 10 of aluminium 0.0389 kg.
    #[test]
    fn masses() {
        assert!((bar_mass_kg(8490.0, 65.0, 30.0) - 0.8452).abs() < 5e-5);
        let ring = bar_mass_kg(2700.0, 60.0, 10.0) - bar_mass_kg(2700.0, 42.0, 10.0);
        assert!((ring - 0.0389).abs() < 5e-5);
    }

    #[test]
    fn the_bar_holds_the_ring_and_costs_nothing_until_priced() {
        let workshop = Workshop::default_set().unwrap();
        let design = demo_designs().unwrap().remove(0);
        let evaluation = evaluate(&design, &workshop);
        let ring = evaluation.derivation.ring.unwrap();
        let mut material = workshop.materials[0].clone();
        let solid = evaluation.solid.unwrap();
        let bar = stock(&ring, &solid, &material, &workshop);
        assert!(bar.diameter_mm >= ring.sizes.flange_diameter + 1.0);
        assert!(bar.length_mm >= bar.ring_length_mm + bar.kerf_mm + bar.grip_mm);
        assert!(bar.waste_kg() > 0.0 && bar.buy_to_use() > 1.0);
        assert_eq!(bar.cost, None);
        material.price_per_kg = 10.0;
        let priced = stock(&ring, &solid, &material, &workshop);
        assert!((priced.cost.unwrap() - 10.0 * priced.mass_kg).abs() < 1e-12);
    }
}
