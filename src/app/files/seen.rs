//! What a file held when it was last read or written here, to notice that somebody else has changed it.

use std::hash::{DefaultHasher, Hasher as _};
use std::path::Path;

use super::{FileError, read_text};

/// The mark of a text: its length and a digest. Two texts with one mark do not occur by accident.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seen {
    bytes: usize,
    digest: u64,
}

impl Seen {
    /// The mark of this text.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let mut digest = DefaultHasher::new();
        digest.write(text.as_bytes());
        Self {
            bytes: text.len(),
            digest: digest.finish(),
        }
    }

    /// As two whole numbers with a dash between, to be read back by [`Self::parse`].
    #[must_use]
    pub fn words(self) -> String {
        format!("{}-{:016x}", self.bytes, self.digest)
    }

    /// From the words of [`Self::words`].
    #[must_use]
    pub fn parse(words: &str) -> Option<Self> {
        let (bytes, digest) = words.split_once('-')?;
        Some(Self {
            bytes: bytes.parse().ok()?,
            digest: u64::from_str_radix(digest, 16).ok()?,
        })
    }
}

/// How a file stands to what was seen in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Standing {
    /// As it was seen.
    AsSeen,
    /// It is gone, or never was there.
    Gone,
    /// Another text stands there.
    Changed(Seen),
    /// It cannot be read any more, for this reason.
    Unreadable(String),
}

/// Looks whether a file still holds what was seen in it.
#[must_use]
pub fn standing_of(path: &Path, seen: Option<Seen>) -> Standing {
    match read_text(path) {
        Ok(text) => {
            let now = Seen::of(&text);
            if seen == Some(now) {
                Standing::AsSeen
            } else {
                Standing::Changed(now)
            }
        }
        Err(FileError::Missing(_)) => Standing::Gone,
        Err(error) => Standing::Unreadable(error.to_string()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_changed_file_is_told_from_one_that_stands_as_it_was() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("ring.ron");
        assert_eq!(standing_of(&path, None), Standing::Gone);
        std::fs::write(&path, "one").unwrap();
        let seen = Some(Seen::of("one"));
        assert_eq!(standing_of(&path, seen), Standing::AsSeen);
        std::fs::write(&path, "two").unwrap();
        assert_eq!(standing_of(&path, seen), Standing::Changed(Seen::of("two")));
        std::fs::write(&path, [0xff]).unwrap();
        assert!(matches!(standing_of(&path, seen), Standing::Unreadable(_)));
    }

    #[test]
    fn a_mark_is_read_back_from_its_words() {
        let seen = Seen::of("(format: 1)");
        assert_eq!(Seen::parse(&seen.words()), Some(seen));
        assert_eq!(Seen::parse("12"), None);
        assert_eq!(Seen::parse("x-y"), None);
    }
}
