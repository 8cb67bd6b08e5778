//! Moments and solids of revolution against cutting the shape into slices.

use std::f64::consts::TAU;

use flangewright::geometry::{Outline, OutlineBuilder, Point, revolve};
use proptest::prelude::*;

use super::shapes::{Random, star};

/// Volume, surface and axial moment of the polygon of chords, frustum by frustum (handbook formulas of the cone).
fn by_frustums(outline: &Outline, chord_tol: f64) -> (f64, f64, f64) {
    let points = outline.flattened(chord_tol);
    let (mut volume, mut surface, mut moment) = (0.0, 0.0, 0.0);
    for index in 0..points.len() {
        let (a, b) = (points[index], points[(index + 1) % points.len()]);
        let length = a.x - b.x;
        volume += TAU / 6.0 * length * (a.y * a.y + a.y * b.y + b.y * b.y);
        surface += TAU / 2.0 * (a.y + b.y) * a.distance(b);
        // Moment of a frustum about z = 0, from the integral of z r^2 with r linear in z.
        let exact = (a.x * (3.0 * a.y * a.y + 2.0 * a.y * b.y + b.y * b.y)
            + b.x * (a.y * a.y + 2.0 * a.y * b.y + 3.0 * b.y * b.y))
            / 12.0;
        moment += TAU / 2.0 * length * exact;
    }
    (volume, surface, moment)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn turned_stars_agree_with_frustums(seed: u64, points in 3_u32..12, height in 8.0..40.0) {
        let Some(shape) = star(&mut Random(seed), Point::new(2.0, height), 5.0, points) else { return Ok(()) };
        let solid = revolve(&shape).unwrap();
        let (volume, surface, moment) = by_frustums(&shape, 1e-6);
        // Chords lie within their tolerance of the arcs: the solids differ by less than that over the whole surface.
        prop_assert!((solid.volume - volume).abs() < 1e-6 * surface);
        prop_assert!((solid.surface / surface - 1.0).abs() < 1e-5);
        prop_assert!((solid.moment - moment).abs() < 1e-6 * surface * 10.0);
        prop_assert!(solid.part_of_turn(1.0).volume < solid.volume);
    }

    #[test]
    fn moving_along_the_axis_moves_the_centroid_and_nothing_else(
        seed: u64, points in 3_u32..12, step in -50.0..50.0,
    ) {
        let Some(shape) = star(&mut Random(seed), Point::new(0.0, 20.0), 5.0, points) else { return Ok(()) };
        let (here, there) = (revolve(&shape).unwrap(), revolve(&shape.translated(Point::new(step, 0.0))).unwrap());
        prop_assert!((there.volume / here.volume - 1.0).abs() < 1e-11);
        prop_assert!((there.surface / here.surface - 1.0).abs() < 1e-11);
        prop_assert!((there.centroid_z().unwrap() - here.centroid_z().unwrap() - step).abs() < 1e-9);
        let moments = shape.rotated(1.1).moments();
        // The polar moment does not change when the shape is turned.
        let polar = shape.moments().xx + shape.moments().yy;
        prop_assert!(((moments.xx + moments.yy) / polar - 1.0).abs() < 1e-11);
    }

    #[test]
    fn arcs_cut_in_two_enclose_the_same(bulge in -0.6..0.6_f64, share in 0.1..0.9) {
        let (a, b) = (Point::new(4.0, 30.0), Point::new(-3.0, 31.0));
        let whole = flangewright::geometry::Segment::new(a, b, bulge);
        let (first, second) = (whole.part(0.0, share), whole.part(share, 1.0));
        let base = OutlineBuilder::start(Point::new(-3.0, 10.0)).line_to(Point::new(4.0, 10.0), ()).line_to(a, ());
        let one = base.clone().arc_to(b, bulge, ()).close(()).unwrap();
        let two = base.arc_to(first.b, first.bulge, ()).arc_to(b, second.bulge, ()).close(()).unwrap();
        prop_assert!((one.area() / two.area() - 1.0).abs() < 1e-12);
        let (one, two) = (revolve(&one).unwrap(), revolve(&two).unwrap());
        prop_assert!((one.volume / two.volume - 1.0).abs() < 1e-12);
        prop_assert!((one.surface / two.surface - 1.0).abs() < 1e-12);
        prop_assert!((one.moment - two.moment).abs() < 1e-9 * one.volume);
    }
}
