//! A value from its readings: mean, and the uncertainty of spread and instrument together.

use super::readings::{
    Combined, Component, ERROR_CAUSE, STEP_CAUSE, TypeA, combine, components_of,
};
use crate::mount::{Known, Origin};
use crate::workshop::Instrument;

/// What readings of one value come to.
#[derive(Clone, Debug, PartialEq)]
pub struct Measurement {
    /// The mean, in the unit of the readings.
    pub mean: f64,
    /// The spread, where there are at least two readings.
    pub spread: Option<TypeA>,
    /// The causes of uncertainty that were counted.
    pub components: Vec<Component>,
    /// All causes together.
    pub combined: Combined,
}

impl Measurement {
    /// Works readings of one value, with the instrument's permissible error and step in the unit of the readings.
    /// One reading has no spread: the instrument alone counts. Without an instrument the spread alone counts.
    ///
    /// `None` without a reading, or where one is no number.
    #[must_use]
    pub fn of(readings: &[f64], instrument: Option<&Instrument>) -> Option<Self> {
        if readings.is_empty() || readings.iter().any(|reading| !reading.is_finite()) {
            return None;
        }
        let spread = TypeA::of(readings).ok();
        let components = match (instrument, &spread) {
            (Some(instrument), _) => components_of(readings, instrument)
                .map_or_else(|_| alone(instrument), |(_, components)| components),
            (None, Some(spread)) => vec![spread.component()],
            (None, None) => Vec::new(),
        };
        // One by one: a sum of ones is exact.
        let count = readings.iter().map(|_| 1.0).sum::<f64>();
        Some(Self {
            mean: readings.iter().sum::<f64>() / count,
            spread,
            combined: combine(&components),
            components,
        })
    }

    /// The value as a mounted part keeps it: the mean with its combined standard uncertainty, readings and
    /// instrument beside it.
    #[must_use]
    pub fn known(&self, readings: Vec<f64>, instrument: String) -> Known<f64> {
        Known {
            value: self.mean,
            uncertainty: self.combined.standard_uncertainty,
            origin: Origin::Measured {
                readings,
                instrument,
            },
        }
    }
}

/// What the instrument alone makes uncertain.
fn alone(instrument: &Instrument) -> Vec<Component> {
    vec![
        Component::within(STEP_CAUSE, instrument.step_mm / 2.0),
        Component::within(ERROR_CAUSE, instrument.permissible_error_mm),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gauge() -> Instrument {
        Instrument {
            name: "depth micrometer".to_owned(),
            permissible_error_mm: 0.005,
            step_mm: 0.01,
        }
    }

    /// Worked by hand with the formulas of JCGM 100 4.2 and 4.3.7: s of 17.51, 17.53, 17.55 is 0.02, u = 0.02 / √3;
    /// the instrument adds 0.005 / √3.
    #[test]
    fn spread_and_instrument_add_as_squares() {
        let measured = Measurement::of(&[17.51, 17.53, 17.55], Some(&gauge())).unwrap();
        assert!((measured.mean - 17.53).abs() < 1e-12);
        let by_hand = ((0.02_f64.powi(2) + 0.005_f64.powi(2)) / 3.0).sqrt();
        assert!((measured.combined.standard_uncertainty - by_hand).abs() < 1e-12);
        assert!(
            (measured.spread.unwrap().standard_uncertainty - 0.02 / 3.0_f64.sqrt()).abs() < 1e-12
        );
    }

    #[test]
    fn one_reading_is_worth_what_the_instrument_is() {
        let measured = Measurement::of(&[4.0], Some(&gauge())).unwrap();
        let by_hand = ((0.005_f64.powi(2) + 0.005_f64.powi(2)) / 3.0).sqrt();
        assert!((measured.combined.standard_uncertainty - by_hand).abs() < 1e-15);
        assert!(measured.spread.is_none());
        let bare = Measurement::of(&[4.0], None).unwrap();
        assert!(bare.components.is_empty() && bare.combined.standard_uncertainty <= 0.0);
    }

    #[test]
    fn no_reading_no_value() {
        assert_eq!(Measurement::of(&[], Some(&gauge())), None);
        assert_eq!(Measurement::of(&[1.0, f64::NAN], None), None);
    }

    #[test]
    fn the_readings_stay_beside_the_value() {
        let readings = vec![1.0, 1.2];
        let known = Measurement::of(&readings, None)
            .unwrap()
            .known(readings.clone(), "rule".to_owned());
        assert!((known.value - 1.1).abs() < 1e-12 && (known.uncertainty - 0.1).abs() < 1e-12);
        assert_eq!(
            known.origin,
            Origin::Measured {
                readings,
                instrument: "rule".to_owned()
            }
        );
    }
}
