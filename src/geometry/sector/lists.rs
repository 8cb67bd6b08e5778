//! Lists of intervals taken as one set of angles.

use std::f64::consts::TAU;

use super::Interval;
use super::interval::SAME_ANGLE;

/// The set that any of the intervals covers, as the fewest intervals, in order of their starts.
#[must_use]
pub fn joined(list: &[Interval]) -> Vec<Interval> {
    let mut sorted = list.to_vec();
    sorted.sort_by(|a, b| a.start_rad.total_cmp(&b.start_rad));
    let mut runs: Vec<(f64, f64)> = Vec::with_capacity(sorted.len());
    for interval in sorted {
        match runs.last_mut() {
            Some((_, end)) if interval.start_rad <= *end + SAME_ANGLE => {
                *end = end.max(interval.end_rad());
            }
            Some(_) | None => runs.push((interval.start_rad, interval.end_rad())),
        }
    }
    close_round(&mut runs);
    runs.into_iter()
        .filter_map(|(start, end)| Interval::new(start, end - start))
        .collect()
}

/// What reaches past the full turn swallows the first runs, or joins onto them.
fn close_round(runs: &mut Vec<(f64, f64)>) {
    while runs.len() > 1 {
        let Some((first_start, first_end)) = runs.first().copied() else {
            return;
        };
        let Some(last) = runs.last_mut() else { return };
        if last.1 - TAU < first_start - SAME_ANGLE {
            return;
        }
        last.1 = last.1.max(first_end + TAU);
        runs.remove(0);
    }
}

/// The angles that no interval covers, in order.
#[must_use]
pub fn complement(list: &[Interval]) -> Vec<Interval> {
    let runs = joined(list);
    let Some(first) = runs.first().copied() else {
        return vec![Interval::full_turn()];
    };
    let nexts = runs.iter().skip(1).map(|next| next.start_rad);
    runs.iter()
        .zip(nexts.chain(std::iter::once(first.start_rad + TAU)))
        .filter(|(run, next)| next - run.end_rad() > SAME_ANGLE)
        .filter_map(|(run, next)| Interval::new(run.end_rad(), next - run.end_rad()))
        .collect()
}

/// The angles covered by both lists.
#[must_use]
pub fn shared(first: &[Interval], second: &[Interval]) -> Vec<Interval> {
    let (first, second) = (joined(first), joined(second));
    let parts = first
        .iter()
        .flat_map(|one| second.iter().flat_map(|two| one.intersection(*two)));
    joined(&parts.collect::<Vec<_>>())
}

/// The angle covered by both lists, radians.
#[must_use]
pub fn overlap_length(first: &[Interval], second: &[Interval]) -> f64 {
    shared(first, second)
        .iter()
        .map(|part| part.extent_rad)
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn degrees(list: &[(f64, f64)]) -> Vec<Interval> {
        list.iter()
            .map(|(start, extent)| Interval::from_degrees(*start, *extent).unwrap())
            .collect()
    }

    fn assert_same(found: &[Interval], expected: &[(f64, f64)]) {
        assert_eq!(found.len(), expected.len(), "{found:?}");
        for (interval, (start, extent)) in found.iter().zip(expected) {
            assert!(
                (interval.start_rad.to_degrees() - start).abs() < 1e-9,
                "{found:?}"
            );
            assert!(
                (interval.extent_rad.to_degrees() - extent).abs() < 1e-9,
                "{found:?}"
            );
        }
    }

    #[test]
    fn joins_across_twelve_o_clock() {
        assert_same(
            &joined(&degrees(&[(350.0, 20.0), (5.0, 20.0), (90.0, 10.0)])),
            &[(90.0, 10.0), (350.0, 35.0)],
        );
        assert_same(
            &joined(&degrees(&[(0.0, 180.0), (180.0, 180.0)])),
            &[(0.0, 360.0)],
        );
        assert_same(
            &joined(&degrees(&[(300.0, 300.0), (10.0, 5.0), (50.0, 5.0)])),
            &[(300.0, 300.0)],
        );
    }

    #[test]
    fn gaps_between_three_lugs() {
        assert_same(
            &complement(&degrees(&[(350.0, 60.0), (120.0, 50.0), (240.0, 40.0)])),
            &[(170.0, 70.0), (280.0, 70.0), (50.0, 70.0)]
                .map(|gap| gap)
                .into_iter()
                .collect::<Vec<_>>(),
        );
        assert!(complement(&degrees(&[(0.0, 360.0)])).is_empty());
        assert_same(&complement(&[]), &[(0.0, 360.0)]);
    }

    #[test]
    fn shared_angles() {
        let lugs = degrees(&[(0.0, 40.0), (120.0, 40.0)]);
        let ears = degrees(&[(30.0, 100.0), (350.0, 15.0)]);
        assert!((overlap_length(&lugs, &ears).to_degrees() - 25.0).abs() < 1e-9);
        assert_same(
            &shared(&lugs, &ears),
            &[(0.0, 5.0), (30.0, 10.0), (120.0, 10.0)],
        );
    }
}
