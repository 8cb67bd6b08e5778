//! Floor `mount`: lens, body, where each value came from, and the library of interfaces.
//!
//! May use `standards`. Must not know of rings, designs, checks or the screen.

mod body;
mod fields;
mod interface;
mod lens;
mod row_readings;
mod unit;

pub use body::{Body, BodyField, FreeDepth, Hand, Obstacle, Sector};
pub use fields::Presence;
pub use interface::{Citation, Interface, Known, Origin, Standing};
pub use lens::{BarrelStep, Lens, LensField};
pub use row_readings::{RowColumn, RowList, RowNumber, RowReadings};
pub use unit::{Unit, show_number};
