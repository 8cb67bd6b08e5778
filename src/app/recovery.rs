//! Keeping unsaved work: every change is in a file of the user's own folder within moments, off the frame.
//!
//! Each run of the program has a name of its own and a lock under it. The system lets the lock go when the program
//! ends, however it ends: files under a lock that nobody holds are the work of a run that was cut short.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::{Duration, SystemTime, UNIX_EPOCH};

use thiserror::Error;

use super::files::{self, FileError, Held, Holding};
use super::kept_work::{Found, KeptWork};

/// The pause between two rounds of writing. With a round of its own it stays far below the 2 s that may be lost.
pub const PACE: Duration = Duration::from_millis(400);
/// The pause after a round that failed.
const PAUSE_AFTER_FAULT: Duration = Duration::from_millis(1500);
/// The ending of the lock of a run.
const LOCK: &str = "lock";

/// Why unsaved work cannot be kept.
#[derive(Debug, Error)]
pub enum RecoveryError {
    /// The lock cannot be made.
    #[error("unsaved work cannot be kept: {0}")]
    File(#[from] FileError),
    /// Somebody has the lock of this run.
    #[error("unsaved work cannot be kept: the name {} is taken", .0.display())]
    Taken(PathBuf),
    /// No thread.
    #[error("unsaved work cannot be kept, the system gives no thread: {0}")]
    Thread(std::io::Error),
}

/// What is to be done with the file of one design.
#[derive(Debug)]
struct Wish {
    /// The work to write; none takes the file away, for the work is saved or given up.
    keep: Option<Box<KeptWork>>,
    /// A file to take away afterwards: the copy that it was brought back from.
    after: Option<PathBuf>,
}

#[derive(Debug, Default)]
struct Wishes {
    by_number: BTreeMap<u64, Wish>,
    ending: bool,
}

#[derive(Debug, Default)]
struct Shared {
    wishes: Mutex<Wishes>,
    changed: Condvar,
}

impl Shared {
    fn lock(&self) -> MutexGuard<'_, Wishes> {
        // A writer that broke off leaves whole wishes behind.
        self.wishes.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn wish(&self, number: u64, mut wish: Wish) {
        let mut wishes = self.lock();
        if let Some(older) = wishes.by_number.remove(&number) {
            // What an older wish wanted taken away is still to be taken away after the newer one.
            wish.after = wish.after.or(older.after);
        }
        wishes.by_number.insert(number, wish);
        self.changed.notify_all();
    }
}

/// The unsaved work of this run.
#[derive(Debug)]
pub struct Recovery {
    shared: Arc<Shared>,
    faults: Receiver<FileError>,
    writer: Option<JoinHandle<()>>,
    _held: Held,
}

impl Recovery {
    /// Begins to keep unsaved work in `folder`, a round of writing each `pace`.
    ///
    /// # Errors
    /// The folder cannot be made or written to, or there is no thread.
    pub fn begin(folder: &Path, pace: Duration) -> Result<Self, RecoveryError> {
        let now = SystemTime::now().duration_since(UNIX_EPOCH);
        let run = format!(
            "{}-{}",
            now.map_or(0, |since| since.as_millis()),
            process::id()
        );
        let lock = folder.join(format!("{run}.{LOCK}"));
        let held = match files::hold(&lock)? {
            Holding::Ours(held) => held,
            Holding::Elsewhere => return Err(RecoveryError::Taken(lock)),
        };
        let (tell, faults) = channel();
        let shared = Arc::new(Shared::default());
        let writer = Writer {
            shared: Arc::clone(&shared),
            stem: folder.join(run),
            pace,
            tell,
        };
        let writer = thread::Builder::new()
            .name("unsaved work".to_owned())
            .spawn(move || writer.run())
            .map_err(RecoveryError::Thread)?;
        Ok(Self {
            shared,
            faults,
            writer: Some(writer),
            _held: held,
        })
    }

    /// Keeps the work of the design with this number; `after` is a file to take away once it is kept.
    pub fn keep(&self, number: u64, work: KeptWork, after: Option<PathBuf>) {
        let keep = Some(Box::new(work));
        self.shared.wish(number, Wish { keep, after });
    }

    /// Takes the file of a design away: its work is saved, or was given up.
    pub fn forget(&self, number: u64) {
        let (keep, after) = (None, None);
        self.shared.wish(number, Wish { keep, after });
    }

    /// The first thing that went wrong since it was asked.
    #[must_use]
    pub fn fault(&self) -> Option<FileError> {
        let first = self.faults.try_recv().ok();
        // The others of the same round say the same.
        while self.faults.try_recv().is_ok() {}
        first
    }
}

impl Drop for Recovery {
    /// Does what was wished last. What is not forgotten stays, and is asked about at the next start.
    fn drop(&mut self) {
        self.shared.lock().ending = true;
        self.shared.changed.notify_all();
        if let Some(writer) = self.writer.take() {
            // A writer that broke off has told its fault already.
            let _ended = writer.join();
        }
    }
}

/// The thread that writes.
struct Writer {
    shared: Arc<Shared>,
    /// The folder and the beginning of each file's name.
    stem: PathBuf,
    pace: Duration,
    tell: Sender<FileError>,
}

impl Writer {
    fn run(self) {
        loop {
            let mut wishes = self.shared.lock();
            while wishes.by_number.is_empty() && !wishes.ending {
                wishes = self
                    .shared
                    .changed
                    .wait(wishes)
                    .unwrap_or_else(PoisonError::into_inner);
            }
            let (round, ending) = (std::mem::take(&mut wishes.by_number), wishes.ending);
            drop(wishes);
            let all_well = self.round(round);
            if ending {
                return;
            }
            self.rest(if all_well {
                self.pace
            } else {
                PAUSE_AFTER_FAULT
            });
        }
    }

    fn round(&self, wishes: BTreeMap<u64, Wish>) -> bool {
        let mut all_well = true;
        for (number, wish) in wishes {
            if let Err(error) = self.fulfil(number, &wish) {
                all_well = false;
                // The window may be gone; then nobody is left to be told.
                let _nobody_listens = self.tell.send(error);
                let mut wishes = self.shared.lock();
                let newer = wishes.by_number.entry(number);
                newer
                    .and_modify(|newer| newer.after = newer.after.take().or(wish.after.clone()))
                    .or_insert(wish);
            }
        }
        all_well
    }

    fn fulfil(&self, number: u64, wish: &Wish) -> Result<(), FileError> {
        let path = file_of(&self.stem, number);
        match &wish.keep {
            Some(work) => {
                files::make_folder_of(&path)?;
                work.write(&path)?;
            }
            None => files::remove(&path)?,
        }
        wish.after.as_deref().map_or(Ok(()), files::remove)
    }

    /// Sleeps, unless the run ends meanwhile.
    fn rest(&self, pause: Duration) {
        let wishes = self.shared.lock();
        let _woken = self
            .shared
            .changed
            .wait_timeout_while(wishes, pause, |wishes| !wishes.ending);
    }
}

fn file_of(stem: &Path, number: u64) -> PathBuf {
    let mut name = stem.as_os_str().to_owned();
    name.push(format!("-{number}.ron"));
    PathBuf::from(name)
}

/// What runs that were cut short have left behind. While this is held no other window asks about the same.
#[derive(Debug, Default)]
pub struct LeftBehind {
    /// The work, newest first.
    pub found: Vec<Found>,
    locks: Vec<Held>,
}

impl LeftBehind {
    /// Looks for it. Copies of what is in its file anyway are taken away unasked: nothing is lost by it.
    ///
    /// # Errors
    /// The folder cannot be read.
    pub fn in_folder(folder: &Path) -> Result<Self, FileError> {
        files::sweep(folder);
        let paths = files::files_in(folder)?;
        let mut left = Self::default();
        for (run, works) in runs_of(&paths) {
            // A run whose lock cannot be reached for may be alive.
            let Ok(Holding::Ours(held)) = files::hold(&folder.join(format!("{run}.{LOCK}"))) else {
                continue;
            };
            let works: Vec<Found> = works
                .into_iter()
                .map(Found::at)
                .filter(|found| !is_done_with(found))
                .collect();
            if !works.is_empty() {
                left.found.extend(works);
                left.locks.push(held);
            }
        }
        left.found
            .sort_by_key(|found| std::cmp::Reverse(found.written));
        Ok(left)
    }

    /// Whether nothing is left.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.found.is_empty()
    }
}

/// The runs that files tell of, each with its work; a run whose lock was taken away is one too.
fn runs_of(paths: &[PathBuf]) -> BTreeMap<String, Vec<PathBuf>> {
    let mut runs: BTreeMap<String, Vec<PathBuf>> = BTreeMap::new();
    for path in paths {
        let Some(stem) = path.file_stem().and_then(|stem| stem.to_str()) else {
            continue;
        };
        let ending = path.extension().and_then(|ending| ending.to_str());
        match (ending, stem.rsplit_once('-')) {
            (Some(LOCK), _) => {
                runs.entry(stem.to_owned()).or_default();
            }
            (Some("ron"), Some((run, _number))) => {
                runs.entry(run.to_owned()).or_default().push(path.clone());
            }
            // Not one of ours.
            (_, _) => {}
        }
    }
    runs
}

fn is_done_with(found: &Found) -> bool {
    let is_saved = found.work.as_ref().is_ok_and(KeptWork::is_in_its_file);
    is_saved && files::remove(&found.path).is_ok()
}

#[cfg(test)]
#[path = "recovery_tests.rs"]
mod tests;
