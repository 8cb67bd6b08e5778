//! Where to open or save: the system's dialog, or a path typed here, which always works.

use std::path::{Path, PathBuf};

use egui::{RichText, TextEdit, Ui};

use super::chooser::{FileAnswer, FileQuestion};
use super::files;
use super::palette::Palette;

/// What the path is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Open the design there.
    Open,
    /// Save the design there.
    Save,
    /// Take the mounts there into the user's own.
    Import,
    /// Bring the design there in, to be compared.
    BringIn,
    /// Write the comparison there.
    Comparison,
}

/// A path being asked for.
#[derive(Debug)]
pub struct PathPanel {
    /// What for.
    pub purpose: Purpose,
    text: String,
    waiting: bool,
    said: Option<String>,
    replace: Option<PathBuf>,
}

/// What the panel wants next.
#[derive(Debug, PartialEq, Eq)]
pub enum PathWanted {
    /// Stay.
    Nothing,
    /// Close; nothing is done.
    Close,
    /// Ask the system's dialog.
    Ask,
    /// Use this path.
    Use(PathBuf),
    /// Use this path, and replace the file that is there.
    Replace(PathBuf),
}

impl PathPanel {
    /// A panel that begins with this path, while the system's dialog is asked too.
    #[must_use]
    pub fn new(purpose: Purpose, near: Option<&Path>) -> Self {
        let text = near
            .map(|path| path.display().to_string())
            .unwrap_or_default();
        Self {
            purpose,
            text,
            waiting: true,
            said: None,
            replace: None,
        }
    }

    /// The question for the system's dialog.
    #[must_use]
    pub fn question(&self) -> FileQuestion {
        let near = PathBuf::from(&self.text);
        let title = match self.purpose {
            Purpose::Open => "Open a design",
            Purpose::Save => "Save the design",
            Purpose::Import => "Import mounts",
            Purpose::BringIn => "Bring in a design to compare",
            Purpose::Comparison => "Export the comparison",
        };
        let kind = match self.purpose {
            Purpose::Open | Purpose::Save | Purpose::BringIn => "Design",
            Purpose::Import => "Mounts",
            Purpose::Comparison => "Picture, or a table with the ending csv",
        };
        let name = near
            .file_name()
            .map(|name| name.to_string_lossy().into_owned());
        FileQuestion {
            title: title.to_owned(),
            kind: kind.to_owned(),
            extension: self.ending().to_owned(),
            folder: near
                .parent()
                .filter(|folder| !folder.as_os_str().is_empty())
                .map(Path::to_owned),
            name: name.unwrap_or_else(|| "ring.ron".to_owned()),
        }
    }

    /// Takes the dialog's answer.
    pub fn answered(&mut self, answer: FileAnswer) -> PathWanted {
        self.waiting = false;
        match answer {
            // The dialog has asked about replacing by itself.
            FileAnswer::Chosen(path) => PathWanted::Use(path),
            FileAnswer::Closed => PathWanted::Close,
            FileAnswer::Unavailable(why) => {
                self.said = Some(format!(
                    "The file dialog is not available: {why}. Type the path here instead."
                ));
                PathWanted::Nothing
            }
        }
    }

    /// The ending of the file where none was typed.
    const fn ending(&self) -> &'static str {
        match self.purpose {
            Purpose::Open | Purpose::Save | Purpose::Import | Purpose::BringIn => "ron",
            Purpose::Comparison => "png",
        }
    }

    /// Says why the path was not used; the panel stays.
    pub fn refuse(&mut self, why: &impl std::fmt::Display) {
        self.said = Some(why.to_string());
    }

    /// Asks whether the file there may be replaced; the panel stays.
    pub fn ask_to_replace(&mut self, path: PathBuf) {
        self.text = path.display().to_string();
        self.replace = Some(path);
    }

    /// The panel.
    pub fn path_ui(&mut self, ui: &mut Ui, palette: Palette) -> PathWanted {
        let (title, button) = match self.purpose {
            Purpose::Open => ("Open a design", "Open"),
            Purpose::Save => ("Save the design", "Save"),
            Purpose::Import => ("Import mounts", "Import"),
            Purpose::BringIn => ("Bring in a design to compare", "Bring in"),
            Purpose::Comparison => (
                "Export the comparison: .png for a picture, .csv for a table",
                "Write",
            ),
        };
        ui.label(RichText::new(title).heading());
        if let Some(said) = &self.said {
            ui.label(RichText::new(said).color(palette.clash));
        } else if self.waiting {
            ui.label(
                RichText::new(
                    "The system's file dialog is asked. A path typed here does the same.",
                )
                .weak(),
            );
        }
        let mut wanted = PathWanted::Nothing;
        let id = egui::Id::unique("typed path");
        let response = ui
            .horizontal(|ui| {
                let label = ui.label("Path");
                let edit = TextEdit::singleline(&mut self.text)
                    .id(id)
                    .desired_width(ui.available_width() - 8.0);
                ui.add(edit.hint_text("/home/you/rings/ring.ron"))
                    .labelled_by(label.id)
            })
            .inner;
        let entered =
            response.lost_focus() && ui.input(|input| input.key_pressed(egui::Key::Enter));
        if ui.memory(|memory| memory.focused().is_none()) {
            response.request_focus();
        }
        if response.changed() {
            self.replace = None;
        }
        ui.horizontal(|ui| {
            if ui.button(button).clicked() || entered {
                wanted = self.typed();
            }
            if !self.waiting
                && ui
                    .button("Dialog…")
                    .on_hover_text("ask the system's file dialog")
                    .clicked()
            {
                self.waiting = true;
                self.said = None;
                wanted = PathWanted::Ask;
            }
            if ui.button("Cancel").clicked() {
                wanted = PathWanted::Close;
            }
        });
        if let Some(path) = self.replace.clone() {
            ui.horizontal_wrapped(|ui| {
                ui.label(format!("{} is there already.", path.display()));
                if ui.button("Replace").clicked() {
                    wanted = PathWanted::Replace(path);
                }
            });
        }
        wanted
    }

    fn typed(&mut self) -> PathWanted {
        let path = match files::typed_path(&self.text, self.ending()) {
            Ok(path) => path,
            Err(error) => {
                self.refuse(&error);
                return PathWanted::Nothing;
            }
        };
        let writes = matches!(self.purpose, Purpose::Save | Purpose::Comparison);
        if writes && files::exists(&path) && !path.is_dir() {
            self.replace = Some(path);
            return PathWanted::Nothing;
        }
        PathWanted::Use(path)
    }
}
