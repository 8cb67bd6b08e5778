//! Rings worked by hand: common practice, no source.

use flangewright::checks::{FindingKey, Severity};
use flangewright::document::{Choice, Design, RingKey, read_design};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::workshop::Workshop;

/// A lens of register 45.46 with an M42x1 thread on a body of register 44.00, invented.
fn design() -> Design {
    read_design(include_str!("../../assets/demos/archive_portrait.ron")).unwrap()
}

fn judged(design: &Design) -> Evaluation {
    evaluate(design, &Workshop::default_set().unwrap())
}

fn with(key: RingKey, value: f64) -> Evaluation {
    let mut design = design();
    design.ring.dimensions.get_mut(key).value = Choice::Set(value);
    judged(&design)
}

/// Common practice, no source: 45.46 on 44.00 takes a seat 1.46 high.
#[test]
fn the_seat_height_is_the_difference_of_the_registers() {
    let design = design();
    assert_eq!(design.lens.register.number(), Some(45.46));
    assert_eq!(design.body.register.number(), Some(44.0));
    let ring = judged(&design).derivation.ring.unwrap();
    assert!((ring.sizes.seat_height - 1.46).abs() < 1e-9);
}

/// Common practice, no source: under an M42x1 thread a lip of 1 mm with a bore near 35 mm is usual.
#[test]
fn lip_and_bore_are_the_usual_ones() {
    let evaluation = judged(&design());
    let ring = evaluation.derivation.ring.as_ref().unwrap();
    assert!((ring.sizes.lip_thickness - 1.0).abs() < 1e-9);
    assert!(
        (ring.sizes.lip_bore - 35.0).abs() <= 1.0,
        "{}",
        ring.sizes.lip_bore
    );
    assert_eq!(
        evaluation
            .finding(FindingKey::LipThickness)
            .unwrap()
            .severity,
        Severity::Ok
    );
    let usual = with(RingKey::LipBore, 35.0);
    assert_eq!(
        usual.finding(FindingKey::PinLanding).unwrap().severity,
        Severity::Ok
    );
    assert_eq!(
        usual.finding(FindingKey::LensBarrel).unwrap().severity,
        Severity::Ok
    );
}

/// Common practice, no source: less than 2 mm of relief is tight for a pitch of 1 mm; under 1.5 pitches the tool
/// cannot be stopped.
#[test]
fn less_than_two_millimetres_of_relief_is_tight_for_a_pitch_of_one() {
    let severity = |width: f64| {
        with(RingKey::ReliefWidth, width)
            .finding(FindingKey::Relief)
            .unwrap()
            .severity
    };
    assert_eq!(severity(1.9), Severity::Caution);
    assert_eq!(severity(1.6), Severity::Caution);
    assert_eq!(severity(1.4), Severity::Clash);
}
