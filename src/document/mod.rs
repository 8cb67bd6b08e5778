//! Floor `document`: the design, its limits, its text form, and numbers that remember how they were made.
//!
//! May use `mount`, `standards` and `geometry`. Must not derive a ring dimension, judge one, or touch a file.

mod codec;
mod columns;
mod demo;
mod design;
mod dimension_id;
mod fault;
mod field;
mod inspected;
mod inspected_fault;
mod library;
mod limits;
mod quantity;
mod ring;
mod ring_fault;
mod route;
mod sheet;
mod sheet_fault;
mod size_of;
mod working;

pub use codec::{ReadError, SIZE_LIMIT, pack, read_design, read_ron, unpack, write_ron};
pub use columns::{columns, wrapped};
pub use demo::demo_designs;
pub use design::{Design, FORMAT, Variant};
pub use dimension_id::{DimensionId, DimensionNameError, Face};
pub use fault::{Fault, check_range, faults_of, faults_of_body, faults_of_lens};
pub use field::FieldRef;
pub use inspected::{Correction, Reading, RegisterError, Trial};
pub use library::{Library, library, read_library};
pub use limits::{LimitKey, Limits};
pub use quantity::{QuantityError, parse_quantity};
pub use ring::{
    Choice, Clocking, Dimension, Finish, MillingMethod, Pieces, PinHandling, Ring, RingDimensions,
    RingKey, RingSizes, SeatKind, ThreadHold, Tolerance,
};
pub use route::Route;
pub use sheet::{DimensionOverride, Lengths, Paper, Projection, Sheet, SheetViews, ViewChoice};
pub use size_of::{SizeNameError, SizeOf};
pub use working::{Input, LORE, Term, Working};
