//! Laws that hold for every design, tried on designs made by chance from fixed seeds.

// Counts of a few hundred and letters of a few bits: nothing is lost.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

mod bodies;
mod by_hand;
mod clashes;
mod dice;
mod distort;
mod evaluations;
mod files;
mod lenses;
mod mirror;
mod mutations;
mod pairs;
mod sheet_choices;
mod sheet_lines;
mod sheets;
mod sizes_on_sheets;
mod solids;
