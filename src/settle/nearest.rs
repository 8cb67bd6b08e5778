//! Settling: from the present ring to the nearest one without a clash.
//!
//! The measure of a move is the sum of weight x move squared over the dimensions let go, moves in mm or degrees. The
//! method is our own, because findings tell only the worst aspect of a check and no slope: cutting planes on the
//! clashes met (see `chase`), from the present ring, the rules' ring, what the remedies lead to, and random points of a
//! fixed seed; what is found is pulled back toward the present ring along the line and by single and paired steps, and
//! random points nearer than it are tried in turn. A ring is only ever said to be without a clash after the one pure
//! function has said so of the very design that is handed back.

use std::sync::atomic::AtomicBool;

use super::contradiction::{Contradiction, contradiction};
use super::problem::{LetGo, Problem, SettleError};
use super::pull_back::pull_back;
use super::search::nearest_free;
use super::trial::Trial;
use crate::checks::{FindingKey, Severity};
use crate::document::{Design, RingKey};
use crate::evaluate::{Evaluation, evaluate};
use crate::workshop::Workshop;

/// A move less than this is none, mm or degrees.
const UNMOVED: f64 = 1e-9;

/// One dimension that moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Move {
    /// Which one.
    pub key: RingKey,
    /// Its value before, mm or degrees.
    pub from: f64,
    /// Its value after, set by hand.
    pub to: f64,
}

/// The nearest ring without a clash that was found.
#[derive(Clone, Debug)]
pub struct Settled {
    /// The design with what moved set by hand, to be put in place as one step.
    pub design: Design,
    /// What moved, in the order of the ring's dimensions; none where the present ring has no clash.
    pub moves: Vec<Move>,
    /// The sum of weight x move squared.
    pub measure: f64,
    /// The present ring.
    pub before: Evaluation,
    /// The settled one: no finding is a clash.
    pub after: Evaluation,
}

/// What came of it.
#[derive(Clone, Debug)]
pub enum Outcome {
    /// A ring was found.
    Settled(Box<Settled>),
    /// None was found, and why.
    None(Contradiction),
}

/// Looks for the nearest ring without a clash that moves only what was let go. Work is shared among the cores;
/// `progress` is called with the share done, from any thread.
///
/// # Errors
/// [`SettleError`]: nothing or nonsense let go, a ring that is not whole, or called off.
pub fn settle(
    design: &Design,
    workshop: &Workshop,
    let_go: &[LetGo],
    cancel: &AtomicBool,
    progress: impl Fn(f64) + Sync,
) -> Result<Outcome, SettleError> {
    let nothing_aside: &[FindingKey] = &[];
    let trial = Trial {
        design,
        workshop,
        aside: nothing_aside,
    };
    let problem = Problem::new(trial, let_go.to_vec(), cancel)?;
    let before = evaluate(design, workshop);
    if before.count(Severity::Clash) == 0 {
        progress(1.0);
        return Ok(Outcome::Settled(Box::new(Settled {
            design: design.clone(),
            moves: Vec::new(),
            measure: 0.0,
            after: before.clone(),
            before,
        })));
    }
    let found = match nearest_free(&problem, &|share| progress(share))? {
        Some(at) => settled(&problem, &at, &before),
        None => None,
    };
    if let Some(settled) = found {
        return Ok(Outcome::Settled(Box::new(settled)));
    }
    let (why, overlooked) = contradiction(&problem, &progress)?;
    let after_all = match overlooked {
        Some(at) => settled(&problem, &pull_back(&problem, at)?, &before),
        None => None,
    };
    Ok(match after_all {
        Some(settled) => Outcome::Settled(Box::new(settled)),
        None => Outcome::None(why),
    })
}

/// The design handed back. What did not move is left as it was stated, unless its rule would then move it.
fn settled(problem: &Problem, at: &[f64], before: &Evaluation) -> Option<Settled> {
    let goal = problem.sizes(at);
    let has_moved = |((_, to), from): &((RingKey, f64), f64)| (to - from).abs() > UNMOVED;
    let mut moves: Vec<Move> = goal
        .iter()
        .copied()
        .zip(problem.start.iter().copied())
        .filter(has_moved)
        .map(|((key, to), from)| Move { key, from, to })
        .collect();
    moves.sort_by_key(|one| one.key);
    let mut sizes: Vec<(RingKey, f64)> = moves.iter().map(|one| (one.key, one.to)).collect();
    // Each pass sets at least one more dimension, or ends.
    for _ in 0..=goal.len() {
        let design = problem.trial.with(&sizes);
        let after = evaluate(&design, problem.trial.workshop);
        let strays = |(key, to): &&(RingKey, f64)| {
            let value = after
                .derivation
                .dimension(*key)
                .and_then(|state| state.value);
            value.is_none_or(|value| (value - to).abs() > UNMOVED)
        };
        let straying: Vec<(RingKey, f64)> = goal.iter().filter(strays).copied().collect();
        if straying.is_empty() {
            return (after.count(Severity::Clash) == 0).then(|| Settled {
                measure: problem.measure(at),
                moves,
                before: before.clone(),
                design,
                after,
            });
        }
        sizes.extend(straying);
    }
    None
}

#[cfg(test)]
#[path = "nearest_tests.rs"]
mod tests;
