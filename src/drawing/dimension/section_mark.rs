//! The mark of a cutting plane: wide ends of a chain line, arrows and letters.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::arrow::arrowhead;
use crate::drawing::dimension::detail::view_letters;
use crate::drawing::dimension::label::Label;
use crate::drawing::dimension::style::Style;
use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::placement::{direction_deg, polar};
use crate::drawing::scene::{Item, Role, Shape};
use crate::geometry::Point;

/// A cutting plane seen edge on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionMark {
    /// One end, outside the part, mm.
    pub from: Point,
    /// The other end, outside the part, mm.
    pub to: Point,
    /// Direction in which one looks, degrees counter-clockwise from x.
    pub looking_deg: f64,
    /// Capital letter of the section.
    pub letter: char,
}

/// Length of the wide ends, in lettering heights (common practice, no source).
const WIDE_END: f64 = 2.0;

/// Length of the arrows from the plane, in lettering heights (common practice, no source).
const ARROW: f64 = 3.0;

/// Chain line with wide ends, arrows in the direction of looking and a letter at each.
#[must_use]
pub fn section_mark(mark: &SectionMark, style: &Style) -> Annotation {
    let along = direction_deg(mark.from, mark.to);
    let mut drawn = Annotation::default();
    drawn.items.push(Item::new(
        Shape::Path(Path::line(mark.from, mark.to)),
        LineType::LongDashDotNarrow,
        Role::Annotation,
    ));
    let letters = view_letters(style);
    let arrows = Style {
        role: Role::Annotation,
        ..*style
    };
    for (end, inward_deg) in [(mark.from, along), (mark.to, along + 180.0)] {
        drawn.items.push(Item::new(
            Shape::Path(Path::line(
                end,
                polar(end, WIDE_END * style.height_mm, inward_deg),
            )),
            LineType::LongDashDotWide,
            Role::Annotation,
        ));
        let tip = polar(end, ARROW * style.height_mm, mark.looking_deg);
        drawn.narrow_line(end, tip, Role::Annotation);
        drawn.join(arrowhead(tip, mark.looking_deg, &arrows));
        let middle = polar(
            polar(end, ARROW * style.height_mm / 2.0, mark.looking_deg),
            letters.height_mm,
            inward_deg + 180.0,
        );
        let baseline = Point {
            x: middle.x,
            y: middle.y - letters.height_mm / 2.0,
        };
        drawn.join(Label::plain(mark.letter).centred(baseline, 0.0, &letters));
    }
    drawn
}
