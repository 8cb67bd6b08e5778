//! Laws of clearance and interference.

use flangewright::geometry::{
    Outline, Path, Point, Relation, clearance, clearance_of_paths, clearance_to_path, interference,
};
use proptest::prelude::*;

use super::shapes::{Random, ring, star};

fn pair(seed: u64, points: u32, dx: f64, dy: f64) -> Option<(Outline, Outline)> {
    let mut random = Random(seed);
    let one = star(&mut random, Point::default(), 5.0, points)?;
    let two = star(&mut random, Point::new(dx, dy), 3.0, points + 1)?;
    Some((one, two))
}

/// Least distance found by walking along one contour.
fn by_walking(one: &Outline, two: &Outline, steps: u32) -> f64 {
    let mut least = f64::INFINITY;
    for (segment, ()) in one.pieces() {
        for step in 0..=steps {
            let place = segment.point_at(f64::from(step) / f64::from(steps));
            least = least.min(two.nearest(place).2);
        }
    }
    least
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn clearance_is_symmetric_and_its_places_are_on_the_contours(
        seed: u64, points in 3_u32..14, dx in -14.0..14.0, dy in -14.0..14.0,
    ) {
        let Some((one, two)) = pair(seed, points, dx, dy) else { return Ok(()) };
        let there = clearance(&one, &two);
        let back = clearance(&two, &one);
        prop_assert!((there.distance - back.distance).abs() < 1e-12);
        prop_assert_eq!(there.relation, back.swapped().relation);
        prop_assert!(there.distance.is_finite() && there.distance >= 0.0);
        prop_assert!((there.a.distance(there.b) - there.distance).abs() < 2e-9);
        prop_assert!(one.nearest(there.a).2 < 1e-9 && two.nearest(there.b).2 < 1e-9);
    }

    #[test]
    fn clearance_agrees_with_walking_round(
        seed: u64, points in 3_u32..10, dx in -14.0..14.0, dy in -14.0..14.0,
    ) {
        let Some((one, two)) = pair(seed, points, dx, dy) else { return Ok(()) };
        let found = clearance(&one, &two);
        let walked = by_walking(&one, &two, 200);
        let longest = one.pieces().map(|(segment, ())| segment.length()).fold(0.0, f64::max);
        prop_assert!(found.distance <= walked + 1e-9);
        prop_assert!(found.distance >= walked - longest / 400.0 - 1e-9);
    }

    #[test]
    fn no_step_changes_the_clearance_by_more_than_itself(
        seed: u64, points in 3_u32..10, dx in 6.0..14.0, step_x in -1.0..1.0, step_y in -1.0..1.0,
    ) {
        let Some((one, two)) = pair(seed, points, dx, 0.0) else { return Ok(()) };
        let step = Point::new(step_x, step_y);
        let before = clearance(&one, &two);
        let after = clearance(&one, &two.translated(step));
        if before.is_free() && after.is_free() {
            prop_assert!((before.distance - after.distance).abs() <= step.norm() + 1e-9);
        }
        let both = clearance(&one.translated(step), &two.translated(step));
        prop_assert!((both.distance - before.distance).abs() < 1e-9);
        let mirrored = clearance(&one.mirrored(), &two.mirrored());
        prop_assert!((mirrored.distance - before.distance).abs() < 1e-9);
        let turned = clearance(&one.rotated(0.7), &two.rotated(0.7));
        prop_assert!((turned.distance - before.distance).abs() < 1e-9);
    }

    #[test]
    fn shapes_clash_exactly_when_they_are_not_free(
        seed: u64, points in 3_u32..10, dx in -9.0..9.0, dy in -9.0..9.0,
    ) {
        let Some((one, two)) = pair(seed, points, dx, dy) else { return Ok(()) };
        let found = clearance(&one, &two);
        let clash = interference(&one, &two);
        prop_assert_eq!(clash.is_none(), found.is_free());
        if let Some(clash) = clash {
            prop_assert!(clash.area > 0.0 && clash.area <= one.area().min(two.area()) * (1.0 + 1e-9));
            prop_assert!(clash.depth > 0.0);
            // The deepest point is as deep as it says, and no walked point inside is deeper.
            let to_one = one.nearest(clash.at).2;
            let to_two = two.nearest(clash.at).2;
            prop_assert!((to_one.max(to_two) - clash.depth).abs() < 1e-9);
            let deepest = |from: &Outline, other: &Outline| {
                from.pieces()
                    .flat_map(|(segment, ())| (0..=100).map(move |step| segment.point_at(f64::from(step) / 100.0)))
                    .filter(|place| other.contains(*place))
                    .map(|place| other.nearest(place).2)
                    .fold(0.0, f64::max)
            };
            let walked = deepest(&one, &two).max(deepest(&two, &one));
            prop_assert!(walked <= clash.depth + 1.1e-6, "{} {}", walked, clash.depth);
        }
    }

    #[test]
    fn a_path_round_an_outline_has_its_clearance(
        seed: u64, points in 3_u32..10, dx in -14.0..14.0, dy in -14.0..14.0,
    ) {
        let Some((one, two)) = pair(seed, points, dx, dy) else { return Ok(()) };
        let corners: Vec<Point> = two.pieces().map(|(segment, ())| segment.a).collect();
        let Ok(path) = Path::straight(corners, ()) else { return Ok(()) };
        let found = clearance_to_path(&one, &path);
        let on_path = |ends: &[Point], step: u32| {
            ends[0] + (ends[1] - ends[0]) * (f64::from(step) / 100.0)
        };
        let walked = path
            .flattened(0.1)
            .windows(2)
            .flat_map(|ends| (0..=100).map(|step| on_path(ends, step)).collect::<Vec<_>>())
            .map(|place| one.nearest(place).2)
            .fold(f64::INFINITY, f64::min);
        prop_assert!(found.distance <= walked + 1e-9);
        prop_assert!(found.distance >= walked - path.length() / 200.0 - 1e-9);
        let twice = clearance_of_paths(&path, &path.translated(Point::new(40.0, 0.0)));
        prop_assert_eq!(twice.relation, Relation::Apart);
    }
}

/// Two rings on the same seat: their faces coincide, and that is contact and no clash.
#[test]
fn rings_face_to_face_touch() {
    let mut random = Random(7);
    for _ in 0..500 {
        let Some(one) = ring(&mut random, 0.0) else {
            continue;
        };
        let Some(two) = ring(&mut random, 0.0) else {
            continue;
        };
        let width = two.bounding_box().width();
        let moved = two.translated(Point::new(-width, 0.0));
        let found = clearance(&one, &moved);
        let shares_radii = one.bounding_box().min.y < moved.bounding_box().max.y;
        if found.distance <= 0.0 && shares_radii {
            assert_eq!(found.relation, Relation::Touching);
            assert_eq!(interference(&one, &moved), None);
        }
    }
}
