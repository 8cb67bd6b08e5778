//! How the drawing of a design is laid out and signed.

use serde::{Deserialize, Serialize};

/// Paper of the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Paper {
    /// 297 x 210 mm.
    #[default]
    A4Landscape,
    /// 420 x 297 mm.
    A3Landscape,
}

/// The sheet: paper, cut and title block (fields of ISO 7200).
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Sheet {
    /// Paper.
    pub paper: Paper,
    /// Clock angle at which the half-section is cut, degrees.
    pub section_angle_deg: f64,
    /// Resolution of a PNG export, dots an inch.
    pub dpi: u32,
    /// Legal owner.
    pub owner: String,
    /// Identification number.
    pub number: String,
    /// Creator.
    pub creator: String,
    /// Approval person.
    pub approved: String,
    /// Date of issue, as the user writes it.
    pub date: String,
    /// Whether numbers carry a decimal comma, as ISO 129-1 has it.
    pub decimal_comma: bool,
}

impl Default for Sheet {
    fn default() -> Self {
        Self {
            paper: Paper::A4Landscape,
            section_angle_deg: 0.0,
            dpi: 300,
            owner: String::new(),
            number: String::new(),
            creator: String::new(),
            approved: String::new(),
            date: String::new(),
            decimal_comma: false,
        }
    }
}
