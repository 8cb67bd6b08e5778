//! A closed contour of tagged lines and arcs.

use super::moments::{Moments, moments_of};
use super::piece::{Piece, bounds_of, nearest_piece};
use super::{BoundingBox, Point, SHORTEST, Segment};

/// A closed, simple contour, counter-clockwise; each piece carries the tag of what it belongs to.
///
/// Only [`super::OutlineBuilder`] makes one, so every outline is finite, without pieces shorter than
/// [`SHORTEST`], does not cross or touch itself, and encloses an area.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline<T = ()> {
    pieces: Vec<Piece<T>>,
    bounds: BoundingBox,
    moments: Moments,
}

/// What a hit test found.
pub type Hit<T> = (T, Point, f64);

impl<T: Copy + PartialEq> Outline<T> {
    /// `None` where the loop encloses no area.
    pub(super) fn from_loop(mut pieces: Vec<Piece<T>>) -> Option<Self> {
        let bounds = bounds_of(&pieces);
        let mut moments = moments_of(&pieces);
        if moments.area < 0.0 {
            pieces = pieces.iter().rev().map(Piece::reversed).collect();
            moments = moments_of(&pieces);
        }
        let thinnest = SHORTEST * bounds.width().max(bounds.height());
        (moments.area > thinnest * 1e-3).then_some(Self {
            pieces,
            bounds,
            moments,
        })
    }

    /// The pieces with their tags, counter-clockwise.
    #[must_use]
    pub fn pieces(&self) -> impl ExactSizeIterator<Item = (Segment, T)> + '_ {
        self.pieces.iter().map(|piece| (piece.segment, piece.tag))
    }

    pub(super) fn pieces_in_order(&self) -> &[Piece<T>] {
        &self.pieces
    }

    /// The enclosed area, mm2.
    #[must_use]
    pub const fn area(&self) -> f64 {
        self.moments.area
    }

    /// The centroid of the enclosed area.
    #[must_use]
    pub fn centroid(&self) -> Point {
        Point::new(
            self.moments.x / self.moments.area,
            self.moments.y / self.moments.area,
        )
    }

    /// Area and moments of the enclosed area.
    #[must_use]
    pub const fn moments(&self) -> Moments {
        self.moments
    }

    /// The length of the contour, mm.
    #[must_use]
    pub fn perimeter(&self) -> f64 {
        self.pieces.iter().map(|piece| piece.segment.length()).sum()
    }

    /// The upright box around it.
    #[must_use]
    pub const fn bounding_box(&self) -> BoundingBox {
        self.bounds
    }

    /// Whether a point lies inside; a point on the contour itself may be told either way.
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        if self.bounds.gap_squared_to(point) > 0.0 {
            return false;
        }
        let turns: i32 = self
            .pieces
            .iter()
            .map(|piece| turns_round(piece, point))
            .sum();
        turns != 0
    }

    /// The nearest piece's tag, the nearest place on it and the distance, inside or out.
    #[must_use]
    pub fn nearest(&self, point: Point) -> Hit<T> {
        let (index, foot, square) = nearest_piece(&self.pieces, point);
        // An outline is only built with pieces in it, and the index is one of these.
        (self.pieces[index].tag, foot, square.sqrt())
    }

    /// Moved by a vector.
    #[must_use]
    pub fn translated(&self, by: Point) -> Self {
        Self::remade(
            self.pieces
                .iter()
                .map(|piece| piece.translated(by))
                .collect(),
        )
    }

    /// Mirrored left to right; stays counter-clockwise.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self::remade(self.pieces.iter().rev().map(Piece::mirrored).collect())
    }

    /// Turned counter-clockwise about the origin.
    #[must_use]
    pub fn rotated(&self, angle_rad: f64) -> Self {
        let turn = |piece: &Piece<T>| {
            let Segment { a, b, bulge } = piece.segment;
            Piece::new(
                Segment::new(a.rotated(angle_rad), b.rotated(angle_rad), bulge),
                piece.tag,
            )
        };
        Self::remade(self.pieces.iter().map(turn).collect())
    }

    /// The same shape with other tags.
    #[must_use]
    pub fn retagged<U: Copy + PartialEq>(&self, tag_of: impl Fn(T) -> U) -> Outline<U> {
        let pieces = self
            .pieces
            .iter()
            .map(|piece| Piece {
                segment: piece.segment,
                tag: tag_of(piece.tag),
                bounds: piece.bounds,
            })
            .collect();
        Outline {
            pieces,
            bounds: self.bounds,
            moments: self.moments,
        }
    }

    /// The contour as points, not closed, no chord farther than `chord_tol` from its arc.
    #[must_use]
    pub fn flattened(&self, chord_tol: f64) -> Vec<Point> {
        let mut points = Vec::with_capacity(self.pieces.len());
        for piece in &self.pieces {
            piece.segment.flatten_into(chord_tol, &mut points);
        }
        points
    }

    /// The same contour after a motion that keeps its area and its direction.
    fn remade(pieces: Vec<Piece<T>>) -> Self {
        let bounds = bounds_of(&pieces);
        let moments = moments_of(&pieces);
        Self {
            pieces,
            bounds,
            moments,
        }
    }
}

/// What a piece adds to the number of times the contour runs round the point: its chord by the half-open
/// crossing rule, and once more where the point lies between chord and arc.
fn turns_round<T>(piece: &Piece<T>, point: Point) -> i32 {
    let Segment { a, b, bulge } = piece.segment;
    // A piece wholly above, below or to the left adds nothing.
    let BoundingBox { min, max } = piece.bounds;
    if point.y < min.y || point.y > max.y || point.x > max.x {
        return 0;
    }
    let cross = (b - a).cross(point - a);
    // A point on the chord's own line counts to one side of it, the same for chord and arc.
    let is_on_left_side = b.y < a.y || (b.y <= a.y && b.x > a.x);
    let is_left = cross > 0.0 || (cross >= 0.0 && is_on_left_side);
    let over_chord = if a.y <= point.y && point.y < b.y {
        i32::from(is_left)
    } else if b.y <= point.y && point.y < a.y {
        -i32::from(!is_left)
    } else {
        0
    };
    let Some(arc) = piece.segment.arc() else {
        return over_chord;
    };
    let arc_is_left = bulge < 0.0;
    if is_left == arc_is_left && point.distance(arc.centre) < arc.radius {
        over_chord + if arc_is_left { -1 } else { 1 }
    } else {
        over_chord
    }
}

#[cfg(test)]
mod tests {
    use super::super::OutlineBuilder;
    use super::*;
    use std::f64::consts::PI;

    fn disc(centre: Point, radius: f64) -> Outline<char> {
        let (right, left) = (
            centre + Point::new(radius, 0.0),
            centre - Point::new(radius, 0.0),
        );
        OutlineBuilder::start(right)
            .arc_to(left, 1.0, 'u')
            .close_with(1.0, 'l')
            .unwrap()
    }

    #[test]
    fn a_disc_holds_its_centre_and_its_chords() {
        let disc = disc(Point::new(2.0, 1.0), 3.0);
        assert!((disc.area() - 9.0 * PI).abs() < 1e-13);
        assert!((disc.perimeter() - 6.0 * PI).abs() < 1e-13);
        for x in [-0.99, 0.0, 2.0, 3.3, 4.99] {
            assert!(disc.contains(Point::new(x, 1.0)), "{x}");
        }
        assert!(!disc.contains(Point::new(-1.01, 1.0)));
        assert!(!disc.contains(Point::new(4.5, 3.5)));
        let (tag, foot, distance) = disc.nearest(Point::new(2.0, 9.0));
        assert_eq!(tag, 'u');
        assert!(foot.distance(Point::new(2.0, 4.0)) < 1e-14 && (distance - 5.0).abs() < 1e-14);
    }

    #[test]
    fn a_slot_with_a_round_end_bitten_out() {
        // A 4 x 2 plate with a half circle of radius 1 taken out of its right end.
        let plate = OutlineBuilder::start(Point::new(0.0, 0.0))
            .line_to(Point::new(4.0, 0.0), 0)
            .arc_to(Point::new(4.0, 2.0), -1.0, 1)
            .line_to(Point::new(0.0, 2.0), 2)
            .close(3)
            .unwrap();
        assert!((plate.area() - (8.0 - PI / 2.0)).abs() < 1e-14);
        assert!(!plate.contains(Point::new(3.5, 1.0)));
        assert!(plate.contains(Point::new(2.9, 1.0)));
        assert!(plate.contains(Point::new(3.9, 0.005)));
        let moved = plate.translated(Point::new(10.0, 0.0));
        assert!((moved.area() - plate.area()).abs() < 1e-12);
        assert!((moved.centroid().x - plate.centroid().x - 10.0).abs() < 1e-13);
        let mirrored = plate.mirrored();
        assert!((mirrored.area() - plate.area()).abs() < 1e-13);
        assert!(mirrored.contains(Point::new(-2.9, 1.0)));
        assert!(!mirrored.contains(Point::new(-3.5, 1.0)));
        let turned = plate.rotated(1.0);
        assert!(turned.contains(Point::new(2.9, 1.0).rotated(1.0)));
        assert_eq!(
            plate
                .retagged(|tag| tag > 1)
                .pieces()
                .filter(|piece| piece.1)
                .count(),
            2
        );
    }

    #[test]
    fn flattened_area_comes_from_below() {
        let points = disc(Point::default(), 1.0).flattened(1e-5);
        let area: f64 = (0..points.len())
            .map(|index| points[index].cross(points[(index + 1) % points.len()]) / 2.0)
            .sum();
        assert!(area < PI && PI - area < 1e-4);
    }
}
