//! The point of a piece that stands deepest inside a contour.

use super::closest::Pair;
use super::piece::{Piece, nearest_piece_from};
use super::{CONTACT, Point, Segment};

/// The depth found is short of the true one by at most this, mm.
pub(super) const DEPTH_TOLERANCE: f64 = 1e-6;

/// A point and its distance to a contour, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Depth {
    pub depth: f64,
    pub at: Point,
}

/// The deepest of the points of all parts, or `known` where none is deeper.
///
/// The distance to the contour is halved into ever shorter stretches; a stretch is left as soon as no point of it
/// can be deeper than the best by [`DEPTH_TOLERANCE`].
pub(super) fn deepest<T: Copy>(
    parts: impl Iterator<Item = Segment>,
    contour: &[Piece<T>],
    known: Depth,
) -> Depth {
    let mut best = known;
    let mut stack: Vec<(Segment, usize)> = parts.map(|part| (part, 0)).collect();
    while let Some((stretch, likely)) = stack.pop() {
        let middle = stretch.midpoint();
        let (index, _, square) = nearest_piece_from(contour, middle, likely);
        let depth = square.sqrt();
        if depth > best.depth {
            best = Depth { depth, at: middle };
        }
        // No distance grows faster than the way along the stretch.
        let by_length = depth + stretch.length() / 2.0;
        // The index is one of the contour's pieces.
        let highest = by_length.min(greatest_distance(&stretch, &contour[index].segment));
        if highest > best.depth + DEPTH_TOLERANCE {
            stack.push((stretch.part(0.0, 0.5), index));
            stack.push((stretch.part(0.5, 1.0), index));
        }
    }
    best
}

/// A bound on the distance from any point of `stretch` to `piece`.
fn greatest_distance(stretch: &Segment, piece: &Segment) -> f64 {
    let rise = stretch.bulge.abs() * stretch.chord().norm() / 2.0;
    let Some(arc) = piece.arc() else {
        // The distance to a line is convex, so it is greatest at an end of a chord.
        let ends = [stretch.a, stretch.b].map(|end| piece.nearest(end).distance(end));
        return ends[0].max(ends[1]) + rise;
    };
    if !(arc.covers_direction(stretch.a) && arc.covers_direction(stretch.b)) {
        return f64::INFINITY;
    }
    let own = stretch.arc();
    let nearest = stretch.nearest(arc.centre).distance(arc.centre);
    let ends = stretch
        .a
        .distance(arc.centre)
        .max(stretch.b.distance(arc.centre));
    let far_side = own.and_then(|own| {
        let unit = (own.centre - arc.centre).unit()?;
        let place = own.centre + unit * own.radius;
        own.covers(place).then(|| place.distance(arc.centre))
    });
    let farthest = far_side.map_or(ends, |far| far.max(ends));
    // An arc about the same centre stays between the rays to the ends of the piece; another may bow out of them.
    let is_concentric =
        own.is_some_and(|own| Pair::of(own.centre, arc.centre).square <= CONTACT * CONTACT);
    let slack = if is_concentric { 0.0 } else { rise };
    (arc.radius - nearest)
        .abs()
        .max((farthest - arc.radius).abs())
        + slack
}
