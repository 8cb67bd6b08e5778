//! Why no ring can be found: the findings and the held dimensions that contradict each other.
//!
//! The set is found by halving (Junker, QuickXplain, 2004; from memory) and then proved member by member: without any
//! one of them a ring was found that keeps all the others. So no member is named in vain.
//!
//! Whether a smaller set contradicts itself is asked as Ignatiev and others do it (Smallest MUS extraction with minimal
//! hitting set dualization, 2015; from memory): every ring that was ever found breaks some members, and whatever
//! contradicts itself must hold one of them, or that ring would keep it. So no contradiction is smaller than the least
//! set that meets what each ring breaks. That set is tried in turn: a ring that keeps it breaks something new; where
//! none is found it is the smaller contradiction.

use std::collections::BTreeSet;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};

use super::cancelled::go_on;
use super::hitting::{Hitting, least_hitting};
use super::level::Level;
use super::problem::{LetGo, Problem, SettleError};
use super::reading::Stop;
use super::search::{Effort, some_free};
use super::trial::Trial;
use crate::checks::{FindingKey, Severity};
use crate::document::RingKey;
use crate::evaluate::judge;
use crate::ring::derive;

/// Searches that a contradiction takes, roughly, for the share done.
const SEARCHES: u32 = 40;
/// Sets tried before it is left open whether a smaller one contradicts itself.
const TRIED: usize = 40;
/// Nearer than this a value is as it was stated, mm or degrees.
const AS_STATED: f64 = 1e-9;

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

/// How far it is proved that no smaller set contradicts itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Proved: every smaller set is kept whole by one of the rings found.
    Smallest,
    /// No member can be left out; another, smaller set may contradict itself as well.
    Irreducible,
}

impl Standing {
    /// The same in a sentence.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Smallest => {
                "No smaller set contradicts itself: some ring that was found keeps each of those."
            }
            Self::Irreducible => {
                "None of them can be left out; whether another set is smaller was not searched to the end."
            }
        }
    }
}

/// Things that cannot all hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Contradiction {
    /// How far they are proved to be the fewest.
    pub standing: Standing,
    /// The members, and for each the ring that was found without it.
    pub releases: Vec<Release>,
    /// Where not even letting everything go and judging nothing makes a ring: what stops it.
    pub no_ring: Option<String>,
}

impl Contradiction {
    /// The members.
    #[must_use]
    pub fn members(&self) -> Vec<Member> {
        members_of(&self.releases)
    }
}

/// The parts of a problem that can be kept or given up.
struct Court<'a, 'p> {
    problem: &'a Problem<'p>,
    cancel: &'a AtomicBool,
    effort: Effort,
    searches: AtomicUsize,
    /// What each ring that was found breaks.
    broken: Mutex<Vec<BTreeSet<Member>>>,
    /// A ring that breaks nothing: what the search before overlooked.
    overlooked: Mutex<Option<Vec<f64>>>,
    progress: &'a (dyn Fn(f64) + Sync),
}

/// The members that contradict each other, of a problem for which no ring was found; and the ring after all, where one
/// was met on the way that breaks nothing.
pub(super) fn contradiction(
    problem: &Problem,
    progress: &(impl Fn(f64) + Sync),
) -> Result<(Contradiction, Option<Vec<f64>>), SettleError> {
    let mut court = Court {
        problem,
        cancel: problem.cancel,
        effort: Effort::LIGHT,
        searches: AtomicUsize::new(0),
        broken: Mutex::new(Vec::new()),
        overlooked: Mutex::new(None),
        progress,
    };
    if court.ring_with(&[])?.is_none() {
        let nothing = Contradiction {
            standing: Standing::Irreducible,
            releases: Vec::new(),
            no_ring: Some(what_stops(problem)?),
        };
        return Ok((nothing, None));
    }
    let mut releases = court.verdict()?;
    court.effort = Effort::FULL;
    if court.ring_with(&members_of(&releases))?.is_some() {
        // A light search overlooked a ring somewhere: look harder throughout.
        releases = court.verdict()?;
    }
    let (releases, standing) = court.fewest(releases)?;
    let found = Contradiction {
        standing,
        releases,
        no_ring: None,
    };
    let overlooked = court
        .overlooked
        .into_inner()
        .unwrap_or_else(PoisonError::into_inner);
    Ok((found, overlooked))
}

fn members_of(releases: &[Release]) -> Vec<Member> {
    releases.iter().map(|release| release.member).collect()
}

/// What a thread that broke off left behind is whole: each push is one.
fn lock<T>(kept: &Mutex<T>) -> MutexGuard<'_, T> {
    kept.lock().unwrap_or_else(PoisonError::into_inner)
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
        let Some(at) = some_free(&relaxed, self.effort)? else {
            return Ok(None);
        };
        let sizes = self.put_back(trial, relaxed.sizes(&at))?;
        let broken = self.broken_by(&sizes);
        if broken.is_empty() {
            *lock(&self.overlooked) = self.values_of(&sizes);
        }
        lock(&self.broken).push(broken);
        Ok(Some(sizes))
    }

    /// The same ring with as much as possible as it was stated: the less it breaks, the more it proves.
    fn put_back(
        &self,
        trial: Trial<'_>,
        mut sizes: Vec<(RingKey, f64)>,
    ) -> Result<Vec<(RingKey, f64)>, SettleError> {
        for key in RingKey::ALL {
            let less: Vec<(RingKey, f64)> = sizes
                .iter()
                .copied()
                .filter(|(own, _)| own != key)
                .collect();
            if less.len() < sizes.len() {
                go_on(self.cancel)?;
                if trial.read(&less).level > Level::Clash {
                    sizes = less;
                }
            }
        }
        Ok(sizes)
    }

    /// What was let go, in a ring of these sizes.
    fn values_of(&self, sizes: &[(RingKey, f64)]) -> Option<Vec<f64>> {
        let trial = self.problem.trial;
        let derivation = derive(&trial.with(sizes), trial.workshop);
        let value = |one: &LetGo| derivation.dimension(one.key)?.value;
        self.problem.let_go.iter().map(value).collect()
    }

    /// The members that a ring breaks.
    fn broken_by(&self, sizes: &[(RingKey, f64)]) -> BTreeSet<Member> {
        let trial = Trial {
            aside: &[],
            ..self.problem.trial
        };
        let judgement = judge(&trial.with(sizes), trial.workshop);
        let stated = &trial.design.ring.dimensions;
        let value = |key: RingKey| {
            let state = judgement.derivation.dimension(key)?;
            Some((state.value?, state.by_rule))
        };
        let breaks = |member: &Member| match *member {
            Member::Finding(key) => judgement
                .findings
                .iter()
                .any(|finding| finding.key == key && finding.severity == Severity::Clash),
            Member::Held(key) => value(key).is_none_or(|(value, by_rule)| {
                let held = stated.get(key).value.set().copied().or(by_rule);
                held.is_none_or(|held| (value - held).abs() > AS_STATED)
            }),
            Member::Bounds(key) => {
                let own = self.problem.let_go.iter().find(|one| one.key == key);
                value(key)
                    .zip(own)
                    .is_none_or(|((value, _), own)| !(own.low..=own.high).contains(&value))
            }
        };
        candidates(self.problem)
            .into_iter()
            .filter(breaks)
            .collect()
    }

    /// The fewest members, as far as they can be found, and whether they are proved to be.
    fn fewest(&self, found: Vec<Release>) -> Result<(Vec<Release>, Standing), SettleError> {
        let mut best = found;
        for _ in 0..TRIED {
            let broken = lock(&self.broken).clone();
            let smaller = match least_hitting(&broken, best.len().saturating_sub(1)) {
                Hitting::Least(smaller) => smaller,
                Hitting::None => return Ok((best, Standing::Smallest)),
                Hitting::GivenUp => break,
            };
            if self.ring_with(&smaller)?.is_none() {
                best = self.proved(smaller)?;
            }
        }
        Ok((best, Standing::Irreducible))
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
