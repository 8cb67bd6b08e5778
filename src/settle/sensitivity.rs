//! What a tenth of a millimetre on one dimension does to the margin of each finding.

use std::sync::atomic::AtomicBool;

use rayon::prelude::*;

use super::cancelled::{Cancelled, go_on};
use super::reading::{Judged, Mark, Reading};
use super::trial::Trial;
use crate::checks::FindingKey;
use crate::document::{Design, RingKey};
use crate::mount::Unit;
use crate::ring::derive;
use crate::workshop::Workshop;

/// The step either way, mm or degrees: far above the micrometre to which some gaps are rounded.
const STEP: f64 = 0.02;
/// A slope this near to another is the same: what rounding to a micrometre leaves open, and some bend.
const SAME: f64 = 0.06;
/// Slopes less than this are none, in the unit of the margin for each mm or degree.
const NOTHING: f64 = 1e-6;

/// How the slope was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// By the central difference; the same to either side.
    Smooth,
    /// A kink: another slope downward than upward, in the unit of the margin for each mm or degree.
    Kink {
        /// Slope below the present value.
        below: f64,
        /// Slope above the present value.
        above: f64,
    },
    /// From below alone: above, the check judges something else, or there is no ring.
    BelowOnly,
    /// From above alone: below, the check judges something else, or there is no ring.
    AboveOnly,
}

/// What one dimension does to one margin.
#[derive(Clone, Debug, PartialEq)]
pub struct Sensitivity {
    /// The dimension.
    pub dimension: RingKey,
    /// The finding.
    pub finding: FindingKey,
    /// Unit of the margin.
    pub unit: Unit,
    /// Change of the margin for each mm or degree more of the dimension; positive gains. At a kink the mean.
    pub slope: f64,
    /// The same as a share of the limit, by which findings of different units compare.
    pub share_slope: f64,
    /// How it was found.
    pub kind: Kind,
}

impl Sensitivity {
    /// What `step` more of the dimension, mm or degrees, adds to the margin, by the slope.
    #[must_use]
    pub fn gain(&self, step: f64) -> f64 {
        self.slope * step
    }
}

/// Every margin that a dimension moves, strongest first by its share of the limit.
///
/// # Errors
/// [`Cancelled`] when `cancel` was set before the end.
pub fn sensitivities(
    design: &Design,
    workshop: &Workshop,
    cancel: &AtomicBool,
) -> Result<Vec<Sensitivity>, Cancelled> {
    let trial = Trial {
        design,
        workshop,
        aside: &[],
    };
    let now = trial.read(&[]);
    let derivation = derive(design, workshop);
    let found = RingKey::ALL
        .par_iter()
        .map(|key| {
            go_on(cancel)?;
            let value = derivation.dimension(*key).and_then(|state| state.value);
            Ok(value.map_or_else(Vec::new, |value| of_dimension(trial, *key, value, &now)))
        })
        .collect::<Result<Vec<_>, _>>()?;
    let mut all: Vec<Sensitivity> = found.into_iter().flatten().collect();
    all.sort_by(|a, b| {
        let strength = b.share_slope.abs().total_cmp(&a.share_slope.abs());
        strength.then((a.dimension, a.finding).cmp(&(b.dimension, b.finding)))
    });
    Ok(all)
}

fn of_dimension(trial: Trial<'_>, key: RingKey, value: f64, now: &Reading) -> Vec<Sensitivity> {
    // Set where it stands: a neighbour that follows a rule then follows from the same starting point.
    let [below, here, above] = [-STEP, 0.0, STEP].map(|step| trial.read(&[(key, value + step)]));
    here.marks
        .iter()
        .filter(|mark| now.like(mark).is_some())
        .filter_map(|mark| of_margin(key, mark, below.like(mark), above.like(mark)))
        .collect()
}

fn of_margin(
    dimension: RingKey,
    here: &Mark,
    below: Option<&Mark>,
    above: Option<&Mark>,
) -> Option<Sensitivity> {
    let judged = here.judged?;
    let slope_to = |other: Option<&Mark>| {
        let change = change(judged, other?.judged?)?;
        Some(change / STEP)
    };
    let (slope, kind) = match (slope_to(below).map(|slope| -slope), slope_to(above)) {
        (Some(below), Some(above)) => {
            let tolerance = SAME * below.abs().max(above.abs()) + NOTHING;
            let kind = if (below - above).abs() <= tolerance {
                Kind::Smooth
            } else {
                Kind::Kink { below, above }
            };
            (f64::midpoint(below, above), kind)
        }
        (Some(below), None) => (below, Kind::BelowOnly),
        (None, Some(above)) => (above, Kind::AboveOnly),
        (None, None) => return None,
    };
    let moves = match kind {
        Kind::Kink { .. } => true,
        Kind::Smooth | Kind::BelowOnly | Kind::AboveOnly => slope.abs() > NOTHING,
    };
    let scale = scale_of(judged);
    moves.then_some(Sensitivity {
        dimension,
        finding: here.key,
        unit: here.unit,
        slope,
        share_slope: slope / scale,
        kind,
    })
}

/// What a share of 1 is, in the unit of the margin.
fn scale_of(judged: Judged) -> f64 {
    if judged.limit.abs() > NOTHING {
        judged.limit.abs()
    } else if judged.share.abs() > 0.0 {
        judged.margin / judged.share
    } else {
        1.0
    }
}

/// Change of the margin from one to the other. Where the limit changed as well, from clash to caution, by the value.
fn change(from: Judged, to: Judged) -> Option<f64> {
    // Exact on purpose: a limit is a setting, the same number or another one.
    if from.limit.to_bits() == to.limit.to_bits() {
        return Some(to.margin - from.margin);
    }
    let better = from.better().or_else(|| to.better())?;
    Some(better * (to.value - from.value))
}

#[cfg(test)]
#[path = "sensitivity_tests.rs"]
mod tests;
