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

/// Turns of the crank and holes.
#[must_use]
pub fn crank_table(list: &DividingList) -> Table {
    Table {
        columns: vec![
            Column::Tick,
            words("what"),
            number("edge"),
            number("turn to"),
            number("turns"),
            number("spaces"),
            number("circle"),
            number("plate"),
            number("error '"),
            number("error mm"),
        ],
        rows: rows(list, |row| {
            let mut cells = vec![degrees(row.edge_deg), degrees(row.work_deg)];
            cells.extend(row.setting.map_or_else(
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
            ));
            cells
        }),
    }
}

/// Degrees, minutes and seconds of a rotary table.
#[must_use]
pub fn rotary_table(list: &DividingList) -> Table {
    Table {
        columns: vec![
            Column::Tick,
            words("what"),
            number("edge"),
            number("turn to"),
            number("on the table"),
        ],
        rows: rows(list, |row| {
            vec![
                degrees(row.edge_deg),
                degrees(row.work_deg),
                row.table.to_string(),
            ]
        }),
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
