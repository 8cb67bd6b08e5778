//! Two windows on one file: a mark that it is open, and a turn each for saving.
//!
//! The marks lie in the program's own folder, so that none stand about beside the designs, and the system lets them go
//! when a program ends. Between machines that share a folder they do not reach: there it is noticed before saving that
//! the file has changed.

use std::hash::{DefaultHasher, Hasher as _};
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::files::{self, FileError, Held, Holding};
use super::workspace::Workspace;

/// Saving takes moments; who holds the turn longer hangs.
const PATIENCE: Duration = Duration::from_millis(500);

/// Where the marks lie.
#[derive(Clone, Debug, Default)]
pub struct FileLocks {
    folder: Option<PathBuf>,
}

impl FileLocks {
    /// Marks in the program's own folder.
    #[must_use]
    pub fn in_folder(own_folder: &Path) -> Self {
        Self {
            folder: Some(own_folder.join("locks")),
        }
    }

    /// The mark of a file: its name is a digest, for a path may hold what a name may not.
    fn mark(&self, path: &Path, what: &str) -> Option<PathBuf> {
        let mut digest = DefaultHasher::new();
        digest.write(files::real_path(path).as_os_str().as_encoded_bytes());
        let name = format!("{:016x}.{what}", digest.finish());
        self.folder.as_ref().map(|folder| folder.join(name))
    }

    /// Marks the file of a design as open here; false where another window has it open.
    pub fn claim(&self, workspace: &mut Workspace) -> bool {
        let mark = workspace.path().and_then(|path| self.mark(path, "open"));
        let Some(mark) = mark else { return true };
        if workspace
            .in_use
            .as_ref()
            .is_some_and(|held| held.is_at(&mark))
        {
            return true;
        }
        match files::hold(&mark) {
            Ok(Holding::Ours(held)) => {
                workspace.in_use = Some(held);
                true
            }
            Ok(Holding::Elsewhere) => {
                workspace.in_use = None;
                false
            }
            // Without marks the file itself is still looked at before it is saved.
            Err(_) => true,
        }
    }

    /// Saves a design as [`Workspace::save_to`] does, in turn with other windows that save the same file.
    ///
    /// # Errors
    /// As [`Workspace::save_to`]; [`FileError::Busy`] where another window holds the turn too long.
    pub fn save(
        &self,
        workspace: &mut Workspace,
        path: &Path,
    ) -> Result<Option<String>, FileError> {
        let turn = self.turn(path)?;
        let saved = workspace.save_to(path);
        drop(turn);
        saved
    }

    fn turn(&self, path: &Path) -> Result<Option<Held>, FileError> {
        let Some(mark) = self.mark(path, "saving") else {
            return Ok(None);
        };
        match files::hold_soon(&mark, PATIENCE) {
            Ok(held) => Ok(Some(held)),
            Err(FileError::Busy(_)) => Err(FileError::Busy(path.to_owned())),
            // Where no marks can be made, saving is more than its turn.
            Err(_) => Ok(None),
        }
    }
}
