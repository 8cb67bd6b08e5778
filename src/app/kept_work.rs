//! A copy of unsaved work as a file: the design as it is saved, under two lines that say where it belongs.
//!
//! Such a file is a design file like any other and can be opened by hand.

use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime, UNIX_EPOCH};

use super::files::{self, FileError, Seen};
use super::path_words::{path_of, path_words};
use crate::document::{Design, ReadError, SIZE_LIMIT, read_design, write_ron};

/// How the first line of such a file begins, before the path; nothing follows where the design had no file.
const FROM: &str = "// Unsaved work of Flangewright, of the file: ";
/// How the second line begins, before the mark of that file.
const SEEN: &str = "// What was last seen in that file: ";
/// Room for the two lines, bytes: a path is far shorter.
const HEAD_LIMIT: usize = 100_000;

/// Unsaved work.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptWork {
    /// The design.
    pub design: Design,
    /// The file that it was opened from or saved to.
    pub from: Option<PathBuf>,
    /// What was last seen there.
    pub seen: Option<Seen>,
}

impl KeptWork {
    /// Writes it over whatever stands at `path`.
    ///
    /// # Errors
    /// What [`files::replace_text`] refuses.
    pub fn write(&self, path: &Path) -> Result<(), FileError> {
        let text = write_ron(&self.design).map_err(|error| FileError::NotWritten {
            path: path.to_owned(),
            reason: error.to_string(),
        })?;
        let from = self.from.as_deref().map(path_words).unwrap_or_default();
        let seen = self.seen.map(Seen::words).unwrap_or_default();
        files::replace_text(path, &format!("{FROM}{from}\n{SEEN}{seen}\n{text}"))
    }

    fn read(text: &str) -> Result<Self, ReadError> {
        let first = text.lines().next().and_then(|line| line.strip_prefix(FROM));
        let second = text.lines().nth(1).and_then(|line| line.strip_prefix(SEEN));
        // The lines are no part of what the size of a design is judged by.
        let design = text
            .splitn(3, '\n')
            .nth(2)
            .filter(|_| first.is_some() && second.is_some())
            .unwrap_or(text);
        Ok(Self {
            design: read_design(design)?,
            from: first.filter(|words| !words.is_empty()).map(path_of),
            seen: second.and_then(Seen::parse),
        })
    }

    /// What to call it: the name of its file, else its own.
    #[must_use]
    pub fn name(&self) -> String {
        let stem = self.from.as_deref().and_then(Path::file_stem);
        let name = stem.map_or_else(
            || self.design.name.clone(),
            |stem| stem.to_string_lossy().into_owned(),
        );
        if name.trim().is_empty() {
            "new design".to_owned()
        } else {
            name
        }
    }

    /// Whether the file it belongs to holds the very same design: then there is nothing to bring back.
    #[must_use]
    pub fn is_in_its_file(&self) -> bool {
        let saved = self.from.as_deref().map(files::open_design);
        matches!(saved, Some(Ok(saved)) if saved == self.design)
    }
}

/// A file of unsaved work that was found.
#[derive(Debug)]
pub struct Found {
    /// Where it lies.
    pub path: PathBuf,
    /// When it was written.
    pub written: SystemTime,
    /// The work, or why it cannot be read.
    pub work: Result<KeptWork, String>,
}

impl Found {
    /// Reads one.
    #[must_use]
    pub fn at(path: PathBuf) -> Self {
        let work = files::read_text_up_to(&path, SIZE_LIMIT + HEAD_LIMIT)
            .map_err(|error| error.to_string())
            .and_then(|text| KeptWork::read(&text).map_err(|error| error.to_string()));
        Self {
            written: files::written_at(&path).unwrap_or(UNIX_EPOCH),
            path,
            work,
        }
    }

    /// What to call it.
    #[must_use]
    pub fn name(&self) -> String {
        match &self.work {
            Ok(work) => work.name(),
            Err(_) => self.path.display().to_string(),
        }
    }
}

/// A span of time in the words that one would use: `4 minutes`.
#[must_use]
pub fn span_words(span: Duration) -> String {
    let (count, unit) = match span.as_secs() {
        seconds @ 0..60 => (seconds, "second"),
        seconds @ 60..3600 => (seconds / 60, "minute"),
        seconds @ 3600..86400 => (seconds / 3600, "hour"),
        seconds => (seconds / 86400, "day"),
    };
    if count == 1 {
        format!("1 {unit}")
    } else {
        format!("{count} {unit}s")
    }
}

/// A moment as date and time of day in UTC: `2026-11-25 13:37 UTC`.
#[must_use]
pub fn moment_words(moment: SystemTime) -> String {
    let seconds = moment
        .duration_since(UNIX_EPOCH)
        .map_or(0, |since| since.as_secs());
    let (year, month, day) = date_of(seconds / 86400);
    let of_day = seconds % 86400;
    format!(
        "{year:04}-{month:02}-{day:02} {:02}:{:02} UTC",
        of_day / 3600,
        of_day / 60 % 60
    )
}

/// Year, month and day of a count of days since 1970-01-01, by the Gregorian calendar.
fn date_of(mut days: u64) -> (u64, u64, u64) {
    let mut year = 1970;
    loop {
        let length = if is_leap(year) { 366 } else { 365 };
        if days < length {
            break;
        }
        days -= length;
        year += 1;
    }
    let february = if is_leap(year) { 29 } else { 28 };
    let mut month = 1;
    for length in [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] {
        if days < length {
            break;
        }
        days -= length;
        month += 1;
    }
    (year, month, days + 1)
}

const fn is_leap(year: u64) -> bool {
    year.is_multiple_of(4) && !year.is_multiple_of(100) || year.is_multiple_of(400)
}

#[cfg(test)]
#[path = "kept_work_tests.rs"]
mod tests;
