//! The shop plan as the bytes of a file.

use thiserror::Error;

use super::plan_sheet::printed_plan;
use crate::document::Design;
use crate::drawing::LineGroup;
use crate::drawing::pdf::{PdfError, pdf_of_pages};
use crate::drawing::printed::pages;
use crate::evaluate::Evaluation;
use crate::plan::{PlanError, plan_sheet, shop_plan};
use crate::workshop::Workshop;

/// Why there are no bytes.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum PaperError {
    /// There is no plan.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// The pages cannot be made.
    #[error(transparent)]
    Pdf(#[from] PdfError),
}

/// The shop plan of a design as a PDF file, pages of A4.
///
/// # Errors
/// [`PaperError`] says what stands against it.
pub fn plan_pdf(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
) -> Result<Vec<u8>, PaperError> {
    let plan = shop_plan(design, workshop, evaluation)?;
    let sheet = printed_plan(design, workshop, evaluation, &plan);
    Ok(pdf_of_pages(&pages(&sheet), &sheet.title, LineGroup::Half)?)
}

/// The shop plan of a design as a text file.
///
/// # Errors
/// [`PaperError::Plan`] where there is none.
pub fn plan_text(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
) -> Result<String, PaperError> {
    let plan = shop_plan(design, workshop, evaluation)?;
    let mut text = plan_sheet(design, workshop, &plan);
    text.push('\n');
    Ok(text)
}
