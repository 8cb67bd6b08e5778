//! Discs at the blunt end of a taper.
//!
//! Along a flank, the disc that touches it and the side it closes up on grows smaller until whatever ends the taper
//! gets in its way. That last disc is the wall there.

use super::piece::Piece;
use super::wall::{STEEPEST_TAPER, Search};
use super::{CONTACT, Point, Segment};

/// Halvings of the stretch in which the last free disc lies.
const HALVINGS: usize = 48;

pub(super) fn search<T: Copy + PartialEq>(search: &mut Search<'_, T>) {
    let pieces = search.outline.pieces_in_order();
    for index in 0..pieces.len() {
        round_nose(search, pieces, index);
        for end in [End::First, End::Last] {
            flank_end(search, pieces, Flank { index, end });
        }
    }
}

/// An end of a piece, toward which it may close up on another.
#[derive(Clone, Copy)]
enum End {
    First,
    Last,
}

#[derive(Clone, Copy)]
struct Flank {
    index: usize,
    end: End,
}

impl Flank {
    fn neighbours(self, count: usize) -> [usize; 2] {
        [(self.index + count - 1) % count, (self.index + 1) % count]
    }

    /// The share of the flank at a share of its length away from the end.
    fn share(self, away: f64) -> f64 {
        match self.end {
            End::First => away,
            End::Last => 1.0 - away,
        }
    }
}

/// A nose rounded so far that its sides close up gently is filled by its own disc.
fn round_nose<T: Copy + PartialEq>(search: &mut Search<'_, T>, pieces: &[Piece<T>], index: usize) {
    let segment = &pieces[index].segment;
    let Some(arc) = segment.arc() else { return };
    let least_turn = std::f64::consts::PI - STEEPEST_TAPER;
    if segment.sweep_rad() < least_turn - CONTACT {
        return;
    }
    let [before, after] = Flank {
        index,
        end: End::First,
    }
    .neighbours(pieces.len());
    search.offer(
        (segment.a, &[pieces[before].tag]),
        (segment.b, &[pieces[after].tag]),
        arc.centre,
        2.0 * arc.radius,
    );
}

fn flank_end<T: Copy + PartialEq>(search: &mut Search<'_, T>, pieces: &[Piece<T>], flank: Flank) {
    let segment = &pieces[flank.index].segment;
    let share = flank.share(0.0);
    let place = segment.point_at(share);
    let tangent = segment.tangent_at(share);
    let outward = match flank.end {
        End::First => -tangent,
        End::Last => tangent,
    };
    let neighbours = flank.neighbours(pieces.len());
    for (index, side) in pieces.iter().enumerate() {
        if index == flank.index || neighbours.contains(&index) {
            continue;
        }
        let limit = search.limit();
        if side.bounds.gap_squared_to(place) >= limit * limit {
            continue;
        }
        let foot = side.segment.nearest(place);
        let Some(unit) = (foot - place).unit() else {
            continue;
        };
        // The way to the other side must lie in the metal, and grow shorter toward this end.
        let is_facing = tangent.left().dot(unit) >= STEEPEST_TAPER.cos() - CONTACT;
        if is_facing && outward.dot(unit) > CONTACT && place.distance(foot) < limit {
            last_free_disc(search, pieces, flank, index, place.distance(foot));
        }
    }
}

/// A disc touching the flank at `at`.
#[derive(Clone, Copy)]
struct Disc {
    at: Point,
    centre: Point,
    radius: f64,
}

fn last_free_disc<T: Copy + PartialEq>(
    search: &mut Search<'_, T>,
    pieces: &[Piece<T>],
    flank: Flank,
    side: usize,
    width: f64,
) {
    let length = pieces[flank.index].segment.length();
    let disc_at = |away: f64| free_disc(pieces, flank, side, flank.share(away));
    let Some(free) = first_free(disc_at, width / (8.0 * length)) else {
        return;
    };
    let touch = pieces[side].segment.nearest(free.centre);
    let (one, two) = ((free.at - free.centre).unit(), (touch - free.centre).unit());
    let Some((one, two)) = one.zip(two) else {
        return;
    };
    if one.dot(two) <= -STEEPEST_TAPER.cos() + CONTACT {
        let tags = ([pieces[flank.index].tag], [pieces[side].tag]);
        search.offer(
            (free.at, &tags.0),
            (touch, &tags.1),
            free.centre,
            2.0 * free.radius,
        );
    }
}

/// The free disc nearest to the end, looked for in steps that double and then by halving; `None` where there is none,
/// or where the disc at the end itself is free, so that the taper runs on past it.
fn first_free(disc_at: impl Fn(f64) -> Option<Disc>, step: f64) -> Option<Disc> {
    let mut blocked = 0.0;
    if disc_at(blocked).is_some() {
        return None;
    }
    let mut open = step.min(1.0);
    let mut free = disc_at(open);
    while free.is_none() && open < 1.0 {
        blocked = open;
        open = (2.0 * open).min(1.0);
        free = disc_at(open);
    }
    let mut free = free?;
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(blocked, open);
        match disc_at(middle) {
            Some(disc) => {
                free = disc;
                open = middle;
            }
            None => blocked = middle,
        }
    }
    Some(free)
}

/// The disc that touches the flank at a share of its length and the side, if no other piece is in its way.
fn free_disc<T: Copy>(pieces: &[Piece<T>], flank: Flank, side: usize, share: f64) -> Option<Disc> {
    let segment = &pieces[flank.index].segment;
    let at = segment.point_at(share);
    let normal = segment.tangent_at(share).left();
    let radius = touching_radius(at, normal, &pieces[side].segment);
    if !radius.is_finite() {
        return None;
    }
    let centre = at + normal * radius;
    let room = radius - CONTACT;
    let is_free = pieces.iter().enumerate().all(|(index, piece)| {
        index == flank.index
            || index == side
            || piece.bounds.gap_squared_to(centre) >= room * room
            || piece.segment.nearest(centre).distance(centre) >= room
    });
    is_free.then_some(Disc { at, centre, radius })
}

/// Radius of the disc that touches a contour at `at`, where the metal lies along `normal`, and another piece.
fn touching_radius(at: Point, normal: Point, segment: &Segment) -> f64 {
    let through_end = |end: Point| {
        let step = end - at;
        let ahead = normal.dot(step);
        if ahead > 0.0 {
            step.dot(step) / (2.0 * ahead)
        } else {
            f64::INFINITY
        }
    };
    let ends = through_end(segment.a).min(through_end(segment.b));
    let inside = match segment.arc() {
        None => {
            let Some(square) = segment.chord().left().unit() else {
                return ends;
            };
            let height = square.dot(at - segment.a);
            height / (1.0 - normal.dot(square))
        }
        Some(arc) => {
            let arm = at - arc.centre;
            // Inside a convex arc the centres are radius less disc apart, outside a concave one both together.
            let signed = if arc.bulge > 0.0 {
                arc.radius
            } else {
                -arc.radius
            };
            let rest = arc.radius * arc.radius - arm.dot(arm);
            rest / (2.0 * (normal.dot(arm) + signed))
        }
    };
    if !(inside > 0.0 && inside.is_finite()) {
        return ends;
    }
    let centre = at + normal * inside;
    let foot = segment.nearest(centre);
    let is_touched = (foot.distance(centre) - inside).abs() <= CONTACT + 1e-9 * inside;
    if is_touched { inside.min(ends) } else { ends }
}
