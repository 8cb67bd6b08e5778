//! The lettering of a dimension: a size and, where it has them, stacked deviations.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::style::{Style, TEXT_GAP_MM};
use crate::drawing::lettering::{Text, rise_mm, width_mm};
use crate::drawing::line_type::LineType;
use crate::drawing::placement::turned;
use crate::drawing::scene::{Item, Shape};
use crate::drawing::text_box::TextBox;
use crate::geometry::Point;

/// What a dimension says.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Label {
    /// The size with its signs.
    pub main: String,
    /// Deviations one above the other, after the size.
    pub stack: Option<Stack>,
    /// What follows the deviations, such as a closing bracket.
    pub tail: String,
}

/// Two deviations or limits, one above the other, in the height of the size (ISO 129-1).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stack {
    /// The upper one.
    pub upper: String,
    /// The lower one, on the baseline of the size.
    pub lower: String,
}

/// Baseline to baseline in a stack, in lettering heights (ISO 3098-1: 1.3 for capitals only).
const STACK_PITCH: f64 = 1.3;

/// Space between size and deviations, in lettering heights (common practice, no source).
const STACK_GAP: f64 = 0.5;

/// Least clear space between ink and the line under it, mm (common practice, no source).
const INK_GAP_MM: f64 = 0.5;

impl Label {
    /// A label of one piece.
    #[must_use]
    pub fn plain(main: impl Into<String>) -> Self {
        Self {
            main: main.into(),
            stack: None,
            tail: String::new(),
        }
    }

    /// Adds words at the end.
    pub fn end_with(&mut self, words: &str) {
        if self.stack.is_some() {
            self.tail.push_str(words);
        } else {
            self.main.push_str(words);
        }
    }

    /// The whole in one line, deviations after each other.
    #[must_use]
    pub fn text(&self) -> String {
        let stack = self.stack.as_ref().map_or_else(String::new, |stack| {
            format!(" {}/{}", stack.upper, stack.lower)
        });
        format!("{}{stack}{}", self.main, self.tail)
    }

    /// Whole width, mm.
    #[must_use]
    pub fn width_mm(&self, style: &Style) -> f64 {
        let height = style.height_mm;
        let stack = self.stack.as_ref().map_or(0.0, |stack| {
            self.stack_gap_mm(height) + stack_width_mm(stack, height)
        });
        width_mm(&self.main, height) + stack + width_mm(&self.tail, height)
    }

    /// Depth of the ink under the baseline, mm.
    #[must_use]
    pub fn sink_mm(&self, style: &Style) -> f64 {
        let stack = self
            .stack
            .iter()
            .flat_map(|stack| [&stack.upper, &stack.lower]);
        [&self.main, &self.tail]
            .into_iter()
            .chain(stack)
            .map(|text| -rise_mm(text, style.height_mm).0)
            .fold(0.0, f64::max)
    }

    /// Height of the baseline over a line under it, mm: the usual gap, or more where brackets reach down.
    #[must_use]
    pub fn baseline_mm(&self, style: &Style) -> f64 {
        TEXT_GAP_MM.max(self.sink_mm(style) + INK_GAP_MM)
    }

    /// Height over the baseline, mm.
    #[must_use]
    pub fn rise_mm(&self, style: &Style) -> f64 {
        if self.stack.is_some() {
            (1.0 + STACK_PITCH) * style.height_mm
        } else {
            style.height_mm
        }
    }

    /// The lettering with the middle of its baseline at a point, reading at an angle.
    #[must_use]
    pub fn centred(&self, at: Point, rotation_deg: f64, style: &Style) -> Annotation {
        let half = turned(
            Point {
                x: self.width_mm(style) / 2.0,
                y: 0.0,
            },
            rotation_deg,
        );
        let start = Point {
            x: at.x - half.x,
            y: at.y - half.y,
        };
        self.from_start(start, rotation_deg, style)
    }

    /// The lettering with its baseline from a point, reading at an angle.
    #[must_use]
    pub fn from_start(&self, start: Point, rotation_deg: f64, style: &Style) -> Annotation {
        let mut drawn = Annotation::default();
        for (along, rise, text) in self.pieces(style.height_mm) {
            let offset = turned(Point { x: along, y: rise }, rotation_deg);
            let at = Point {
                x: start.x + offset.x,
                y: start.y + offset.y,
            };
            let text = Text {
                rotation_deg,
                ..Text::level(at, style.height_mm, text)
            };
            drawn.items.push(Item::new(
                Shape::Text(text),
                LineType::ContinuousNarrow,
                style.role,
            ));
        }
        let sink = self.sink_mm(style);
        let corner = turned(Point { x: 0.0, y: -sink }, rotation_deg);
        drawn.boxes.push(TextBox {
            corner: Point {
                x: start.x + corner.x,
                y: start.y + corner.y,
            },
            width_mm: self.width_mm(style),
            height_mm: sink + self.rise_mm(style),
            rotation_deg,
        });
        drawn
    }

    /// The lettering in pieces: how far along and how high over the baseline each starts, mm.
    fn pieces(&self, height_mm: f64) -> Vec<(f64, f64, &str)> {
        let mut pieces = vec![(0.0, 0.0, self.main.as_str())];
        let mut along = width_mm(&self.main, height_mm);
        if let Some(stack) = &self.stack {
            along += self.stack_gap_mm(height_mm);
            let rows = [(STACK_PITCH * height_mm, &stack.upper), (0.0, &stack.lower)];
            for (rise, text) in rows {
                let indent = sign_space_mm(text, stack, height_mm);
                pieces.push((along + indent, rise, text.as_str()));
            }
            along += stack_width_mm(stack, height_mm);
        }
        pieces.push((along, 0.0, self.tail.as_str()));
        pieces.retain(|piece| !piece.2.is_empty());
        pieces
    }

    /// Space between size and deviations, mm; an opening bracket needs none.
    fn stack_gap_mm(&self, height_mm: f64) -> f64 {
        if self.main.ends_with('(') {
            0.0
        } else {
            STACK_GAP * height_mm
        }
    }
}

/// Width of the wider row of a stack, mm.
fn stack_width_mm(stack: &Stack, height_mm: f64) -> f64 {
    [&stack.upper, &stack.lower]
        .into_iter()
        .map(|text| sign_space_mm(text, stack, height_mm) + width_mm(text, height_mm))
        .fold(0.0, f64::max)
}

/// Room left for a sign in front of a bare row, so that its figures stand under those of the other.
fn sign_space_mm(text: &str, stack: &Stack, height_mm: f64) -> f64 {
    let has_sign = |row: &str| row.starts_with(['+', crate::drawing::number::MINUS]);
    if !has_sign(text) && (has_sign(&stack.upper) || has_sign(&stack.lower)) {
        width_mm("+", height_mm)
    } else {
        0.0
    }
}
