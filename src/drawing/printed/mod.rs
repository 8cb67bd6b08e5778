//! Lists to be read beside the machine, as pages of A4: headings, text, boxes to tick, tables, cautions, pictures.
//!
//! A sheet is a list of [`Block`]s; [`pages`] breaks them into one [`Scene`] a page, with the title above and
//! "page x of y" below, and [`pdf_of_pages`](crate::drawing::pdf::pdf_of_pages) makes one file of them. Main text has
//! capitals of 3.5 mm, which is read at arm's length (height from ISO 3098-1; that it suffices: common practice, no
//! source).
//!
//! ```
//! use flangewright::drawing::printed::{Block, Column, PrintedSheet, Table, pages};
//! let sheet = PrintedSheet {
//!     title: "Inspection".to_owned(),
//!     foot: "demo ring".to_owned(),
//!     blocks: vec![
//!         Block::Heading("Sizes".to_owned()),
//!         Block::Tick("measure at 20 °C".to_owned()),
//!         Block::Table(Table {
//!             columns: vec![
//!                 Column::Tick,
//!                 Column::Words("size".to_owned()),
//!                 Column::Number("least".to_owned()),
//!                 Column::Room("readings".to_owned(), 40.0),
//!             ],
//!             rows: vec![vec![String::new(), "lip bore".to_owned(), "36.10".to_owned()]],
//!         }),
//!     ],
//! };
//! assert_eq!(pages(&sheet).len(), 1);
//! ```

mod page;
mod slab;
mod table;
mod words;

use crate::drawing::Scene;

pub use page::{PAPER_MM, TEXT_WIDTH_MM, pages};

/// Height of the capitals of the main text, mm (ISO 3098-1 series).
pub const TEXT_MM: f64 = 3.5;

/// Height of the capitals of headings, mm (ISO 3098-1 series).
pub const HEADING_MM: f64 = 5.0;

/// Height of the capitals of what may be small: captions, wide tables, the foot, mm (ISO 3098-1 series).
pub const SMALL_MM: f64 = 2.5;

/// A list to print.
#[derive(Debug, Clone, PartialEq)]
pub struct PrintedSheet {
    /// What it is, above every page.
    pub title: String,
    /// What it belongs to, below every page beside its number.
    pub foot: String,
    /// What stands on it, in order.
    pub blocks: Vec<Block>,
}

/// One thing on the page.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// A heading; it never stands last on a page.
    Heading(String),
    /// Text, broken into lines.
    Text(String),
    /// Text in small lettering.
    Small(String),
    /// A box to tick with text beside it.
    Tick(String),
    /// A word and what belongs to it, set off to the right.
    Named(String, String),
    /// A caution: text in a tinted box.
    Caution(String),
    /// A ruled table; its head is repeated on every page.
    Table(Table),
    /// A picture as large as fits into the height, with a caption under it.
    Picture {
        /// A view in the lengths of the part.
        scene: Scene,
        /// Greatest height on paper, mm.
        height_mm: f64,
        /// What it shows; empty for none.
        caption: String,
    },
    /// Blocks with a picture to the right of them; they stay on one page.
    Beside {
        /// What stands on the left.
        blocks: Vec<Block>,
        /// A view in the lengths of the part.
        scene: Scene,
        /// Greatest width of the picture, mm.
        width_mm: f64,
        /// Greatest height of the picture, mm.
        height_mm: f64,
        /// What it shows; empty for none.
        caption: String,
    },
    /// Blocks that stay on one page where one page holds them.
    Together(Vec<Block>),
    /// Free room, mm.
    Gap(f64),
}

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// The columns from left to right.
    pub columns: Vec<Column>,
    /// The rows; a cell that is missing is empty.
    pub rows: Vec<Vec<String>>,
}

/// A column and its head.
#[derive(Debug, Clone, PartialEq)]
pub enum Column {
    /// A box to tick; a cell that is not empty is ticked.
    Tick,
    /// Words, broken into lines where the page is too narrow.
    Words(String),
    /// Numbers, held at their end.
    Number(String),
    /// Room to write in, at least so many mm wide.
    Room(String, f64),
}

#[cfg(test)]
#[path = "printed_tests.rs"]
mod tests;
