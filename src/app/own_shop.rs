//! The user's workshop at work: one for all open designs, with its own steps back, kept in the user's own file.

use super::history::History;
use super::own_folder::{workshop_file, write_workshop};
use super::shop_edit::ShopEdit;
use super::window::Window;
use super::workshop_page::Kept;
use crate::workshop::Workshop;

/// The workshop with its steps, and where it is kept.
pub(super) struct OwnShop {
    workshop: Workshop,
    history: History<Workshop>,
    /// Where it is kept.
    pub kept: Kept,
}

impl OwnShop {
    /// A workshop that nobody has changed yet.
    pub fn starting_at(workshop: &Workshop, kept: Kept) -> Self {
        Self {
            workshop: workshop.clone(),
            history: History::starting_at(workshop),
            kept,
        }
    }

    /// Whether there is a step back, and one forward.
    pub fn steps(&self) -> (bool, bool) {
        (
            self.history.can_undo(&self.workshop),
            self.history.can_redo(&self.workshop),
        )
    }
}

impl Window {
    /// Changes the workshop as one step of its own undo; a fault becomes a message.
    pub(super) fn change_workshop(&mut self, edit: &ShopEdit) {
        match edit.checked(&self.shop.workshop).cloned() {
            Ok(next) => {
                self.put_workshop(next);
                self.shop.history.end_step(&self.shop.workshop);
            }
            Err(fault) => self.messages.fault(fault.to_string()),
        }
    }

    /// One step of the workshop back.
    pub(super) fn undo_workshop(&mut self) {
        if let Some(back) = self.shop.history.undo(&self.shop.workshop) {
            self.put_workshop(back);
        }
    }

    /// One step of the workshop forward.
    pub(super) fn redo_workshop(&mut self) {
        if let Some(forward) = self.shop.history.redo(&self.shop.workshop) {
            self.put_workshop(forward);
        }
    }

    fn put_workshop(&mut self, workshop: Workshop) {
        self.workspace.use_workshop(workshop.clone());
        self.shop.workshop = workshop;
        self.keep_workshop();
    }

    /// The design in hand works with the workshop as it is now: another tab may have been open while it was changed.
    pub(super) fn agree_on_workshop(&mut self) {
        if *self.workspace.workshop() != self.shop.workshop {
            self.workspace.use_workshop(self.shop.workshop.clone());
        }
    }

    /// Writes the workshop to the user's own file, where there is one that may be written.
    fn keep_workshop(&mut self) {
        match &self.shop.kept {
            Kept::Nowhere | Kept::BesideBroken(_) => return,
            Kept::InFile(_) => {}
        }
        let Some(path) = self.mounts.folder().map(|folder| workshop_file(folder)) else {
            return;
        };
        if let Err(error) = write_workshop(&path, &self.shop.workshop) {
            self.messages
                .fault(format!("{error}. The workshop is not kept"));
        }
    }
}
