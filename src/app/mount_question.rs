//! The question when a mount comes in whose name is taken.

use std::collections::VecDeque;

use egui::{RichText, TextEdit, Ui};

use super::own_mounts::{Mount, Namesake};

/// A mount whose name is taken, and those that wait behind it.
#[derive(Debug)]
pub struct MountQuestion {
    /// The mount.
    pub mount: Mount,
    /// Those behind it.
    pub waiting: VecDeque<Mount>,
    namesake: Namesake,
    new_name: String,
}

/// The answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MountAnswer {
    /// None yet.
    Waiting,
    /// Put it in the place of its namesake.
    Replace,
    /// Keep both, this one under another name.
    Rename(String),
    /// Leave this one and all that wait.
    Cancel,
}

impl MountQuestion {
    /// A question about `mount`, with a free name to propose.
    #[must_use]
    pub const fn new(
        mount: Mount,
        waiting: VecDeque<Mount>,
        namesake: Namesake,
        free_name: String,
    ) -> Self {
        Self {
            mount,
            waiting,
            namesake,
            new_name: free_name,
        }
    }

    /// The question.
    pub fn question_ui(&mut self, ui: &mut Ui) -> MountAnswer {
        let word = self.mount.word();
        ui.label(RichText::new(format!("This {word} is there already")).heading());
        let whose = match self.namesake {
            Namesake::Own => format!("Your list holds another {word} of this name"),
            Namesake::Shipped => {
                format!("A shipped {word} has this name; yours would stand in its place")
            }
        };
        ui.label(format!("\"{}\". {whose}.", self.mount.name()));
        if !self.waiting.is_empty() {
            ui.label(RichText::new(format!("{} more wait behind it.", self.waiting.len())).weak());
        }
        ui.add_space(6.0);
        let mut answer = MountAnswer::Waiting;
        ui.horizontal(|ui| {
            let label = ui.label("New name");
            let width = ui.available_width() - 110.0;
            let edit = TextEdit::singleline(&mut self.new_name).desired_width(width);
            ui.add(edit).labelled_by(label.id);
            let is_new = !self.new_name.trim().is_empty() && self.new_name != self.mount.name();
            if ui
                .add_enabled(is_new, egui::Button::new("Keep both"))
                .clicked()
            {
                answer = MountAnswer::Rename(self.new_name.trim().to_owned());
            }
        });
        ui.horizontal(|ui| {
            if ui.button("Replace").clicked() {
                answer = MountAnswer::Replace;
            }
            if ui.button("Cancel").clicked() {
                answer = MountAnswer::Cancel;
            }
        });
        answer
    }
}
