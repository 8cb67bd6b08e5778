//! The two sections of the ring over one list of corners, so that neighbouring sectors share their edges.

use crate::geometry::{Outline, Point};

/// Corners with their two loops, counter-clockwise with z to the right and the radius up.
#[derive(Debug, Clone)]
pub(super) struct Profile {
    /// Corners: x is z, y is the radius, mm.
    pub(super) nodes: Vec<Point>,
    /// The section through a lug.
    pub(super) through_lug: Vec<usize>,
    /// The section between lugs.
    pub(super) between_lugs: Vec<usize>,
}

/// Two corners nearer than this are one, mm.
const SAME_MM: f64 = 1e-7;

impl Profile {
    /// The sections with their arcs as chords within `chord_mm`.
    pub(super) fn new<T: Copy + PartialEq>(
        through_lug: &Outline<T>,
        between_lugs: &Outline<T>,
        chord_mm: f64,
    ) -> Self {
        let mut nodes = Vec::new();
        let through_lug = loop_of(through_lug, chord_mm, &mut nodes);
        let between_lugs = loop_of(between_lugs, chord_mm, &mut nodes);
        let through_lug = with_corners_between(&through_lug, &nodes);
        let between_lugs = with_corners_between(&between_lugs, &nodes);
        Self {
            nodes,
            through_lug,
            between_lugs,
        }
    }

    /// The loop of a step.
    pub(super) fn section(&self, in_lug: bool) -> &[usize] {
        if in_lug {
            &self.through_lug
        } else {
            &self.between_lugs
        }
    }

    /// A corner; the loops name only corners that are there.
    pub(super) fn at(&self, node: usize) -> Point {
        self.nodes[node]
    }

    /// The largest radius.
    pub(super) fn outer_mm(&self) -> f64 {
        self.nodes.iter().map(|node| node.y).fold(0.0, f64::max)
    }
}

/// The edges of a loop.
pub(super) fn edges(section: &[usize]) -> impl Iterator<Item = (usize, usize)> + '_ {
    section
        .iter()
        .copied()
        .zip(section.iter().copied().cycle().skip(1))
}

fn loop_of<T: Copy + PartialEq>(
    outline: &Outline<T>,
    chord_mm: f64,
    nodes: &mut Vec<Point>,
) -> Vec<usize> {
    let mut section: Vec<usize> = Vec::new();
    for (segment, _) in outline.pieces() {
        let mut points = Vec::new();
        segment.flatten_into(chord_mm, &mut points);
        for point in points {
            let node = nodes
                .iter()
                .position(|node| (*node - point).norm() < SAME_MM)
                .unwrap_or_else(|| {
                    nodes.push(point);
                    nodes.len() - 1
                });
            if section.last() != Some(&node) {
                section.push(node);
            }
        }
    }
    if section.len() > 1 && section.first() == section.last() {
        section.pop();
    }
    section
}

/// The loop with every corner of either section that lies on one of its edges.
fn with_corners_between(section: &[usize], nodes: &[Point]) -> Vec<usize> {
    let mut whole = Vec::with_capacity(section.len());
    for (from, to) in edges(section) {
        whole.push(from);
        let (Some(a), Some(b)) = (nodes.get(from), nodes.get(to)) else {
            continue;
        };
        let along = *b - *a;
        let length = along.norm();
        let mut between: Vec<(f64, usize)> = nodes
            .iter()
            .enumerate()
            .filter_map(|(node, point)| {
                let arm = *point - *a;
                let reach = arm.dot(along) / length;
                let off = arm.cross(along).abs() / length;
                (off < SAME_MM && reach > SAME_MM && reach < length - SAME_MM)
                    .then_some((reach, node))
            })
            .collect();
        between.sort_by(|a, b| a.0.total_cmp(&b.0));
        whole.extend(between.into_iter().map(|(_, node)| node));
    }
    whole
}
