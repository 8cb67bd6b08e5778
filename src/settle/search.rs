//! The search: many starts, one after the other until a ring without a clash is found, then all that could be nearer.

use rayon::prelude::*;

use super::cancelled::Cancelled;
use super::chase::chase;
use super::descend::descend;
use super::problem::Problem;
use super::pull_back::pull_back;
use super::starts::{random, stated};
use super::whole_steps::to_whole_steps;

/// How hard to look for any ring without a clash.
#[derive(Clone, Copy, Debug)]
pub(super) struct Effort {
    /// Random starts over all that may move, where the stated starts lead nowhere.
    random: u32,
    /// From so many starts downhill, where no chase led anywhere.
    descents: usize,
}

impl Effort {
    /// For the answer itself.
    pub(super) const FULL: Self = Self {
        random: 48,
        descents: 24,
    };
    /// For one of many searches.
    pub(super) const LIGHT: Self = Self {
        random: 4,
        descents: 2,
    };
}

/// Random points nearer than the ring found, each looked at once.
const NEAR_POINTS: u32 = 256;
/// How many of them are chased.
const NEAR_STARTS: usize = 24;
/// Rounds of looking nearer.
const ROUNDS: u32 = 3;

/// Some ring without a clash, if one can be found.
pub(super) fn some_free(problem: &Problem, effort: Effort) -> Result<Option<Vec<f64>>, Cancelled> {
    let stated = stated(problem)?;
    for start in &stated {
        if let Some(found) = chase(problem, start, f64::INFINITY)? {
            return Ok(Some(found));
        }
    }
    let random = random(problem, &half_sides(problem), effort.random);
    let chased = first_found(&random, |start| chase(problem, start, f64::INFINITY))?;
    if chased.is_some() {
        return Ok(chased);
    }
    let downhill: Vec<Vec<f64>> = stated
        .into_iter()
        .chain(random)
        .take(effort.descents)
        .collect();
    first_found(&downhill, |start| descend(problem, start))
}

/// The farther bound of each dimension from its start.
fn half_sides(problem: &Problem) -> Vec<f64> {
    let sides = problem.let_go.iter().zip(&problem.start);
    sides
        .map(|(one, start)| (one.high - start).max(start - one.low))
        .collect()
}

/// The first in order, not the first in time: the same answer whatever the number of threads.
fn first_found(
    starts: &[Vec<f64>],
    search: impl Fn(&[f64]) -> Result<Option<Vec<f64>>, Cancelled> + Sync,
) -> Result<Option<Vec<f64>>, Cancelled> {
    let found = starts
        .par_iter()
        .map(|start| search(start))
        .find_first(|found| !matches!(found, Ok(None)));
    found.unwrap_or(Ok(None))
}

/// The nearest ring without a clash that can be found, on whole micrometres where they have room. `progress` is called
/// with the share done.
pub(super) fn nearest_free(
    problem: &Problem,
    progress: &(impl Fn(f64) + Sync),
) -> Result<Option<Vec<f64>>, Cancelled> {
    let Some(found) = some_free(problem, Effort::FULL)? else {
        return Ok(None);
    };
    progress(0.2);
    let mut best = pull_back(problem, found)?;
    for round in 1..=ROUNDS {
        let Some(nearer) = nearer(problem, &best)? else {
            break;
        };
        best = pull_back(problem, nearer)?;
        progress(0.2 + 0.8 * f64::from(round) / f64::from(ROUNDS));
    }
    let whole = to_whole_steps(problem, best)?;
    progress(1.0);
    Ok(Some(whole))
}

/// A ring without a clash nearer than `best`, from random starts that are nearer.
fn nearer(problem: &Problem, best: &[f64]) -> Result<Option<Vec<f64>>, Cancelled> {
    let limit = problem.measure(best);
    let sides: Vec<f64> = problem
        .let_go
        .iter()
        .map(|one| (limit / one.weight).sqrt())
        .collect();
    let mut points = random(problem, &sides, NEAR_POINTS);
    points.retain(|point| problem.measure(point) < limit);
    let looked: Vec<bool> = points
        .par_iter()
        .map(|point| problem.is_free(point))
        .collect::<Result<_, _>>()?;
    let free = points.iter().zip(&looked).filter(|(_, free)| **free);
    let starts: Vec<Vec<f64>> = stated(problem)?
        .into_iter()
        .chain(points.iter().take(NEAR_STARTS).cloned())
        .collect();
    let chased: Vec<Option<Vec<f64>>> = starts
        .par_iter()
        .map(|start| chase(problem, start, limit))
        .collect::<Result<_, _>>()?;
    Ok(free
        .map(|(point, _)| point)
        .chain(chased.iter().flatten())
        .min_by(|a, b| problem.measure(a).total_cmp(&problem.measure(b)))
        .cloned())
}
