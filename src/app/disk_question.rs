//! The question when the file of a design was changed by another program.

use std::path::Path;

use egui::{RichText, Ui};

/// The answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum DiskAnswer {
    /// None yet.
    Waiting,
    /// Go on with the design in hand; saving goes over what is there.
    KeepMine,
    /// Take what is there; undo brings the design in hand back.
    LoadTheirs,
    /// Save the design in hand to another file.
    SaveAs,
    /// Nothing now; saving asks again.
    Later,
}

/// The question.
pub(super) fn disk_ui(ui: &mut Ui, path: &Path, has_changes: bool) -> DiskAnswer {
    ui.label(RichText::new("The file has changed").heading());
    ui.label(format!(
        "{} was written by another program since it was opened or saved here.",
        path.display()
    ));
    let mine = if has_changes {
        "The design in hand has changes that are not in that file."
    } else {
        "The design in hand is as it was saved here."
    };
    ui.label(mine);
    ui.add_space(6.0);
    let mut answer = DiskAnswer::Waiting;
    ui.horizontal_wrapped(|ui| {
        for (word, hover, meaning) in [
            (
                "Keep mine",
                "go on with the design in hand; saving keeps what is there now as the version before",
                DiskAnswer::KeepMine,
            ),
            (
                "Load theirs",
                "take the design of the file; one step of undo brings yours back",
                DiskAnswer::LoadTheirs,
            ),
            (
                "Save as…",
                "save the design in hand to another file",
                DiskAnswer::SaveAs,
            ),
            (
                "Later",
                "leave both as they are; saving asks again",
                DiskAnswer::Later,
            ),
        ] {
            if ui.button(word).on_hover_text(hover).clicked() {
                answer = meaning;
            }
        }
    });
    answer
}
