//! The comparison as a table for other programs: comma-separated values (RFC 4180).

use csv::{Terminator, WriterBuilder};
use thiserror::Error;

use super::differing::{DifferingRow, differing};
use super::entry::Value;
use super::margins::{FindingRow, Margin, finding_rows};
use super::subject::{Subject, distinct_names};
use crate::mount::Unit;

/// The table could not be put together.
#[derive(Debug, Error)]
#[error("the table could not be put together: {0}")]
pub struct CsvError(String);

/// First columns of the table; one column for each design follows.
const HEAD: [&str; 5] = ["part", "key", "name", "what", "unit"];

/// The table as bytes, UTF-8: a head, a row for each entry that differs, and for every check a row of severities and one
/// of margins. Numbers have a decimal point and no unit; an empty cell stands for what is unknown or not there.
///
/// # Errors
/// [`CsvError`] where memory fails; tables of ours do not.
pub fn csv_bytes(subjects: &[Subject<'_>]) -> Result<Vec<u8>, CsvError> {
    let mut writer = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .from_writer(Vec::new());
    for row in rows(subjects) {
        writer
            .write_record(&row)
            .map_err(|error| CsvError(error.to_string()))?;
    }
    writer
        .into_inner()
        .map_err(|error| CsvError(error.to_string()))
}

fn rows(subjects: &[Subject<'_>]) -> Vec<Vec<String>> {
    let names = distinct_names(subjects.iter().map(|subject| subject.name));
    let head = HEAD.iter().map(|word| (*word).to_owned());
    let mut rows = vec![
        head.chain(names.iter().map(|name| harmless(name)))
            .collect(),
    ];
    rows.extend(differing(subjects).iter().map(entry_row));
    rows.extend(finding_rows(subjects).iter().flat_map(check_rows));
    rows
}

fn entry_row(row: &DifferingRow) -> Vec<String> {
    let unit = row
        .cells
        .iter()
        .flatten()
        .find(|entry| matches!(entry.value, Value::Number(_)))
        .map_or(Unit::One, |entry| entry.unit);
    let head = [
        row.id.group.word().to_owned(),
        row.id.key(),
        row.id.label(),
        "value".to_owned(),
        unit.sign().to_owned(),
    ];
    let cells = row.cells.iter().map(|cell| match cell {
        Some(entry) => match &entry.value {
            Value::Number(number) => plain(*number),
            Value::Words(words) => harmless(words),
            Value::Unknown => String::new(),
        },
        None => String::new(),
    });
    head.into_iter().chain(cells).collect()
}

fn check_rows(row: &FindingRow) -> [Vec<String>; 2] {
    let cells = || row.cells.iter().map(Option::as_ref);
    let unit = cells()
        .flatten()
        .find(|cell| cell.margin.is_some())
        .map_or(Unit::One, |cell| cell.unit);
    let head = |what: &str, unit: &str| {
        [
            "finding".to_owned(),
            row.key.name().to_owned(),
            row.key.title().to_owned(),
            what.to_owned(),
            unit.to_owned(),
        ]
    };
    let severity = |cell: Option<&Margin>| {
        cell.map_or_else(String::new, |cell| cell.severity.word().to_owned())
    };
    let margin = |cell: Option<&Margin>| {
        let margin = cell.and_then(|cell| cell.margin);
        margin.map_or_else(String::new, plain)
    };
    [
        head("severity", "")
            .into_iter()
            .chain(cells().map(severity))
            .collect(),
        head("margin", unit.sign())
            .into_iter()
            .chain(cells().map(margin))
            .collect(),
    ]
}

/// A number to a millionth of its unit, idle zeros cut off.
fn plain(number: f64) -> String {
    let text = format!("{number:.6}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// Words that a spreadsheet would work as a formula get an apostrophe in front (OWASP, CSV injection, from memory).
fn harmless(words: &str) -> String {
    if words.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{words}")
    } else {
        words.to_owned()
    }
}

#[cfg(test)]
#[path = "csv_file_tests.rs"]
mod tests;
