//! What an infinity trial says of the register: a known object, and where the scale stands when it is sharp.
//!
//! Thin-lens equation (see the focus scale): the lens stands out by what its scale says and by what the ring is too
//! thick, and together that must be what the object asks for. Distances count from the image plane.

use thiserror::Error;

use super::doubt::Doubt;
use super::proposal::Measured;
use crate::optics::FocusScale;
use crate::tolerance::{Component, ReadingsError, TypeA};

/// A trial at the widest stop. Distances mm from the image plane; infinity for a star or a far ridge.
#[derive(Clone, Debug, PartialEq)]
pub struct InfinityTrial {
    /// Distance of the object.
    pub object_mm: f64,
    /// How far off that may be, either way.
    pub object_error_mm: f64,
    /// What the scale reads when the object is sharp, each time it was focused anew.
    pub scale_mm: Vec<f64>,
    /// How far off the scale may be engraved and read there, either way.
    pub scale_error_mm: f64,
    /// Half the depth of focus, mm: how far off a single setting may be without being seen. Settings that all agree
    /// have not shown their spread and are worth no more than one.
    pub half_depth_mm: Option<f64>,
}

/// Why a trial says nothing.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum TrialError {
    /// Nothing was read.
    #[error("no reading of the scale; focus several times and note each")]
    NoReadings,
    /// A distance that the lens cannot bridge.
    #[error(
        "{distance_mm} mm is nearer than this lens can focus, {least_mm:.0} mm from the image plane"
    )]
    TooNear {
        /// The distance.
        distance_mm: f64,
        /// The least distance.
        least_mm: f64,
    },
    /// A value of the lens that nobody knows.
    #[error("the {0} is unknown: measure it or read it off the lens first")]
    Lacks(String),
    /// One setting, or settings that all agree, with a depth of focus that nobody knows.
    #[error(
        "the settings show no spread, and the depth of focus that would stand for it is unknown: enter f-number and \
         sensor size, or focus several times and note each"
    )]
    NoSpread,
    /// A reading that is no number.
    #[error(transparent)]
    Readings(#[from] ReadingsError),
}

/// A trial worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct TrialWorked {
    /// How far out of its infinity place the lens must stand for the object, mm.
    pub wanted_mm: f64,
    /// How far out its scale says it stands, for each setting, mm.
    pub said_mm: Vec<f64>,
    /// The error of the register: the mean of what is wanted less what is said.
    pub error_mm: f64,
    /// The causes of doubt.
    pub causes: Vec<Component>,
}

/// Works a trial out.
///
/// # Errors
/// [`TrialError`] where nothing was read or a distance is out of reach.
pub fn worked(trial: &InfinityTrial, scale: &FocusScale) -> Result<TrialWorked, TrialError> {
    let extension = |distance_mm: f64| {
        scale.extension_mm(distance_mm).ok_or(TrialError::TooNear {
            distance_mm,
            least_mm: scale.least_distance_mm(),
        })
    };
    let wanted_mm = extension(trial.object_mm)?;
    let said_mm = trial
        .scale_mm
        .iter()
        .map(|reading| extension(*reading))
        .collect::<Result<Vec<f64>, TrialError>>()?;
    let errors: Vec<f64> = said_mm.iter().map(|said| wanted_mm - said).collect();
    let readings = TypeA::of(&errors).ok();
    let (error_mm, spread) = match (readings, errors.first()) {
        (Some(readings), _) if readings.deviation > 0.0 => (readings.mean, readings.component()),
        // Focused once, anything within the depth of focus would have looked as sharp.
        (_, Some(one)) => {
            let half_depth = trial.half_depth_mm.ok_or(TrialError::NoSpread)?;
            (*one, Component::within("depth of focus", half_depth))
        }
        (_, None) => return Err(TrialError::NoReadings),
    };
    let object = half_span(scale, trial.object_mm, trial.object_error_mm);
    let reading = trial
        .scale_mm
        .iter()
        .map(|reading| half_span(scale, *reading, trial.scale_error_mm))
        .fold(0.0, f64::max);
    let causes = vec![
        spread,
        Component::within("distance of the object", object),
        Component::within("engraving and reading of the scale", reading),
    ];
    Ok(TrialWorked {
        wanted_mm,
        said_mm,
        error_mm,
        causes,
    })
}

/// The error of the register, positive where the ring is too thick, with its uncertainty.
///
/// # Errors
/// As [`worked`].
pub fn register_error(trial: &InfinityTrial, scale: &FocusScale) -> Result<Measured, TrialError> {
    let found = worked(trial, scale)?;
    Ok(Measured {
        error_mm: found.error_mm,
        doubt: Doubt::of(&found.causes),
    })
}

/// How far the extension goes either way for a distance that may be off by `error_mm`.
fn half_span(scale: &FocusScale, distance_mm: f64, error_mm: f64) -> f64 {
    if distance_mm.is_infinite() {
        return 0.0;
    }
    let at = |distance: f64| scale.extension_mm(distance);
    match (at(distance_mm - error_mm), at(distance_mm + error_mm)) {
        (Some(near), Some(far)) => (near - far).abs() / 2.0,
        // As near as the lens goes: one side stands for both.
        (None, Some(far)) => (at(distance_mm).unwrap_or(far) - far).abs(),
        (_, None) => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn trial(object_mm: f64, scale_mm: &[f64]) -> InfinityTrial {
        InfinityTrial {
            object_mm,
            object_error_mm: 0.0,
            scale_mm: scale_mm.to_vec(),
            scale_error_mm: 0.0,
            half_depth_mm: Some(0.05),
        }
    }

    const LENS: FocusScale = FocusScale::thin(50.0);

    /// A star sharp at a mark of 50.1 m from a thin 50 mm lens: f²/(u - f) = 0.05 too thin.
    #[test]
    fn a_star_before_the_infinity_mark_is_a_thin_ring() {
        let mark = 50_050.0 + 50.05;
        let found = register_error(&trial(f64::INFINITY, &[mark, mark]), &LENS).unwrap();
        assert!((found.error_mm + 0.05).abs() < 1e-5, "{}", found.error_mm);
    }

    /// The forward formula and the trial are inverses of each other, near and far, thick and thin.
    #[test]
    fn what_the_scale_makes_sharp_is_found_again() {
        for error in [-0.2, -0.03, 0.04, 0.15] {
            for reading in [500.0, 1200.0, 5000.0] {
                let object = LENS.sharp_at_mm(reading, error).unwrap();
                let found = register_error(&trial(object, &[reading, reading]), &LENS).unwrap();
                assert!((found.error_mm - error).abs() < 1e-9, "{error} {reading}");
            }
        }
    }

    #[test]
    fn one_setting_is_worth_the_depth_of_focus_and_so_are_many_that_agree() {
        let by_hand = 0.05 / 3.0_f64.sqrt();
        for settings in [1, 5] {
            let read = trial(f64::INFINITY, &vec![f64::INFINITY; settings]);
            let found = register_error(&read, &LENS).unwrap();
            assert!((found.doubt.standard - by_hand).abs() < 1e-12);
            let blind = InfinityTrial {
                half_depth_mm: None,
                ..read
            };
            assert_eq!(register_error(&blind, &LENS), Err(TrialError::NoSpread));
        }
    }

    /// f = 50, object at 10 m give or take 0.1 m: f² Δu / u² = 0.0025 (thin lens, by hand).
    #[test]
    fn the_object_s_distance_counts_little_far_away() {
        let mut far = trial(10_000.0, &[10_000.0, 10_000.0]);
        far.object_error_mm = 100.0;
        let doubt = |read: &InfinityTrial| register_error(read, &LENS).unwrap().doubt.standard;
        let exact = doubt(&trial(10_000.0, &[10_000.0, 10_000.0]));
        let half = ((doubt(&far).powi(2) - exact.powi(2)) * 3.0).sqrt();
        assert!((half - 0.0025).abs() < 1e-4, "{half}");
    }

    #[test]
    fn out_of_reach_is_said() {
        let error = register_error(&trial(150.0, &[1000.0]), &LENS).unwrap_err();
        assert!(error.to_string().contains("200 mm"), "{error}");
        assert_eq!(
            register_error(&trial(1e5, &[]), &LENS),
            Err(TrialError::NoReadings)
        );
    }
}
