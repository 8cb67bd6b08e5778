//! Thread undercuts (reliefs) by pitch: DIN 76-1, ISO 4755, GB/T 3-1997.
//!
//! Widths go by the pitch alone; fine threads use the row of their pitch (footnote of DIN 76-1). The rows of
//! DIN 76-1 for 0.5, 0.6 and 1 mm were cross-read in public test data citing the standard, the others are from
//! memory; ISO 4755 and GB/T 3-1997 were read in public tables.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Standard and form of an undercut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum UndercutForm {
    /// DIN 76-1 form C: internal, regular.
    Din76InternalRegular,
    /// DIN 76-1 form D: internal, short.
    Din76InternalShort,
    /// DIN 76-1 form A: external, regular.
    Din76ExternalRegular,
    /// DIN 76-1 form B: external, short.
    Din76ExternalShort,
    /// ISO 4755 (GB/T 3-1997 has the same): external.
    Iso4755External,
    /// GB/T 3-1997: internal, normal, 4 P wide.
    Gb3InternalNormal,
    /// GB/T 3-1997: internal, short, 2 P wide.
    Gb3InternalShort,
}

impl UndercutForm {
    /// All forms, internal before external.
    pub const ALL: [Self; 7] = [
        Self::Din76InternalRegular,
        Self::Din76InternalShort,
        Self::Gb3InternalNormal,
        Self::Gb3InternalShort,
        Self::Din76ExternalRegular,
        Self::Din76ExternalShort,
        Self::Iso4755External,
    ];

    /// Name for a list or a drawing note.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Din76InternalRegular => "DIN 76-1 C (internal, regular)",
            Self::Din76InternalShort => "DIN 76-1 D (internal, short)",
            Self::Din76ExternalRegular => "DIN 76-1 A (external, regular)",
            Self::Din76ExternalShort => "DIN 76-1 B (external, short)",
            Self::Iso4755External => "ISO 4755 (external)",
            Self::Gb3InternalNormal => "GB/T 3-1997 (internal, normal)",
            Self::Gb3InternalShort => "GB/T 3-1997 (internal, short)",
        }
    }
}

/// Sizes of one undercut, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Undercut {
    /// Standard and form.
    pub form: UndercutForm,
    /// Pitch of the row used, mm: the thread's, or the next listed one up.
    pub row_pitch_mm: f64,
    /// Width of the cylindrical floor (g1), least, mm.
    pub width_min_mm: f64,
    /// Whole width to the edge of the thread (g2), greatest, mm; none where the standard gives one width only.
    pub width_max_mm: Option<f64>,
    /// What its diameter is over the nominal one, mm: positive for internal threads, negative for external.
    pub diameter_excess_mm: f64,
    /// Radius in the corners, mm.
    pub radius_mm: f64,
    /// Tolerance class of the diameter (ISO 286): H13 inside, h13 outside.
    pub diameter_tolerance: &'static str,
    /// Set where another pitch's row was taken: says so.
    pub note: Option<String>,
}

impl Undercut {
    /// Diameter of the undercut for a nominal thread diameter, both mm.
    #[must_use]
    pub fn diameter_mm(&self, nominal_mm: f64) -> f64 {
        nominal_mm + self.diameter_excess_mm
    }
}

/// A pitch for which there is no row.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum UndercutError {
    /// Pitch outside the table.
    #[error(
        "no undercut is listed for a pitch of {pitch_mm} mm: the tables here go from {least_mm} to {greatest_mm} mm; set width and diameter of the relief by hand"
    )]
    PitchOutsideTable {
        /// The pitch asked for, mm.
        pitch_mm: f64,
        /// Finest pitch listed, mm.
        least_mm: f64,
        /// Coarsest pitch listed, mm.
        greatest_mm: f64,
    },
}

/// One pitch in all the standards; everything in mm, widths as g1 and g2.
struct Row {
    pitch: f64,
    /// Nominal less this is the external undercut, the same in DIN 76-1 and ISO 4755.
    external_below: f64,
    /// DIN 76-1 A, then B, then ISO 4755.
    external: [Pair; 3],
    /// DIN 76-1 and ISO 4755.
    radius: f64,
    /// Nominal and this is the internal undercut, the same in DIN 76-1 and GB/T 3.
    internal_above: f64,
    /// DIN 76-1 C, then D.
    internal: [Pair; 2],
    /// GB/T 3-1997 internal: normal width, short width.
    gb_internal: Pair,
    gb_internal_radius: f64,
}

type Pair = (f64, f64);

const fn row(
    pitch: f64,
    external: (f64, [Pair; 3], f64),
    internal: (f64, [Pair; 2]),
    gb: (f64, f64, f64),
) -> Row {
    Row {
        pitch,
        external_below: external.0,
        external: external.1,
        radius: external.2,
        internal_above: internal.0,
        internal: internal.1,
        gb_internal: (gb.0, gb.1),
        gb_internal_radius: gb.2,
    }
}

#[rustfmt::skip] // one printed row a line
const FIRST: Row =
    row(0.5,  (0.8, [(1.1, 1.75), (0.5, 1.25), (0.8, 1.5)],  0.2), (0.3, [(2.0, 2.7), (1.25, 2.0)]), (2.0, 1.0, 0.2));
#[rustfmt::skip] // one printed row a line
const LAST: Row =
    row(2.0,  (3.0, [(4.5, 7.0),  (2.5, 5.0),  (3.4, 6.0)],  1.0), (0.5, [(8.0, 10.3), (5.0, 7.3)]), (8.0, 4.0, 1.0));

#[rustfmt::skip] // one printed row a line
const ROWS: [Row; 10] = [
    FIRST,
    row(0.6,  (1.0, [(1.2, 2.1),  (0.6, 1.5),  (0.9, 1.8)],  0.4), (0.3, [(2.4, 3.3), (1.5, 2.4)]),   (2.4, 1.2, 0.3)),
    row(0.7,  (1.1, [(1.5, 2.45), (0.8, 1.75), (1.1, 2.1)],  0.4), (0.3, [(2.8, 3.8), (1.75, 2.75)]), (2.8, 1.4, 0.4)),
    row(0.75, (1.2, [(1.6, 2.6),  (0.9, 1.9),  (1.2, 2.25)], 0.4), (0.3, [(3.0, 4.0), (1.9, 2.9)]),   (3.0, 1.5, 0.4)),
    row(0.8,  (1.3, [(1.7, 2.8),  (0.9, 2.0),  (1.3, 2.4)],  0.4), (0.3, [(3.2, 4.2), (2.0, 3.0)]),   (3.2, 1.6, 0.4)),
    row(1.0,  (1.6, [(2.1, 3.5),  (1.1, 2.5),  (1.6, 3.0)],  0.6), (0.5, [(4.0, 5.2), (2.5, 3.7)]),   (4.0, 2.0, 0.5)),
    row(1.25, (2.0, [(2.7, 4.4),  (1.5, 3.2),  (2.0, 3.75)], 0.6), (0.5, [(5.0, 6.7), (3.2, 4.9)]),   (5.0, 2.5, 0.6)),
    row(1.5,  (2.3, [(3.2, 5.2),  (1.8, 3.8),  (2.5, 4.5)],  0.8), (0.5, [(6.0, 7.8), (3.8, 5.6)]),   (6.0, 3.0, 0.8)),
    row(1.75, (2.6, [(3.9, 6.1),  (2.1, 4.3),  (3.0, 5.25)], 1.0), (0.5, [(7.0, 9.1), (4.3, 6.4)]),   (7.0, 3.5, 0.9)),
    LAST,
];

/// Undercut of a form for a thread of this pitch in mm; the next listed pitch up where it is not in the table.
///
/// # Errors
/// [`UndercutError::PitchOutsideTable`] below 0.5 mm and above 2 mm.
///
/// ```
/// use flangewright::standards::undercut::{UndercutForm, undercut};
/// let short = undercut(UndercutForm::Din76InternalShort, 1.0)?;
/// assert_eq!((short.width_min_mm, short.width_max_mm), (2.5, Some(3.7)));
/// assert_eq!(short.diameter_mm(42.0), 42.5);
/// # Ok::<(), flangewright::standards::UndercutError>(())
/// ```
pub fn undercut(form: UndercutForm, pitch_mm: f64) -> Result<Undercut, UndercutError> {
    let outside = UndercutError::PitchOutsideTable {
        pitch_mm,
        least_mm: FIRST.pitch,
        greatest_mm: LAST.pitch,
    };
    if pitch_mm < FIRST.pitch - SAME_MM {
        return Err(outside);
    }
    let row = ROWS
        .iter()
        .find(|row| row.pitch >= pitch_mm - SAME_MM)
        .ok_or(outside)?;
    let note = (row.pitch > pitch_mm + SAME_MM).then(|| {
        format!(
            "Pitch {pitch_mm:.4} mm is not listed; the row of {} mm, the next up, is taken.",
            row.pitch
        )
    });
    Ok(from_row(row, form, note))
}

/// Pitches nearer than this are the same row, mm.
const SAME_MM: f64 = 1e-9;

fn from_row(row: &Row, form: UndercutForm, note: Option<String>) -> Undercut {
    let [external_a, external_b, iso_4755] = row.external;
    let [internal_c, internal_d] = row.internal;
    let (normal, short) = row.gb_internal;
    let (internal, width_min_mm, width_max_mm) = match form {
        UndercutForm::Din76InternalRegular => (true, internal_c.0, Some(internal_c.1)),
        UndercutForm::Din76InternalShort => (true, internal_d.0, Some(internal_d.1)),
        UndercutForm::Din76ExternalRegular => (false, external_a.0, Some(external_a.1)),
        UndercutForm::Din76ExternalShort => (false, external_b.0, Some(external_b.1)),
        UndercutForm::Iso4755External => (false, iso_4755.0, Some(iso_4755.1)),
        UndercutForm::Gb3InternalNormal => (true, normal, None),
        UndercutForm::Gb3InternalShort => (true, short, None),
    };
    let radius_mm = match form {
        UndercutForm::Gb3InternalNormal | UndercutForm::Gb3InternalShort => row.gb_internal_radius,
        UndercutForm::Din76InternalRegular
        | UndercutForm::Din76InternalShort
        | UndercutForm::Din76ExternalRegular
        | UndercutForm::Din76ExternalShort
        | UndercutForm::Iso4755External => row.radius,
    };
    Undercut {
        form,
        row_pitch_mm: row.pitch,
        width_min_mm,
        width_max_mm,
        diameter_excess_mm: if internal {
            row.internal_above
        } else {
            -row.external_below
        },
        radius_mm,
        diameter_tolerance: if internal { "H13" } else { "h13" },
        note,
    }
}
