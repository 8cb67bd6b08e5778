//! What the system tells the window: that it should close, that files were dropped; and its title the other way.

use egui::{Context, ViewportCommand};

use super::dialogs::Dialog;
use super::page::Page;
use super::unsaved_question::Next;
use super::window::Window;

impl Window {
    pub(super) fn show_title(&mut self, context: &Context) {
        let title = self.workspace.title();
        if title != self.title {
            context.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.title = title;
        }
    }

    pub(super) fn watch_closing(&mut self, context: &Context) {
        if context.input(|input| input.viewport().close_requested())
            && !self.may_close
            && let Some(place) = self.unsaved_place()
        {
            context.send_viewport_cmd(ViewportCommand::CancelClose);
            self.show_tab(place);
            self.dialog = Some(Dialog::Unsaved(Next::Quit));
        }
    }

    pub(super) fn take_drops(&mut self, context: &Context) {
        let dropped: Vec<_> = context.input(|input| {
            let files = input.raw.dropped_files.iter();
            files.map(|file| file.path().to_owned()).collect()
        });
        if self.dialog.is_none() {
            for path in dropped {
                if self.page == Page::Compare {
                    // What went wrong stands in the messages.
                    let _told = self.bring_in(&path);
                } else {
                    self.open(&path);
                }
            }
        }
    }
}
