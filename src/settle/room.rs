//! Room to move: the spans of a dimension in which the ring has no clash, or not even a caution.

use std::rc::Rc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use rayon::prelude::*;

use super::cancelled::Cancelled;
use super::level::Level;
use super::reading::Stop;
use super::scan::{Scanned, scan};
use super::steady::Sample;
use super::trial::Trial;
use crate::checks::FindingKey;
use crate::document::{Design, RingKey};
use crate::mount::Unit;
use crate::ring::derive;
use crate::workshop::Workshop;

/// What ends a span on one side.
#[derive(Clone, Debug, PartialEq)]
pub enum End {
    /// The dimension may not have a value beyond.
    Range,
    /// These findings are worse beyond, the worst first.
    Findings(Vec<Beyond>),
    /// Beyond, the sizes make no shape, and why.
    Shape(String),
    /// Beyond, the rules refuse a ring, and why.
    Refused(String),
    /// Beyond, values are missing.
    Lacking,
}

/// A finding that is worse beyond the end of a span.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beyond {
    /// Which one.
    pub key: FindingKey,
    /// How bad it is there.
    pub level: Level,
    /// The limit it passes there, in `unit`; none where the check has no number.
    pub limit: Option<f64>,
    /// Unit of the limit.
    pub unit: Unit,
}

impl End {
    /// The findings that end the span, the worst first.
    #[must_use]
    pub fn findings(&self) -> Vec<FindingKey> {
        match self {
            Self::Findings(beyond) => beyond.iter().map(|one| one.key).collect(),
            Self::Range | Self::Shape(_) | Self::Refused(_) | Self::Lacking => Vec::new(),
        }
    }
}

/// A span of a dimension. Both ends are inside; the first value outside is less than a micrometre beyond.
#[derive(Clone, Debug, PartialEq)]
pub struct Span {
    /// Least value, mm or degrees.
    pub from: f64,
    /// Greatest value, mm or degrees.
    pub to: f64,
    /// What ends it below.
    pub below: End,
    /// What ends it above.
    pub above: End,
}

impl Span {
    /// Whether `value` lies in it.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        value >= self.from && value <= self.to
    }
}

/// How far one dimension can move while everything else stays as it is stated: set ones set, the rest by rule.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    /// The dimension.
    pub key: RingKey,
    /// Its value in force, mm or degrees; none where its rule lacks something.
    pub present: Option<f64>,
    /// Spans without a clash, in order.
    pub without_clash: Vec<Span>,
    /// Spans without a clash or a caution, in order.
    pub without_caution: Vec<Span>,
    /// How many rings were evaluated for it.
    pub evaluations: usize,
}

impl Room {
    /// The span without a clash that holds the present value.
    #[must_use]
    pub fn present_span(&self) -> Option<&Span> {
        holding(&self.without_clash, self.present?)
    }

    /// The span without a caution that holds the present value.
    #[must_use]
    pub fn present_calm_span(&self) -> Option<&Span> {
        holding(&self.without_caution, self.present?)
    }
}

fn holding(spans: &[Span], value: f64) -> Option<&Span> {
    spans.iter().find(|span| span.holds(value))
}

/// The room of each of `keys`, in their order. Findings `aside` do not count: of a ring that clashes already, the room
/// that the rest leaves. Dimensions are shared among the cores; `progress` is called with the share done, from any
/// thread.
///
/// # Errors
/// [`Cancelled`] when `cancel` was set before the end.
pub fn rooms(
    design: &Design,
    workshop: &Workshop,
    keys: &[RingKey],
    aside: &[FindingKey],
    cancel: &AtomicBool,
    progress: impl Fn(f64) + Sync,
) -> Result<Vec<Room>, Cancelled> {
    let trial = Trial {
        design,
        workshop,
        aside,
    };
    let derivation = derive(design, workshop);
    let done = AtomicUsize::new(0);
    keys.par_iter()
        .with_max_len(1)
        .map(|key| {
            let state = derivation.dimension(*key);
            let present = state.and_then(|state| state.value);
            let by_rule = state.and_then(|state| state.by_rule);
            let known: Vec<f64> = present.into_iter().chain(by_rule).collect();
            let Scanned {
                samples,
                evaluations,
            } = scan(trial, *key, &known, cancel)?;
            let finished = done.fetch_add(1, Ordering::Relaxed) + 1;
            progress(share(finished, keys.len()));
            Ok(Room {
                key: *key,
                present,
                without_clash: spans(&samples, Level::Caution),
                without_caution: spans(&samples, Level::Free),
                evaluations,
            })
        })
        .collect()
}

/// `part` of `whole`, 0 to 1.
pub(super) fn share(part: usize, whole: usize) -> f64 {
    let number = |count: usize| f64::from(u32::try_from(count).unwrap_or(u32::MAX));
    number(part) / number(whole).max(1.0)
}

/// Runs of neighbouring samples that are at least on `level`.
fn spans(samples: &[Rc<Sample>], level: Level) -> Vec<Span> {
    let mut found = Vec::new();
    let mut before: Option<&Sample> = None;
    let mut run: Option<(End, &Sample, &Sample)> = None;
    for sample in samples {
        let sample = sample.as_ref();
        if sample.reading.level >= level {
            let (below, first, _) = run.take().unwrap_or_else(|| {
                let below = before.map_or(End::Range, |outside| end(outside, sample, level));
                (below, sample, sample)
            });
            run = Some((below, first, sample));
        } else if let Some((below, first, last)) = run.take() {
            let above = end(sample, last, level);
            found.push(span(below, first, last, above));
        }
        before = Some(sample);
    }
    if let Some((below, first, last)) = run {
        found.push(span(below, first, last, End::Range));
    }
    found
}

fn span(below: End, first: &Sample, last: &Sample, above: End) -> Span {
    Span {
        from: first.at,
        to: last.at,
        below,
        above,
    }
}

/// Why `outside` is worse than `inside`, its neighbour.
fn end(outside: &Sample, inside: &Sample, level: Level) -> End {
    match &outside.reading.stop {
        Some(Stop::Shape(fault)) => return End::Shape(fault.clone()),
        Some(Stop::Refused(reason)) => return End::Refused(reason.clone()),
        Some(Stop::Lacking) => return End::Lacking,
        None => {}
    }
    let was = |key| inside.reading.marks.iter().find(|mark| mark.key == key);
    let mut worse: Vec<_> = outside
        .reading
        .marks
        .iter()
        .filter(|mark| mark.level < level && was(mark.key).is_none_or(|was| was.level >= level))
        .collect();
    worse.sort_by_key(|mark| mark.level);
    let beyond = worse.into_iter().map(|mark| Beyond {
        key: mark.key,
        level: mark.level,
        limit: mark.judged.map(|judged| judged.limit),
        unit: mark.unit,
    });
    End::Findings(beyond.collect())
}

#[cfg(test)]
#[path = "room_tests.rs"]
mod tests;
