//! The drawing or the solid as a file: where, of which kind, how fine, on which paper.

use std::path::{Path, PathBuf};

use egui::{Id, RichText, TextEdit, Ui};
use thiserror::Error;

use super::chooser::{FileAnswer, FileQuestion};
use super::edit::Edit;
use super::field::{NumberField, number_ui};
use super::files::{self, FileError};
use super::print_out::PrintOutError;
use super::text_field::choice_ui;
use super::view::View;
use crate::document::{Design, Paper};
use crate::drawing::export::{self, ExportOptions, Format};
use crate::drawing::mesh::{ALLOWANCE_RANGE_MM, CHORD_RANGE_MM};
use crate::drawing::raster::Ground;
use crate::evaluate::Evaluation;
use crate::mount::Unit;

/// Why nothing was written.
#[derive(Debug, Error)]
pub enum ExportError {
    /// It cannot be made.
    #[error(transparent)]
    Export(#[from] export::ExportError),
    /// The sheet cannot be made.
    #[error(transparent)]
    Print(#[from] PrintOutError),
    /// It cannot be written.
    #[error(transparent)]
    File(#[from] FileError),
}

/// Writes the drawing or the solid of a design, by the ending of the path.
///
/// # Errors
/// [`ExportError`]; a file that is there already is replaced only with `force`.
pub fn write_export(
    design: &Design,
    evaluation: &Evaluation,
    path: &Path,
    options: &ExportOptions,
    force: bool,
) -> Result<(), ExportError> {
    let format = Format::of_ending(path)?;
    if !force && files::exists(path) {
        return Err(FileError::Exists(path.to_owned()).into());
    }
    let bytes = export::bytes(design, evaluation, format, options)?;
    files::export_bytes(path, &bytes, force)?;
    Ok(())
}

/// An export being asked for.
#[derive(Debug)]
pub struct ExportPanel {
    text: String,
    options: ExportOptions,
    said: Option<String>,
    replace: Option<PathBuf>,
    waiting: bool,
}

/// What the panel wants next.
#[derive(Debug, PartialEq)]
pub enum ExportWanted {
    /// Stay.
    Nothing,
    /// Close.
    Close,
    /// Ask the system's dialog.
    Ask,
    /// Write there; replace a file only when the flag says so.
    Write(PathBuf, ExportOptions, bool),
}

impl ExportPanel {
    /// A panel that proposes a name beside the design's file, and the ground that the sheet has.
    #[must_use]
    pub fn new(near: Option<&Path>, clear: bool) -> Self {
        let text = near
            .map(|path| path.with_extension("png").display().to_string())
            .unwrap_or_default();
        Self {
            text,
            options: ExportOptions {
                ground: if clear {
                    Ground::Transparent
                } else {
                    Ground::White
                },
                ..ExportOptions::default()
            },
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
            kind: self.format().words().to_owned(),
            extension: self.format().ending().to_owned(),
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
            ExportError::File(_) | ExportError::Export(_) | ExportError::Print(_) => {
                self.said = Some(error.to_string());
            }
        }
    }

    /// The kind of file that the typed path stands for; a picture while it ends in nothing we know.
    fn format(&self) -> Format {
        Format::of_ending(Path::new(self.text.trim())).unwrap_or(Format::Png)
    }

    fn format_ui(&mut self, ui: &mut Ui) {
        let kinds: Vec<(Format, String)> = Format::ALL
            .iter()
            .map(|kind| (*kind, kind.words().to_owned()))
            .collect();
        let hover = "changes the ending of the path";
        if let Some(kind) = choice_ui(
            ui,
            Id::unique("kind"),
            false,
            "Kind",
            &self.format(),
            &kinds,
            hover,
        ) {
            let path = Path::new(self.text.trim()).with_extension(kind.ending());
            self.text = path.display().to_string();
            self.replace = None;
            self.said = None;
        }
    }

    /// What else there is to choose for the kind of file.
    fn options_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        match self.format() {
            Format::Stl | Format::ThreeMf => {
                self.options.template = false;
                let mesh = &mut self.options.mesh;
                millimetres_ui(ui, "Flat faces within", &mut mesh.chord_mm, CHORD_RANGE_MM);
                millimetres_ui(
                    ui,
                    "Added to the thread bore",
                    &mut mesh.thread_allowance_mm,
                    ALLOWANCE_RANGE_MM,
                );
                ui.label(
                    "The solid has its thread as a plain bore, and no root fillets at the lugs.",
                );
            }
            Format::Png | Format::Svg => {
                let mut clear = self.options.ground == Ground::Transparent;
                ui.checkbox(&mut clear, "Transparent ground");
                self.options.ground = if clear {
                    Ground::Transparent
                } else {
                    Ground::White
                };
                self.drawing_ui(ui, view);
            }
            Format::Pdf | Format::Dxf => self.drawing_ui(ui, view),
        }
    }

    fn drawing_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        ui.checkbox(
            &mut self.options.template,
            "Lug template at 1:1 in place of the drawing",
        );
        sheet_ui(ui, view, "dialog");
    }

    /// The panel.
    pub fn export_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) -> ExportWanted {
        ui.label(RichText::new("Export the drawing or a solid").heading());
        if let Some(said) = &self.said {
            ui.label(RichText::new(said).color(view.palette.clash));
        }
        let mut wanted = ExportWanted::Nothing;
        let mut entered = false;
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
            entered =
                response.lost_focus() && ui.input(|input| input.key_pressed(egui::Key::Enter));
            if ui.memory(|memory| memory.focused().is_none()) {
                response.request_focus();
            }
            if ui
                .add_enabled(!self.waiting, egui::Button::new("Dialog…"))
                .clicked()
            {
                self.waiting = true;
                wanted = ExportWanted::Ask;
            }
        });
        self.format_ui(ui);
        self.options_ui(ui, view);
        ui.add_space(4.0);
        ui.horizontal(|ui| {
            let ending = self.format().ending();
            let write = ui.button(format!("Write {}", ending.to_uppercase()));
            if write.clicked() || entered {
                wanted = match target(&self.text, ending) {
                    Ok(path) => ExportWanted::Write(path, self.options, false),
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
                    wanted = ExportWanted::Write(path, self.options, true);
                }
            });
        }
        wanted
    }
}

/// The typed path, where its ending stands for a file that can be written.
fn target(text: &str, ending: &str) -> Result<PathBuf, ExportError> {
    let path = files::typed_path(text, ending)?;
    Format::of_ending(&path)?;
    Ok(path)
}

fn millimetres_ui(ui: &mut Ui, label: &str, value: &mut f64, range: (f64, f64)) {
    ui.horizontal(|ui| {
        let label = ui.label(label);
        let drag = egui::DragValue::new(value)
            .range(range.0..=range.1)
            .speed(0.001)
            .max_decimals(3)
            .suffix(" mm");
        ui.add(drag).labelled_by(label.id);
    });
}

/// Paper and resolution of the sheet; `place` sets the fields apart from those of another place.
pub fn sheet_ui(ui: &mut Ui, view: &mut View<'_>, place: &str) {
    let papers = [
        (Paper::A4Landscape, "A4, 297 x 210 mm".to_owned()),
        (Paper::A3Landscape, "A3, 420 x 297 mm".to_owned()),
    ];
    let salt = Id::unique(("paper", place));
    if let Some(paper) = choice_ui(
        ui,
        salt,
        false,
        "Paper",
        &view.design.sheet.paper.clone(),
        &papers,
        "the sheet, lying",
    ) {
        view.wish_from(salt, Edit::Paper(paper));
    }
    let dots = NumberField {
        label: "Dots to the inch",
        salt: Id::unique(("dpi", place)),
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
