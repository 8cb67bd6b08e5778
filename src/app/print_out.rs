//! The sheets that are printed: what each is called, how it is made, and where it is written.

use std::path::Path;

use egui::Context;
use thiserror::Error;

use super::dialogs::{Dialog, Writing};
use super::export_panel::ExportError;
use super::files::export_bytes;
use super::inspection_print::{PrintError, inspection_pdf, inspection_text};
use super::job::Job;
use super::window::Window;
use crate::document::Design;
use crate::evaluate::Evaluation;
use crate::paper::file::{PaperError, plan_pdf, plan_text};
use crate::workshop::Workshop;

/// A sheet to be printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PrintOut {
    /// The shop plan.
    Plan,
    /// The inspection sheet.
    Inspection,
}

/// Why a sheet was not made.
#[derive(Debug, Error)]
pub enum PrintOutError {
    /// The path ends in something else.
    #[error("{0} cannot be written: a sheet ends in .pdf or .txt")]
    Ending(String),
    /// The shop plan cannot be made.
    #[error(transparent)]
    Plan(#[from] PaperError),
    /// The inspection sheet cannot be made.
    #[error(transparent)]
    Inspection(#[from] PrintError),
}

impl PrintOut {
    /// The words in the menu and on buttons.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Plan => "Print the shop plan…",
            Self::Inspection => "Inspection sheet…",
        }
    }

    /// What it is, for the hover text.
    #[must_use]
    pub const fn explains(self) -> &'static str {
        match self {
            Self::Plan => {
                "write the order of cuts with pictures, settings and passes as PDF or plain text, to be printed"
            }
            Self::Inspection => {
                "write limits, room for readings, verdicts and the correction as PDF or plain text, to be printed"
            }
        }
    }

    /// The title of the question where to.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Plan => "Write the shop plan",
            Self::Inspection => "Write the inspection sheet",
        }
    }

    /// The word behind the design's name in the name of the file.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Plan => "plan",
            Self::Inspection => "inspection",
        }
    }

    /// The bytes of the sheet, by the ending of the path.
    ///
    /// # Errors
    /// [`PrintOutError`] where the ending is unknown or the sheet cannot be made.
    pub fn bytes(
        self,
        design: &Design,
        workshop: &Workshop,
        evaluation: &Evaluation,
        path: &Path,
    ) -> Result<Vec<u8>, PrintOutError> {
        let ending = path
            .extension()
            .map(|ending| ending.to_string_lossy().to_lowercase());
        match (self, ending.as_deref()) {
            (Self::Plan, Some("pdf")) => Ok(plan_pdf(design, workshop, evaluation)?),
            (Self::Plan, Some("txt")) => Ok(plan_text(design, workshop, evaluation)?.into_bytes()),
            (Self::Inspection, Some("pdf")) => Ok(inspection_pdf(design, workshop, evaluation)?),
            (Self::Inspection, Some("txt")) => {
                Ok(inspection_text(design, workshop, evaluation)?.into_bytes())
            }
            (Self::Plan | Self::Inspection, Some(_) | None) => {
                Err(PrintOutError::Ending(path.display().to_string()))
            }
        }
    }
}

impl Window {
    /// Makes and writes a sheet off the frame. Whoever gave the path has been asked about replacing what is there.
    pub(super) fn print_out(&mut self, context: &Context, sheet: PrintOut, path: &Path) {
        let (design, evaluation) = (
            self.workspace.design().clone(),
            self.workspace.evaluation().clone(),
        );
        let workshop = self.workspace.workshop().clone();
        let target = path.to_owned();
        let work = move || -> Result<(), ExportError> {
            let bytes = sheet.bytes(&design, &workshop, &evaluation, &target)?;
            export_bytes(&target, &bytes, true)?;
            Ok(())
        };
        match Job::begin("sheet", context, work) {
            Ok(job) => {
                if let Some(Dialog::Path(_)) = &self.dialog {
                    self.dialog = None;
                }
                self.writing = Some(Writing {
                    path: path.to_owned(),
                    job,
                });
            }
            Err(error) => self
                .messages
                .fault(format!("the system gives no thread to write on: {error}")),
        }
    }
}
