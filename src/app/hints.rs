//! Three short hints under the page at the first start, until they are put away.

use egui::{Frame, Panel, RichText, Ui};

use super::own_settings::Settings;
use super::palette::Palette;
use super::window::Window;

/// The hints: what to do, and what comes of it.
pub const HINTS: [(&str, &str); 3] = [
    (
        "Point at a finding",
        "its place lights up in both drawings; a click shows how it was worked out and what would cure it",
    ),
    (
        "Drag an edge",
        "the half-section is live: pull a face or a diameter, or double-click it and type",
    ),
    (
        "Start your own",
        "File, New asks for your lens and your body; what nobody knows yet, Measure shows how to measure",
    ),
];

/// What becomes of the hints.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HintsAnswer {
    /// They stay.
    Stay,
    /// Away until the next start.
    NotNow,
    /// Away for good.
    ForGood,
}

/// The hints in a bar.
pub fn hints_ui(ui: &mut Ui, palette: Palette) -> HintsAnswer {
    let mut answer = HintsAnswer::Stay;
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("An invented lens on an invented body, to try things on.").strong());
        if ui
            .button("Put the hints away")
            .on_hover_text("for good; the menu Help shows them again")
            .clicked()
        {
            answer = HintsAnswer::ForGood;
        }
        if ui
            .button("Not now")
            .on_hover_text("until the next start")
            .clicked()
        {
            answer = HintsAnswer::NotNow;
        }
    });
    for (number, (what, comes)) in HINTS.iter().enumerate() {
        ui.horizontal_wrapped(|ui| {
            let words = RichText::new(format!("{} {what}:", number + 1));
            ui.label(words.strong().color(palette.accent));
            ui.label(*comes);
        });
    }
    answer
}

impl Window {
    /// Shows the hints of a first start, unless they were put away for good.
    pub fn show_hints_at_start(&mut self) {
        self.hints = !self.settings.now().hints_put_away;
    }

    pub(super) fn hints_bar_ui(&mut self, ui: &mut Ui, palette: Palette, frame: Frame) {
        if !self.hints {
            return;
        }
        let answer = Panel::bottom("hints")
            .frame(frame)
            .show(ui, |ui| hints_ui(ui, palette))
            .inner;
        if answer != HintsAnswer::Stay {
            self.hints = false;
        }
        if answer == HintsAnswer::ForGood {
            let now = self.settings.now();
            self.remember(Settings {
                hints_put_away: true,
                ..now
            });
        }
    }
}
