//! `thread`: the limits of a thread as its standard gives them.

use std::process::ExitCode;

use clap::Args;
use flangewright::document::columns;
use flangewright::standards::{Basis, Side, Thread, ThreadLimits as Limits};
use serde::Serialize;

use super::json::clean_option;
use super::output::print;

/// Prints the limits of a thread, such as M42x1-6H, "1-32 UN" or "39 x 26 tpi Whitworth".
#[derive(Args, Debug)]
pub struct ThreadLimits {
    /// The thread; with a class its own side, without one both sides (6H and 6g, or 2B and 2A).
    #[arg(value_name = "DESIGNATION")]
    designation: String,
    /// Prints one JSON object.
    #[arg(long)]
    json: bool,
}

impl ThreadLimits {
    /// Prints the limits.
    ///
    /// # Errors
    /// The designation is not understood, or standard output cannot be written.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let thread: Thread = self.designation.parse()?;
        let sides = match thread.class() {
            Some(class) => vec![class.side()],
            None => vec![Side::Internal, Side::External],
        };
        let limits = sides
            .into_iter()
            .map(|side| thread.limits(side))
            .collect::<Result<Vec<Limits>, _>>()?;
        if self.json {
            print(&serde_json::to_string(&ThreadJson::of(&thread, &limits))?)?;
        } else {
            print(&text(&thread, &limits))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}

/// The weakest basis of all sides: a formula is weaker than a table, a bare profile weaker than a formula.
fn basis_word(limits: &[Limits]) -> &'static str {
    let has = |basis: Basis| limits.iter().any(|side| side.basis == basis);
    if has(Basis::Basic) {
        "basic"
    } else if has(Basis::Computed) {
        "computed"
    } else {
        "table"
    }
}

fn notes_of(limits: &[Limits]) -> Vec<&str> {
    let mut notes: Vec<&str> = Vec::new();
    for note in limits.iter().flat_map(|side| &side.notes) {
        if !notes.contains(&note.as_str()) {
            notes.push(note);
        }
    }
    notes
}

fn text(thread: &Thread, limits: &[Limits]) -> String {
    let source = limits.first().map_or("", |side| side.source);
    let mut rows = Vec::new();
    for side in limits {
        let sizes = [
            ("major", side.major_min, side.major_max),
            (
                "pitch diameter",
                side.pitch_diameter_min,
                side.pitch_diameter_max,
            ),
            ("minor", side.minor_min, side.minor_max),
        ];
        for (name, least, greatest) in sizes {
            rows.push(vec![
                side.side.to_string(),
                name.to_owned(),
                show(least),
                show(greatest),
            ]);
        }
    }
    let mut lines = vec![
        format!("{thread}, {source} ({})", basis_word(limits)),
        columns(&["side", "mm", "least", "greatest"], &rows),
    ];
    lines.extend(
        notes_of(limits)
            .into_iter()
            .map(|note| format!("note: {note}")),
    );
    lines.join("\n")
}

fn show(value: Option<f64>) -> String {
    value.map_or_else(|| "-".to_owned(), |value| format!("{value:.3}"))
}

/// The JSON of one thread.
#[derive(Serialize)]
struct ThreadJson<'a> {
    designation: String,
    basis: &'static str,
    source: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    internal: Option<SideJson>,
    #[serde(skip_serializing_if = "Option::is_none")]
    external: Option<SideJson>,
    notes: Vec<&'a str>,
}

impl<'a> ThreadJson<'a> {
    fn of(thread: &Thread, limits: &'a [Limits]) -> Self {
        let side = |wanted: Side| {
            limits
                .iter()
                .find(|side| side.side == wanted)
                .map(SideJson::of)
        };
        Self {
            designation: thread.to_string(),
            basis: basis_word(limits),
            source: limits.first().map_or("", |side| side.source),
            internal: side(Side::Internal),
            external: side(Side::External),
            notes: notes_of(limits),
        }
    }
}

/// The limits of one side, mm; null where the standard sets none.
#[derive(Serialize)]
struct SideJson {
    major_min: Option<f64>,
    major_max: Option<f64>,
    pitch_diameter_min: Option<f64>,
    pitch_diameter_max: Option<f64>,
    minor_min: Option<f64>,
    minor_max: Option<f64>,
}

impl SideJson {
    fn of(limits: &Limits) -> Self {
        Self {
            major_min: clean_option(limits.major_min),
            major_max: clean_option(limits.major_max),
            pitch_diameter_min: clean_option(limits.pitch_diameter_min),
            pitch_diameter_max: clean_option(limits.pitch_diameter_max),
            minor_min: clean_option(limits.minor_min),
            minor_max: clean_option(limits.minor_max),
        }
    }
}
