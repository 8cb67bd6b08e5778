use super::*;
use crate::document::demo_designs;
use crate::ring::derive;

fn ring(milling: MillingMethod) -> (ResolvedRing, Workshop) {
    let workshop = Workshop::default_set().unwrap();
    let mut design = demo_designs().unwrap().remove(0);
    design.ring.milling = milling;
    (derive(&design, &workshop).ring.unwrap(), workshop)
}

/// The list must come out the same as by turning every stored angle round by hand: a mirror swaps begin and end.
#[test]
fn an_asymmetric_pattern_is_turned_round_for_the_body_side() {
    let (ring, workshop) = ring(MillingMethod::OffsetFeed);
    let list = dividing_list(&ring, &workshop);
    assert!(list.faults.is_empty(), "{:?}", list.faults);
    for gap in gaps_between(&ring.lugs) {
        let begins = (-gap.end_deg()).rem_euclid(360.0);
        let ends = (-gap.start_deg).rem_euclid(360.0);
        for (is_begin, wanted) in [(true, begins), (false, ends)] {
            let found = list.rows.iter().any(|row| {
                let kind = match row.mark {
                    Mark::GapBegins(_) => is_begin,
                    Mark::GapEnds(_) => !is_begin,
                    Mark::LockHole | Mark::IndexMark => false,
                };
                kind && (row.edge_deg - wanted).abs() < 1e-6
            });
            assert!(found, "no row for {wanted}");
        }
    }
    let hole = list
        .rows
        .iter()
        .find(|row| row.mark == Mark::LockHole)
        .unwrap();
    let wanted = (-ring.sizes.lock_hole_angle).rem_euclid(360.0);
    assert!((hole.edge_deg - wanted).abs() < 1e-6);
}

/// The cutter standing where the readout says must touch the edge from inside the gap: the distance of its centre from
/// the plane of a true radial edge is its radius.
#[test]
fn the_cutter_touches_the_edge_where_the_readout_puts_it() {
    let (ring, workshop) = ring(MillingMethod::OffsetFeed);
    let list = dividing_list(&ring, &workshop);
    let mut seen = 0;
    for row in &list.rows {
        let into_gap = match row.mark {
            Mark::GapBegins(_) => 1.0,
            Mark::GapEnds(_) => -1.0,
            Mark::LockHole | Mark::IndexMark => continue,
        };
        seen += 1;
        let centre = row.readout.unwrap();
        let (sin, cos) = row.edge_deg.to_radians().sin_cos();
        // Clockwise of the edge is the side of (cos, -sin) where the edge runs along (sin, cos).
        let beside = into_gap * (centre.x * cos - centre.y * sin);
        assert!((beside - ring.cutter_radius).abs() < 1e-9, "{beside}");
        let wanted = ring.sizes.nose_diameter / 2.0 + ring.cutter_radius;
        assert!((centre.x.hypot(centre.y) - wanted).abs() < 1e-9);
    }
    assert_eq!(seen, 2 * ring.lugs.len());
}

/// Floor radius 24, tip 27 (own derivation, checked by brute force): the angles that a cutter covers.
#[test]
fn what_the_cutter_covers_is_taken_off_the_edge() {
    for (method, radius, covered) in [
        (MillingMethod::CentreFeed, 2.0, 4.2480),
        (MillingMethod::CentreFeed, 3.0, 6.3694),
        (MillingMethod::PlungeAndTurn, 1.5, 3.3723),
        (MillingMethod::PlungeAndTurn, 3.0, 6.3794),
    ] {
        let (mut ring, workshop) = ring(method);
        ring.sizes.nose_diameter = 48.0;
        ring.sizes.lug_diameter = 54.0;
        ring.cutter_radius = radius;
        let list = dividing_list(&ring, &workshop);
        for row in &list.rows {
            let turned = (row.work_deg - row.edge_deg).rem_euclid(360.0);
            match row.mark {
                Mark::GapBegins(_) => assert!((turned - covered).abs() < 1e-4, "{turned}"),
                Mark::GapEnds(_) => assert!((360.0 - turned - covered).abs() < 1e-4, "{turned}"),
                Mark::LockHole | Mark::IndexMark => assert!(turned.abs() < 1e-9),
            }
        }
    }
}

#[test]
fn a_radial_cutter_has_no_place_in_the_plan_and_a_fat_cutter_no_gap() {
    let (mut ring, workshop) = ring(MillingMethod::RadialCutter);
    let list = dividing_list(&ring, &workshop);
    assert!(
        list.rows
            .iter()
            .filter(|row| matches!(row.mark, Mark::GapBegins(_)))
            .all(|row| row.readout.is_none())
    );
    ring.cutter_radius = 40.0;
    assert!(!dividing_list(&ring, &workshop).faults.is_empty());
}

#[test]
fn without_a_head_the_table_still_reads() {
    let (ring, mut workshop) = ring(MillingMethod::OffsetFeed);
    workshop.dividing_head.plates.clear();
    let list = dividing_list(&ring, &workshop);
    for row in &list.rows {
        assert_eq!(row.setting, None);
        let step = 10.0 / 3600.0;
        let off = (row.table.deg() - row.work_deg + 180.0).rem_euclid(360.0) - 180.0;
        assert!(off.abs() <= step / 2.0 + 1e-9);
    }
}
