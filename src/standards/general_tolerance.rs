//! General tolerances of ISO 2768-1: lengths, broken edges, angles, for dimensions without a tolerance of
//! their own.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Tolerance class of ISO 2768-1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum GeneralClass {
    /// f
    Fine,
    /// m
    Medium,
    /// c
    Coarse,
    /// v
    VeryCoarse,
}

/// A size for which ISO 2768-1 gives no general tolerance.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum GeneralToleranceError {
    /// Outside the columns of the table.
    #[error(
        "ISO 2768-{letter} gives no general tolerance for a {what} of {size_mm} mm (it reaches from {least_mm} to {greatest_mm} mm): write the tolerance beside the dimension"
    )]
    OutsideTable {
        /// Letter of the class.
        letter: char,
        /// Length, edge or shorter leg.
        what: &'static str,
        /// The size, mm.
        size_mm: f64,
        /// Least size listed for the class, mm.
        least_mm: f64,
        /// Greatest size listed here, mm.
        greatest_mm: f64,
    },
}

/// Least size that general tolerances are given for, mm; smaller ones carry their own.
const LEAST_MM: f64 = 0.5;
/// Greatest size of the columns kept here, mm.
const GREATEST_MM: f64 = 400.0;

/// Linear sizes: up to and including, mm; plus-minus for f, m, c, v, mm. Table 1, read in a copy of DIN ISO
/// 2768-1. That copy prints 0.15 and 0.2 for class c up to 3 and 6 mm; 0.2 and 0.3 as ISO 2768-1:1989 has them
/// (from memory) are kept until a clean copy is seen.
const LINEAR: [(f64, [Option<f64>; 4]); 5] = [
    (3.0, [Some(0.05), Some(0.1), Some(0.2), None]),
    (6.0, [Some(0.05), Some(0.1), Some(0.3), Some(0.5)]),
    (30.0, [Some(0.1), Some(0.2), Some(0.5), Some(1.0)]),
    (120.0, [Some(0.15), Some(0.3), Some(0.8), Some(1.5)]),
    (GREATEST_MM, [Some(0.2), Some(0.5), Some(1.2), Some(2.5)]),
];

/// Broken edges, radii and chamfers: up to and including, mm; plus-minus for f and m, for c and v, mm (table 2).
const EDGES: [(f64, f64, f64); 3] = [(3.0, 0.2, 0.4), (6.0, 0.5, 1.0), (GREATEST_MM, 1.0, 2.0)];

/// Angles: shorter leg up to and including, mm; plus-minus for f and m, c, v, minutes (table 3; from memory
/// but for 30', 20' and 10').
const ANGLES: [(f64, [f64; 3]); 4] = [
    (10.0, [60.0, 90.0, 180.0]),
    (50.0, [30.0, 60.0, 120.0]),
    (120.0, [20.0, 30.0, 60.0]),
    (GREATEST_MM, [10.0, 15.0, 30.0]),
];

impl GeneralClass {
    /// The letter of the standard.
    #[must_use]
    pub fn letter(self) -> char {
        match self {
            Self::Fine => 'f',
            Self::Medium => 'm',
            Self::Coarse => 'c',
            Self::VeryCoarse => 'v',
        }
    }

    /// Plus-minus in mm of a length or diameter in mm.
    ///
    /// # Errors
    /// [`GeneralToleranceError::OutsideTable`] below 0.5 mm (3 mm in class v) and above 400 mm.
    ///
    /// ```
    /// use flangewright::standards::GeneralClass;
    /// assert_eq!(GeneralClass::Medium.linear_mm(54.0)?, 0.3);
    /// # Ok::<(), flangewright::standards::GeneralToleranceError>(())
    /// ```
    pub fn linear_mm(self, size_mm: f64) -> Result<f64, GeneralToleranceError> {
        let row = LINEAR.iter().find(|(up_to, _)| size_mm <= *up_to);
        row.filter(|_| size_mm >= LEAST_MM)
            .and_then(|(_, [f, m, c, v])| match self {
                Self::Fine => *f,
                Self::Medium => *m,
                Self::Coarse => *c,
                Self::VeryCoarse => *v,
            })
            .ok_or_else(|| self.outside("length", size_mm, self.least_length_mm()))
    }

    /// Plus-minus in mm of an external radius or chamfer height in mm.
    ///
    /// # Errors
    /// [`GeneralToleranceError::OutsideTable`] below 0.5 mm and above 400 mm.
    pub fn broken_edge_mm(self, size_mm: f64) -> Result<f64, GeneralToleranceError> {
        EDGES
            .iter()
            .find(|(up_to, _, _)| size_mm >= LEAST_MM && size_mm <= *up_to)
            .map(|(_, fine, coarse)| match self {
                Self::Fine | Self::Medium => *fine,
                Self::Coarse | Self::VeryCoarse => *coarse,
            })
            .ok_or_else(|| self.outside("broken edge", size_mm, LEAST_MM))
    }

    /// Plus-minus in degrees of an angle whose shorter leg is this long in mm.
    ///
    /// Far too loose for bayonet lugs: class m leaves 30 minutes, 0.22 mm at a radius of 25.5 mm.
    ///
    /// # Errors
    /// [`GeneralToleranceError::OutsideTable`] for a leg of zero and less and above 400 mm.
    pub fn angle_deg(self, shorter_leg_mm: f64) -> Result<f64, GeneralToleranceError> {
        ANGLES
            .iter()
            .find(|(up_to, _)| shorter_leg_mm > 0.0 && shorter_leg_mm <= *up_to)
            .map(|(_, [fine, coarse, very_coarse])| match self {
                Self::Fine | Self::Medium => fine / 60.0,
                Self::Coarse => coarse / 60.0,
                Self::VeryCoarse => very_coarse / 60.0,
            })
            .ok_or_else(|| self.outside("shorter leg of an angle", shorter_leg_mm, 0.0))
    }

    fn outside(self, what: &'static str, size_mm: f64, least_mm: f64) -> GeneralToleranceError {
        GeneralToleranceError::OutsideTable {
            letter: self.letter(),
            what,
            size_mm,
            least_mm,
            greatest_mm: GREATEST_MM,
        }
    }

    /// Least length listed for the class, mm: v begins over 3 mm.
    fn least_length_mm(self) -> f64 {
        match self {
            Self::Fine | Self::Medium | Self::Coarse => LEAST_MM,
            Self::VeryCoarse => 3.0,
        }
    }
}
