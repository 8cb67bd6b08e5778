//! Materials.

use serde::{Deserialize, Serialize};

/// A material.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Material {
    /// Its name, by alloy number or trade name of the stuff.
    pub name: String,
    /// Density, kg/m3.
    pub density_kg_m3: f64,
    /// Young's modulus, in GPa.
    pub youngs_modulus_gpa: f64,
    /// Yield strength, in MPa.
    pub yield_mpa: f64,
    /// Thermal expansion, 1e-6/K.
    pub expansion_um_m_k: f64,
    /// Where the row comes from.
    pub source: String,
}
