//! Floor `tolerance`: stacks of tolerances, their Monte Carlo check, and what readings prove.
//!
//! Lengths are millimetres. Error function and gamma function come from `libm`: pure Rust, kept by the Rust
//! project, in the tree already below `rand_distr`, and the same digits on every system.
//! May use `ring`, `optics`, `workshop`, `document`, `mount`. Must not judge: that is `checks`. No clock, no
//! randomness but the fixed seeds it is given.

mod conformity;
mod distribution;
mod histogram;
mod measured;
mod monte_carlo;
mod normal;
mod readings;
mod register_stack;
mod root;
mod stack;
mod student;

pub use conformity::{Conformity, DecisionRule, Limits};
pub use distribution::Distribution;
pub use histogram::{Bin, Histogram};
pub use measured::Measurement;
pub use monte_carlo::{CHUNK, Cancelled, Outcome, Trial, simulate};
pub use normal::{normal_below, normal_quantile};
pub use readings::{
    Combined, Component, Coverage, ERROR_CAUSE, ReadingsError, STEP_CAUSE, TypeA, combine,
    components_of, of_resolution, rectangular,
};
pub use register_stack::{RegisterStack, TEMPERATURE_SPAN_K, growth_mm};
pub use stack::{Contributor, INFLATION, Stack};
pub use student::{student_below, student_factor};
