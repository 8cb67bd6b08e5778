//! Dimensions and leaders as ISO 129-1 draws them.
//!
//! Everything here is on paper: mm of the sheet, after the view has been enlarged. Each function
//! gives the items to draw and the boxes of their lettering.

mod angular;
mod arrow;
mod detail;
mod label;
mod leader;
mod linear;
mod radial;
mod section_mark;
mod size;
mod style;

pub use angular::{Angular, angular};
pub use arrow::{arrowhead, dot};
pub use detail::{detail_circle, view_letters, view_title};
pub use label::{Label, Stack};
pub use leader::{Leader, Terminator, leader};
pub use linear::{Ends, Linear, Reach, linear};
pub use radial::{Radial, RadialSide, radial};
pub use section_mark::{SectionMark, section_mark};
pub use size::{Kind, Size, Tolerance};
pub use style::{
    EXTENSION_GAP_MM, EXTENSION_OVERSHOOT_MM, FIRST_LINE_MM, LINE_PITCH_MM, Style, TEXT_GAP_MM,
};

#[cfg(test)]
mod drawn_tests;
