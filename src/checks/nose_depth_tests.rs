use super::*;

use crate::checks::fixture::{cured, design, judged as said, lacking, with};
use crate::document::Design;
use crate::mount::{BarrelStep, FreeDepth, Interface};

fn with_depth(mut design: Design, depths: &[(f64, f64)]) -> Design {
    let points = depths.iter().map(|(radius_mm, depth_mm)| FreeDepth {
        radius_mm: *radius_mm,
        depth_mm: *depth_mm,
    });
    design.body.free_depth = Interface::measured(points.collect(), "depth micrometer");
    design
}

/// A spigot of 8.0 set by hand, before a flat mirror: the distance is plain arithmetic.
fn nose_before(depth: f64) -> Design {
    with_depth(
        with(&[(RingKey::SpigotLength, 8.0)]),
        &[(0.0, depth), (40.0, depth)],
    )
}

#[test]
fn a_nose_well_before_the_mirror_passes() {
    let finding = said(check, &nose_before(12.0));
    assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    let nose = finding
        .working
        .iter()
        .find(|line| line.result.starts_with("nose"))
        .unwrap();
    assert!((nose.term.value() - 4.0).abs() < 1e-9);
}

#[test]
fn near_a_mirror_it_is_a_caution_and_nearer_a_clash() {
    let near = nose_before(8.7);
    let finding = said(check, &near);
    assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
    assert!((finding.value.unwrap() - 0.7).abs() < 1e-9);
    assert_eq!(said(check, &cured(&near, &finding)).severity, Severity::Ok);
    let through = nose_before(7.75);
    let finding = said(check, &through);
    assert_eq!(finding.severity, Severity::Clash);
    assert!(
        (finding.value.unwrap() + 0.25).abs() < 1e-9,
        "{:?}",
        finding.value
    );
    assert_eq!(
        said(check, &cured(&through, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn without_a_mirror_less_is_enough() {
    let mut still = nose_before(8.3);
    still.body.mirror = Presence::Absent;
    assert_eq!(said(check, &still).severity, Severity::Ok);
    still.body.mirror = Presence::Unknown;
    let finding = said(check, &still);
    assert_eq!(finding.severity, Severity::Clash);
    assert!(
        finding.message.ends_with("look whether one does"),
        "{}",
        finding.message
    );
}

#[test]
fn a_slanted_mirror_is_cured_by_its_true_distance() {
    // 45 degrees, nearer toward the axis: depth = radius - 8.
    let slanted = with_depth(
        with(&[(RingKey::SpigotLength, 8.0)]),
        &[(15.0, 7.0), (40.0, 32.0)],
    );
    let finding = said(check, &slanted);
    assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
    // The inner edge of the nose face is nearest: what the depth there leaves, times sin 45.
    let inner = crate::checks::fixture::Bench::of(slanted.clone())
        .cx()
        .ring
        .sizes
        .rear_bore
        / 2.0;
    let expected = (inner - 16.0) / 2.0_f64.sqrt();
    let distance = finding.value.unwrap();
    assert!((distance - expected).abs() < 1e-9, "{distance} {expected}");
    assert_eq!(
        said(check, &cured(&slanted, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn lugs_are_judged_against_what_stands_behind_the_ears() {
    // Groove 3.35 + lug 1.3 = 4.65; a screw head at 4.8 behind the ears leaves 0.15.
    let depths = [(0.0, 12.0), (25.0, 12.0), (25.001, 4.8), (40.0, 4.8)];
    let screws = with_depth(with(&[(RingKey::LugThickness, 1.3)]), &depths);
    let finding = said(check, &screws);
    assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
    assert!(
        (finding.value.unwrap() - 0.15).abs() < 1e-6,
        "{:?}",
        finding.value
    );
    assert_eq!(
        said(check, &cured(&screws, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn a_barrel_that_reaches_the_mirror_has_no_remedy_by_dimension() {
    let mut deep = design();
    // 1.46 of seat height: 13.2 behind the seat is 11.74 behind the flange, the mirror at 12.
    let steps = vec![BarrelStep {
        depth_mm: 13.2,
        diameter_mm: 33.0,
    }];
    deep.lens.barrel_at_infinity = Interface::measured(steps, "depth micrometer");
    deep.ring.dimensions.seat_height.value = crate::document::Choice::Set(1.46);
    let finding = said(check, &deep);
    assert_eq!(finding.severity, Severity::Clash);
    assert!(
        (finding.value.unwrap() - 0.26).abs() < 1e-9,
        "{:?}",
        finding.value
    );
    assert_eq!(finding.remedy.unwrap().change, None);
}

#[test]
fn an_unknown_depth_is_named() {
    let mut unknown = design();
    unknown.body.free_depth = Interface::Unknown;
    assert_eq!(
        lacking(check, &unknown),
        NotJudged(vec![FieldRef::FreeDepth])
    );
}
