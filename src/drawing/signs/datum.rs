//! Datum letters.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::{Label, Style};
use crate::drawing::path::Path;
use crate::drawing::placement::{polar, unit_at};
use crate::geometry::Point;

/// Side of the datum triangle, in lettering heights (ISO 5459 and ISO 7083, from memory).
const TRIANGLE: f64 = 1.0;

/// Side of the square round the letter, in lettering heights (from memory).
const SQUARE: f64 = 2.0;

/// Least length of the stem between triangle and square, in lettering heights (common practice, no source).
const STEM: f64 = 1.0;

/// A filled triangle on a line, a stem and the letter in a square.
///
/// `at` is a point of the line, mm, `away_deg` the direction of the stem away from it, and `longer_mm` how much longer
/// the stem is than it must be. In line with a
/// dimension line the datum is the axis or middle plane of that size (ISO 5459).
#[must_use]
pub fn datum_sign(
    at: Point,
    away_deg: f64,
    longer_mm: f64,
    letter: char,
    style: &Style,
) -> Annotation {
    let height = style.height_mm;
    let rise = TRIANGLE * height * 60.0_f64.to_radians().sin();
    let tip = polar(at, rise, away_deg);
    let base = |side: f64| polar(at, TRIANGLE * height / 2.0, away_deg + side * 90.0);
    let half = SQUARE * height / 2.0;
    let away = unit_at(away_deg);
    // From the middle of the upright square to its edge in the direction of the stem.
    let to_edge = half / away.x.abs().max(away.y.abs());
    let centre = polar(tip, STEM.mul_add(height, to_edge) + longer_mm, away_deg);
    let mut drawn = Annotation::default();
    drawn.filled(Path::polygon([base(1.0), base(-1.0), tip]), style.role);
    drawn.narrow_line(tip, polar(centre, to_edge, away_deg + 180.0), style.role);
    let square = crate::drawing::extent::Extent::between(centre, centre).grown(half);
    drawn.narrow(Path::polygon(square.corners()), style.role);
    let baseline = Point {
        x: centre.x,
        y: centre.y - height / 2.0,
    };
    drawn.join(Label::plain(letter).centred(baseline, 0.0, style));
    drawn
}
