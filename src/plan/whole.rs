//! Whole numbers out of plain ones.

/// The nearest whole number, 0 for negative and `u32::MAX` for too large numbers.
#[must_use]
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "`as` from f64 to u32 stops at the ends of the range, which is what is wanted"
)]
pub(super) fn whole(number: f64) -> u32 {
    number.round() as u32
}
