//! The ways through the shop that a design may choose; what each does and costs is told by the plan.

use serde::{Deserialize, Serialize};

/// A way from bar to ring: which side first, and where the gaps are milled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Route {
    /// Bayonet side first, gaps milled while the ring is still on the bar.
    LugsInTheBar,
    /// Thread side first; the ring is screwed on an arbor for the bayonet side and the gaps.
    ThreadFirst,
    /// Bayonet side first, then the thread side; the gaps are milled last, on a mandrel in the head.
    LugsOnAMandrel,
}

impl Route {
    /// Every route, the one that needs the fewest extra parts first.
    pub const ALL: [Self; 3] = [Self::LugsInTheBar, Self::ThreadFirst, Self::LugsOnAMandrel];
}
