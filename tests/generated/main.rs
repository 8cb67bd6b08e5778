//! Laws that hold for every design, tried on designs made by chance from fixed seeds.

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
mod sheet_lines;
mod sheets;
mod sizes_on_sheets;
mod solids;
