//! Laws that hold for every input: symmetry, monotony, never a panic, never a number that is none.

mod correction_loop;
mod geometry;
mod patterns;
mod precedence;
mod remedies;
mod three_states;
