//! What the window does with the user's own folder: keeping mounts, taking them in, the workshop file.

use std::collections::VecDeque;
use std::path::{Path, PathBuf};

use super::dialogs::Dialog;
use super::files::exists;
use super::mount_question::{MountAnswer, MountQuestion};
use super::own_folder::{read_mounts, read_workshop, workshop_file, write_default_workshop};
use super::own_mounts::{KeepError, Mount, OwnMounts, mounts_of};
use super::own_shop::OwnShop;
use super::window::Window;
use super::workshop_page::Kept;

impl Window {
    /// Reads the user's own mounts and workshop; what is broken is told, and the shipped ones serve instead.
    pub fn use_own_folder(&mut self, folder: PathBuf) {
        self.use_settings(&folder);
        let workshop = workshop_file(&folder);
        self.begin_keeping(&folder);
        let (mounts, error) = OwnMounts::in_folder(folder);
        self.mounts = mounts;
        if let Some(error) = error {
            self.messages.fault(format!(
                "{error}. Your own mounts are left out until the file is repaired"
            ));
        }
        let path = workshop.display().to_string();
        self.shop.kept = Kept::InFile(path.clone());
        if !exists(&workshop) {
            return;
        }
        match read_workshop(&workshop) {
            Ok(own) => {
                self.shop = OwnShop::starting_at(&own, Kept::InFile(path));
                self.workspace.use_workshop(own);
            }
            Err(error) => {
                self.shop.kept = Kept::BesideBroken(path);
                self.messages.fault(format!(
                    "{error}. The shipped workshop is used until the file is repaired"
                ));
            }
        }
    }

    pub(super) fn keep_lens(&mut self) {
        let lens = self.workspace.design().lens.clone();
        self.take_in(VecDeque::from([Mount::Lens(Box::new(lens))]));
    }

    pub(super) fn keep_body(&mut self) {
        let body = self.workspace.design().body.clone();
        self.take_in(VecDeque::from([Mount::Body(Box::new(body))]));
    }

    pub(super) fn import_mounts(&mut self, path: &Path) {
        match read_mounts(path) {
            Ok(list) => {
                self.dialog = None;
                self.take_in(mounts_of(list).into());
            }
            Err(error) => {
                if let Some(Dialog::Path(panel)) = &mut self.dialog {
                    panel.refuse(&error);
                }
                self.messages.fault(error.to_string());
            }
        }
    }

    /// Keeps mounts one after the other, until a name is taken: then it is asked.
    fn take_in(&mut self, mut waiting: VecDeque<Mount>) {
        while let Some(mount) = waiting.pop_front() {
            if let Some(namesake) = self.mounts.namesake(&mount) {
                let free = self.mounts.free_name(&mount);
                let question = MountQuestion::new(mount, waiting, namesake, free);
                self.dialog = Some(Dialog::Mount(question));
                return;
            }
            if !self.keep(mount) {
                return;
            }
        }
    }

    /// Keeps one; false where it could not be kept.
    fn keep(&mut self, mount: Mount) -> bool {
        let name = format!("{} \"{}\"", mount.word(), mount.name());
        match self.mounts.keep(mount) {
            Ok(path) => {
                self.messages
                    .done(format!("{name} kept in {}", path.display()));
                true
            }
            Err(error) => {
                self.messages.fault(error.to_string());
                false
            }
        }
    }

    pub(super) fn answer_mount(&mut self, answer: MountAnswer) {
        let Some(Dialog::Mount(question)) = self.dialog.take() else {
            return;
        };
        let MountQuestion {
            mount, mut waiting, ..
        } = question;
        match answer {
            MountAnswer::Waiting | MountAnswer::Cancel => {}
            MountAnswer::Replace => {
                if self.keep(mount) {
                    self.take_in(waiting);
                }
            }
            MountAnswer::Rename(name) => {
                // Asked again where the new name is taken too.
                waiting.push_front(mount.renamed(&name));
                self.take_in(waiting);
            }
        }
    }

    pub(super) fn write_workshop(&mut self) {
        let Some(path) = self.mounts.folder().map(|folder| workshop_file(folder)) else {
            self.messages.fault(KeepError::NoFolder.to_string());
            return;
        };
        match write_default_workshop(&path) {
            Ok(()) => self.messages.done(format!(
                "the shipped workshop stands in {}: edit it there, it is read at the next start",
                path.display()
            )),
            Err(error) => self.messages.fault(error.to_string()),
        }
    }
}
