//! The bar of messages: what went wrong and what to do, until it is dismissed.

use egui::{RichText, ScrollArea, Ui};

use super::palette::Palette;

/// The messages that nobody has dismissed yet, oldest first.
#[derive(Debug, Default)]
pub struct Messages {
    texts: Vec<Message>,
}

#[derive(Debug, PartialEq, Eq)]
struct Message {
    text: String,
    bad: bool,
}

/// More than this are not kept: the oldest go first.
const MOST: usize = 20;

impl Messages {
    /// Says that something went wrong.
    pub fn fault(&mut self, text: impl Into<String>) {
        self.add(Message {
            text: text.into(),
            bad: true,
        });
    }

    /// Says that something was done.
    pub fn done(&mut self, text: impl Into<String>) {
        // What was done before is old news.
        self.texts.retain(|message| message.bad);
        self.add(Message {
            text: text.into(),
            bad: false,
        });
    }

    fn add(&mut self, message: Message) {
        self.texts.retain(|kept| *kept != message);
        self.texts.push(message);
        if self.texts.len() > MOST {
            self.texts.remove(0);
        }
    }

    /// Whether there is nothing to say.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.texts.is_empty()
    }

    /// The newest message with a button to dismiss it.
    pub fn messages_ui(&mut self, ui: &mut Ui, palette: Palette) {
        let Some(message) = self.texts.last() else {
            return;
        };
        let more = self.texts.len() - 1;
        let mut dismiss = false;
        ui.horizontal(|ui| {
            dismiss = ui
                .button("Dismiss")
                .on_hover_text("put this message away")
                .clicked();
            if more > 0 {
                ui.label(RichText::new(format!("{more} more")).weak());
            }
            let colour = if message.bad {
                palette.clash
            } else {
                palette.fine
            };
            let word = if message.bad { "Not done: " } else { "Done: " };
            ScrollArea::vertical()
                .max_height(64.0)
                .auto_shrink([false, true])
                .show(ui, |ui| {
                    ui.horizontal_wrapped(|ui| {
                        ui.label(RichText::new(word).color(colour).strong());
                        ui.label(&message.text);
                    });
                });
        });
        if dismiss {
            self.texts.pop();
        }
    }
}
