//! Booleans on exact lines and arcs: both contours are cut where they meet, the parts wanted are told by where they
//! lie, and strung together again.
//!
//! The parts of a right answer close up into loops that enclose no more than they can; if one part was told wrongly,
//! a loop stays open or the area is impossible, and that is seen.

use super::boolean::{Operation, Region};
use super::moments::moments_of;
use super::piece::Piece;
use super::split::{Side, parts};
use super::{Outline, OutlineBuilder, Point, SHORTEST, Segment};

/// Largest share of both areas by which an area may seem impossible.
const ALLOWED: f64 = 1e-5;

/// The combination, or `None` where the parts do not close up or enclose an impossible area.
pub(super) fn combined<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
    operation: Operation,
) -> Option<Region> {
    let wanted = wanted_parts(a, b, operation);
    let mut region = Region::default();
    for run in strung(wanted)? {
        let pieces: Vec<Piece<()>> = run.iter().map(|segment| Piece::new(*segment, ())).collect();
        let is_outer = moments_of(&pieces).area > 0.0;
        // What is too thin for an outline encloses nothing worth drawing.
        if let Some(outline) = outline_of(&run) {
            if is_outer {
                region.outer.push(outline);
            } else {
                region.holes.push(outline);
            }
        }
    }
    is_possible(region.area(), a.area(), b.area(), operation).then_some(region)
}

/// The parts of both contours that bound the combination, each with its metal on the left.
fn wanted_parts<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
    operation: Operation,
) -> Vec<Segment> {
    let mut wanted = Vec::new();
    for (segment, side) in parts(a.pieces_in_order(), b) {
        let is_wanted = match operation {
            Operation::Intersection => {
                matches!(side, Side::Inside | Side::Along { same_way: true })
            }
            Operation::Union => matches!(side, Side::Outside | Side::Along { same_way: true }),
            Operation::Difference => {
                matches!(side, Side::Outside | Side::Along { same_way: false })
            }
        };
        if is_wanted {
            wanted.push(segment);
        }
    }
    for (segment, side) in parts(b.pieces_in_order(), a) {
        match (operation, side) {
            (Operation::Intersection, Side::Inside) | (Operation::Union, Side::Outside) => {
                wanted.push(segment);
            }
            (Operation::Difference, Side::Inside) => wanted.push(segment.reversed()),
            (Operation::Intersection | Operation::Difference, Side::Outside)
            | (Operation::Union, Side::Inside)
            | (_, Side::Along { .. }) => {}
        }
    }
    wanted
}

fn is_possible(area: f64, area_a: f64, area_b: f64, operation: Operation) -> bool {
    let (least, most) = match operation {
        Operation::Intersection => (0.0, area_a.min(area_b)),
        Operation::Union => (area_a.max(area_b), area_a + area_b),
        Operation::Difference => (area_a - area_b, area_a),
    };
    let allowed = ALLOWED * (area_a + area_b);
    area >= least - allowed && area <= most + allowed
}

/// The segments end to end in closed runs; `None` where an end finds no beginning.
fn strung(mut segments: Vec<Segment>) -> Option<Vec<Vec<Segment>>> {
    let mut runs = Vec::new();
    while let Some(first) = segments.pop() {
        let mut run = vec![first];
        let mut last = first;
        while last.b.distance(first.a) > SHORTEST {
            let next = following(&segments, &last)?;
            last = segments.swap_remove(next);
            run.push(last);
        }
        runs.push(run);
    }
    Some(runs)
}

/// Which segment goes on where another ends; where several do, the one that turns most to the left, so that loops
/// which touch in a point stay apart.
fn following(segments: &[Segment], last: &Segment) -> Option<usize> {
    let heading = last.tangent_at(1.0);
    let turn = |segment: &Segment| {
        let on = segment.tangent_at(0.0);
        heading.cross(on).atan2(heading.dot(on))
    };
    (0..segments.len())
        .filter(|index| segments[*index].a.distance(last.b) <= SHORTEST)
        .max_by(|one, two| turn(&segments[*one]).total_cmp(&turn(&segments[*two])))
}

fn outline_of(run: &[Segment]) -> Option<Outline> {
    let start: Point = run.first()?.a;
    let builder = run
        .iter()
        .fold(OutlineBuilder::start(start), |built, part| {
            built.arc_to(part.b, part.bulge, ())
        });
    builder.closed_loop().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_missing_or_too_many_is_seen() {
        let corners =
            [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)].map(|(x, y)| Point::new(x, y));
        let sides: Vec<Segment> = (0..4)
            .map(|index| Segment::line(corners[index], corners[(index + 1) % 4]))
            .collect();
        assert_eq!(strung(sides.clone()).unwrap().len(), 1);
        assert!(strung(sides[1..].to_vec()).is_none());
        let stray = Segment::line(Point::new(5.0, 5.0), Point::new(6.0, 5.0));
        assert!(strung(sides.into_iter().chain([stray]).collect()).is_none());
        assert!(is_possible(3.0, 4.0, 5.0, Operation::Intersection));
        assert!(!is_possible(4.1, 4.0, 5.0, Operation::Intersection));
        assert!(!is_possible(4.9, 4.0, 5.0, Operation::Union));
        assert!(!is_possible(-0.1, 4.0, 4.0, Operation::Difference));
    }
}
