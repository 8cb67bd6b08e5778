//! Volume and mass of the finished ring, gaps and holes counted.

use crate::geometry::{Prism, revolve};
use crate::workshop::Material;

use super::flank::LugFlank;
use super::parts::Parts;
use super::resolved::ResolvedRing;

/// The ring as a lump of stuff.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solid {
    /// Volume, mm3; the thread counted as a plain bore at its minor diameter.
    pub volume_mm3: f64,
    /// Mass, g.
    pub mass_g: f64,
    /// Centre of mass along the axis from the flange rear face, mm; positive behind it.
    pub centroid_z_mm: f64,
}

/// Steps of the sum over the root fillets of the lugs.
const STEPS: u32 = 64;
/// Grams in a kilogram.
const GRAMS: f64 = 1000.0;

/// Volume by Pappus-Guldin: the section through a lug over the angle of the lugs, the section between lugs over
/// the rest, the root fillets that the cutter leaves, less the lock hole. `None` where the sections make no solid.
#[must_use]
pub fn solid_of(ring: &ResolvedRing, parts: &Parts, material: &Material) -> Option<Solid> {
    let sizes = &ring.sizes;
    let lug_angle: f64 = ring
        .lugs
        .iter()
        .map(|lug| lug.extent_deg.to_radians())
        .sum();
    let through = revolve(&parts.through_lug).ok()?.part_of_turn(lug_angle);
    let between = revolve(&parts.between_lugs)
        .ok()?
        .part_of_turn(std::f64::consts::TAU - lug_angle);
    let hole = Prism::round(sizes.lock_hole_diameter, -sizes.lock_hole_depth, 0.0);
    let turned = through.plus(&between).without(&hole);
    let fillets = fillet_area(ring) * sizes.lug_thickness;
    let volume = turned.volume + fillets;
    let moment = turned.moment + fillets * (sizes.groove_width + sizes.lug_thickness / 2.0);
    let mass_g = GRAMS * volume / turned.volume * turned.mass(material.density_kg_m3);
    Some(Solid {
        volume_mm3: volume,
        mass_g,
        centroid_z_mm: moment / volume,
    })
}

/// Plan area of all root fillets, both sides of every lug, mm2 (midpoint sum).
fn fillet_area(ring: &ResolvedRing) -> f64 {
    let (root, tip) = (
        ring.sizes.nose_diameter / 2.0,
        ring.sizes.lug_diameter / 2.0,
    );
    let flank = LugFlank::of(ring);
    let step = (tip - root) / f64::from(STEPS);
    let one: f64 = (0..STEPS)
        .map(|index| flank.intrusion(root + (f64::from(index) + 0.5) * step) * step)
        .sum();
    ring.lugs.iter().map(|_| 2.0 * one).sum()
}
