//! A workspace and its file: opened, saved, found changed by others, brought back after a crash.

use std::path::Path;

use super::files::{self, FileError, Seen, Standing};
use super::kept_work::KeptWork;
use super::workspace::Workspace;
use crate::workshop::Workshop;

impl Workspace {
    /// A workspace on the design of a file.
    ///
    /// # Errors
    /// What [`files::open_design`] refuses.
    pub fn opened(path: &Path, workshop: Workshop) -> Result<Self, FileError> {
        let (design, seen) = files::open_design_seen(path)?;
        let mut workspace = Self::new(design, workshop);
        workspace.path = Some(path.to_owned());
        workspace.seen = Some(seen);
        Ok(workspace)
    }

    /// A workspace on work that was not saved when the program was cut short.
    #[must_use]
    pub fn brought_back(work: KeptWork, workshop: Workshop) -> Self {
        let mut workspace = Self::new(work.design, workshop);
        workspace.path = work.from;
        workspace.seen = work.seen;
        workspace.saved = None;
        workspace
    }

    /// Brings back work on the file that is open already, as a step that undo takes back to what the file holds.
    pub fn bring_back(&mut self, work: KeptWork) {
        self.put_as_step(work.design);
        self.seen = work.seen.or(self.seen);
    }

    /// Opens a design in the place of the present one; on a fault the present one stays.
    ///
    /// # Errors
    /// What [`files::open_design`] refuses.
    pub fn open(&mut self, path: &Path) -> Result<(), FileError> {
        let (design, seen) = files::open_design_seen(path)?;
        self.replace(design, Some(path.to_owned()));
        self.seen = Some(seen);
        Ok(())
    }

    /// Whether it has no file and nothing was done to it, so that another may take its place.
    #[must_use]
    pub fn is_untouched(&self) -> bool {
        self.path().is_none() && !self.is_changed()
    }

    /// Saves the design and keeps the path as its file. Gives the reason where the version before was not kept.
    ///
    /// # Errors
    /// [`FileError::ChangedMeanwhile`] where the design's own file holds something else than was seen there; what
    /// [`files::save_design`] refuses. File and design stay as they were.
    pub fn save_to(&mut self, path: &Path) -> Result<Option<String>, FileError> {
        self.end_drag();
        if self.path() == Some(path)
            && let Some(seen) = self.seen
            && matches!(
                files::standing_of(path, Some(seen)),
                Standing::Changed(_) | Standing::Unreadable(_)
            )
        {
            return Err(FileError::ChangedMeanwhile(path.to_owned()));
        }
        let saved = files::save_design(path, &self.design)?;
        self.path = Some(path.to_owned());
        self.seen = Some(saved.seen);
        self.saved = Some(self.design.clone());
        Ok(saved.before_lost)
    }

    /// What the file holds now, where it is not what was seen there.
    #[must_use]
    pub fn seen_otherwise(&self) -> Option<Standing> {
        match files::standing_of(self.path()?, Some(self.seen?)) {
            Standing::AsSeen => None,
            other => Some(other),
        }
    }

    /// Counts what is in the file as seen: saving goes over it, and it becomes the version before.
    pub fn keep_mine(&mut self) {
        let text = self.path().map(files::read_text);
        self.seen = match text {
            Some(Ok(text)) => Some(Seen::of(&text)),
            // What cannot be read cannot be compared either; it is written over.
            Some(Err(_)) | None => None,
        };
        self.saved = None;
    }

    /// Takes what is in the file as a step of the history, so that undo brings the own design back.
    ///
    /// # Errors
    /// What [`files::open_design`] refuses; nothing is changed then.
    pub fn take_theirs(&mut self) -> Result<(), FileError> {
        let Some(path) = self.path().map(Path::to_owned) else {
            return Err(FileError::NoPath);
        };
        let (design, seen) = files::open_design_seen(&path)?;
        self.put_as_step(design.clone());
        self.seen = Some(seen);
        self.saved = Some(design);
        Ok(())
    }

    /// A copy of the work, to be kept until it is saved.
    #[must_use]
    pub fn kept_work(&self) -> KeptWork {
        KeptWork {
            design: self.design.clone(),
            from: self.path().map(Path::to_owned),
            seen: self.seen,
        }
    }
}

#[cfg(test)]
#[path = "workspace_file_tests.rs"]
mod tests;
