//! The files that were opened or saved last, newest first, kept in the user's own folder.

use std::path::{Path, PathBuf};

use super::files::{self, FileError};
use super::path_words::{path_of, path_words};
use crate::document::{read_ron, write_ron};

/// So many are kept.
const MOST: usize = 12;

/// One of them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct RecentFile {
    /// Where it is.
    pub path: PathBuf,
    /// Whether it was not there when it was last looked for.
    pub missing: bool,
}

/// The list.
#[derive(Debug, Default)]
pub(super) struct Recent {
    list: Option<PathBuf>,
    files: Vec<RecentFile>,
}

impl Recent {
    /// The list in the user's own folder; one that cannot be read is begun anew, for it holds no work.
    pub fn in_folder(own_folder: &Path) -> Self {
        let list = own_folder.join("recent.ron");
        let files = read(&list).into_iter().map(there).collect();
        Self {
            list: Some(list),
            files,
        }
    }

    /// The files.
    pub fn files(&self) -> &[RecentFile] {
        &self.files
    }

    /// Puts a file at the head.
    ///
    /// # Errors
    /// The list cannot be written; it holds for this run all the same.
    pub fn add(&mut self, path: &Path) -> Result<(), FileError> {
        let path = files::real_path(path);
        if self.files.first().is_some_and(|first| first.path == path) {
            return Ok(());
        }
        // Another window may have added to the list meanwhile.
        let mut files: Vec<RecentFile> = match &self.list {
            Some(list) => read(list).into_iter().map(there).collect(),
            None => self.files.clone(),
        };
        files.retain(|one| one.path != path);
        files.insert(0, there(path));
        files.truncate(MOST);
        self.files = files;
        self.write()
    }

    /// Empties the list.
    ///
    /// # Errors
    /// The list cannot be written.
    pub fn clear(&mut self) -> Result<(), FileError> {
        self.files.clear();
        self.write()
    }

    /// Takes in which of the files are not there.
    pub fn mark_missing(&mut self, missing: &[PathBuf]) {
        for file in &mut self.files {
            file.missing = missing.contains(&file.path);
        }
    }

    fn write(&self) -> Result<(), FileError> {
        let Some(list) = &self.list else {
            return Ok(());
        };
        let words: Vec<String> = self.files.iter().map(|one| path_words(&one.path)).collect();
        let text = write_ron(&words).map_err(|error| FileError::NotWritten {
            path: list.clone(),
            reason: error.to_string(),
        })?;
        files::make_folder_of(list)?;
        files::replace_text(list, &text)
    }
}

const fn there(path: PathBuf) -> RecentFile {
    RecentFile {
        path,
        missing: false,
    }
}

fn read(list: &Path) -> Vec<PathBuf> {
    let words = files::read_text(list).ok();
    let words = words.and_then(|text| read_ron::<Vec<String>>(&text).ok());
    let paths = words.unwrap_or_default().into_iter().take(MOST);
    paths.map(|words| path_of(&words)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn paths(recent: &Recent) -> Vec<PathBuf> {
        recent.files().iter().map(|one| one.path.clone()).collect()
    }

    #[test]
    fn the_newest_is_first_and_none_stands_twice() {
        let own = tempfile::tempdir().unwrap();
        let mut recent = Recent::in_folder(own.path());
        for name in ["/a/1.ron", "/a/2 ü\n.ron", "/a/1.ron"] {
            recent.add(Path::new(name)).unwrap();
        }
        let expected = ["/a/1.ron", "/a/2 ü\n.ron"].map(PathBuf::from);
        assert_eq!(paths(&recent), expected);
        assert_eq!(paths(&Recent::in_folder(own.path())), expected);
        for number in 0..20 {
            recent
                .add(&PathBuf::from(format!("/b/{number}.ron")))
                .unwrap();
        }
        assert_eq!(recent.files().len(), MOST);
        recent.clear().unwrap();
        assert!(Recent::in_folder(own.path()).files().is_empty());
    }

    #[test]
    fn two_windows_add_to_one_list_and_a_broken_one_is_begun_anew() {
        let own = tempfile::tempdir().unwrap();
        let (mut one, mut other) = (Recent::in_folder(own.path()), Recent::in_folder(own.path()));
        one.add(Path::new("/a/1.ron")).unwrap();
        other.add(Path::new("/a/2.ron")).unwrap();
        assert_eq!(Recent::in_folder(own.path()).files().len(), 2);
        files::replace_text(&own.path().join("recent.ron"), "[[[").unwrap();
        assert!(Recent::in_folder(own.path()).files().is_empty());
    }
}
