//! How far two shapes run into each other.

use super::deepest::{Depth, deepest};
use super::moments::moments_of;
use super::piece::Piece;
use super::split::{Side, parts};
use super::{Outline, Point, Segment};

/// The clash of two shapes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interference {
    /// The area they share, mm2.
    pub area: f64,
    /// How deep a point of either contour stands inside the other shape at most, measured to the other's contour,
    /// mm, to a millionth. Two plates overlapping in a strip have the width of the strip.
    pub depth: f64,
    /// The deepest point.
    pub at: Point,
}

/// The clash of two outlines; `None` when they are apart or only touch.
///
/// Where the two contours coincide wherever they meet, nothing stands inside; the depth is then the shorter side of
/// the box around the smaller shape, by which it can be moved out.
#[must_use]
pub fn interference<A, B>(a: &Outline<A>, b: &Outline<B>) -> Option<Interference>
where
    A: Copy + PartialEq,
    B: Copy + PartialEq,
{
    if a.bounding_box().gap_squared(b.bounding_box()) > 0.0 {
        return None;
    }
    let (of_a, of_b) = (Parts::of(a, b), Parts::of(b, a));
    let contour = shared_contour(&of_a, &of_b);
    if contour.is_empty() {
        return None;
    }
    let start = Depth {
        depth: 0.0,
        at: a.bounding_box().centre(),
    };
    let mut found = deepest(of_a.inside.into_iter(), b.pieces_in_order(), start);
    found = deepest(of_b.inside.into_iter(), a.pieces_in_order(), found);
    if found.depth <= 0.0 {
        let smaller = if a.area() <= b.area() {
            a.bounding_box()
        } else {
            b.bounding_box()
        };
        let depth = smaller.width().min(smaller.height());
        found = Depth {
            depth,
            at: smaller.centre(),
        };
    }
    let area = moments_of(&contour).area;
    Some(Interference {
        area,
        depth: found.depth,
        at: found.at,
    })
}

/// The parts of one contour that stand inside another outline, or run along it with metal on the same side.
struct Parts {
    inside: Vec<Segment>,
    along: Vec<Segment>,
}

impl Parts {
    fn of<A: Copy + PartialEq, B: Copy + PartialEq>(own: &Outline<A>, other: &Outline<B>) -> Self {
        let mut found = Self {
            inside: Vec::new(),
            along: Vec::new(),
        };
        for (segment, side) in parts(own.pieces_in_order(), other) {
            match side {
                Side::Inside => found.inside.push(segment),
                Side::Along { same_way: true } => found.along.push(segment),
                Side::Along { same_way: false } | Side::Outside => {}
            }
        }
        found
    }
}

/// The parts that close up around what two outlines share; where both run along each other, once.
fn shared_contour(of_a: &Parts, of_b: &Parts) -> Vec<Piece<()>> {
    let segments = of_a.inside.iter().chain(&of_b.inside).chain(&of_a.along);
    segments.map(|segment| Piece::new(*segment, ())).collect()
}

#[cfg(test)]
mod tests {
    use super::super::OutlineBuilder;
    use super::*;
    use std::f64::consts::PI;

    fn plate(x: f64, y: f64, width: f64, height: f64) -> Outline {
        OutlineBuilder::start(Point::new(x, y))
            .line_to(Point::new(x + width, y), ())
            .line_to(Point::new(x + width, y + height), ())
            .line_to(Point::new(x, y + height), ())
            .close(())
            .unwrap()
    }

    fn disc(x: f64, y: f64, radius: f64) -> Outline {
        OutlineBuilder::start(Point::new(x + radius, y))
            .arc_about(Point::new(x, y), 2.0 * PI, ())
            .close(())
            .unwrap()
    }

    #[test]
    fn a_strip_and_a_corner() {
        let strip = interference(&plate(0.0, 0.0, 4.0, 2.0), &plate(3.7, -5.0, 9.0, 9.0)).unwrap();
        assert!((strip.depth - 0.3).abs() < 2e-6);
        assert!((strip.area - 0.6).abs() < 1e-12);
        let corner = interference(&plate(0.0, 0.0, 4.0, 2.0), &plate(3.7, 1.5, 9.0, 9.0)).unwrap();
        assert!((corner.depth - 0.3).abs() < 2e-6);
        assert!((corner.area - 0.15).abs() < 1e-12);
        assert!((corner.at.x - 3.7).abs() < 1e-6 || (corner.at.x - 4.0).abs() < 1e-6);
    }

    #[test]
    fn apart_and_touching_do_not_clash() {
        let a = plate(0.0, 0.0, 4.0, 2.0);
        assert_eq!(interference(&a, &plate(4.0, 0.0, 4.0, 2.0)), None);
        assert_eq!(interference(&a, &plate(5.0, 0.0, 4.0, 2.0)), None);
        assert_eq!(
            interference(&disc(0.0, 0.0, 1.0), &disc(2.0, 0.0, 1.0)),
            None
        );
    }

    #[test]
    fn discs_run_into_each_other_by_the_sum_of_radii_less_the_distance() {
        let found = interference(&disc(0.0, 0.0, 2.0), &disc(3.5, 0.0, 2.0)).unwrap();
        assert!((found.depth - 0.5).abs() < 2e-6);
        let expected = 8.0 * (3.5_f64 / 4.0).acos() - 3.5 / 2.0 * (16.0_f64 - 12.25).sqrt();
        assert!((found.area - expected).abs() < 1e-12);
    }

    #[test]
    fn a_concentric_ledge_and_a_contained_disc() {
        let inside = interference(&disc(0.0, 0.0, 2.0), &disc(0.0, 0.0, 1.5)).unwrap();
        assert!((inside.depth - 0.5).abs() < 2e-6);
        assert!((inside.area - PI * 2.25).abs() < 1e-10);
        let same = interference(&disc(0.0, 0.0, 2.0), &disc(0.0, 0.0, 2.0)).unwrap();
        assert!((same.depth - 4.0).abs() < 1e-12);
        assert!((same.area - PI * 4.0).abs() < 1e-4);
    }

    #[test]
    fn the_contour_of_what_is_shared_closes() {
        use super::super::{AnnularSector, Interval};
        let sector = |inner: f64, outer: f64, start: f64, extent: f64| {
            AnnularSector::new(inner, outer, Interval::new(start, extent).unwrap()).unwrap()
        };
        let lug = sector(24.0, 27.0, 0.1, 4.0);
        for (inner, outer, start, extent) in [
            (24.0, 27.0, 3.0, 4.5),
            (24.0, 27.0, 0.1, 4.0),
            (25.0, 27.0, 0.1, 1.0),
            (20.0, 26.0, 4.0, 3.0),
        ] {
            let other = sector(inner, outer, start, extent);
            let (a, b) = (
                lug.outline(0.0, 0.0).unwrap(),
                other.outline(0.0, 0.0).unwrap(),
            );
            let contour = shared_contour(&Parts::of(&a, &b), &Parts::of(&b, &a));
            let area = moments_of(&contour).area;
            assert!(
                (area - lug.overlap_area(&other)).abs() < 1e-9,
                "{other:?} {area}"
            );
            assert!((interference(&a, &b).unwrap().area - area).abs() < 1e-3);
        }
    }
}
