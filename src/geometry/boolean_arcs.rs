//! Booleans on exact arcs by `cavalier_contours`, believed only when the areas balance.

use cavalier_contours::polyline::{
    BooleanOp, BooleanResult, PlineCreation, PlineSource, PlineSourceMut, Polyline,
};

use super::boolean::{Operation, Region};
use super::{Outline, OutlineBuilder, Point};

/// Largest share of both areas by which the balance may be out.
const BALANCE: f64 = 1e-5;
/// The library takes places nearer than 1e-5 mm for one; pieces must be safely longer. Leaving out shorter ones moves
/// the contour by less than this, and the balance tells if it matters.
const SHORTEST_FOR_LIBRARY: f64 = 3e-5;

/// The combination, or `None` where the library's answer does not balance or its loops make no outline.
pub(super) fn combined<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
    operation: Operation,
) -> Option<Region> {
    let (loop_a, loop_b) = (polyline_of(a)?, polyline_of(b)?);
    let shared = loop_a.boolean(&loop_b, BooleanOp::And);
    let covered = loop_a.boolean(&loop_b, BooleanOp::Or);
    let areas = (a.area(), b.area());
    if !is_balanced(areas, area_of(&shared), area_of(&covered)) {
        return None;
    }
    let (result, expected) = match operation {
        Operation::Intersection => {
            let area = area_of(&shared);
            (shared, area)
        }
        Operation::Union => {
            let area = area_of(&covered);
            (covered, area)
        }
        Operation::Difference => {
            let rest = loop_a.boolean(&loop_b, BooleanOp::Not);
            (rest, areas.0 - area_of(&shared))
        }
    };
    let region = Region {
        outer: outlines_of(result.pos_plines.iter().map(|one| &one.pline)),
        holes: outlines_of(result.neg_plines.iter().map(|one| &one.pline)),
    };
    let is_right = (region.area() - expected).abs() <= BALANCE * (areas.0 + areas.1);
    is_right.then_some(region)
}

/// The shared area, or `None` where the library's answer does not balance.
pub(super) fn shared_area<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
) -> Option<f64> {
    let (loop_a, loop_b) = (polyline_of(a)?, polyline_of(b)?);
    let shared = area_of(&loop_a.boolean(&loop_b, BooleanOp::And));
    let covered = area_of(&loop_a.boolean(&loop_b, BooleanOp::Or));
    is_balanced((a.area(), b.area()), shared, covered).then_some(shared.max(0.0))
}

/// |A and B| + |A or B| = |A| + |B|, and no more shared than the smaller has.
fn is_balanced((area_a, area_b): (f64, f64), shared: f64, covered: f64) -> bool {
    let allowed = BALANCE * (area_a + area_b);
    (shared + covered - area_a - area_b).abs() <= allowed
        && shared >= -allowed
        && shared <= area_a.min(area_b) + allowed
}

/// The library's form of an outline, without the pieces too short for it; `None` where too little is left.
fn polyline_of<T: Copy + PartialEq>(outline: &Outline<T>) -> Option<Polyline> {
    let mut polyline = Polyline::with_capacity(outline.pieces().len(), true);
    for (segment, _) in outline.pieces() {
        if segment.a.distance(segment.b) >= SHORTEST_FOR_LIBRARY {
            polyline.add(segment.a.x, segment.a.y, segment.bulge);
        }
    }
    (polyline.vertex_count() >= 2).then_some(polyline)
}

fn area_of(result: &BooleanResult<Polyline>) -> f64 {
    let outer: f64 = result
        .pos_plines
        .iter()
        .map(|one| one.pline.area().abs())
        .sum();
    let holes: f64 = result
        .neg_plines
        .iter()
        .map(|one| one.pline.area().abs())
        .sum();
    outer - holes
}

/// Loops that enclose nothing are left out.
fn outlines_of<'a>(loops: impl Iterator<Item = &'a Polyline>) -> Vec<Outline> {
    loops
        .filter_map(|polyline| {
            let first = polyline.iter_vertexes().next()?;
            let mut builder = OutlineBuilder::start(Point::new(first.x, first.y));
            for (from, to) in polyline.iter_segments() {
                builder = builder.arc_to(Point::new(to.x, to.y), from.bulge, ());
            }
            builder.closed_loop().ok()
        })
        .collect()
}
