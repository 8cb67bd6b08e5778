//! The thinnest wall against discs tried everywhere.

use std::f64::consts::PI;

use flangewright::geometry::wall::STEEPEST_TAPER;
use flangewright::geometry::{Outline, Point, thinnest_wall, thinnest_wall_where};

use super::shapes::{Random, ring, star};

/// Points along the contour, `pitch` apart, each with the direction into the metal.
fn samples(outline: &Outline, pitch: f64) -> Vec<(Point, Point)> {
    let mut found = Vec::new();
    for (segment, ()) in outline.pieces() {
        let mut at = pitch / 2.0;
        while at < segment.length() {
            let share = at / segment.length();
            found.push((segment.point_at(share), segment.tangent_at(share).left()));
            at += pitch;
        }
    }
    found
}

/// The largest free disc touching the contour from within at each sample, by halving: its diameter, and the angle
/// between its two contacts.
fn discs(outline: &Outline, pitch: f64) -> Vec<(f64, f64)> {
    samples(outline, pitch)
        .iter()
        .map(|(place, normal)| {
            let (mut free, mut blocked) = (0.0, 50.0);
            for _ in 0..45 {
                let radius = f64::midpoint(free, blocked);
                if outline.nearest(*place + *normal * radius).2 >= radius - 1e-9 {
                    free = radius;
                } else {
                    blocked = radius;
                }
            }
            let centre = *place + *normal * free;
            let touch = outline.nearest(*place + *normal * (free + 1e-5)).1;
            let cosine = (*place - centre).dot(touch - centre) / (free * free);
            (2.0 * free, cosine.clamp(-1.0, 1.0).acos())
        })
        .collect()
}

/// The wall is never thicker than the thinnest disc on two opposite points, nor thinner than the thinnest disc between
/// sides that close up gently.
fn assert_between_tried(outline: &Outline, pitch: f64) {
    let tried = discs(outline, pitch);
    let thinnest = |least_angle: f64| {
        let wide = tried.iter().filter(|(_, angle)| *angle > least_angle);
        wide.map(|(thickness, _)| *thickness)
            .fold(f64::INFINITY, f64::min)
    };
    let (opposite, gentle) = (thinnest(PI - 1e-3), thinnest(PI - STEEPEST_TAPER - 0.02));
    match thinnest_wall(outline) {
        Some(wall) => {
            assert!(
                wall.thickness <= opposite + 1e-5,
                "{wall:?} {opposite} {outline:?}"
            );
            assert!(
                wall.thickness >= gentle - 2.0 * pitch,
                "{wall:?} {gentle} {outline:?}"
            );
        }
        None => assert!(opposite.is_infinite(), "{opposite} {outline:?}"),
    }
}

#[test]
fn rings_agree_with_discs_tried_everywhere() {
    let mut random = Random(11);
    let rings: Vec<Outline> = (0..30).filter_map(|_| ring(&mut random, 0.0)).collect();
    assert!(rings.len() > 20);
    for outline in rings {
        assert_between_tried(&outline, 0.05);
    }
}

#[test]
fn stars_agree_with_discs_tried_everywhere() {
    let mut random = Random(14);
    let stars: Vec<Outline> = (0..150)
        .filter_map(|round| star(&mut random, Point::default(), 6.0, 4 + round % 9))
        .collect();
    assert!(stars.len() > 80);
    for outline in stars {
        assert_between_tried(&outline, 0.05);
    }
}

/// On any shape: the disc is free, touches both places, and stays the same when the shape is turned and mirrored.
#[test]
fn the_disc_is_free_and_moves_with_the_shape() {
    let mut random = Random(12);
    let mut found = 0;
    for _ in 0..400 {
        let points = 4 + u32::try_from(random.below(16)).unwrap();
        let Some(outline) = star(&mut random, Point::default(), 6.0, points) else {
            continue;
        };
        let Some(wall) = thinnest_wall(&outline) else {
            continue;
        };
        found += 1;
        let radius = wall.thickness / 2.0;
        assert!(outline.contains(wall.centre));
        assert!(outline.nearest(wall.centre).2 >= radius * (1.0 - 2e-6));
        for place in [wall.a, wall.b] {
            assert!(outline.nearest(place).2 < 1e-9);
            assert!((place.distance(wall.centre) - radius).abs() < 1e-6 * radius + 1e-9);
        }
        for moved in [
            outline.rotated(1.0),
            outline.mirrored(),
            outline.translated(Point::new(3.0, -2.0)),
        ] {
            let again = thinnest_wall(&moved).unwrap();
            assert!(
                (again.thickness - wall.thickness).abs() < 1e-6,
                "{wall:?} {again:?}"
            );
        }
    }
    assert!(found > 200, "{found}");
}

/// Narrowing the region never finds a thinner wall.
#[test]
fn fewer_pieces_never_give_a_thinner_wall() {
    let mut random = Random(13);
    for _ in 0..100 {
        let Some(outline) = ring(&mut random, 0.0) else {
            continue;
        };
        let mut next = 0;
        let numbered = {
            let counter = std::cell::Cell::new(0_u32);
            outline.retagged(|()| {
                counter.set(counter.get() + 1);
                counter.get()
            })
        };
        let whole = thinnest_wall(&numbered).unwrap().thickness;
        for keep in 1..10_u32 {
            if let Some(part) = thinnest_wall_where(&numbered, |a, b| a <= keep && b <= keep) {
                assert!(part.thickness >= whole - 1e-12);
                next += 1;
            }
        }
        assert!(next > 0);
    }
}
