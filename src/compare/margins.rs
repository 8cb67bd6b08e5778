//! Every finding with its margin in each of the compared designs.

use super::entry::SAME;
use super::subject::Subject;
use crate::checks::{Finding, FindingKey, Severity};
use crate::mount::Unit;

/// What one design's check says.
#[derive(Clone, Debug, PartialEq)]
pub struct Margin {
    /// How bad.
    pub severity: Severity,
    /// The judged value.
    pub value: Option<f64>,
    /// The limit.
    pub limit: Option<f64>,
    /// How far inside the limit; negative is outside.
    pub margin: Option<f64>,
    /// The margin as a share of the limit.
    pub share: Option<f64>,
    /// Unit of value, limit and margin.
    pub unit: Unit,
    /// The sentence.
    pub message: String,
}

/// One check over all compared designs.
#[derive(Clone, Debug, PartialEq)]
pub struct FindingRow {
    /// Which check.
    pub key: FindingKey,
    /// What it says of each, in the order of the subjects.
    pub cells: Vec<Option<Margin>>,
}

impl Margin {
    fn of(finding: &Finding) -> Self {
        Self {
            severity: finding.severity,
            value: finding.value,
            limit: finding.limit,
            margin: finding.margin,
            share: finding.share,
            unit: finding.unit,
            message: finding.message.clone(),
        }
    }

    /// The margin in words, or that there is no number.
    #[must_use]
    pub fn words(&self) -> String {
        self.margin.map_or_else(
            || "no number".to_owned(),
            |margin| signed(margin, self.unit),
        )
    }
}

/// A margin or a change with its sign, plus too.
///
/// ```
/// use flangewright::compare::signed;
/// use flangewright::mount::Unit;
/// assert_eq!(signed(0.25, Unit::Mm), "+0.25 mm");
/// assert_eq!(signed(-0.3, Unit::Mm), "-0.30 mm");
/// assert_eq!(signed(-1e-12, Unit::Mm), "+0.00 mm");
/// ```
#[must_use]
pub fn signed(value: f64, unit: Unit) -> String {
    let shown = unit.show(value);
    if shown.starts_with('-') {
        shown
    } else {
        format!("+{shown}")
    }
}

impl FindingRow {
    /// The worst severity of the row.
    #[must_use]
    pub fn worst(&self) -> Severity {
        let found = self.cells.iter().flatten().map(|cell| cell.severity).min();
        found.unwrap_or(Severity::Ok)
    }

    /// The least margin of the row as a share of its limit.
    fn least_share(&self) -> f64 {
        let shares = self.cells.iter().flatten().filter_map(|cell| cell.share);
        shares.fold(f64::INFINITY, f64::min)
    }

    /// Whether the designs differ in severity or margin.
    #[must_use]
    pub fn differs(&self) -> bool {
        let mut rest = self.cells.iter();
        let Some(first) = rest.next() else {
            return false;
        };
        rest.any(|cell| match (first, cell) {
            (Some(a), Some(b)) => a.severity != b.severity || !same(a.margin, b.margin),
            (None, None) => false,
            (Some(_), None) | (None, Some(_)) => true,
        })
    }
}

fn same(a: Option<f64>, b: Option<f64>) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => (a - b).abs() <= SAME || a.to_bits() == b.to_bits(),
        (None, None) => true,
        (Some(_), None) | (None, Some(_)) => false,
    }
}

/// Every check, that with the worst severity in any design first, then by the least margin as a share of its limit.
#[must_use]
pub fn finding_rows(subjects: &[Subject<'_>]) -> Vec<FindingRow> {
    let mut rows: Vec<FindingRow> = FindingKey::ALL
        .iter()
        .map(|key| FindingRow {
            key: *key,
            cells: subjects
                .iter()
                .map(|subject| subject.evaluation.finding(*key).map(Margin::of))
                .collect(),
        })
        .filter(|row| row.cells.iter().any(Option::is_some))
        .collect();
    rows.sort_by(|a, b| {
        a.worst()
            .cmp(&b.worst())
            .then(a.least_share().total_cmp(&b.least_share()))
            .then(a.key.cmp(&b.key))
    });
    rows
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Choice, RingKey, demo_designs};
    use crate::evaluate::evaluate;
    use crate::workshop::Workshop;

    #[test]
    fn the_worst_of_any_design_stands_first_and_every_check_is_there() {
        let workshop = Workshop::default_set().unwrap();
        let one = demo_designs().unwrap().remove(0);
        let mut two = one.clone();
        // Under the clash limit of a lip, 0.8 mm by default.
        two.ring.dimensions.get_mut(RingKey::LipThickness).value = Choice::Set(0.5);
        let evaluations = [evaluate(&one, &workshop), evaluate(&two, &workshop)];
        let subjects = [
            Subject {
                name: "as it is",
                design: &one,
                evaluation: &evaluations[0],
            },
            Subject {
                name: "thin lip",
                design: &two,
                evaluation: &evaluations[1],
            },
        ];
        let rows = finding_rows(&subjects);
        assert_eq!(rows.len(), FindingKey::ALL.len());
        assert_eq!(rows[0].key, FindingKey::LipThickness);
        assert!(rows[0].differs() && rows[0].worst() == Severity::Clash);
        let severities = rows[0].cells.iter().flatten().map(|cell| cell.severity);
        assert!(severities.eq([Severity::Ok, Severity::Clash]));
        assert!(
            rows.windows(2)
                .all(|pair| pair[0].worst() <= pair[1].worst())
        );
        let itself = finding_rows(&[subjects[0], subjects[0]]);
        assert!(itself.iter().all(|row| !row.differs()));
    }
}
