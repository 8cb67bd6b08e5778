//! Tolerances and deviations of ISO 965-1: from the table where it has the pair, by the formula where not.
//!
//! The formulas of clause 10 (2013; clause 13 in 1998) do not give the table in every cell, so the table is
//! what counts; grade factors 3 and 9 and the internal ones are from memory and agree with the tables.

use super::iso_tables::{BLANK, BY_GROUP, BY_PITCH, GROUP_BOUNDS_MM, PitchRow, same_pitch};
use super::limits::{Basis, Side};
use super::preferred::nearest_r40_um;
use super::thread_class::Position;

/// One tolerance or deviation and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerance {
    /// Micrometres, never negative.
    pub um: f64,
    /// Table, or computed and rounded to R40.
    pub basis: Basis,
    /// True where the standard has the pitch but leaves this grade blank, or would leave it blank because
    /// the tolerance is over a quarter of the pitch (rule from memory; it fits every blank of table 5).
    pub left_blank: bool,
}

impl Tolerance {
    fn table(um: u16) -> Self {
        Self {
            um: f64::from(um),
            basis: Basis::Table,
            left_blank: false,
        }
    }

    fn computed(raw_um: f64, left_blank: bool) -> Self {
        Self {
            um: nearest_r40_um(raw_um),
            basis: Basis::Computed,
            left_blank,
        }
    }

    /// The tolerance in mm.
    #[must_use]
    pub fn mm(self) -> f64 {
        self.um / 1000.0
    }
}

/// Diameter group of ISO 965-1 that a nominal diameter falls in: over, up to and including, mm.
///
/// Diameters outside 0.99 to 355 mm get the nearest group.
#[must_use]
pub fn diameter_group_mm(nominal_mm: f64) -> (f64, f64) {
    let [mut over, first_up_to, rest @ ..] = GROUP_BOUNDS_MM;
    let mut up_to = first_up_to;
    for bound in rest {
        if nominal_mm > up_to {
            over = up_to;
            up_to = bound;
        }
    }
    (over, up_to)
}

/// Magnitude of the fundamental deviation: EI of G, or es of g, f, e, in micrometres; zero for H and h.
/// Table 1; `+(15 + 11P)`, `-(30 + 11P)`, `-(50 + 11P)` for pitches that are not in it.
#[must_use]
pub fn fundamental_deviation(position: Position, pitch_mm: f64) -> Tolerance {
    let listed = pitch_row(pitch_mm);
    let (constant, cell) = match position {
        Position::CapitalH | Position::SmallH => return Tolerance::table(0),
        Position::CapitalG | Position::SmallG => (15.0, listed.map(|row| row.g_um)),
        Position::SmallF => (30.0, listed.map(|row| row.f_um)),
        Position::SmallE => (50.0, listed.map(|row| row.e_um)),
    };
    cell.map_or_else(
        || Tolerance::computed(constant + 11.0 * pitch_mm, false),
        Tolerance::table,
    )
}

/// Tolerance of the crest diameter: TD1 (table 3) of an internal thread, Td (table 4) of an external one.
#[must_use]
pub fn crest_tolerance(side: Side, pitch_mm: f64, grade: u8) -> Tolerance {
    let raw = match side {
        Side::Internal => formula_internal_minor_um(pitch_mm, grade),
        Side::External => formula_external_major_um(pitch_mm, grade),
    };
    let cell = pitch_row(pitch_mm).map(|row| match side {
        Side::Internal => cell_of(&row.internal_minor_um, &[4, 5, 6, 7, 8], grade),
        Side::External => cell_of(&row.external_major_um, &[4, 6, 8], grade),
    });
    match cell {
        Some(BLANK) => Tolerance::computed(raw, true),
        Some(um) => Tolerance::table(um),
        None => Tolerance::computed(raw, false),
    }
}

/// Tolerance of the pitch diameter: TD2 (table 5) of an internal thread, Td2 (table 6) of an external one.
#[must_use]
pub fn pitch_diameter_tolerance(
    side: Side,
    nominal_mm: f64,
    pitch_mm: f64,
    grade: u8,
) -> Tolerance {
    let (over_mm, up_to_mm) = diameter_group_mm(nominal_mm);
    let listed = BY_GROUP
        .iter()
        .find(|row| same_pitch(row.over_mm, over_mm) && same_pitch(row.pitch_mm, pitch_mm));
    let cell = listed.map_or(BLANK, |row| match side {
        Side::Internal => cell_of(&row.internal_um, &[4, 5, 6, 7, 8], grade),
        Side::External => cell_of(&row.external_um, &[3, 4, 5, 6, 7, 8, 9], grade),
    });
    if cell != BLANK {
        return Tolerance::table(cell);
    }
    let mean_mm = (over_mm * up_to_mm).sqrt();
    let computed = Tolerance::computed(
        formula_pitch_diameter_um(side, mean_mm, pitch_mm, grade),
        false,
    );
    let over_quarter = match side {
        Side::Internal => computed.um > 250.0 * pitch_mm,
        Side::External => false,
    };
    Tolerance {
        left_blank: listed.is_some() || over_quarter,
        ..computed
    }
}

/// TD1 by formula, micrometres, not rounded: 433 P - 190 P^1.22 below 1 mm pitch, 230 P^0.7 from 1 mm.
#[must_use]
pub fn formula_internal_minor_um(pitch_mm: f64, grade: u8) -> f64 {
    let grade_6 = if pitch_mm < 1.0 {
        433.0 * pitch_mm - 190.0 * pitch_mm.powf(1.22)
    } else {
        230.0 * pitch_mm.powf(0.7)
    };
    grade_6 * grade_factor(grade)
}

/// Td by formula, micrometres, not rounded: 180 P^(2/3) - 3.15 / sqrt(P).
#[must_use]
pub fn formula_external_major_um(pitch_mm: f64, grade: u8) -> f64 {
    (180.0 * pitch_mm.powf(2.0 / 3.0) - 3.15 / pitch_mm.sqrt()) * grade_factor(grade)
}

/// Td2 or TD2 by formula, micrometres, not rounded: 90 P^0.4 d^0.1 and its multiples, d the geometric mean
/// of the diameter group in mm.
#[must_use]
pub fn formula_pitch_diameter_um(side: Side, mean_mm: f64, pitch_mm: f64, grade: u8) -> f64 {
    let external_6 = 90.0 * pitch_mm.powf(0.4) * mean_mm.powf(0.1);
    let factor = match side {
        Side::External => grade_factor(grade),
        Side::Internal => match grade {
            4 => 0.85,
            5 => 1.06,
            7 => 1.7,
            8 => 2.12,
            _ => 1.32,
        },
    };
    external_6 * factor
}

/// Tolerance of a grade as a multiple of grade 6. Grades outside 3 to 9 cannot reach this through a
/// [`MetricClass`](super::MetricClass); they are taken as 6.
fn grade_factor(grade: u8) -> f64 {
    match grade {
        3 => 0.5,
        4 => 0.63,
        5 => 0.8,
        7 => 1.25,
        8 => 1.6,
        9 => 2.0,
        _ => 1.0,
    }
}

fn pitch_row(pitch_mm: f64) -> Option<&'static PitchRow> {
    BY_PITCH
        .iter()
        .find(|row| same_pitch(row.pitch_mm, pitch_mm))
}

fn cell_of(cells: &[u16], grades: &[u8], grade: u8) -> u16 {
    grades
        .iter()
        .zip(cells)
        .find(|(listed, _)| **listed == grade)
        .map_or(BLANK, |(_, um)| *um)
}
