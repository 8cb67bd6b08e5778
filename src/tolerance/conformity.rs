//! Whether a measured size is proved to lie inside its limits, or outside, or neither (ISO 14253-1).
//!
//! The text of the standard was not read, only public summaries of it: the 1998 edition draws the limits in by the
//! expanded uncertainty, the 2017 edition by what makes conformity 95 % likely.

use super::normal::normal_quantile;

/// Lower and upper limit of a size, mm; either may be infinite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// The least size allowed, mm.
    pub low_mm: f64,
    /// The greatest size allowed, mm.
    pub high_mm: f64,
}

/// By how much the limits are drawn in before a size counts as good.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DecisionRule {
    /// Not at all: the reading is taken for the size.
    Simple,
    /// By the expanded uncertainty with this factor, usually 2.
    Expanded(f64),
    /// So far that the size conforms with at least this likelihood, usually 0.95; one limit at a time, normal.
    Likelihood(f64),
}

impl DecisionRule {
    /// The guard band for a combined standard uncertainty, mm.
    #[must_use]
    pub fn guard_mm(self, standard_uncertainty_mm: f64) -> f64 {
        match self {
            Self::Simple => 0.0,
            Self::Expanded(factor) => factor * standard_uncertainty_mm,
            Self::Likelihood(share) => normal_quantile(share) * standard_uncertainty_mm,
        }
    }
}

/// What a reading proves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Conformity {
    /// Proved inside the limits.
    Inside,
    /// Proved outside the limits.
    Outside,
    /// Too near a limit for this instrument.
    NotProvable,
}

impl Limits {
    /// The sizes that prove conformity with the limits drawn in by `guard_mm`; `None` where the guard bands
    /// meet and no reading with this instrument can prove it.
    #[must_use]
    pub fn acceptance(&self, guard_mm: f64) -> Option<Self> {
        let drawn_in = Self {
            low_mm: self.low_mm + guard_mm,
            high_mm: self.high_mm - guard_mm,
        };
        (drawn_in.low_mm <= drawn_in.high_mm).then_some(drawn_in)
    }

    /// What a measured size proves with a guard band.
    #[must_use]
    pub fn judge(&self, size_mm: f64, guard_mm: f64) -> Conformity {
        let is_inside = self
            .acceptance(guard_mm)
            .is_some_and(|zone| size_mm >= zone.low_mm && size_mm <= zone.high_mm);
        if is_inside {
            Conformity::Inside
        } else if size_mm < self.low_mm - guard_mm || size_mm > self.high_mm + guard_mm {
            Conformity::Outside
        } else {
            Conformity::NotProvable
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEAT: Limits = Limits {
        low_mm: 1.44,
        high_mm: 1.48,
    };

    #[test]
    fn three_answers() {
        for (size, answer) in [
            (1.46, Conformity::Inside),
            (1.475, Conformity::Inside),
            (1.477, Conformity::NotProvable),
            (1.483, Conformity::NotProvable),
            (1.4851, Conformity::Outside),
            (1.43, Conformity::Outside),
            (1.437, Conformity::NotProvable),
            (f64::NAN, Conformity::NotProvable),
        ] {
            assert_eq!(SEAT.judge(size, 0.005), answer, "{size}");
        }
    }

    #[test]
    fn a_caliper_cannot_prove_two_hundredths() {
        assert_eq!(SEAT.acceptance(0.025), None);
        assert_eq!(SEAT.judge(1.46, 0.025), Conformity::NotProvable);
        assert_eq!(
            SEAT.judge(1.46, DecisionRule::Simple.guard_mm(0.0124)),
            Conformity::Inside
        );
    }

    #[test]
    fn one_limit_alone() {
        let at_most = Limits {
            low_mm: f64::NEG_INFINITY,
            high_mm: 1.48,
        };
        assert_eq!(at_most.judge(-5.0, 0.01), Conformity::Inside);
        assert_eq!(at_most.judge(1.5, 0.01), Conformity::Outside);
    }
}
