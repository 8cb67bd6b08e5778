//! Outlines of the geometry floor as paths of the drawing.

use crate::drawing::{Path, Vertex};
use crate::geometry::{Outline, Segment};

fn vertex(segment: &Segment) -> Vertex {
    Vertex {
        at: segment.a,
        bulge: segment.bulge,
    }
}

/// The whole outline as one closed path.
#[must_use]
pub fn path_of<T: Copy + PartialEq>(outline: &Outline<T>) -> Path {
    Path {
        vertices: outline
            .pieces()
            .map(|(segment, _)| vertex(&segment))
            .collect(),
        closed: true,
    }
}

/// Every piece of the outline as a path of its own, with its tag.
pub fn pieces_of<T: Copy + PartialEq>(
    outline: &Outline<T>,
) -> impl Iterator<Item = (Path, T)> + '_ {
    outline.pieces().map(|(segment, tag)| {
        let path = Path {
            vertices: vec![vertex(&segment), Vertex::straight(segment.b)],
            closed: false,
        };
        (path, tag)
    })
}
