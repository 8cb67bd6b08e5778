//! What lies in a folder of the program's own, and taking a file of it away.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use super::FileError;

/// The paths in a folder, in their order; none where there is no such folder.
///
/// # Errors
/// The folder cannot be read.
pub fn files_in(folder: &Path) -> Result<Vec<PathBuf>, FileError> {
    if !folder.is_dir() {
        return Ok(Vec::new());
    }
    let listed = fs::read_dir(folder).map_err(|error| FileError::of(folder, error))?;
    // An entry that vanishes while the folder is read is not there.
    let mut paths: Vec<PathBuf> = listed.flatten().map(|entry| entry.path()).collect();
    paths.sort();
    Ok(paths)
}

/// Takes a file away; one that is gone already is well.
///
/// # Errors
/// Not permitted, or something that is no file stands there.
pub fn remove(path: &Path) -> Result<(), FileError> {
    match fs::remove_file(path).map_err(|error| FileError::of(path, error)) {
        Ok(()) | Err(FileError::Missing(_)) => Ok(()),
        Err(error) => Err(error),
    }
}

/// When a file was last written, where the system tells it.
#[must_use]
pub fn written_at(path: &Path) -> Option<SystemTime> {
    fs::metadata(path).and_then(|facts| facts.modified()).ok()
}
