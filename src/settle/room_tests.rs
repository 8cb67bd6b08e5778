use std::sync::atomic::AtomicBool;
use std::time::Instant;

use super::*;
use crate::document::{Choice, demo_designs};
use crate::evaluate::evaluate;

fn demo(number: usize) -> Design {
    demo_designs().unwrap().swap_remove(number)
}

fn workshop() -> Workshop {
    Workshop::default_set().unwrap()
}

fn rooms_of(design: &Design, keys: &[RingKey]) -> Vec<Room> {
    let never = AtomicBool::new(false);
    rooms(design, &workshop(), keys, &[], &never, |_| {}).unwrap()
}

/// What the one pure function says of a single value.
fn level_at(design: &Design, workshop: &Workshop, key: RingKey, value: f64) -> Level {
    let mut ring = design.clone();
    ring.ring.dimensions.get_mut(key).value = Choice::Set(value);
    let findings = evaluate(&ring, workshop).findings;
    findings
        .iter()
        .map(|finding| Level::of(finding.severity))
        .min()
        .unwrap()
}

/// Steps a micrometre at a time from end to end and holds each step against the room found.
fn agrees_with_a_sweep(design: &Design, room: &Room, from: f64, to: f64, step: f64) {
    let workshop = workshop();
    let near_an_end = |spans: &[Span], value: f64| {
        let ends = spans.iter().flat_map(|span| [span.from, span.to]);
        ends.into_iter().any(|end| (end - value).abs() <= 0.002)
    };
    let mut value = from;
    while value <= to {
        let level = level_at(design, &workshop, room.key, value);
        for (spans, least) in [
            (&room.without_clash, Level::Caution),
            (&room.without_caution, Level::Free),
        ] {
            let inside = spans.iter().any(|span| span.holds(value));
            assert!(
                inside == (level >= least) || near_an_end(spans, value),
                "{} at {value}: the sweep says {level:?}, the room {spans:?}",
                room.key.name()
            );
        }
        value += step;
    }
}

/// Every micrometre of a window about each end of each span near the present value.
#[test]
fn the_ends_are_those_of_a_sweep() {
    for (number, key) in [
        (0, RingKey::LipFaceDepth),
        (1, RingKey::GrooveRootDiameter),
        (0, RingKey::FlangeDiameter),
    ] {
        let design = demo(number);
        let room = rooms_of(&design, &[key]).swap_remove(0);
        let (free, calm) = (
            room.present_span().unwrap(),
            room.present_calm_span().unwrap(),
        );
        for end in [free.from, free.to, calm.from, calm.to] {
            agrees_with_a_sweep(&design, &room, end - 0.02, end + 0.02, 0.001);
        }
        agrees_with_a_sweep(&design, &room, free.from - 1.0, free.to + 1.0, 0.0473);
    }
}

#[test]
#[ignore = "half an hour: a micrometre at a time over 3 mm either side of every dimension of every demo"]
fn every_dimension_agrees_with_a_whole_sweep() {
    for number in 0..4 {
        let design = demo(number);
        let rooms = rooms_of(&design, RingKey::ALL);
        rooms.par_iter().for_each(|room| {
            let present = room.present.unwrap();
            let (low, high) = room.key.range();
            let (from, to) = ((present - 3.0).max(low), (present + 3.0).min(high));
            agrees_with_a_sweep(&design, room, from, to, 0.001);
        });
    }
}

#[test]
#[ignore = "a minute without optimisation: steps of 9 um over 6 mm either side of every dimension of every demo"]
fn every_dimension_agrees_with_a_coarse_sweep() {
    for number in 0..4 {
        let design = demo(number);
        let rooms = rooms_of(&design, RingKey::ALL);
        rooms.par_iter().for_each(|room| {
            let present = room.present.unwrap();
            let (low, high) = room.key.range();
            let (from, to) = ((present - 6.0).max(low), (present + 6.0).min(high));
            agrees_with_a_sweep(&design, room, from, to, 0.00873);
        });
    }
}

/// A hole at 210 degrees is a hole at -150 and at 570: free, clash, free, clash, free.
#[test]
fn spans_apart_from_each_other_are_found() {
    let design = demo(0);
    let room = rooms_of(&design, &[RingKey::LockHoleAngle]).swap_remove(0);
    let middles: Vec<f64> = room
        .without_clash
        .iter()
        .map(|span| f64::midpoint(span.from, span.to))
        .collect();
    assert_eq!(middles.len(), 3, "{room:?}");
    for (middle, turn) in middles.iter().zip([-150.0, 210.0, 570.0]) {
        assert!((middle - turn).abs() < 0.001, "{middle}");
    }
    for turn in [-360.0, -150.0, 210.0, 570.0, 719.7] {
        agrees_with_a_sweep(&design, &room, turn - 0.3, turn + 0.3, 0.013);
    }
}

/// A lip face set 9 mm deep is past the pin's travel of 5.8 to 6.8: the room is nearer the seat, a clash away.
#[test]
fn room_away_from_the_present_value_is_found() {
    let mut design = demo(0);
    design.ring.dimensions.lip_face_depth.value = Choice::Set(9.0);
    let room = rooms_of(&design, &[RingKey::LipFaceDepth]).swap_remove(0);
    assert_eq!(room.present_span(), None);
    let [span] = room.without_clash.as_slice() else {
        panic!("{room:?}")
    };
    assert!(
        (span.from - 5.85).abs() < 0.001 && (span.to - 6.75).abs() < 0.001,
        "{span:?}"
    );
    assert_eq!(span.above.findings(), [FindingKey::PinTravel]);
}

/// The relief is 42.5 across: a groove root of 43.7 leaves a wall of 0.6, the limit. No lead-in is less than none.
#[test]
fn what_ends_a_span_is_named() {
    let design = demo(0);
    let keys = [RingKey::GrooveRootDiameter, RingKey::LugLeadIn];
    let rooms = rooms_of(&design, &keys);
    let root = rooms[0].present_span().unwrap();
    assert_eq!(root.below.findings(), [FindingKey::ThinWall]);
    assert!((root.from - 43.7).abs() < 0.001, "{root:?}");
    let lead_in = rooms[1].present_span().unwrap();
    assert!(matches!(lead_in.above, End::Shape(_)), "{lead_in:?}");
    assert_eq!(lead_in.below, End::Range);
}

/// A clash elsewhere leaves no room at all; set aside, the rest has room.
#[test]
fn a_clash_elsewhere_can_be_set_aside() {
    let mut design = demo(0);
    design.ring.dimensions.lip_thickness.value = Choice::Set(0.5);
    let key = [RingKey::FlangeDiameter];
    assert!(rooms_of(&design, &key)[0].without_clash.is_empty());
    let never = AtomicBool::new(false);
    let aside = [FindingKey::LipThickness];
    let rooms = rooms(&design, &workshop(), &key, &aside, &never, |_| {}).unwrap();
    assert!(rooms[0].present_span().is_some());
}

#[test]
fn a_ring_that_lacks_values_has_no_room() {
    let mut design = demo(0);
    design.body.throat = crate::mount::Interface::Unknown;
    let room = rooms_of(&design, &[RingKey::LipThickness]).swap_remove(0);
    assert!(room.without_clash.is_empty());
}

#[test]
fn rooms_can_be_called_off() {
    let at_once = AtomicBool::new(true);
    let rooms = rooms(&demo(0), &workshop(), RingKey::ALL, &[], &at_once, |_| {});
    assert_eq!(rooms, Err(Cancelled));
}

#[test]
#[ignore = "prints how long it takes: run it by itself in a release build"]
fn speed() {
    for number in 0..4 {
        let design = demo(number);
        let begin = Instant::now();
        let rooms = rooms_of(&design, RingKey::ALL);
        let evaluations: usize = rooms.iter().map(|room| room.evaluations).sum();
        let took = begin.elapsed();
        println!("{}: {took:?} for {evaluations} evaluations", design.name);
        assert!(took.as_secs_f64() < 2.0);
    }
}
