use super::*;
use crate::checks::fixture::{cured, design, judged, with};
use crate::document::Design;
use crate::mount::Interface;

// Ears 1.5 + 1.8 = 3.3 behind the flange; limits for play: common practice, no source.
fn unsprung(groove: Option<f64>) -> Design {
    let mut design = groove.map_or_else(design, |width| with(&[(RingKey::GrooveWidth, width)]));
    design.body.springs = Presence::Absent;
    design
}

#[test]
fn the_rule_leaves_room_sprung_and_unsprung() {
    for design in [design(), unsprung(None)] {
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }
}

#[test]
fn a_groove_narrower_than_the_ears_clashes_by_the_difference() {
    let narrow = with(&[(RingKey::GrooveWidth, 3.2)]);
    let finding = judged(check, &narrow);
    assert_eq!(finding.severity, Severity::Clash);
    assert!((finding.value.unwrap() + 0.1).abs() < 1e-9);
    assert_eq!(
        judged(check, &cured(&narrow, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn play_without_springs_is_a_caution_and_then_a_clash() {
    // Tolerance +0.02/0 by rule: 3.31 + 0.02 is at the limit of 0.03, 3.30 + 0.02 + 0.03 beyond it.
    let mut some = unsprung(Some(3.325));
    some.ring.dimensions.groove_width.tolerance = crate::document::Tolerance::Deviations(0.0, 0.0);
    assert_eq!(judged(check, &some).severity, Severity::Caution);
    let wide = unsprung(Some(3.34));
    let finding = judged(check, &wide);
    assert_eq!(finding.severity, Severity::Clash);
    assert!((finding.value.unwrap() - 0.06).abs() < 1e-9);
    assert_eq!(
        judged(check, &cured(&wide, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn unknown_springs_are_never_worse_than_a_caution() {
    let mut wide = unsprung(Some(3.4));
    wide.body.springs = Presence::Unknown;
    let finding = judged(check, &wide);
    assert_eq!(finding.severity, Severity::Caution);
    assert!(
        finding.message.ends_with("look for springs"),
        "{}",
        finding.message
    );
    assert_eq!(
        judged(check, &cured(&wide, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn springs_take_up_more_play_but_not_any() {
    let wide = with(&[(RingKey::GrooveWidth, 3.5)]);
    let finding = judged(check, &wide);
    assert_eq!(finding.severity, Severity::Caution);
    assert!((finding.value.unwrap() - 0.25).abs() < 1e-9);
    assert_eq!(
        judged(check, &cured(&wide, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn lugs_that_hardly_reach_behind_the_ears_clash() {
    let short = with(&[(RingKey::LugDiameter, 50.6)]);
    let finding = judged(check, &short);
    assert_eq!(finding.severity, Severity::Clash);
    assert_eq!(
        judged(check, &cured(&short, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn unknown_ears_are_named() {
    let mut unknown = with(&[(RingKey::GrooveWidth, 3.35)]);
    unknown.body.ear_front_depth = Interface::Unknown;
    unknown.body.ear_thickness = Interface::Unknown;
    let finding = judged(check, &unknown);
    assert_eq!(
        finding.message,
        "not judged: body ear front depth, body ear thickness unknown"
    );
}
