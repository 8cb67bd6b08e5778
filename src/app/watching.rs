//! Noticing that files have changed outside the window: looked for off the frame, whenever the window comes to the
//! front.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use egui::Context;

use super::dialogs::Dialog;
use super::files::{self, Seen, Standing};
use super::job::{Job, Progress};
use super::recent::Recent;
use super::window::Window;
use super::workspace::Workspace;

/// A file to be looked at.
struct Watched {
    number: u64,
    path: PathBuf,
    seen: Option<Seen>,
}

/// What the look showed.
pub(super) struct Looked {
    changed: Vec<(Watched, Standing)>,
    missing: Vec<PathBuf>,
}

/// What is watched.
#[derive(Default)]
pub(super) struct Watching {
    pub(super) recent: Recent,
    /// Not so at first: the first frame is a coming to the front as well.
    had_focus: bool,
    look: Option<Job<Looked>>,
    /// What was told already: the design and what its file held then.
    told: BTreeSet<(u64, String)>,
}

fn look(watched: Vec<Watched>, recent: Vec<PathBuf>) -> Looked {
    let changed = watched.into_iter().filter_map(|one| {
        let standing = files::standing_of(&one.path, one.seen);
        (standing != Standing::AsSeen).then_some((one, standing))
    });
    Looked {
        changed: changed.collect(),
        missing: recent
            .into_iter()
            .filter(|path| !files::exists(path))
            .collect(),
    }
}

impl Window {
    /// Looks at the files when the window comes to the front, and takes in what the last look showed.
    pub(super) fn watch_files(&mut self, context: &Context) {
        let focused = context.input(|input| input.focused);
        if focused && !self.watching.had_focus {
            self.look_at_files(context);
        }
        self.watching.had_focus = focused;
        let Some(job) = &self.watching.look else {
            return;
        };
        match job.poll() {
            Progress::Working => return,
            Progress::Done(looked) => self.take_look(looked),
            // A look that broke off tells nothing; before saving the file is looked at again.
            Progress::BrokenOff => {}
        }
        self.watching.look = None;
    }

    /// Begins a look at the open files and the recent ones.
    pub(super) fn look_at_files(&mut self, context: &Context) {
        let others = self.desk.others().map(|(_, workspace)| workspace);
        let watched = others
            .chain([&self.workspace])
            .filter_map(watched_of)
            .collect();
        let recent = self.watching.recent.files().iter();
        let recent = recent.map(|one| one.path.clone()).collect();
        // Without a thread nothing is looked at; before saving the file is looked at again.
        self.watching.look = Job::begin("files", context, move || look(watched, recent)).ok();
    }

    fn take_look(&mut self, looked: Looked) {
        self.watching.recent.mark_missing(&looked.missing);
        for (watched, standing) in looked.changed {
            // A design that was saved or closed since the look began is not told of.
            let told = (watched.number, format!("{standing:?}"));
            if self.is_as_watched(&watched) && self.watching.told.insert(told) {
                self.tell_standing(watched.number, &watched.path, &standing);
            }
        }
    }

    fn is_as_watched(&self, watched: &Watched) -> bool {
        let mut open = self
            .desk
            .others()
            .map(|(_, workspace)| workspace)
            .chain([&self.workspace]);
        open.any(|one| {
            one.number() == watched.number
                && one.path() == Some(watched.path.as_path())
                && one.seen == watched.seen
        })
    }

    fn tell_standing(&mut self, number: u64, path: &Path, standing: &Standing) {
        match standing {
            Standing::AsSeen => {}
            Standing::Gone => self.messages.fault(format!(
                "{} is not there any more: it was moved, renamed or taken away. Saving writes it anew",
                path.display()
            )),
            Standing::Unreadable(why) => self.messages.fault(why.clone()),
            Standing::Changed(_) if self.workspace.number() == number && self.dialog.is_none() => {
                self.dialog = Some(Dialog::Disk(path.to_owned()));
            }
            Standing::Changed(_) => self.messages.fault(format!(
                "{} was changed by another program; saving asks what is to become of it",
                path.display()
            )),
        }
    }

    /// Puts a file at the head of the recent ones.
    pub(super) fn add_recent(&mut self, path: &Path) {
        if let Err(error) = self.watching.recent.add(path) {
            self.messages.fault(error.to_string());
        }
    }

    /// Opens one of the recent files; one that is gone is told plainly.
    pub(super) fn open_recent(&mut self, path: &Path) {
        if files::exists(path) {
            self.open(path);
        } else {
            self.messages.fault(format!(
                "{} is not there any more: it was moved, renamed, or its disk is not connected. It stays in the list of recent files until that is cleared",
                path.display()
            ));
        }
    }

    pub(super) fn clear_recent(&mut self) {
        if let Err(error) = self.watching.recent.clear() {
            self.messages.fault(error.to_string());
        }
    }
}

fn watched_of(workspace: &Workspace) -> Option<Watched> {
    Some(Watched {
        number: workspace.number(),
        path: workspace.path()?.to_owned(),
        seen: Some(workspace.seen?),
    })
}
