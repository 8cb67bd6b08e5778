//! Fits of ISO 286 for clearance: holes D to H, shafts d to h, grades 5 to 11.
//!
//! The tables are read in public copies of ISO 286-1 and -2 (all steps of the grades and of the deviations
//! d to g, which several copies agree on). The rounded table is what counts; the formulas serve as a test.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Letter of the deviation, the same table for hole and shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FitLetter {
    /// D or d, loose running.
    D,
    /// E or e.
    E,
    /// F or f, running.
    F,
    /// G or g, close sliding.
    G,
    /// H or h, zone beginning at the nominal size.
    H,
}

impl FitLetter {
    fn of(letter: char) -> Option<Self> {
        match letter.to_ascii_uppercase() {
            'D' => Some(Self::D),
            'E' => Some(Self::E),
            'F' => Some(Self::F),
            'G' => Some(Self::G),
            'H' => Some(Self::H),
            _ => None,
        }
    }

    /// The letter as a capital.
    #[must_use]
    pub fn capital(self) -> char {
        match self {
            Self::D => 'D',
            Self::E => 'E',
            Self::F => 'F',
            Self::G => 'G',
            Self::H => 'H',
        }
    }
}

/// A fit class such as H7 (hole) or h9 (shaft); written to files as that text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct FitClass {
    letter: FitLetter,
    is_hole: bool,
    grade: u8,
}

/// Limit deviations from a nominal size, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Deviations {
    /// Lower deviation, mm.
    pub lower_mm: f64,
    /// Upper deviation, mm.
    pub upper_mm: f64,
}

/// Why there is no such fit.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FitError {
    /// Not a fit class.
    #[error(
        "fit \"{typed}\" is not understood: write D, E, F, G or H for a hole, d, e, f, g or h for a shaft, and a grade from 5 to 11, such as H7 or h9"
    )]
    NotUnderstood {
        /// What was typed.
        typed: String,
    },
    /// Size outside the table.
    #[error(
        "no fits are listed for a diameter of {diameter_mm} mm: the table goes from over 0 to {greatest_mm} mm; give plus and minus instead"
    )]
    OutsideTable {
        /// The diameter, mm.
        diameter_mm: f64,
        /// Largest diameter listed, mm.
        greatest_mm: f64,
    },
}

/// One step of diameters: up to and including, mm; IT5 to IT11 and magnitudes of d, e, f, g, micrometres.
struct Step {
    up_to_mm: f64,
    grades_um: [u16; 7],
    deviations_um: [u16; 4],
}

const fn step(up_to_mm: f64, grades_um: [u16; 7], deviations_um: [u16; 4]) -> Step {
    Step {
        up_to_mm,
        grades_um,
        deviations_um,
    }
}

const STEPS: [Step; 9] = [
    step(3.0, [4, 6, 10, 14, 25, 40, 60], [20, 14, 6, 2]),
    step(6.0, [5, 8, 12, 18, 30, 48, 75], [30, 20, 10, 4]),
    step(10.0, [6, 9, 15, 22, 36, 58, 90], [40, 25, 13, 5]),
    step(18.0, [8, 11, 18, 27, 43, 70, 110], [50, 32, 16, 6]),
    step(30.0, [9, 13, 21, 33, 52, 84, 130], [65, 40, 20, 7]),
    step(50.0, [11, 16, 25, 39, 62, 100, 160], [80, 50, 25, 9]),
    step(80.0, [13, 19, 30, 46, 74, 120, 190], [100, 60, 30, 10]),
    step(120.0, [15, 22, 35, 54, 87, 140, 220], [120, 72, 36, 12]),
    step(180.0, [18, 25, 40, 63, 100, 160, 250], [145, 85, 43, 14]),
];

/// Largest diameter in the table, mm.
const GREATEST_MM: f64 = 180.0;

impl FitClass {
    /// Finest and coarsest grade in the table.
    const GRADES: (u8, u8) = (5, 11);

    /// h9, the usual class of a turned shaft that slides.
    pub const SHAFT_H9: Self = Self {
        letter: FitLetter::H,
        is_hole: false,
        grade: 9,
    };

    /// Letter of the deviation.
    #[must_use]
    pub fn letter(self) -> FitLetter {
        self.letter
    }

    /// True for a hole (capital letter).
    #[must_use]
    pub fn is_hole(self) -> bool {
        self.is_hole
    }

    /// Standard tolerance grade, 5 to 11.
    #[must_use]
    pub fn grade(self) -> u8 {
        self.grade
    }

    /// Limit deviations in mm of this class at a diameter in mm.
    ///
    /// # Errors
    /// [`FitError::OutsideTable`] for diameters of zero and less and over 180 mm.
    ///
    /// ```
    /// use flangewright::standards::FitClass;
    /// let fit: FitClass = "h9".parse()?;
    /// let deviations = fit.deviations(54.0)?;
    /// assert_eq!((deviations.lower_mm, deviations.upper_mm), (-0.074, 0.0));
    /// # Ok::<(), flangewright::standards::FitError>(())
    /// ```
    pub fn deviations(self, diameter_mm: f64) -> Result<Deviations, FitError> {
        let step = STEPS
            .iter()
            .find(|step| diameter_mm > 0.0 && diameter_mm <= step.up_to_mm)
            .ok_or(FitError::OutsideTable {
                diameter_mm,
                greatest_mm: GREATEST_MM,
            })?;
        let [d, e, f, g] = step.deviations_um;
        let near_um = match self.letter {
            FitLetter::D => d,
            FitLetter::E => e,
            FitLetter::F => f,
            FitLetter::G => g,
            FitLetter::H => 0,
        };
        let index = usize::from(self.grade.saturating_sub(Self::GRADES.0));
        // The grade was held to 5 to 11 when the class was made, so the cell is there.
        let width_um = step.grades_um.get(index).copied().unwrap_or_default();
        let far_um = near_um + width_um;
        let mm = |um: u16| f64::from(um) / 1000.0;
        Ok(if self.is_hole {
            Deviations {
                lower_mm: mm(near_um),
                upper_mm: mm(far_um),
            }
        } else {
            // Zero less, so that h has an upper deviation of 0 and not of -0.
            Deviations {
                lower_mm: 0.0 - mm(far_um),
                upper_mm: 0.0 - mm(near_um),
            }
        })
    }
}

impl FromStr for FitClass {
    type Err = FitError;

    fn from_str(typed: &str) -> Result<Self, Self::Err> {
        let text = typed.trim();
        let not_understood = || FitError::NotUnderstood {
            typed: text.chars().take(24).collect(),
        };
        let mut characters = text.chars();
        let first = characters.next().ok_or_else(not_understood)?;
        let letter = FitLetter::of(first).ok_or_else(not_understood)?;
        let digits = characters.as_str().trim_start();
        let grade: u8 = digits.parse().map_err(|_| not_understood())?;
        let plain = digits.chars().all(|c| c.is_ascii_digit());
        if !plain || !(Self::GRADES.0..=Self::GRADES.1).contains(&grade) {
            return Err(not_understood());
        }
        Ok(Self {
            letter,
            is_hole: first.is_ascii_uppercase(),
            grade,
        })
    }
}

impl fmt::Display for FitClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let capital = self.letter.capital();
        let letter = if self.is_hole {
            capital
        } else {
            capital.to_ascii_lowercase()
        };
        write!(f, "{letter}{}", self.grade)
    }
}

impl TryFrom<String> for FitClass {
    type Error = FitError;

    fn try_from(text: String) -> Result<Self, Self::Error> {
        text.parse()
    }
}

impl From<FitClass> for String {
    fn from(class: FitClass) -> Self {
        class.to_string()
    }
}
