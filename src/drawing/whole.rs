//! Whole numbers and lengths turned into each other.

/// A count as a number to reckon with.
#[must_use]
#[expect(
    clippy::cast_precision_loss,
    reason = "counts of drawn things are far under 2^52, where f64 is exact"
)]
pub fn as_f64(count: usize) -> f64 {
    count as f64
}

/// The nearest whole number of dots, 0 for negative and `u32::MAX` for too large numbers.
#[must_use]
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "`as` from f64 to u32 stops at the ends of the range, which is what is wanted"
)]
pub fn dots(number: f64) -> u32 {
    number.round() as u32
}

/// A length for the painter, which works in single precision: on an A3 sheet its steps are 0.03 um.
#[must_use]
#[expect(
    clippy::cast_possible_truncation,
    reason = "single precision is all the painter takes"
)]
pub fn single(length: f64) -> f32 {
    length as f32
}
