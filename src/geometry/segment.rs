//! One piece of an outline: a line, or an arc of at most half a turn.

use super::{BoundingBox, Point};

/// Arcs of a smaller half angle than this are handled by their chord, radians.
const FLAT: f64 = 0.5;

/// A line or an arc from `a` to `b`.
///
/// The bulge is the tangent of a quarter of the arc's angle: 0 is a line, 1 half a turn; positive runs
/// counter-clockwise. |bulge| is at most 1, so an arc lies wholly to one side of its chord.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// Where it begins.
    pub a: Point,
    /// Where it ends.
    pub b: Point,
    /// Tangent of a quarter of the arc's angle.
    pub bulge: f64,
}

/// The circle under an arc, with the arc's ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arc {
    /// Centre of the circle.
    pub centre: Point,
    /// Radius of the circle, mm.
    pub radius: f64,
    /// Tangent of a quarter of its angle, positive counter-clockwise.
    pub bulge: f64,
    /// Where it begins.
    pub a: Point,
    /// Where it ends.
    pub b: Point,
}

impl Arc {
    /// Whether a point of the circle (or the direction to it from the centre) lies on the arc.
    #[must_use]
    pub fn covers(&self, on_circle: Point) -> bool {
        let side = (self.b - self.a).cross(on_circle - self.a);
        if self.bulge > 0.0 {
            side <= 0.0
        } else {
            side >= 0.0
        }
    }

    /// Whether the ray from the centre through `point` meets the arc.
    #[must_use]
    pub fn covers_direction(&self, point: Point) -> bool {
        self.toward(point).is_some_and(|place| self.covers(place))
    }

    /// The point of the circle toward `point`; `None` at the centre itself.
    #[must_use]
    pub fn toward(&self, point: Point) -> Option<Point> {
        (point - self.centre)
            .unit()
            .map(|unit| self.centre + unit * self.radius)
    }
}

impl Segment {
    /// A line.
    #[must_use]
    pub const fn line(a: Point, b: Point) -> Self {
        Self { a, b, bulge: 0.0 }
    }

    /// A line or an arc of the given bulge.
    #[must_use]
    pub const fn new(a: Point, b: Point, bulge: f64) -> Self {
        Self { a, b, bulge }
    }

    /// Whether it is a line.
    #[must_use]
    pub fn is_line(&self) -> bool {
        self.bulge.abs() <= 0.0
    }

    /// Chord from `a` to `b`.
    #[must_use]
    pub fn chord(&self) -> Point {
        self.b - self.a
    }

    /// The angle an arc turns through, positive counter-clockwise; 0 for a line.
    #[must_use]
    pub fn sweep_rad(&self) -> f64 {
        4.0 * self.bulge.atan()
    }

    /// The circle under it; `None` for a line.
    #[must_use]
    pub fn arc(&self) -> Option<Arc> {
        if self.is_line() {
            return None;
        }
        let chord = self.chord();
        let square = self.bulge * self.bulge;
        let centre = self.a.midpoint(self.b) + chord.left() * ((1.0 - square) / (4.0 * self.bulge));
        let radius = chord.norm() * (1.0 + square) / (4.0 * self.bulge.abs());
        Some(Arc {
            centre,
            radius,
            bulge: self.bulge,
            a: self.a,
            b: self.b,
        })
    }

    /// The length, mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        let chord = self.chord().norm();
        let quarter = self.bulge.abs();
        if quarter < 1e-8 {
            // An arc this flat is as long as its chord to the last digit.
            return chord;
        }
        chord * (1.0 + quarter * quarter) * quarter.atan() / quarter
    }

    /// The point at a share of the length, 0 at `a`, 1 at `b`.
    #[must_use]
    pub fn point_at(&self, share: f64) -> Point {
        if self.is_line() {
            return self.a + self.chord() * share;
        }
        // Half the chord to the point against half the whole chord, and the angle between the two:
        // no centre is needed, so flat arcs keep their digits.
        let quarter = self.bulge.atan();
        let part = 2.0 * quarter * share;
        let ratio = part.sin() / (2.0 * quarter).sin();
        self.a + self.chord().rotated(part - 2.0 * quarter) * ratio
    }

    /// The point half-way along.
    #[must_use]
    pub fn midpoint(&self) -> Point {
        self.a.midpoint(self.b) - self.chord().left() * (self.bulge / 2.0)
    }

    /// The share of the length at which a point of the piece lies.
    #[must_use]
    pub fn share_of(&self, point: Point) -> f64 {
        let chord = self.chord();
        let from_a = point - self.a;
        if self.is_line() {
            return (from_a.dot(chord) / chord.dot(chord)).clamp(0.0, 1.0);
        }
        let half = 2.0 * self.bulge.atan();
        let share = match self.arc() {
            Some(arc) if half.abs() >= FLAT => {
                let (start, there) = (self.a - arc.centre, point - arc.centre);
                // From the middle, so that no end of half a turn falls on the other side of the cut of the angle.
                let middle = start.rotated(half);
                0.5 + 0.5 * middle.cross(there).atan2(middle.dot(there)) / half
            }
            // By the foot on the chord: the angle would lose the digits that a large radius takes.
            Some(_) | None => {
                let foot = 2.0 * from_a.dot(chord) / chord.dot(chord) - 1.0;
                0.5 + 0.5 * (foot * half.sin()).clamp(-1.0, 1.0).asin() / half
            }
        };
        share.clamp(0.0, 1.0)
    }

    /// The part between two shares of the length.
    #[must_use]
    pub fn part(&self, from: f64, to: f64) -> Self {
        let bulge = if self.is_line() {
            0.0
        } else {
            (self.bulge.atan() * (to - from)).tan()
        };
        Self {
            a: self.point_at(from),
            b: self.point_at(to),
            bulge,
        }
    }

    /// The unit vector along the piece at a share of its length.
    #[must_use]
    pub fn tangent_at(&self, share: f64) -> Point {
        let along = self.chord().unit().unwrap_or_default();
        if self.is_line() {
            along
        } else {
            along.rotated((share - 0.5) * self.sweep_rad())
        }
    }

    /// The upright box around it.
    #[must_use]
    pub fn bounding_box(&self) -> BoundingBox {
        let ends = BoundingBox::of(self.a, self.b);
        let Some(arc) = self.arc() else { return ends };
        [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)]
            .into_iter()
            .map(|(x, y)| arc.centre + Point::new(x, y) * arc.radius)
            .filter(|extreme| arc.covers(*extreme))
            .fold(ends, BoundingBox::with)
    }

    /// The point of the piece nearest to `point`.
    #[must_use]
    pub fn nearest(&self, point: Point) -> Point {
        self.nearest_with(self.arc().as_ref(), point)
    }

    /// The same where the circle under it is known already.
    pub(super) fn nearest_with(&self, arc: Option<&Arc>, point: Point) -> Point {
        if let Some(arc) = arc {
            return match arc.toward(point) {
                Some(foot) if arc.covers(foot) => foot,
                Some(_) => self.nearer_end(point),
                None => self.a,
            };
        }
        let chord = self.chord();
        let share = (point - self.a).dot(chord) / chord.dot(chord);
        if share > 0.0 && share < 1.0 {
            self.a + chord * share
        } else {
            self.nearer_end(point)
        }
    }

    fn nearer_end(&self, point: Point) -> Point {
        let (to_a, to_b) = (point - self.a, point - self.b);
        if to_a.dot(to_a) <= to_b.dot(to_b) {
            self.a
        } else {
            self.b
        }
    }

    /// The same piece run the other way.
    #[must_use]
    pub const fn reversed(&self) -> Self {
        Self {
            a: self.b,
            b: self.a,
            bulge: -self.bulge,
        }
    }

    /// Moved by a vector.
    #[must_use]
    pub fn translated(&self, by: Point) -> Self {
        Self {
            a: self.a + by,
            b: self.b + by,
            bulge: self.bulge,
        }
    }

    /// Points along the piece after `a`, up to and with `b`, so that no chord leaves the arc by more
    /// than `chord_tol`.
    pub fn flatten_into(&self, chord_tol: f64, points: &mut Vec<Point>) {
        if let Some(arc) = self.arc() {
            let cos_half = (1.0 - chord_tol / arc.radius).clamp(0.0, 1.0);
            let step = 2.0 * cos_half.acos();
            let count = whole_steps(self.sweep_rad().abs() / step);
            for index in 1..count {
                points.push(self.point_at(f64::from(index) / f64::from(count)));
            }
        }
        points.push(self.b);
    }
}

/// The next whole number, at least 1 and at most 100 000 steps a piece.
fn whole_steps(steps: f64) -> u32 {
    // The clamp keeps the value inside u32; NaN comes out as 0, and the last max makes that 1.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let whole = steps.ceil().clamp(1.0, 1e5) as u32;
    whole.max(1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    fn half_circle() -> Segment {
        Segment::new(Point::new(1.0, 0.0), Point::new(-1.0, 0.0), 1.0)
    }

    #[test]
    fn half_a_unit_circle() {
        let half = half_circle();
        let arc = half.arc().unwrap();
        assert!(arc.centre.norm() < 1e-15);
        assert!((arc.radius - 1.0).abs() < 1e-15);
        assert!((half.length() - PI).abs() < 1e-15);
        assert!(half.midpoint().distance(Point::new(0.0, 1.0)) < 1e-15);
        assert!(half.point_at(0.25).distance(Point::polar(1.0, PI / 4.0)) < 1e-15);
        assert!((half.share_of(Point::polar(1.0, PI / 3.0)) - 1.0 / 3.0).abs() < 1e-15);
        let bounds = half.bounding_box();
        assert!(bounds.min.distance(Point::new(-1.0, 0.0)) < 1e-15);
        assert!(bounds.max.distance(Point::new(1.0, 1.0)) < 1e-15);
        assert!(half.tangent_at(0.0).distance(Point::new(0.0, 1.0)) < 1e-15);
    }

    #[test]
    fn a_part_lies_on_the_whole() {
        let arc = Segment::new(Point::new(3.0, 0.0), Point::new(0.0, 3.0), (PI / 8.0).tan());
        let part = arc.part(0.2, 0.7);
        assert!(part.a.distance(Point::polar(3.0, 0.1 * PI)) < 1e-14);
        assert!(part.midpoint().distance(Point::polar(3.0, 0.225 * PI)) < 1e-14);
        assert!((part.length() - 0.5 * arc.length()).abs() < 1e-14);
        assert!((arc.share_of(part.b) - 0.7).abs() < 1e-14);
        for bulge in [1e-7, -1e-3, 0.2, -0.6, 1.0] {
            let curve = Segment::new(arc.a, arc.b, bulge);
            for share in [0.0, 1e-6, 0.3, 0.5, 0.99, 1.0] {
                assert!((curve.share_of(curve.point_at(share)) - share).abs() < 1e-14);
            }
        }
        let back = arc.reversed().part(0.3, 0.8);
        assert!(back.b.distance(part.a) < 1e-14);
    }

    #[test]
    fn nearest_points() {
        let half = half_circle();
        assert!(
            half.nearest(Point::new(0.0, 0.2))
                .distance(Point::new(0.0, 1.0))
                < 1e-15
        );
        assert_eq!(half.nearest(Point::new(0.5, -2.0)), Point::new(1.0, 0.0));
        assert!((half.nearest(Point::default()).norm() - 1.0).abs() < 1e-15);
        let line = Segment::line(Point::new(0.0, 0.0), Point::new(4.0, 0.0));
        assert_eq!(line.nearest(Point::new(1.0, 3.0)), Point::new(1.0, 0.0));
        assert_eq!(line.nearest(Point::new(9.0, 3.0)), Point::new(4.0, 0.0));
        assert!((line.share_of(Point::new(1.0, 0.0)) - 0.25).abs() < 1e-15);
    }

    #[test]
    fn chords_stay_inside_the_tolerance() {
        let mut points = vec![half_circle().a];
        half_circle().flatten_into(1e-3, &mut points);
        for pair in points.windows(2) {
            let middle = pair[0].midpoint(pair[1]);
            assert!(1.0 - middle.norm() < 1e-3);
            assert!((pair[1].norm() - 1.0).abs() < 1e-14);
        }
    }
}
