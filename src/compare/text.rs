//! The comparison as plain text, for the terminal.

use super::differing::differing;
use super::margins::finding_rows;
use super::overlay::{Cut, Difference, OverlayError, pattern_difference, section_difference};
use super::subject::{Subject, distinct_names};
use crate::document::columns;
use crate::mount::Unit;

/// The tables one under the other: what differs, every finding, and the areas by which each differs from the first.
#[must_use]
pub fn text(subjects: &[Subject<'_>]) -> String {
    let names = distinct_names(subjects.iter().map(|subject| subject.name));
    [
        dimensions(subjects, &names),
        findings(subjects, &names),
        areas(subjects, &names),
    ]
    .join("\n\n")
}

fn head<'a>(first: &[&'a str], names: &'a [String]) -> Vec<&'a str> {
    let names = names.iter().map(String::as_str);
    first.iter().copied().chain(names).collect()
}

fn dimensions(subjects: &[Subject<'_>], names: &[String]) -> String {
    let rows: Vec<Vec<String>> = differing(subjects)
        .iter()
        .map(|row| {
            [row.id.group.word().to_owned(), row.id.label()]
                .into_iter()
                .chain(row.words())
                .collect()
        })
        .collect();
    if rows.is_empty() {
        return "no dimension, mating value or limit differs".to_owned();
    }
    columns(&head(&["", "differs"], names), &rows)
}

fn findings(subjects: &[Subject<'_>], names: &[String]) -> String {
    let rows: Vec<Vec<String>> = finding_rows(subjects)
        .iter()
        .map(|row| {
            let cells = row.cells.iter().map(|cell| {
                cell.as_ref().map_or_else(String::new, |cell| {
                    format!("{} {}", cell.severity.word(), cell.words())
                })
            });
            std::iter::once(row.key.name().to_owned())
                .chain(cells)
                .collect()
        })
        .collect();
    columns(&head(&["finding, margin"], names), &rows)
}

fn areas(subjects: &[Subject<'_>], names: &[String]) -> String {
    let Some((first, others)) = subjects.split_first() else {
        return String::new();
    };
    let of = |name: &str, found: Result<Difference, OverlayError>| match found {
        Ok(found) => vec![
            name.to_owned(),
            format!("+{}", Unit::Mm2.show(found.added.area())),
            format!("-{}", Unit::Mm2.show(found.removed.area())),
        ],
        Err(error) => vec![name.to_owned(), error.to_string()],
    };
    let mut rows = Vec::new();
    for (subject, name) in others.iter().zip(names.iter().skip(1)) {
        for cut in Cut::ALL {
            let words = format!("{name}, half-section {}", cut.words());
            rows.push(of(&words, section_difference(first, subject, cut)));
        }
        let words = format!("{name}, nose and lugs in the plan");
        rows.push(of(&words, pattern_difference(first, subject)));
    }
    let against = names.first().map_or("the first", String::as_str);
    let head = format!("metal against {against}");
    columns(&[&head, "added", "removed"], &rows)
}
