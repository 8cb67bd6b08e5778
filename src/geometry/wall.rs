//! The thinnest wall of a part.
//!
//! A wall is measured by a disc inside the metal that touches the contour on two sides. Two kinds count:
//! - it touches at two opposite points: parallel faces, a neck, the diagonal between two corners of grooves;
//! - it sits at the blunt end of a taper: it touches two pieces that close up on each other, and whatever ends them.
//!
//! Two neighbouring pieces that run into a corner have discs as small as one likes and no wall; the disc in the
//! corner never touches at opposite points. Pieces that close up at more than [`STEEPEST_TAPER`] form a corner, with
//! or without a chamfer or a fillet between them, and not a wall.

use super::piece::is_clear;
use super::{CONTACT, Outline, Point, wall_pairs, wall_taper};

/// Two sides closing up at more than this are a corner or a chamfered edge, radians (40 degrees: thinner than any
/// 45 degree chamfer; common practice, no source).
pub const STEEPEST_TAPER: f64 = 40.0 * std::f64::consts::PI / 180.0;

/// The thinnest place of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall<T = ()> {
    /// Diameter of the disc, mm.
    pub thickness: f64,
    /// Where it touches one side.
    pub a: Point,
    /// Where it touches the other.
    pub b: Point,
    /// What the one side belongs to.
    pub tag_a: T,
    /// What the other side belongs to.
    pub tag_b: T,
    /// Centre of the disc.
    pub centre: Point,
}

/// The thinnest wall of an outline; `None` for a shape without two sides, such as a triangle.
#[must_use]
pub fn thinnest_wall<T: Copy + PartialEq>(outline: &Outline<T>) -> Option<Wall<T>> {
    thinnest_wall_where(outline, |_, _| true)
}

/// The thinnest wall between pieces whose two tags are accepted, in either order.
#[must_use]
pub fn thinnest_wall_where<T: Copy + PartialEq>(
    outline: &Outline<T>,
    is_region: impl Fn(T, T) -> bool,
) -> Option<Wall<T>> {
    let either = |one: T, two: T| is_region(one, two) || is_region(two, one);
    let mut search = Search {
        outline,
        is_region: &either,
        best: None,
    };
    wall_pairs::search(&mut search);
    wall_taper::search(&mut search);
    search.best
}

/// The best wall so far and what may better it.
pub(super) struct Search<'a, T> {
    pub outline: &'a Outline<T>,
    is_region: &'a dyn Fn(T, T) -> bool,
    best: Option<Wall<T>>,
}

impl<T: Copy + PartialEq> Search<'_, T> {
    /// The thickness that a candidate must stay below.
    pub fn limit(&self) -> f64 {
        self.best.map_or(f64::INFINITY, |wall| wall.thickness)
    }

    /// Takes the disc over two opposite points, if it is thinner and nothing else is inside it.
    pub fn offer_opposite(&mut self, a: (Point, &[T]), b: (Point, &[T])) {
        self.offer(a, b, a.0.midpoint(b.0), a.0.distance(b.0));
    }

    /// Takes a disc, if it is thinner, its two sides are wanted, and nothing else is inside it.
    pub fn offer(
        &mut self,
        (a, of_a): (Point, &[T]),
        (b, of_b): (Point, &[T]),
        centre: Point,
        thickness: f64,
    ) {
        if thickness >= self.limit() || thickness <= CONTACT {
            return;
        }
        let mut pairs = of_a
            .iter()
            .flat_map(|one| of_b.iter().map(move |two| (*one, *two)));
        let Some((tag_a, tag_b)) = pairs.find(|(one, two)| (self.is_region)(*one, *two)) else {
            return;
        };
        // A disc found by halving is known to about a millionth of its size.
        let least = thickness / 2.0 * (1.0 - 1e-6) - CONTACT;
        if is_clear(self.outline.pieces_in_order(), centre, least) && self.outline.contains(centre)
        {
            self.best = Some(Wall {
                thickness,
                a,
                b,
                tag_a,
                tag_b,
                centre,
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::OutlineBuilder;
    use super::*;
    use std::f64::consts::PI;

    fn polygon(corners: &[(f64, f64)]) -> Outline<usize> {
        let start = Point::new(corners[0].0, corners[0].1);
        corners[1..]
            .iter()
            .enumerate()
            .fold(OutlineBuilder::start(start), |run, (index, (x, y))| {
                run.line_to(Point::new(*x, *y), index)
            })
            .close(corners.len() - 1)
            .unwrap()
    }

    fn thickness(corners: &[(f64, f64)]) -> f64 {
        thinnest_wall(&polygon(corners)).unwrap().thickness
    }

    #[test]
    fn an_angle_section_has_the_thinner_leg() {
        let corners = [
            (0.0, 0.0),
            (10.0, 0.0),
            (10.0, 1.2),
            (1.5, 1.2),
            (1.5, 8.0),
            (0.0, 8.0),
        ];
        assert!((thickness(&corners) - 1.2).abs() < 1e-12);
        let upright = thinnest_wall_where(&polygon(&corners), |a, b| (a, b) == (3, 5)).unwrap();
        assert!((upright.thickness - 1.5).abs() < 1e-12);
    }

    #[test]
    fn groove_against_relief_is_thinnest_on_the_diagonal() {
        // A groove from above and a relief from below, set off so that their corners face each other.
        let corners = [
            (0.0, 0.0),
            (4.0, 0.0),
            (4.0, 2.0),
            (6.0, 2.0),
            (6.0, 0.0),
            (10.0, 0.0),
            (10.0, 5.0),
            (3.4, 5.0),
            (3.4, 2.8),
            (1.0, 2.8),
            (1.0, 5.0),
            (0.0, 5.0),
        ];
        let wall = thinnest_wall(&polygon(&corners)).unwrap();
        let diagonal = 0.6_f64.hypot(0.8);
        assert!((wall.thickness - diagonal).abs() < 1e-12, "{wall:?}");
        let at = [wall.a, wall.b];
        assert!(
            at.iter()
                .any(|place| place.distance(Point::new(4.0, 2.0)) < 1e-12)
        );
        assert!(
            at.iter()
                .any(|place| place.distance(Point::new(3.4, 2.8)) < 1e-12)
        );
    }

    #[test]
    fn a_thin_ring_segment_is_as_thick_as_its_radii_differ() {
        let arc = |start: f64| Point::polar(start, 0.3);
        let ring = OutlineBuilder::start(arc(20.0))
            .arc_about(Point::default(), 2.5, 'o')
            .line_to(Point::polar(19.2, 2.8), 'e')
            .arc_about(Point::default(), -2.5, 'i')
            .close('s')
            .unwrap();
        let wall = thinnest_wall(&ring).unwrap();
        assert!((wall.thickness - 0.8).abs() < 1e-12);
        assert!(matches!((wall.tag_a, wall.tag_b), ('o', 'i') | ('i', 'o')));
    }

    #[test]
    fn corners_and_chamfers_are_no_walls() {
        assert!((thickness(&[(0.0, 0.0), (5.0, 0.0), (5.0, 4.0), (0.0, 4.0)]) - 4.0).abs() < 1e-12);
        let chamfered = [
            (0.1, 0.0),
            (5.0, 0.0),
            (5.0, 3.7),
            (4.7, 4.0),
            (0.0, 4.0),
            (0.0, 0.1),
        ];
        assert!((thickness(&chamfered) - 4.0).abs() < 1e-12);
        assert_eq!(
            thinnest_wall(&polygon(&[(0.0, 0.0), (5.0, 0.0), (2.0, 4.0)])),
            None
        );
        let needle = polygon(&[(0.0, 0.0), (50.0, -1.0), (50.0, 1.0)]);
        assert_eq!(thinnest_wall(&needle), None);
    }

    #[test]
    fn a_tapered_lip_is_measured_at_its_end() {
        // One side along x, the other rising at 20 degrees from an end face 0.5 high: the disc touching all three
        // has radius w cos / (1 + cos - sin).
        let angle = 20_f64.to_radians();
        let lip = polygon(&[
            (0.0, 0.0),
            (6.0, 0.0),
            (6.0, 0.5 + 6.0 * angle.tan()),
            (0.0, 0.5),
        ]);
        let wall = thinnest_wall(&lip).unwrap();
        let radius = 0.5 * angle.cos() / (1.0 + angle.cos() - angle.sin());
        assert!((wall.thickness - 2.0 * radius).abs() < 1e-8, "{wall:?}");
        // At 45 degrees it is a chamfer.
        let chamfer = polygon(&[(0.0, 0.0), (6.0, 0.0), (6.0, 6.5), (0.0, 0.5)]);
        assert!(thinnest_wall(&chamfer).is_none_or(|wall| wall.thickness > 2.0));
    }

    #[test]
    fn a_rounded_nose_is_its_own_disc() {
        // Sides closing at 20 degrees in all, run out in a nose of radius 0.4.
        let half = 10_f64.to_radians();
        let upper = Point::polar(0.4, PI / 2.0 + half);
        let lower = Point::polar(0.4, -PI / 2.0 - half);
        let along = Point::polar(8.0, half);
        let nose = OutlineBuilder::start(lower)
            .line_to(lower + Point::new(along.x, -along.y), 'd')
            .line_to(upper + along, 'e')
            .line_to(upper, 'u')
            .arc_about(Point::default(), PI - 2.0 * half, 'n')
            .close('n')
            .unwrap();
        let wall = thinnest_wall(&nose).unwrap();
        assert!((wall.thickness - 0.8).abs() < 1e-9, "{wall:?}");
    }

    #[test]
    fn a_round_bar_is_its_diameter() {
        let bar = OutlineBuilder::start(Point::new(1.5, 0.0))
            .arc_about(Point::default(), 2.0 * PI, ())
            .close(())
            .unwrap();
        assert!((thinnest_wall(&bar).unwrap().thickness - 3.0).abs() < 1e-12);
    }
}
