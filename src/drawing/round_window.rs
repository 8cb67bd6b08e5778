//! What of a picture lies inside a circle: for details.

use crate::drawing::path::{Path, Piece};
use crate::drawing::placement::polar;
use crate::geometry::Point;

/// A round window.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Its centre.
    pub centre: Point,
    /// Its radius, mm.
    pub radius_mm: f64,
}

/// Areas are cut by a polygon of so many sides in place of the circle: off by a thousandth of the radius.
const SIDES: u32 = 72;
/// Arcs of an area are followed in pieces of so many degrees.
const ARC_STEP_DEG: f64 = 5.0;

impl Window {
    /// The stretch of a straight line inside the window; none where it passes by.
    #[must_use]
    pub fn stretch(&self, from: Point, to: Point) -> Option<(Point, Point)> {
        let along = Point {
            x: to.x - from.x,
            y: to.y - from.y,
        };
        let off = Point {
            x: from.x - self.centre.x,
            y: from.y - self.centre.y,
        };
        let a = along.x.mul_add(along.x, along.y * along.y);
        let half_b = off.x.mul_add(along.x, off.y * along.y);
        let c = off.x.mul_add(off.x, off.y * off.y) - self.radius_mm * self.radius_mm;
        let inside = half_b.mul_add(half_b, -a * c);
        if a <= 0.0 || inside <= 0.0 {
            return None;
        }
        let root = inside.sqrt();
        let (first, last) = (
            ((-half_b - root) / a).max(0.0),
            ((-half_b + root) / a).min(1.0),
        );
        let at = |share: f64| Point {
            x: along.x.mul_add(share, from.x),
            y: along.y.mul_add(share, from.y),
        };
        (last > first).then(|| (at(first), at(last)))
    }

    /// The area of a closed path inside the window; none where there is none. Parts that hang together only along the
    /// edge of the window are joined along it, which no filling shows.
    #[must_use]
    pub fn area(&self, path: &Path) -> Option<Path> {
        let mut corners = points_of(path);
        for side in 0..SIDES {
            let angle = |step: u32| 360.0 * f64::from(step) / f64::from(SIDES);
            let a = polar(self.centre, self.radius_mm, angle(side));
            let b = polar(self.centre, self.radius_mm, angle(side + 1));
            corners = left_of(&corners, a, b);
        }
        (corners.len() >= 3).then(|| Path::polygon(corners))
    }
}

/// Corners of a closed path, arcs in short pieces.
fn points_of(path: &Path) -> Vec<Point> {
    let mut points = Vec::new();
    for piece in path.pieces() {
        let steps = match piece {
            Piece::Line { .. } => 1.0,
            Piece::Arc { sweep_deg, .. } => (sweep_deg.abs() / ARC_STEP_DEG).ceil().max(1.0),
        };
        let mut step = 0.0;
        while step < steps {
            points.push(piece.at_share(step / steps));
            step += 1.0;
        }
    }
    points
}

/// What of a polygon lies left of a line (Sutherland and Hodgman, 1974).
fn left_of(corners: &[Point], a: Point, b: Point) -> Vec<Point> {
    let side = |p: Point| (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    let mut kept = Vec::new();
    for (place, to) in corners.iter().enumerate() {
        let from = place
            .checked_sub(1)
            .map_or(corners.last(), |before| corners.get(before));
        let Some(from) = from else { continue };
        let (at_from, at_to) = (side(*from), side(*to));
        if (at_from >= 0.0) != (at_to >= 0.0) {
            let share = at_from / (at_from - at_to);
            kept.push(Point {
                x: (to.x - from.x).mul_add(share, from.x),
                y: (to.y - from.y).mul_add(share, from.y),
            });
        }
        if at_to >= 0.0 {
            kept.push(*to);
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    const WINDOW: Window = Window {
        centre: Point { x: 1.0, y: 2.0 },
        radius_mm: 5.0,
    };

    fn point(x: f64, y: f64) -> Point {
        Point { x, y }
    }

    #[test]
    fn a_line_through_the_middle_is_a_diameter_and_one_outside_is_nothing() {
        let (from, to) = WINDOW.stretch(point(-20.0, 2.0), point(20.0, 2.0)).unwrap();
        assert!((from.x + 4.0).abs() < 1e-9 && (to.x - 6.0).abs() < 1e-9);
        assert_eq!(WINDOW.stretch(point(-20.0, 8.0), point(20.0, 8.0)), None);
        // 3-4-5: at 3 over the middle the chord is 8 long.
        let (from, to) = WINDOW.stretch(point(20.0, 5.0), point(-20.0, 5.0)).unwrap();
        assert!((from.x - to.x - 8.0).abs() < 1e-9);
    }

    #[test]
    fn a_large_square_gives_the_window_and_a_far_one_nothing() {
        let square = |at: f64| {
            Path::polygon([
                point(at, -50.0),
                point(at + 99.0, -50.0),
                point(at + 99.0, 50.0),
                point(at, 50.0),
            ])
        };
        let extent = WINDOW.area(&square(-40.0)).unwrap().extent().unwrap();
        assert!((extent.width() - 10.0).abs() < 0.02 && (extent.centre().x - 1.0).abs() < 0.01);
        assert_eq!(WINDOW.area(&square(40.0)), None);
    }
}
