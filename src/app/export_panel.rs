//! The drawing as a PNG file: where, how fine, on which paper.

use std::path::{Path, PathBuf};

use egui::{Id, RichText, TextEdit, Ui};
use thiserror::Error;

use super::chooser::{FileAnswer, FileQuestion};
use super::edit::Edit;
use super::field::{NumberField, number_ui};
use super::files::{self, FileError};
use super::text_field::choice_ui;
use super::view::View;
use crate::document::{Design, Paper};
use crate::drawing::raster::{Ground, Raster, RasterError, png};
use crate::drawing::ring_sheet::{SheetError, format_of, ring_sheet};
use crate::evaluate::Evaluation;
use crate::mount::Unit;

/// Why the drawing was not written.
#[derive(Debug, Error)]
pub enum ExportError {
    /// It cannot be drawn.
    #[error("{0}")]
    Sheet(#[from] SheetError),
    /// It cannot be made into a picture.
    #[error("{0}")]
    Raster(#[from] RasterError),
    /// It cannot be written.
    #[error("{0}")]
    File(#[from] FileError),
}

/// Writes the drawing of a design.
///
/// # Errors
/// [`ExportError`]; a file that is there already is replaced only with `force`.
pub fn export_png(
    design: &Design,
    evaluation: &Evaluation,
    path: &Path,
    force: bool,
) -> Result<(), ExportError> {
    if !force && files::exists(path) {
        return Err(FileError::Exists(path.to_owned()).into());
    }
    let sheet = ring_sheet(design, evaluation)?;
    let raster = Raster {
        dpi: design.sheet.dpi,
        ground: Ground::White,
        group: format_of(design).line_group(),
    };
    files::export_bytes(path, &png(&sheet, raster)?, force)?;
    Ok(())
}

/// An export being asked for.
#[derive(Debug)]
pub struct ExportPanel {
    text: String,
    said: Option<String>,
    replace: Option<PathBuf>,
    waiting: bool,
}

/// What the panel wants next.
#[derive(Debug, PartialEq, Eq)]
pub enum ExportWanted {
    /// Stay.
    Nothing,
    /// Close.
    Close,
    /// Ask the system's dialog.
    Ask,
    /// Write there; replace a file only when the flag says so.
    Write(PathBuf, bool),
}

impl ExportPanel {
    /// A panel that proposes a name beside the design's file.
    #[must_use]
    pub fn new(near: Option<&Path>) -> Self {
        let text = near
            .map(|path| path.with_extension("png").display().to_string())
            .unwrap_or_default();
        Self {
            text,
            said: None,
            replace: None,
            waiting: false,
        }
    }

    /// The question for the system's dialog.
    #[must_use]
    pub fn question(&self) -> FileQuestion {
        let near = PathBuf::from(&self.text);
        let name = near
            .file_name()
            .map(|name| name.to_string_lossy().into_owned());
        FileQuestion {
            title: "Export the drawing".to_owned(),
            kind: "PNG picture".to_owned(),
            extension: "png".to_owned(),
            folder: near
                .parent()
                .filter(|folder| !folder.as_os_str().is_empty())
                .map(Path::to_owned),
            name: name.unwrap_or_else(|| "ring.png".to_owned()),
        }
    }

    /// Takes the dialog's answer: the path is filled in, the writing waits for its button.
    pub fn answered(&mut self, answer: FileAnswer) {
        self.waiting = false;
        match answer {
            FileAnswer::Chosen(path) => self.text = path.display().to_string(),
            FileAnswer::Closed => {}
            FileAnswer::Unavailable(why) => {
                self.said = Some(format!(
                    "The file dialog is not available: {why}. Type the path here instead."
                ));
            }
        }
    }

    /// Says why nothing was written, or asks whether to replace.
    pub fn refuse(&mut self, path: PathBuf, error: &ExportError) {
        match error {
            ExportError::File(FileError::Exists(_)) => self.replace = Some(path),
            ExportError::File(_) | ExportError::Sheet(_) | ExportError::Raster(_) => {
                self.said = Some(error.to_string());
            }
        }
    }

    /// The panel.
    pub fn export_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) -> ExportWanted {
        ui.label(RichText::new("Export the drawing as PNG").heading());
        if let Some(said) = &self.said {
            ui.label(RichText::new(said).color(view.palette.clash));
        }
        let mut wanted = ExportWanted::Nothing;
        ui.horizontal(|ui| {
            let label = ui.label("Path");
            let edit =
                TextEdit::singleline(&mut self.text).desired_width(ui.available_width() - 80.0);
            let response = ui
                .add(edit.hint_text("/home/you/rings/ring.png"))
                .labelled_by(label.id);
            if response.changed() {
                self.replace = None;
                self.said = None;
            }
            if ui
                .add_enabled(!self.waiting, egui::Button::new("Dialog…"))
                .clicked()
            {
                self.waiting = true;
                wanted = ExportWanted::Ask;
            }
        });
        sheet_ui(ui, view);
        ui.add_space(4.0);
        ui.horizontal(|ui| {
            if ui.button("Write PNG").clicked() {
                wanted = match files::typed_path(&self.text, "png") {
                    Ok(path) => ExportWanted::Write(path, false),
                    Err(error) => {
                        self.said = Some(error.to_string());
                        ExportWanted::Nothing
                    }
                };
            }
            if ui.button("Cancel").clicked() {
                wanted = ExportWanted::Close;
            }
        });
        if let Some(path) = self.replace.clone() {
            ui.horizontal_wrapped(|ui| {
                ui.label(format!("{} is there already.", path.display()));
                if ui.button("Replace").clicked() {
                    wanted = ExportWanted::Write(path, true);
                }
            });
        }
        wanted
    }
}

fn sheet_ui(ui: &mut Ui, view: &mut View<'_>) {
    let papers = [
        (Paper::A4Landscape, "A4, 297 x 210 mm".to_owned()),
        (Paper::A3Landscape, "A3, 420 x 297 mm".to_owned()),
    ];
    let salt = Id::unique("paper");
    if let Some(paper) = choice_ui(
        ui,
        salt,
        "Paper",
        &view.design.sheet.paper.clone(),
        &papers,
        "the sheet, lying",
    ) {
        view.wish_from(salt, Edit::Paper(paper));
    }
    let dots = NumberField {
        label: "Dots to the inch",
        salt: Id::unique("dpi"),
        field: None,
        value: Some(f64::from(view.design.sheet.dpi)),
        unit: Unit::One,
        label_width: None,
        hover: "72 to 1200; 300 prints well".to_owned(),
        step: 0.0,
    };
    number_ui(ui, view, &dots, |value| Edit::Dpi(whole(value)), |_, _| {});
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "`as` stops at the ends of the range, and the range is checked after"
)]
fn whole(count: f64) -> u32 {
    count.round() as u32
}
