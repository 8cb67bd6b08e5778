//! A stack of tolerances: several sizes that add up to one gap.
//!
//! `G = Σ a L`. Worst case `Σ |a| t`; root sum square `√ Σ (a t)²`, which holds 99.73 % where every tolerance is
//! three standard deviations of a centred, independent normal spread; inflated by 1.5 for spreads that are not
//! (report on tolerance stacking methods, University of Washington, 1995).

use std::borrow::Cow;

use super::distribution::{Distribution, SIGMAS};
use super::normal::normal_below;
use crate::document::{FieldRef, Term};
use crate::mount::Unit;

/// The usual factor on the root sum square for spreads off centre or not normal.
pub const INFLATION: f64 = 1.5;

/// One size in the stack.
#[derive(Clone, Debug, PartialEq)]
pub struct Contributor {
    /// Its name.
    pub name: Cow<'static, str>,
    /// The field it stands in, if it is one.
    pub field: Option<FieldRef>,
    /// What one mm of it does to the gap, mm; negative where it closes the gap.
    pub sensitivity: f64,
    /// The size as drawn, mm.
    pub nominal_mm: f64,
    /// Middle of the tolerance above the size as drawn, mm.
    pub offset_mm: f64,
    /// The spread about the middle of the tolerance.
    pub distribution: Distribution,
}

impl Contributor {
    /// A size that opens (+1) or closes (-1) the gap, centred on its nominal.
    pub fn new(
        name: impl Into<Cow<'static, str>>,
        sensitivity: f64,
        nominal_mm: f64,
        distribution: Distribution,
    ) -> Self {
        let name = name.into();
        Self {
            name,
            field: None,
            sensitivity,
            nominal_mm,
            offset_mm: 0.0,
            distribution,
        }
    }

    /// The same, standing in a field.
    #[must_use]
    pub const fn in_field(mut self, field: FieldRef) -> Self {
        self.field = Some(field);
        self
    }

    /// The same, the middle of its tolerance off the size as drawn.
    #[must_use]
    pub const fn off_by(mut self, offset_mm: f64) -> Self {
        self.offset_mm = offset_mm;
        self
    }

    /// What its tolerance does to the gap, mm either way: `|a| t`.
    #[must_use]
    pub const fn reach_mm(&self) -> f64 {
        self.sensitivity.abs() * self.distribution.half_mm()
    }

    /// What its spread does to the gap as a standard uncertainty, mm.
    #[must_use]
    pub fn standard_uncertainty_mm(&self) -> f64 {
        self.sensitivity.abs() * self.distribution.standard_uncertainty_mm()
    }

    /// Its mean effect on the gap, mm.
    #[must_use]
    pub const fn mean_mm(&self) -> f64 {
        self.sensitivity * (self.nominal_mm + self.offset_mm + self.distribution.mean_mm())
    }

    /// `|a| t` with its name, for the working.
    fn reach(&self) -> Term {
        let tolerance = Term::named(
            format!("tolerance of {}", self.name),
            self.distribution.half_mm(),
            Unit::Mm,
        );
        let factor = self.sensitivity.abs();
        // Exact on purpose: only a factor of just one has no place in the formula.
        if factor.to_bits() == 1.0_f64.to_bits() {
            tolerance
        } else {
            factor * tolerance
        }
    }
}

/// Sizes that add up to one gap.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stack {
    /// The sizes.
    pub contributors: Vec<Contributor>,
}

impl Stack {
    /// The gap as drawn, mm.
    #[must_use]
    pub fn nominal_mm(&self) -> f64 {
        self.sum(|one| one.sensitivity * one.nominal_mm)
    }

    /// The middle of the gap between its worst cases, mm: as drawn, with the middles of all tolerances.
    #[must_use]
    pub fn middle_mm(&self) -> f64 {
        self.sum(|one| one.sensitivity * (one.nominal_mm + one.offset_mm))
    }

    /// The mean gap, mm.
    #[must_use]
    pub fn mean_mm(&self) -> f64 {
        self.sum(Contributor::mean_mm)
    }

    /// Half of the worst-case band, mm: `Σ |a| t`, about [`Self::middle_mm`].
    #[must_use]
    pub fn worst_case_mm(&self) -> f64 {
        self.sum(Contributor::reach_mm)
    }

    /// The least and the greatest gap with every size at a limit, mm.
    #[must_use]
    pub fn worst_cases_mm(&self) -> (f64, f64) {
        let (middle, half) = (self.middle_mm(), self.worst_case_mm());
        (middle - half, middle + half)
    }

    /// Half of the band by root sum square, mm: `√ Σ (a t)²`.
    #[must_use]
    pub fn root_sum_square_mm(&self) -> f64 {
        self.sum(|one| one.reach_mm().powi(2)).sqrt()
    }

    /// The same inflated by [`INFLATION`], mm.
    #[must_use]
    pub fn inflated_mm(&self) -> f64 {
        INFLATION * self.root_sum_square_mm()
    }

    /// The standard deviation that the root sum square stands for, mm: a third of it.
    #[must_use]
    pub fn assumed_sigma_mm(&self) -> f64 {
        self.root_sum_square_mm() / SIGMAS
    }

    /// The combined standard uncertainty by the spread of each size, mm (JCGM 100 5.1.2, independent inputs).
    #[must_use]
    pub fn standard_uncertainty_mm(&self) -> f64 {
        self.sum(|one| one.standard_uncertainty_mm().powi(2)).sqrt()
    }

    /// What share of the root sum square each size makes, 0 to 1, in the order of the sizes; all 0 where
    /// nothing has a tolerance.
    #[must_use]
    pub fn shares(&self) -> Vec<f64> {
        let whole = self.root_sum_square_mm().powi(2);
        let share = |one: &Contributor| {
            if whole > 0.0 {
                one.reach_mm().powi(2) / whole
            } else {
                0.0
            }
        };
        self.contributors.iter().map(share).collect()
    }

    /// Share of the rings whose gap lies from `low_mm` to `high_mm`, 0 to 1, in closed form: normal with the
    /// mean and the standard uncertainty of the stack (central limit; JCGM 100 G.2). Either limit may be
    /// infinite.
    #[must_use]
    pub fn share_inside(&self, low_mm: f64, high_mm: f64) -> f64 {
        let (mean, u) = (self.mean_mm(), self.standard_uncertainty_mm());
        if u > 0.0 {
            let share = normal_below((high_mm - mean) / u) - normal_below((low_mm - mean) / u);
            return share.max(0.0);
        }
        if (low_mm..=high_mm).contains(&mean) {
            1.0
        } else {
            0.0
        }
    }

    /// [`Self::worst_case_mm`] with its working; none for an empty stack.
    #[must_use]
    pub fn worst_case(&self) -> Option<Term> {
        self.contributors
            .iter()
            .map(Contributor::reach)
            .reduce(|sum, one| sum + one)
    }

    /// [`Self::root_sum_square_mm`] with its working; none for an empty stack.
    #[must_use]
    pub fn root_sum_square(&self) -> Option<Term> {
        let squares = self
            .contributors
            .iter()
            .map(|one| one.reach().apply("square", |t| t * t));
        squares
            .reduce(|sum, one| sum + one)
            .map(|sum| sum.apply("√", f64::sqrt))
    }

    fn sum(&self, of: impl Fn(&Contributor) -> f64) -> f64 {
        self.contributors.iter().map(of).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn two() -> Stack {
        let seat = Contributor::new("seat", 1.0, 1.46, Distribution::Uniform { half_mm: 0.03 });
        let coat = Contributor::new("coat", 2.0, 0.01, Distribution::Uniform { half_mm: 0.02 });
        Stack {
            contributors: vec![seat.off_by(-0.01), coat],
        }
    }

    /// Worked by hand: t 0.03 and 2 x 0.02 give 0.07 and 0.05.
    #[test]
    fn worst_case_and_root_sum_square() {
        let stack = two();
        assert!((stack.nominal_mm() - 1.48).abs() < 1e-12);
        assert!((stack.mean_mm() - 1.47).abs() < 1e-12);
        assert!((stack.worst_case_mm() - 0.07).abs() < 1e-12);
        let (least, greatest) = stack.worst_cases_mm();
        assert!((least - 1.40).abs() < 1e-12 && (greatest - 1.54).abs() < 1e-12);
        assert!((stack.root_sum_square_mm() - 0.05).abs() < 1e-12);
        assert!((stack.inflated_mm() - 0.075).abs() < 1e-12);
        assert!((stack.standard_uncertainty_mm() - 0.05 / 3.0_f64.sqrt()).abs() < 1e-12);
        assert!((stack.shares()[0] - 0.36).abs() < 1e-12);
    }

    #[test]
    fn workings_come_to_the_same_numbers() {
        let stack = two();
        let worst = stack.worst_case().unwrap();
        assert_eq!(worst.formula(), "tolerance of seat + 2 × tolerance of coat");
        assert!((worst.value() - stack.worst_case_mm()).abs() < 1e-15);
        let square = stack.root_sum_square().unwrap();
        assert_eq!(
            square.formula(),
            "√(square(tolerance of seat) + square(2 × tolerance of coat))"
        );
        assert!((square.value() - stack.root_sum_square_mm()).abs() < 1e-15);
    }

    #[test]
    fn nothing_to_stack() {
        let empty = Stack::default();
        assert!(empty.worst_case().is_none() && empty.root_sum_square().is_none());
        assert_eq!(
            (empty.share_inside(-0.1, 0.1), empty.share_inside(0.1, 0.2)),
            (1.0, 0.0)
        );
        let exact = Contributor::new("shim", 1.0, 0.5, Distribution::Uniform { half_mm: 0.0 });
        assert_eq!(
            Stack {
                contributors: vec![exact]
            }
            .shares(),
            [0.0]
        );
    }

    #[test]
    fn a_leaning_spread_moves_the_mean_and_not_the_worst_case() {
        let leaning = Distribution::Skewed {
            half_mm: 0.03,
            mode_mm: 0.03,
        };
        let stack = Stack {
            contributors: vec![Contributor::new("seat", -1.0, 1.0, leaning)],
        };
        assert!((stack.mean_mm() + 1.01).abs() < 1e-12);
        assert!((stack.middle_mm() + 1.0).abs() < 1e-12);
        assert!(stack.share_inside(f64::NEG_INFINITY, -1.01) > 0.49);
    }
}
