//! Where to open or save: the system's dialog, or a path typed here, which always works.

use std::path::{Path, PathBuf};

use egui::{RichText, TextEdit, Ui};

use super::chooser::{FileAnswer, FileQuestion};
use super::files;
use super::palette::Palette;
use super::print_out::PrintOut;

/// What the path is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Open the design there.
    Open,
    /// Save the design there.
    Save,
    /// Take the mounts there into the user's own.
    Import,
    /// Write a sheet to be printed there.
    Print(PrintOut),
}

impl Purpose {
    /// The ending of a path that was typed without one.
    const fn ending(self) -> &'static str {
        match self {
            Self::Open | Self::Save | Self::Import => "ron",
            Self::Print(_) => "pdf",
        }
    }

    /// The path that is proposed beside the design's file.
    fn proposed(self, near: Option<&Path>) -> String {
        let words = |path: &Path| path.display().to_string();
        match self {
            Self::Save | Self::Import => near.map(words),
            // Another one is opened out of the same folder.
            Self::Open => near
                .and_then(Path::parent)
                .map(|folder| words(&folder.join(""))),
            Self::Print(sheet) => near.map(|near| {
                let stem = near.file_stem().unwrap_or_default().to_string_lossy();
                let name = format!("{stem} {}.pdf", sheet.word());
                words(&near.with_file_name(name))
            }),
        }
        .unwrap_or_default()
    }

    /// Whether a file that is there already is asked about before it is replaced.
    const fn replaces(self) -> bool {
        match self {
            Self::Open | Self::Import => false,
            Self::Save | Self::Print(_) => true,
        }
    }
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
}

impl PathPanel {
    /// A panel that begins with this path, while the system's dialog is asked too.
    #[must_use]
    pub fn new(purpose: Purpose, near: Option<&Path>) -> Self {
        let text = purpose.proposed(near);
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
            Purpose::Print(sheet) => sheet.title(),
        };
        let kind = match self.purpose {
            Purpose::Open | Purpose::Save => "Design",
            Purpose::Import => "Mounts",
            Purpose::Print(_) => "PDF",
        };
        // A path that ends with a separator is a folder, and names no file yet.
        let is_folder = self.text.ends_with(std::path::MAIN_SEPARATOR);
        let name = near
            .file_name()
            .filter(|_| !is_folder)
            .map(|name| name.to_string_lossy().into_owned());
        let folder = if is_folder {
            Some(near.as_path())
        } else {
            near.parent()
        };
        FileQuestion {
            title: title.to_owned(),
            kind: kind.to_owned(),
            extension: self.purpose.ending().to_owned(),
            folder: folder
                .filter(|folder| !folder.as_os_str().is_empty())
                .map(Path::to_owned),
            name: name.unwrap_or_else(|| format!("ring.{}", self.purpose.ending())),
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

    /// Says why the path was not used; the panel stays.
    pub fn refuse(&mut self, error: &dyn std::error::Error) {
        self.said = Some(error.to_string());
    }

    /// The panel.
    pub fn path_ui(&mut self, ui: &mut Ui, palette: Palette) -> PathWanted {
        let (title, button) = match self.purpose {
            Purpose::Open => ("Open a design", "Open"),
            Purpose::Save => ("Save the design", "Save"),
            Purpose::Import => ("Import mounts", "Import"),
            Purpose::Print(sheet) => (sheet.title(), "Write"),
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
                let hint = format!("/home/you/rings/ring.{}", self.purpose.ending());
                ui.add(edit.hint_text(hint)).labelled_by(label.id)
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
        if let Purpose::Print(_) = self.purpose {
            ui.label(
                "A path that ends in .pdf gives pages of A4, one that ends in .txt plain text.",
            );
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
                    wanted = PathWanted::Use(path);
                }
            });
        }
        wanted
    }

    fn typed(&mut self) -> PathWanted {
        let path = match files::typed_path(&self.text, self.purpose.ending()) {
            Ok(path) => path,
            Err(error) => {
                self.refuse(&error);
                return PathWanted::Nothing;
            }
        };
        if self.purpose.replaces() && files::exists(&path) && !path.is_dir() {
            self.replace = Some(path);
            return PathWanted::Nothing;
        }
        PathWanted::Use(path)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn another_design_is_opened_out_of_the_folder_of_the_present_one() {
        let panel = PathPanel::new(Purpose::Open, Some(Path::new("/home/me/rings/one.ron")));
        assert_eq!(panel.text, "/home/me/rings/");
        let question = panel.question();
        assert_eq!(question.folder, Some(PathBuf::from("/home/me/rings")));
        assert_eq!(question.name, "ring.ron");
        let saving = PathPanel::new(Purpose::Save, Some(Path::new("/home/me/rings/one.ron")));
        assert_eq!(saving.question().name, "one.ron");
        assert_eq!(saving.question().folder, question.folder);
    }
}
