//! A stack of tolerances tried out on many random rings.
//!
//! Every chunk of samples has a seed of its own and the chunks are folded in their order, so that the same stack and
//! seed give the same digits whatever the number of threads.

use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};

use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::SeedableRng;
use rayon::prelude::*;
use thiserror::Error;

use super::histogram::Histogram;
use super::stack::Stack;

/// Samples drawn from one seed.
pub const CHUNK: u32 = 10_000;
/// Cells in which the samples are counted.
const CELLS: u32 = 16_384;
/// So many standard uncertainties either way of the mean are counted in cells of their own.
const SPAN: f64 = 8.0;
/// Pieces of work for each thread, so that none waits long for another.
const PIECES_PER_THREAD: usize = 4;

/// What to try.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trial {
    /// How many rings; at least two are drawn. A million settle a 95 % interval (JCGM 101 7.2).
    pub samples: u32,
    /// The seed of the first chunk; the next have the numbers after it.
    pub seed: u64,
    /// The least gap that passes, mm; may be infinite.
    pub low_mm: f64,
    /// The greatest gap that passes, mm; may be infinite.
    pub high_mm: f64,
    /// Share that the intervals hold, usually 0.95.
    pub coverage: f64,
}

/// What came of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// How many rings were drawn.
    pub samples: u32,
    /// Mean gap, mm.
    pub mean_mm: f64,
    /// Standard deviation of the gap, mm.
    pub deviation_mm: f64,
    /// The shortest interval that holds the coverage, mm.
    pub shortest_mm: (f64, f64),
    /// The interval that holds the coverage with the same share outside at either end, mm.
    pub symmetric_mm: (f64, f64),
    /// Share of the rings between the limits of the trial, 0 to 1.
    pub share_inside: f64,
    /// How the gaps lie.
    pub histogram: Histogram,
}

/// The trial was called off.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
#[error("the Monte Carlo run was stopped before its end; run it again for a result")]
pub struct Cancelled;

/// Mean and sum of squared deviations of some samples.
#[derive(Clone, Copy)]
struct Moments {
    count: f64,
    mean: f64,
    squares: f64,
}

impl Moments {
    const NONE: Self = Self {
        count: 0.0,
        mean: 0.0,
        squares: 0.0,
    };

    fn of(samples: &[f64]) -> Self {
        // One by one: a sum of ones is exact far beyond any chunk.
        let count = samples.iter().map(|_| 1.0).sum::<f64>();
        let mean = samples.iter().sum::<f64>() / count;
        let squares = samples
            .iter()
            .map(|sample| (sample - mean) * (sample - mean))
            .sum();
        Self {
            count,
            mean,
            squares,
        }
    }

    /// Both together (pairwise update of Chan and others, 1979; from memory).
    fn and(self, other: Self) -> Self {
        let count = self.count + other.count;
        let step = other.mean - self.mean;
        let mean = self.mean + step * other.count / count;
        let squares = self.squares + other.squares + step * step * self.count * other.count / count;
        Self {
            count,
            mean,
            squares,
        }
    }
}

/// What some chunks that follow each other gave.
struct Piece {
    moments: Vec<Moments>,
    inside: u32,
    histogram: Histogram,
}

/// Draws random rings of `stack`. `progress` is called after every chunk with the share done, from any thread;
/// setting `cancel` ends the run at the next chunk.
///
/// # Errors
/// [`Cancelled`] when `cancel` was set before the end.
pub fn simulate(
    stack: &Stack,
    trial: &Trial,
    cancel: &AtomicBool,
    progress: impl Fn(f64) + Sync,
) -> Result<Outcome, Cancelled> {
    let samples = trial.samples.max(2);
    let chunks: Vec<u32> = (0..samples.div_ceil(CHUNK)).collect();
    let empty = empty_histogram(stack);
    let done = AtomicU32::new(0);
    let work = |chunks: &[u32]| {
        let mut piece = Piece {
            moments: Vec::new(),
            inside: 0,
            histogram: empty.clone(),
        };
        let mut sums = Vec::new();
        for &chunk in chunks {
            if cancel.load(Ordering::Relaxed) {
                return Err(Cancelled);
            }
            draw(stack, trial.seed, chunk, samples, &mut sums);
            piece.take(&sums, trial);
            let drawn = done.fetch_add(1, Ordering::Relaxed) + 1;
            progress(f64::from(drawn) * f64::from(CHUNK) / f64::from(samples));
        }
        Ok(piece)
    };
    let pieces = rayon::current_num_threads() * PIECES_PER_THREAD;
    let found: Result<Vec<Piece>, Cancelled> = chunks
        .par_chunks(chunks.len().div_ceil(pieces))
        .map(work)
        .collect();
    Ok(outcome(&found?, empty, samples, trial.coverage))
}

impl Piece {
    fn take(&mut self, gaps: &[f64], trial: &Trial) {
        self.moments.push(Moments::of(gaps));
        let passes = |gap: &f64| *gap >= trial.low_mm && *gap <= trial.high_mm;
        self.inside += gaps.iter().map(|gap| u32::from(passes(gap))).sum::<u32>();
        self.histogram.count(gaps);
    }
}

/// The gaps of one chunk of rings.
fn draw(stack: &Stack, seed: u64, chunk: u32, samples: u32, sums: &mut Vec<f64>) {
    let size = CHUNK.min(samples - chunk * CHUNK);
    let middle = stack.middle_mm();
    sums.clear();
    sums.extend((0..size).map(|_| middle));
    let mut random = Xoshiro256PlusPlus::seed_from_u64(seed.wrapping_add(u64::from(chunk)));
    for one in &stack.contributors {
        one.distribution.add_to(sums, one.sensitivity, &mut random);
    }
}

/// Cells over all that can come, or over what is at all likely where that is less.
fn empty_histogram(stack: &Stack) -> Histogram {
    let reach = SPAN * stack.standard_uncertainty_mm();
    let (mut low, mut high) = (stack.mean_mm() - reach, stack.mean_mm() + reach);
    if stack
        .contributors
        .iter()
        .all(|one| one.distribution.has_limits())
    {
        let (least, greatest) = stack.worst_cases_mm();
        (low, high) = (low.max(least), high.min(greatest));
    }
    Histogram::empty(low, high, CELLS)
}

fn outcome(pieces: &[Piece], mut histogram: Histogram, samples: u32, coverage: f64) -> Outcome {
    let moments = pieces.iter().flat_map(|piece| &piece.moments);
    let all = moments.fold(Moments::NONE, |all, chunk| all.and(*chunk));
    for piece in pieces {
        histogram.add(&piece.histogram);
    }
    let inside: u32 = pieces.iter().map(|piece| piece.inside).sum();
    Outcome {
        samples,
        mean_mm: all.mean,
        deviation_mm: (all.squares / (all.count - 1.0)).sqrt(),
        shortest_mm: histogram.shortest_mm(coverage),
        symmetric_mm: histogram.symmetric_mm(coverage),
        share_inside: f64::from(inside) / f64::from(samples),
        histogram,
    }
}

#[cfg(test)]
#[path = "monte_carlo_tests.rs"]
mod tests;
