//! Thread designations as they are typed, and as this program writes them.
//!
//! Understood are `M42x1`, `M42 x 0,75 - 6H`, `M40x1-4g6g`, `1-32 UN-2B`, `1/4-20 UNC-2A`, `2 1/2-12 UN`,
//! `0.625-32 UN`, `10-24 UNC`, `25.4 mm-32 UN`, `39 x 26 tpi Whitworth`, each also with `-LH`; in any case but
//! for the letters of a metric class, where H and h are different things, with any spacing, with x, X, * or
//! the sign of multiplication, with decimal comma or dot. A Whitworth diameter is in mm unless it carries
//! `in` or `"`; a unified one is in inches unless it carries `mm`.
//!
//! ```
//! use flangewright::standards::Thread;
//!
//! let thread: Thread = "m 42 X 0,75 - 6H".parse()?;
//! assert_eq!(thread.to_string(), "M42x0.75-6H");
//! assert_eq!("5/8-32 un".parse::<Thread>()?.nominal_mm(), 15.875);
//! let error = "M42x0.75-6Q".parse::<Thread>().unwrap_err().to_string();
//! assert!(error.contains("\"Q\"") && error.contains("M42x1-6H"));
//! # Ok::<(), flangewright::standards::DesignationError>(())
//! ```

use std::fmt;
use std::str::FromStr;

use super::designation_cursor::{Cursor, Size, Unit};
use super::designation_error::DesignationError;
use super::designation_tokens::{Kind, Token, short, tokens};
use super::iso_261::coarse_pitch_mm;
use super::limits::Side;
use super::nominal::{Nominal, is_numbered_size, numbered_size, numbered_size_inch};
use super::thread::{NOMINAL_MM, PITCH_MM, TPI, Thread, ThreadForm};
use super::thread_class::{ClassError, MetricClass, Position, ThreadClass, UnifiedClass};

/// Longest designation read, characters.
const LONGEST: usize = 80;
const METRIC_EXAMPLE: &str = "M42x1-6H";
const UNIFIED_EXAMPLE: &str = "1-32 UN-2B";
const WHITWORTH_EXAMPLE: &str = "39 x 26 tpi Whitworth";

impl FromStr for Thread {
    type Err = DesignationError;

    fn from_str(input: &str) -> Result<Self, Self::Err> {
        let input = input.trim();
        let characters = input.chars().count();
        if characters == 0 {
            return Err(DesignationError::Empty);
        }
        if characters > LONGEST {
            return Err(DesignationError::TooLong {
                characters,
                allowed: LONGEST,
            });
        }
        let mut tokens = tokens(input)?;
        let left_hand = take_left_hand(&mut tokens);
        let thread = parse_form(Cursor {
            tokens: &tokens,
            input,
            example: METRIC_EXAMPLE,
        })?;
        Ok(thread.with_left_hand(left_hand))
    }
}

impl TryFrom<String> for Thread {
    type Error = DesignationError;

    fn try_from(text: String) -> Result<Self, Self::Error> {
        text.parse()
    }
}

impl From<Thread> for String {
    fn from(thread: Thread) -> Self {
        thread.to_string()
    }
}

impl fmt::Display for Thread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let pitch = self.tpi().unwrap_or(self.pitch_mm());
        match self.form() {
            ThreadForm::Metric => write!(f, "M{}x{pitch}", self.nominal_mm())?,
            ThreadForm::Unified { series } => {
                write!(f, "{}-{pitch} {series}", self.nominal().unified_text(pitch))?;
            }
            ThreadForm::Whitworth => write!(f, "{} x {pitch} tpi Whitworth", self.nominal())?,
        }
        if let Some(class) = self.class() {
            write!(f, "-{class}")?;
        }
        if self.is_left_hand() {
            f.write_str("-LH")?;
        }
        Ok(())
    }
}

/// Takes `LH`, and the dash before it, off the end.
fn take_left_hand(tokens: &mut Vec<Token>) -> bool {
    let found = tokens.last().is_some_and(|token| token.is_word("lh"));
    if found {
        tokens.pop();
        if tokens
            .last()
            .is_some_and(|token| token.kind == Kind::Sign('-'))
        {
            tokens.pop();
        }
    }
    found
}

fn parse_form(cursor: Cursor<'_>) -> Result<Thread, DesignationError> {
    let has = |words: &[&str]| {
        cursor
            .tokens
            .iter()
            .any(|token| words.iter().any(|word| token.is_word(word)))
    };
    if has(&["whitworth", "whit"]) {
        whitworth(Cursor {
            example: WHITWORTH_EXAMPLE,
            ..cursor
        })
    } else if has(&["un", "unc", "unf", "unef", "uns"]) {
        unified(Cursor {
            example: UNIFIED_EXAMPLE,
            ..cursor
        })
    } else if cursor
        .tokens
        .first()
        .is_some_and(|token| token.is_word("m"))
    {
        metric(cursor)
    } else {
        Err(DesignationError::NoForm {
            input: short(cursor.input),
        })
    }
}

fn metric(mut cursor: Cursor<'_>) -> Result<Thread, DesignationError> {
    cursor.take_word("m");
    let nominal_mm = cursor.number(("nominal diameter", NOMINAL_MM, "mm"), "the diameter in mm")?;
    cursor.take_word("mm");
    if cursor.tokens.is_empty() {
        let coarse = match coarse_pitch_mm(nominal_mm) {
            Some(pitch) => format!("alone it would mean the coarse pitch {pitch} of ISO 261"),
            None => "ISO 261 has no coarse pitch for it".to_owned(),
        };
        return Err(DesignationError::NoPitch {
            input: short(cursor.input),
            coarse,
        });
    }
    if !cursor.take_word("x") {
        return Err(cursor.unexpected("x and the pitch"));
    }
    let pitch_mm = cursor.number(("pitch", PITCH_MM, "mm"), "the pitch in mm")?;
    cursor.take_word("mm");
    let thread = Thread::metric(nominal_mm, pitch_mm)?;
    if !cursor.take_sign('-') && cursor.tokens.is_empty() {
        return Ok(thread);
    }
    let class = metric_class(&mut cursor)?;
    cursor.end()?;
    Ok(thread.with_class(ThreadClass::Metric(class))?)
}

/// `6H`, `6g`, `5g6g`.
fn metric_class(cursor: &mut Cursor<'_>) -> Result<MetricClass, DesignationError> {
    let pitch_diameter_grade = cursor.grade("a class such as 6H or 6g, or LH")?;
    let position = metric_position(cursor)?;
    if cursor.tokens.is_empty() {
        return Ok(MetricClass::new(
            pitch_diameter_grade,
            pitch_diameter_grade,
            position,
        )?);
    }
    let crest_grade = cursor.grade("the end, LH, or the grade of the crest diameter as in 5g6g")?;
    let before = *cursor;
    if metric_position(cursor)? != position {
        return Err(before.unexpected("the same letter for both diameters, as in 5g6g"));
    }
    Ok(MetricClass::new(
        pitch_diameter_grade,
        crest_grade,
        position,
    )?)
}

fn metric_position(cursor: &mut Cursor<'_>) -> Result<Position, DesignationError> {
    let mut letters = cursor
        .tokens
        .first()
        .map_or("", |token| &token.text)
        .chars();
    match (
        letters.next().and_then(Position::from_letter),
        letters.next(),
    ) {
        (Some(position), None) => {
            cursor.skip();
            Ok(position)
        }
        _ => Err(cursor.unexpected("H or G for the ring, h, g, f or e for the lens")),
    }
}

fn unified(mut cursor: Cursor<'_>) -> Result<Thread, DesignationError> {
    let by_number = cursor.take_sign('#');
    let size = cursor.size("the diameter in inches")?;
    let unit = cursor.unit();
    let _ = cursor.take_sign('-') || cursor.take_word("x");
    let tpi = cursor.number(
        ("threads per inch", TPI, "per inch"),
        "the threads per inch",
    )?;
    cursor.take_word("tpi");
    let series = cursor.series()?;
    let nominal = unified_nominal(size, unit, tpi, by_number)?;
    let thread = Thread::unified(nominal, tpi, series)?;
    if !cursor.take_sign('-') && cursor.tokens.is_empty() {
        return Ok(thread);
    }
    let class = unified_class(&mut cursor)?;
    cursor.end()?;
    Ok(thread.with_class(ThreadClass::Unified(class))?)
}

fn unified_nominal(
    size: Size,
    unit: Option<Unit>,
    tpi: f64,
    by_number: bool,
) -> Result<Nominal, DesignationError> {
    if by_number {
        let number = is_numbered_size(size.value).ok_or_else(|| DesignationError::OutOfRange {
            what: "numbered size",
            value: size.value.to_string(),
            allowed: "0 to 6, 8, 10 and 12".to_owned(),
        })?;
        return Ok(Nominal::Inches(numbered_size_inch(number)));
    }
    Ok(match unit {
        Some(Unit::Millimetre) => Nominal::Millimetres(size.value),
        Some(Unit::Inch) => Nominal::Inches(size.value),
        None => match numbered_size(size.value, tpi) {
            Some(number) if !size.is_fraction => Nominal::Inches(numbered_size_inch(number)),
            _ => Nominal::Inches(size.value),
        },
    })
}

/// `2B`, `3A`.
fn unified_class(cursor: &mut Cursor<'_>) -> Result<UnifiedClass, DesignationError> {
    let grade = cursor.grade("a class such as 2B or 2A, or LH")?;
    let side = if cursor.take_word("a") {
        Side::External
    } else if cursor.take_word("b") {
        Side::Internal
    } else {
        return Err(cursor.unexpected("A for the lens or B for the ring"));
    };
    Ok(UnifiedClass::new(grade, side)?)
}

fn whitworth(mut cursor: Cursor<'_>) -> Result<Thread, DesignationError> {
    let size = cursor.size("the diameter in mm")?;
    let unit = cursor.unit();
    if size.is_fraction && unit != Some(Unit::Inch) {
        return Err(cursor.unexpected("the unit in, since a fraction is a diameter in inches"));
    }
    let _ = cursor.take_word("x") || cursor.take_sign('-');
    let tpi = cursor.number(
        ("threads per inch", TPI, "per inch"),
        "the threads per inch",
    )?;
    cursor.take_word("tpi");
    if !(cursor.take_word("whitworth") || cursor.take_word("whit")) {
        return Err(cursor.unexpected("tpi or Whitworth"));
    }
    if !cursor.tokens.is_empty() {
        let class = cursor
            .tokens
            .iter()
            .map(|token| token.text.as_str())
            .collect::<String>();
        return Err(DesignationError::Class(ClassError::WrongForm {
            class: short(class.trim_start_matches('-')),
            form: "a thread of Whitworth form",
            remedy: "end with Whitworth or LH: no tolerance classes are given here",
        }));
    }
    let nominal = match unit {
        Some(Unit::Inch) => Nominal::Inches(size.value),
        Some(Unit::Millimetre) | None => Nominal::Millimetres(size.value),
    };
    Thread::whitworth(nominal, tpi)
}
