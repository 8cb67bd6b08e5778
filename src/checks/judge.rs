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
        Self {
            clash: limits.get(clash),
            caution: limits.get(caution),
            scale: 1.0,
        }
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
    let (severity, limit) =
        if inside(bounds.caution) >= -ROUNDING && inside(bounds.clash) >= -ROUNDING {
            (Severity::Ok, bounds.caution)
        } else if inside(bounds.clash) >= -ROUNDING {
            (Severity::Caution, bounds.caution)
        } else {
            (Severity::Clash, bounds.clash)
        };
    let margin = inside(limit);
    let scale = if limit.abs() > ROUNDING {
        limit.abs()
    } else {
        bounds.scale
    };
    let word = match side {
        Side::AtLeast => "at least",
        Side::AtMost => "at most",
    };
    let unit = working.unit;
    let message = format!(
        "{} {}, wanted {word} {}",
        working.result,
        unit.show(value),
        unit.show(limit)
    );
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
    findings
        .into_iter()
        .reduce(worse_first)
        .ok_or_else(|| NotJudged(Vec::new()))
}

fn worse_first(first: Finding, second: Finding) -> Finding {
    let (mut worse, better) = if is_worse(&second, &first) {
        (second, first)
    } else {
        (first, second)
    };
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
    a.severity
        .cmp(&b.severity)
        .then(share(a).total_cmp(&share(b)))
        .is_lt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::{Place, Severity};
    use crate::document::{LORE, Term};
    use crate::mount::Unit;
    use crate::ring::Feature;

    const KEY: FindingKey = FindingKey::ThinWall;
    const BOUNDS: Bounds = Bounds {
        clash: 1.0,
        caution: 2.0,
        scale: 1.0,
    };

    fn working(value: f64) -> Working {
        Working::new("value", Term::from(value), Unit::Mm, LORE)
    }

    #[test]
    fn each_side_of_each_limit() {
        for (value, least, most) in [
            (0.9, Severity::Clash, Severity::Ok),
            (1.0, Severity::Caution, Severity::Ok),
            (2.0, Severity::Ok, Severity::Clash),
            (2.1, Severity::Ok, Severity::Clash),
            (f64::NAN, Severity::Clash, Severity::Clash),
        ] {
            assert_eq!(
                at_least(KEY, working(value), BOUNDS).severity,
                least,
                "{value}"
            );
            let upper = Bounds {
                clash: 1.5,
                caution: 1.2,
                scale: 1.0,
            };
            assert_eq!(
                at_most(KEY, working(value), upper).severity,
                most,
                "{value}"
            );
        }
    }

    #[test]
    fn the_margin_is_a_share_of_the_limit_that_judged() {
        let caution = at_least(KEY, working(1.5), BOUNDS);
        assert_eq!(
            (caution.limit, caution.margin, caution.share),
            (Some(2.0), Some(-0.5), Some(-0.25))
        );
        let clash = at_least(KEY, working(0.5), BOUNDS);
        assert_eq!((clash.limit, clash.share), (Some(1.0), Some(-0.5)));
    }

    #[test]
    fn the_worst_is_kept_with_the_workings_and_places_of_all() {
        let well = at_least(KEY, working(5.0), BOUNDS).at(Place::Feature(Feature::Rim));
        let poor = at_least(KEY, working(1.5), BOUNDS).at(Place::Feature(Feature::Seat));
        let poorer = at_least(KEY, working(1.2), BOUNDS).at(Place::Feature(Feature::Seat));
        let worst = worst_of(vec![well, poor, poorer]).unwrap();
        assert_eq!(worst.value, Some(1.2));
        assert_eq!(worst.working.len(), 3);
        assert_eq!(
            worst.places,
            vec![Place::Feature(Feature::Seat), Place::Feature(Feature::Rim)]
        );
        assert!(worst_of(Vec::new()).is_err());
    }

    #[test]
    fn of_equals_the_first_is_kept() {
        let told = |text: &str| Finding::said(KEY, Severity::Ok, text);
        assert_eq!(
            worst_of(vec![told("one"), told("two")]).unwrap().message,
            "one"
        );
    }
}
