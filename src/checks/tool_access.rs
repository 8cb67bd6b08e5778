//! `tool-access`: the tools of the workshop reach and fit, whole tool and holder, through the part as it stands.

use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Severity};
use super::judge::{Bounds, at_least, worst_of};
use super::{tool_jobs, tool_milling};
use crate::document::{LORE, Term, Working};
use crate::mount::Unit;
use crate::ring::Feature;

pub(super) const KEY: FindingKey = FindingKey::ToolAccess;

/// Judges every cut against the best tool for it; what one tool lacks another may have.
///
/// # Errors
/// [`NotJudged`] without fields when there is nothing to cut, which no ring comes to.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let jobs = [tool_jobs::all(cx), tool_milling::all(cx)].concat();
    let told: Vec<String> = jobs.iter().map(|job| job.summary.clone()).collect();
    let worst = worst_of(jobs.into_iter().map(|job| job.finding).collect())?;
    Ok(if worst.severity == Severity::Ok {
        worst.saying(told.join("; "))
    } else {
        worst
    })
}

/// One cut, judged.
#[derive(Clone, Debug)]
pub(super) struct Job {
    pub(super) finding: Finding,
    /// "groove by parting blade 2".
    pub(super) summary: String,
}

/// What a tool must have for a cut.
#[derive(Clone, Copy, Debug)]
pub(super) struct Need {
    /// What is spare or short: "width in the groove".
    pub(super) what: &'static str,
    /// What there is, mm.
    pub(super) has: f64,
    /// What is wanted, mm.
    pub(super) wants: f64,
    /// So much less is only a caution, mm.
    pub(super) slack: f64,
}

impl Need {
    /// A need without slack.
    pub(super) const fn of(what: &'static str, has: f64, wants: f64) -> Self {
        Self {
            what,
            has,
            wants,
            slack: 0.0,
        }
    }

    /// The same, and so much less is only a caution.
    pub(super) const fn or_less_by(mut self, slack: f64) -> Self {
        self.slack = slack;
        self
    }

    /// What is spare, worse by far where it is a clash.
    fn score(&self) -> f64 {
        const CLASH: f64 = 1e6;
        let margin = self.has - self.wants;
        if margin + self.slack < 0.0 {
            margin - CLASH
        } else {
            margin
        }
    }

    fn working(&self) -> Working {
        let has = Term::named("what there is", self.has, Unit::Mm);
        let wants = Term::named("what is wanted", self.wants, Unit::Mm);
        Working::new(self.what, has - wants, Unit::Mm, LORE)
    }
}

/// The score of a tool: its tightest need.
pub(super) fn score(needs: &[Need]) -> f64 {
    needs.iter().map(Need::score).fold(f64::INFINITY, f64::min)
}

/// The finding of one cut by one tool.
pub(super) fn judged(cx: &Context, cut: &str, tool: &str, needs: &[Need]) -> Job {
    let summary = format!("{cut} by {tool}");
    let Some(tightest) = needs.iter().min_by(|a, b| a.score().total_cmp(&b.score())) else {
        return Job {
            finding: Finding::said(KEY, Severity::Ok, summary.clone()),
            summary,
        };
    };
    let bounds = Bounds {
        clash: -tightest.slack,
        caution: cx.limits().tool_room,
        scale: 1.0,
    };
    let finding = at_least(KEY, tightest.working(), bounds);
    let margin = tightest.has - tightest.wants;
    let message = if margin < 0.0 {
        format!(
            "{cut}: no tool of the workshop fits; nearest is {tool}, short by {} in {}",
            Unit::Mm.show(-margin),
            tightest.what
        )
    } else {
        format!(
            "{summary}: {} to spare in {}, wanted at least {}",
            Unit::Mm.show(margin),
            tightest.what,
            Unit::Mm.show(bounds.caution)
        )
    };
    let finding = needs
        .iter()
        .filter(|need| need.what != tightest.what)
        .fold(finding.saying(message), |finding, need| {
            finding.worked(need.working())
        });
    Job { finding, summary }
}

/// The workshop has nothing of the kind.
pub(super) fn no_tool(cut: &str, kind: &str, feature: Feature) -> Job {
    let message = format!("{cut}: the workshop has no {kind}");
    Job {
        finding: Finding::said(KEY, Severity::Clash, message.clone())
            .at(super::finding::Place::Feature(feature))
            .cured_by(super::finding::Remedy::words(format!(
                "add {kind} to the workshop"
            ))),
        summary: message,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{design, judged as of};

    #[test]
    fn the_shipped_tools_cut_the_fixture_and_are_named() {
        let finding = of(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        for part in [
            "groove by parting blade 2",
            "relief by",
            "thread by",
            "bores by",
            "gaps by end mill 4",
        ] {
            assert!(
                finding.message.contains(part),
                "{part}: {}",
                finding.message
            );
        }
    }

    #[test]
    fn a_need_that_clashes_scores_below_any_that_does_not() {
        let soft = Need::of("a", 1.0, 3.0).or_less_by(2.5);
        let hard = Need::of("b", 1.0, 1.1);
        assert!(soft.score() > hard.score());
        assert!((score(&[soft, Need::of("c", 2.0, 1.0)]) + 2.0).abs() < 1e-12);
    }
}
