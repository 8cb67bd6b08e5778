//! The one file module: reading with limits, writing so that a crash leaves the old file or the new.
//!
//! This file and those in the folder `files` are the only place that touches the disk.

mod before;
mod held;
mod listing;
mod seen;

use std::fs::{self, File};
use std::io::{self, Read as _, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;
use thiserror::Error;

use crate::document::{Design, ReadError, SIZE_LIMIT, read_design, write_ron};
pub use before::before_of;
pub use held::{Held, Holding, hold, hold_soon};
pub use listing::{files_in, remove, sweep, written_at};
pub use seen::{Seen, Standing, standing_of};

/// How the names of files begin that are being written and not in their places yet.
const BESIDE: &str = ".flangewright-";

/// Why a file could not be read or written; every text names the path and what to do.
#[derive(Debug, Error)]
pub enum FileError {
    /// Nothing there.
    #[error("{}: there is no such file. Look at the spelling of the path", .0.display())]
    Missing(PathBuf),
    /// A folder.
    #[error("{}: this is a folder. Give the path of a file in it", .0.display())]
    Folder(PathBuf),
    /// A pipe, a device or a socket: reading it could wait for ever.
    #[error("{}: this is no ordinary file. Give the path of a design", .0.display())]
    NotAFile(PathBuf),
    /// The folder to write in is missing.
    #[error("{}: the folder it should go into does not exist. Make it first, or give another path", .0.display())]
    NoFolder(PathBuf),
    /// Not allowed.
    #[error("{}: the system does not permit it. Give another path, or change the permissions", .0.display())]
    Denied(PathBuf),
    /// Too large to be a design.
    #[error("{}: the file has {bytes} bytes; a design has at most {SIZE_LIMIT}. It is some other file", path.display())]
    TooLarge {
        /// The file.
        path: PathBuf,
        /// Its size.
        bytes: u64,
    },
    /// Not text.
    #[error("{}: the file is not UTF-8 text, so it is no design. Choose another file", .0.display())]
    NotText(PathBuf),
    /// Not a design.
    #[error("{}: {error}", path.display())]
    NotADesign {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        error: ReadError,
    },
    /// A file is there already.
    #[error("{}: there is a file already. Allow it to be replaced, or give another name", .0.display())]
    Exists(PathBuf),
    /// The design has grown beyond what is read back.
    #[error("{}: the design has grown to {bytes} bytes, and at most {SIZE_LIMIT} are read back. Shorten the notes or take variants out, then save", path.display())]
    Outgrown {
        /// The file.
        path: PathBuf,
        /// The size it would have.
        bytes: usize,
    },
    /// Another program of ours is at it.
    #[error("{}: another window is writing it at this moment. Try again", .0.display())]
    Busy(PathBuf),
    /// Somebody else has written the file since it was read.
    #[error("{}: the file was changed by another program since it was opened here. Nothing was written", .0.display())]
    ChangedMeanwhile(PathBuf),
    /// No path was given.
    #[error("no path was typed. Type where the file is or should go")]
    NoPath,
    /// The design could not be put into words.
    #[error("{}: the design could not be written as text: {reason}", path.display())]
    NotWritten {
        /// The file.
        path: PathBuf,
        /// What the writer said.
        reason: String,
    },
    /// Anything else the system said.
    #[error("{}: {error}. Nothing was changed there", path.display())]
    System {
        /// The file.
        path: PathBuf,
        /// What the system said.
        error: io::Error,
    },
}

impl FileError {
    fn of(path: &Path, error: io::Error) -> Self {
        let path = path.to_owned();
        match error.kind() {
            io::ErrorKind::NotFound => Self::Missing(path),
            io::ErrorKind::PermissionDenied => Self::Denied(path),
            io::ErrorKind::AlreadyExists => Self::Exists(path),
            io::ErrorKind::IsADirectory => Self::Folder(path),
            // The system's kinds are open-ended; its own words are shown.
            _ => Self::System { path, error },
        }
    }
}

/// Reads a text file of at most [`SIZE_LIMIT`] bytes; the size is looked at before anything is read.
///
/// # Errors
/// Missing, a folder, not permitted, too large, not UTF-8.
pub fn read_text(path: &Path) -> Result<String, FileError> {
    read_text_up_to(path, SIZE_LIMIT)
}

/// Reads a text file of at most so many bytes.
///
/// # Errors
/// As [`read_text`].
pub fn read_text_up_to(path: &Path, most_bytes: usize) -> Result<String, FileError> {
    if path.as_os_str().is_empty() {
        return Err(FileError::NoPath);
    }
    let facts = fs::metadata(path).map_err(|error| FileError::of(path, error))?;
    if facts.is_dir() {
        return Err(FileError::Folder(path.to_owned()));
    }
    if !facts.is_file() {
        return Err(FileError::NotAFile(path.to_owned()));
    }
    let limit = u64::try_from(most_bytes).unwrap_or(u64::MAX);
    if facts.len() > limit {
        return Err(FileError::TooLarge {
            path: path.to_owned(),
            bytes: facts.len(),
        });
    }
    let file = File::open(path).map_err(|error| FileError::of(path, error))?;
    let mut bytes = Vec::new();
    // A file that is being written may grow meanwhile: never take more than the limit and one.
    file.take(limit + 1)
        .read_to_end(&mut bytes)
        .map_err(|error| FileError::of(path, error))?;
    if bytes.len() > most_bytes {
        return Err(FileError::TooLarge {
            path: path.to_owned(),
            bytes: limit + 1,
        });
    }
    String::from_utf8(bytes).map_err(|_| FileError::NotText(path.to_owned()))
}

/// Reads a design.
///
/// # Errors
/// As [`read_text`], and everything that [`read_design`] refuses.
pub fn open_design(path: &Path) -> Result<Design, FileError> {
    open_design_seen(path).map(|(design, _)| design)
}

/// Reads a design, with the mark of what was seen in the file.
///
/// # Errors
/// As [`open_design`].
pub fn open_design_seen(path: &Path) -> Result<(Design, Seen), FileError> {
    let text = read_text(path)?;
    let design = read_design(&text).map_err(|error| FileError::NotADesign {
        path: path.to_owned(),
        error,
    })?;
    Ok((design, Seen::of(&text)))
}

/// What saving came to besides the file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Saved {
    /// The mark of what is in the file now.
    pub seen: Seen,
    /// Why the version before could not be kept, where it could not.
    pub before_lost: Option<String>,
}

/// Saves a design over whatever stands at `path`: after a crash the old file is there or the new one. What stood there
/// is kept beside it as the version before, see [`before_of`].
///
/// # Errors
/// A folder stands there, its folder is missing, not permitted, disk full, or the design has grown too large to be
/// read back.
pub fn save_design(path: &Path, design: &Design) -> Result<Saved, FileError> {
    let text = write_ron(design).map_err(|error| FileError::NotWritten {
        path: path.to_owned(),
        reason: error.to_string(),
    })?;
    if text.len() > SIZE_LIMIT {
        return Err(FileError::Outgrown {
            path: path.to_owned(),
            bytes: text.len(),
        });
    }
    let seen = Seen::of(&text);
    let mut before_lost = None;
    // The same text again is no new version, and would push the version before out of its place.
    if standing_of(path, Some(seen)) != Standing::AsSeen {
        let write = |file: &mut dyn Write| file.write_all(text.as_bytes());
        before_lost = write_whole(path, Place::AndKeepBefore, write)?;
        if let Some(folder) = real_path(path).parent() {
            sweep(folder);
        }
    }
    Ok(Saved { seen, before_lost })
}

/// Writes text over whatever stands at `path`: after a crash the old file is there or the new one.
///
/// # Errors
/// As [`save_design`].
pub fn replace_text(path: &Path, text: &str) -> Result<(), FileError> {
    write_whole(path, Place::Replace, |file| file.write_all(text.as_bytes())).map(drop)
}

/// Makes the folder that `path` is to stand in, where it is missing.
///
/// # Errors
/// Not permitted, or something else stands there.
pub fn make_folder_of(path: &Path) -> Result<(), FileError> {
    let Some(folder) = path.parent() else {
        return Ok(());
    };
    fs::create_dir_all(folder).map_err(|error| FileError::of(folder, error))
}

/// Writes an export. A file that is there already is left alone unless `force`.
///
/// # Errors
/// [`FileError::Exists`] where a file is there already; otherwise as [`save_design`].
pub fn export_bytes(path: &Path, bytes: &[u8], force: bool) -> Result<(), FileError> {
    let place = if force {
        Place::Replace
    } else {
        Place::OnlyIfFree
    };
    write_whole(path, place, |file| file.write_all(bytes)).map(drop)
}

/// Whether something stands at `path`.
#[must_use]
pub fn exists(path: &Path) -> bool {
    fs::symlink_metadata(path).is_ok()
}

/// The one path of a file that several paths may lead to; a file that is not there yet in the folder that is.
#[must_use]
pub fn real_path(path: &Path) -> PathBuf {
    if let Ok(real) = fs::canonicalize(path) {
        return real;
    }
    let folder = path
        .parent()
        .and_then(|folder| fs::canonicalize(folder).ok());
    match (folder, path.file_name()) {
        (Some(folder), Some(name)) => folder.join(name),
        (None, _) | (_, None) => path.to_owned(),
    }
}

/// A typed path: spaces and quotes around it cut off, `~/` led home, `extension` added where there is none.
///
/// # Errors
/// [`FileError::NoPath`] for nothing.
pub fn typed_path(text: &str, extension: &str) -> Result<PathBuf, FileError> {
    let text = text.trim().trim_matches(['"', '\'']).trim();
    if text.is_empty() {
        return Err(FileError::NoPath);
    }
    let home = text.strip_prefix("~/").zip(directories::BaseDirs::new());
    let mut path = home.map_or_else(
        || PathBuf::from(text),
        |(rest, dirs)| dirs.home_dir().join(rest),
    );
    if !extension.is_empty() && path.extension().is_none() && !path.is_dir() {
        path.set_extension(extension);
    }
    Ok(path)
}

/// What becomes of a file that is there already.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    Replace,
    AndKeepBefore,
    OnlyIfFree,
}

/// Writes a whole file, and says why the version before could not be kept where that was wanted and failed.
fn write_whole(
    path: &Path,
    place: Place,
    write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
) -> Result<Option<String>, FileError> {
    if path.as_os_str().is_empty() {
        return Err(FileError::NoPath);
    }
    if path.is_dir() {
        return Err(FileError::Folder(path.to_owned()));
    }
    if place == Place::OnlyIfFree && exists(path) {
        return Err(FileError::Exists(path.to_owned()));
    }
    // Through a link the file it leads to is written, and the link stays.
    let target = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let folder = match target.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder.to_owned(),
        Some(_) | None => PathBuf::from("."),
    };
    if !folder.is_dir() {
        return Err(FileError::NoFolder(path.to_owned()));
    }
    put_in_place(&target, &folder, place, write).map_err(|error| FileError::of(path, error))
}

/// Writes beside the target, syncs, renames, syncs the folder.
fn put_in_place(
    target: &Path,
    folder: &Path,
    place: Place,
    write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
) -> io::Result<Option<String>> {
    let mut beside = file_beside(folder)?;
    write(beside.as_file_mut())?;
    if let Ok(facts) = fs::metadata(target) {
        beside.as_file().set_permissions(facts.permissions())?;
    }
    beside.as_file().sync_all()?;
    let mut before_lost = None;
    match place {
        Place::Replace => beside.persist(target).map_err(|error| error.error)?,
        Place::AndKeepBefore => {
            // The new version is more than the one before: it is saved all the same.
            let kept = before::keep_version_before(target, folder);
            before_lost = kept.err().map(|error| error.to_string());
            beside.persist(target).map_err(|error| error.error)?
        }
        Place::OnlyIfFree => beside
            .persist_noclobber(target)
            .map_err(|error| error.error)?,
    };
    sync_folder(folder)?;
    Ok(before_lost)
}

#[cfg(unix)]
fn file_beside(folder: &Path) -> io::Result<NamedTempFile> {
    use std::os::unix::fs::PermissionsExt as _;
    // Readable by all as far as the user's own mask lets it, like any new file.
    let permissions = fs::Permissions::from_mode(0o666);
    tempfile::Builder::new()
        .prefix(BESIDE)
        .permissions(permissions)
        .tempfile_in(folder)
}

#[cfg(not(unix))]
fn file_beside(folder: &Path) -> io::Result<NamedTempFile> {
    tempfile::Builder::new().prefix(BESIDE).tempfile_in(folder)
}

#[cfg(unix)]
fn sync_folder(folder: &Path) -> io::Result<()> {
    File::open(folder)?.sync_all()
}

#[cfg(not(unix))]
fn sync_folder(_folder: &Path) -> io::Result<()> {
    Ok(())
}

#[cfg(test)]
#[path = "files/files_tests.rs"]
mod tests;
