//! Booleans against a second library, on the shapes where the first is known to fail.

use cavalier_contours::polyline::{BooleanOp, PlineSource, PlineSourceMut, Polyline};
use flangewright::geometry::{Outline, Point, difference, interference, intersection, union};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::scale::FixedScaleFloatOverlay;

use super::shapes::{Random, lug, ring, star};

/// Chords leave their arcs by this, mm; the reference area is out by no more than this times the length of the arcs.
const CHORD: f64 = 5e-5;

/// Shared area by `i_overlay` on chords.
fn reference(one: &Outline, two: &Outline) -> f64 {
    let contour = |outline: &Outline| -> Vec<[f64; 2]> {
        outline
            .flattened(CHORD)
            .iter()
            .map(|point| [point.x, point.y])
            .collect()
    };
    let shapes = contour(one)
        .overlay_with_fixed_scale_as::<i64>(
            &contour(two),
            OverlayRule::Intersect,
            FillRule::NonZero,
            1e7,
        )
        .unwrap();
    let area = |points: &Vec<[f64; 2]>| -> f64 {
        (0..points.len())
            .map(|index| {
                let (from, to) = (points[index], points[(index + 1) % points.len()]);
                (from[0] * to[1] - from[1] * to[0]) / 2.0
            })
            .sum()
    };
    shapes.iter().flatten().map(area).sum::<f64>().abs()
}

/// Shared area by `cavalier_contours`, taken as it comes.
fn unguarded(one: &Outline, two: &Outline) -> f64 {
    let polyline = |outline: &Outline| {
        let mut polyline = Polyline::new_closed();
        for (segment, ()) in outline.pieces() {
            polyline.add(segment.a.x, segment.a.y, segment.bulge);
        }
        polyline
    };
    let result = polyline(one).boolean(&polyline(two), BooleanOp::And);
    let area = |plines: &[_]| -> f64 {
        plines
            .iter()
            .map(
                |one: &cavalier_contours::polyline::BooleanResultPline<Polyline>| {
                    one.pline.area().abs()
                },
            )
            .sum()
    };
    area(&result.pos_plines) - area(&result.neg_plines)
}

/// Checks every answer, and counts how often the library alone was wrong.
fn wrong_without_guard(pairs: impl Iterator<Item = (Outline, Outline)>) -> (u32, u32) {
    let (mut wrong, mut cases) = (0, 0);
    for (one, two) in pairs {
        cases += 1;
        let expected = reference(&one, &two);
        let both = one.area() + two.area();
        let allowed = CHORD * (one.perimeter() + two.perimeter()) + 1e-5 * both;
        let shared = intersection(&one, &two).unwrap().area();
        assert!(
            (shared - expected).abs() <= allowed,
            "{shared} {expected} {one:?} {two:?}"
        );
        let clash = interference(&one, &two).map_or(0.0, |clash| clash.area);
        assert!(
            (clash - expected).abs() <= allowed,
            "{clash} {expected} {one:?} {two:?}"
        );
        let covered = union(&one, &two).unwrap().area();
        assert!(
            (covered - (both - expected)).abs() <= allowed,
            "{covered} {one:?} {two:?}"
        );
        let rest = difference(&one, &two).unwrap().area();
        assert!(
            (rest - (one.area() - expected)).abs() <= allowed,
            "{rest} {one:?} {two:?}"
        );
        if (unguarded(&one, &two) - expected).abs() > allowed.max(1e-3) {
            wrong += 1;
        }
    }
    (wrong, cases)
}

#[test]
fn rings_with_faces_at_the_same_z() {
    let mut random = Random(1);
    let pairs =
        (0..3000).filter_map(move |_| Some((ring(&mut random, 0.0)?, ring(&mut random, 0.0)?)));
    let (_, cases) = wrong_without_guard(pairs);
    assert!(cases > 2500, "{cases}");
}

/// The class in which the library alone is wrong most often: were it never wrong here, the guard would be idle.
#[test]
fn one_ring_moved_along_its_axis() {
    let mut random = Random(2);
    let pairs = (0..4000).filter_map(move |_| {
        let one = ring(&mut random, 0.0)?;
        let two = one.translated(Point::new(random.between(-4.0, 4.0), 0.0));
        Some((one, two))
    });
    let (wrong, cases) = wrong_without_guard(pairs);
    assert!(cases > 3500 && wrong > 0, "{wrong} of {cases}");
}

#[test]
fn lugs_of_the_same_radii() {
    let mut random = Random(3);
    let pairs = (0..2000).filter_map(move |_| {
        let corner = random.between(0.0, 0.6);
        let extent = random.between(0.2, 1.2);
        let turn = if random.below(4) == 0 {
            random.between(0.0, 1e-7)
        } else {
            random.between(-1.0, 1.0)
        };
        let one = lug(24.0, 27.0, 0.3, extent, corner)?;
        let two = lug(24.0, 27.0, 0.3 + turn, random.between(0.2, 1.2), corner)?;
        Some((one, two))
    });
    wrong_without_guard(pairs);
}

#[test]
fn stars_and_shapes_against_themselves() {
    let mut random = Random(4);
    let pairs = (0..1000).filter_map(move |_| {
        let points = 5 + u32::try_from(random.below(12)).unwrap();
        let one = star(&mut random, Point::default(), 5.0, points)?;
        let place = Point::new(random.between(-6.0, 6.0), random.between(-6.0, 6.0));
        let two = if random.below(5) == 0 {
            one.clone()
        } else {
            star(&mut random, place, 4.0, points)?
        };
        Some((one, two))
    });
    wrong_without_guard(pairs);
}
