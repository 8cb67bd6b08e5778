//! Showing a file or its folder with whatever the system has for it.

use std::io;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use egui::Context;
use thiserror::Error;

use super::job::{Job, Progress};

/// Why nothing was shown.
#[derive(Debug, Error)]
pub enum OpenError {
    /// The system has no program that shows files.
    #[error("{}: it cannot be shown: {program} could not be started ({error}). Look for it with your file manager", path.display())]
    NoProgram {
        /// What was to be shown.
        path: PathBuf,
        /// The program.
        program: &'static str,
        /// What the system said.
        error: io::Error,
    },
    /// The program gave up.
    #[error("{}: it cannot be shown: {program} found nothing that opens it. Look for it with your file manager", path.display())]
    Refused {
        /// What was to be shown.
        path: PathBuf,
        /// The program.
        program: &'static str,
    },
}

/// The program that shows a file as the user has chosen.
const PROGRAM: &str = if cfg!(target_os = "macos") {
    "open"
} else if cfg!(target_os = "windows") {
    "explorer"
} else {
    "xdg-open"
};

/// Something being shown.
#[derive(Debug, Default)]
pub struct Opener {
    job: Option<Job<Result<(), OpenError>>>,
}

impl Opener {
    /// Begins to show a file or folder, off the frame.
    ///
    /// # Errors
    /// The system gives no thread.
    pub fn begin(&mut self, context: &Context, path: &Path) -> io::Result<()> {
        let path = path.to_owned();
        self.job = Some(Job::begin("show a file", context, move || {
            show(&path, PROGRAM)
        })?);
        Ok(())
    }

    /// Why nothing was shown, once it is known.
    pub fn poll(&mut self) -> Option<OpenError> {
        let progress = self.job.as_ref()?.poll();
        match progress {
            Progress::Working => None,
            Progress::Done(Ok(())) | Progress::BrokenOff => {
                self.job = None;
                None
            }
            Progress::Done(Err(error)) => {
                self.job = None;
                Some(error)
            }
        }
    }
}

fn show(path: &Path, program: &'static str) -> Result<(), OpenError> {
    let status = Command::new(program)
        .arg(path)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    match status {
        // This one tells nothing by its code.
        Ok(status) if status.success() || cfg!(target_os = "windows") => Ok(()),
        Ok(_) => Err(OpenError::Refused {
            path: path.to_owned(),
            program,
        }),
        Err(error) => Err(OpenError::NoProgram {
            path: path.to_owned(),
            program,
            error,
        }),
    }
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;

    #[test]
    fn a_program_that_is_not_there_or_gives_up_is_told_with_the_path() {
        let path = Path::new("/tmp/ring.png");
        let missing = show(path, "flangewright-no-such-program").unwrap_err();
        assert!(
            missing.to_string().contains("/tmp/ring.png")
                && missing.to_string().contains("could not be started")
        );
        let refused = show(path, "false").unwrap_err();
        assert!(refused.to_string().contains("found nothing"));
        assert!(show(path, "true").is_ok());
    }
}
