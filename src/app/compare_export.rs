//! What the window does for the page Compare: variants, files brought in, the comparison as a picture or a table.

use std::path::Path;

use egui::Context;

use super::compare_choices::Choices;
use super::compared::Open;
use super::dialogs::{Dialog, Writing};
use super::edit::Edit;
use super::export_panel::ExportError;
use super::files::{self, FileError};
use super::job::Job;
use super::page::Page;
use super::variant_edit::{UNNAMED, VariantEdit};
use super::window::Window;
use crate::compare::Subject;
use crate::compare::sheet::{ComparisonFormat, SheetChoices, comparison_bytes};
use crate::document::Design;
use crate::evaluate::Evaluation;

/// What stood on the page, to be written off the frame.
struct Owned {
    name: String,
    design: Design,
    evaluation: Evaluation,
}

impl Owned {
    fn of(subject: &Subject<'_>) -> Self {
        Self {
            name: subject.name.to_owned(),
            design: subject.design.clone(),
            evaluation: subject.evaluation.clone(),
        }
    }

    fn subject(&self) -> Subject<'_> {
        Subject {
            name: &self.name,
            design: &self.design,
            evaluation: &self.evaluation,
        }
    }
}

/// Writes a comparison of what stood on the page.
fn write(
    owned: &[Owned],
    path: &Path,
    choices: &SheetChoices,
    force: bool,
) -> Result<(), ExportError> {
    let format = ComparisonFormat::of_ending(path)?;
    let subjects: Vec<Subject<'_>> = owned.iter().map(Owned::subject).collect();
    let bytes = comparison_bytes(&subjects, format, choices)?;
    files::export_bytes(path, &bytes, force)?;
    Ok(())
}

impl Window {
    pub(super) fn keep_variant(&mut self) {
        let edit = Edit::Variant(VariantEdit::Keep(UNNAMED.to_owned()));
        self.refusable(|workspace| workspace.edit(&edit));
        self.page = Page::Compare;
    }

    /// Brings a file in; a fault becomes a message and nothing is lost.
    pub(super) fn bring_in(&mut self, path: &Path) -> Result<(), FileError> {
        match self.compare_page.bring_in(path, self.workspace.design()) {
            Ok(true) => Ok(()),
            Ok(false) => {
                self.messages.done(format!(
                    "{} was read and waits: six stand on the page already. Leave one out in the list at the left edge",
                    path.display()
                ));
                Ok(())
            }
            Err(error) => {
                self.messages.fault(error.to_string());
                Err(error)
            }
        }
    }

    /// Brings in the file that was asked for; a fault is said in the panel too.
    pub(super) fn bring_in_chosen(&mut self, path: &Path) {
        match self.bring_in(path) {
            Ok(()) => {
                self.dialog = None;
                self.page = Page::Compare;
            }
            Err(error) => {
                if let Some(Dialog::Path(panel)) = &mut self.dialog {
                    panel.refuse(&error);
                }
            }
        }
    }

    /// Writes the comparison off the frame.
    pub(super) fn write_comparison(&mut self, context: &Context, path: &Path, may_replace: bool) {
        if let Err(error) = ComparisonFormat::of_ending(path) {
            if let Some(Dialog::Path(panel)) = &mut self.dialog {
                panel.refuse(&error);
            }
            return;
        }
        if !may_replace && files::exists(path) && !path.is_dir() {
            if let Some(Dialog::Path(panel)) = &mut self.dialog {
                panel.refuse(&FileError::Exists(path.to_owned()));
                panel.ask_to_replace(path.to_owned());
            }
            return;
        }
        let (owned, choices) = self.compared_now();
        let target = path.to_owned();
        let work = move || write(&owned, &target, &choices, may_replace);
        match Job::begin("comparison", context, work) {
            Ok(job) => {
                self.dialog = None;
                let path = path.to_owned();
                self.writing = Some(Writing { path, job });
            }
            Err(error) => self
                .messages
                .fault(format!("the system gives no thread to draw on: {error}")),
        }
    }

    fn compared_now(&mut self) -> (Vec<Owned>, SheetChoices) {
        let open = Open {
            design: self.workspace.design(),
            evaluation: self.workspace.evaluation(),
            workshop: self.workspace.workshop(),
        };
        let revision = self.workspace.revision();
        let subjects = self.compare_page.shown(open, revision);
        let owned = subjects.iter().map(Owned::of).collect();
        let dpi = self.workspace.design().sheet.dpi;
        (owned, sheet_choices(self.compare_page.choices(), dpi))
    }
}

fn sheet_choices(choices: Choices, dpi: u32) -> SheetChoices {
    SheetChoices {
        cut: choices.cut,
        side: choices.side,
        partners: choices.partners,
        pair: choices.pair,
        dpi,
    }
}
