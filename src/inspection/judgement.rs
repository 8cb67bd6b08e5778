//! What the readings of one size prove: mean, uncertainty and verdict.

use thiserror::Error;

use super::doubt::Doubt;
use crate::tolerance::{Component, Conformity, DecisionRule, Limits, ReadingsError, components_of};
use crate::workshop::Instrument;

/// The rule of the sheet: the limits drawn in so far that a good size is good with 95 % likelihood (ISO 14253-1:2017,
/// by public summaries).
pub const DEFAULT_RULE: DecisionRule = DecisionRule::Likelihood(0.95);

/// Why readings were not judged.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Unjudged {
    /// None were taken.
    #[error("no readings yet")]
    NoReadings,
    /// They say nothing about their spread.
    #[error(transparent)]
    Readings(#[from] ReadingsError),
    /// The workshop does not know the instrument.
    #[error("the workshop has no instrument called \"{0}\": enter it with its permissible error")]
    NoInstrument(String),
}

/// What is known of one size; numbers in its unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// How many readings.
    pub count: usize,
    /// Their mean.
    pub mean: f64,
    /// Greatest less least.
    pub range: f64,
    /// The causes of doubt that were counted.
    pub causes: Vec<Component>,
    /// How well that is known.
    pub doubt: Doubt,
    /// By how much the limits are drawn in.
    pub guard: f64,
    /// The means that prove a good size; `None` where no reading with this instrument could.
    pub accepted: Option<Limits>,
    /// In, out, or not provable.
    pub verdict: Conformity,
}

impl Judgement {
    /// Judges a mean and a range of so many readings, known but for these causes of doubt.
    #[must_use]
    pub fn of(
        count: usize,
        (mean, range): (f64, f64),
        causes: Vec<Component>,
        limits: Limits,
        rule: DecisionRule,
    ) -> Self {
        let doubt = Doubt::of(&causes);
        let guard = rule.guard_mm(doubt.standard);
        Self {
            count,
            mean,
            range,
            causes,
            doubt,
            guard,
            accepted: limits.acceptance(guard),
            verdict: limits.judge(mean, guard),
        }
    }

    /// The verdict in words.
    #[must_use]
    pub const fn word(&self) -> &'static str {
        match (self.verdict, self.accepted) {
            (Conformity::Inside, _) => "in",
            (Conformity::Outside, _) => "OUT",
            (Conformity::NotProvable, Some(_)) => "not provable: too near a limit",
            (Conformity::NotProvable, None) => "not provable with this instrument",
        }
    }
}

/// Judges readings of one size; `besides` are further causes of uncertainty, such as the blocks it was measured over.
///
/// # Errors
/// [`Unjudged`] where there are no readings or they have no spread to speak of.
pub fn judge(
    values: &[f64],
    instrument: &Instrument,
    besides: &[Component],
    limits: Limits,
    rule: DecisionRule,
) -> Result<Judgement, Unjudged> {
    if values.is_empty() {
        return Err(Unjudged::NoReadings);
    }
    let (readings, mut causes) = components_of(values, instrument)?;
    causes.extend_from_slice(besides);
    Ok(Judgement::of(
        values.len(),
        (readings.mean, readings.range),
        causes,
        limits,
        rule,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn instrument(permissible_error_mm: f64, step_mm: f64) -> Instrument {
        Instrument {
            name: "of the tests".into(),
            permissible_error_mm,
            step_mm,
        }
    }

    const SEAT: Limits = Limits {
        low_mm: 1.44,
        high_mm: 1.48,
    };
    /// Mean 1.460, s 0.0015811.
    const FIVE: [f64; 5] = [1.458, 1.459, 1.460, 1.461, 1.462];

    /// By hand (JCGM 100): s/sqrt 5 = 0.000707, limits 0.004/sqrt 3 = 0.002309; together 0.002415 and 1.645 of it is
    /// 0.00397: accepted from 1.444 to 1.476.
    #[test]
    fn a_micrometer_proves_two_hundredths() {
        let judged = judge(&FIVE, &instrument(0.004, 0.001), &[], SEAT, DEFAULT_RULE).unwrap();
        assert!((judged.doubt.standard - 0.002_415).abs() < 1e-6);
        let zone = judged.accepted.unwrap();
        assert!((zone.low_mm - 1.443_97).abs() < 1e-5 && (zone.high_mm - 1.476_03).abs() < 1e-5);
        assert_eq!((judged.verdict, judged.word()), (Conformity::Inside, "in"));
    }

    #[test]
    fn a_caliper_proves_neither() {
        let judged = judge(&FIVE, &instrument(0.04, 0.01), &[], SEAT, DEFAULT_RULE).unwrap();
        assert_eq!(judged.accepted, None);
        assert_eq!(judged.word(), "not provable with this instrument");
        let far: Vec<f64> = FIVE.iter().map(|value| value + 0.2).collect();
        let judged = judge(&far, &instrument(0.04, 0.01), &[], SEAT, DEFAULT_RULE).unwrap();
        assert_eq!(judged.word(), "OUT");
    }

    #[test]
    fn what_cannot_be_judged_says_why() {
        let tool = instrument(0.004, 0.001);
        assert_eq!(
            judge(&[], &tool, &[], SEAT, DEFAULT_RULE),
            Err(Unjudged::NoReadings)
        );
        let one = judge(&[1.46], &tool, &[], SEAT, DEFAULT_RULE).unwrap_err();
        assert!(one.to_string().contains("at least 2"), "{one}");
    }
}
