//! The question about unsaved work that a crash has left: each design with its name, when, and of which file.

use std::time::SystemTime;

use egui::{RichText, ScrollArea, Ui};

use super::kept_work::{Found, moment_words, span_words};
use super::palette::Palette;
use super::path_words::path_shown;

/// The answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum RecoveryAnswer {
    /// None yet.
    Waiting,
    /// Bring this one back.
    Restore(usize),
    /// Bring back all that can be read.
    RestoreAll,
    /// Take this one away for good.
    Discard(usize),
    /// Leave everything as it is; it is asked again at the next start.
    Later,
}

/// The one whose discarding is asked about once more.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct RecoveryPanel {
    sure: Option<usize>,
}

impl RecoveryPanel {
    /// The question, as it is at `now`.
    pub fn recovery_ui(
        &mut self,
        ui: &mut Ui,
        found: &[Found],
        now: SystemTime,
        palette: Palette,
    ) -> RecoveryAnswer {
        ui.label(RichText::new("Unsaved work").heading());
        ui.label(
            "The program was cut short the last time. These designs were not saved then. \
             Nothing is taken away before you say so.",
        );
        ui.add_space(6.0);
        let mut answer = RecoveryAnswer::Waiting;
        ScrollArea::vertical().max_height(360.0).show(ui, |ui| {
            for (place, one) in found.iter().enumerate() {
                if place > 0 {
                    ui.separator();
                }
                self.one_ui(ui, place, one, now, palette, &mut answer);
            }
        });
        ui.add_space(8.0);
        ui.horizontal(|ui| {
            let readable = found.iter().filter(|one| one.work.is_ok()).count();
            let all = egui::Button::new("Restore all");
            if ui.add_enabled(readable > 0, all).clicked() {
                answer = RecoveryAnswer::RestoreAll;
            }
            let later = ui
                .button("Later")
                .on_hover_text("leave everything where it is; asked again at the next start");
            if later.clicked() {
                answer = RecoveryAnswer::Later;
            }
        });
        answer
    }

    fn one_ui(
        &mut self,
        ui: &mut Ui,
        place: usize,
        one: &Found,
        now: SystemTime,
        palette: Palette,
        answer: &mut RecoveryAnswer,
    ) {
        let ago = now.duration_since(one.written).unwrap_or_default();
        ui.label(RichText::new(one.name()).strong());
        ui.label(format!(
            "last change {} ago, {}",
            span_words(ago),
            moment_words(one.written)
        ));
        match &one.work {
            Ok(work) => {
                let from = work.from.as_ref().map_or_else(
                    || "had no file yet".to_owned(),
                    |path| format!("of the file {}", path_shown(path)),
                );
                ui.label(from);
            }
            Err(why) => {
                ui.label(RichText::new(format!("cannot be read: {why}")).color(palette.clash));
            }
        }
        ui.horizontal(|ui| {
            let restore = egui::Button::new("Restore");
            let restore = ui
                .add_enabled(one.work.is_ok(), restore)
                .on_hover_text("open it in a tab, as a design that is not saved yet");
            if restore.clicked() {
                *answer = RecoveryAnswer::Restore(place);
            }
            if self.sure == Some(place) {
                ui.label("Take it away for good?");
                if ui.button("Discard it").clicked() {
                    self.sure = None;
                    *answer = RecoveryAnswer::Discard(place);
                }
                if ui.button("Keep it").clicked() {
                    self.sure = None;
                }
            } else if ui
                .button("Discard…")
                .on_hover_text("take the copy away; it is asked once more")
                .clicked()
            {
                self.sure = Some(place);
            }
        });
    }
}
