//! Where a rising function passes a value, by halving: slow, but it cannot miss.

/// Halvings that bring any span of numbers down to neighbours.
const HALVINGS: u32 = 200;

/// The argument between `low` and `high` at which the rising `function` passes `value`.
pub(super) fn crossing(low: f64, high: f64, value: f64, function: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (low, high);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if middle <= low || middle >= high {
            break;
        }
        if function(middle) < value {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}
