//! Leaders: a line from a place on the part to a note on a level landing.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::arrow::{arrowhead, dot};
use crate::drawing::dimension::label::Label;
use crate::drawing::dimension::style::Style;
use crate::drawing::lettering::LINE_PITCH;
use crate::drawing::path::Path;
use crate::drawing::placement::direction_deg;
use crate::geometry::Point;

/// How a leader ends on the part (ISO 128-2).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Terminator {
    /// An arrow on an outline.
    Arrow,
    /// A dot inside an area.
    Dot,
    /// Nothing, on a dimension line.
    Plain,
}

/// A note with its leader.
#[derive(Debug, Clone, PartialEq)]
pub struct Leader {
    /// The place on the part, mm.
    pub tip: Point,
    /// Where the slanted line meets the landing, mm; lettering lies on the side away from the tip.
    pub elbow: Point,
    /// The note, first line on top.
    pub lines: Vec<Label>,
    /// How it ends on the part.
    pub terminator: Terminator,
}

impl Leader {
    /// Width of the note and its landing, mm.
    #[must_use]
    pub fn width_mm(&self, style: &Style) -> f64 {
        self.lines
            .iter()
            .map(|line| line.width_mm(style))
            .fold(0.0, f64::max)
    }
}

/// Slanted line, landing and note; the landing is as long as the note.
#[must_use]
pub fn leader(wanted: &Leader, style: &Style) -> Annotation {
    let width = wanted.width_mm(style);
    let side = if wanted.elbow.x >= wanted.tip.x {
        1.0
    } else {
        -1.0
    };
    let end = Point {
        x: wanted.elbow.x + side * width,
        y: wanted.elbow.y,
    };
    let mut drawn = Annotation::default();
    drawn.narrow(Path::open([wanted.tip, wanted.elbow, end]), style.role);
    match wanted.terminator {
        Terminator::Arrow => drawn.join(arrowhead(
            wanted.tip,
            direction_deg(wanted.elbow, wanted.tip),
            style,
        )),
        Terminator::Dot => drawn.join(dot(wanted.tip, style)),
        Terminator::Plain => {}
    }
    let left = wanted.elbow.x.min(end.x);
    let last = wanted.lines.last();
    let mut baseline = wanted.elbow.y + last.map_or(0.0, |line| line.baseline_mm(style));
    for line in wanted.lines.iter().rev() {
        let start = Point {
            x: left,
            y: baseline,
        };
        drawn.join(line.from_start(start, 0.0, style));
        baseline += line.rise_mm(style) + (LINE_PITCH - 1.0) * style.height_mm;
    }
    drawn
}
