//! Paths as Bézier curves, for the painters.

use kurbo::{BezPath, Shape as _};

use crate::drawing::path::{Path, Piece};
use crate::geometry::Point;

/// How far a curve may lie off the true arc, mm: a tenth of a dot at 1200 dots an inch is 2 um.
const ARC_TOLERANCE_MM: f64 = 0.001;

/// A path as Bézier curves, within a thousandth of a millimetre of it.
#[must_use]
pub fn bezier(path: &Path) -> BezPath {
    let mut curves = BezPath::new();
    for piece in path.pieces() {
        if curves.elements().is_empty() {
            curves.move_to(kurbo_point(piece.at_share(0.0)));
        }
        match piece {
            Piece::Line { to, .. } => curves.line_to(kurbo_point(to)),
            Piece::Arc {
                centre,
                radius_mm,
                start_deg,
                sweep_deg,
            } => {
                let arc = kurbo::Arc::new(
                    kurbo_point(centre),
                    (radius_mm, radius_mm),
                    start_deg.to_radians(),
                    sweep_deg.to_radians(),
                    0.0,
                );
                curves.extend(arc.append_iter(ARC_TOLERANCE_MM));
            }
        }
    }
    if path.closed && !curves.elements().is_empty() {
        curves.close_path();
    }
    curves
}

/// The area covered by a stroke with butt ends along a path.
#[must_use]
pub fn stroke_area(path: &Path, width_mm: f64) -> BezPath {
    let style = kurbo::Stroke::new(width_mm)
        .with_caps(kurbo::Cap::Butt)
        .with_join(kurbo::Join::Miter);
    kurbo::stroke(
        bezier(path).path_elements(ARC_TOLERANCE_MM),
        &style,
        &kurbo::StrokeOpts::default(),
        ARC_TOLERANCE_MM,
    )
}

/// A point in the curve library's type.
#[must_use]
pub fn kurbo_point(point: Point) -> kurbo::Point {
    kurbo::Point::new(point.x, point.y)
}
