//! Laws that hold for every input: symmetry, monotony, never a panic, never a number that is none.

mod geometry;
mod patterns;
mod remedies;
mod three_states;
