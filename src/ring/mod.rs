//! Floor `ring`: the rules that make a whole ring, its section, its plan, and the parts around it.
//!
//! May use `optics`, `document`, `workshop`, `mount`, `standards`, `geometry`. Must not judge: that is `checks`.

mod assumptions;
mod bores;
mod clocking;
mod cut;
mod derive;
mod edge_motion;
mod envelopes;
mod feature;
mod flank;
mod geometrical;
mod lugs;
mod parts;
mod plan;
mod resolved;
mod rules;
mod rules_bayonet;
mod rules_flange;
mod rules_seat;
mod rules_thread;
mod section;
mod solid;
mod tolerances;

pub use bores::{BoreCorner, bore_corners};
pub use clocking::{
    KnownBy, Rest, WaysOut, clockwise_deg_per_mm, mark_at_rest_deg, rest_of, ways_out, wrapped_deg,
};
pub use cut::cut_through_a_lug;
pub use derive::derive;
pub use edge_motion::{Cut, EdgeMotion, edge_motion, middle_of};
pub use envelopes::parts_of;
pub use feature::{BodyPart, Feature, LensPart};
pub use flank::{least_gap_deg, lug_flank, lug_intrusion, most_in};
pub use geometrical::{Geometrical, geometrical};
pub use parts::Parts;
pub use plan::{Hole, Plan, gaps_between};
pub use resolved::{Derivation, DimensionState, PinUse, Refusal, ResolvedRing, Twist};
pub use section::{ShapeFault, outlines};
pub use solid::{Solid, solid_of};
pub use tolerances::{INDEXED_DEG, rule as tolerance_rule};
