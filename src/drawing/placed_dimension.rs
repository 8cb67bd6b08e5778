//! Dimensions, call-outs and signs in the places that the program gives them, to be drawn there or moved by hand.

use crate::document::{DimensionId, Sheet};
use crate::drawing::Annotation;
use crate::drawing::call_out::CallOut;
use crate::drawing::dimension::{Leader, Linear, Style, leader, linear};
use crate::geometry::Point;

/// How a dimension is drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum Form {
    /// Between two places of the part.
    Linear(Linear),
    /// A note on a leader.
    Leader(Leader),
    /// Signs on a leader.
    CallOut(CallOut),
    /// A sign in its place.
    Sign(Annotation),
}

/// A dimension in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedDimension {
    /// Which one.
    pub id: DimensionId,
    /// How it is drawn.
    pub form: Form,
}

/// A view of the sheet: what it shows, and what is said about it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SheetView {
    /// The part itself with marks and letters.
    pub part: Annotation,
    /// Its dimensions, call-outs and signs.
    pub dimensions: Vec<PlacedDimension>,
    /// What found no place on the view and stands in the notes.
    pub notes: Vec<String>,
}

impl PlacedDimension {
    /// The dimension drawn where the program puts it.
    #[must_use]
    pub fn settled(&self, style: &Style) -> Annotation {
        self.drawn((0.0, 0.0), style)
    }

    /// The dimension drawn so far to the right and up from there, mm. A dimension line moves away from the part,
    /// its lettering along it; a note or sign takes its leader with it.
    #[must_use]
    pub fn drawn(&self, moved_mm: (f64, f64), style: &Style) -> Annotation {
        let (right, up) = moved_mm;
        let shifted = |point: Point| Point {
            x: point.x + right,
            y: point.y + up,
        };
        match &self.form {
            Form::Linear(line) if moved_mm == (0.0, 0.0) => linear(line, style),
            Form::Linear(line) => linear(&moved_line(line, moved_mm), style),
            Form::Leader(note) => leader(
                &Leader {
                    elbow: shifted(note.elbow),
                    ..note.clone()
                },
                style,
            ),
            Form::CallOut(call) => CallOut {
                elbow: shifted(call.elbow),
                ..call.clone()
            }
            .drawn(style),
            Form::Sign(sign) => sign.clone().moved(right, up),
        }
    }
}

/// A level or upright dimension moved by hand. It draws both its extension lines itself: those that it shared with
/// others may now end elsewhere.
fn moved_line(line: &Linear, (right, up): (f64, f64)) -> Linear {
    let is_level = line.direction_deg.abs() < 1.0;
    let along = if is_level { right } else { up };
    Linear {
        through: Point {
            x: line.through.x + right,
            y: line.through.y + up,
        },
        text_centre_mm: line.text_centre_mm.map(|centre| centre + along),
        extensions: [true, true],
        ..line.clone()
    }
}

impl SheetView {
    /// Everything where the program puts it.
    #[must_use]
    pub fn settled(&self, style: &Style) -> Annotation {
        let mut drawn = self.part.clone();
        for dimension in &self.dimensions {
            drawn.join(dimension.settled(style));
        }
        drawn
    }

    /// Each dimension as the user has it. Where one was moved, the others draw the extension lines that they shared
    /// with it.
    pub fn by_hand<'a>(
        &'a self,
        sheet: &'a Sheet,
        style: &'a Style,
    ) -> impl Iterator<Item = (DimensionId, Annotation)> + 'a {
        let is_moved = |dimension: &&PlacedDimension| sheet.moved_mm(dimension.id) != (0.0, 0.0);
        let any_moved = self.dimensions.iter().any(|dimension| is_moved(&dimension));
        self.dimensions.iter().map(move |dimension| {
            let moved = sheet.moved_mm(dimension.id);
            let drawn = match &dimension.form {
                Form::Linear(line) if any_moved => linear(&moved_line(line, moved), style),
                Form::Linear(_) | Form::Leader(_) | Form::CallOut(_) | Form::Sign(_) => {
                    dimension.drawn(moved, style)
                }
            };
            (dimension.id, drawn)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::RingKey;
    use crate::drawing::dimension::Label;

    fn level() -> PlacedDimension {
        let point = |x, y| Point { x, y };
        let line = Linear::level(point(0.0, 0.0), point(40.0, 0.0), 12.0, Label::plain("40"));
        let line = Linear {
            text_centre_mm: Some(20.0),
            ..line
        };
        PlacedDimension {
            id: DimensionId::Size(RingKey::SpigotLength),
            form: Form::Linear(line),
        }
    }

    #[test]
    fn lettering_goes_along_and_the_line_away_but_the_ends_stay_on_the_part() {
        let style = Style::default();
        let (before, after) = (level().settled(&style), level().drawn((5.0, 8.0), &style));
        let (from, to) = (
            before.boxes[0].extent().centre(),
            after.boxes[0].extent().centre(),
        );
        assert!((to.x - from.x - 5.0).abs() < 1e-9 && (to.y - from.y - 8.0).abs() < 1e-9);
        // The extension lines still begin 1 mm over the part, under its ends.
        let first = after.items[0].extent().unwrap();
        assert!((first.left).abs() < 1e-9 && (first.bottom - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_moved_dimension_leaves_the_others_in_their_places() {
        let other = PlacedDimension {
            id: DimensionId::Size(RingKey::SeatHeight),
            ..level()
        };
        let view = SheetView {
            dimensions: vec![level(), other],
            ..SheetView::default()
        };
        let mut sheet = Sheet::default();
        sheet.override_mut(level().id).moved_mm = (0.0, 9.0);
        let style = Style::default();
        let drawn: Vec<Annotation> = view
            .by_hand(&sheet, &style)
            .map(|(_, drawn)| drawn)
            .collect();
        assert_eq!(drawn[1].boxes, level().settled(&style).boxes);
        assert_ne!(drawn[0].boxes, drawn[1].boxes);
    }
}
