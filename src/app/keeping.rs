//! What the window does with unsaved work: keeps a copy of every change, and brings back what a crash has left.

use std::path::{Path, PathBuf};

use super::dialogs::Dialog;
use super::file_locks::FileLocks;
use super::files;
use super::kept_work::Found;
use super::recent::Recent;
use super::recovery::{LeftBehind, PACE, Recovery};
use super::recovery_panel::{RecoveryAnswer, RecoveryPanel};
use super::window::Window;
use super::workspace::Workspace;

/// The folder of unsaved work in the user's own folder.
fn recovery_folder(own: &Path) -> PathBuf {
    own.join("recovery")
}

/// The unsaved work of this run and of those before it.
#[derive(Default)]
pub(super) struct Keeping {
    /// The marks of files that are open or being saved.
    pub(super) locks: FileLocks,
    own: Option<Recovery>,
    pub(super) left_behind: LeftBehind,
    /// Number, revision and unsaved mark of the design that was last looked at.
    told: Option<(u64, u64, bool)>,
}

impl Window {
    /// Begins to keep unsaved work in the user's own folder, and asks about what was left there.
    pub(super) fn begin_keeping(&mut self, own_folder: &Path) {
        self.keeping.locks = FileLocks::in_folder(own_folder);
        self.watching.recent = Recent::in_folder(own_folder);
        let folder = recovery_folder(own_folder);
        match LeftBehind::in_folder(&folder) {
            Ok(left) => self.keeping.left_behind = left,
            Err(error) => self.messages.fault(format!(
                "{error}. Whether unsaved work is left there cannot be told"
            )),
        }
        match Recovery::begin(&folder, PACE) {
            Ok(own) => self.keeping.own = Some(own),
            Err(error) => self.messages.fault(format!(
                "{error}. Save often: after a crash only what was saved is there"
            )),
        }
        self.ask_about_left_work();
    }

    /// Asks about unsaved work of runs that were cut short, where there is some.
    pub(super) fn ask_about_left_work(&mut self) {
        if !self.keeping.left_behind.is_empty() {
            self.dialog = Some(Dialog::Recovery(RecoveryPanel::default()));
        }
    }

    /// The same on demand: that there is none is said too.
    pub(super) fn recover(&mut self) {
        self.ask_about_left_work();
        if self.dialog.is_none() {
            self.messages
                .done("looked for unsaved work of a crash: there is none");
        }
    }

    /// The work that is asked about.
    pub(super) fn left_work(&self) -> &[Found] {
        &self.keeping.left_behind.found
    }

    /// Keeps the design in hand where it has changed since; called every frame.
    pub(super) fn keep_work(&mut self) {
        let now = (
            self.workspace.number(),
            self.workspace.revision(),
            self.workspace.is_changed(),
        );
        if let Some(own) = &self.keeping.own {
            if self.keeping.told != Some(now) {
                self.keeping.told = Some(now);
                if now.2 {
                    own.keep(now.0, self.workspace.kept_work(), None);
                } else {
                    own.forget(now.0);
                }
            }
            if let Some(error) = own.fault() {
                self.messages.fault(format!(
                    "{error}. The copy of unsaved work is not up to date; save the design elsewhere"
                ));
            }
        }
    }

    /// Marks the file of the design in hand as open here, and says where another window has it open too.
    pub(super) fn claim_file(&mut self) {
        if !self.keeping.locks.claim(&mut self.workspace)
            && let Some(path) = self.workspace.path()
        {
            self.messages.fault(format!(
                "{} is open in another window of this program too. Before one saves, it notices what the other has saved; better close it in one of them",
                path.display()
            ));
        }
    }

    /// Takes the copy of a design away: it was closed.
    pub(super) fn forget_work(&self, number: u64) {
        if let Some(own) = &self.keeping.own {
            own.forget(number);
        }
    }

    /// Ends keeping when the window closes. Where something is neither saved nor given up, as when the screen itself
    /// went away, the copies stay and are asked about at the next start.
    pub(super) fn end_keeping(&mut self) {
        let Some(own) = self.keeping.own.take() else {
            return;
        };
        if self.unsaved_place().is_some() {
            return;
        }
        own.forget(self.workspace.number());
        for (_, workspace) in self.desk.others() {
            own.forget(workspace.number());
        }
        drop(own);
    }

    pub(super) fn answer_recovery(&mut self, answer: RecoveryAnswer) {
        match answer {
            RecoveryAnswer::Waiting => return,
            RecoveryAnswer::Later => {
                self.dialog = None;
                return;
            }
            RecoveryAnswer::Restore(place) => self.restore(place),
            RecoveryAnswer::RestoreAll => {
                // What cannot be read stays in the list, to be discarded or left.
                while let Some(place) = self.left_work().iter().position(|one| one.work.is_ok()) {
                    self.restore(place);
                }
            }
            RecoveryAnswer::Discard(place) => self.discard(place),
        }
        if self.left_work().is_empty() {
            self.dialog = None;
            // Their locks are let go, and their files taken away at the next start: nothing lies under them.
            self.keeping.left_behind = LeftBehind::default();
        }
    }

    fn restore(&mut self, place: usize) {
        if place >= self.left_work().len() {
            return;
        }
        let found = self.keeping.left_behind.found.remove(place);
        let Ok(work) = found.work else { return };
        let name = work.name();
        let its_tab = work.from.as_deref().and_then(|from| self.place_of(from));
        if let Some(place) = its_tab {
            self.show_tab(place);
        }
        if its_tab.is_some() && !self.workspace.is_changed() {
            self.workspace.bring_back(work);
        } else {
            let workspace = Workspace::brought_back(work, self.workspace.workshop().clone());
            self.take_in_hand(workspace);
            if its_tab.is_none() {
                self.claim_file();
            }
        }
        if let Some(own) = &self.keeping.own {
            // The old file goes when the new one is whole, not before.
            let kept = self.workspace.kept_work();
            own.keep(self.workspace.number(), kept, Some(found.path));
        }
        self.messages
            .done(format!("\"{name}\" is brought back; it is not saved yet"));
    }

    fn discard(&mut self, place: usize) {
        if place >= self.left_work().len() {
            return;
        }
        let found = self.keeping.left_behind.found.remove(place);
        if let Err(error) = files::remove(&found.path) {
            self.messages.fault(error.to_string());
        }
    }
}
