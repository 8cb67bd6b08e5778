//! Floor `settle`: how far a ring can move before a finding ends it, and the nearest ring without a clash.
//!
//! May use `evaluate` and every floor under it. Must not judge or derive by itself, draw, or touch a file. No clock, no
//! randomness but fixed seeds: the same design gives the same answer whatever the number of threads.

mod cancelled;
mod chase;
mod contradiction;
mod cut;
mod descend;
mod level;
mod map;
mod nearest;
mod problem;
mod pull_back;
mod reading;
mod room;
mod scan;
mod search;
mod sensitivity;
mod starts;
mod steady;
mod trial;
mod whole_steps;

pub use cancelled::Cancelled;
pub use contradiction::{Contradiction, Member, Release};
pub use level::Level;
pub use map::{Axis, Cell, Map, map};
pub use nearest::{Move, Outcome, Settled, settle};
pub use problem::{LetGo, SettleError};
pub use room::{Beyond, End, Room, Span, rooms};
pub use sensitivity::{Kind, Sensitivity, sensitivities};
