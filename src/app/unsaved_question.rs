//! The question before unsaved work would be lost.

use egui::{RichText, Ui};

/// What was asked for when there was unsaved work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Next {
    /// Closing the design's tab.
    CloseTab,
    /// Closing the window.
    Quit,
}

/// The answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// None yet.
    Waiting,
    /// Save first.
    Save,
    /// Let the changes go.
    Discard,
    /// Go back to work.
    Cancel,
}

/// The question.
pub fn unsaved_ui(ui: &mut Ui, name: &str, next: Next) -> Answer {
    let doing = match next {
        Next::CloseTab => "it is closed",
        Next::Quit => "the window closes",
    };
    ui.label(RichText::new("Unsaved changes").heading());
    ui.label(format!(
        "\"{name}\" has changes that are not saved. Save them before {doing}?"
    ));
    ui.add_space(6.0);
    let mut answer = Answer::Waiting;
    ui.horizontal(|ui| {
        for (word, meaning) in [
            ("Save", Answer::Save),
            ("Discard", Answer::Discard),
            ("Cancel", Answer::Cancel),
        ] {
            if ui.button(word).clicked() {
                answer = meaning;
            }
        }
    });
    answer
}
