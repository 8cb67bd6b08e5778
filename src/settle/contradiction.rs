//! Why no ring can be found: the findings and the held dimensions that contradict each other.
//!
//! The set is found by halving (Junker, QuickXplain, 2004; from memory) and then proved member by member: without any
//! one of them a ring was found that keeps all the others. So no member is named in vain; another set, even a smaller
//! one, may contradict itself as well.

use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use super::problem::{LetGo, Problem, SettleError};
use super::reading::Stop;
use super::search::{Effort, some_free};
use super::trial::Trial;
use crate::checks::FindingKey;
use crate::document::RingKey;

/// Searches that a contradiction takes, roughly, for the share done.
const SEARCHES: u32 = 40;

/// One thing that must give way for the others to hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Member {
    /// A finding that must not be a clash.
    Finding(FindingKey),
    /// A dimension that was not let go: it stays as it is stated, set or by its rule.
    Held(RingKey),
    /// The bounds of a dimension that was let go.
    Bounds(RingKey),
}

/// A ring that was found once one member gave way.
#[derive(Clone, Debug, PartialEq)]
pub struct Release {
    /// What gave way.
    pub member: Member,
    /// The dimensions of the ring found, those that may move.
    pub sizes: Vec<(RingKey, f64)>,
}

/// Things that cannot all hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Contradiction {
    /// The members, and for each the ring that was found without it.
    pub releases: Vec<Release>,
    /// Where not even letting everything go and judging nothing makes a ring: what stops it.
    pub no_ring: Option<String>,
}

impl Contradiction {
    /// The members.
    #[must_use]
    pub fn members(&self) -> Vec<Member> {
        self.releases.iter().map(|release| release.member).collect()
    }
}

/// The parts of a problem that can be kept or given up.
struct Court<'a, 'p> {
    problem: &'a Problem<'p>,
    cancel: &'a AtomicBool,
    effort: Effort,
    searches: AtomicUsize,
    progress: &'a (dyn Fn(f64) + Sync),
}

/// The members that contradict each other, of a problem for which no ring was found.
pub(super) fn contradiction(
    problem: &Problem,
    progress: &(impl Fn(f64) + Sync),
) -> Result<Contradiction, SettleError> {
    let mut court = Court {
        problem,
        cancel: problem.cancel,
        effort: Effort::LIGHT,
        searches: AtomicUsize::new(0),
        progress,
    };
    if court.ring_with(&[])?.is_none() {
        return Ok(Contradiction {
            releases: Vec::new(),
            no_ring: Some(what_stops(problem)?),
        });
    }
    let mut releases = court.verdict()?;
    court.effort = Effort::FULL;
    let members: Vec<Member> = releases.iter().map(|release| release.member).collect();
    if court.ring_with(&members)?.is_some() {
        // A light search overlooked a ring somewhere: look harder throughout.
        releases = court.verdict()?;
    }
    Ok(Contradiction {
        releases,
        no_ring: None,
    })
}

fn what_stops(problem: &Problem) -> Result<String, SettleError> {
    Ok(match problem.read(&problem.start)?.stop {
        Some(Stop::Shape(reason) | Stop::Refused(reason)) => reason,
        Some(Stop::Lacking) | None => "no whole ring was found".to_owned(),
    })
}

/// Everything that may be at fault, what is most often at fault last: it is looked at first.
fn candidates(problem: &Problem) -> Vec<Member> {
    let let_go = |key: &RingKey| problem.let_go.iter().any(|one| one.key == *key);
    let bounds = problem
        .let_go
        .iter()
        .filter(|one| (one.low, one.high) != one.key.range());
    let held = RingKey::ALL.iter().copied().filter(|key| !let_go(key));
    let findings = FindingKey::ALL.iter().copied();
    held.map(Member::Held)
        .chain(bounds.map(|one| Member::Bounds(one.key)))
        .chain(findings.map(Member::Finding))
        .collect()
}

impl Court<'_, '_> {
    /// The members at fault, each proved.
    fn verdict(&self) -> Result<Vec<Release>, SettleError> {
        let members = self.smallest(&[], false, &candidates(self.problem))?;
        self.proved(members)
    }

    /// A ring that keeps these members, everything else given up.
    fn ring_with(&self, kept: &[Member]) -> Result<Option<Vec<(RingKey, f64)>>, SettleError> {
        let searches = self.searches.fetch_add(1, Ordering::Relaxed) + 1;
        let done = f64::from(u32::try_from(searches).unwrap_or(u32::MAX));
        (self.progress)(done / (done + f64::from(SEARCHES) / 4.0));
        let aside: Vec<FindingKey> = FindingKey::ALL
            .iter()
            .copied()
            .filter(|key| !kept.contains(&Member::Finding(*key)))
            .collect();
        let let_go: Vec<LetGo> = RingKey::ALL
            .iter()
            .filter_map(|key| self.let_go(*key, kept))
            .collect();
        let trial = Trial {
            aside: &aside,
            ..self.problem.trial
        };
        if let_go.is_empty() {
            return Ok(None);
        }
        let relaxed = Problem::new(trial, let_go, self.cancel)?;
        let found = some_free(&relaxed, self.effort)?;
        Ok(found.map(|at| relaxed.sizes(&at)))
    }

    /// How far a dimension may move while `kept` holds; `None` where it is held.
    fn let_go(&self, key: RingKey, kept: &[Member]) -> Option<LetGo> {
        let own = self.problem.let_go.iter().find(|one| one.key == key);
        match own {
            Some(own) if kept.contains(&Member::Bounds(key)) => Some(*own),
            Some(own) => Some(LetGo {
                weight: own.weight,
                ..LetGo::over_its_range(key)
            }),
            None => (!kept.contains(&Member::Held(key))).then(|| LetGo::over_its_range(key)),
        }
    }

    /// The members of `among` that, with all of `kept`, leave no ring. `grew` says that `kept` has members that were not
    /// judged alone yet.
    fn smallest(
        &self,
        kept: &[Member],
        grew: bool,
        among: &[Member],
    ) -> Result<Vec<Member>, SettleError> {
        if grew && self.ring_with(kept)?.is_none() {
            return Ok(Vec::new());
        }
        if among.len() <= 1 {
            return Ok(among.to_vec());
        }
        let (first, second) = among.split_at(among.len() / 2);
        let with_first = [kept, first].concat();
        let of_second = self.smallest(&with_first, !first.is_empty(), second)?;
        let with_second = [kept, of_second.as_slice()].concat();
        let of_first = self.smallest(&with_second, !of_second.is_empty(), first)?;
        Ok([of_first, of_second].concat())
    }

    /// Only members without which a ring is found, each with that ring.
    fn proved(&self, mut members: Vec<Member>) -> Result<Vec<Release>, SettleError> {
        members.sort();
        'again: loop {
            let mut releases = Vec::with_capacity(members.len());
            for member in &members {
                let rest: Vec<Member> = members
                    .iter()
                    .copied()
                    .filter(|one| one != member)
                    .collect();
                let Some(sizes) = self.ring_with(&rest)? else {
                    // The rest contradicts itself without this one: it was named in vain.
                    members = rest;
                    continue 'again;
                };
                releases.push(Release {
                    member: *member,
                    sizes,
                });
            }
            return Ok(releases);
        }
    }
}
