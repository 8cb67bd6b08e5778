use super::*;
use crate::checks::fixture::{cured, design, judged, lacking};
use crate::document::{Choice, Design, MillingMethod};
use crate::mount::Interface;

/// Lugs of a radial cutter, so that the leading face is where its angle says: locked 148..`end` degrees;
/// the stop at 200, behind the ear from 152 to 202, where no lug drops in.
fn with_leading_face_at(end_deg: f64) -> Design {
    let mut design = design();
    let lug = |start_deg: f64, end_deg: f64| Sector {
        start_deg,
        extent_deg: end_deg - start_deg,
    };
    design.ring.lugs = Choice::Set(vec![
        lug(148.0, end_deg),
        lug(268.0, 314.0),
        lug(22.0, 76.0),
    ]);
    design.ring.milling = MillingMethod::RadialCutter;
    design.body.stop_angle = Interface::measured(200.0, "protractor photograph");
    design
}

#[test]
fn a_lug_at_the_stop_passes_and_one_short_of_it_is_a_caution() {
    let met = judged(check, &with_leading_face_at(199.8));
    assert_eq!(met.severity, Severity::Ok, "{}", met.message);
    assert!((met.value.unwrap() - 0.2).abs() < 1e-9);
    let short = with_leading_face_at(199.0);
    let finding = judged(check, &short);
    assert_eq!(finding.severity, Severity::Caution);
    assert!((finding.value.unwrap() - 1.0).abs() < 1e-9);
    assert_eq!(
        judged(check, &cured(&short, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn a_stop_met_before_the_lock_clashes() {
    let long = with_leading_face_at(201.0);
    let finding = judged(check, &long);
    assert_eq!(finding.severity, Severity::Clash);
    assert!((finding.value.unwrap() + 1.0).abs() < 1e-9);
    assert!(
        finding.message.contains("lock pin does not drop"),
        "{}",
        finding.message
    );
    assert_eq!(
        judged(check, &cured(&long, &finding)).severity,
        Severity::Ok
    );
}

// Play 0.15 on a circle of 59: 0.15 / 59 rad = 0.1457 degrees; the pin still drops at 0.1.
#[test]
fn within_the_play_of_the_hole_it_is_a_caution() {
    assert_eq!(
        judged(check, &with_leading_face_at(200.1)).severity,
        Severity::Caution
    );
    assert_eq!(
        judged(check, &with_leading_face_at(200.2)).severity,
        Severity::Clash
    );
}

#[test]
fn turned_the_other_way_the_start_leads() {
    let mut design = design();
    design.ring.milling = MillingMethod::RadialCutter;
    design.body.twist_hand = Interface::measured(Hand::Anticlockwise, "protractor photograph");
    design.body.stop_angle = Interface::measured(20.0, "protractor photograph");
    let lug = |start_deg: f64, extent_deg: f64| Sector {
        start_deg,
        extent_deg,
    };
    design.ring.lugs = Choice::Set(vec![lug(20.1, 60.0), lug(142.0, 50.0), lug(258.0, 52.0)]);
    let met = judged(check, &design);
    assert_eq!(met.severity, Severity::Ok, "{}", met.message);
    assert!((met.value.unwrap() - 0.1).abs() < 1e-9);
    design.ring.lugs = Choice::Set(vec![lug(19.0, 60.0), lug(142.0, 50.0), lug(258.0, 52.0)]);
    let finding = judged(check, &design);
    assert_eq!(finding.severity, Severity::Clash);
    assert_eq!(
        judged(check, &cured(&design, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn a_lug_that_comes_down_on_the_stop_clashes() {
    let mut design = with_leading_face_at(199.8);
    // At entry that lug stands from 86 to 137.8 degrees.
    design.body.stop_angle = Interface::measured(120.0, "protractor photograph");
    let finding = judged(check, &design);
    assert_eq!(finding.severity, Severity::Clash);
    assert!(
        finding.message.contains("comes down on the stop"),
        "{}",
        finding.message
    );
}

#[test]
fn a_stop_beside_the_lugs_meets_none() {
    let mut design = with_leading_face_at(199.8);
    design.body.stop_depth = Interface::measured(1.0, "depth micrometer");
    let finding = judged(check, &design);
    assert_eq!(finding.severity, Severity::Caution);
    assert!(finding.message.contains("passes by"), "{}", finding.message);
}

#[test]
fn without_a_stop_the_lock_pin_must_hold() {
    let mut design = with_leading_face_at(199.8);
    design.body.stop = Presence::Absent;
    assert_eq!(judged(check, &design).severity, Severity::Ok);
    design.body.lock_pin = Presence::Absent;
    assert_eq!(judged(check, &design).severity, Severity::Caution);
    design.body.lock_pin = Presence::Unknown;
    design.ring.dimensions.flange_diameter.value = Choice::Set(64.0);
    assert_eq!(lacking(check, &design), NotJudged(vec![FieldRef::LockPin]));
    design.body.stop = Presence::Unknown;
    assert_eq!(lacking(check, &design), NotJudged(vec![FieldRef::Stop]));
}
