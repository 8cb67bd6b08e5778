//! One dimension looked at over its whole range, closely where something changes.
//!
//! What the scan does not see: a change of level and back again that lies wholly between two samples, where the
//! samples on either side and in the middle lie on one straight line, or say the same sentence. Such samples stand at most [`NEAR`] apart near
//! the present value, and a quarter of the distance from it farther out; an eighth of the range where nothing moves.
//! A bend or a step of a value that stays away from its limits is not followed below [`FINEST`].

use std::rc::Rc;
use std::sync::atomic::AtomicBool;

use super::cancelled::{Cancelled, go_on};
use super::steady::{Sample, all_alike, clash_throughout, crossings, on_one_level};
use super::trial::Trial;
use crate::document::RingKey;
use crate::mount::Unit;

/// An edge is closed in to this, mm or degrees.
pub(super) const EDGE: f64 = 0.0008;
/// Bends away from a limit are not followed below this, mm or degrees.
const FINEST: f64 = 0.02;
/// Three samples on a line are trusted over this, mm or degrees.
const NEAR: f64 = 1.0;
/// The same as a share of the distance from the present value.
const NEAR_SHARE: f64 = 0.25;
/// First step away from the present value, mm or degrees; the next are twice as long each.
const FIRST_STEP: f64 = 0.25;

/// A scan in work.
pub(super) struct Scan<'a> {
    trial: Trial<'a>,
    key: RingKey,
    /// What is looked at: all that the dimension may be, or one turn.
    range: (f64, f64),
    present: f64,
    cancel: &'a AtomicBool,
    samples: Vec<Rc<Sample>>,
    evaluations: usize,
}

/// What a scan found.
pub(super) struct Scanned {
    /// Every sample from end to end of the range, in order.
    pub(super) samples: Vec<Rc<Sample>>,
    /// How many rings were judged for it.
    pub(super) evaluations: usize,
}

/// Looks at a dimension from end to end of its range.
///
/// # Errors
/// [`Cancelled`].
pub(super) fn scan(
    trial: Trial<'_>,
    key: RingKey,
    known: &[f64],
    cancel: &AtomicBool,
) -> Result<Scanned, Cancelled> {
    let (low, high) = key.range();
    let present = known.first().copied().unwrap_or(f64::midpoint(low, high));
    let mut scan = Scan {
        trial,
        key,
        range: if turns(key) {
            (present - HALF_TURN, present + HALF_TURN)
        } else {
            (low, high)
        },
        present,
        cancel,
        samples: Vec::new(),
        evaluations: 0,
    };
    let first = scan
        .stations(known)
        .into_iter()
        .map(|at| scan.sample(at))
        .collect::<Result<Vec<_>, _>>()?;
    for (a, b) in first.iter().zip(first.iter().skip(1)) {
        scan.between(a, b)?;
    }
    if turns(key) {
        scan.go_round((low, high))?;
    }
    scan.samples.sort_by(|a, b| a.at.total_cmp(&b.at));
    Ok(Scanned {
        samples: scan.samples,
        evaluations: scan.evaluations,
    })
}

/// Half a turn, degrees.
const HALF_TURN: f64 = 180.0;

/// Whether a whole turn more is the same ring.
fn turns(key: RingKey) -> bool {
    key.unit() == Unit::Deg
}

impl Scan<'_> {
    /// Values to begin with: ends, known values, and steps that double away from the present one.
    fn stations(&self, known: &[f64]) -> Vec<f64> {
        let (low, high) = self.range;
        let mut values = vec![low, high, self.present];
        values.extend(known);
        let mut step = FIRST_STEP;
        while self.present - step > low || self.present + step < high {
            values.extend([self.present - step, self.present + step]);
            step *= 2.0;
        }
        values.retain(|value| (low..=high).contains(value));
        values.sort_by(f64::total_cmp);
        let present = self.present.to_bits();
        // The present value itself is kept to the last digit.
        values.dedup_by(|a, b| *a - *b < EDGE / 2.0 && a.to_bits() != present);
        values
    }

    fn sample(&mut self, at: f64) -> Result<Rc<Sample>, Cancelled> {
        go_on(self.cancel)?;
        self.evaluations += 1;
        let reading = self.trial.read(&[(self.key, at)]);
        let sample = Rc::new(Sample { at, reading });
        self.samples.push(Rc::clone(&sample));
        Ok(sample)
    }

    /// Looks between two neighbours until nothing can hide there.
    fn between(&mut self, a: &Rc<Sample>, b: &Rc<Sample>) -> Result<(), Cancelled> {
        let width = b.at - a.at;
        let alike = a.reading.level == b.reading.level;
        if width <= EDGE || (alike && width <= FINEST) || clash_throughout(a, b) {
            return Ok(());
        }
        let middle = self.sample(f64::midpoint(a.at, b.at))?;
        let trusted = width <= self.trusted_width(a.at, b.at)
            || (width <= self.still_width() && all_alike(a, &middle, b));
        if trusted && on_one_level(a, &middle, b) {
            return Ok(());
        }
        for (from, to) in [(a, &middle), (&middle, b)] {
            if from.reading.level == to.reading.level {
                self.between(from, to)?;
            } else {
                self.close_in([a, &middle, b], from, to)?;
            }
        }
        Ok(())
    }

    /// Between two samples of different level: the run of the values tells where they pass their limits, and a sample on
    /// either side of each such place proves it; what is left is halved.
    fn close_in(
        &mut self,
        line: [&Rc<Sample>; 3],
        from: &Rc<Sample>,
        to: &Rc<Sample>,
    ) -> Result<(), Cancelled> {
        let [a, middle, b] = line;
        let mut places: Vec<f64> = crossings(a, middle, b)
            .into_iter()
            .flat_map(|at| [at - EDGE * 0.45, at + EDGE * 0.45])
            .filter(|at| *at > from.at && *at < to.at)
            .collect();
        places.sort_by(f64::total_cmp);
        let mut last = Rc::clone(from);
        for at in places {
            let next = self.sample(at)?;
            self.between(&last, &next)?;
            last = next;
        }
        self.between(&last, to)
    }

    fn trusted_width(&self, a: f64, b: f64) -> f64 {
        let away = (a - self.present).max(self.present - b).max(0.0);
        NEAR.max(NEAR_SHARE * away)
    }

    /// What was found over one turn holds a turn further as well, as far as the dimension may go.
    fn go_round(&mut self, (low, high): (f64, f64)) -> Result<(), Cancelled> {
        let turn = std::mem::take(&mut self.samples);
        self.sample(low)?;
        self.sample(high)?;
        let (from, to) = self.range;
        let mut by = ((low - to) / (2.0 * HALF_TURN)).floor() * 2.0 * HALF_TURN;
        while from + by <= high {
            let moved = turn.iter().map(|one| (one.at + by, one));
            let inside = moved.filter(|(at, _)| *at > low && *at < high);
            self.samples.extend(inside.map(|(at, one)| {
                Rc::new(Sample {
                    at,
                    reading: one.reading.clone(),
                })
            }));
            by += 2.0 * HALF_TURN;
        }
        Ok(())
    }

    fn still_width(&self) -> f64 {
        let (low, high) = self.range;
        (high - low) / 8.0
    }
}
