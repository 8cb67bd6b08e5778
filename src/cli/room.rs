//! `room`: how far each dimension of a design can move before a finding becomes a clash, or a caution.

use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::atomic::AtomicBool;

use clap::Args;
use flangewright::app::files;
use flangewright::document::RingKey;
use flangewright::settle::{End, Room as RoomOfOne, Span, rooms};
use serde::Serialize;

use super::dimension_name::dimension;
use super::inputs::workshop;
use super::json::{clean, clean_option, unit_name};
use super::output::print;

/// Prints how far each dimension can move, everything else staying as it is stated.
#[derive(Args, Debug)]
pub struct Room {
    /// Design file.
    file: PathBuf,
    /// Name of a dimension as in the file, such as lip_thickness; without it, all of them.
    #[arg(value_name = "DIMENSION")]
    dimension: Option<String>,
    /// Prints one JSON object a line, one line a dimension.
    #[arg(long)]
    json: bool,
    /// Workshop file; without it, the shipped workshop.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
}

impl Room {
    /// Prints the spans of each dimension.
    ///
    /// # Errors
    /// The design cannot be read, or no dimension has that name.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let keys = match &self.dimension {
            Some(name) => vec![dimension(name)?],
            None => RingKey::ALL.to_vec(),
        };
        let design = files::open_design(&self.file)?;
        let workshop = workshop(self.workshop.as_deref())?;
        let never = AtomicBool::new(false);
        for room in rooms(&design, &workshop, &keys, &[], &never, |_| {})? {
            if self.json {
                print(&serde_json::to_string(&RoomJson::of(&room))?)?;
            } else {
                print(&text(&room))?;
            }
        }
        Ok(ExitCode::SUCCESS)
    }
}

fn text(room: &RoomOfOne) -> String {
    let unit = room.key.unit();
    let present = room.present.map_or_else(
        || "cannot be derived yet".to_owned(),
        |value| unit.show(value),
    );
    let mut lines = vec![format!("{}: {present}", room.key.name())];
    for (word, spans) in [
        ("no clash", &room.without_clash),
        ("no caution", &room.without_caution),
    ] {
        if spans.is_empty() {
            lines.push(format!("  {word:<12}nowhere"));
        }
        for span in spans {
            let here = room.present.is_some_and(|value| span.holds(value));
            lines.push(format!(
                "  {word:<12}{} to {}{}",
                unit.show(span.from),
                unit.show(span.to),
                if here { ", the present value" } else { "" }
            ));
            lines.push(format!("    below: {}", end_text(&span.below)));
            lines.push(format!("    above: {}", end_text(&span.above)));
        }
    }
    lines.join("\n")
}

fn end_text(end: &End) -> String {
    match end {
        End::Range => "as far as the dimension may go".to_owned(),
        End::Findings(_) => {
            let names: Vec<&str> = end.findings().iter().map(|key| key.name()).collect();
            names.join(", ")
        }
        End::Shape(reason) | End::Refused(reason) => reason.clone(),
        End::Lacking => "values are missing".to_owned(),
    }
}

/// The JSON of one dimension, mm or degrees.
#[derive(Serialize)]
struct RoomJson {
    dimension: &'static str,
    unit: &'static str,
    present: Option<f64>,
    without_clash: Vec<SpanJson>,
    without_caution: Vec<SpanJson>,
}

impl RoomJson {
    fn of(room: &RoomOfOne) -> Self {
        let spans = |spans: &[Span]| spans.iter().map(SpanJson::of).collect();
        Self {
            dimension: room.key.name(),
            unit: unit_name(room.key.unit()),
            present: clean_option(room.present),
            without_clash: spans(&room.without_clash),
            without_caution: spans(&room.without_caution),
        }
    }
}

/// The JSON of one span; both ends are inside.
#[derive(Serialize)]
struct SpanJson {
    from: Option<f64>,
    to: Option<f64>,
    below: EndJson,
    above: EndJson,
}

impl SpanJson {
    fn of(span: &Span) -> Self {
        Self {
            from: clean(span.from),
            to: clean(span.to),
            below: EndJson::of(&span.below),
            above: EndJson::of(&span.above),
        }
    }
}

/// The JSON of what ends a span.
#[derive(Serialize)]
struct EndJson {
    kind: &'static str,
    findings: Vec<&'static str>,
    reason: Option<String>,
}

impl EndJson {
    fn of(end: &End) -> Self {
        let (kind, findings, reason) = match end {
            End::Range => ("range", Vec::new(), None),
            End::Findings(_) => {
                let names = end.findings().iter().map(|key| key.name()).collect();
                ("findings", names, None)
            }
            End::Shape(reason) => ("shape", Vec::new(), Some(reason.clone())),
            End::Refused(reason) => ("refused", Vec::new(), Some(reason.clone())),
            End::Lacking => ("lacking", Vec::new(), None),
        };
        Self {
            kind,
            findings,
            reason,
        }
    }
}
