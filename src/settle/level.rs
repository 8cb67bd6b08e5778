//! How good a ring is as a whole.

use crate::checks::Severity;

/// The worst that any finding says. Sorted worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Something cannot work, or there is no ring.
    Clash,
    /// Something may not work.
    Caution,
    /// Nothing worse than a note.
    Free,
}

impl Level {
    /// What a severity allows.
    #[must_use]
    pub const fn of(severity: Severity) -> Self {
        match severity {
            Severity::Clash => Self::Clash,
            Severity::Caution => Self::Caution,
            Severity::Note | Severity::Ok => Self::Free,
        }
    }

    /// The word on screen and in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Clash => "clash",
            Self::Caution => "caution",
            Self::Free => "free",
        }
    }
}
