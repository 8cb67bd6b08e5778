//! What is to be settled: which dimensions may move, how far, and what a move costs.

use std::sync::atomic::AtomicBool;

use thiserror::Error;

use super::cancelled::{Cancelled, go_on};
use super::level::Level;
use super::reading::Reading;
use super::trial::Trial;
use crate::document::{FieldRef, RingKey};
use crate::ring::derive;

/// A dimension that was let go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LetGo {
    /// Which one.
    pub key: RingKey,
    /// Least value it may take, mm or degrees.
    pub low: f64,
    /// Greatest value it may take, mm or degrees.
    pub high: f64,
    /// What its move costs beside others: the measure of a move is the sum of weight x move squared, moves in mm or
    /// degrees from the present value.
    pub weight: f64,
}

impl LetGo {
    /// Over all that the dimension may be, with weight 1.
    #[must_use]
    pub const fn over_its_range(key: RingKey) -> Self {
        let (low, high) = key.range();
        Self::between(key, low, high)
    }

    /// Between two values, with weight 1.
    #[must_use]
    pub const fn between(key: RingKey, low: f64, high: f64) -> Self {
        Self {
            key,
            low,
            high,
            weight: 1.0,
        }
    }
}

/// Why nothing could be settled.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SettleError {
    /// Called off.
    #[error(transparent)]
    Cancelled(#[from] Cancelled),
    /// No dimension may move.
    #[error("no dimension was let go: name at least one that may move")]
    NothingLetGo,
    /// A dimension was named twice.
    #[error("{} was let go twice: name it once, with the bounds that are meant", .0.label().to_lowercase())]
    Twice(RingKey),
    /// Bounds that no value can keep.
    #[error("{} cannot move from {} to {}: give the lesser first, between {} and {}", key.label().to_lowercase(), key.unit().show(*low), key.unit().show(*high), key.unit().show(key.range().0), key.unit().show(key.range().1))]
    Bounds {
        /// The dimension.
        key: RingKey,
        /// Lower bound as given.
        low: f64,
        /// Upper bound as given.
        high: f64,
    },
    /// A weight that is none.
    #[error("the weight of {} is {weight}: give a number from 0.001 to 1000", key.label().to_lowercase())]
    Weight {
        /// The dimension.
        key: RingKey,
        /// The weight as given.
        weight: f64,
    },
    /// The ring is not whole.
    #[error("the ring is not whole, so there is nothing to start from: measure {} first", list(.0))]
    Lacking(Vec<FieldRef>),
}

fn list(fields: &[FieldRef]) -> String {
    let names: Vec<String> = fields.iter().map(|field| field.long_label()).collect();
    names.join(", ")
}

/// A design, what may move in it, and where it starts.
#[derive(Clone, Debug)]
pub(super) struct Problem<'a> {
    pub(super) trial: Trial<'a>,
    pub(super) let_go: Vec<LetGo>,
    /// Present values, in the order of `let_go`. They may lie outside the bounds.
    pub(super) start: Vec<f64>,
    /// The same by rule.
    pub(super) by_rule: Vec<Option<f64>>,
    pub(super) cancel: &'a AtomicBool,
}

impl<'a> Problem<'a> {
    pub(super) fn new(
        trial: Trial<'a>,
        let_go: Vec<LetGo>,
        cancel: &'a AtomicBool,
    ) -> Result<Self, SettleError> {
        check(&let_go)?;
        let derivation = derive(trial.design, trial.workshop);
        let state = |one: &LetGo| derivation.dimension(one.key);
        let start = let_go
            .iter()
            .map(|one| state(one).and_then(|state| state.value))
            .collect::<Option<Vec<f64>>>();
        let Some(start) = start.filter(|_| derivation.missing.is_empty()) else {
            return Err(SettleError::Lacking(derivation.missing));
        };
        let by_rule = let_go
            .iter()
            .map(|one| state(one).and_then(|state| state.by_rule))
            .collect();
        Ok(Self {
            trial,
            let_go,
            start,
            by_rule,
            cancel,
        })
    }

    /// The dimensions at these values.
    pub(super) fn sizes(&self, at: &[f64]) -> Vec<(RingKey, f64)> {
        let keys = self.let_go.iter().map(|one| one.key);
        keys.zip(at.iter().copied()).collect()
    }

    pub(super) fn read(&self, at: &[f64]) -> Result<Reading, Cancelled> {
        go_on(self.cancel)?;
        Ok(self.trial.read(&self.sizes(at)))
    }

    pub(super) fn is_free(&self, at: &[f64]) -> Result<bool, Cancelled> {
        Ok(self.read(at)?.level > Level::Clash)
    }

    /// The sum of weight x move squared.
    pub(super) fn measure(&self, at: &[f64]) -> f64 {
        let moves = self.let_go.iter().zip(&self.start).zip(at);
        moves
            .map(|((one, start), at)| one.weight * (at - start) * (at - start))
            .sum()
    }

    /// The nearest values inside the bounds.
    pub(super) fn inside(&self, at: &[f64]) -> Vec<f64> {
        let bounds = self.let_go.iter().zip(at);
        bounds
            .map(|(one, at)| at.clamp(one.low, one.high))
            .collect()
    }
}

fn check(let_go: &[LetGo]) -> Result<(), SettleError> {
    if let_go.is_empty() {
        return Err(SettleError::NothingLetGo);
    }
    for (index, one) in let_go.iter().enumerate() {
        let (key, low, high) = (one.key, one.low, one.high);
        let (least, greatest) = key.range();
        // NaN fails the comparisons, as it should.
        if !(low >= least && high <= greatest && low <= high) {
            return Err(SettleError::Bounds { key, low, high });
        }
        if !(one.weight >= 0.001 && one.weight <= 1000.0) {
            let weight = one.weight;
            return Err(SettleError::Weight { key, weight });
        }
        if let_go.iter().take(index).any(|before| before.key == key) {
            return Err(SettleError::Twice(key));
        }
    }
    Ok(())
}
