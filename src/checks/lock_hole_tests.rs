use super::*;
use crate::checks::fixture::{cured, design, judged, lacking, with};
use crate::document::Design;

fn severity(sizes: &[(RingKey, f64)]) -> (Design, Finding) {
    let design = with(sizes);
    let finding = judged(check, &design);
    (design, finding)
}

fn is_cured(design: &Design, finding: &Finding) {
    let again = judged(check, &cured(design, finding));
    assert_eq!(again.severity, Severity::Ok, "{}", again.message);
}

// Pin 2.0 on a circle of 59, at 230 degrees, 1.0 out; limits: common practice, no source.
#[test]
fn the_rule_fits_the_pin() {
    let finding = judged(check, &design());
    assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
}

#[test]
fn a_tight_hole_is_a_caution_and_one_under_the_pin_a_clash() {
    let (design, tight) = severity(&[(RingKey::LockHoleDiameter, 2.08)]);
    assert_eq!(tight.severity, Severity::Caution);
    is_cured(&design, &tight);
    let (design, under) = severity(&[(RingKey::LockHoleDiameter, 1.9)]);
    assert_eq!(under.severity, Severity::Clash);
    assert!((under.value.unwrap() + 0.1).abs() < 1e-9);
    is_cured(&design, &under);
}

#[test]
fn a_wide_hole_rocks() {
    let (design, wide) = severity(&[(RingKey::LockHoleDiameter, 2.3)]);
    assert_eq!(wide.severity, Severity::Caution);
    is_cured(&design, &wide);
}

// One degree on a circle of 59: 29.5 x pi / 180 = 0.5149 mm.
#[test]
fn a_hole_a_degree_off_misses_the_pin() {
    let (design, off) = severity(&[(RingKey::LockHoleAngle, 231.0)]);
    assert_eq!(off.severity, Severity::Clash);
    assert!((off.value.unwrap() - 0.514_872).abs() < 1e-6);
    is_cured(&design, &off);
    let (_, same) = severity(&[(RingKey::LockHoleAngle, 230.0 - 360.0)]);
    assert_eq!(same.severity, Severity::Ok);
}

#[test]
fn a_hole_on_another_circle_misses_by_half_the_difference() {
    let (design, off) = severity(&[(RingKey::LockHoleCircle, 59.18)]);
    assert_eq!(off.severity, Severity::Caution, "{}", off.message);
    assert!((off.value.unwrap() - 0.09).abs() < 1e-9);
    is_cured(&design, &off);
}

#[test]
fn a_hole_at_the_rim_breaks_out() {
    let (design, near) = severity(&[(RingKey::FlangeDiameter, 61.9)]);
    assert_eq!(near.severity, Severity::Clash);
    is_cured(&design, &near);
}

#[test]
fn a_blind_hole_must_take_the_pin_and_leave_a_floor() {
    let (_, shallow) = severity(&[(RingKey::LockHoleDepth, 0.9)]);
    assert_eq!(shallow.severity, Severity::Clash);
    let (design, thin) = severity(&[(RingKey::LockHoleDepth, 1.3)]);
    assert_eq!(thin.severity, Severity::Clash, "{}", thin.message);
    is_cured(&design, &thin);
}

#[test]
fn a_ring_without_a_hole_does_not_lock() {
    let (design, none) = severity(&[(RingKey::LockHoleDiameter, 0.0)]);
    assert_eq!(none.severity, Severity::Clash);
    is_cured(&design, &none);
}

#[test]
fn a_body_without_a_pin_needs_no_hole_and_an_unseen_one_is_named() {
    let mut bare = design();
    bare.body.lock_pin = Presence::Absent;
    assert_eq!(judged(check, &bare).severity, Severity::Ok);
    bare.body.lock_pin = Presence::Unknown;
    assert_eq!(lacking(check, &bare), NotJudged(vec![FieldRef::LockPin]));
}
