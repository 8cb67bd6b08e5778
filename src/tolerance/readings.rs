//! What readings of one size are worth: standard uncertainty, combined, expanded.

use std::borrow::Cow;

use thiserror::Error;

use super::student::student_factor;
use crate::workshop::Instrument;

/// Why readings say nothing about their own spread.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum ReadingsError {
    /// Fewer than two.
    #[error(
        "{count} reading says nothing about its spread; take at least 2, better 5, at places round the ring"
    )]
    TooFew {
        /// How many there are.
        count: usize,
    },
    /// One is no number.
    #[error("a reading is {value}; type the number that the instrument showed")]
    NoNumber {
        /// The reading.
        value: f64,
    },
}

/// Repeated readings of one size (type A evaluation, JCGM 100 4.2).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TypeA {
    /// Their mean.
    pub mean: f64,
    /// Standard deviation of one reading, `√ Σ (q - mean)² / (n - 1)`.
    pub deviation: f64,
    /// Standard uncertainty of the mean, `s / √n`.
    pub standard_uncertainty: f64,
    /// Degrees of freedom, `n - 1`.
    pub dof: f64,
    /// Greatest less least: of a face, its parallelism.
    pub range: f64,
}

impl TypeA {
    /// Mean and spread of `readings`, in their unit.
    ///
    /// # Errors
    /// [`ReadingsError`] for fewer than two readings, or one that is no number.
    pub fn of(readings: &[f64]) -> Result<Self, ReadingsError> {
        if let Some(value) = readings
            .iter()
            .copied()
            .find(|reading| !reading.is_finite())
        {
            return Err(ReadingsError::NoNumber { value });
        }
        if readings.len() < 2 {
            return Err(ReadingsError::TooFew {
                count: readings.len(),
            });
        }
        // One by one: a sum of ones is exact.
        let count = readings.iter().map(|_| 1.0).sum::<f64>();
        let mean = readings.iter().sum::<f64>() / count;
        let squares = readings
            .iter()
            .map(|reading| (reading - mean).powi(2))
            .sum::<f64>();
        let deviation = (squares / (count - 1.0)).sqrt();
        let greatest = readings.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let least = readings.iter().copied().fold(f64::INFINITY, f64::min);
        Ok(Self {
            mean,
            deviation,
            standard_uncertainty: deviation / count.sqrt(),
            dof: count - 1.0,
            range: greatest - least,
        })
    }

    /// How uncertain the standard deviation itself is, as a share of it: `1 / √(2 (n - 1))` (JCGM 100 E.4.3).
    #[must_use]
    pub fn doubt_of_deviation(&self) -> f64 {
        (2.0 * self.dof).sqrt().recip()
    }

    /// Its part in a combined uncertainty.
    #[must_use]
    pub const fn component(&self) -> Component {
        Component {
            name: Cow::Borrowed("spread of the readings"),
            sensitivity: 1.0,
            standard_uncertainty: self.standard_uncertainty,
            dof: self.dof,
        }
    }
}

/// Standard uncertainty of a value that lies anywhere within `half` either way: `a / √3` (JCGM 100 4.3.7).
#[must_use]
pub fn rectangular(half: f64) -> f64 {
    half / 3.0_f64.sqrt()
}

/// Standard uncertainty of a display with steps of `step`: `q / (2 √3)` (JCGM 100 F.2.2.1).
#[must_use]
pub fn of_resolution(step: f64) -> f64 {
    rectangular(step / 2.0)
}

/// The name of the cause that is the step of the instrument's display.
pub const STEP_CAUSE: &str = "step of the instrument";
/// The name of the cause that is the instrument's permissible error.
pub const ERROR_CAUSE: &str = "permissible error of the instrument";

/// One cause of uncertainty.
#[derive(Clone, Debug, PartialEq)]
pub struct Component {
    /// Its name.
    pub name: Cow<'static, str>,
    /// What one unit of it does to the result.
    pub sensitivity: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty: f64,
    /// Its degrees of freedom; infinite where its limits are taken for certain.
    pub dof: f64,
}

impl Component {
    /// A cause that is known by its limits alone (type B), `half` either way.
    pub fn within(name: impl Into<Cow<'static, str>>, half: f64) -> Self {
        let standard_uncertainty = rectangular(half);
        Self {
            name: name.into(),
            sensitivity: 1.0,
            standard_uncertainty,
            dof: f64::INFINITY,
        }
    }

    fn effect(&self) -> f64 {
        self.sensitivity * self.standard_uncertainty
    }
}

/// How far an expanded uncertainty reaches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Coverage {
    /// A fixed factor on the combined uncertainty, usually 2.
    Factor(f64),
    /// As far as holds this share, 0 to 1, by Student's t.
    Share(f64),
}

/// Several causes taken together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Combined {
    /// The combined standard uncertainty, `√ Σ (c u)²`.
    pub standard_uncertainty: f64,
    /// Effective degrees of freedom (Welch-Satterthwaite, JCGM 100 G.4.1); infinite where no cause has few.
    pub dof: f64,
}

impl Combined {
    /// The factor on the standard uncertainty.
    #[must_use]
    pub fn factor(&self, coverage: Coverage) -> f64 {
        match coverage {
            Coverage::Factor(factor) => factor,
            Coverage::Share(share) => student_factor(share, self.dof),
        }
    }

    /// The expanded uncertainty, either way of the result.
    #[must_use]
    pub fn expanded(&self, coverage: Coverage) -> f64 {
        self.factor(coverage) * self.standard_uncertainty
    }
}

/// Combines independent causes (JCGM 100 5.1.2 and G.4.1).
#[must_use]
pub fn combine(components: &[Component]) -> Combined {
    let variance = components
        .iter()
        .map(|one| one.effect().powi(2))
        .sum::<f64>();
    let shared = components
        .iter()
        .map(|one| one.effect().powi(4) / one.dof)
        .sum::<f64>();
    let dof = if shared > 0.0 {
        variance * variance / shared
    } else {
        f64::INFINITY
    };
    Combined {
        standard_uncertainty: variance.sqrt(),
        dof,
    }
}

/// The causes in a size read with `instrument`, mm: the spread of the readings, or the step of the display where
/// that is more (readings that agree to the step have not shown their spread), and the permissible error of the
/// instrument. Common practice, no source.
///
/// # Errors
/// [`ReadingsError`] where the readings have no spread to speak of.
pub fn components_of(
    readings_mm: &[f64],
    instrument: &Instrument,
) -> Result<(TypeA, Vec<Component>), ReadingsError> {
    let readings = TypeA::of(readings_mm)?;
    let step = Component::within(STEP_CAUSE, instrument.step_mm / 2.0);
    let spread = readings.component();
    let finest = if spread.standard_uncertainty >= step.standard_uncertainty {
        spread
    } else {
        step
    };
    let limit = Component::within(ERROR_CAUSE, instrument.permissible_error_mm);
    Ok((readings, vec![finest, limit]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn readings_that_say_nothing_are_refused() {
        assert_eq!(
            TypeA::of(&[]).unwrap_err(),
            ReadingsError::TooFew { count: 0 }
        );
        assert_eq!(
            TypeA::of(&[1.0]).unwrap_err(),
            ReadingsError::TooFew { count: 1 }
        );
        let error = TypeA::of(&[1.0, f64::NAN]).unwrap_err().to_string();
        assert!(error.contains("NaN"), "{error}");
        assert!(TypeA::of(&[1.0, f64::INFINITY]).is_err());
    }

    /// Five readings of an invented seat, worked by hand: mean 1.460, s = 0.00158.
    #[test]
    fn readings_of_a_seat() {
        let seat = TypeA::of(&[1.458, 1.459, 1.460, 1.461, 1.462]).unwrap();
        assert!((seat.mean - 1.460).abs() < 1e-12);
        assert!((seat.deviation - 0.001_581).abs() < 1e-6);
        assert!((seat.range - 0.004).abs() < 1e-12);
        assert!((seat.dof - 4.0).abs() < 1e-12);
    }

    #[test]
    fn readings_that_all_agree_are_worth_the_step() {
        let instrument = Instrument {
            name: "depth micrometer".into(),
            permissible_error_mm: 0.005,
            step_mm: 0.01,
        };
        let (seat, causes) = components_of(&[1.46, 1.46, 1.46], &instrument).unwrap();
        assert!(seat.deviation <= 0.0);
        assert_eq!(causes[0].name, "step of the instrument");
        let together = combine(&causes);
        let by_hand = (0.005_f64.powi(2) / 3.0 + 0.005_f64.powi(2) / 3.0).sqrt();
        assert!((together.standard_uncertainty - by_hand).abs() < 1e-15);
        assert!(together.dof.is_infinite());
        let (_, causes) = components_of(&[1.42, 1.46, 1.50], &instrument).unwrap();
        assert_eq!(causes[0].name, "spread of the readings");
    }

    #[test]
    fn no_cause_no_uncertainty() {
        let none = combine(&[]);
        assert_eq!((none.standard_uncertainty, none.dof), (0.0, f64::INFINITY));
        assert!(none.expanded(Coverage::Share(0.95)) <= 0.0);
    }
}
