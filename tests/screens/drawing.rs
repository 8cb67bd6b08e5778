//! The two drawings: picking, the cutting line, what stands in their place.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use flangewright::mount::Interface;

use crate::bench::{Bench, demo};

#[test]
fn the_cutting_line_turns_by_key_and_is_undone() {
    let mut bench = Bench::new();
    let before = bench.workspace().design().sheet.section_angle_deg;
    bench.press(Modifiers::NONE, Key::CloseBracket);
    let after = bench.workspace().design().sheet.section_angle_deg;
    assert!(((after - before).rem_euclid(360.0) - 5.0).abs() < 1e-9);
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!((bench.workspace().design().sheet.section_angle_deg - before).abs() < 1e-9);
}

#[test]
fn the_cutting_line_is_dragged_round_in_the_plan() {
    let mut bench = Bench::new();
    // At 12 o'clock the line goes straight up from the middle of the plan.
    while bench.workspace().design().sheet.section_angle_deg.abs() > 1e-9 {
        let angle = bench.workspace().design().sheet.section_angle_deg;
        assert!(angle % 5.0 == 0.0, "the demo is not cut at whole steps");
        bench.press(Modifiers::NONE, Key::CloseBracket);
    }
    let plan = bench.window.get_by_label("Plan of the lugs").rect();
    let middle = plan.center();
    let up = middle - egui::vec2(0.0, plan.height() * 0.3);
    let right = middle + egui::vec2(plan.height() * 0.3, 0.0);
    bench.window.hover_at(up);
    bench.window.step();
    bench.window.drag_at(up);
    bench.window.step();
    for share in [0.3, 0.6, 1.0] {
        bench.window.hover_at(up + (right - up) * share);
        bench.window.step();
        bench.window.step();
    }
    bench.window.drop_at(right);
    bench.window.run();
    // A quarter of a turn clockwise, seen from the lens side; the ring stands about in the middle of the plan.
    let angle = bench.workspace().design().sheet.section_angle_deg;
    assert!((angle - 90.0).abs() < 4.0, "{angle}");
}

#[test]
fn what_is_missing_stands_in_place_of_the_drawing() {
    let folder = tempfile::tempdir().unwrap();
    let mut design = flangewright::app::files::open_design(&demo("archive_portrait.ron")).unwrap();
    design.body.throat = Interface::Unknown;
    let path = folder.path().join("unknown.ron");
    flangewright::app::files::save_design(&path, &design).unwrap();
    let mut bench = Bench::sized(&path, 1280.0, 800.0);
    assert!(bench.says("There is no whole ring yet"));
    assert!(bench.says("Caliper, inside jaws on opposite ears"));
    bench
        .window
        .get_by_role_and_label(egui::accesskit::Role::Link, "body throat")
        .click();
    bench.window.run();
    let throat = bench
        .window
        .get_by_role_and_label(egui::accesskit::Role::TextInput, "Throat");
    assert!(throat.is_focused());
    bench.enter("Throat", "48");
    assert!(!bench.says("There is no whole ring yet"));
    assert!(
        bench
            .window
            .query_by_label("Half-section drawing")
            .is_some()
    );
}
