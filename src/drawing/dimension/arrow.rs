//! The ends of dimension lines and leaders.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::style::Style;
use crate::drawing::path::Path;
use crate::drawing::placement::polar;
use crate::geometry::Point;

/// Included angle of an arrowhead, degrees (ISO 129-1: closed filled, 15 narrow to 30 wide).
const INCLUDED_DEG: f64 = 20.0;

/// Diameter of the dot that ends a leader inside an area, in lettering heights (from memory).
const DOT: f64 = 0.3;

/// A filled arrowhead with its tip at a point, pointing in a direction (degrees counter-clockwise from x).
#[must_use]
pub fn arrowhead(tip: Point, direction_deg: f64, style: &Style) -> Annotation {
    let side = |turn_deg: f64| {
        let slope = (INCLUDED_DEG / 2.0).to_radians().cos();
        polar(
            tip,
            style.arrow_mm() / slope,
            direction_deg + 180.0 + turn_deg,
        )
    };
    let mut drawn = Annotation::default();
    drawn.filled(
        Path::polygon([tip, side(INCLUDED_DEG / 2.0), side(-INCLUDED_DEG / 2.0)]),
        style.role,
    );
    drawn
}

/// A filled dot at a point, for a leader that ends inside an area.
#[must_use]
pub fn dot(centre: Point, style: &Style) -> Annotation {
    let mut drawn = Annotation::default();
    drawn.filled(
        Path::circle(centre, DOT * style.height_mm / 2.0),
        style.role,
    );
    drawn
}
