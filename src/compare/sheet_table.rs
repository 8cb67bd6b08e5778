//! The tables on the page of a comparison.

use super::differing::differing;
use super::margins::{FindingRow, finding_rows};
use super::sheet_page::{LETTERS, Page};
use super::subject::Subject;
use crate::checks::Severity;
use crate::drawing::lettering::LINE_PITCH;

/// Where the columns stand, mm.
#[derive(Clone, Copy)]
pub(super) struct Lanes {
    pub(super) left: f64,
    pub(super) names: f64,
    pub(super) column: f64,
}

impl Lanes {
    /// The left edge of each column.
    pub(super) fn columns(self) -> impl Iterator<Item = f64> {
        let first = self.left + self.names;
        std::iter::successors(Some(first), move |x_mm| Some(x_mm + self.column))
    }
}

/// What differs, then every finding that differs or is not fine in all.
pub(super) fn tables(page: &mut Page, subjects: &[Subject<'_>], names: &[String], lanes: Lanes) {
    let rows = differing(subjects);
    let head = if rows.is_empty() {
        "Nothing differs"
    } else {
        "What differs"
    };
    row(page, lanes, head, names);
    page.at_mm -= 1.5;
    page.rule();
    for differs in &rows {
        let name = format!("{}: {}", differs.id.group.word(), differs.id.label());
        row(page, lanes, &name, &differs.words());
    }
    page.at_mm -= 3.0;
    row(page, lanes, "Findings, margin to the limit", names);
    page.at_mm -= 1.5;
    page.rule();
    let told = |row: &FindingRow| row.differs() || row.worst() != Severity::Ok;
    let findings = finding_rows(subjects);
    for finding in findings.iter().filter(|row| told(row)) {
        row(page, lanes, finding.key.title(), &margins(finding));
    }
    let fine = findings.iter().filter(|row| !told(row)).count();
    if fine > 0 {
        let words = format!("{fine} further findings are ok and the same in all");
        row(page, lanes, &words, &[]);
    }
}

fn margins(row: &FindingRow) -> Vec<String> {
    row.cells
        .iter()
        .map(|cell| {
            cell.as_ref().map_or_else(String::new, |cell| {
                let margin = cell
                    .margin
                    .map_or_else(String::new, |_| format!(" {}", cell.words()));
                format!("{}{margin}", cell.severity.word())
            })
        })
        .collect()
}

fn row(page: &mut Page, lanes: Lanes, name: &str, cells: &[String]) {
    page.at_mm -= LINE_PITCH * LETTERS;
    let room = if cells.is_empty() {
        lanes.names + lanes.column
    } else {
        lanes.names
    };
    page.write(lanes.left, page.at_mm, LETTERS, name, room - 2.0);
    for (cell, x_mm) in cells.iter().zip(lanes.columns()) {
        page.write(x_mm, page.at_mm, LETTERS, cell, lanes.column - 2.0);
    }
}
