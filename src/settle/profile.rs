//! The margins of every finding along one dimension.

use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use rayon::prelude::*;

use super::cancelled::{Cancelled, go_on};
use super::level::Level;
use super::map::Axis;
use super::reading::Reading;
use super::room::share;
use super::trial::Trial;
use crate::checks::FindingKey;
use crate::document::Design;
use crate::workshop::Workshop;

/// A finding at one value of the dimension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MarginAt {
    /// The value, mm or degrees.
    pub at: f64,
    /// How bad it is there.
    pub level: Level,
    /// The margin as a share of the limit it is judged by there; negative is outside.
    pub share: f64,
}

/// One finding along the dimension; values at which it has no number are left out.
#[derive(Clone, Debug, PartialEq)]
pub struct MarginCurve {
    /// Which finding.
    pub finding: FindingKey,
    /// In the order of the values.
    pub points: Vec<MarginAt>,
}

impl MarginCurve {
    /// Whether the margin moves along the dimension, or the level does.
    #[must_use]
    pub fn moves(&self) -> bool {
        const STILL: f64 = 1e-9;
        self.points.first().is_some_and(|first| {
            let moved = |one: &MarginAt| {
                (one.share - first.share).abs() > STILL || one.level != first.level
            };
            self.points.iter().any(moved)
        })
    }

    /// The points in runs of one level, the first value of a level beside the last of the one before.
    #[must_use]
    pub fn runs(&self) -> Vec<Vec<MarginAt>> {
        let alike = |a: &MarginAt, b: &MarginAt| a.level == b.level;
        self.points.chunk_by(alike).map(<[_]>::to_vec).collect()
    }
}

/// What becomes of the ring along one dimension.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    /// The dimension and its values.
    pub axis: Axis,
    /// The worst at each value.
    pub levels: Vec<Level>,
    /// One curve for each finding that has a number anywhere, in the order of the keys.
    pub curves: Vec<MarginCurve>,
}

/// Judges a ring for every value of `axis`, values shared among the cores. `progress` is called with the share done,
/// from any thread.
///
/// # Errors
/// [`Cancelled`] when `cancel` was set before the end.
pub fn profile(
    design: &Design,
    workshop: &Workshop,
    axis: Axis,
    cancel: &AtomicBool,
    progress: impl Fn(f64) + Sync,
) -> Result<Profile, Cancelled> {
    let trial = Trial {
        design,
        workshop,
        aside: &[],
    };
    let values = axis.values();
    let done = AtomicUsize::new(0);
    let readings = values
        .par_iter()
        .map(|value| {
            go_on(cancel)?;
            let reading = trial.read(&[(axis.key, *value)]);
            progress(share(
                done.fetch_add(1, Ordering::Relaxed) + 1,
                values.len(),
            ));
            Ok(reading)
        })
        .collect::<Result<Vec<Reading>, Cancelled>>()?;
    let curves = FindingKey::ALL.iter().map(|key| MarginCurve {
        finding: *key,
        points: points(*key, &values, &readings),
    });
    Ok(Profile {
        axis,
        levels: readings.iter().map(|reading| reading.level).collect(),
        curves: curves.filter(|curve| !curve.points.is_empty()).collect(),
    })
}

fn points(key: FindingKey, values: &[f64], readings: &[Reading]) -> Vec<MarginAt> {
    let at = |(value, reading): (&f64, &Reading)| {
        // Sizes that make no shape are told under the key of another finding.
        if reading.stop.is_some() {
            return None;
        }
        let mark = reading.marks.iter().find(|mark| mark.key == key)?;
        Some(MarginAt {
            at: *value,
            level: mark.level,
            share: mark.judged?.share,
        })
    };
    values.iter().zip(readings).filter_map(at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{RingKey, demo_designs};

    /// The default limits of a lip: 0.8 for a clash, 1.0 for a caution. At 0.7 it misses 0.8 by an eighth of it, at 0.9
    /// it misses 1.0 by a tenth, at 1.2 it has a fifth to spare.
    #[test]
    fn the_margin_of_a_lip_is_told_against_the_limit_it_is_judged_by() {
        let design = demo_designs().unwrap().swap_remove(0);
        let workshop = Workshop::default_set().unwrap();
        let axis = Axis {
            key: RingKey::LipThickness,
            from: 0.7,
            to: 1.2,
            cells: 6,
        };
        let never = AtomicBool::new(false);
        let found = profile(&design, &workshop, axis, &never, |_| {}).unwrap();
        let lip = found
            .curves
            .iter()
            .find(|curve| curve.finding == FindingKey::LipThickness)
            .unwrap();
        assert!(lip.moves());
        for (place, level, share) in [
            (0, Level::Clash, -0.125),
            (2, Level::Caution, -0.1),
            (5, Level::Free, 0.2),
        ] {
            let point = lip.points[place];
            assert!(
                point.level == level && (point.share - share).abs() < 1e-9,
                "{point:?}"
            );
        }
        assert_eq!(lip.runs().len(), 3);
        assert_eq!(found.levels[0], Level::Clash);
        let stopped = AtomicBool::new(true);
        assert_eq!(
            profile(&design, &workshop, axis, &stopped, |_| {}),
            Err(Cancelled)
        );
    }
}
