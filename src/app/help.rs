//! Help in front of the page: the list of keys.

use egui::{Modal, RichText, ScrollArea, Ui};

use super::keys_list::keys_ui;
use super::window::Window;

/// What help is shown on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Help {
    /// The list of all keys.
    Keys,
}

impl Help {
    /// Every help there is, in the order of the menu.
    pub const ALL: [Self; 1] = [Self::Keys];

    /// The words in the menu, and the title of the panel.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Keys => "All keys",
        }
    }

    /// What it shows.
    #[must_use]
    pub const fn explains(self) -> &'static str {
        match self {
            Self::Keys => "every key that the window hears, and what it does",
        }
    }
}

impl Window {
    /// The help that was asked for, if any.
    pub(super) fn help_ui(&mut self, ui: &Ui) {
        let Some(help) = self.help else { return };
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
                        Help::Keys => keys_ui(ui),
                    });
                close
            });
        if shown.inner || shown.should_close() {
            self.help = None;
        }
    }
}
