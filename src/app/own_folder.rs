//! The user's own folder: mounts that were measured, and the workshop.

use std::path::{Path, PathBuf};

use super::files::{self, FileError};
use crate::document::{Library, read_library, write_ron};
use crate::workshop::Workshop;

/// The folder, as each system has it; none where the system names no home.
#[must_use]
pub fn own_folder() -> Option<PathBuf> {
    directories::ProjectDirs::from("", "", "flangewright")
        .map(|folders| folders.config_dir().to_owned())
}

/// The file of the user's own mounts.
#[must_use]
pub fn mounts_file(folder: &Path) -> PathBuf {
    folder.join("mounts.ron")
}

/// The file of the user's own workshop.
#[must_use]
pub fn workshop_file(folder: &Path) -> PathBuf {
    folder.join("workshop.ron")
}

/// Mounts from a file: a list such as `(lenses: [(name: "my 58")], bodies: [])`.
///
/// # Errors
/// What [`files::read_text`] refuses, and values that no mount may have.
pub fn read_mounts(path: &Path) -> Result<Library, FileError> {
    let text = files::read_text(path)?;
    read_library(&text).map_err(|error| FileError::NotADesign {
        path: path.to_owned(),
        error,
    })
}

/// Writes mounts over whatever stands there; the folder is made where it is missing.
///
/// # Errors
/// The folder cannot be made, or what [`files::replace_text`] refuses.
pub fn write_mounts(path: &Path, mounts: &Library) -> Result<(), FileError> {
    let text = write_ron(mounts).map_err(|error| FileError::NotWritten {
        path: path.to_owned(),
        reason: error.to_string(),
    })?;
    files::make_folder_of(path)?;
    files::replace_text(path, &text)
}

/// The workshop in a file.
///
/// # Errors
/// What [`files::read_text`] refuses, and a text that is no workshop.
pub fn read_workshop(path: &Path) -> Result<Workshop, FileError> {
    let text = files::read_text(path)?;
    Workshop::read(&text).map_err(|error| FileError::NotADesign {
        path: path.to_owned(),
        error,
    })
}

/// Writes a workshop over whatever stands there; the folder is made where it is missing.
///
/// # Errors
/// The folder cannot be made, or what [`files::replace_text`] refuses.
pub fn write_workshop(path: &Path, workshop: &Workshop) -> Result<(), FileError> {
    let text = write_ron(workshop).map_err(|error| FileError::NotWritten {
        path: path.to_owned(),
        reason: error.to_string(),
    })?;
    files::make_folder_of(path)?;
    files::replace_text(path, &text)
}

/// Writes the shipped workshop for the user to edit; a file that is there already is left alone.
///
/// # Errors
/// [`FileError::Exists`], or the folder cannot be made.
pub fn write_default_workshop(path: &Path) -> Result<(), FileError> {
    files::make_folder_of(path)?;
    files::export_bytes(path, Workshop::default_text().as_bytes(), false)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mount::Lens;

    #[test]
    fn mounts_come_back_as_they_were_kept() {
        let home = tempfile::tempdir().unwrap();
        let path = mounts_file(&home.path().join("not there yet"));
        let mounts = Library {
            lenses: vec![Lens {
                name: "mine".to_owned(),
                ..Lens::default()
            }],
            bodies: Vec::new(),
        };
        write_mounts(&path, &mounts).unwrap();
        assert_eq!(read_mounts(&path).unwrap(), mounts);
    }

    #[test]
    fn the_default_workshop_is_written_once_and_read_back() {
        let home = tempfile::tempdir().unwrap();
        let path = workshop_file(home.path());
        write_default_workshop(&path).unwrap();
        assert_eq!(
            read_workshop(&path).unwrap(),
            Workshop::default_set().unwrap()
        );
        let again = write_default_workshop(&path).unwrap_err();
        assert!(matches!(again, FileError::Exists(_)), "{again}");
    }
}
