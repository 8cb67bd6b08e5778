//! A contour cut where it meets another, each part told to be inside, outside or along the other.

use super::closest::crossings;
use super::piece::{Piece, nearest_piece};
use super::{CONTACT, Outline, Segment};

/// Where a part of one contour lies against another outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    Inside,
    Outside,
    /// On the other's contour, with the same direction (both have their metal on the same side) or against it.
    Along {
        same_way: bool,
    },
}

/// Which sides occur among the parts of a contour.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Sides {
    pub inside: bool,
    pub outside: bool,
    pub along_same_way: bool,
}

/// Which sides occur among the parts of a run of pieces.
pub(super) fn sides<A: Copy, B: Copy + PartialEq>(
    pieces: &[Piece<A>],
    other: &Outline<B>,
) -> Sides {
    let mut found = Sides::default();
    for (_, side) in parts(pieces, other) {
        match side {
            Side::Inside => found.inside = true,
            Side::Outside => found.outside = true,
            Side::Along { same_way } => found.along_same_way |= same_way,
        }
    }
    found
}

/// The parts of a run of pieces, cut wherever it meets the other outline.
pub(super) fn parts<A: Copy, B: Copy + PartialEq>(
    pieces: &[Piece<A>],
    other: &Outline<B>,
) -> Vec<(Segment, Side)> {
    let mut found: Vec<(Segment, Side)> = Vec::with_capacity(2 * pieces.len());
    // Where a contour goes on without meeting the other, it stays on the side it was.
    let mut has_met = true;
    for piece in pieces {
        let cuts = cuts_of(piece, other.pieces_in_order());
        has_met |= cuts.meets_start;
        for pair in cuts.shares.windows(2) {
            let [from, to] = pair else { continue };
            let is_whole = *from <= 0.0 && *to >= 1.0;
            let part = if is_whole {
                piece.segment
            } else {
                piece.segment.part(*from, *to)
            };
            let side = match found.last() {
                Some((_, side)) if *from <= 0.0 && !has_met => *side,
                Some(_) | None => side_of(&part, other),
            };
            found.push((part, side));
        }
        has_met = cuts.meets_end;
    }
    found
}

/// Where a piece is to be cut.
struct Cuts {
    /// Shares of the length, with 0 and 1.
    shares: Vec<f64>,
    meets_start: bool,
    meets_end: bool,
}

/// Where a piece meets the others.
fn cuts_of<A, B>(piece: &Piece<A>, others: &[Piece<B>]) -> Cuts {
    let segment = &piece.segment;
    let mut shares = vec![0.0, 1.0];
    for other in others {
        if piece.bounds.gap_squared(other.bounds) > CONTACT * CONTACT {
            continue;
        }
        let crossed = crossings(segment, &other.segment).into_iter().flatten();
        shares.extend(crossed.map(|place| segment.share_of(place)));
        for end in [other.segment.a, other.segment.b] {
            let foot = segment.nearest(end);
            if foot.distance(end) <= CONTACT {
                shares.push(segment.share_of(foot));
            }
        }
        for (end, share) in [(segment.a, 0.0), (segment.b, 1.0)] {
            if other.segment.nearest(end).distance(end) <= CONTACT {
                shares.push(share);
            }
        }
    }
    shares.sort_by(f64::total_cmp);
    // Two cuts closer than contact leave nothing between them.
    let least = CONTACT / segment.length();
    let meets_start = shares.get(1).is_some_and(|share| *share <= least);
    let meets_end = shares
        .iter()
        .rev()
        .nth(1)
        .is_some_and(|share| *share >= 1.0 - least);
    shares.dedup_by(|next, kept| *next - *kept <= least);
    if let Some(last) = shares.last_mut() {
        *last = 1.0;
    }
    Cuts {
        shares,
        meets_start,
        meets_end,
    }
}

fn side_of<B: Copy + PartialEq>(part: &Segment, other: &Outline<B>) -> Side {
    let middle = part.midpoint();
    let others = other.pieces_in_order();
    let (index, foot, square) = nearest_piece(others, middle);
    if square <= CONTACT * CONTACT {
        // The index is one of these pieces.
        let beside = &others[index].segment;
        let direction = beside.tangent_at(beside.share_of(foot));
        return Side::Along {
            same_way: part.tangent_at(0.5).dot(direction) > 0.0,
        };
    }
    if other.contains(middle) {
        Side::Inside
    } else {
        Side::Outside
    }
}
