//! Preferred numbers of ISO 3, series R40, by which the tolerances of ISO 965-1 are rounded.

/// Series R40, one decade, as rounded to three figures in ISO 3.
pub const R40: [f64; 40] = [
    100.0, 106.0, 112.0, 118.0, 125.0, 132.0, 140.0, 150.0, 160.0, 170.0, 180.0, 190.0, 200.0,
    212.0, 224.0, 236.0, 250.0, 265.0, 280.0, 300.0, 315.0, 335.0, 355.0, 375.0, 400.0, 425.0,
    450.0, 475.0, 500.0, 530.0, 560.0, 600.0, 630.0, 670.0, 710.0, 750.0, 800.0, 850.0, 900.0,
    950.0,
];

/// Rounds a positive length in micrometres to the nearest R40 number, then to a whole micrometre.
///
/// Zero, negative and not finite values come back unchanged. Source: ISO 3 for the series, ASME B1.13M
/// paragraph 6.2 for the rounding to R40 at three decimals of a millimetre.
///
/// ```
/// use flangewright::standards::preferred::nearest_r40_um;
/// assert_eq!(nearest_r40_um(111.8), 112.0);
/// assert_eq!(nearest_r40_um(20.5), 20.0);
/// ```
#[must_use]
pub fn nearest_r40_um(value_um: f64) -> f64 {
    if !value_um.is_finite() || value_um <= 0.0 {
        return value_um;
    }
    let scale = 10f64.powf(value_um.log10().floor()) / 100.0;
    let last = 1000.0 * scale;
    let nearest = R40
        .iter()
        .map(|number| number * scale)
        .fold(last, |best, next| {
            if (next - value_um).abs() < (best - value_um).abs() {
                next
            } else {
                best
            }
        });
    half_up(nearest)
}

/// Rounds half up at a whole number; a hair (1e-9) is added, since decimal halves such as 26.5 come out of
/// binary products a hair low.
pub(super) fn half_up(value: f64) -> f64 {
    (value + 0.5 + 1e-9).floor()
}

/// Rounds a length in mm half up to 0.001 mm.
pub(super) fn to_micrometre(value_mm: f64) -> f64 {
    half_up(value_mm * 1000.0) / 1000.0
}
