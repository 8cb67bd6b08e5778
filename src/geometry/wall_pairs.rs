//! Discs that touch a contour at two opposite points.
//!
//! Candidates are every pair of places, on pieces or at inward corners, that see each other squarely; each is taken
//! only if the disc over the two is free.

use super::piece::Piece;
use super::segment::Arc;
use super::wall::Search;
use super::{CONTACT, Point, Segment};

/// Directions nearer than this are parallel.
const PARALLEL: f64 = 1e-9;

/// A corner that a disc inside the metal can touch.
struct Corner<T> {
    place: Point,
    index: usize,
    before: Point,
    after: Point,
    tags: [T; 2],
}

impl<T> Corner<T> {
    /// Whether the corner is the nearest place of its two pieces to what lies in direction `unit`.
    fn sees(&self, unit: Point) -> bool {
        self.before.dot(unit) >= -PARALLEL && self.after.dot(unit) <= PARALLEL
    }
}

pub(super) fn search<T: Copy + PartialEq>(search: &mut Search<'_, T>) {
    let pieces = search.outline.pieces_in_order();
    let corners = corners_of(pieces);
    for (rank, corner) in corners.iter().enumerate() {
        for other in &corners[rank + 1..] {
            two_corners(search, corner, other);
        }
        for (index, piece) in pieces.iter().enumerate() {
            let is_own = index == corner.index || (index + 1) % pieces.len() == corner.index;
            if !is_own {
                corner_and_piece(search, corner, piece);
            }
        }
    }
    for (rank, first) in pieces.iter().enumerate() {
        for second in &pieces[rank + 1..] {
            let limit = search.limit();
            if first.bounds.gap_squared(second.bounds) < limit * limit {
                two_pieces(search, first, second);
            }
        }
    }
}

fn corners_of<T: Copy>(pieces: &[Piece<T>]) -> Vec<Corner<T>> {
    let befores = pieces.iter().cycle().skip(pieces.len() - 1);
    befores
        .zip(pieces)
        .enumerate()
        .filter_map(|(index, (before, after))| {
            let (inward, outward) = (
                before.segment.tangent_at(1.0),
                after.segment.tangent_at(0.0),
            );
            // Metal lies to the left: a turn to the left is a corner that no disc inside can reach.
            let is_reached = inward.cross(outward) <= PARALLEL;
            is_reached.then_some(Corner {
                place: after.segment.a,
                index,
                before: inward,
                after: outward,
                tags: [before.tag, after.tag],
            })
        })
        .collect()
}

fn two_corners<T: Copy + PartialEq>(search: &mut Search<'_, T>, one: &Corner<T>, two: &Corner<T>) {
    let Some(unit) = (two.place - one.place).unit() else {
        return;
    };
    if one.sees(unit) && two.sees(-unit) {
        search.offer_opposite((one.place, &one.tags), (two.place, &two.tags));
    }
}

fn corner_and_piece<T: Copy + PartialEq>(
    search: &mut Search<'_, T>,
    corner: &Corner<T>,
    piece: &Piece<T>,
) {
    let limit = search.limit();
    if piece.bounds.gap_squared_to(corner.place) >= limit * limit {
        return;
    }
    let foot = piece.segment.nearest(corner.place);
    let Some(unit) = (foot - corner.place).unit() else {
        return;
    };
    let is_square =
        foot.distance(piece.segment.a) > CONTACT && foot.distance(piece.segment.b) > CONTACT;
    if is_square && corner.sees(unit) && faces(&piece.segment, foot, -unit) {
        search.offer_opposite((corner.place, &corner.tags), (foot, &[piece.tag]));
    }
}

/// Whether the metal at a place of a piece lies in direction `unit`.
fn faces(segment: &Segment, place: Point, unit: Point) -> bool {
    segment.tangent_at(segment.share_of(place)).left().dot(unit) > 0.5
}

fn two_pieces<T: Copy + PartialEq>(
    search: &mut Search<'_, T>,
    first: &Piece<T>,
    second: &Piece<T>,
) {
    match (first.segment.arc(), second.segment.arc()) {
        (None, None) => two_lines(search, first, second),
        (None, Some(arc)) => line_and_arc(search, first, second, &arc),
        (Some(arc), None) => line_and_arc(search, second, first, &arc),
        (Some(one), Some(two)) => two_arcs(search, (first, &one), (second, &two)),
    }
}

/// Offers two places if the metal lies between them.
fn offer<T: Copy + PartialEq>(
    search: &mut Search<'_, T>,
    (first, a): (&Piece<T>, Point),
    (second, b): (&Piece<T>, Point),
) {
    let Some(unit) = (b - a).unit() else { return };
    if faces(&first.segment, a, unit) && faces(&second.segment, b, -unit) {
        search.offer_opposite((a, &[first.tag]), (b, &[second.tag]));
    }
}

fn two_lines<T: Copy + PartialEq>(search: &mut Search<'_, T>, first: &Piece<T>, second: &Piece<T>) {
    let (line, other) = (&first.segment, &second.segment);
    let length = line.length();
    let along = line.chord() * (1.0 / length);
    let across = other.chord() * (1.0 / other.length());
    if along.cross(across).abs() > PARALLEL || along.dot(across) > 0.0 {
        return;
    }
    let (far, near) = ((other.a - line.a).dot(along), (other.b - line.a).dot(along));
    let (from, to) = (near.max(0.0), far.min(length));
    let distance = along.cross(other.a - line.a);
    if to <= from || distance <= 0.0 {
        return;
    }
    // At its middle or half a thickness from either end: a disc blocked at all three meets something nearer.
    let inset = (distance / 2.0).min((to - from) / 2.0);
    for at in [f64::midpoint(from, to), from + inset, to - inset] {
        let place = line.a + along * at;
        offer(
            search,
            (first, place),
            (second, place + along.left() * distance),
        );
    }
}

fn line_and_arc<T: Copy + PartialEq>(
    search: &mut Search<'_, T>,
    straight: &Piece<T>,
    curved: &Piece<T>,
    arc: &Arc,
) {
    let line = &straight.segment;
    let foot = line.nearest(arc.centre);
    let Some(square) = line.chord().left().unit() else {
        return;
    };
    if foot.distance(line.a) <= CONTACT || foot.distance(line.b) <= CONTACT {
        return;
    }
    for side in [square, -square] {
        let place = arc.centre + side * arc.radius;
        if arc.covers(place) {
            offer(search, (straight, foot), (curved, place));
        }
    }
}

fn two_arcs<T: Copy + PartialEq>(
    search: &mut Search<'_, T>,
    (first, one): (&Piece<T>, &Arc),
    (second, two): (&Piece<T>, &Arc),
) {
    let between = two.centre - one.centre;
    if between.norm() <= CONTACT {
        concentric_arcs(search, (first, one), (second, two));
        return;
    }
    let Some(unit) = between.unit() else { return };
    for (side, other) in [(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)] {
        let a = one.centre + unit * (side * one.radius);
        let b = two.centre + unit * (other * two.radius);
        if one.covers(a) && two.covers(b) {
            offer(search, (first, a), (second, b));
        }
    }
}

fn concentric_arcs<T: Copy + PartialEq>(
    search: &mut Search<'_, T>,
    (first, one): (&Piece<T>, &Arc),
    (second, two): (&Piece<T>, &Arc),
) {
    if let Some(unit) = middle_of_shared(first, second, one.centre) {
        let (a, b) = (
            one.centre + unit * one.radius,
            two.centre + unit * two.radius,
        );
        offer(search, (first, a), (second, b));
    }
    if (one.radius - two.radius).abs() <= CONTACT {
        // Two arcs of one circle: across its centre.
        for end in [one.a, one.b, two.a, two.b, first.segment.midpoint()] {
            let opposite = one.centre - (end - one.centre);
            if one.covers(end) && two.covers(opposite) {
                offer(search, (first, end), (second, opposite));
            }
        }
    }
}

/// The direction to the middle of the angle that two concentric arcs share.
fn middle_of_shared<T>(first: &Piece<T>, second: &Piece<T>, centre: Point) -> Option<Point> {
    let [one, two] = [first, second].map(|piece| piece.segment.midpoint() - centre);
    let [half, other] = [first, second].map(|piece| piece.segment.sweep_rad().abs() / 2.0);
    let aside = one.cross(two).atan2(one.dot(two));
    let (from, to) = ((aside - other).max(-half), (aside + other).min(half));
    if to > from {
        one.rotated(f64::midpoint(from, to)).unit()
    } else {
        None
    }
}
