//! Marks along the axis of a plot: even steps of 1, 2 or 5, near enough to be read off.

use egui_plot::{GridInput, GridMark, uniform_grid_spacer};

/// About so many numbered marks along an axis.
const MARKS: f64 = 7.0;

/// The marks for an axis.
pub fn marks(input: GridInput) -> Vec<GridMark> {
    uniform_grid_spacer(|input| {
        let step = step_for(input.bounds.1 - input.bounds.0);
        [step, step * 10.0, step * 100.0]
    })(input)
}

/// The largest even step that gives at least so many marks over a range.
fn step_for(range: f64) -> f64 {
    let wanted = range / MARKS;
    if !wanted.is_finite() || wanted <= 0.0 {
        return 1.0;
    }
    let decade = 10.0_f64.powf(wanted.log10().floor());
    let factors = [5.0, 2.0, 1.0];
    let fits = factors.iter().find(|factor| *factor * decade <= wanted);
    fits.map_or(decade, |factor| factor * decade)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_give_enough_marks() {
        for (range, step) in [
            (21.63, 2.0),
            (0.1, 0.01),
            (0.38, 0.05),
            (90.0, 10.0),
            (105.0, 10.0),
        ] {
            assert!(
                (step_for(range) - step).abs() < 1e-12,
                "{range}: {}",
                step_for(range)
            );
        }
        assert!((step_for(0.0) - 1.0).abs() < 1e-12 && (step_for(f64::NAN) - 1.0).abs() < 1e-12);
    }
}
