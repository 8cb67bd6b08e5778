//! Text and designs spoilt without end, to find what makes the program panic, hang or say what is not so.
//!
//! Each target begins with a small corpus, changes what it has, and keeps what came to an outcome not seen before: so
//! it works its way in without a compiler that counts branches, on the stable one. `FLANGEWRIGHT_FUZZ_SECONDS` says
//! how long each target goes on (two seconds without it), `FLANGEWRIGHT_FUZZ_SEED` where it begins.

// Counts of a few hundred and letters of a few bits: nothing is lost.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

#[path = "../generated/bodies.rs"]
mod bodies;
mod campaign;
mod designations;
#[path = "../generated/dice.rs"]
mod dice;
#[path = "../generated/distort.rs"]
mod distort;
mod documents;
mod evaluations;
#[path = "../generated/lenses.rs"]
mod lenses;
mod outcome;
#[path = "../generated/pairs.rs"]
#[expect(
    dead_code,
    reason = "how a pair must stand is asked by the tests of generated designs only"
)]
mod pairs;
mod quantities;
mod spoil;
mod tree;
