//! Paths as the things that a DXF file knows: line, circle, arc, or a run of both.

use crate::drawing::path::{Path, Piece, Vertex};
use crate::drawing::placement::distance_mm;
use crate::geometry::Point;

/// A path as one thing of the file.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Drawn {
    /// A straight line.
    Line {
        /// Start.
        from: Point,
        /// End.
        to: Point,
    },
    /// A full circle.
    Circle {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius_mm: f64,
    },
    /// An arc, counter-clockwise.
    Arc {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius_mm: f64,
        /// Where it starts, degrees counter-clockwise from x.
        start_deg: f64,
        /// Where it ends, 0 to below 360 degrees.
        end_deg: f64,
    },
    /// Lines and arcs.
    Run {
        /// Corners with their bends.
        vertices: Vec<Vertex>,
        /// Whether the last is joined to the first.
        closed: bool,
    },
}

/// Two places nearer than this are one, mm: the last decimal of the file.
const SAME_MM: f64 = 1e-6;

/// What a path is; none where it has no length.
pub(super) fn drawn(path: &Path) -> Option<Drawn> {
    let path = without_repeats(path);
    let pieces: Vec<Piece> = path.pieces().collect();
    let first = pieces.first()?;
    if let Some(round) = one_circle(&pieces, path.closed) {
        return Some(round);
    }
    match (*first, pieces.len()) {
        (Piece::Line { from, to }, 1) => Some(Drawn::Line { from, to }),
        _ => Some(Drawn::Run {
            vertices: path.vertices,
            closed: path.closed,
        }),
    }
}

/// The path without corners that stand on the one before.
fn without_repeats(path: &Path) -> Path {
    let mut vertices: Vec<Vertex> = Vec::with_capacity(path.vertices.len());
    for vertex in &path.vertices {
        match vertices.last_mut() {
            Some(last) if distance_mm(last.at, vertex.at) < SAME_MM => last.bulge = vertex.bulge,
            Some(_) | None => vertices.push(*vertex),
        }
    }
    let comes_back = |vertices: &[Vertex]| {
        let ends = vertices.first().zip(vertices.last());
        ends.is_some_and(|(first, last)| distance_mm(first.at, last.at) < SAME_MM)
    };
    if path.closed && vertices.len() > 1 && comes_back(&vertices) {
        vertices.pop();
    }
    Path {
        vertices,
        closed: path.closed && path.vertices.len() > 1,
    }
}

/// The circle or arc that all pieces lie on, one after the other; none where they do not.
fn one_circle(pieces: &[Piece], closed: bool) -> Option<Drawn> {
    let mut whole: Option<(Point, f64, f64, f64)> = None;
    for piece in pieces {
        let Piece::Arc {
            centre,
            radius_mm,
            start_deg,
            sweep_deg,
        } = *piece
        else {
            return None;
        };
        whole = match whole {
            None => Some((centre, radius_mm, start_deg, sweep_deg)),
            Some((middle, radius, start, swept))
                if distance_mm(middle, centre) < SAME_MM
                    && (radius - radius_mm).abs() < SAME_MM
                    && swept * sweep_deg > 0.0 =>
            {
                Some((middle, radius, start, swept + sweep_deg))
            }
            Some(_) => return None,
        };
    }
    let (centre, radius_mm, start_deg, swept) = whole?;
    if closed {
        return ((swept.abs() - 360.0).abs() < 1e-6).then_some(Drawn::Circle { centre, radius_mm });
    }
    let (from, to) = if swept > 0.0 {
        (start_deg, start_deg + swept)
    } else {
        (start_deg + swept, start_deg)
    };
    let turned = |degrees: f64| degrees.rem_euclid(360.0);
    Some(Drawn::Arc {
        centre,
        radius_mm,
        start_deg: turned(from),
        end_deg: turned(to),
    })
}
