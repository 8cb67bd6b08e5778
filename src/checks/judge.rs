//! From a worked number and its two limits to a finding.

use super::context::NotJudged;
use super::finding::{Finding, FindingKey, Severity};
use crate::document::{LimitKey, Limits, Working};

/// Which side of the limit is good.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    AtLeast,
    AtMost,
}

/// Two limits of one quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Beyond this it cannot work.
    pub clash: f64,
    /// Beyond this it may not work.
    pub caution: f64,
    /// What a margin is a share of when the limit is 0, same unit.
    pub scale: f64,
}

impl Bounds {
    /// The bounds from two settings; a limit of 0 is scaled by 1 of its unit.
    #[must_use]
    pub const fn of(limits: &Limits, clash: LimitKey, caution: LimitKey) -> Self {
        Self { clash: limits.get(clash), caution: limits.get(caution), scale: 1.0 }
    }
}

/// Differences below this are rounding: a tenth of a nanometre.
const ROUNDING: f64 = 1e-7;

/// Judges a value that must not fall under its limits.
#[must_use]
pub fn at_least(key: FindingKey, working: Working, bounds: Bounds) -> Finding {
    judge(key, working, bounds, Side::AtLeast)
}

/// Judges a value that must not exceed its limits.
#[must_use]
pub fn at_most(key: FindingKey, working: Working, bounds: Bounds) -> Finding {
    judge(key, working, bounds, Side::AtMost)
}

fn judge(key: FindingKey, working: Working, bounds: Bounds, side: Side) -> Finding {
    let value = working.term.value();
    let inside = |limit: f64| match side {
        Side::AtLeast => value - limit,
        Side::AtMost => limit - value,
    };
    // A number that is not one can never pass: NaN fails both comparisons.
    let (severity, limit) = if inside(bounds.caution) >= -ROUNDING && inside(bounds.clash) >= -ROUNDING {
        (Severity::Ok, bounds.caution)
    } else if inside(bounds.clash) >= -ROUNDING {
        (Severity::Caution, bounds.caution)
    } else {
        (Severity::Clash, bounds.clash)
    };
    let margin = inside(limit);
    let scale = if limit.abs() > ROUNDING { limit.abs() } else { bounds.scale };
    let word = match side {
        Side::AtLeast => "at least",
        Side::AtMost => "at most",
    };
    let unit = working.unit;
    let message = format!("{} {}, wanted {word} {}", working.result, unit.show(value), unit.show(limit));
    Finding {
        key,
        severity,
        message,
        value: Some(value),
        limit: Some(limit),
        margin: Some(margin),
        share: Some(margin / scale),
        unit,
        places: Vec::new(),
        working: vec![working],
        remedy: None,
    }
}

/// The worst of several aspects of one check, with the workings and places of all: the worst one's first.
///
/// Of equals the first is kept; a smaller share of the limit is worse.
///
/// # Errors
/// [`NotJudged`] without fields when nothing was judged at all.
pub fn worst_of(findings: Vec<Finding>) -> Result<Finding, NotJudged> {
    findings.into_iter().reduce(worse_first).ok_or_else(|| NotJudged(Vec::new()))
}

fn worse_first(first: Finding, second: Finding) -> Finding {
    let (mut worse, better) = if is_worse(&second, &first) { (second, first) } else { (first, second) };
    worse.working.extend(better.working);
    for place in better.places {
        if !worse.places.contains(&place) {
            worse.places.push(place);
        }
    }
    worse
}

/// Whether `a` is worse than `b`; a finding without a share stands behind one that has it.
#[must_use]
pub fn is_worse(a: &Finding, b: &Finding) -> bool {
    let share = |finding: &Finding| finding.share.unwrap_or(f64::INFINITY);
    a.severity.cmp(&b.severity).then(share(a).total_cmp(&share(b))).is_lt()
}
