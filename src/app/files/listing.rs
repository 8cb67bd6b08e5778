//! What lies in a folder of the program's own, and taking a file of it away.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

use super::{BESIDE, FileError};

/// No saving takes longer.
const LONGEST: Duration = Duration::from_mins(10);

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

/// Takes away what savings that were cut short have left half written in a folder. Those of others that are saving at
/// this moment are younger and stay.
pub fn sweep(folder: &Path) {
    let leftover = |path: &PathBuf| {
        let name = path.file_name().and_then(|name| name.to_str());
        let age = written_at(path).and_then(|written| written.elapsed().ok());
        name.is_some_and(|name| name.starts_with(BESIDE)) && age.is_some_and(|age| age > LONGEST)
    };
    for path in files_in(folder).unwrap_or_default() {
        if leftover(&path) {
            // It is in nobody's way where it cannot be removed.
            let _stays = remove(&path);
        }
    }
}

/// When a file was last written, where the system tells it.
#[must_use]
pub fn written_at(path: &Path) -> Option<SystemTime> {
    fs::metadata(path).and_then(|facts| facts.modified()).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs::File;

    #[test]
    fn only_old_leftovers_of_our_own_are_swept() {
        let folder = tempfile::tempdir().unwrap();
        let old = SystemTime::now() - Duration::from_hours(1);
        for (name, is_old) in [
            (".flangewright-old", true),
            (".flangewright-young", false),
            ("ring.ron", true),
        ] {
            let file = File::create(folder.path().join(name)).unwrap();
            if is_old {
                file.set_modified(old).unwrap();
            }
        }
        sweep(folder.path());
        let left = files_in(folder.path()).unwrap();
        let names = [".flangewright-young", "ring.ron"];
        assert_eq!(left, names.map(|name| folder.path().join(name)));
    }
}
