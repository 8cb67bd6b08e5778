//! A lock that the system lets go when the program ends, however it ends.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::{Duration, Instant};

use super::FileError;

/// A lock in this program's hands until it is dropped or the program ends.
#[derive(Debug)]
pub struct Held {
    /// Open, and so locked, as long as this lives.
    _file: File,
    path: PathBuf,
}

/// What came of reaching for a lock.
#[derive(Debug)]
pub enum Holding {
    /// It is ours.
    Ours(Held),
    /// Another program has it, or this one has it already.
    Elsewhere,
}

/// Reaches for the lock at `path` without waiting; its folder is made where it is missing.
///
/// # Errors
/// The file cannot be made, or the file system knows no locks.
pub fn hold(path: &Path) -> Result<Holding, FileError> {
    super::make_folder_of(path)?;
    loop {
        let file = OpenOptions::new()
            .write(true)
            .create(true)
            .truncate(false)
            .open(path)
            .map_err(|error| FileError::of(path, error))?;
        match file.try_lock() {
            Ok(()) if is_still_there(&file, path) => {
                return Ok(Holding::Ours(Held {
                    _file: file,
                    path: path.to_owned(),
                }));
            }
            // Its last holder took the file away between our opening and our locking: there may be a new one.
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => return Ok(Holding::Elsewhere),
            Err(TryLockError::Error(error)) => return Err(FileError::of(path, error)),
        }
    }
}

/// Waits for a lock that others hold for moments only.
///
/// # Errors
/// As [`hold`]; besides [`FileError::Busy`] when it is not free within `patience`.
pub fn hold_soon(path: &Path, patience: Duration) -> Result<Held, FileError> {
    let begun = Instant::now();
    loop {
        match hold(path)? {
            Holding::Ours(held) => return Ok(held),
            Holding::Elsewhere if begun.elapsed() < patience => sleep(Duration::from_millis(2)),
            Holding::Elsewhere => return Err(FileError::Busy(path.to_owned())),
        }
    }
}

impl Held {
    /// Whether it is the lock at this path.
    #[must_use]
    pub fn is_at(&self, path: &Path) -> bool {
        self.path == path
    }
}

impl Drop for Held {
    fn drop(&mut self) {
        // Removed while still locked, so that nobody locks a file that is on its way out. Where it cannot be
        // removed it stays: an empty file that the next holder uses again.
        let _stays = fs::remove_file(&self.path);
    }
}

#[cfg(unix)]
fn is_still_there(file: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    let ours = file.metadata().map(|facts| (facts.dev(), facts.ino()));
    let there = fs::metadata(path).map(|facts| (facts.dev(), facts.ino()));
    // Where neither can be told the lock is ours all the same.
    matches!((ours, there), (Ok(ours), Ok(there)) if ours == there)
}

#[cfg(not(unix))]
fn is_still_there(_file: &File, _path: &Path) -> bool {
    // A file that is open cannot be taken away there.
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lock_is_given_once_and_again_after_it_was_let_go() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("not there yet/one.lock");
        let Holding::Ours(first) = hold(&path).unwrap() else {
            panic!("nobody else wants it");
        };
        assert!(matches!(hold(&path).unwrap(), Holding::Elsewhere));
        assert!(matches!(
            hold_soon(&path, Duration::from_millis(5)),
            Err(FileError::Busy(_))
        ));
        drop(first);
        assert!(!path.exists());
        assert!(matches!(hold(&path).unwrap(), Holding::Ours(_)));
    }
}
