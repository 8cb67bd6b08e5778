//! Floor `geometry`: lines and arcs in a plane, and what can be asked of them.
//!
//! Lengths are millimetres and angles are radians, everywhere on this floor and nowhere above it without saying so.
//! In the half-section `x` is z along the axis and `y` is the radius; in the plan `x` runs right and `y` up.
//! May use nothing but the standard library and a polygon library. Must not know of rings, lenses,
//! bodies, designs or files: what a piece of outline belongs to is a tag of the caller's own choosing.

pub mod axial_sweep;
pub mod boolean;
mod boolean_chords;
mod boolean_parts;
mod bounds;
pub mod clearance;
mod clearance_of_paths;
mod closest;
pub mod cutter;
mod deepest;
pub mod hand;
pub mod interference;
pub mod moments;
pub mod outline;
mod outline_builder;
mod outline_error;
mod path;
mod piece;
pub mod point;
pub mod revolved;
pub mod sector;
pub mod segment;
mod split;
pub mod twist;
pub mod wall;
mod wall_pairs;
mod wall_taper;

pub use axial_sweep::{Step, StepProfile};
pub use boolean::{BooleanError, Region, difference, intersection, union};
pub use bounds::BoundingBox;
pub use clearance::{
    Clearance, Relation, clearance, clearance_of_paths, clearance_to_path, clearance_where,
};
pub use cutter::{Flank, Method};
pub use hand::{Side, clock_of, plan_point, seen_from};
pub use interference::{Interference, interference};
pub use outline::{Hit, Outline};
pub use outline_builder::OutlineBuilder;
pub use outline_error::OutlineError;
pub use path::Path;
pub use point::Point;
pub use revolved::{Prism, Solid, revolve};
pub use sector::{AnnularSector, Interval, rotations_where_disjoint};
pub use segment::{Arc, Segment};
pub use twist::{Contact, first_contact};
pub use wall::{Wall, thinnest_wall, thinnest_wall_where};

/// Two places nearer than this are in contact, mm: a thousandth of a nanometre, far above rounding error.
pub const CONTACT: f64 = 1e-9;
/// Pieces of outline shorter than this are dropped, and arcs flatter than this are lines, mm.
pub const SHORTEST: f64 = 1e-6;
/// No coordinate may reach this, mm.
pub const FARTHEST: f64 = 1e4;
