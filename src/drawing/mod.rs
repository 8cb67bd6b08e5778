//! Drawings: one picture of millimetre primitives, and what is built from them.
//!
//! May use `geometry` and `evaluate`. Must not open files, know about the window, or work out a
//! dimension of the part: it shows what it is given.
//!
//! - [`scene`]: the picture that window and exports paint; [`path`], [`hatch`], [`lettering`] and
//!   [`line_type`] are what it is made of.
//! - [`signs`]: signs of the standards as lines.
//! - [`dimension`]: dimensions and leaders; [`tiers`], [`dimension_side`] and [`label_column`] put them where nothing overlaps.
//! - [`sheet`] and [`title_block`]: the paper; [`scales`]: the enlargements to choose from.
//! - [`raster`]: the picture as dots, and as a PNG file.

pub mod annotation;
pub mod cell;
pub mod curves;
pub mod dimension;
pub mod dimension_side;
pub mod extent;
pub mod font;
pub mod free_room;
pub mod hatch;
pub mod label_column;
pub mod lettering;
pub mod line_type;
pub mod number;
pub mod outlines;
pub mod path;
pub mod placement;
pub mod plan_view;
pub mod raster;
pub mod ring_dimensions;
pub mod ring_notes;
pub mod ring_plan;
pub mod ring_section;
pub mod ring_sheet;
pub mod scales;
pub mod scene;
pub mod section_view;
pub mod sheet;
pub mod signs;
pub mod text_box;
pub mod tiers;
pub mod title_block;
mod whole;

#[cfg(test)]
mod test_random;

pub use annotation::Annotation;
pub use extent::Extent;
pub use hatch::Hatch;
pub use lettering::{Anchor, Text};
pub use line_type::{LineGroup, LineType};
pub use path::{Path, Vertex};
pub use placement::Placement;
pub use plan_view::{PlanOptions, plan_view};
pub use ring_sheet::{SheetError, ring_sheet};
pub use scene::{Item, PaperSize, Pen, Role, Scene, Shape, Tone};
pub use section_view::{SectionOptions, section_view, tag_of};
pub use text_box::TextBox;
