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
    /// How it cuts.
    #[serde(default)]
    pub cutting: CuttingGroup,
    /// Price of a kilogram in the user's own money; 0 where it is not known.
    #[serde(default)]
    pub price_per_kg: f64,
}

/// Materials that are cut at the same speeds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum CuttingGroup {
    /// Nobody has said: no speed is proposed.
    #[default]
    Unknown,
    /// Wrought aluminium alloys.
    Aluminium,
    /// Free-cutting brass.
    Brass,
    /// Mild steel.
    MildSteel,
    /// Free-cutting stainless steel.
    FreeStainless,
    /// Stainless steel that hardens under the tool.
    Stainless,
    /// Acetal.
    Acetal,
}

impl CuttingGroup {
    /// Every group.
    pub const ALL: [Self; 7] = [
        Self::Unknown,
        Self::Aluminium,
        Self::Brass,
        Self::MildSteel,
        Self::FreeStainless,
        Self::Stainless,
        Self::Acetal,
    ];

    /// The words on screen.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Unknown => "nobody has said: no speeds",
            Self::Aluminium => "wrought aluminium",
            Self::Brass => "free-cutting brass",
            Self::MildSteel => "mild steel",
            Self::FreeStainless => "free-cutting stainless steel",
            Self::Stainless => "stainless steel that hardens",
            Self::Acetal => "acetal",
        }
    }
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
