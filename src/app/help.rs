//! Help in front of the page: what has the keyboard, the list of keys, how mounts work.

use egui::{Modal, RichText, ScrollArea, Ui};

use super::explain_panel::explain_ui;
use super::keys_list::keys_ui;
use super::mounts_panel::mounts_ui;
use super::palette::Palette;
use super::window::Window;

/// What help is shown on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Help {
    /// What has the keyboard or the pointer, and the list of all keys.
    Keys,
    /// How the parts of a mount work.
    Mounts,
    /// The hints of the first start.
    Hints,
}

impl Help {
    /// Every help there is, in the order of the menu.
    pub const ALL: [Self; 3] = [Self::Keys, Self::Mounts, Self::Hints];

    /// The words in the menu, and the title of the panel.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Keys => "This field and all keys",
            Self::Mounts => "Mounts explained",
            Self::Hints => "Three hints",
        }
    }

    /// What it shows.
    #[must_use]
    pub const fn explains(self) -> &'static str {
        match self {
            Self::Keys => {
                "what the field or finding under the keyboard or the pointer means, and every key that the window hears"
            }
            Self::Mounts => {
                "register, thread, seat, ears and slots, locking, lock pin and stop-down pin, in pictures"
            }
            Self::Hints => "the hints of the first start, under the page",
        }
    }
}

impl Window {
    pub(super) fn ask_help(&mut self, help: Help) {
        if help == Help::Hints {
            self.hints = true;
        } else {
            self.help = Some(help);
            self.help_about = self.selection.lit();
        }
    }

    /// The help that was asked for, if any.
    pub(super) fn help_ui(&mut self, ui: &Ui, palette: Palette) {
        let Some(help) = self.help else { return };
        let (about, evaluation) = (self.help_about, self.workspace.evaluation());
        let room = ui.ctx().content_rect();
        let width = (room.width() - 60.0).clamp(320.0, 720.0);
        let height = (room.height() - 140.0).max(120.0);
        let frame = egui::Frame::popup(ui.style()).inner_margin(14.0);
        let shown = Modal::new(egui::Id::unique("help"))
            .frame(frame)
            .show(ui.ctx(), |ui| {
                ui.set_width(width);
                let mut close = false;
                ui.horizontal(|ui| {
                    ui.label(RichText::new(help.label()).heading());
                    close = ui.button("Close").clicked();
                });
                ui.separator();
                ScrollArea::vertical()
                    .id_salt("help")
                    .max_height(height)
                    .min_scrolled_height(height)
                    .auto_shrink([false, true])
                    .show(ui, |ui| match help {
                        Help::Keys | Help::Hints => {
                            if let Some(about) = about {
                                explain_ui(ui, evaluation, about, palette);
                            }
                            keys_ui(ui);
                        }
                        Help::Mounts => mounts_ui(ui, palette),
                    });
                close
            });
        if shown.inner || shown.should_close() {
            self.help = None;
        }
    }
}
