//! Marks along the axis of a plot: even steps of 1, 2 or 5, near enough to be read off.

use std::ops::RangeInclusive;

use egui_plot::{GridInput, GridMark, uniform_grid_spacer};

/// At most so many numbered marks along an axis, or their numbers would not find room.
const MARKS: f64 = 7.0;

/// The marks for an axis.
#[must_use]
pub fn marks(input: GridInput) -> Vec<GridMark> {
    let even = |input: GridInput| {
        let step = step_for(input.bounds.1 - input.bounds.0);
        [step, step * 10.0, step * 100.0]
    };
    uniform_grid_spacer(even)(input)
}

/// The number at a mark, with the decimals of its step.
#[must_use]
pub fn mark_words(mark: GridMark, range: &RangeInclusive<f64>) -> String {
    let step = step_for(range.end() - range.start());
    let decimals = [1.0, 0.1, 0.01, 0.001, 0.0001]
        .iter()
        .take_while(|size| step < **size * (1.0 - 1e-9))
        .count();
    format!("{:.decimals$}", mark.value + 0.0)
}

/// The smallest step of 1, 2 or 5 that gives no more marks over a range.
fn step_for(range: f64) -> f64 {
    let wanted = range / MARKS;
    if !wanted.is_finite() || wanted <= 0.0 {
        return 1.0;
    }
    let decade = 10.0_f64.powf(wanted.log10().floor());
    let factors = [1.0, 2.0, 5.0];
    let fits = factors.iter().find(|factor| *factor * decade >= wanted);
    fits.map_or(10.0 * decade, |factor| factor * decade)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_leave_room_for_numbers() {
        for (range, step) in [
            (21.63, 5.0),
            (0.085, 0.02),
            (0.32, 0.05),
            (90.0, 20.0),
            (6.5, 1.0),
        ] {
            assert!(
                (step_for(range) - step).abs() < 1e-12,
                "{range}: {}",
                step_for(range)
            );
        }
        assert!((step_for(0.0) - 1.0).abs() < 1e-12 && (step_for(f64::NAN) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_mark_has_the_decimals_of_its_step() {
        let mark = |value| GridMark {
            value,
            step_size: 1.0,
        };
        assert_eq!(mark_words(mark(0.5), &(0.0..=3.2)), "0.5");
        assert_eq!(mark_words(mark(-0.05), &(-0.16..=0.16)), "-0.05");
        assert_eq!(mark_words(mark(20.0), &(0.0..=105.0)), "20");
    }
}
