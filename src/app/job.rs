//! Work off the frame: a named thread that wakes the window when it is done.

use std::io;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::thread;

use egui::Context;

/// Work going on.
#[derive(Debug)]
pub struct Job<T> {
    done: Receiver<T>,
}

/// How far work is.
#[derive(Debug, PartialEq, Eq)]
pub enum Progress<T> {
    /// Still going on.
    Working,
    /// Done; told once.
    Done(T),
    /// The thread broke off without a result.
    BrokenOff,
}

impl<T: Send + 'static> Job<T> {
    /// Begins `work` on a thread of this name.
    ///
    /// # Errors
    /// The system gives no thread.
    pub fn begin(
        name: &str,
        context: &Context,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> io::Result<Self> {
        let (send, done) = channel();
        let context = context.clone();
        thread::Builder::new()
            .name(name.to_owned())
            .spawn(move || {
                // The window may have closed meanwhile; then nobody waits for the result.
                let _nobody_waits = send.send(work());
                context.request_repaint();
            })?;
        Ok(Self { done })
    }

    /// The result, if it is there.
    pub fn poll(&self) -> Progress<T> {
        match self.done.try_recv() {
            Ok(result) => Progress::Done(result),
            Err(TryRecvError::Empty) => Progress::Working,
            Err(TryRecvError::Disconnected) => Progress::BrokenOff,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn finished<T: Send + 'static>(job: &Job<T>) -> Progress<T> {
        loop {
            match job.poll() {
                Progress::Working => thread::yield_now(),
                other => return other,
            }
        }
    }

    #[test]
    fn a_result_comes_once_and_from_a_thread_of_its_name() {
        let name = || thread::current().name().map(str::to_owned);
        let job = Job::begin("counting", &Context::default(), name).unwrap();
        assert_eq!(finished(&job), Progress::Done(Some("counting".to_owned())));
        assert_eq!(finished(&job), Progress::BrokenOff);
    }
}
