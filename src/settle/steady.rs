//! Whether anything can hide between neighbouring samples of one dimension.
//!
//! Two arguments are used. A margin in mm changes by at most [`STEEPEST`] for each mm or degree of the dimension, so a
//! clash that is deep at both ends of a stretch holds over all of it. And most margins are straight lines with kinks
//! and steps: where three samples lie on one line, or far enough from the limit for the bend they show, no limit is
//! crossed between them. The second is trusted over short stretches only; how short, the scan says.

use super::level::Level;
use super::reading::{Judged, Mark, Reading};
use crate::mount::Unit;

/// A margin changes by at most this, mm for each mm or degree of a dimension.
const STEEPEST: f64 = 2.0;
/// Off the line by less than this is rounding, in the unit of the value.
const ROUNDING: f64 = 1e-7;
/// A bend seen in the middle is taken to be at most so many times as large elsewhere.
const BEND: f64 = 4.0;

/// A value of the dimension and what the checks say of it.
#[derive(Debug)]
pub(super) struct Sample {
    pub(super) at: f64,
    pub(super) reading: Reading,
}

/// Whether some clash is too deep at both ends to be gone in between.
pub(super) fn clash_throughout(a: &Sample, b: &Sample) -> bool {
    let width = b.at - a.at;
    a.reading.at(Level::Clash).any(|one| {
        let other = b
            .reading
            .like(one)
            .filter(|mark| mark.level == Level::Clash);
        let both = one.judged.zip(other.and_then(|mark| mark.judged));
        one.unit == Unit::Mm
            && both.is_some_and(|(one, other)| -(one.margin + other.margin) > STEEPEST * width)
    })
}

/// Whether a, b and everything between them are on one level, as far as three samples can say.
pub(super) fn on_one_level(a: &Sample, middle: &Sample, b: &Sample) -> bool {
    let level = a.reading.level;
    if middle.reading.level != level || b.reading.level != level {
        return false;
    }
    let share = (middle.at - a.at) / (b.at - a.at);
    let steady = |mark: &Mark| stays(mark, &middle.reading, &b.reading, share);
    match level {
        // One clash that stays is enough.
        Level::Clash => a.reading.at(level).any(steady),
        Level::Caution => a.reading.at(level).any(steady) && a.reading.marks.iter().all(steady),
        Level::Free => a.reading.marks.iter().all(steady),
    }
}

/// Whether three samples are the same to the last bit: the dimension does not bear on anything here.
pub(super) fn all_alike(a: &Sample, middle: &Sample, b: &Sample) -> bool {
    a.reading == middle.reading && a.reading == b.reading
}

/// Whether a finding keeps its level over a stretch.
fn stays(mark: &Mark, middle: &Reading, end: &Reading, share: f64) -> bool {
    let find = |reading: &Reading| {
        let found = reading.marks.iter().find(|own| own.key == mark.key);
        found.cloned()
    };
    let (Some(middle), Some(end)) = (find(middle), find(end)) else {
        return false;
    };
    if middle.level != mark.level || end.level != mark.level {
        return false;
    }
    let numbers = mark.judged.zip(middle.judged).zip(end.judged);
    let of_one_kind = mark.is_of_one_kind_with(&middle) && mark.is_of_one_kind_with(&end);
    let Some(((a, middle), b)) = numbers else {
        // A sentence without a number: free is free, anything worse must be the same sentence.
        return of_one_kind || mark.level == Level::Free;
    };
    (of_one_kind && runs_one_way(a, middle, b, share))
        || is_far_from_its_limit(mark.level, a, middle, b, share)
}

/// A value on a straight line, or on a curve so flat that it cannot turn back, stays between its ends: they are on
/// one level, so all of it is.
fn runs_one_way(a: Judged, middle: Judged, b: Judged, share: f64) -> bool {
    let bend = off_line(|judged| judged.value, a, middle, b, share);
    let (first, second) = (middle.value - a.value, b.value - middle.value);
    bend <= ROUNDING || (first * second > 0.0 && BEND * bend < first.abs().min(second.abs()))
}

/// How far the middle lies off the line between the ends.
fn off_line(of: impl Fn(Judged) -> f64, a: Judged, middle: Judged, b: Judged, share: f64) -> f64 {
    (of(middle) - (of(a) + (of(b) - of(a)) * share)).abs()
}

/// The share of the limit is one continuous quantity over all aspects of a check, within one level.
fn is_far_from_its_limit(level: Level, a: Judged, middle: Judged, b: Judged, share: f64) -> bool {
    let bend = BEND * off_line(|judged| judged.share, a, middle, b, share);
    let shares = [a.share, middle.share, b.share];
    match level {
        Level::Clash => shares.iter().all(|share| share + bend < -ROUNDING),
        // How far a caution is from a clash is not told.
        Level::Caution => false,
        Level::Free => shares.iter().all(|share| share - bend > ROUNDING),
    }
}

/// Where a finding whose level differs between three samples would pass a limit, its value running along the parabola
/// through them.
pub(super) fn crossings(a: &Sample, middle: &Sample, b: &Sample) -> Vec<f64> {
    let share = (middle.at - a.at) / (b.at - a.at);
    let mut found: Vec<f64> = Vec::new();
    for one in &a.reading.marks {
        let (Some(between), Some(other)) = (middle.reading.like(one), b.reading.like(one)) else {
            continue;
        };
        if one.level == between.level && one.level == other.level {
            continue;
        }
        let Some(((one, between), other)) = one.judged.zip(between.judged).zip(other.judged) else {
            continue;
        };
        let values = [one.value, between.value, other.value];
        for limit in [one.limit, between.limit, other.limit] {
            for part in parts_at(values, share, limit).into_iter().flatten() {
                let at = a.at + part * (b.at - a.at);
                let is_new = found.iter().all(|known| (known - at).abs() > ROUNDING);
                if is_new && part > 0.0 && part < 1.0 {
                    found.push(at);
                }
            }
        }
    }
    found
}

/// Where the parabola through values at 0, `share` and 1 takes the value `limit`.
fn parts_at([first, middle, last]: [f64; 3], share: f64, limit: f64) -> [Option<f64>; 2] {
    // Newton's divided differences.
    let slope = (middle - first) / share;
    let bend = (last - middle) / (1.0 - share) - slope;
    let (a, b, c) = (bend, slope - bend * share, first - limit);
    if a.abs() <= 1e-9 * b.abs() {
        let part = -c / b;
        return [part.is_finite().then_some(part), None];
    }
    let under = b * b - 4.0 * a * c;
    if under < 0.0 {
        return [None, None];
    }
    // The larger root first, so that no digits are lost by taking near numbers from each other.
    let q = -0.5 * (b + under.sqrt().copysign(b));
    [q / a, c / q].map(|part| part.is_finite().then_some(part))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 1 + 3 s - 2 s² takes the value 2 at 1/2 and at 1; a line takes it once.
    #[test]
    fn a_parabola_meets_its_limit_twice_and_a_line_once() {
        let curve = |s: f64| 1.0 + 3.0 * s - 2.0 * s * s;
        let mut parts: Vec<f64> = parts_at([curve(0.0), curve(0.4), curve(1.0)], 0.4, 2.0)
            .into_iter()
            .flatten()
            .collect();
        parts.sort_by(f64::total_cmp);
        assert!((parts[0] - 0.5).abs() < 1e-12 && (parts[1] - 1.0).abs() < 1e-12);
        assert_eq!(parts_at([1.0, 2.0, 3.0], 0.5, 1.5), [Some(0.25), None]);
        assert_eq!(parts_at([1.0, 1.0, 1.0], 0.5, 2.0), [None, None]);
        assert_eq!(parts_at([0.0, 1.0, 0.0], 0.5, 2.0), [None, None]);
    }
}
