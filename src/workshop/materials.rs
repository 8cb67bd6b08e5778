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

/// Young's modulus below which a material is a plastic, GPa: metals have ten times more, plastics a third of it.
const PLASTIC_GPA: f64 = 10.0;

impl Material {
    /// Whether it is a plastic, which creeps under a lasting load.
    #[must_use]
    pub const fn creeps(&self) -> bool {
        self.youngs_modulus_gpa < PLASTIC_GPA
    }
}
