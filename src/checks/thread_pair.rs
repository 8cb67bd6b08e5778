//! The ring's thread and the lens's thread at their limits of size.

use super::context::{Context, NotJudged};
use crate::document::{FieldRef, Term};
use crate::mount::Unit;
use crate::standards::{Side, Thread, ThreadLimits};

/// Limits of both threads, mm.
#[derive(Clone, Debug)]
pub(super) struct ThreadPair {
    /// The ring's.
    pub(super) internal: ThreadLimits,
    /// The lens's: by its own class where it names one.
    pub(super) external: ThreadLimits,
}

impl ThreadPair {
    /// The limits of the ring's thread and of the lens's.
    ///
    /// # Errors
    /// [`NotJudged`] naming the lens thread, where no limits can be had of it.
    pub(super) fn of(cx: &Context) -> Result<Self, NotJudged> {
        let lens = cx.design.lens.thread.value().unwrap_or(&cx.ring.thread);
        Ok(Self {
            internal: limits(&cx.ring.thread, Side::Internal)?,
            external: limits(lens, Side::External)?,
        })
    }

    /// Greatest major diameter of the lens's thread, mm; its nominal diameter where no limit is set.
    pub(super) fn male_major(&self, cx: &Context) -> Term {
        let greatest = self
            .external
            .major_max
            .unwrap_or_else(|| cx.ring.thread.nominal_mm());
        Term::named("male thread major, greatest", greatest, Unit::Mm)
    }
}

/// A class that belongs to the mating thread is left out: then the standard's usual class counts.
fn limits(thread: &Thread, side: Side) -> Result<ThreadLimits, NotJudged> {
    thread
        .limits(side)
        .or_else(|_| thread.without_class().limits(side))
        .map_err(|_| FieldRef::LensThread.into())
}
