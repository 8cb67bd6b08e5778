//! The full turn cut into steps: at every edge of a lug, at the window round the lock hole, and finely enough.

use std::f64::consts::TAU;

use crate::mount::Sector;

/// A step of the turn, clock angles seen from the lens side, radians.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Step {
    /// Where it begins; it ends where the next one begins.
    pub(super) from: f64,
    /// Whether it runs through a lug.
    pub(super) in_lug: bool,
    /// Whether it runs through the window round the lock hole.
    pub(super) in_window: bool,
}

/// Two edges nearer than this are one, radians: at any radius of a ring far under a nanometre.
const SAME: f64 = 1e-9;

/// Fewest steps of a turn: fewer enclose nothing.
const FEWEST: f64 = 24.0;

/// The angle that a chord may span at a radius so that it lies within `chord_mm` of the arc, radians.
pub(super) fn span_rad(radius_mm: f64, chord_mm: f64) -> f64 {
    let widest = TAU / FEWEST;
    if radius_mm <= chord_mm {
        return widest;
    }
    (2.0 * (1.0 - chord_mm / radius_mm).acos()).min(widest)
}

/// The steps of a whole turn, each at most `span`, radians.
pub(super) fn steps(lugs: &[Sector], window: Option<Sector>, span: f64) -> Vec<Step> {
    let mut edges: Vec<f64> = lugs
        .iter()
        .chain(&window)
        .filter(|sector| sector.extent_deg < 360.0)
        .flat_map(|sector| [sector.start_deg, sector.end_deg()])
        .map(|degrees| degrees.to_radians().rem_euclid(TAU))
        .collect();
    edges.sort_by(f64::total_cmp);
    edges.dedup_by(|next, last| *next - *last < SAME);
    // The first edge may be the last one, a turn on.
    if edges.len() > 1
        && edges
            .first()
            .zip(edges.last())
            .is_some_and(|(first, last)| first + TAU - last < SAME)
    {
        edges.pop();
    }
    if edges.is_empty() {
        edges.push(0.0);
    }
    let ends: Vec<f64> = edges
        .iter()
        .skip(1)
        .copied()
        .chain(edges.first().map(|first| first + TAU))
        .collect();
    let mut steps = Vec::new();
    for (from, to) in edges.into_iter().zip(ends) {
        let middle = f64::midpoint(from, to);
        let in_lug = lugs.iter().any(|lug| holds(lug, middle));
        let in_window = window.is_some_and(|window| holds(&window, middle));
        let count = ((to - from) / span).ceil().max(1.0);
        let mut index = 0.0;
        while index < count {
            steps.push(Step {
                from: from + (to - from) * index / count,
                in_lug,
                in_window,
            });
            index += 1.0;
        }
    }
    steps
}

/// Whether a sector holds a clock angle, radians.
fn holds(sector: &Sector, clock_rad: f64) -> bool {
    (clock_rad - sector.start_deg.to_radians()).rem_euclid(TAU) < sector.extent_deg.to_radians()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chord_error_is_the_sagitta() {
        // r (1 - cos(a/2)) = 0.01 at r = 28: at least 118 facets in a turn.
        let facets = TAU / span_rad(28.0, 0.01);
        assert!((117.0..118.0).contains(&facets), "{facets}");
    }

    #[test]
    fn steps_break_at_every_edge_and_close_the_turn() {
        let lugs = [
            Sector {
                start_deg: 350.0,
                extent_deg: 50.0,
            },
            Sector {
                start_deg: 100.0,
                extent_deg: 40.0,
            },
        ];
        let all = steps(&lugs, None, 0.1);
        let lug: f64 = spans(&all)
            .filter(|(step, _)| step.in_lug)
            .map(|(_, span)| span)
            .sum();
        let turn: f64 = spans(&all).map(|(_, span)| span).sum();
        assert!((lug - 90.0_f64.to_radians()).abs() < 1e-12);
        assert!((turn - TAU).abs() < 1e-12);
        assert!(spans(&all).all(|(_, span)| span <= 0.1 + 1e-12));
    }

    fn spans(all: &[Step]) -> impl Iterator<Item = (Step, f64)> + '_ {
        let next = all.iter().cycle().skip(1);
        all.iter()
            .zip(next)
            .map(|(step, next)| (*step, (next.from - step.from).rem_euclid(TAU)))
    }
}
