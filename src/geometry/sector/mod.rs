//! Angle intervals on the circle and the annular sectors over them: lugs, ears, slots, obstacles.
//!
//! Angles are clock angles, radians: 0 at 12 o'clock, clockwise positive, seen from the lens side.

mod annular;
mod distance;
mod interval;
mod lists;
mod order;
mod rotations;

pub use annular::{AnnularSector, SectorEdge, SectorError};
pub use interval::{Interval, wrapped};
pub use lists::{complement, joined, overlap_length, shared};
pub use order::{OverlapError, disjoint, disjoint_degrees};
pub use rotations::rotations_where_disjoint;
