//! Why a file dialog failed: the dialog package tells it in its log and nowhere else.

use std::sync::{Mutex, MutexGuard, PoisonError};

use log::{LevelFilter, Log, Metadata, Record};

/// What the dialog package complained of since it was last asked, newest last.
static COMPLAINTS: Mutex<Vec<String>> = Mutex::new(Vec::new());
/// More are not kept.
const MOST: usize = 20;

struct Listener;

static LISTENER: Listener = Listener;

fn complaints() -> MutexGuard<'static, Vec<String>> {
    COMPLAINTS.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Log for Listener {
    fn enabled(&self, about: &Metadata<'_>) -> bool {
        about.target().starts_with("rfd")
    }

    fn log(&self, record: &Record<'_>) {
        if self.enabled(record.metadata()) {
            let mut complaints = complaints();
            complaints.push(record.args().to_string());
            if complaints.len() > MOST {
                complaints.remove(0);
            }
        }
    }

    fn flush(&self) {}
}

/// Begins to listen; a second call changes nothing.
pub(super) fn listen() {
    // Where another logger listens already, the time an answer takes is all there is to go by.
    if log::set_logger(&LISTENER).is_ok() {
        log::set_max_level(LevelFilter::Error);
    }
}

/// What was complained of since the last call.
pub(super) fn take_complaints() -> Vec<String> {
    std::mem::take(&mut *complaints())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_dialog_package_is_listened_to() {
        let record = |target: &'static str, words: &'static str| {
            LISTENER.log(
                &Record::builder()
                    .target(target)
                    .args(format_args!("{words}"))
                    .build(),
            );
        };
        record("winit", "something else");
        record("rfd::backend", "no session bus");
        assert_eq!(take_complaints(), ["no session bus"]);
        assert!(take_complaints().is_empty());
    }
}
