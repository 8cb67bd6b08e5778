//! From one start to a ring without a clash: each clash met on the way becomes a linear condition, and the next point
//! is the nearest one that keeps them all.
//!
//! This is the method of cutting planes (Kelley, The cutting-plane method for solving convex programs, 1960; from
//! memory). Margins are mostly straight, or bent like a roof, as the least of several: then every condition is a true
//! one and the first ring without a clash is the nearest of all. Where a margin bends the other way a condition may be
//! false; other starts and pulling back make up for that.

use super::cancelled::Cancelled;
use super::cut::{Cut, dot, nearest};
use super::level::Level;
use super::problem::Problem;
use super::reading::{Mark, Reading};

/// Points visited from one start.
const ROUNDS: u32 = 14;
/// Step of a difference, mm or degrees: far above the micrometre to which some gaps are rounded.
const STEP: f64 = 0.02;
/// The margin aimed at: above zero by more than the conditions leave open, in its unit.
const ASIDE: f64 = 1e-6;

/// The first ring without a clash that is met from `from`, if its measure stays under `limit`.
pub(super) fn chase(
    problem: &Problem,
    from: &[f64],
    limit: f64,
) -> Result<Option<Vec<f64>>, Cancelled> {
    let mut cuts: Vec<Cut> = Vec::new();
    let mut at = problem.inside(from);
    for _ in 0..ROUNDS {
        let reading = problem.read(&at)?;
        if reading.level > Level::Clash {
            return Ok((problem.measure(&at) < limit).then_some(at));
        }
        let found = cuts_at(problem, &at, &reading)?;
        if found.is_empty() || found.iter().any(Cut::is_flat) {
            // A clash without a number, or one that no dimension moves here, leads nowhere.
            return Ok(None);
        }
        cuts.extend(found);
        match nearest(problem, &cuts) {
            // With more conditions the nearest point only goes farther off.
            Some(next) if problem.measure(&next) < limit => at = next,
            Some(_) | None => return Ok(None),
        }
    }
    Ok(None)
}

/// A condition for every clash that has a number.
fn cuts_at(problem: &Problem, at: &[f64], reading: &Reading) -> Result<Vec<Cut>, Cancelled> {
    let clashes: Vec<&Mark> = reading.at(Level::Clash).collect();
    let mut slopes: Vec<Vec<f64>> = vec![Vec::with_capacity(at.len()); clashes.len()];
    if clashes.is_empty() {
        return Ok(Vec::new());
    }
    for index in 0..at.len() {
        let [below, above] = [-STEP, STEP].map(|step| {
            let mut beside = at.to_vec();
            if let Some(value) = beside.get_mut(index) {
                *value += step;
            }
            problem.read(&beside)
        });
        let (below, above) = (below?, above?);
        for (clash, slopes) in clashes.iter().zip(&mut slopes) {
            slopes.push(slope(clash, &below, &above));
        }
    }
    let with_slopes = clashes.iter().zip(slopes);
    Ok(with_slopes
        .filter_map(|(clash, slopes)| {
            let margin = clash.judged?.margin;
            let least = dot(&slopes, at) - margin + ASIDE;
            Some(Cut { slopes, least })
        })
        .collect())
}

/// Change of the margin for each mm or degree, from whichever neighbours show the same aspect.
fn slope(clash: &Mark, below: &Reading, above: &Reading) -> f64 {
    let Some((here, better)) = clash
        .judged
        .and_then(|judged| Some((judged.value, judged.better()?)))
    else {
        return 0.0;
    };
    let value = |reading: &Reading| Some(reading.like(clash)?.judged?.value);
    better
        * match (value(below), value(above)) {
            (Some(below), Some(above)) => (above - below) / (2.0 * STEP),
            (Some(below), None) => (here - below) / STEP,
            (None, Some(above)) => (above - here) / STEP,
            (None, None) => 0.0,
        }
}
