//! The map: what the worst finding says over a grid of two dimensions.

use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use rayon::prelude::*;

use super::cancelled::{Cancelled, go_on};
use super::level::Level;
use super::reading::Reading;
use super::room::share;
use super::trial::Trial;
use crate::checks::FindingKey;
use crate::document::{Design, RingKey};
use crate::workshop::Workshop;

/// One side of the map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    /// The dimension.
    pub key: RingKey,
    /// Value of the first cell, mm or degrees.
    pub from: f64,
    /// Value of the last cell, mm or degrees.
    pub to: f64,
    /// How many cells; one at least is drawn.
    pub cells: u32,
}

impl Axis {
    /// The value of each cell.
    #[must_use]
    pub fn values(&self) -> Vec<f64> {
        let steps = f64::from(self.cells.max(2) - 1);
        (0..self.cells.max(1))
            .map(|cell| self.from + (self.to - self.from) * f64::from(cell) / steps)
            .collect()
    }
}

/// One ring of the map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cell {
    /// The worst that is said of it.
    pub level: Level,
    /// The finding that says so; none where nothing is worse than a note.
    pub worst: Option<FindingKey>,
}

/// The whole map.
#[derive(Clone, Debug, PartialEq)]
pub struct Map {
    /// From left to right.
    pub across: Axis,
    /// From row to row.
    pub up: Axis,
    /// Row by row, each from left to right.
    pub rows: Vec<Vec<Cell>>,
}

/// Evaluates a ring for every cell, rows shared among the cores. `progress` is called after every row with the share
/// done, from any thread.
///
/// # Errors
/// [`Cancelled`] when `cancel` was set before the end.
pub fn map(
    design: &Design,
    workshop: &Workshop,
    across: Axis,
    up: Axis,
    cancel: &AtomicBool,
    progress: impl Fn(f64) + Sync,
) -> Result<Map, Cancelled> {
    let trial = Trial {
        design,
        workshop,
        aside: &[],
    };
    let (columns, lines) = (across.values(), up.values());
    let done = AtomicUsize::new(0);
    let rows = lines
        .par_iter()
        .map(|height| {
            let cell = |value: &f64| {
                go_on(cancel)?;
                Ok(cell_of(
                    &trial.read(&[(across.key, *value), (up.key, *height)]),
                ))
            };
            let row = columns.iter().map(cell).collect::<Result<Vec<_>, _>>()?;
            progress(share(done.fetch_add(1, Ordering::Relaxed) + 1, lines.len()));
            Ok(row)
        })
        .collect::<Result<Vec<_>, _>>()?;
    Ok(Map { across, up, rows })
}

fn cell_of(reading: &Reading) -> Cell {
    let share = |judged: Option<super::reading::Judged>| {
        judged.map_or(f64::INFINITY, |judged| judged.share)
    };
    let worst = reading
        .marks
        .iter()
        .filter(|mark| mark.level < Level::Free)
        .min_by(|a, b| {
            let shares = share(a.judged).total_cmp(&share(b.judged));
            a.level.cmp(&b.level).then(shares)
        });
    Cell {
        level: reading.level,
        worst: worst.map(|mark| mark.key),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::evaluate::evaluate;

    #[test]
    fn every_cell_says_what_its_ring_says() {
        let workshop = Workshop::default_set().unwrap();
        let design = demo_designs().unwrap().swap_remove(0);
        let axis = |key, from, to| Axis {
            key,
            from,
            to,
            cells: 4,
        };
        let across = axis(RingKey::LipThickness, 0.7, 1.3);
        let up = axis(RingKey::LipFaceDepth, 5.7, 6.9);
        let never = AtomicBool::new(false);
        let map = map(&design, &workshop, across, up, &never, |_| {}).unwrap();
        let mut levels = std::collections::BTreeSet::new();
        for (row, face) in map.rows.iter().zip([5.7, 6.1, 6.5, 6.9]) {
            for (cell, lip) in row.iter().zip([0.7, 0.9, 1.1, 1.3]) {
                let mut ring = design.clone();
                let set = crate::document::Choice::Set;
                ring.ring.dimensions.lip_face_depth.value = set(face);
                ring.ring.dimensions.lip_thickness.value = set(lip);
                let worst = evaluate(&ring, &workshop).findings.swap_remove(0);
                assert_eq!(cell.level, Level::of(worst.severity), "{face} {lip}");
                levels.insert(cell.level);
            }
        }
        assert!(
            levels.len() > 1,
            "a map of one colour shows nothing: {levels:?}"
        );
    }

    #[test]
    fn a_map_can_be_called_off() {
        let workshop = Workshop::default_set().unwrap();
        let design = demo_designs().unwrap().swap_remove(0);
        let axis = Axis {
            key: RingKey::LipThickness,
            from: 0.7,
            to: 1.3,
            cells: 3,
        };
        let at_once = AtomicBool::new(true);
        assert_eq!(
            map(&design, &workshop, axis, axis, &at_once, |_| {}),
            Err(Cancelled)
        );
    }
}
