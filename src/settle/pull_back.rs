//! From a ring without a clash back toward the present one, as far as no clash comes back.

use super::cancelled::Cancelled;
use super::chase::chase;
use super::problem::Problem;

/// Halvings of a line: a step of a hundred millimetres to under a nanometre.
const HALVINGS: u32 = 37;
/// Rounds over line, conditions and single steps.
const ROUNDS: u32 = 4;
/// Steps are halved down to this, mm or degrees.
const FINEST: f64 = 1e-4;
/// Less gain in the measure than this share ends the work.
const GAIN: f64 = 1e-6;

/// A ring without a clash, no farther from the present one than `from`.
pub(super) fn pull_back(problem: &Problem, from: Vec<f64>) -> Result<Vec<f64>, Cancelled> {
    let mut best = from;
    for _ in 0..ROUNDS {
        let before = problem.measure(&best);
        let (inside, outside) = along_the_line(problem, &best)?;
        best = inside;
        // The clash just outside gives a condition that several dimensions can share.
        if let Some(nearer) = chase(problem, &outside, problem.measure(&best))? {
            best = nearer;
        }
        best = by_steps(problem, best)?;
        if before - problem.measure(&best) <= GAIN * before {
            break;
        }
    }
    Ok(best)
}

/// Last ring without a clash, and first with one, on the straight line to the start.
fn along_the_line(problem: &Problem, from: &[f64]) -> Result<(Vec<f64>, Vec<f64>), Cancelled> {
    let goal = problem.inside(&problem.start);
    let on_the_line = |share: f64| -> Vec<f64> {
        let ends = from.iter().zip(&goal);
        ends.map(|(from, goal)| from + (goal - from) * share)
            .collect()
    };
    if problem.is_free(&goal)? {
        return Ok((goal.clone(), goal));
    }
    let (mut inside, mut outside) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(inside, outside);
        if problem.is_free(&on_the_line(middle))? {
            inside = middle;
        } else {
            outside = middle;
        }
    }
    Ok((on_the_line(inside), on_the_line(outside)))
}

/// Steps along single dimensions and pairs that bring the ring nearer; only those that would are tried.
fn by_steps(problem: &Problem, from: Vec<f64>) -> Result<Vec<f64>, Cancelled> {
    let mut best = from;
    let far = best.iter().zip(&problem.start);
    let mut step = far
        .map(|(at, start)| (at - start).abs())
        .fold(0.0, f64::max);
    while step > FINEST {
        let mut moved = false;
        for next in neighbours(problem, &best, step) {
            if problem.measure(&next) < problem.measure(&best) && problem.is_free(&next)? {
                best = next;
                moved = true;
                break;
            }
        }
        if !moved {
            step /= 2.0;
        }
    }
    Ok(best)
}

/// Each dimension a step either way, alone and together with each other one.
fn neighbours(problem: &Problem, at: &[f64], step: f64) -> Vec<Vec<f64>> {
    let moved = |point: &[f64], index: usize, by: f64| {
        let mut next = point.to_vec();
        if let Some(value) = next.get_mut(index) {
            // A step past the start stops there: that is where the measure is least.
            let start = problem.start.get(index).copied().unwrap_or(*value);
            let crosses = (*value - start) * (*value + by - start) < 0.0;
            *value = if crosses { start } else { *value + by };
        }
        problem.inside(&next)
    };
    let mut found = Vec::new();
    for first in 0..at.len() {
        for by in [step, -step] {
            let one = moved(at, first, by);
            found.push(one.clone());
            for second in 0..at.len() {
                if second != first {
                    found.push(moved(&one, second, by / 2.0));
                    found.push(moved(&one, second, -by / 2.0));
                }
            }
        }
    }
    found
}
