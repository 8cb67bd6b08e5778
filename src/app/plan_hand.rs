//! What of the lug pattern a hand takes hold of: ends of lugs, lugs, their tips, the lock hole.

use super::grip::{Follow, Grip, Taken, clock_deg};
use super::places::in_plan;
use crate::document::RingKey;
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side};
use crate::ring::ResolvedRing;

/// What is held at a place of the plan, seen from a side; `near_mm` is how near a hand must come to an edge.
#[must_use]
pub fn taken_at(evaluation: &Evaluation, at: Point, side: Side, near_mm: f64) -> Option<Taken> {
    let ring = evaluation.derivation.ring.as_ref()?;
    let (grip, follow) =
        lock_hole_at(ring, at, side, near_mm).or_else(|| lug_at(ring, at, side, near_mm))?;
    Some(Taken {
        grip,
        follow,
        place: at,
        value: grip.value(evaluation)?,
    })
}

fn lock_hole_at(
    ring: &ResolvedRing,
    at: Point,
    side: Side,
    near_mm: f64,
) -> Option<(Grip, Follow)> {
    let sizes = &ring.sizes;
    if sizes.lock_hole_diameter <= 0.0 {
        return None;
    }
    let middle = in_plan(sizes.lock_hole_circle / 2.0, sizes.lock_hole_angle, side);
    let away = (at.x - middle.x).hypot(at.y - middle.y);
    (away <= sizes.lock_hole_diameter / 2.0 + near_mm)
        .then_some((Grip::Dimension(RingKey::LockHoleAngle), Follow::Round(side)))
}

fn lug_at(ring: &ResolvedRing, at: Point, side: Side, near_mm: f64) -> Option<(Grip, Follow)> {
    let (root, tip) = (
        ring.sizes.nose_diameter / 2.0,
        ring.sizes.lug_diameter / 2.0,
    );
    let (radius, clock) = (at.x.hypot(at.y), clock_deg(at, side));
    if radius < root - near_mm || radius > tip + near_mm {
        return None;
    }
    let near_deg = (near_mm / radius.max(1.0)).to_degrees();
    ring.lugs.iter().enumerate().find_map(|(place, lug)| {
        // From the middle of the lug, so that a place before its beginning is not one turn away.
        let half = lug.extent_deg / 2.0;
        let off = (clock - lug.middle_deg() + 180.0).rem_euclid(360.0) - 180.0;
        let round = |grip| Some((grip, Follow::Round(side)));
        if off.abs() > half + near_deg {
            None
        } else if (off + half).abs() <= near_deg {
            round(Grip::LugStart(place))
        } else if (off - half).abs() <= near_deg {
            round(Grip::LugEnd(place))
        } else if (radius - tip).abs() <= near_mm / 2.0 {
            Some((Grip::Dimension(RingKey::LugDiameter), Follow::Diameter))
        } else {
            round(Grip::Lug(place))
        }
    })
}

/// A place on each thing that can be grasped, in the order in which the keyboard goes through them.
#[must_use]
pub fn places(evaluation: &Evaluation, side: Side) -> Vec<Point> {
    let Some(ring) = evaluation.derivation.ring.as_ref() else {
        return Vec::new();
    };
    let sizes = &ring.sizes;
    let radius = (sizes.nose_diameter + sizes.lug_diameter) / 4.0;
    let mut places: Vec<Point> = ring
        .lugs
        .iter()
        .flat_map(|lug| {
            [lug.start_deg, lug.middle_deg(), lug.end_deg()]
                .map(|clock| in_plan(radius, clock, side))
        })
        .collect();
    places.extend(
        ring.lugs
            .first()
            .map(|lug| in_plan(sizes.lug_diameter / 2.0, lug.middle_deg(), side)),
    );
    if sizes.lock_hole_diameter > 0.0 {
        places.push(in_plan(
            sizes.lock_hole_circle / 2.0,
            sizes.lock_hole_angle,
            side,
        ));
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::evaluate::evaluate;
    use crate::workshop::Workshop;

    /// Near enough for a hand, mm; less than the ends of any demo's lugs are apart.
    const NEAR_MM: f64 = 0.2;

    #[test]
    fn every_end_of_every_lug_can_be_taken_from_both_sides() {
        let workshop = Workshop::default_set().unwrap();
        for design in demo_designs().unwrap() {
            let evaluation = evaluate(&design, &workshop);
            let ring = evaluation.derivation.ring.as_ref().unwrap();
            let radius = (ring.sizes.nose_diameter + ring.sizes.lug_diameter) / 4.0;
            for side in [Side::Lens, Side::Body] {
                for (place, lug) in ring.lugs.iter().enumerate() {
                    let at = |clock| {
                        let at = in_plan(radius, clock, side);
                        taken_at(&evaluation, at, side, NEAR_MM).unwrap()
                    };
                    assert_eq!(at(lug.start_deg).grip, Grip::LugStart(place));
                    assert_eq!(at(lug.end_deg()).grip, Grip::LugEnd(place));
                    let middle = at(lug.middle_deg());
                    assert_eq!(middle.grip, Grip::Lug(place));
                    assert!((middle.value - lug.start_deg.rem_euclid(360.0)).abs() < 1e-9);
                }
            }
        }
    }

    #[test]
    fn the_keyboard_finds_what_the_hand_finds() {
        let workshop = Workshop::default_set().unwrap();
        for design in demo_designs().unwrap() {
            let evaluation = evaluate(&design, &workshop);
            let all = places(&evaluation, Side::Lens);
            let lugs = evaluation.derivation.ring.as_ref().unwrap().lugs.len();
            assert!(all.len() > 3 * lugs);
            for at in all {
                assert!(taken_at(&evaluation, at, Side::Lens, NEAR_MM).is_some());
            }
        }
    }
}
