//! The version before: what stood in a file until it was saved over, kept beside it under one name.

use std::ffi::OsString;
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

/// Where the version before of a file is kept: `ring.ron.bak` beside `ring.ron`.
#[must_use]
pub fn before_of(path: &Path) -> PathBuf {
    let mut name = path.file_name().map(OsString::from).unwrap_or_default();
    name.push(".bak");
    path.with_file_name(name)
}

/// Keeps what stands at `target` as the version before, in the place of an older one. Nothing at `target`, nothing
/// kept. At every moment both names lead to whole files.
///
/// # Errors
/// The folder may not be written to, something that is no file has the name, the disk is full.
pub(super) fn keep_version_before(target: &Path, folder: &Path) -> io::Result<()> {
    if !target.is_file() {
        return Ok(());
    }
    let before = before_of(target);
    // A second name costs no room on the disk, and the file under it is never written in place.
    let linked = tempfile::Builder::new()
        .prefix(super::BESIDE)
        .make_in(folder, |beside| fs::hard_link(target, beside));
    match linked {
        Ok(second_name) => {
            let passing_name = second_name.path().to_owned();
            second_name
                .into_temp_path()
                .persist(&before)
                .map_err(|error| error.error)?;
            // A crash may have left `before` as another name of this very file. Renaming one name of a file to
            // another does nothing (POSIX rename), and the passing name stays.
            let _already_gone = fs::remove_file(passing_name);
        }
        // A file system without second names, such as those of memory cards: a copy does.
        Err(_) => copy(target, &before, folder)?,
    }
    Ok(())
}

fn copy(target: &Path, before: &Path, folder: &Path) -> io::Result<()> {
    let mut beside = super::file_beside(folder)?;
    io::copy(&mut File::open(target)?, beside.as_file_mut())?;
    beside.as_file().sync_all()?;
    beside.persist(before).map_err(|error| error.error)?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_name_is_the_files_own_with_an_ending() {
        assert_eq!(
            before_of(Path::new("/a b/ring.ron")),
            Path::new("/a b/ring.ron.bak")
        );
        assert_eq!(before_of(Path::new("ring")), Path::new("ring.bak"));
    }

    #[test]
    fn nothing_is_left_lying_about_after_a_crash_between_the_two_renames() {
        let folder = tempfile::tempdir().unwrap();
        let target = folder.path().join("ring.ron");
        fs::write(&target, "old").unwrap();
        for _ in 0..2 {
            // The second time `before` is a second name of `target` already.
            keep_version_before(&target, folder.path()).unwrap();
            assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);
        }
        assert_eq!(fs::read_to_string(before_of(&target)).unwrap(), "old");
    }

    #[test]
    fn a_copy_serves_where_there_are_no_second_names() {
        let folder = tempfile::tempdir().unwrap();
        let target = folder.path().join("ring.ron");
        fs::write(&target, "old").unwrap();
        copy(&target, &before_of(&target), folder.path()).unwrap();
        assert_eq!(fs::read_to_string(before_of(&target)).unwrap(), "old");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);
    }
}
