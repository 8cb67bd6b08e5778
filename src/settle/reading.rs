//! One evaluation boiled down to what room, map and settling look at.

use std::borrow::Cow;

use super::level::Level;
use crate::checks::{Change, Finding, FindingKey, Severity};
use crate::document::RingKey;
use crate::evaluate::Judgement;
use crate::mount::Unit;
use crate::ring::outlines;

/// The number a finding was judged by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Judged {
    pub(super) value: f64,
    pub(super) limit: f64,
    pub(super) margin: f64,
    pub(super) share: f64,
}

impl Judged {
    /// +1 where a larger value is better, -1 where a smaller one is; `None` at the limit itself.
    pub(super) fn better(&self) -> Option<f64> {
        let way = self.margin.signum() * (self.value - self.limit).signum();
        (self.margin != 0.0 && way.is_finite()).then_some(way)
    }
}

/// One finding: how bad, and by which number of which aspect.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Mark {
    pub(super) key: FindingKey,
    pub(super) level: Level,
    /// What was computed: a check with several aspects tells the worst of them, under that one's name.
    pub(super) aspect: Cow<'static, str>,
    pub(super) unit: Unit,
    /// None where the check has no number.
    pub(super) judged: Option<Judged>,
}

impl Mark {
    fn of(finding: &Finding) -> Self {
        let numbers = (finding.value, finding.limit, finding.margin, finding.share);
        let judged = match numbers {
            (Some(value), Some(limit), Some(margin), Some(share)) => Some(Judged {
                value,
                limit,
                margin,
                share,
            }),
            _ => None,
        };
        let name = finding.working.first().map(|line| line.result.clone());
        let aspect = match (judged, name) {
            (Some(_), Some(name)) => name,
            // Without a number the sentence is all there is to tell one state from another: its words, for the
            // numbers in it may move with the dimension.
            _ if matches!(finding.severity, Severity::Clash | Severity::Caution) => finding
                .message
                .chars()
                .filter(|sign| !sign.is_ascii_digit())
                .collect::<String>()
                .into(),
            _ => Cow::Borrowed(""),
        };
        Self {
            key: finding.key,
            level: Level::of(finding.severity),
            aspect,
            unit: finding.unit,
            judged,
        }
    }

    /// Whether both tell the same aspect of the same check.
    pub(super) fn is_of_one_kind_with(&self, other: &Self) -> bool {
        self.key == other.key && self.unit == other.unit && self.aspect == other.aspect
    }
}

/// Why there is no ring to judge.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Stop {
    /// The sizes make no shape.
    Shape(String),
    /// The rules refuse.
    Refused(String),
    /// Values are missing.
    Lacking,
}

/// What one evaluation says.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Reading {
    pub(super) level: Level,
    /// One mark for each finding that counts, in the order of the keys.
    pub(super) marks: Vec<Mark>,
    pub(super) stop: Option<Stop>,
    /// The dimensions that the remedies of clashes would set.
    pub(super) remedies: Vec<(RingKey, f64)>,
}

impl Reading {
    /// The reading of a judgement without the findings set aside; a ring that is none cannot be set aside.
    pub(super) fn of(judgement: &Judgement, aside: &[FindingKey]) -> Self {
        let stop = stop_of(judgement);
        let counts = |finding: &&Finding| !aside.contains(&finding.key);
        let findings = || judgement.findings.iter().filter(counts);
        let mut marks: Vec<Mark> = findings().map(Mark::of).collect();
        if matches!(stop, Some(Stop::Shape(_))) {
            marks.retain(|mark| mark.key != FindingKey::AssumedValues);
            marks.extend(shape_mark(judgement));
        }
        marks.sort_by_key(|mark| mark.key);
        let worst = marks.iter().map(|mark| mark.level).min();
        let remedies = findings()
            .filter(|finding| finding.severity == Severity::Clash)
            .filter_map(|finding| match finding.remedy.as_ref()?.change {
                Some(Change::Dimension(key, value)) => Some((key, value)),
                _ => None,
            })
            .collect();
        Self {
            level: match stop {
                Some(_) => Level::Clash,
                None => worst.unwrap_or(Level::Free),
            },
            marks,
            stop,
            remedies,
        }
    }

    /// The mark of the same aspect.
    pub(super) fn like(&self, mark: &Mark) -> Option<&Mark> {
        self.marks.iter().find(|own| own.is_of_one_kind_with(mark))
    }

    /// The marks of this level.
    pub(super) fn at(&self, level: Level) -> impl Iterator<Item = &Mark> {
        self.marks.iter().filter(move |mark| mark.level == level)
    }
}

fn stop_of(judgement: &Judgement) -> Option<Stop> {
    if let Some(refusal) = &judgement.derivation.refusal {
        return Some(Stop::Refused(refusal.reason.clone()));
    }
    if let Some(fault) = &judgement.shape_fault {
        return Some(Stop::Shape(fault.clone()));
    }
    judgement.derivation.ring.is_none().then_some(Stop::Lacking)
}

/// Sizes that make no shape, with the millimetres they lack, where the fault is one of order.
fn shape_mark(judgement: &Judgement) -> Option<Mark> {
    let ring = judgement.derivation.ring.as_ref()?;
    let fault = outlines(ring).err()?;
    let judged = fault.lacking_mm().map(|lacking| Judged {
        value: -lacking,
        limit: 0.0,
        margin: -lacking,
        share: -lacking,
    });
    Some(Mark {
        key: FindingKey::AssumedValues,
        level: Level::Clash,
        aspect: fault.name(),
        unit: Unit::Mm,
        judged,
    })
}
