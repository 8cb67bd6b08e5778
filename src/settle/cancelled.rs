//! A long run that was called off.

use std::sync::atomic::{AtomicBool, Ordering};

use thiserror::Error;

/// The run was called off before its end.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
#[error("stopped before its end; start it again for a result")]
pub struct Cancelled;

/// # Errors
/// [`Cancelled`] once `cancel` was set.
pub(super) fn go_on(cancel: &AtomicBool) -> Result<(), Cancelled> {
    if cancel.load(Ordering::Relaxed) {
        Err(Cancelled)
    } else {
        Ok(())
    }
}
