//! Booleans against two libraries, on the shapes where one of them is known to fail: edges and arcs that coincide.

use cavalier_contours::polyline::{
    BooleanOp, BooleanResultPline, PlineSource, PlineSourceMut, Polyline,
};
use flangewright::geometry::{
    AnnularSector, Interval, Outline, Point, SHORTEST, difference, interference, intersection,
    union,
};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::scale::FixedScaleFloatOverlay;

use super::shapes::{Random, lug, ring, star};

/// Chords leave their arcs by this, mm; the reference area is out by no more than this times the length of the arcs.
const CHORD: f64 = 2e-4;

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

/// Shared area by `cavalier_contours` on exact arcs. It is now and then silently wrong where edges coincide, and
/// counts only where |A and B| + |A or B| = |A| + |B|.
fn exact_reference(one: &Outline, two: &Outline) -> Option<f64> {
    let polyline = |outline: &Outline| {
        let mut polyline = Polyline::new_closed();
        for (segment, ()) in outline.pieces() {
            polyline.add(segment.a.x, segment.a.y, segment.bulge);
        }
        polyline
    };
    let sum = |plines: &[BooleanResultPline<Polyline>]| -> f64 {
        plines.iter().map(|one| one.pline.area().abs()).sum()
    };
    let area = |operation: BooleanOp| {
        let result = polyline(one).boolean(&polyline(two), operation);
        sum(&result.pos_plines) - sum(&result.neg_plines)
    };
    let (shared, covered) = (area(BooleanOp::And), area(BooleanOp::Or));
    let both = one.area() + two.area();
    let is_balanced = (shared + covered - both).abs() < 1e-9 * both;
    is_balanced.then_some(shared)
}

/// How many pairs were checked, and how many of them against exact arcs too.
#[derive(Debug, Default)]
struct Checked {
    pairs: u32,
    exactly: u32,
}

fn check(pairs: impl Iterator<Item = (Outline, Outline)>) -> Checked {
    let mut checked = Checked::default();
    for (one, two) in pairs {
        checked.pairs += 1;
        let (a, b) = (one.area(), two.area());
        let shared = intersection(&one, &two).unwrap().area();
        let covered = union(&one, &two).unwrap().area();
        let rest = difference(&one, &two).unwrap().area();
        let clash = interference(&one, &two).map_or(0.0, |clash| clash.area);
        let by_chords = reference(&one, &two);
        let coarse = CHORD * (one.perimeter() + two.perimeter());
        assert!(
            (shared - by_chords).abs() <= coarse,
            "{shared} {by_chords} {one:?} {two:?}"
        );
        // Contours within a nanometre of each other may count as one.
        let fine = SHORTEST * (one.perimeter() + two.perimeter());
        assert!(
            (covered - (a + b - shared)).abs() <= fine,
            "{covered} {one:?} {two:?}"
        );
        assert!(
            (rest - (a - shared)).abs() <= fine,
            "{rest} {one:?} {two:?}"
        );
        assert!((clash - shared).abs() <= fine, "{clash} {one:?} {two:?}");
        if let Some(exact) = exact_reference(&one, &two) {
            checked.exactly += 1;
            assert!(
                (shared - exact).abs() <= 1e-3 * coarse,
                "{shared} {exact} {one:?} {two:?}"
            );
        }
    }
    checked
}

#[test]
fn rings_with_faces_at_the_same_z() {
    let mut random = Random(1);
    let pairs =
        (0..3000).filter_map(move |_| Some((ring(&mut random, 0.0)?, ring(&mut random, 0.0)?)));
    let checked = check(pairs);
    assert!(
        checked.pairs > 2500 && checked.exactly > 2400,
        "{checked:?}"
    );
}

#[test]
fn one_ring_moved_along_its_axis() {
    let mut random = Random(2);
    let pairs = (0..4000).filter_map(move |_| {
        let one = ring(&mut random, 0.0)?;
        let two = one.translated(Point::new(random.between(-4.0, 4.0), 0.0));
        Some((one, two))
    });
    let checked = check(pairs);
    assert!(
        checked.pairs > 3500 && checked.exactly > 3400,
        "{checked:?}"
    );
}

#[test]
fn lugs_of_the_same_radii() {
    let mut random = Random(3);
    let pairs = (0..600).filter_map(move |_| {
        let corner = random.between(0.0, 0.6);
        let widest = if random.below(2) == 0 { 1.2 } else { 6.0 };
        let extent = random.between(0.05, widest);
        let turn = if random.below(4) == 0 {
            random.between(0.0, 1e-7)
        } else {
            random.between(-1.0, 1.0)
        };
        let one = lug(24.0, 27.0, 0.3, extent, corner)?;
        let two = lug(24.0, 27.0, 0.3 + turn, random.between(0.05, widest), corner)?;
        Some((one, two))
    });
    let checked = check(pairs);
    assert!(checked.pairs > 500 && checked.exactly > 400, "{checked:?}");
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
    let checked = check(pairs);
    assert!(checked.pairs > 800 && checked.exactly > 600, "{checked:?}");
}

/// Sharp sectors of the same radii have a closed form, however wide they are.
#[test]
fn wide_sectors_of_the_same_radii() {
    let mut random = Random(5);
    for _ in 0..2000 {
        let mut sector = || {
            let interval =
                Interval::new(random.between(0.0, 6.0), random.between(0.01, 6.2)).unwrap();
            AnnularSector::new(24.0, 27.0, interval).unwrap()
        };
        let (one, two) = (sector(), sector());
        let (a, b) = (
            one.outline(0.0, 0.0).unwrap(),
            two.outline(0.0, 0.0).unwrap(),
        );
        let (shared, total) = (one.overlap_area(&two), one.area() + two.area());
        let near = |found: f64, expected: f64| (found - expected).abs() < 1e-9 * total + 1e-7;
        assert!(
            near(intersection(&a, &b).unwrap().area(), shared),
            "{one:?} {two:?}"
        );
        assert!(
            near(union(&a, &b).unwrap().area(), total - shared),
            "{one:?} {two:?}"
        );
        assert!(
            near(difference(&a, &b).unwrap().area(), one.area() - shared),
            "{one:?} {two:?}"
        );
        assert!(near(
            interference(&a, &b).map_or(0.0, |clash| clash.area),
            shared
        ));
    }
}
