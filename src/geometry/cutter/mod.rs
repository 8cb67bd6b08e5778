//! The flanks that an end mill leaves on lugs, by the way the gaps between them are milled.
//!
//! Own derivation from the circle of the cutter; checked against the union of the cutter's circles along its path.

mod flank;
mod method;
mod swept;

pub use flank::Flank;
pub use method::{CutterError, Method, Side, left_standing};
pub use swept::{centre_path, swept_edge_rad};
