//! Floor `compare`: two to six designs beside each other.
//!
//! May use `drawing`, `evaluate` and every floor under them. Must not evaluate on its own account, change a design, open
//! a file or know about the window: it reads what it is given.
//!
//! - [`subject`]: what is compared; [`entry`]: everything about one that can differ, [`differing`]: what does;
//! - [`margins`]: every finding in each; [`overlay`]: the metal that one has more than another;
//! - [`scenes`]: the pictures, [`places`]: where a field lies in them;
//! - [`sheet`]: all of it as a picture or a table for other programs ([`csv_file`]); [`text`]: for the terminal.

pub mod csv_file;
pub mod differing;
pub mod entry;
mod entry_mating;
mod entry_ring;
pub mod lug_pattern;
pub mod margins;
pub mod overlay;
pub mod places;
pub mod scenes;
pub mod sheet;
mod sheet_page;
mod sheet_table;
pub mod subject;
pub mod text;

pub use differing::{DifferingRow, differing};
pub use entry::{Entry, EntryId, Group, Value};
pub use margins::{FindingRow, Margin, finding_rows, signed};
pub use overlay::{Cut, Difference, OverlayError, pattern_difference, section_difference};
pub use places::{Places, places_of};
pub use subject::{MOST, Subject, distinct_names};
