use super::*;
use crate::checks::fixture::{cured, design, judged, lacking};
use crate::document::{Choice, Design, MillingMethod};
use crate::mount::{Hand, Interface};

/// Three ears of the fixture at 20..80, 152..202 and 260..316; lugs of a radial cutter, which have no fillet.
fn with_lugs(lugs: &[(f64, f64)]) -> Design {
    let mut design = design();
    let sectors = lugs.iter().map(|(start_deg, extent_deg)| Sector {
        start_deg: *start_deg,
        extent_deg: *extent_deg,
    });
    design.ring.lugs = Choice::Set(sectors.collect());
    design.ring.milling = MillingMethod::RadialCutter;
    design
}

#[test]
fn the_rule_covers_its_ears() {
    let finding = judged(check, &design());
    assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
}

// Angles counted on the clock face: 45 of 60, 50 of 50 and 56 of 56 degrees; area 151 degrees between radii 25
// and 26.85 (annular sector: angle / 2 x difference of the squares).
#[test]
fn the_worst_ear_is_judged() {
    let some = judged(
        check,
        &with_lugs(&[(35.0, 60.0), (150.0, 60.0), (258.0, 60.0)]),
    );
    assert_eq!(some.severity, Severity::Caution);
    assert!((some.value.unwrap() - 75.0).abs() < 1e-9);
    let area = some
        .working
        .iter()
        .find(|line| line.unit == Unit::Mm2)
        .unwrap()
        .term
        .value();
    let expected = 151.0_f64.to_radians() / 2.0 * (26.85 * 26.85 - 625.0);
    assert!((area - expected).abs() < 1e-9, "{area} {expected}");
}

#[test]
fn a_lug_that_misses_its_ear_clashes_and_the_rule_cures_it() {
    let design = with_lugs(&[(20.0, 60.0), (150.0, 60.0), (290.0, 40.0)]);
    let finding = judged(check, &design);
    assert_eq!(finding.severity, Severity::Clash);
    assert!((finding.value.unwrap() - 26.0 / 56.0 * 100.0).abs() < 1e-9);
    assert_eq!(
        judged(check, &cured(&design, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn lugs_that_run_past_their_ears_are_told() {
    // Locked 30 degrees too far: 30 degrees before the lock every ear was covered.
    let finding = judged(
        check,
        &with_lugs(&[(50.0, 60.0), (182.0, 50.0), (290.0, 56.0)]),
    );
    assert_eq!(finding.severity, Severity::Clash);
    assert!(
        finding.message.contains("run 30.00° past"),
        "{}",
        finding.message
    );
    // The worst of them is the ear of 50 degrees.
    assert!(
        finding
            .working
            .iter()
            .any(|line| (line.term.value() - 50.0).abs() < 1e-9)
    );
}

#[test]
fn the_covered_angle_grows_until_the_edges_meet() {
    let sector = |start_deg: f64, extent_deg: f64| Sector {
        start_deg,
        extent_deg,
    };
    let pattern = Pattern::of(&[sector(0.0, 60.0)], 0.0, &[sector(350.0, 60.0)]);
    let ear = pattern.ears[0];
    let best = pattern.best_on_the_way(
        ear,
        Twist {
            degrees: 90.0,
            hand: Hand::Clockwise,
        },
    );
    assert!((best.back_deg - 10.0).abs() < 1e-9 && (best.covered_deg - 60.0).abs() < 1e-9);
    // Turned the other way it covers most when locked.
    let best = pattern.best_on_the_way(
        ear,
        Twist {
            degrees: 90.0,
            hand: Hand::Anticlockwise,
        },
    );
    assert!(best.back_deg.abs() < 1e-9 && (best.covered_deg - 50.0).abs() < 1e-9);
}

#[test]
fn lugs_no_wider_than_the_throat_hold_nothing() {
    let mut design = with_lugs(&[(20.0, 60.0)]);
    design.ring.dimensions.lug_diameter.value = Choice::Set(50.0);
    design.ring.dimensions.nose_diameter.value = Choice::Set(49.0);
    assert_eq!(judged(check, &design).severity, Severity::Clash);
}

#[test]
fn unknown_ears_are_named() {
    let mut design = with_lugs(&[(20.0, 60.0)]);
    design.body.ears = Interface::Unknown;
    assert_eq!(lacking(check, &design), NotJudged(vec![FieldRef::Ears]));
}
