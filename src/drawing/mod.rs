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
//! - [`ink`]: what every painter puts on paper; [`raster`]: as dots, and as a PNG file; [`svg`], [`pdf`], [`dxf`]: as
//!   curves. [`template`] and [`true_size`] are further sheets to paint, [`mesh`] is the ring for a trial print, and
//!   [`export`] gives the bytes of a file by the ending of its name.
//! - [`printed`]: lists to be read beside the machine, as several pages.

pub mod annotation;
pub mod call_out;
pub mod cell;
pub mod chains;
pub mod curves;
pub mod dimension;
pub mod dimension_side;
pub mod dxf;
mod dxf_path;
mod dxf_text;
pub mod export;
pub mod extent;
pub mod font;
pub mod free_room;
pub mod hatch;
pub mod ink;
pub mod label_column;
pub mod lettering;
pub mod line_type;
pub mod lug_table;
pub mod mesh;
pub mod number;
pub mod outlines;
pub mod path;
pub mod pdf;
pub mod placed_dimension;
pub mod placement;
pub mod plan_view;
pub mod printed;
pub mod raster;
pub mod ring_detail;
mod ring_diameters;
pub mod ring_dimensions;
pub mod ring_faces;
pub mod ring_notes;
pub mod ring_plan;
pub mod ring_section;
pub mod ring_sheet;
pub mod ring_signs;
pub mod ring_title;
pub mod round_window;
pub mod scales;
pub mod scene;
pub mod section_view;
pub mod sheet;
pub mod sheet_layout;
pub mod sheet_views;
pub mod signs;
pub mod sketch;
pub mod spot;
pub mod stations;
pub mod svg;
pub mod template;
pub mod text_box;
pub mod tiers;
pub mod title_block;
pub mod true_size;
mod whole;
pub mod work_view;

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
pub use ring_sheet::{RingSheet, SheetDimension, SheetError, laid_out, ring_sheet};
pub use scene::{Item, PaperSize, Pen, Role, Scene, Shape, Tone};
pub use section_view::{SectionOptions, section_view, tag_of};
pub use sketch::{Topic, register_sketch, sketch_of, trial_sketch};
pub use stations::{Stations, stations};
pub use text_box::TextBox;
