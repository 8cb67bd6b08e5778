//! Which pairs of diameter and pitch ISO 261 lists.

use super::iso_tables::same_pitch;

/// Coarse pitches of ISO 261 and ISO 262 by nominal diameter, mm (M24 and up read in a public list of
/// preferred sizes, the others from memory).
#[rustfmt::skip] // six to a line
const COARSE: [(f64, f64); 36] = [
    (1.0, 0.25), (1.2, 0.25), (1.4, 0.3), (1.6, 0.35), (1.8, 0.35), (2.0, 0.4),
    (2.5, 0.45), (3.0, 0.5), (3.5, 0.6), (4.0, 0.7), (5.0, 0.8), (6.0, 1.0),
    (7.0, 1.0), (8.0, 1.25), (9.0, 1.25), (10.0, 1.5), (11.0, 1.5), (12.0, 1.75),
    (14.0, 2.0), (16.0, 2.0), (18.0, 2.5), (20.0, 2.5), (22.0, 2.5), (24.0, 3.0),
    (27.0, 3.0), (30.0, 3.5), (33.0, 3.5), (36.0, 4.0), (39.0, 4.0), (42.0, 4.5),
    (45.0, 4.5), (48.0, 5.0), (52.0, 5.0), (56.0, 5.5), (60.0, 5.5), (64.0, 6.0),
];

/// Fine pitches of ISO 261 up to 2 mm by nominal diameter, mm (from memory, ISO 261:1998 table).
const FINE: [(&[f64], &[f64]); 18] = [
    (&[1.0, 1.1, 1.2, 1.4, 1.6, 1.8], &[0.2]),
    (&[2.0, 2.2], &[0.25]),
    (&[2.5, 3.0, 3.5], &[0.35]),
    (&[4.0, 4.5, 5.0, 5.5], &[0.5]),
    (&[6.0, 7.0], &[0.75]),
    (&[8.0, 9.0], &[1.0, 0.75]),
    (&[10.0], &[1.25, 1.0, 0.75]),
    (&[11.0], &[1.0, 0.75]),
    (&[12.0], &[1.5, 1.25, 1.0]),
    (&[14.0], &[1.5, 1.25, 1.0]),
    (&[15.0, 16.0, 17.0], &[1.5, 1.0]),
    (&[18.0], &[2.0, 1.5, 1.0]),
    (
        &[20.0, 22.0, 24.0, 25.0, 27.0, 28.0, 30.0],
        &[2.0, 1.5, 1.0],
    ),
    (&[26.0, 35.0, 38.0], &[1.5]),
    (
        &[32.0, 33.0, 36.0, 39.0, 40.0, 42.0, 45.0, 48.0],
        &[2.0, 1.5],
    ),
    (
        &[50.0, 52.0, 55.0, 56.0, 58.0, 60.0, 62.0, 64.0],
        &[2.0, 1.5],
    ),
    (&[65.0, 68.0, 70.0, 72.0, 75.0, 76.0, 80.0], &[2.0, 1.5]),
    (&[78.0], &[2.0]),
];

/// Largest diameter and pitch that the list of fine pitches here reaches, mm.
const REACH_MM: (f64, f64) = (80.0, 2.0);

/// Whether ISO 261 lists this pair, both in mm; `None` where the list kept here does not reach (above 80 mm,
/// or above 2 mm pitch other than the coarse one).
///
/// A pair that is not listed is no fault: most lens threads are not, and ISO 965-1 gives formulas for them.
///
/// ```
/// use flangewright::standards::iso_261::in_iso_261;
/// assert_eq!(in_iso_261(42.0, 1.5), Some(true));
/// assert_eq!(in_iso_261(42.0, 1.0), Some(false));
/// ```
#[must_use]
pub fn in_iso_261(nominal_mm: f64, pitch_mm: f64) -> Option<bool> {
    if coarse_pitch_mm(nominal_mm).is_some_and(|coarse| same_pitch(coarse, pitch_mm)) {
        return Some(true);
    }
    if nominal_mm > REACH_MM.0 || pitch_mm > REACH_MM.1 {
        return None;
    }
    Some(
        FINE.iter()
            .any(|(diameters, pitches)| has(diameters, nominal_mm) && has(pitches, pitch_mm)),
    )
}

/// Coarse pitch that a bare designation such as M10 stands for, mm; `None` where ISO 261 has none up to 64 mm.
#[must_use]
pub fn coarse_pitch_mm(nominal_mm: f64) -> Option<f64> {
    COARSE
        .iter()
        .find(|(diameter, _)| same_pitch(*diameter, nominal_mm))
        .map(|(_, pitch)| *pitch)
}

fn has(list: &[f64], value: f64) -> bool {
    list.iter().any(|listed| same_pitch(*listed, value))
}
