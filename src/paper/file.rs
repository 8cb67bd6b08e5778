//! The shop plan as the bytes of a file, by the ending of the file's name.

use std::path::Path;

use thiserror::Error;

use super::plan_sheet::printed_plan;
use crate::document::Design;
use crate::drawing::LineGroup;
use crate::drawing::pdf::{PdfError, pdf_of_pages};
use crate::drawing::printed::{PrintedSheet, pages};
use crate::evaluate::Evaluation;
use crate::plan::{PlanError, plan_sheet, shop_plan};
use crate::workshop::Workshop;

/// A kind of file for a printed sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PaperFormat {
    /// Pages to print.
    Pdf,
    /// Plain text.
    Text,
}

impl PaperFormat {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Pdf, Self::Text];

    /// The ending of the file's name, without the point.
    #[must_use]
    pub const fn ending(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Text => "txt",
        }
    }

    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Pdf => "PDF, pages of A4 with pictures",
            Self::Text => "plain text",
        }
    }

    /// The kind that the ending of a path stands for, capitals or not.
    ///
    /// # Errors
    /// [`PaperError::Ending`], which lists the right ones.
    pub fn of_ending(path: &Path) -> Result<Self, PaperError> {
        let found = path.extension().and_then(|own| {
            Self::ALL
                .into_iter()
                .find(|format| own.eq_ignore_ascii_case(format.ending()))
        });
        found.ok_or_else(|| PaperError::Ending(path.display().to_string()))
    }
}

/// Why there are no bytes.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum PaperError {
    /// The name ends in nothing we know.
    #[error(
        "{0}: this ending stands for no sheet that can be written. End the name in .pdf or .txt"
    )]
    Ending(String),
    /// There is no plan.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// The pages cannot be made.
    #[error(transparent)]
    Pdf(#[from] PdfError),
}

/// A printed sheet as the bytes of a PDF file.
///
/// # Errors
/// [`PdfError`] when the file cannot be put together.
pub fn sheet_pdf(sheet: &PrintedSheet) -> Result<Vec<u8>, PdfError> {
    pdf_of_pages(&pages(sheet), &sheet.title, LineGroup::Half)
}

/// The shop plan of a design as the bytes of a file.
///
/// # Errors
/// [`PaperError`] says what stands against it.
pub fn plan_bytes(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    format: PaperFormat,
) -> Result<Vec<u8>, PaperError> {
    let plan = shop_plan(design, workshop, evaluation)?;
    match format {
        PaperFormat::Pdf => Ok(sheet_pdf(&printed_plan(
            design, workshop, evaluation, &plan,
        ))?),
        PaperFormat::Text => {
            let mut text = plan_sheet(design, workshop, &plan);
            text.push('\n');
            Ok(text.into_bytes())
        }
    }
}
