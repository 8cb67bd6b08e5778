//! The comparison on one sheet: the designs side by side, one laid over another, a legend, and the tables.

use std::path::Path as FilePath;

use thiserror::Error;

use super::csv_file::{CsvError, csv_bytes};
use super::overlay::Cut;
use super::sheet_page::page;
use super::subject::Subject;
use crate::drawing::LineGroup;
use crate::drawing::raster::{Ground, Raster, RasterError, png};
use crate::geometry::Side;

/// What the sheet shows, and how finely.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SheetChoices {
    /// Where the half-sections are cut.
    pub cut: Cut,
    /// From which side the lug patterns are seen.
    pub side: Side,
    /// Whether lens and body are drawn.
    pub partners: bool,
    /// The places of the two that are laid over each other: the second against the first.
    pub pair: (usize, usize),
    /// Dots to the inch of a picture.
    pub dpi: u32,
}

impl Default for SheetChoices {
    fn default() -> Self {
        Self {
            cut: Cut::ThroughLug,
            side: Side::Lens,
            partners: false,
            pair: (0, 1),
            dpi: 300,
        }
    }
}

/// What a comparison can be written as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ComparisonFormat {
    /// A picture.
    Png,
    /// A table.
    Csv,
}

/// Why a comparison cannot be written.
#[derive(Debug, Error)]
pub enum ComparisonError {
    /// Fewer than two designs.
    #[error(
        "there is one design only: keep a variant or bring in another design to compare it with"
    )]
    Alone,
    /// Some other ending.
    #[error(
        "a comparison is written as .png (a picture) or .csv (a table); this path ends in neither"
    )]
    Ending,
    /// The picture cannot be made.
    #[error(transparent)]
    Raster(#[from] RasterError),
    /// The table cannot be made.
    #[error(transparent)]
    Csv(#[from] CsvError),
}

impl ComparisonFormat {
    /// What the ending of a path stands for.
    ///
    /// # Errors
    /// [`ComparisonError::Ending`] for any other ending.
    pub fn of_ending(path: &FilePath) -> Result<Self, ComparisonError> {
        let ending = path.extension().map(std::ffi::OsStr::to_ascii_lowercase);
        match ending.as_ref().and_then(|ending| ending.to_str()) {
            Some("png") => Ok(Self::Png),
            Some("csv") => Ok(Self::Csv),
            Some(_) | None => Err(ComparisonError::Ending),
        }
    }
}

/// The bytes of a comparison.
///
/// # Errors
/// [`ComparisonError`].
pub fn comparison_bytes(
    subjects: &[Subject<'_>],
    format: ComparisonFormat,
    choices: &SheetChoices,
) -> Result<Vec<u8>, ComparisonError> {
    if subjects.len() < 2 {
        return Err(ComparisonError::Alone);
    }
    match format {
        ComparisonFormat::Csv => Ok(csv_bytes(subjects)?),
        ComparisonFormat::Png => {
            let raster = Raster {
                dpi: choices.dpi,
                ground: Ground::White,
                group: LineGroup::Half,
            };
            Ok(png(&page(subjects, choices), raster)?)
        }
    }
}
