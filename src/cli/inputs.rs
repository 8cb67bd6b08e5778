//! What a task reads besides designs: the library of mounts and the workshop.

use std::path::{Path, PathBuf};

use anyhow::Context;
use flangewright::app::files;
use flangewright::document::{Library, library, read_library};
use flangewright::workshop::Workshop;

/// The shipped mounts with the user's own lists taken in, later ones over earlier ones.
///
/// # Errors
/// A list cannot be read, or has values that no mount may have.
pub fn mounts(own: &[PathBuf]) -> anyhow::Result<Library> {
    let mut all = library()?;
    for file in own {
        let text = files::read_text(file)?;
        all.take_in(read_library(&text).with_context(|| file.display().to_string())?);
    }
    Ok(all)
}

/// The workshop in `file`, or the one that is shipped.
///
/// # Errors
/// The file cannot be read or is no workshop.
pub fn workshop(file: Option<&Path>) -> anyhow::Result<Workshop> {
    let Some(file) = file else {
        return Ok(Workshop::default_set()?);
    };
    let text = files::read_text(file)?;
    Workshop::read(&text).with_context(|| file.display().to_string())
}
