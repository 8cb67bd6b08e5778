//! Limits of size of a thread, as every thread standard here gives them.

use std::fmt;

use serde::{Deserialize, Serialize};

/// Which of the two threads: the one in the hole or the one on the shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Side {
    /// Internal thread, as in the ring.
    Internal,
    /// External thread, as on the lens.
    External,
}

impl fmt::Display for Side {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Side::Internal => "internal",
            Side::External => "external",
        })
    }
}

/// How a set of limits came about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Basis {
    /// Every tolerance stands in a table of the standard.
    Table,
    /// At least one tolerance is worked out with the standard's formula; the notes say which.
    Computed,
    /// The basic profile only: the standard used here sets no tolerances.
    Basic,
}

/// Limits of size of one thread, in mm; `None` where the standard sets no limit.
///
/// An internal thread has no `major_max` (the tap or tool decides; see `major_max_reference`), an external
/// thread has no `minor_min`. The external `minor_max` is that of the flat-root form; the rounded root form
/// stands beside it in `rounded_minor_max` and `rounded_minor_min`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ThreadLimits {
    /// Internal or external.
    pub side: Side,
    /// Least major diameter, mm.
    pub major_min: Option<f64>,
    /// Greatest major diameter, mm; none for an internal thread.
    pub major_max: Option<f64>,
    /// Least pitch diameter, mm.
    pub pitch_diameter_min: Option<f64>,
    /// Greatest pitch diameter, mm.
    pub pitch_diameter_max: Option<f64>,
    /// Least minor diameter, mm; none for an external thread.
    pub minor_min: Option<f64>,
    /// Greatest minor diameter, mm; for an external thread that of the flat root.
    pub minor_max: Option<f64>,
    /// Greatest major diameter of an internal thread by a sharp tool at the greatest pitch diameter, mm: a
    /// reference figure, no requirement (ISO metric threads only).
    pub major_max_reference: Option<f64>,
    /// Greatest minor diameter of an external thread with a rounded root, mm.
    pub rounded_minor_max: Option<f64>,
    /// Least minor diameter of an external thread with a rounded root, mm.
    pub rounded_minor_min: Option<f64>,
    /// Whether tables, formulas or only the basic profile stand behind it.
    pub basis: Basis,
    /// True where the standard leaves the grade out for this pitch, so that the limits are this formula's and
    /// not the standard's.
    pub beyond_standard: bool,
    /// The standard the limits are taken from.
    pub source: &'static str,
    /// What a reader should know about these numbers, one sentence each.
    pub notes: Vec<String>,
}

impl ThreadLimits {
    /// Limits of which nothing is known yet but where they come from.
    pub(super) fn empty(side: Side, basis: Basis, source: &'static str) -> Self {
        Self {
            side,
            major_min: None,
            major_max: None,
            pitch_diameter_min: None,
            pitch_diameter_max: None,
            minor_min: None,
            minor_max: None,
            major_max_reference: None,
            rounded_minor_max: None,
            rounded_minor_min: None,
            basis,
            beyond_standard: false,
            source,
            notes: Vec::new(),
        }
    }
}
