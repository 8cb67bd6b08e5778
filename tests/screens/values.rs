//! Typing, dragging, refusing, letting go, undoing.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use flangewright::checks::{FindingKey, Severity};
use flangewright::document::{Choice, RingKey};
use flangewright::mount::{BodyField, LensField, Standing};

use crate::bench::{Bench, demo};

#[test]
fn a_thicker_seat_clashes_and_undo_brings_it_back() {
    let mut bench = Bench::new();
    assert_eq!(bench.severity(FindingKey::Register), Severity::Ok);
    bench.enter("Seat height", "2.5");
    assert!((bench.size(RingKey::SeatHeight) - 2.5).abs() < 1e-12);
    assert_eq!(bench.severity(FindingKey::Register), Severity::Clash);
    assert!(bench.says("set by hand; the rule gives 1.46 mm"));
    bench.click("Undo");
    assert!((bench.size(RingKey::SeatHeight) - 1.46).abs() < 1e-9);
    assert_eq!(bench.severity(FindingKey::Register), Severity::Ok);
    bench.click("Redo");
    assert_eq!(bench.severity(FindingKey::Register), Severity::Clash);
}

#[test]
fn a_dimension_let_go_follows_its_rule_again() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.5");
    bench.click("Let Seat height go");
    assert_eq!(
        bench
            .workspace()
            .design()
            .ring
            .dimensions
            .get(RingKey::SeatHeight)
            .value,
        Choice::Derived
    );
}

#[test]
fn a_comma_and_an_inch_are_understood() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1,52");
    assert!((bench.size(RingKey::SeatHeight) - 1.52).abs() < 1e-12);
    bench.enter("Seat height", "0.05 in");
    assert!((bench.size(RingKey::SeatHeight) - 1.27).abs() < 1e-12);
    assert_eq!(bench.shown("Seat height").as_deref(), Some("1.27"));
}

#[test]
fn refused_text_says_why_and_leaves_the_value() {
    let mut bench = Bench::new();
    for (text, why) in [
        ("1.234,5", "both a point and a comma"),
        ("about two", "was not understood"),
        ("9999", "allowed is"),
    ] {
        bench.enter("Seat height", text);
        assert!(bench.says(why), "{text}: no word of \"{why}\"");
        assert!((bench.size(RingKey::SeatHeight) - 1.46).abs() < 1e-9);
    }
    assert!(!bench.workspace().can_undo());
    bench.enter("Seat height", "1.5");
    assert!(!bench.says("refused:"));
}

#[test]
fn escape_gives_up() {
    let mut bench = Bench::new();
    bench.write("Seat height", "99");
    bench.press(Modifiers::NONE, Key::Escape);
    assert!((bench.size(RingKey::SeatHeight) - 1.46).abs() < 1e-9);
    assert!(!bench.workspace().is_changed() && !bench.says("refused:"));
}

#[test]
fn leaving_a_field_takes_its_text_and_mere_tabbing_changes_nothing() {
    let mut bench = Bench::sized(&demo("tall_ring.ron"), 1280.0, 800.0);
    for _ in 0..60 {
        bench.press(Modifiers::NONE, Key::Tab);
    }
    assert!(!bench.workspace().is_changed());
    bench.write("Seat height", "2.25");
    bench.press(Modifiers::NONE, Key::Tab);
    assert!((bench.size(RingKey::SeatHeight) - 2.25).abs() < 1e-12);
}

#[test]
fn an_arrow_key_steps_by_a_hundredth() {
    let mut bench = Bench::new();
    bench
        .window
        .get_by_role_and_label(egui::accesskit::Role::TextInput, "Seat height")
        .focus();
    bench.window.run();
    bench.press(Modifiers::NONE, Key::ArrowUp);
    assert!((bench.size(RingKey::SeatHeight) - 1.47).abs() < 1e-12);
    bench.press(Modifiers::SHIFT, Key::ArrowDown);
    assert!((bench.size(RingKey::SeatHeight) - 1.37).abs() < 1e-12);
}

#[test]
fn a_drag_is_followed_live_and_undone_as_one() {
    let mut bench = Bench::new();
    let grip = bench
        .window
        .get_by_label("Drag Seat height")
        .rect()
        .center();
    bench.window.hover_at(grip);
    bench.window.step();
    bench.window.drag_at(grip);
    bench.window.step();
    for far in [10.0, 20.0, 30.0] {
        bench.window.hover_at(grip + egui::vec2(far, 0.0));
        bench.window.step();
        bench.window.step();
    }
    assert!(
        (bench.size(RingKey::SeatHeight) - 1.76).abs() < 1e-9,
        "not live: {}",
        bench.size(RingKey::SeatHeight)
    );
    bench.window.drop_at(grip + egui::vec2(30.0, 0.0));
    bench.window.run();
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!((bench.size(RingKey::SeatHeight) - 1.46).abs() < 1e-9);
    assert!(!bench.workspace().can_undo());
}

#[test]
fn a_number_typed_over_a_measured_one_stays_measured() {
    let mut bench = Bench::new();
    bench.enter("Male thread length", "4.1");
    let lens = &bench.workspace().design().lens;
    assert_eq!(lens.field(LensField::MaleThreadLength).number(), Some(4.1));
    assert_eq!(
        lens.field(LensField::MaleThreadLength).standing(),
        Standing::Measured
    );
    bench.enter("Throat", "52");
    assert!(bench.says("it must be less than body slot diameter"));
    assert_eq!(
        bench
            .workspace()
            .design()
            .body
            .field(BodyField::Throat)
            .number(),
        Some(48.0)
    );
}

#[test]
fn a_thread_is_typed_by_its_designation() {
    let mut bench = Bench::new();
    bench.enter("Lens thread", "M39x1");
    assert_eq!(
        bench
            .workspace()
            .design()
            .lens
            .thread
            .value()
            .unwrap()
            .to_string(),
        "M39x1"
    );
    bench.enter("Lens thread", "M0x1");
    assert!(bench.says("refused:"));
    assert_eq!(
        bench
            .workspace()
            .design()
            .lens
            .thread
            .value()
            .unwrap()
            .to_string(),
        "M39x1"
    );
}

#[test]
fn the_remedy_of_a_finding_is_applied_by_one_click() {
    let mut bench = Bench::sized(&demo("four_clashes.ron"), 1280.0, 900.0);
    assert_eq!(bench.severity(FindingKey::LipThickness), Severity::Clash);
    bench.press_by_key("Lip thickness");
    bench.press_by_key("Apply the remedy of Lip thickness");
    assert_ne!(bench.severity(FindingKey::LipThickness), Severity::Clash);
}
