//! Designs, workshops and mounts as RON text: read with limits, written the same way each time.

use ron::extensions::Extensions;
use serde::Serialize;
use serde::de::DeserializeOwned;
use thiserror::Error;

use super::{Design, FORMAT, Fault, faults_of};

/// The largest file that is read, bytes; a design takes some ten thousand.
pub const SIZE_LIMIT: usize = 2_000_000;
/// How deep brackets may nest.
const DEPTH_LIMIT: usize = 32;

/// Why text is not a design.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ReadError {
    /// Too large.
    #[error("the file has {bytes} bytes; a design has at most {SIZE_LIMIT}")]
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// Nothing in it.
    #[error("the file is empty")]
    Empty,
    /// Not RON, or a wrong type, or an unknown field.
    #[error("line {line}, column {column}: {message}")]
    Syntax {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What is wrong.
        message: String,
    },
    /// Written by a newer program.
    #[error(
        "the file has format {found}; this program reads up to {FORMAT}. Open it with the newer program"
    )]
    Newer {
        /// Its format number.
        found: u32,
    },
    /// Values that no design may have.
    #[error("{}", list(.0))]
    Faults(Vec<Fault>),
}

fn list(faults: &[Fault]) -> String {
    faults
        .iter()
        .map(ToString::to_string)
        .collect::<Vec<_>>()
        .join("\n")
}

fn options() -> ron::Options {
    ron::Options::default()
        .with_default_extension(Extensions::UNWRAP_VARIANT_NEWTYPES)
        .with_recursion_limit(DEPTH_LIMIT)
}

/// Reads any of our types from RON.
///
/// # Errors
/// Too large, empty, or not of the type; the message names line, column and field.
pub fn read_ron<T: DeserializeOwned>(text: &str) -> Result<T, ReadError> {
    if text.len() > SIZE_LIMIT {
        return Err(ReadError::TooLarge { bytes: text.len() });
    }
    if text.trim().is_empty() {
        return Err(ReadError::Empty);
    }
    options().from_str(text).map_err(|error| ReadError::Syntax {
        line: error.span.start.line,
        column: error.span.start.col,
        message: error.code.to_string(),
    })
}

/// Only the format number of a design file.
#[derive(serde::Deserialize)]
struct Head {
    format: u32,
}

/// Reads a design and refuses values that no design may have.
///
/// # Errors
/// As [`read_ron`]; besides a newer format, and every faulty field by name, value and what is allowed.
pub fn read_design(text: &str) -> Result<Design, ReadError> {
    if text.len() <= SIZE_LIMIT
        && let Ok(head) = options().from_str::<Head>(text)
        && head.format > FORMAT
    {
        return Err(ReadError::Newer { found: head.format });
    }
    let design: Design = read_ron(text)?;
    let faults = faults_of(&design);
    if faults.is_empty() {
        Ok(design)
    } else {
        Err(ReadError::Faults(faults))
    }
}

/// Any of our types on one line, for [`unpack`]: shorter than the text of a file and never shown.
///
/// # Errors
/// The message of the writer; our own types do not fail.
pub fn pack<T: Serialize>(value: &T) -> Result<String, ron::Error> {
    options().to_string(value)
}

/// The very value that [`pack`] made the text of, however large it is.
///
/// # Errors
/// The text is none of [`pack`].
pub fn unpack<T: DeserializeOwned>(text: &str) -> Result<T, ron::error::SpannedError> {
    options().from_str(text)
}

/// Writes any of our types as RON.
///
/// # Errors
/// The message of the writer; our own types do not fail.
pub fn write_ron<T: Serialize>(value: &T) -> Result<String, ron::Error> {
    let pretty = ron::ser::PrettyConfig::new()
        .struct_names(false)
        .new_line("\n");
    let mut text = options().to_string_pretty(value, pretty)?;
    text.push('\n');
    Ok(text)
}
