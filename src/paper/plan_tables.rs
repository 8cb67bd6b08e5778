//! The tables of the shop plan: settings of the dividing head, the table and the readout; infeed; times to stop.

use crate::drawing::printed::{Column, Table};
use crate::mount::show_number;
use crate::plan::{DividingList, Row, RunOut, Threading};
use crate::workshop::{Dials, Workshop};

fn words(head: &str) -> Column {
    Column::Words(head.to_owned())
}

fn number(head: &str) -> Column {
    Column::Number(head.to_owned())
}

fn degrees(value: f64) -> String {
    format!("{}\u{b0}", show_number(value, 4))
}

fn rows(list: &DividingList, cells: impl Fn(&Row) -> Vec<String>) -> Vec<Vec<String>> {
    list.rows
        .iter()
        .map(|row| {
            let mut all = vec![String::new(), row.mark.label()];
            all.extend(cells(row));
            all
        })
        .collect()
}

/// Angles closer than this are the same, degrees.
const SAME_DEG: f64 = 1e-6;

/// Whether the cutter's line differs from the edge anywhere, so that both are shown.
fn shows_edges(list: &DividingList) -> bool {
    let differs = |row: &Row| (row.edge_deg - row.work_deg).abs() > SAME_DEG;
    list.rows.iter().any(differs)
}

/// The columns of the angles, and their cells.
fn angle_columns(list: &DividingList) -> Vec<Column> {
    let mut columns = vec![Column::Tick, words("what")];
    if shows_edges(list) {
        columns.push(number("edge"));
    }
    columns.push(number("turn to"));
    columns
}

fn angle_rows(list: &DividingList, cells: impl Fn(&Row) -> Vec<String>) -> Vec<Vec<String>> {
    let shows = shows_edges(list);
    rows(list, |row| {
        let mut all = Vec::new();
        if shows {
            all.push(degrees(row.edge_deg));
        }
        all.push(degrees(row.work_deg));
        all.extend(cells(row));
        all
    })
}

/// Turns of the crank and holes.
#[must_use]
pub fn crank_table(list: &DividingList) -> Table {
    let mut columns = angle_columns(list);
    columns.extend(["turns", "spaces", "circle", "plate", "error '", "error mm"].map(number));
    Table {
        columns,
        rows: angle_rows(list, |row| {
            row.setting.map_or_else(
                || vec!["-".to_owned()],
                |one| {
                    vec![
                        one.turns.to_string(),
                        one.spaces.to_string(),
                        one.circle.to_string(),
                        (one.plate + 1).to_string(),
                        format!("{:+.2}", one.error_minutes()),
                        format!("{:+.4}", row.error_mm),
                    ]
                },
            )
        }),
    }
}

/// Degrees, minutes and seconds of a rotary table.
#[must_use]
pub fn rotary_table(list: &DividingList) -> Table {
    let mut columns = angle_columns(list);
    columns.push(number("on the table"));
    Table {
        columns,
        rows: angle_rows(list, |row| vec![row.table.to_string()]),
    }
}

/// Places for a digital readout.
#[must_use]
pub fn readout_table(list: &DividingList) -> Table {
    let shown =
        |value: Option<f64>| value.map_or_else(|| "-".to_owned(), |value| format!("{value:+.3}"));
    Table {
        columns: vec![Column::Tick, words("what"), number("x"), number("y")],
        rows: rows(list, |row| {
            vec![
                shown(row.readout.map(|point| point.x)),
                shown(row.readout.map(|point| point.y)),
            ]
        }),
    }
}

/// The passes by both methods, as the lathe's dials show them.
#[must_use]
pub fn infeed_table(threading: &Threading, dials: Dials) -> Table {
    let compound = format!(
        "on compound {}\u{b0}",
        show_number(threading.compound_angle_deg, 2)
    );
    Table {
        columns: vec![
            Column::Tick,
            number("pass"),
            number(&format!("constant area, {}", dials.unit())),
            number(&compound),
            number(&format!("softer first cut, {}", dials.unit())),
            number(&compound),
        ],
        rows: threading
            .passes
            .iter()
            .enumerate()
            .map(|(index, pass)| {
                vec![
                    String::new(),
                    (index + 1).to_string(),
                    dials.shown(pass.even_mm),
                    dials.shown(pass.even_on_compound_mm),
                    dials.shown(pass.soft_mm),
                    dials.shown(pass.soft_on_compound_mm),
                ]
            })
            .collect(),
    }
}

/// Seconds to stop at each speed of the lathe.
#[must_use]
pub fn stop_table(run_out: &RunOut, workshop: &Workshop) -> Table {
    Table {
        columns: vec![number("rpm"), number("s to stop"), words("")],
        rows: run_out
            .at_speeds(&workshop.lathe.speeds_rpm())
            .iter()
            .map(|time| {
                vec![
                    format!("{:.0}", time.rpm),
                    format!("{:.2}", time.seconds),
                    time.comfort.word().to_owned(),
                ]
            })
            .collect(),
    }
}
