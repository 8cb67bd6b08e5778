//! Flangewright: a bench for designing lens adapter rings.
//!
//! The floors, lowest first; each uses only those before it:
//! - [`geometry`]: lines and arcs, clearance, sectors, booleans, revolved solids, plane hands.
//! - [`standards`]: published tables and formulas, each beside its source.
//! - [`mount`]: lens, body, where each value came from, the library of interfaces.
//! - [`document`]: the design, its limits and its text form; [`workshop`]: machines, tools, instruments, materials.
//! - [`optics`]: the ray cone and the depth of focus.
//! - [`ring`]: the rules that make a whole ring, its section and its plan.
//! - [`tolerance`]: stacks in closed form and by Monte Carlo, readings and their uncertainty.
//! - [`checks`]: one finding a file: formula, limit, remedy.
//! - [`evaluate`]: the one pure function from design to evaluation.
//! - [`plan`]: order of cuts, dividing, threading, speeds and stock for a workshop; [`inspection`]: what readings of the
//!   finished ring prove, and what puts it right.
//! - [`settle`]: room to move, sensitivity, and the nearest ring without a clash.
//! - [`drawing`]: a scene of mm primitives, the sheet, the painters.
//! - [`paper`]: shop plan and inspection sheet as printed pages.
//! - [`app`]: what a person sees and touches.

pub mod app;
pub mod checks;
pub mod document;
pub mod drawing;
pub mod evaluate;
pub mod geometry;
pub mod inspection;
pub mod mount;
pub mod optics;
pub mod paper;
pub mod plan;
pub mod ring;
pub mod settle;
pub mod standards;
pub mod tolerance;
pub mod workshop;
