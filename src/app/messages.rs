//! The bar of messages: what went wrong and what to do, until it is dismissed.

use std::path::{Path, PathBuf};

use egui::text::{LayoutJob, TextFormat};
use egui::{Color32, RichText, ScrollArea, TextStyle, Ui};

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
    /// The file that it tells of, to be shown on demand.
    file: Option<PathBuf>,
}

/// More than this are not kept: the oldest go first.
const MOST: usize = 20;

impl Messages {
    /// Says that something went wrong.
    pub fn fault(&mut self, text: impl Into<String>) {
        self.add(Message {
            text: text.into(),
            bad: true,
            file: None,
        });
    }

    /// Says that something was done.
    pub fn done(&mut self, text: impl Into<String>) {
        // What was done before is old news.
        self.texts.retain(|message| message.bad);
        self.add(Message {
            text: text.into(),
            bad: false,
            file: None,
        });
    }

    /// Says that a file was written, with buttons that show it.
    pub fn written(&mut self, text: impl Into<String>, file: &Path) {
        self.done(text);
        if let Some(message) = self.texts.last_mut() {
            message.file = Some(file.to_owned());
        }
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

    /// The newest message with a button to dismiss it, and where it tells of a file buttons to show it: what is to be
    /// shown is given back.
    pub fn messages_ui(&mut self, ui: &mut Ui, palette: Palette) -> Option<PathBuf> {
        let message = self.texts.last()?;
        let more = self.texts.len() - 1;
        let mut dismiss = false;
        let mut wanted = None;
        ui.horizontal_top(|ui| {
            dismiss = ui
                .button("Dismiss")
                .on_hover_text("put this message away")
                .clicked();
            if more > 0 {
                ui.label(RichText::new(format!("{more} more")).weak());
            }
            if let Some(file) = &message.file {
                wanted = shown_file_ui(ui, file);
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
                .show(ui, |ui| ui.label(told(ui, word, colour, &message.text)));
        });
        if dismiss {
            self.texts.pop();
        }
        wanted
    }
}

/// The message as one text: its first word in colour, the rest as it is.
fn told(ui: &Ui, word: &str, colour: Color32, text: &str) -> LayoutJob {
    let mut job = LayoutJob::default();
    let plain = ui.visuals().text_color();
    for (words, colour) in [(word, colour), (text, plain)] {
        let format = TextFormat::simple(TextStyle::Body.resolve(ui.style()), colour);
        job.append(words, 0.0, format);
    }
    job
}

/// Buttons that show a file or its folder.
fn shown_file_ui(ui: &mut Ui, file: &Path) -> Option<PathBuf> {
    let folder = file
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty());
    let show_file = ui
        .button("Show the file")
        .on_hover_text("open the file with the system's own program");
    let show_folder = ui
        .button("Show the folder")
        .on_hover_text("open the folder that the file is in");
    if show_file.clicked() {
        Some(file.to_owned())
    } else if show_folder.clicked() {
        Some(folder.unwrap_or(Path::new(".")).to_owned())
    } else {
        None
    }
}
