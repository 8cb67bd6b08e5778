//! Circles round details and titles of views.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::label::Label;
use crate::drawing::dimension::style::Style;
use crate::drawing::path::Path;
use crate::drawing::placement::polar;
use crate::drawing::scene::Role;
use crate::geometry::Point;

/// The style of view letters: one step of the lettering series larger than the dimensions, a
/// factor of the square root of 2 (ISO 3098-1 series; from memory).
#[must_use]
pub fn view_letters(style: &Style) -> Style {
    // The series is rounded: 2.5, 3.5, 5, 7.
    let larger = crate::drawing::lettering::HEIGHTS_MM
        .into_iter()
        .find(|&height| height > style.height_mm);
    Style {
        height_mm: larger.unwrap_or(style.height_mm * std::f64::consts::SQRT_2),
        role: Role::Annotation,
        ..*style
    }
}

/// A narrow circle round a detail with its capital letter at `letter_deg` outside it, `farther_mm` more than it must be.
#[must_use]
pub fn detail_circle(
    centre: Point,
    radius_mm: f64,
    letter: char,
    letter_deg: f64,
    farther_mm: f64,
    style: &Style,
) -> Annotation {
    let style = view_letters(style);
    let mut drawn = Annotation::default();
    drawn.narrow(Path::circle(centre, radius_mm), Role::Annotation);
    let label = Label::plain(letter);
    let middle = polar(centre, radius_mm + style.height_mm + farther_mm, letter_deg);
    let baseline = Point {
        x: middle.x,
        y: middle.y - style.height_mm / 2.0,
    };
    drawn.join(label.centred(baseline, 0.0, &style));
    drawn
}

/// The title of a view, such as "X (5:1)" or "A-A", centred at a point of its baseline.
#[must_use]
pub fn view_title(text: &str, at: Point, style: &Style) -> Annotation {
    Label::plain(text).centred(at, 0.0, &view_letters(style))
}
