//! Where the search for a ring without a clash begins.

use rand_distr::{Distribution as _, StandardUniform};
use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::SeedableRng;

use super::cancelled::Cancelled;
use super::level::Level;
use super::problem::Problem;

/// Seed of the random starts: the same design gives the same answer.
const SEED: u64 = 0x5e77_1e00;
/// Remedies are followed so many times.
const REMEDIES: u32 = 6;

/// The present ring; the rules', all together and one by one; and what the remedies of the findings lead to.
pub(super) fn stated(problem: &Problem) -> Result<Vec<Vec<f64>>, Cancelled> {
    let mut starts = vec![problem.inside(&problem.start)];
    let rules = problem.by_rule.iter().zip(&problem.start);
    let all: Vec<f64> = rules.map(|(rule, start)| rule.unwrap_or(*start)).collect();
    starts.push(problem.inside(&all));
    for (index, rule) in all.iter().enumerate() {
        let mut one = problem.start.clone();
        if let Some(value) = one.get_mut(index) {
            *value = *rule;
        }
        starts.push(problem.inside(&one));
    }
    starts.extend(remedied(problem)?);
    let mut seen: Vec<Vec<f64>> = Vec::new();
    starts.retain(|start| {
        let new = !seen.contains(start);
        if new {
            seen.push(start.clone());
        }
        new
    });
    Ok(starts)
}

/// What one gets by doing what the findings say, again and again.
fn remedied(problem: &Problem) -> Result<Vec<Vec<f64>>, Cancelled> {
    let mut at = problem.inside(&problem.start);
    let mut found = Vec::new();
    for _ in 0..REMEDIES {
        let reading = problem.read(&at)?;
        if reading.level > Level::Clash {
            break;
        }
        let mut next = at.clone();
        for (one, value) in problem.let_go.iter().zip(&mut next) {
            let remedy = reading.remedies.iter().find(|(key, _)| *key == one.key);
            if let Some((_, cure)) = remedy {
                *value = *cure;
            }
        }
        let next = problem.inside(&next);
        if next == at {
            break;
        }
        found.push(next.clone());
        at = next;
    }
    Ok(found)
}

/// Random points of a box round the start, inside the bounds: half of them even, half crowded toward the start.
pub(super) fn random(problem: &Problem, half_sides: &[f64], count: u32) -> Vec<Vec<f64>> {
    let mut random = Xoshiro256PlusPlus::seed_from_u64(SEED);
    let mut even = || -> f64 { StandardUniform.sample(&mut random) };
    (0..count)
        .map(|number| {
            let near = if number % 2 == 0 {
                1.0
            } else {
                even() * even()
            };
            let sides = problem.start.iter().zip(half_sides).zip(&problem.let_go);
            sides
                .map(|((start, half), one)| {
                    let inside = start.clamp(one.low, one.high);
                    let low = (start - half).clamp(one.low, one.high);
                    let high = (start + half).clamp(one.low, one.high);
                    let value = low + (high - low) * even();
                    inside + (value - inside) * near
                })
                .collect()
        })
        .collect()
}
