//! Floor `inspection`: what readings of the finished ring prove, what an infinity trial says, and what puts it right.
//!
//! Lengths mm, angles degrees, clock angles seen from the lens side. May use `evaluate` and every floor under it;
//! must not derive a dimension, draw, touch a file or look at the screen. No clock: a date is what the user wrote.

mod correction;
mod doubt;
mod functional_size;
mod history;
mod infinity_trial;
mod inspect;
mod instrument_choice;
mod judgement;
mod proposal;
mod register;
mod sheet;
mod wave;
mod working_rows;

pub use correction::{Corrected, Infinity, MarkRest, correct};
pub use doubt::Doubt;
pub use functional_size::{FunctionalSize, functional_sizes, register_method};
pub use history::{Followed, history};
pub use infinity_trial::{InfinityTrial, TrialError, TrialWorked, register_error, worked};
pub use inspect::{
    Basis, InspectedSize, Inspection, Tally, allowed_errors, error_by, inspect, instrument,
    trial_worked,
};
pub use instrument_choice::{Grip, best_instrument, better_instrument, suits};
pub use judgement::{DEFAULT_RULE, Judgement, Unjudged, judge};
pub use proposal::{Action, Done, Measured, Proposal, propose};
pub use register::{Register, RegisterMethod, Tilt, register};
pub use sheet::{BEFORE, TRIAL_HOW, inspection_sheet, off_text, proposals, tilt_lines, trial_text};
pub use working_rows::{
    RULE, WorkingRow, advice, correction_rows, fine, trial_rows, wanted_error, working_rows,
};
