//! What the command line prints: results to standard output, complaints to standard error.

use std::io::{self, ErrorKind, Write};
use std::path::Path;

use anyhow::{Context, anyhow};
use flangewright::app::files::{FileError, export_bytes};

/// Prints `text` and a line end. A reader that has gone away, such as `head`, is no fault.
///
/// # Errors
/// Any other fault of standard output, such as a full disk.
pub fn print(text: &str) -> anyhow::Result<()> {
    match write_line(text) {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        written => written.context("standard output cannot be written"),
    }
}

fn write_line(text: &str) -> io::Result<()> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.write_all(b"\n")?;
    out.flush()
}

/// Says on standard error what is wrong.
pub fn complain(text: &str) {
    // With standard error closed there is nobody left to tell.
    let _unheard = writeln!(io::stderr(), "flangewright: {text}");
}

/// Writes `bytes` to `path`; a file that is there already is left alone without `force`.
///
/// # Errors
/// As [`export_bytes`], and names the option that replaces a file.
pub fn write(path: &Path, bytes: &[u8], force: bool) -> anyhow::Result<()> {
    match export_bytes(path, bytes, force) {
        Err(error @ FileError::Exists(_)) => Err(anyhow!("{error}; --force replaces it")),
        written => Ok(written?),
    }
}
