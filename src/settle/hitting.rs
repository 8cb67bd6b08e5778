//! The least set that has a member in common with each of many sets.

use std::collections::BTreeSet;

/// Branches looked at before the search is given up.
const BRANCHES: u32 = 200_000;

/// What came of the search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Hitting<T> {
    /// A set of least size.
    Least(Vec<T>),
    /// No set of at most so many members meets them all.
    None,
    /// Not searched to the end.
    GivenUp,
}

/// A least set of at most `most` members that meets every one of `sets`.
pub(super) fn least_hitting<T: Copy + Ord>(sets: &[BTreeSet<T>], most: usize) -> Hitting<T> {
    let mut left = BRANCHES;
    for size in 0..=most {
        let mut chosen = Vec::with_capacity(size);
        match meet(sets, size, &mut chosen, &mut left) {
            Some(true) => return Hitting::Least(chosen),
            Some(false) => {}
            None => return Hitting::GivenUp,
        }
    }
    Hitting::None
}

/// Whether `chosen` and `more` members meet every set; `None` when the branches are used up.
fn meet<T: Copy + Ord>(
    sets: &[BTreeSet<T>],
    more: usize,
    chosen: &mut Vec<T>,
    left: &mut u32,
) -> Option<bool> {
    *left = left.checked_sub(1)?;
    let missed = sets
        .iter()
        .filter(|set| !chosen.iter().any(|one| set.contains(one)))
        // A small set leaves the fewest ways on.
        .min_by_key(|set| set.len());
    let Some(missed) = missed else {
        return Some(true);
    };
    if more == 0 {
        return Some(false);
    }
    for one in missed {
        chosen.push(*one);
        if meet(sets, more - 1, chosen, left)? {
            return Some(true);
        }
        chosen.pop();
    }
    Some(false)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sets(sets: &[&[u32]]) -> Vec<BTreeSet<u32>> {
        sets.iter()
            .map(|set| set.iter().copied().collect())
            .collect()
    }

    #[test]
    fn the_least_set_is_found_and_proved() {
        let three = sets(&[&[1, 2], &[2, 3], &[3, 4], &[5]]);
        assert_eq!(least_hitting(&three, 2), Hitting::None);
        let Hitting::Least(found) = least_hitting(&three, 3) else {
            panic!("2, 3 and 5 meet them all")
        };
        assert_eq!(found.len(), 3);
        assert!(
            three
                .iter()
                .all(|set| found.iter().any(|one| set.contains(one)))
        );
    }

    #[test]
    fn nothing_meets_an_empty_set_and_nothing_is_needed_for_none() {
        assert_eq!(least_hitting(&sets(&[&[]]), 4), Hitting::None);
        assert_eq!(least_hitting::<u32>(&[], 4), Hitting::Least(Vec::new()));
    }
}
