//! The nearest point to the start that keeps a list of linear conditions.
//!
//! Hildreth's method: each condition in turn pushes the point just as far as it must, and takes back a push that it no
//! longer needs (Hildreth, A quadratic programming procedure, 1957; from memory).

use super::problem::Problem;

/// Passes over all conditions.
const PASSES: u32 = 3000;
/// A condition is kept when it is short by less than this, in the unit of its margin.
const KEPT: f64 = 1e-8;
/// A condition whose slopes are all less than this cannot be met by moving.
const FLAT: f64 = 1e-9;

/// A condition: the sum of slope x value is at least `least`.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cut {
    pub(super) slopes: Vec<f64>,
    pub(super) least: f64,
}

impl Cut {
    pub(super) fn is_flat(&self) -> bool {
        self.slopes.iter().all(|slope| slope.abs() < FLAT)
    }

    fn short_by(&self, at: &[f64]) -> f64 {
        self.least - dot(&self.slopes, at)
    }
}

pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// The point of least measure that keeps every cut and the bounds; `None` where none was found that does.
pub(super) fn nearest(problem: &Problem, cuts: &[Cut]) -> Option<Vec<f64>> {
    let mut all: Vec<Cut> = cuts.iter().filter(|cut| !cut.is_flat()).cloned().collect();
    all.extend(bounds(problem));
    let mut at = problem.start.clone();
    let mut pushes = vec![0.0; all.len()];
    for _ in 0..PASSES {
        for (cut, push) in all.iter().zip(&mut pushes) {
            let weighed: f64 = cut
                .slopes
                .iter()
                .zip(&problem.let_go)
                .map(|(slope, one)| slope * slope / one.weight)
                .sum();
            let new = (*push + cut.short_by(&at) / weighed).max(0.0);
            let step = new - *push;
            *push = new;
            if step != 0.0 {
                let moves = cut.slopes.iter().zip(&problem.let_go);
                for (value, (slope, one)) in at.iter_mut().zip(moves) {
                    *value += step * slope / one.weight;
                }
            }
        }
        if all.iter().all(|cut| cut.short_by(&at) <= KEPT) {
            return Some(problem.inside(&at));
        }
    }
    None
}

/// The bounds as conditions.
fn bounds(problem: &Problem) -> Vec<Cut> {
    let count = problem.let_go.len();
    let one_way = |index: usize, slope: f64, least: f64| {
        let mut slopes = vec![0.0; count];
        if let Some(own) = slopes.get_mut(index) {
            *own = slope;
        }
        Cut { slopes, least }
    };
    problem
        .let_go
        .iter()
        .enumerate()
        .flat_map(|(index, one)| {
            [
                one_way(index, 1.0, one.low),
                one_way(index, -1.0, -one.high),
            ]
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::AtomicBool;

    use super::*;
    use crate::document::{RingKey, demo_designs};
    use crate::settle::problem::LetGo;
    use crate::settle::trial::Trial;
    use crate::workshop::Workshop;

    /// From (0, 0), with x + y >= 2 and x <= 0.5: the foot of the perpendicular is (1, 1), the bound moves it to (0.5, 1.5).
    /// With y three times as dear and no bound: x : y = 3 : 1, so (1.5, 0.5).
    #[test]
    fn the_nearest_point_is_the_foot_of_the_perpendicular() {
        let design = demo_designs().unwrap().swap_remove(0);
        let workshop = Workshop::default_set().unwrap();
        let never = AtomicBool::new(false);
        let mut problem = Problem {
            trial: Trial {
                design: &design,
                workshop: &workshop,
                aside: &[],
            },
            let_go: vec![
                LetGo::between(RingKey::LipThickness, -9.0, 9.0),
                LetGo::between(RingKey::LugThickness, -9.0, 9.0),
            ],
            start: vec![0.0, 0.0],
            by_rule: vec![None, None],
            cancel: &never,
        };
        let sum = Cut {
            slopes: vec![1.0, 1.0],
            least: 2.0,
        };
        let near = |problem: &Problem, cuts: &[Cut], x: f64, y: f64| {
            let found = nearest(problem, cuts).unwrap();
            assert!(
                (found[0] - x).abs() < 1e-6 && (found[1] - y).abs() < 1e-6,
                "{found:?}"
            );
        };
        near(&problem, std::slice::from_ref(&sum), 1.0, 1.0);
        problem.let_go[1].weight = 3.0;
        near(&problem, std::slice::from_ref(&sum), 1.5, 0.5);
        problem.let_go[0].high = 0.5;
        near(&problem, std::slice::from_ref(&sum), 0.5, 1.5);
        problem.let_go[1].high = 1.0;
        assert_eq!(nearest(&problem, &[sum]), None);
    }
}
