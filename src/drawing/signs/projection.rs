//! The sign for first and third angle projection.

use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::placement::Placement;
use crate::drawing::scene::{Item, Role, Shape};
use crate::geometry::Point;

pub use crate::document::Projection;

/// Overshoot of the centre lines, in lettering heights.
const OVERSHOOT: f64 = 0.5;

/// A frustum of a cone and its end view, centred at a point; 6 lettering heights wide and 3 high.
///
/// ISO 5456-2, proportions from memory: ends h and 2h, length 2h, gap h. First angle shows the
/// end view, seen from the narrow left end, on the right; third angle shows it on the left.
#[must_use]
pub fn projection_sign(projection: Projection, centre: Point, height_mm: f64) -> Vec<Item> {
    let (frustum_x, circles_x) = match projection {
        Projection::FirstAngle => (-1.5, 1.5),
        Projection::ThirdAngle => (1.5, -1.5),
    };
    let point = |x: f64, y: f64| Point { x, y };
    let frustum = Path::polygon([
        point(frustum_x - 1.0, -0.5),
        point(frustum_x + 1.0, -1.0),
        point(frustum_x + 1.0, 1.0),
        point(frustum_x - 1.0, 0.5),
    ]);
    let circles = [0.5, 1.0].map(|radius| Path::circle(point(circles_x, 0.0), radius));
    let reach = 1.0 + OVERSHOOT;
    let axes = [
        Path::line(point(frustum_x - reach, 0.0), point(frustum_x + reach, 0.0)),
        Path::line(point(circles_x - reach, 0.0), point(circles_x + reach, 0.0)),
        Path::line(point(circles_x, -reach), point(circles_x, reach)),
    ];
    let placement = Placement {
        scale: height_mm,
        origin: centre,
        ..Placement::IDENTITY
    };
    let item =
        |path: &Path, line| Item::new(Shape::Path(path.placed(&placement)), line, Role::Annotation);
    let outline = std::iter::once(&frustum).chain(&circles);
    outline
        .map(|path| item(path, LineType::ContinuousWide))
        .chain(
            axes.iter()
                .map(|path| item(path, LineType::LongDashDotNarrow)),
        )
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Middle of the circles along x.
    fn circles_x(projection: Projection) -> f64 {
        let items = projection_sign(projection, Point { x: 0.0, y: 0.0 }, 3.5);
        items[1].extent().unwrap().centre().x
    }

    #[test]
    fn first_angle_has_the_circles_on_the_right() {
        // ISO 5456-2: in first angle projection the view from the left stands on the right.
        assert!(circles_x(Projection::FirstAngle) > 0.0);
        assert!(circles_x(Projection::ThirdAngle) < 0.0);
    }

    #[test]
    fn narrow_end_is_on_the_left_in_both() {
        for projection in [Projection::FirstAngle, Projection::ThirdAngle] {
            let items = projection_sign(projection, Point { x: 0.0, y: 0.0 }, 3.5);
            let Shape::Path(frustum) = &items[0].shape else {
                panic!("the frustum is a path");
            };
            let at = |index: usize| frustum.vertices[index].at;
            assert!(at(0).x < at(1).x);
            // h = 3.5: ends 3.5 and 7 high, 7 long.
            assert!((at(3).y - at(0).y - 3.5).abs() < 1e-9);
            assert!((at(2).y - at(1).y - 7.0).abs() < 1e-9);
            assert!((at(1).x - at(0).x - 7.0).abs() < 1e-9);
        }
    }
}
