//! Values on whole micrometres, or thousandths of a degree: nobody sets a lathe to less.

use super::cancelled::Cancelled;
use super::problem::Problem;

/// The step, mm or degrees.
pub(super) const STEP: f64 = 0.001;

/// The same ring with each moved value on a whole step beside it, where that has no clash; nearer steps are tried
/// first, one dimension after the other.
pub(super) fn to_whole_steps(problem: &Problem, at: Vec<f64>) -> Result<Vec<f64>, Cancelled> {
    let mut whole = at;
    for index in 0..whole.len() {
        let (Some(value), Some(start)) = (whole.get(index), problem.start.get(index)) else {
            continue;
        };
        // Unmoved stays to the last digit.
        if (value - start).abs() < 1e-9 {
            continue;
        }
        let steps = value / STEP;
        let mut sides = [steps.floor() * STEP, steps.ceil() * STEP].map(clean);
        let distance = |side: f64| (side - start).abs();
        if distance(sides[0]) > distance(sides[1]) {
            sides.swap(0, 1);
        }
        for side in sides {
            let mut next = whole.clone();
            if let Some(own) = next.get_mut(index) {
                *own = side;
            }
            if problem.inside(&next) == next && problem.is_free(&next)? {
                whole = next;
                break;
            }
        }
    }
    Ok(whole)
}

/// Three decimals, without what binary fractions leave.
fn clean(value: f64) -> f64 {
    (value / STEP).round() / (1.0 / STEP)
}
