//! Tolerance classes of threads: ISO metric (grade and position) and unified (1 to 3, A or B).

use std::fmt;

use thiserror::Error;

use super::limits::Side;

/// Where the tolerance zone of a metric thread lies (ISO 965-1).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Position {
    /// Internal, zone starting at the basic profile.
    CapitalH,
    /// Internal, with an allowance.
    CapitalG,
    /// External, zone starting at the basic profile.
    SmallH,
    /// External, with the usual small allowance.
    SmallG,
    /// External, with a larger allowance.
    SmallF,
    /// External, with the largest allowance given here.
    SmallE,
}

impl Position {
    /// The position a letter stands for; capitals are internal threads.
    #[must_use]
    pub fn from_letter(letter: char) -> Option<Self> {
        match letter {
            'H' => Some(Self::CapitalH),
            'G' => Some(Self::CapitalG),
            'h' => Some(Self::SmallH),
            'g' => Some(Self::SmallG),
            'f' => Some(Self::SmallF),
            'e' => Some(Self::SmallE),
            _ => None,
        }
    }

    /// The letter of this position.
    #[must_use]
    pub fn letter(self) -> char {
        match self {
            Self::CapitalH => 'H',
            Self::CapitalG => 'G',
            Self::SmallH => 'h',
            Self::SmallG => 'g',
            Self::SmallF => 'f',
            Self::SmallE => 'e',
        }
    }

    /// Internal for capitals, external for small letters.
    #[must_use]
    pub fn side(self) -> Side {
        match self {
            Self::CapitalH | Self::CapitalG => Side::Internal,
            Self::SmallH | Self::SmallG | Self::SmallF | Self::SmallE => Side::External,
        }
    }
}

/// A tolerance class that does not exist.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ClassError {
    /// Grade of the pitch diameter outside the standard.
    #[error(
        "thread class: pitch-diameter grade {grade} does not exist for an {side} thread; {allowed} do (usual: 6H in the ring, 6g on the lens)"
    )]
    PitchDiameterGrade {
        /// The grade asked for.
        grade: u8,
        /// Internal or external.
        side: Side,
        /// The grades there are.
        allowed: &'static str,
    },
    /// Grade of the crest diameter outside the standard.
    #[error(
        "thread class: crest-diameter grade {grade} does not exist for an {side} thread; {allowed} do, so write both grades, such as {example}"
    )]
    CrestGrade {
        /// The grade asked for.
        grade: u8,
        /// Internal or external.
        side: Side,
        /// The grades there are.
        allowed: &'static str,
        /// A class that exists.
        example: &'static str,
    },
    /// Grade of a unified class outside 1 to 3.
    #[error(
        "thread class: {grade} is no unified class; there are 1A 2A 3A on a lens and 1B 2B 3B in a ring (usual: 2A, 2B)"
    )]
    UnifiedGrade {
        /// The class number asked for.
        grade: u8,
    },
    /// A class of another kind of thread.
    #[error("thread class: {class} does not belong to {form}; {remedy}")]
    WrongForm {
        /// The class as written.
        class: String,
        /// The form of thread.
        form: &'static str,
        /// What to write instead.
        remedy: &'static str,
    },
}

/// Class of an ISO metric thread: grade of pitch diameter, grade of crest diameter, position.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MetricClass {
    pitch_diameter_grade: u8,
    crest_grade: u8,
    position: Position,
}

impl MetricClass {
    /// 6H, the usual class of an internal thread.
    pub const INTERNAL_6H: Self = Self {
        pitch_diameter_grade: 6,
        crest_grade: 6,
        position: Position::CapitalH,
    };
    /// 6g, the usual class of an external thread.
    pub const EXTERNAL_6G: Self = Self {
        pitch_diameter_grade: 6,
        crest_grade: 6,
        position: Position::SmallG,
    };

    /// A class out of its parts, such as 5, 6, g for 5g6g.
    ///
    /// # Errors
    /// [`ClassError`] where ISO 965-1 has no such grade: internal 4 to 8 for both diameters; external 3 to 9
    /// for the pitch diameter and 4, 6, 8 for the crest.
    pub fn new(
        pitch_diameter_grade: u8,
        crest_grade: u8,
        position: Position,
    ) -> Result<Self, ClassError> {
        let side = position.side();
        let (pitch_fits, pitch_allowed, crest_fits, crest_allowed, example) = match side {
            Side::Internal => (
                (4..=8).contains(&pitch_diameter_grade),
                "4 to 8",
                (4..=8).contains(&crest_grade),
                "4 to 8",
                "4H5H",
            ),
            Side::External => (
                (3..=9).contains(&pitch_diameter_grade),
                "3 to 9",
                [4, 6, 8].contains(&crest_grade),
                "4, 6 and 8",
                "5g6g",
            ),
        };
        if !pitch_fits {
            return Err(ClassError::PitchDiameterGrade {
                grade: pitch_diameter_grade,
                side,
                allowed: pitch_allowed,
            });
        }
        if !crest_fits {
            return Err(ClassError::CrestGrade {
                grade: crest_grade,
                side,
                allowed: crest_allowed,
                example,
            });
        }
        Ok(Self {
            pitch_diameter_grade,
            crest_grade,
            position,
        })
    }

    /// Grade of the pitch diameter.
    #[must_use]
    pub fn pitch_diameter_grade(self) -> u8 {
        self.pitch_diameter_grade
    }

    /// Grade of the crest diameter: minor of an internal thread, major of an external one.
    #[must_use]
    pub fn crest_grade(self) -> u8 {
        self.crest_grade
    }

    /// Position of the tolerance zone.
    #[must_use]
    pub fn position(self) -> Position {
        self.position
    }

    /// Internal or external.
    #[must_use]
    pub fn side(self) -> Side {
        self.position.side()
    }
}

impl fmt::Display for MetricClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letter = self.position.letter();
        write!(f, "{}{letter}", self.pitch_diameter_grade)?;
        if self.crest_grade != self.pitch_diameter_grade {
            write!(f, "{}{letter}", self.crest_grade)?;
        }
        Ok(())
    }
}

/// Class of a unified thread: 1 loose, 2 usual, 3 close; A external, B internal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct UnifiedClass {
    grade: u8,
    side: Side,
}

impl UnifiedClass {
    /// 2B, the usual class of an internal thread.
    pub const INTERNAL_2B: Self = Self {
        grade: 2,
        side: Side::Internal,
    };
    /// 2A, the usual class of an external thread.
    pub const EXTERNAL_2A: Self = Self {
        grade: 2,
        side: Side::External,
    };

    /// A class out of its number and side.
    ///
    /// # Errors
    /// [`ClassError::UnifiedGrade`] where the number is not 1, 2 or 3.
    pub fn new(grade: u8, side: Side) -> Result<Self, ClassError> {
        if (1..=3).contains(&grade) {
            Ok(Self { grade, side })
        } else {
            Err(ClassError::UnifiedGrade { grade })
        }
    }

    /// 1, 2 or 3.
    #[must_use]
    pub fn grade(self) -> u8 {
        self.grade
    }

    /// Internal or external.
    #[must_use]
    pub fn side(self) -> Side {
        self.side
    }
}

impl fmt::Display for UnifiedClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letter = match self.side {
            Side::Internal => 'B',
            Side::External => 'A',
        };
        write!(f, "{}{letter}", self.grade)
    }
}

/// Tolerance class of a thread, of whichever form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThreadClass {
    /// Class of an ISO metric thread.
    Metric(MetricClass),
    /// Class of a unified thread.
    Unified(UnifiedClass),
}

impl ThreadClass {
    /// Internal or external.
    #[must_use]
    pub fn side(self) -> Side {
        match self {
            Self::Metric(class) => class.side(),
            Self::Unified(class) => class.side(),
        }
    }
}

impl fmt::Display for ThreadClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Metric(class) => class.fmt(f),
            Self::Unified(class) => class.fmt(f),
        }
    }
}
