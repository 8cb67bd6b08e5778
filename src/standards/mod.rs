//! Published tables and formulas, each beside its source.
//!
//! This floor may use the standard library, `serde` and `thiserror`, and nothing else of this program
//! but `geometry`, which it does not need. It must not know of lenses, bodies, rings, files or the window.
//!
//! Lengths are in mm, angles in degrees, tolerances out of tables in micrometres where a name ends in `_um`.
//! A number that a standard prints stands in a table here; a formula serves only where no table reaches,
//! and then the result says so ([`Basis`]).
//!
//! ```
//! use flangewright::standards::Thread;
//!
//! let thread: Thread = "M42x1".parse()?;
//! let ring = thread.internal()?;
//! assert_eq!(ring.pitch_diameter_min, Some(41.350)); // ISO 965-1, class 6H
//! assert_eq!(ring.pitch_diameter_max, Some(41.520));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod basic_profile;
pub mod designation;
mod designation_cursor;
mod designation_error;
mod designation_tokens;
mod drawing_scale;
pub mod engagement;
pub mod fits;
pub mod general_tolerance;
pub mod iso_261;
mod iso_tables;
pub mod iso_thread;
pub mod iso_tolerance;
mod limits;
mod nominal;
pub mod play;
pub mod preferred;
pub mod shear_area;
mod thread;
mod thread_class;
mod thread_gauge;
pub mod undercut;
pub mod unified_thread;
pub mod whitworth_thread;
pub mod wires;

pub use basic_profile::BasicProfile;
pub use designation_error::DesignationError;
pub use drawing_scale::{SCALES, Scale, ScaleError};
pub use fits::{Deviations, FitClass, FitError, FitLetter};
pub use general_tolerance::{GeneralClass, GeneralToleranceError};
pub use limits::{Basis, Side, ThreadLimits};
pub use nominal::Nominal;
pub use thread::{Thread, ThreadError, ThreadForm, UnifiedSeries};
pub use thread_class::{ClassError, MetricClass, Position, ThreadClass, UnifiedClass};
pub use thread_gauge::{ThreadGauge, thread_gauge};
pub use undercut::{Undercut, UndercutError, UndercutForm};
