//! What can be wrong with a typed thread designation.

use thiserror::Error;

use super::thread_class::ClassError;

/// Why a designation was not understood, and what a right one looks like.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum DesignationError {
    /// Nothing was typed.
    #[error("no thread designation: write one such as M42x1, 1-32 UN-2B or 39 x 26 tpi Whitworth")]
    Empty,
    /// Far longer than any designation.
    #[error(
        "thread designation of {characters} characters: {allowed} are allowed; a right one: M42x1-6H"
    )]
    TooLong {
        /// Characters typed.
        characters: usize,
        /// Characters allowed.
        allowed: usize,
    },
    /// Neither metric nor unified nor Whitworth.
    #[error(
        "thread \"{input}\" does not say its form: begin with M for ISO metric (M42x1), or end with UNC, UNF, UNEF, UN or UNS (1-32 UN), or with Whitworth (39 x 26 tpi Whitworth)"
    )]
    NoForm {
        /// What was typed.
        input: String,
    },
    /// One piece does not fit in.
    #[error(
        "thread \"{input}\": \"{piece}\" is not understood here; expected {expected}; a right one: {example}"
    )]
    NotUnderstood {
        /// What was typed.
        input: String,
        /// The piece that does not fit.
        piece: String,
        /// What should stand there.
        expected: &'static str,
        /// A designation that is right.
        example: &'static str,
    },
    /// It stops short.
    #[error("thread \"{input}\" stops too early: {expected} is missing; a right one: {example}")]
    Unfinished {
        /// What was typed.
        input: String,
        /// What should come next.
        expected: &'static str,
        /// A designation that is right.
        example: &'static str,
    },
    /// A metric diameter alone.
    #[error("thread \"{input}\" gives no pitch: write it, such as M42x1; {coarse}")]
    NoPitch {
        /// What was typed.
        input: String,
        /// What the bare designation would stand for.
        coarse: String,
    },
    /// Comma and dot, or two of them, in one number.
    #[error(
        "thread number \"{piece}\" has more than one decimal sign: write one comma or one dot, such as 0.75"
    )]
    DecimalSigns {
        /// The number as typed.
        piece: String,
    },
    /// A value that no thread has.
    #[error("thread {what} {value} is not possible: allowed is {allowed}; a right one: M42x1")]
    OutOfRange {
        /// Which value.
        what: &'static str,
        /// The value.
        value: String,
        /// What is allowed.
        allowed: String,
    },
    /// A pitch that leaves no core.
    #[error(
        "thread pitch {pitch_mm:.3} mm is too coarse for a diameter of {nominal_mm:.3} mm: allowed is up to {allowed_mm:.3} mm"
    )]
    PitchTooCoarse {
        /// The pitch, mm.
        pitch_mm: f64,
        /// The nominal diameter, mm.
        nominal_mm: f64,
        /// Greatest pitch for it, mm.
        allowed_mm: f64,
    },
    /// The class does not exist.
    #[error(transparent)]
    Class(#[from] ClassError),
}

impl DesignationError {
    /// A value outside its range, the range written out.
    pub(super) fn out_of_range(
        what: &'static str,
        value: f64,
        (least, greatest): (f64, f64),
        unit: &str,
    ) -> Self {
        // Hundreds of digits help nobody.
        let value = if value.abs() >= 1e9 {
            format!("{value:e}")
        } else {
            format!("{value}")
        };
        Self::OutOfRange {
            what,
            value,
            allowed: format!("{least} to {greatest} {unit}"),
        }
    }
}
