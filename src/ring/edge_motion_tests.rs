//! Every edge of the demo rings follows the hand.

use std::collections::BTreeSet;

use super::*;
use crate::document::{SeatKind, demo_designs};

/// The demos, and what they become with a counterbore, a pocket for a pin, a short lip, a short thread.
fn designs() -> Vec<Design> {
    let workshop = Workshop::default_set().unwrap();
    let mut designs = Vec::new();
    for demo in demo_designs().unwrap() {
        let ring = derive(&demo, &workshop).ring.unwrap();
        let (sizes, room) = (ring.sizes, ring.thread_minor - ring.sizes.lip_bore);
        let mut counterbore = with(
            &demo,
            RingKey::PlateThickness,
            sizes.seat_height.max(0.0) + 1.0,
        );
        counterbore.ring.seat = Choice::Set(SeatKind::Counterbore);
        let mut pocket = demo.clone();
        for (key, value) in [
            (RingKey::AnnulusInner, sizes.lip_bore + 0.3 * room),
            (RingKey::AnnulusOuter, sizes.lip_bore + 0.8 * room),
            (RingKey::AnnulusDepth, sizes.lip_face_depth + 0.5),
            (RingKey::LipThickness, sizes.lip_thickness + 1.5),
            (RingKey::SpigotLength, sizes.spigot_length + 1.5),
        ] {
            pocket = with(&pocket, key, value);
        }
        let longer = with(&demo, RingKey::SpigotLength, sizes.spigot_length + 1.0);
        let short_lip = with(&longer, RingKey::LipThickness, 0.8);
        let wide_behind = with(&short_lip, RingKey::RearBore, sizes.lip_bore + 1.0);
        let relief = with(&demo, RingKey::ReliefWidth, 1.0);
        let short_thread = with(&relief, RingKey::ThreadLength, sizes.thread_length - 0.6);
        designs.extend(vec![demo, counterbore, pocket, wide_behind, short_thread]);
    }
    designs
}

/// The edges of every design that can be turned, in both cuts: a design, the cut, the feature, its piece.
fn everywhere(mut look: impl FnMut(&Design, &Workshop, Cut, Feature, Segment)) {
    let workshop = Workshop::default_set().unwrap();
    for design in designs() {
        let Some(parts) = derive(&design, &workshop)
            .ring
            .and_then(|ring| parts_of(&design, &ring).ok())
        else {
            continue;
        };
        for cut in [Cut::ThroughLug, Cut::BetweenLugs] {
            for (segment, feature) in cut.outline(&parts).pieces() {
                look(&design, &workshop, cut, feature, segment);
            }
        }
    }
}

fn motion_of(
    design: &Design,
    workshop: &Workshop,
    cut: Cut,
    feature: Feature,
    on: Segment,
) -> Option<EdgeMotion> {
    edge_motion(design, workshop, feature, middle_of(&on), cut)
}

/// Where the piece is once the dimension has the value.
fn after(
    design: &Design,
    workshop: &Workshop,
    cut: Cut,
    feature: Feature,
    on: Segment,
    key: RingKey,
    value: f64,
) -> Option<Segment> {
    let before = parts_of(design, &derive(design, workshop).ring?).ok()?;
    let place = nearest_piece(cut.outline(&before), feature, middle_of(&on))?;
    let changed = with(design, key, value);
    let parts = parts_of(&changed, &derive(&changed, workshop).ring?).ok()?;
    piece(cut.outline(&parts), feature, place)
}

#[test]
fn an_edge_follows_the_hand_by_as_much_as_it_was_moved() {
    let mut followed = BTreeSet::new();
    everywhere(|design, workshop, cut, feature, on| {
        let Some(motion) = motion_of(design, workshop, cut, feature, on) else {
            return;
        };
        // A cone tilts as it opens; every other edge stays parallel.
        let allowed_mm = if feature == Feature::RearBore {
            2e-3
        } else {
            1e-4
        };
        // A hand that goes 0.02 mm along the edge's own way.
        let size = motion.per_mm.x.hypot(motion.per_mm.y);
        let by = Point {
            x: motion.per_mm.x / size * 0.02,
            y: motion.per_mm.y / size * 0.02,
        };
        let reached = [by, Point { x: -by.x, y: -by.y }].into_iter().any(|by| {
            let value = motion.value_after(by);
            let Some(there) = after(design, workshop, cut, feature, on, motion.key, value) else {
                return false;
            };
            // The moved edge runs through the point the hand has come to.
            let hands = [on.a, on.b, middle_of(&on)].map(|at| Point {
                x: at.x + by.x,
                y: at.y + by.y,
            });
            hands
                .into_iter()
                .any(|hand| line_distance_mm(&there, hand) < allowed_mm)
        });
        assert!(reached, "{feature:?} by {:?} in {}", motion, design.name);
        followed.insert(feature);
    });
    // All 23 but the datum.
    assert_eq!(followed.len(), 22, "{followed:?}");
}

/// Distance from the line a piece lies on, mm.
fn line_distance_mm(segment: &Segment, at: Point) -> f64 {
    let (x, y) = (segment.b.x - segment.a.x, segment.b.y - segment.a.y);
    ((at.x - segment.a.x) * y - (at.y - segment.a.y) * x).abs() / x.hypot(y)
}

#[test]
fn only_the_datum_stays_where_it_is() {
    let mut still = BTreeSet::new();
    everywhere(|design, workshop, cut, feature, on| {
        if motion_of(design, workshop, cut, feature, on).is_none() {
            still.insert(feature);
        }
    });
    assert_eq!(
        still.into_iter().collect::<Vec<_>>(),
        [Feature::FlangeRearFace]
    );
}

#[test]
fn diameters_grow_by_twice_what_the_hand_moves_and_depths_by_as_much() {
    // Half-section: r = d / 2, the flange rear face at z = 0, the seat at z = -seat height.
    let expected = |feature: Feature| match feature {
        Feature::Rim => Some((RingKey::FlangeDiameter, (0.0, 0.5))),
        Feature::GrooveRoot => Some((RingKey::GrooveRootDiameter, (0.0, 0.5))),
        Feature::LugTip => Some((RingKey::LugDiameter, (0.0, 0.5))),
        Feature::Nose => Some((RingKey::NoseDiameter, (0.0, 0.5))),
        Feature::LipBore => Some((RingKey::LipBore, (0.0, 0.5))),
        Feature::ReliefFloor => Some((RingKey::ReliefDiameter, (0.0, 0.5))),
        Feature::BossSide | Feature::CounterboreSide => Some((RingKey::SeatDiameter, (0.0, 0.5))),
        Feature::Seat => Some((RingKey::SeatHeight, (-1.0, 0.0))),
        Feature::PlateFront => Some((RingKey::PlateThickness, (-1.0, 0.0))),
        Feature::LugFront => Some((RingKey::GrooveWidth, (1.0, 0.0))),
        Feature::LugRear => Some((RingKey::LugThickness, (1.0, 0.0))),
        Feature::NoseFace => Some((RingKey::SpigotLength, (1.0, 0.0))),
        Feature::LipFace => Some((RingKey::LipFaceDepth, (1.0, 0.0))),
        Feature::AnnulusFloor => Some((RingKey::AnnulusDepth, (1.0, 0.0))),
        // 45 degree chamfers: the middle goes half as far in z and in r.
        Feature::LugLeadIn => Some((RingKey::LugLeadIn, (-0.5, -0.5))),
        Feature::ThreadChamfer => Some((RingKey::ThreadChamfer, (0.5, 0.5))),
        // Which of several it is depends on the ring.
        Feature::FlangeRearFace
        | Feature::AnnulusSide
        | Feature::RearBore
        | Feature::ReliefEnd
        | Feature::ReliefStart
        | Feature::Thread => None,
    };
    everywhere(|design, workshop, cut, feature, on| {
        let motion = motion_of(design, workshop, cut, feature, on);
        let Some((motion, (key, (z, r)))) = motion.zip(expected(feature)) else {
            return;
        };
        assert_eq!(motion.key, key, "{feature:?} of {}", design.name);
        let off = (motion.per_mm.x - z).hypot(motion.per_mm.y - r);
        assert!(off < 1e-6, "{feature:?} of {}: {motion:?}", design.name);
    });
}

#[test]
fn the_two_walls_of_an_annulus_are_two_dimensions() {
    let mut keys = BTreeSet::new();
    everywhere(|design, workshop, cut, feature, on| {
        if feature == Feature::AnnulusSide {
            let motion = motion_of(design, workshop, cut, feature, on);
            keys.extend(motion.map(|motion| motion.key));
        }
    });
    assert_eq!(
        keys.into_iter().collect::<Vec<_>>(),
        [RingKey::AnnulusInner, RingKey::AnnulusOuter]
    );
}
