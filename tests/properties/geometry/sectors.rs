//! Laws of angle intervals, sectors and turning.

use std::f64::consts::TAU;

use flangewright::geometry::sector::{
    complement, disjoint, joined, overlap_length, rotations_where_disjoint,
};
use flangewright::geometry::twist::{engaged_rad, shifted, swept};
use flangewright::geometry::{
    AnnularSector, Flank, Interval, Method, Side, clearance, clock_of, first_contact, intersection,
    plan_point, seen_from,
};
use proptest::prelude::*;

fn interval() -> impl Strategy<Value = Interval> {
    (-20.0..20.0, 1e-6..7.0).prop_map(|(start, extent)| Interval::new(start, extent).unwrap())
}

fn narrow() -> impl Strategy<Value = Interval> {
    (-20.0..20.0, 0.01..1.0).prop_map(|(start, extent)| Interval::new(start, extent).unwrap())
}

fn total(list: &[Interval]) -> f64 {
    list.iter().map(|part| part.extent_rad).sum()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_list_and_its_gaps_make_a_full_turn(list in prop::collection::vec(interval(), 0..8)) {
        let (covered, gaps) = (joined(&list), complement(&list));
        prop_assert!((total(&covered) + total(&gaps) - TAU).abs() < 1e-9);
        prop_assert!(overlap_length(&covered, &gaps) < 1e-9);
        prop_assert!(disjoint(&covered).is_ok() && disjoint(&gaps).is_ok());
        for step in 0..50 {
            let angle = TAU * f64::from(step) / 50.0;
            let is_covered = list.iter().any(|part| part.contains(angle));
            let found = covered.iter().any(|part| part.contains(angle));
            prop_assert_eq!(is_covered, found);
        }
    }

    #[test]
    fn overlap_is_symmetric_and_turns_along(one in interval(), two in interval(), turn in -9.0..9.0) {
        let shared = one.overlap_length(two);
        prop_assert!((shared - two.overlap_length(one)).abs() < 1e-9);
        prop_assert!((shared - one.shifted(turn).overlap_length(two.shifted(turn))).abs() < 1e-9);
        prop_assert!((shared - one.mirrored().overlap_length(two.mirrored())).abs() < 1e-9);
        prop_assert!(shared >= one.extent_rad + two.extent_rad - TAU - 1e-9);
        prop_assert!(shared <= one.extent_rad.min(two.extent_rad) + 1e-9);
    }

    #[test]
    fn a_rotation_is_listed_exactly_when_it_is_free(
        moving in prop::collection::vec(narrow(), 1..4),
        fixed in prop::collection::vec(narrow(), 1..4),
        turn in 0.0..TAU,
    ) {
        let ways = rotations_where_disjoint(&moving, &fixed, 0.0);
        let overlap = overlap_length(&shifted(&moving, turn), &fixed);
        let is_listed = ways.iter().any(|way| way.contains(turn));
        let at_edge = ways.iter().any(|way| {
            let off = |angle: f64| ((turn - angle + TAU / 2.0).rem_euclid(TAU) - TAU / 2.0).abs();
            off(way.start_rad) < 1e-9 || off(way.end_rad()) < 1e-9
        });
        prop_assert!(at_edge || is_listed == (overlap <= 0.0), "{} {}", is_listed, overlap);
    }

    #[test]
    fn contact_is_the_first_overlap(
        moving in prop::collection::vec(narrow(), 1..4),
        fixed in prop::collection::vec(narrow(), 1..4),
        twist in -3.0..3.0_f64,
    ) {
        let Some(contact) = first_contact(&moving, &fixed, twist) else {
            let all: Vec<Interval> = moving.iter().map(|part| swept(*part, twist)).collect();
            prop_assert!(overlap_length(&all, &fixed) < 1e-9);
            return Ok(());
        };
        prop_assert!(contact.turn_rad.abs() <= twist.abs());
        if engaged_rad(&moving, &fixed, 0.0) <= 0.0 {
            for step in 0..20 {
                let turn = contact.turn_rad * f64::from(step) / 20.0;
                prop_assert!(engaged_rad(&moving, &fixed, turn) < 1e-9);
            }
            let past = contact.turn_rad + 1e-4_f64.copysign(twist);
            prop_assert!(engaged_rad(&moving, &fixed, past) > 0.5e-4);
        }
    }

    #[test]
    fn sectors_agree_with_their_outlines(
        one in narrow(), two in narrow(), inner in 5.0..20.0, depth in 0.5..6.0, other in 5.0..26.0,
    ) {
        let first = AnnularSector::new(inner, inner + depth, one).unwrap();
        let second = AnnularSector::new(other, other + 2.0, two).unwrap();
        let outlines = (first.outline(0.0, 0.0).unwrap(), second.outline(0.0, 0.0).unwrap());
        prop_assert!((outlines.0.area() - first.area()).abs() < 1e-9);
        let shared = intersection(&outlines.0, &outlines.1).unwrap().area();
        prop_assert!((shared - first.overlap_area(&second)).abs() < 1e-3);
        let found = clearance(&outlines.0, &outlines.1);
        if found.is_free() {
            prop_assert!((found.distance - first.distance_to(&second)).abs() < 1e-8);
        } else {
            prop_assert!(first.distance_to(&second) <= 0.0);
        }
    }

    #[test]
    fn the_clock_reads_back(clock in -20.0..20.0_f64, radius in 0.1..50.0_f64) {
        let place = plan_point(radius, clock);
        let read = clock_of(place);
        prop_assert!((read - clock).sin().abs() < 1e-12 && (read - clock).cos() > 0.0);
        let body = seen_from(Side::Body, clock);
        prop_assert!(plan_point(radius, body).distance(place.mirrored()) < 1e-11);
    }

    #[test]
    fn a_larger_cutter_leaves_more(
        floor in 10.0..40.0, depth in 0.5..4.0, cutter in 0.5..4.0_f64, share in 0.01..1.0,
    ) {
        let leaves = |cutter: f64| {
            Flank::new(Method::OffsetFeed, floor, floor + depth, cutter)
                .unwrap()
                .intrusion(floor + share * depth)
                .unwrap()
        };
        let (small, large) = (leaves(cutter), leaves(cutter * 1.1));
        prop_assert!(small >= 0.0 && large >= small - 1e-12);
        for method in [Method::CentreFeed, Method::PlungeAndTurn, Method::RadialOnCentre, Method::RadialOffset] {
            let flank = Flank::new(method, floor, floor + depth, cutter).unwrap();
            prop_assert!(flank.intrusion(floor + share * depth).unwrap().is_finite());
            prop_assert!(flank.least_gap_rad() > 0.0);
        }
    }
}
