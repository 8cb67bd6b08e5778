//! The note on edges of undefined shape.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::{Label, Style};
use crate::drawing::lettering::width_mm;
use crate::drawing::path::Path;
use crate::geometry::Point;

/// Which corner the sign stands for (ISO 13715).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum EdgeKind {
    /// Outside edges.
    External,
    /// Inside corners.
    Internal,
}

/// Size of the two legs, in lettering heights (ISO 13715, from memory).
const LEG: f64 = 1.5;

/// Space between sign and size, in lettering heights.
const GAP: f64 = 0.4;

/// Width of an edge sign with its size, mm.
#[must_use]
pub fn edge_sign_width_mm(size: &str, style: &Style) -> f64 {
    (LEG + GAP).mul_add(style.height_mm, width_mm(size, style.height_mm))
}

/// Two legs in an L and the size beside them, such as "−0,2" outside or "+0,2" inside: minus takes material
/// off the corner, plus leaves it on (ISO 13715). Lower left corner at a point.
#[must_use]
pub fn edge_sign(kind: EdgeKind, at: Point, size: &str, style: &Style) -> Annotation {
    let leg = LEG * style.height_mm;
    let point = |x: f64, y: f64| Point {
        x: at.x + x,
        y: at.y + y,
    };
    let legs = match kind {
        // The corner of the metal points up and to the left, and down and to the left for a hollow.
        EdgeKind::External => [point(0.0, 0.0), point(0.0, leg), point(leg, leg)],
        EdgeKind::Internal => [point(0.0, leg), point(0.0, 0.0), point(leg, 0.0)],
    };
    let mut drawn = Annotation::default();
    drawn.narrow(Path::open(legs), style.role);
    let baseline = match kind {
        EdgeKind::External => 0.0,
        EdgeKind::Internal => leg - style.height_mm,
    };
    drawn.join(Label::plain(size).from_start(
        point((LEG + GAP) * style.height_mm, baseline),
        0.0,
        style,
    ));
    drawn
}
