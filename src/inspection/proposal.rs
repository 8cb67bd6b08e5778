//! From a measured error of the register to a skim, a shim, or nothing; and what is then to be expected.

use super::doubt::Doubt;
use crate::tolerance::{Component, Conformity, Limits};

/// The thinnest shim and the step of shims, mm; common practice, no source.
const SHIM_STEP_MM: f64 = 0.01;

/// An error of the register, positive where the ring is too thick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// The error, mm.
    pub error_mm: f64,
    /// How well it is known.
    pub doubt: Doubt,
}

/// What to do.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// Nothing: it is inside its limits, or what is off is less than a shim.
    Leave,
    /// Measure better first: it is not proved inside, and what was found is less than its own uncertainty.
    MeasureAgain,
    /// Take so much off the seat, mm.
    Skim(f64),
    /// Lay a shim so thick on the seat, mm.
    Shim(f64),
    /// Make it again: the correction would bring these clashes.
    Remake(String),
}

/// What was really done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Done {
    /// So much was taken off the seat, mm.
    Skimmed(f64),
    /// A shim so thick was laid on it, mm.
    Shimmed(f64),
    /// The ring was made again.
    MadeAgain,
}

impl Done {
    /// Taken off the seat, mm; negative for a shim.
    #[must_use]
    pub const fn skim_mm(self) -> f64 {
        match self {
            Self::Skimmed(depth) => depth,
            Self::Shimmed(thickness) => -thickness,
            Self::MadeAgain => 0.0,
        }
    }
}

/// What to do, and what is then to be expected.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// What to do.
    pub action: Action,
    /// The error that is to be expected then, mm.
    pub expected_mm: f64,
    /// How well that is known: the measurement and the cut together.
    pub doubt: Doubt,
}

impl Proposal {
    /// Taken off the seat, mm; negative for a shim.
    #[must_use]
    pub fn skim_mm(&self) -> f64 {
        match &self.action {
            Action::Leave | Action::MeasureAgain | Action::Remake(_) => 0.0,
            Action::Skim(depth) => *depth,
            Action::Shim(thickness) => -thickness,
        }
    }
}

/// Proposes a correction of an error that is allowed within `limits`, when a skim or a shim comes out within
/// `cut_error_mm` either way.
///
/// What is proved inside, by `guard_mm`, is left. What is not, is brought to the nominal; but where it was not proved
/// outside either and the error is less than its own expanded uncertainty, nothing is cut on the strength of it.
#[must_use]
pub fn propose(measured: Measured, limits: Limits, guard_mm: f64, cut_error_mm: f64) -> Proposal {
    let error = measured.error_mm;
    let leave = Proposal {
        action: Action::Leave,
        expected_mm: error,
        doubt: measured.doubt,
    };
    match limits.judge(error, guard_mm) {
        Conformity::Inside => return leave,
        Conformity::NotProvable if error.abs() <= measured.doubt.expanded => {
            return Proposal {
                action: Action::MeasureAgain,
                ..leave
            };
        }
        Conformity::Outside | Conformity::NotProvable => {}
    }
    let shim = (-error / SHIM_STEP_MM).round() * SHIM_STEP_MM;
    let (action, expected_mm) = if error > 0.0 {
        (Action::Skim(error), 0.0)
    } else if shim > 0.0 {
        (Action::Shim(shim), error + shim)
    } else {
        return leave;
    };
    let cut = Component::within("depth of the cut", cut_error_mm);
    Proposal {
        action,
        expected_mm,
        doubt: measured.doubt.and(cut),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LIMITS: Limits = Limits {
        low_mm: -0.02,
        high_mm: 0.02,
    };

    fn measured(error_mm: f64) -> Measured {
        Measured {
            error_mm,
            doubt: Doubt {
                standard: 0.002,
                expanded: 0.004,
            },
        }
    }

    #[test]
    fn thick_is_skimmed_thin_is_shimmed_good_is_left() {
        let action = |error| propose(measured(error), LIMITS, 0.004, 0.005).action;
        assert_eq!(action(0.01), Action::Leave);
        assert_eq!(action(0.05), Action::Skim(0.05));
        assert_eq!(action(0.018), Action::Skim(0.018));
        let shimmed = propose(measured(-0.053), LIMITS, 0.004, 0.005);
        assert!((shimmed.skim_mm() + 0.05).abs() < 1e-12);
        assert!((shimmed.expected_mm + 0.003).abs() < 1e-12);
        // 0.002² + 0.005²/3.
        let by_hand = (0.002_f64.powi(2) + 0.005_f64.powi(2) / 3.0).sqrt();
        assert!((shimmed.doubt.standard - by_hand).abs() < 1e-12);
    }

    #[test]
    fn nothing_is_cut_on_the_strength_of_a_rough_reading() {
        let rough = Measured {
            error_mm: 0.015,
            doubt: Doubt {
                standard: 0.012,
                expanded: 0.024,
            },
        };
        let proposal = propose(rough, LIMITS, 0.02, 0.005);
        assert_eq!(proposal.action, Action::MeasureAgain);
        assert!(proposal.skim_mm().abs() < 1e-15);
        let far = Measured {
            error_mm: 0.2,
            ..rough
        };
        assert_eq!(propose(far, LIMITS, 0.02, 0.005).action, Action::Skim(0.2));
    }

    #[test]
    fn less_than_a_shim_is_left() {
        let tight = Limits {
            low_mm: -0.001,
            high_mm: 0.001,
        };
        assert_eq!(
            propose(measured(-0.0045), tight, 0.0, 0.005).action,
            Action::Leave
        );
    }
}
