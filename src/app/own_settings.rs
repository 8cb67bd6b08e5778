//! What the window remembers of its user from one start to the next: the look, and which hints are put away.

use std::path::{Path, PathBuf};

use egui::Context;
use serde::{Deserialize, Serialize};

use super::files::{self, FileError};
use super::look::{Look, LookChoice};
use super::window::Window;
use crate::document::{read_ron, write_ron};

/// What is remembered.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Settings {
    /// The look.
    pub look: Look,
    /// Whether the hints of the first start are put away for good.
    pub hints_put_away: bool,
}

/// The settings and where they are kept.
#[derive(Debug, Default)]
pub struct OwnSettings {
    now: Settings,
    file: Option<PathBuf>,
    worn: Option<Look>,
}

impl OwnSettings {
    /// The settings in a file, and why it could not be read; a missing file stands for those nobody has changed.
    #[must_use]
    pub fn in_folder(folder: &Path) -> (Self, Option<FileError>) {
        let path = folder.join("settings.ron");
        let (now, error) = match read(&path) {
            Ok(settings) => (settings, None),
            Err(error) => (Settings::default(), Some(error)),
        };
        // A broken file is kept for its owner to repair; nothing is written over it.
        let file = error.is_none().then_some(path);
        let own = Self {
            now,
            file,
            worn: None,
        };
        (own, error)
    }

    /// What is remembered now.
    #[must_use]
    pub const fn now(&self) -> Settings {
        self.now
    }

    /// Puts the look on the window where it has changed.
    pub fn put_on(&mut self, context: &Context) {
        if self.worn != Some(self.now.look) {
            self.now.look.put_on(context);
            self.worn = Some(self.now.look);
        }
    }

    /// Remembers something else from now on.
    ///
    /// # Errors
    /// The file cannot be written; the change holds until the window closes.
    pub fn change(&mut self, settings: Settings) -> Result<(), FileError> {
        self.now = settings;
        let Some(path) = &self.file else {
            return Ok(());
        };
        let text = write_ron(&settings).map_err(|error| FileError::NotWritten {
            path: path.clone(),
            reason: error.to_string(),
        })?;
        files::make_folder_of(path)?;
        files::replace_text(path, &text)
    }
}

fn read(path: &Path) -> Result<Settings, FileError> {
    if !files::exists(path) {
        return Ok(Settings::default());
    }
    let text = files::read_text(path)?;
    let settings: Settings = read_ron(&text).map_err(|error| FileError::NotADesign {
        path: path.to_owned(),
        error,
    })?;
    Ok(Settings {
        look: settings.look.within_the_sizes(),
        ..settings
    })
}

impl Window {
    /// Reads the settings of the user's own folder; what is broken is told.
    pub(super) fn use_settings(&mut self, folder: &Path) {
        let (settings, error) = OwnSettings::in_folder(folder);
        self.settings = settings;
        if let Some(error) = error {
            self.messages.fault(format!(
                "{error}. Colours and text size are the usual ones until the file is repaired or deleted"
            ));
        }
    }

    /// What the window remembers of its user.
    #[must_use]
    pub const fn settings(&self) -> Settings {
        self.settings.now()
    }

    pub(super) fn choose_look(&mut self, choice: LookChoice) {
        let now = self.settings.now();
        self.remember(Settings {
            look: now.look.after(choice),
            ..now
        });
    }

    pub(super) fn remember(&mut self, settings: Settings) {
        if let Err(error) = self.settings.change(settings) {
            self.messages.fault(format!(
                "{error}. The change holds until the window is closed"
            ));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_chosen_is_there_at_the_next_start() {
        let home = tempfile::tempdir().unwrap();
        let folder = home.path().join("not there yet");
        let (mut own, error) = OwnSettings::in_folder(&folder);
        assert!(error.is_none() && own.now() == Settings::default());
        let chosen = Settings {
            look: Look::default()
                .after(LookChoice::TextLarger)
                .after(LookChoice::Contrast(true)),
            hints_put_away: true,
        };
        own.change(chosen).unwrap();
        let (own, error) = OwnSettings::in_folder(&folder);
        assert!(error.is_none());
        assert_eq!(own.now(), chosen);
    }

    #[test]
    fn a_broken_file_is_told_of_and_left_alone() {
        let home = tempfile::tempdir().unwrap();
        let path = home.path().join("settings.ron");
        files::replace_text(&path, "(look: (text_percent: \"much\"))").unwrap();
        let (mut own, error) = OwnSettings::in_folder(home.path());
        assert!(error.unwrap().to_string().contains("settings.ron"));
        own.change(Settings::default()).unwrap();
        assert!(files::read_text(&path).unwrap().contains("much"));
    }
}
