//! Asking the system for a file without ever blocking the window.

use std::path::PathBuf;
use std::pin::pin;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::task::{Context as TaskContext, Poll, Wake, Waker};
use std::thread::{self, Thread};
use std::time::{Duration, Instant};

use super::dialog_log;

/// What kind of file is asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileQuestion {
    /// Title of the dialog.
    pub title: String,
    /// What the kind of file is called.
    pub kind: String,
    /// Its extension, without a dot.
    pub extension: String,
    /// The folder to begin in.
    pub folder: Option<PathBuf>,
    /// The name proposed.
    pub name: String,
}

/// What came of a question.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileAnswer {
    /// This file.
    Chosen(PathBuf),
    /// None: the dialog was closed.
    Closed,
    /// No dialog could be shown, for this reason.
    Unavailable(String),
}

/// Something that can ask for a file. Tests put a scripted one in its place.
pub trait FileChooser {
    /// Asks for a file to open; the answer comes by [`Self::poll`].
    fn start_open(&mut self, question: FileQuestion);
    /// Asks for a file to write; the answer comes by [`Self::poll`].
    fn start_save(&mut self, question: FileQuestion);
    /// The answer, once.
    fn poll(&mut self) -> Option<FileAnswer>;
}

/// A person takes longer than this to close a dialog: an empty answer before it means there was none.
const SOONEST_ANSWER: Duration = Duration::from_millis(150);

/// The system's own dialogs.
#[derive(Debug)]
pub struct SystemChooser {
    context: egui::Context,
    /// A dialog that knows the window it stands before.
    blank: rfd::AsyncFileDialog,
    waiting: Option<Receiver<FileAnswer>>,
}

impl SystemChooser {
    /// A chooser whose dialogs stand before the window being made, and that wakes it when there is an answer.
    #[must_use]
    pub fn of_window(creation: &eframe::CreationContext<'_>) -> Self {
        dialog_log::listen();
        Self {
            context: creation.egui_ctx.clone(),
            blank: rfd::AsyncFileDialog::new().set_parent(creation),
            waiting: None,
        }
    }

    fn ask(&mut self, question: FileQuestion, way: Way) {
        let (send, receive) = channel();
        let (context, blank) = (self.context.clone(), self.blank.clone());
        let asked = thread::Builder::new()
            .name("file dialog".to_owned())
            .spawn(move || {
                let answer = answer(blank, question, way);
                // The window may have closed meanwhile; then nobody waits for the answer.
                let _nobody_waits = send.send(answer);
                context.request_repaint();
            });
        self.waiting = match asked {
            Ok(_running) => Some(receive),
            Err(error) => {
                let (send, receive) = channel();
                let _kept = send.send(FileAnswer::Unavailable(format!(
                    "no thread for a dialog: {error}"
                )));
                Some(receive)
            }
        };
    }
}

impl FileChooser for SystemChooser {
    fn start_open(&mut self, question: FileQuestion) {
        self.ask(question, Way::Open);
    }

    fn start_save(&mut self, question: FileQuestion) {
        self.ask(question, Way::Save);
    }

    fn poll(&mut self) -> Option<FileAnswer> {
        let answer = match self.waiting.as_ref()?.try_recv() {
            Ok(answer) => answer,
            Err(TryRecvError::Empty) => return None,
            Err(TryRecvError::Disconnected) => {
                FileAnswer::Unavailable("the dialog broke off".to_owned())
            }
        };
        self.waiting = None;
        Some(answer)
    }
}

#[derive(Clone, Copy)]
enum Way {
    Open,
    Save,
}

fn answer(blank: rfd::AsyncFileDialog, question: FileQuestion, way: Way) -> FileAnswer {
    let mut dialog = blank
        .set_title(question.title)
        .add_filter(question.kind, &[question.extension])
        .add_filter("All files", &["*"]);
    if let Some(folder) = question.folder {
        dialog = dialog.set_directory(folder);
    }
    let begun = Instant::now();
    let _of_earlier_dialogs = dialog_log::take_complaints();
    let chosen = match way {
        Way::Open => wait_for(dialog.pick_file()),
        Way::Save => wait_for(dialog.set_file_name(question.name).save_file()),
    };
    answer_of(
        chosen.map(|file| file.path().to_owned()),
        begun.elapsed(),
        &dialog_log::take_complaints(),
    )
}

/// The system does not tell a dialog that failed from one that was closed; what it complained of does, and the time.
fn answer_of(chosen: Option<PathBuf>, after: Duration, complaints: &[String]) -> FileAnswer {
    match chosen {
        Some(path) => FileAnswer::Chosen(path),
        None if let Some(last) = complaints.last() => FileAnswer::Unavailable(format!(
            "neither a desktop portal nor zenity could show one ({last})"
        )),
        None if after < SOONEST_ANSWER => FileAnswer::Unavailable(
            "this system shows no file dialog (neither a desktop portal nor zenity answered)"
                .to_owned(),
        ),
        None => FileAnswer::Closed,
    }
}

struct Waking(Thread);

impl Wake for Waking {
    fn wake(self: Arc<Self>) {
        self.0.unpark();
    }
}

/// Waits on this thread until the answer is there.
fn wait_for<F: Future>(future: F) -> F::Output {
    let mut future = pin!(future);
    let waker = Waker::from(Arc::new(Waking(thread::current())));
    let mut task = TaskContext::from_waker(&waker);
    loop {
        match future.as_mut().poll(&mut task) {
            Poll::Ready(output) => return output,
            Poll::Pending => thread::park(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_answer_at_once_means_there_was_no_dialog() {
        assert!(matches!(
            answer_of(None, Duration::from_millis(6), &[]),
            FileAnswer::Unavailable(_)
        ));
        assert_eq!(
            answer_of(None, Duration::from_millis(900), &[]),
            FileAnswer::Closed
        );
        // A portal that answers late that it cannot is told by its complaint.
        let complaint = ["OpenFile failed: timed out".to_owned()];
        assert!(matches!(
            answer_of(None, Duration::from_secs(25), &complaint),
            FileAnswer::Unavailable(why) if why.contains("timed out")
        ));
        let path = PathBuf::from("/tmp/a.ron");
        assert_eq!(
            answer_of(Some(path.clone()), Duration::ZERO, &complaint),
            FileAnswer::Chosen(path)
        );
    }

    #[test]
    fn waiting_sleeps_until_it_is_woken() {
        let (send, receive) = channel::<Waker>();
        let mut woken = false;
        let waking = thread::spawn(move || {
            thread::sleep(Duration::from_millis(20));
            receive.recv().unwrap().wake();
        });
        let answer = wait_for(std::future::poll_fn(|task| {
            if std::mem::replace(&mut woken, true) {
                return Poll::Ready(7);
            }
            send.send(task.waker().clone()).unwrap();
            Poll::Pending
        }));
        assert_eq!(answer, 7);
        waking.join().unwrap();
    }
}
