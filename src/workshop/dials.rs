//! What the dials of a machine count in.

use serde::{Deserialize, Serialize};

/// Millimetres in an inch (exact by definition).
const INCH_MM: f64 = 25.4;

/// The unit on the dials.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Dials {
    /// Millimetres.
    #[default]
    Mm,
    /// Inches, in thousandths.
    Inch,
}

impl Dials {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Mm, Self::Inch];

    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Mm => "millimetres",
            Self::Inch => "inches",
        }
    }

    /// The sign of the unit.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Inch => "in",
        }
    }

    /// A length in mm as the dial shows it: to a thousandth of a millimetre, or a ten-thousandth of an inch.
    ///
    /// ```
    /// use flangewright::workshop::Dials;
    /// assert_eq!(Dials::Mm.shown(0.5413), "0.541");
    /// assert_eq!(Dials::Inch.shown(0.5413), "0.0213");
    /// ```
    #[must_use]
    pub fn shown(self, length_mm: f64) -> String {
        match self {
            Self::Mm => format!("{length_mm:.3}"),
            Self::Inch => format!("{:.4}", length_mm / INCH_MM),
        }
    }
}
