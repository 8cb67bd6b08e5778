//! A run of straight lines and circular arcs.

use crate::drawing::extent::Extent;
use crate::drawing::placement::{Placement, direction_deg, distance_mm, polar};
use crate::geometry::Point;

/// A corner of a path and the bend of the piece that leaves it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Vertex {
    /// Where it is, mm.
    pub at: Point,
    /// Tangent of a quarter of the angle turned through on the way to the next corner;
    /// 0 is straight, positive bends to the left (counter-clockwise), 1 is a half circle.
    pub bulge: f64,
}

/// A run of lines and arcs, open or closed.
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    /// The corners in order.
    pub vertices: Vec<Vertex>,
    /// Whether the last corner is joined to the first.
    pub closed: bool,
}

/// One straight or round piece of a path.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Piece {
    /// A straight line.
    Line {
        /// Start.
        from: Point,
        /// End.
        to: Point,
    },
    /// A circular arc.
    Arc {
        /// Centre of the circle.
        centre: Point,
        /// Radius, mm.
        radius_mm: f64,
        /// Where it starts, degrees counter-clockwise from x.
        start_deg: f64,
        /// How far it turns, degrees; positive counter-clockwise.
        sweep_deg: f64,
    },
}

/// Under this bulge a piece is drawn straight: its height over the chord is then under a
/// millionth of the chord.
const STRAIGHT_BULGE: f64 = 1e-9;

impl Vertex {
    /// A corner followed by a straight piece.
    #[must_use]
    pub fn straight(at: Point) -> Self {
        Self { at, bulge: 0.0 }
    }
}

impl Piece {
    /// The piece between two corners of a path.
    #[must_use]
    pub fn between(from: Vertex, to: Point) -> Self {
        let chord = distance_mm(from.at, to);
        if from.bulge.abs() < STRAIGHT_BULGE || chord <= 0.0 {
            return Self::Line { from: from.at, to };
        }
        let bulge = from.bulge;
        let middle = Point {
            x: from.at.x.midpoint(to.x),
            y: from.at.y.midpoint(to.y),
        };
        // Distance of the centre from the chord, to the left of it, as a share of the chord.
        let share = (1.0 - bulge * bulge) / (4.0 * bulge);
        let centre = Point {
            x: middle.x - share * (to.y - from.at.y),
            y: middle.y + share * (to.x - from.at.x),
        };
        Self::Arc {
            centre,
            radius_mm: chord * (1.0 + bulge * bulge) / (4.0 * bulge.abs()),
            start_deg: direction_deg(centre, from.at),
            sweep_deg: 4.0 * bulge.atan().to_degrees(),
        }
    }

    /// Length along the piece, mm.
    #[must_use]
    pub fn length_mm(&self) -> f64 {
        match *self {
            Self::Line { from, to } => distance_mm(from, to),
            Self::Arc {
                radius_mm,
                sweep_deg,
                ..
            } => radius_mm * sweep_deg.abs().to_radians(),
        }
    }

    /// The point at a share of the way along, 0 at the start and 1 at the end.
    #[must_use]
    pub fn at_share(&self, share: f64) -> Point {
        match *self {
            Self::Line { from, to } => Point {
                x: share.mul_add(to.x - from.x, from.x),
                y: share.mul_add(to.y - from.y, from.y),
            },
            Self::Arc {
                centre,
                radius_mm,
                start_deg,
                sweep_deg,
            } => polar(centre, radius_mm, share.mul_add(sweep_deg, start_deg)),
        }
    }

    /// The rectangle it covers.
    #[must_use]
    pub fn extent(&self) -> Extent {
        let ends = Extent::between(self.at_share(0.0), self.at_share(1.0));
        match *self {
            Self::Line { .. } => ends,
            Self::Arc {
                centre,
                radius_mm,
                start_deg,
                sweep_deg,
            } => [0.0, 90.0, 180.0, 270.0]
                .into_iter()
                .filter(|&quarter| within_sweep(quarter, start_deg, sweep_deg))
                .map(|quarter| polar(centre, radius_mm, quarter))
                .fold(ends, |all, point| all.union(Extent::between(point, point))),
        }
    }

    /// The bulge of the part of the piece between two shares.
    fn bulge_between(&self, from_share: f64, to_share: f64) -> f64 {
        match *self {
            Self::Line { .. } => 0.0,
            Self::Arc { sweep_deg, .. } => (sweep_deg * (to_share - from_share) / 4.0)
                .to_radians()
                .tan(),
        }
    }
}

/// True when the direction `angle_deg` is met on a turn from `start_deg` through `sweep_deg`.
#[must_use]
pub fn within_sweep(angle_deg: f64, start_deg: f64, sweep_deg: f64) -> bool {
    let ahead = if sweep_deg >= 0.0 {
        angle_deg - start_deg
    } else {
        start_deg - angle_deg
    };
    ahead.rem_euclid(360.0) <= sweep_deg.abs()
}

impl Path {
    /// A straight line.
    #[must_use]
    pub fn line(from: Point, to: Point) -> Self {
        Self::open([from, to])
    }

    /// Straight lines through the points.
    #[must_use]
    pub fn open(points: impl IntoIterator<Item = Point>) -> Self {
        Self {
            vertices: points.into_iter().map(Vertex::straight).collect(),
            closed: false,
        }
    }

    /// Straight lines through the points and back to the first.
    #[must_use]
    pub fn polygon(points: impl IntoIterator<Item = Point>) -> Self {
        Self {
            closed: true,
            ..Self::open(points)
        }
    }

    /// A full circle.
    #[must_use]
    pub fn circle(centre: Point, radius_mm: f64) -> Self {
        let half = |angle_deg| Vertex {
            at: polar(centre, radius_mm, angle_deg),
            bulge: 1.0,
        };
        Self {
            vertices: vec![half(0.0), half(180.0)],
            closed: true,
        }
    }

    /// An arc from `start_deg` through `sweep_deg` (positive counter-clockwise), less than a full turn.
    #[must_use]
    pub fn arc(centre: Point, radius_mm: f64, start_deg: f64, sweep_deg: f64) -> Self {
        // Two halves keep every bulge at 1 or less, where it is well conditioned.
        let bulge = (sweep_deg / 8.0).to_radians().tan();
        let vertices = [0.0, 0.5, 1.0]
            .map(|share: f64| Vertex {
                at: polar(centre, radius_mm, share.mul_add(sweep_deg, start_deg)),
                bulge: if share < 1.0 { bulge } else { 0.0 },
            })
            .to_vec();
        Self {
            vertices,
            closed: false,
        }
    }

    /// The lines and arcs, in order; none for fewer than two corners.
    pub fn pieces(&self) -> impl Iterator<Item = Piece> + '_ {
        let next = self.vertices.iter().skip(1).chain(
            self.vertices
                .first()
                .filter(|_| self.closed && self.vertices.len() > 1),
        );
        self.vertices
            .iter()
            .zip(next)
            .map(|(&from, to)| Piece::between(from, to.at))
    }

    /// Length along the path, mm.
    #[must_use]
    pub fn length_mm(&self) -> f64 {
        self.pieces().map(|piece| piece.length_mm()).sum()
    }

    /// The rectangle it covers; none when it has no corner.
    #[must_use]
    pub fn extent(&self) -> Option<Extent> {
        let corners = Extent::around(self.vertices.iter().map(|vertex| vertex.at));
        self.pieces()
            .map(|piece| piece.extent())
            .chain(corners)
            .reduce(Extent::union)
    }

    /// The path after a placement.
    #[must_use]
    pub fn placed(&self, placement: &Placement) -> Self {
        Self {
            vertices: self
                .vertices
                .iter()
                .map(|vertex| Vertex {
                    at: placement.point(vertex.at),
                    bulge: vertex.bulge * placement.hand(),
                })
                .collect(),
            closed: self.closed,
        }
    }

    /// The part between two lengths along the path, mm, as an open path.
    ///
    /// On a closed path lengths go on past the start: `from_mm` may be negative and `to_mm` may be
    /// over the length. On an open path they are cut at its ends. Empty when nothing is left.
    #[must_use]
    pub fn part(&self, from_mm: f64, to_mm: f64) -> Self {
        let pieces: Vec<Piece> = self.pieces().collect();
        let total: f64 = self.length_mm();
        let rounds: &[f64] = if self.closed {
            &[-1.0, 0.0, 1.0]
        } else {
            &[0.0]
        };
        let mut vertices: Vec<Vertex> = Vec::new();
        for round in rounds {
            let mut done = round * total;
            for piece in &pieces {
                let length = piece.length_mm();
                let start = from_mm.max(done);
                let end = to_mm.min(done + length);
                if end > start {
                    append_part(
                        &mut vertices,
                        piece,
                        (start - done) / length,
                        (end - done) / length,
                    );
                }
                done += length;
            }
        }
        Self {
            vertices,
            closed: false,
        }
    }
}

/// Adds a part of a piece to the end of a run of corners that stops where the part starts.
fn append_part(vertices: &mut Vec<Vertex>, piece: &Piece, from_share: f64, to_share: f64) {
    let bulge = piece.bulge_between(from_share, to_share);
    match vertices.last_mut() {
        Some(last) => last.bulge = bulge,
        None => vertices.push(Vertex {
            at: piece.at_share(from_share),
            bulge,
        }),
    }
    vertices.push(Vertex::straight(piece.at_share(to_share)));
}

#[cfg(test)]
mod tests {
    use super::*;

    fn point(x: f64, y: f64) -> Point {
        Point { x, y }
    }

    #[test]
    fn circle_has_the_circumference_of_a_circle() {
        let circle = Path::circle(point(3.0, -2.0), 5.0);
        assert!((circle.length_mm() - 10.0 * std::f64::consts::PI).abs() < 1e-12);
        let extent = circle.extent().unwrap();
        assert!((extent.width() - 10.0).abs() < 1e-12);
        assert!((extent.top - 3.0).abs() < 1e-12);
    }

    #[test]
    fn quarter_arc_through_its_top_has_the_height_of_the_radius() {
        // From 45 to 135 degrees: the highest point is inside the arc, at the radius.
        let arc = Path::arc(point(0.0, 0.0), 2.0, 45.0, 90.0);
        let extent = arc.extent().unwrap();
        assert!((extent.top - 2.0).abs() < 1e-12);
        assert!((extent.bottom - 2.0_f64.sqrt()).abs() < 1e-12);
    }

    #[test]
    fn part_of_a_circle_across_its_start_lies_on_the_circle() {
        let circle = Path::circle(point(0.0, 0.0), 10.0);
        let part = circle.part(-3.0, 4.0);
        assert!((part.length_mm() - 7.0).abs() < 1e-9);
        for piece in part.pieces() {
            let middle = piece.at_share(0.5);
            assert!((middle.x.hypot(middle.y) - 10.0).abs() < 1e-9);
        }
    }

    #[test]
    fn mirrored_arc_bends_the_other_way() {
        let arc = Path::arc(point(1.0, 1.0), 4.0, 0.0, 120.0);
        let mirrored = arc.placed(&Placement::mirror_left_right());
        let (a, b) = (arc.extent().unwrap(), mirrored.extent().unwrap());
        assert!((a.left + b.right).abs() < 1e-12);
        assert!((a.right + b.left).abs() < 1e-12);
        assert!((a.top - b.top).abs() < 1e-12);
    }
}
