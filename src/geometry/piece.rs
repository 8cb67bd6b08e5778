//! A segment with the tag of what it belongs to and the box around it, and what is asked of a run of them.

use super::{BoundingBox, Point, Segment};

/// One tagged piece of an outline or a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece<T> {
    pub segment: Segment,
    pub tag: T,
    pub bounds: BoundingBox,
}

impl<T: Copy> Piece<T> {
    pub fn new(segment: Segment, tag: T) -> Self {
        Self {
            segment,
            tag,
            bounds: segment.bounding_box(),
        }
    }

    pub fn reversed(&self) -> Self {
        Self {
            segment: self.segment.reversed(),
            tag: self.tag,
            bounds: self.bounds,
        }
    }

    pub fn translated(&self, by: Point) -> Self {
        let bounds = BoundingBox {
            min: self.bounds.min + by,
            max: self.bounds.max + by,
        };
        Self {
            segment: self.segment.translated(by),
            tag: self.tag,
            bounds,
        }
    }

    /// Mirrored left to right and run the other way, so that a counter-clockwise outline stays one.
    pub fn mirrored(&self) -> Self {
        // Mirroring and turning round each change the sign of the bulge.
        let segment = Segment::new(
            self.segment.b.mirrored(),
            self.segment.a.mirrored(),
            self.segment.bulge,
        );
        let bounds = BoundingBox::of(self.bounds.min.mirrored(), self.bounds.max.mirrored());
        Self {
            segment,
            tag: self.tag,
            bounds,
        }
    }
}

/// The box around several pieces.
pub(super) fn bounds_of<T>(pieces: &[Piece<T>]) -> BoundingBox {
    let boxes = pieces.iter().map(|piece| piece.bounds);
    let nowhere = BoundingBox {
        min: Point::default(),
        max: Point::default(),
    };
    boxes.reduce(BoundingBox::joined).unwrap_or(nowhere)
}

/// The piece nearest to a point: its index, the nearest place on it and the square of the distance.
pub(super) fn nearest_piece<T>(pieces: &[Piece<T>], point: Point) -> (usize, Point, f64) {
    nearest_piece_from(pieces, point, 0)
}

/// The same, faster where the piece `likely` is near.
pub(super) fn nearest_piece_from<T>(
    pieces: &[Piece<T>],
    point: Point,
    likely: usize,
) -> (usize, Point, f64) {
    let mut best = (0, point, f64::INFINITY);
    let mut offer = |index: usize, piece: &Piece<T>| {
        if piece.bounds.gap_squared_to(point) < best.2 {
            let foot = piece.segment.nearest(point);
            let square = (foot - point).dot(foot - point);
            if square < best.2 {
                best = (index, foot, square);
            }
        }
    };
    if let Some(piece) = pieces.get(likely) {
        offer(likely, piece);
    }
    for (index, piece) in pieces.iter().enumerate() {
        offer(index, piece);
    }
    best
}

/// Whether no piece comes nearer to a point than `least`.
pub(super) fn is_clear<T>(pieces: &[Piece<T>], point: Point, least: f64) -> bool {
    let square = least * least;
    pieces.iter().all(|piece| {
        piece.bounds.gap_squared_to(point) >= square || {
            let step = piece.segment.nearest(point) - point;
            step.dot(step) >= square
        }
    })
}
