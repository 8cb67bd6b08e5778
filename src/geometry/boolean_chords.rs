//! Booleans on chords by `i_overlay`: the last resort, never seen to fail on clean outlines.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::scale::FixedScaleFloatOverlay;

use super::boolean::{BooleanError, Operation, Region};
use super::{Outline, OutlineBuilder, Point};

/// How far a chord may leave its arc, mm.
const CHORD_TOLERANCE: f64 = 1e-5;
/// Grid steps in a millimetre; fixed, so that a far vertex never shifts a near result.
const STEPS_PER_MM: f64 = 1e7;

type Contour = Vec<[f64; 2]>;

/// The combination of two outlines.
///
/// # Errors
/// [`BooleanError::Grid`] where the coordinates leave the grid.
pub(super) fn combined<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
    operation: Operation,
) -> Result<Region, BooleanError> {
    let mut region = Region::default();
    for shape in shapes(a, b, operation)? {
        let mut contours = shape.iter();
        region.outer.extend(contours.next().and_then(outline_of));
        region.holes.extend(contours.filter_map(outline_of));
    }
    Ok(region)
}

fn shapes<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
    operation: Operation,
) -> Result<Vec<Vec<Contour>>, BooleanError> {
    let rule = match operation {
        Operation::Intersection => OverlayRule::Intersect,
        Operation::Union => OverlayRule::Union,
        Operation::Difference => OverlayRule::Difference,
    };
    contour_of(a)
        .overlay_with_fixed_scale_as::<i64>(&contour_of(b), rule, FillRule::NonZero, STEPS_PER_MM)
        .map_err(|_| BooleanError::Grid)
}

fn contour_of<T: Copy + PartialEq>(outline: &Outline<T>) -> Contour {
    outline
        .flattened(CHORD_TOLERANCE)
        .into_iter()
        .map(|point| [point.x, point.y])
        .collect()
}

fn outline_of(contour: &Contour) -> Option<Outline> {
    let mut points = contour.iter().map(|[x, y]| Point::new(*x, *y));
    let first = points.next()?;
    let builder = points.fold(OutlineBuilder::start(first), |run, point| {
        run.line_to(point, ())
    });
    // Chords of one circle cut at different places leave slivers beside each other.
    let is_sliver = |outline: &Outline| outline.area() <= CHORD_TOLERANCE * outline.perimeter();
    builder
        .line_to(first, ())
        .closed_loop()
        .ok()
        .filter(|outline| !is_sliver(outline))
}

#[cfg(test)]
mod tests {
    use super::super::{AnnularSector, Interval, boolean_parts};
    use super::*;

    #[test]
    fn chords_and_arcs_agree() {
        let sector = |inner: f64, outer: f64, start: f64, extent: f64| {
            let interval = Interval::new(start, extent).unwrap();
            AnnularSector::new(inner, outer, interval)
                .unwrap()
                .outline(0.2, 0.2)
                .unwrap()
        };
        let lug = sector(24.0, 27.0, 0.3, 1.0);
        for other in [
            sector(24.0, 27.0, 0.8, 1.0),
            sector(25.0, 26.0, 0.5, 0.4),
            sector(20.0, 30.0, 2.0, 0.4),
        ] {
            for operation in [
                Operation::Intersection,
                Operation::Union,
                Operation::Difference,
            ] {
                let by_arcs = boolean_parts::combined(&lug, &other, operation).unwrap();
                let by_chords = combined(&lug, &other, operation).unwrap();
                assert!((by_arcs.area() - by_chords.area()).abs() < 1e-3);
                assert_eq!(by_arcs.outer.len(), by_chords.outer.len());
                assert_eq!(by_arcs.holes.len(), by_chords.holes.len());
            }
        }
    }
}
