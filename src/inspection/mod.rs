//! Floor `inspection`: what readings of the finished ring prove, what an infinity trial says, and what puts it right.
//!
//! Lengths mm, angles degrees, clock angles seen from the lens side. May use `evaluate` and every floor under it;
//! must not derive a dimension, draw, touch a file or look at the screen. No clock: a date is what the user wrote.

mod correction;
mod doubt;
mod functional_size;
mod infinity_trial;
mod instrument_choice;
mod judgement;
mod proposal;
mod register;
mod sheet;

pub use correction::{Corrected, correct};
pub use doubt::Doubt;
pub use functional_size::{FunctionalSize, SizeOf, functional_sizes, register_method};
pub use infinity_trial::{InfinityTrial, TrialError, register_error};
pub use instrument_choice::{Grip, best_instrument, suits};
pub use judgement::{DEFAULT_RULE, Judgement, Unjudged, judge};
pub use proposal::{Action, Measured, Proposal, propose};
pub use register::{Register, RegisterMethod, Tilt, register};
pub use sheet::inspection_sheet;
