//! The mounts of the user's own: kept, read back, and asked about where a name is taken.

use std::path::PathBuf;

use super::files::{FileError, exists};
use super::own_folder::{mounts_file, read_mounts, write_mounts};
use crate::document::{Library, ReadError, library};
use crate::mount::{Body, Lens};

/// A mount on its way into the list.
#[derive(Clone, Debug, PartialEq)]
pub enum Mount {
    /// A lens.
    Lens(Box<Lens>),
    /// A body.
    Body(Box<Body>),
}

impl Mount {
    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        match self {
            Self::Lens(lens) => &lens.name,
            Self::Body(body) => &body.name,
        }
    }

    /// The word for it.
    #[must_use]
    pub const fn word(&self) -> &'static str {
        match self {
            Self::Lens(_) => "lens",
            Self::Body(_) => "body",
        }
    }

    /// The same under another name.
    #[must_use]
    pub fn renamed(mut self, name: &str) -> Self {
        match &mut self {
            Self::Lens(lens) => name.clone_into(&mut lens.name),
            Self::Body(body) => name.clone_into(&mut body.name),
        }
        self
    }
}

/// Every mount of a list.
#[must_use]
pub fn mounts_of(list: Library) -> Vec<Mount> {
    let lenses = list.lenses.into_iter().map(Box::new).map(Mount::Lens);
    let bodies = list.bodies.into_iter().map(Box::new).map(Mount::Body);
    lenses.chain(bodies).collect()
}

/// Who has a name already.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Namesake {
    /// A mount of the user's own.
    Own,
    /// A shipped one.
    Shipped,
}

/// The user's own mounts.
#[derive(Debug, Default)]
pub struct OwnMounts {
    folder: Option<PathBuf>,
    own: Library,
    /// The file could not be read: nothing may be written over it.
    is_broken: bool,
}

/// Why a mount was not kept.
#[derive(Debug, thiserror::Error)]
pub enum KeepError {
    /// No folder.
    #[error("this system names no folder for a program's own files; save the design instead")]
    NoFolder,
    /// The file there is broken.
    #[error("{}: the list of your mounts could not be read, so nothing is written over it. Repair or remove the file and start again", .0.display())]
    Broken(PathBuf),
    /// No name.
    #[error("the {0} has no name. Give it one in its column first")]
    NoName(&'static str),
    /// It could not be written.
    #[error("{0}")]
    File(#[from] FileError),
}

impl OwnMounts {
    /// The mounts in a folder, and why they could not be read, if so.
    #[must_use]
    pub fn in_folder(folder: PathBuf) -> (Self, Option<FileError>) {
        let path = mounts_file(&folder);
        let read = if exists(&path) {
            read_mounts(&path)
        } else {
            Ok(Library::default())
        };
        let (own, error) = match read {
            Ok(own) => (own, None),
            Err(error) => (Library::default(), Some(error)),
        };
        let mounts = Self {
            folder: Some(folder),
            own,
            is_broken: error.is_some(),
        };
        (mounts, error)
    }

    /// The folder.
    #[must_use]
    pub const fn folder(&self) -> Option<&PathBuf> {
        self.folder.as_ref()
    }

    /// The shipped mounts with the user's own in their places.
    ///
    /// # Errors
    /// None in a whole program.
    pub fn all(&self) -> Result<Library, ReadError> {
        let mut all = library()?;
        all.take_in(self.own.clone());
        Ok(all)
    }

    /// Who has the name of this mount already.
    #[must_use]
    pub fn namesake(&self, mount: &Mount) -> Option<Namesake> {
        if has(&self.own, mount) {
            return Some(Namesake::Own);
        }
        let shipped = library().ok()?;
        has(&shipped, mount).then_some(Namesake::Shipped)
    }

    /// A name that nobody has: the mount's own with a number behind it.
    #[must_use]
    pub fn free_name(&self, mount: &Mount) -> String {
        let mut number = 2_u32;
        loop {
            let name = format!("{} ({number})", mount.name());
            if self.namesake(&mount.clone().renamed(&name)).is_none() {
                return name;
            }
            number += 1;
        }
    }

    /// Keeps a mount, over its namesake where there is one, and gives the file that holds it.
    ///
    /// # Errors
    /// [`KeepError`]; list and file stay as they were.
    pub fn keep(&mut self, mount: Mount) -> Result<PathBuf, KeepError> {
        let folder = self.folder.as_ref().ok_or(KeepError::NoFolder)?;
        let path = mounts_file(folder);
        if self.is_broken {
            return Err(KeepError::Broken(path));
        }
        if mount.name().trim().is_empty() {
            return Err(KeepError::NoName(mount.word()));
        }
        let mut next = self.own.clone();
        next.take_in(match mount {
            Mount::Lens(lens) => Library {
                lenses: vec![*lens],
                bodies: Vec::new(),
            },
            Mount::Body(body) => Library {
                lenses: Vec::new(),
                bodies: vec![*body],
            },
        });
        write_mounts(&path, &next)?;
        self.own = next;
        Ok(path)
    }
}

fn has(list: &Library, mount: &Mount) -> bool {
    match mount {
        Mount::Lens(lens) => list.lenses.iter().any(|one| one.name == lens.name),
        Mount::Body(body) => list.bodies.iter().any(|one| one.name == body.name),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lens(name: &str, notes: &str) -> Mount {
        Mount::Lens(Box::new(Lens {
            name: name.to_owned(),
            notes: notes.to_owned(),
            ..Lens::default()
        }))
    }

    #[test]
    fn a_kept_mount_is_there_at_the_next_start() {
        let home = tempfile::tempdir().unwrap();
        let (mut mounts, error) = OwnMounts::in_folder(home.path().to_owned());
        assert!(error.is_none());
        mounts.keep(lens("my 58", "first")).unwrap();
        mounts.keep(lens("my 58", "second")).unwrap();
        let (again, _) = OwnMounts::in_folder(home.path().to_owned());
        let all = again.all().unwrap();
        let mine: Vec<_> = all
            .lenses
            .iter()
            .filter(|one| one.name == "my 58")
            .collect();
        assert_eq!(mine.len(), 1);
        assert_eq!(mine[0].notes, "second");
        assert_eq!(again.namesake(&lens("my 58", "")), Some(Namesake::Own));
        assert_eq!(again.free_name(&lens("my 58", "")), "my 58 (2)");
        assert_eq!(
            again.namesake(&lens("M42x1, register 45.46", "")),
            Some(Namesake::Shipped)
        );
    }

    #[test]
    fn a_broken_list_is_never_written_over() {
        let home = tempfile::tempdir().unwrap();
        let path = mounts_file(home.path());
        super::super::files::replace_text(&path, "(lenses: [(regis").unwrap();
        let (mut mounts, error) = OwnMounts::in_folder(home.path().to_owned());
        assert!(error.unwrap().to_string().contains("mounts.ron"));
        assert!(matches!(
            mounts.keep(lens("mine", "")),
            Err(KeepError::Broken(_))
        ));
        assert_eq!(
            super::super::files::read_text(&path).unwrap(),
            "(lenses: [(regis"
        );
    }

    #[test]
    fn a_mount_needs_a_name_and_a_folder() {
        let mut nowhere = OwnMounts::default();
        assert!(matches!(
            nowhere.keep(lens("mine", "")),
            Err(KeepError::NoFolder)
        ));
        let home = tempfile::tempdir().unwrap();
        let (mut mounts, _) = OwnMounts::in_folder(home.path().to_owned());
        assert!(matches!(
            mounts.keep(lens(" ", "")),
            Err(KeepError::NoName("lens"))
        ));
    }
}
