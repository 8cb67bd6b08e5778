//! An open run of tagged lines and arcs.

use super::piece::{Piece, bounds_of, nearest_piece};
use super::{BoundingBox, OutlineBuilder, OutlineError, Point, Segment};

/// Lines and arcs end to end, not closed: the sweep of a mirror, the floor of a pocket.
#[derive(Clone, Debug, PartialEq)]
pub struct Path<T = ()> {
    pieces: Vec<Piece<T>>,
    bounds: BoundingBox,
}

impl<T: Copy + PartialEq> Path<T> {
    pub(super) fn from_pieces(pieces: Vec<Piece<T>>) -> Self {
        let bounds = bounds_of(&pieces);
        Self { pieces, bounds }
    }

    /// Straight lines from point to point, all with one tag.
    ///
    /// # Errors
    /// As [`OutlineBuilder::open`]; also when there is no point at all.
    pub fn straight(points: impl IntoIterator<Item = Point>, tag: T) -> Result<Self, OutlineError> {
        let mut points = points.into_iter();
        let first = points.next().ok_or(OutlineError::NotStarted)?;
        points
            .fold(OutlineBuilder::start(first), |path, point| {
                path.line_to(point, tag)
            })
            .open()
    }

    /// The pieces with their tags, in order.
    #[must_use]
    pub fn pieces(&self) -> impl ExactSizeIterator<Item = (Segment, T)> + '_ {
        self.pieces.iter().map(|piece| (piece.segment, piece.tag))
    }

    pub(super) fn pieces_in_order(&self) -> &[Piece<T>] {
        &self.pieces
    }

    /// The upright box around it.
    #[must_use]
    pub const fn bounding_box(&self) -> BoundingBox {
        self.bounds
    }

    /// The length, mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.pieces.iter().map(|piece| piece.segment.length()).sum()
    }

    /// Moved by a vector.
    #[must_use]
    pub fn translated(&self, by: Point) -> Self {
        Self::from_pieces(
            self.pieces
                .iter()
                .map(|piece| piece.translated(by))
                .collect(),
        )
    }

    /// Mirrored left to right.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self::from_pieces(self.pieces.iter().rev().map(Piece::mirrored).collect())
    }

    /// The nearest piece's tag, the nearest place on it, and the distance.
    #[must_use]
    pub fn nearest(&self, point: Point) -> (T, Point, f64) {
        let (index, foot, square) = nearest_piece(&self.pieces, point);
        // A path is only built with a piece in it, and the index is one of these.
        (self.pieces[index].tag, foot, square.sqrt())
    }

    /// The path as points, no chord farther than `chord_tol` from its arc.
    #[must_use]
    pub fn flattened(&self, chord_tol: f64) -> Vec<Point> {
        let mut points: Vec<Point> = self
            .pieces
            .first()
            .map(|piece| piece.segment.a)
            .into_iter()
            .collect();
        for piece in &self.pieces {
            piece.segment.flatten_into(chord_tol, &mut points);
        }
        points
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bent_path() {
        let corners = [(0.0, 0.0), (3.0, 0.0), (3.0, 4.0)].map(|(x, y)| Point::new(x, y));
        let path = Path::straight(corners, 'm').unwrap();
        assert!((path.length() - 7.0).abs() < 1e-15);
        let (tag, foot, distance) = path.nearest(Point::new(5.0, 2.0));
        assert_eq!((tag, foot), ('m', Point::new(3.0, 2.0)));
        assert!((distance - 2.0).abs() < 1e-15);
        assert_eq!(path.flattened(0.01), corners.to_vec());
        let mirrored = path.mirrored().translated(Point::new(1.0, 0.0));
        assert_eq!(mirrored.bounding_box().min, Point::new(-2.0, 0.0));
        assert!(Path::<()>::straight([], ()).is_err());
        assert!(Path::straight([Point::new(1.0, 1.0)], ()).is_err());
    }
}
