//! The page Room: margins, map, settling.

use egui::accesskit::Role;
use egui_kittest::kittest::Queryable as _;
use flangewright::app::page::Page;
use flangewright::checks::Severity;
use flangewright::document::RingKey;

use crate::bench::{Bench, demo};

fn on_page(tool: &str) -> Bench {
    let mut bench = Bench::new();
    bench.show(Page::Room);
    show(&mut bench, tool);
    bench
}

fn show(bench: &mut Bench, tool: &str) {
    bench
        .window
        .get_by_role_and_label(Role::Button, tool)
        .click();
    bench.window.run_steps(2);
}

fn tick(bench: &mut Bench, words: &str) {
    bench
        .window
        .get_by_role_and_label(Role::CheckBox, words)
        .click();
    bench.window.run_steps(2);
}

/// A lip of 1.0 on its caution limit of 1.0: 0.1 more is 0.1 of margin, a tenth of the limit.
#[test]
fn what_a_little_more_gains_is_told_and_shown_in_the_plot() {
    let mut bench = on_page("Margins");
    let words = "0.1 mm more lip thickness costs 0.100 mm at Nose depth";
    bench.wait_until(|bench| bench.says(words));
    bench.choose("of", "Seat height");
    assert!(!bench.says(words));
    bench
        .window
        .query_all_by_label_contains("0.1 mm more seat height")
        .next()
        .unwrap()
        .click();
    bench.window.run_steps(2);
    let along = bench.window.get_by_role_and_label(Role::ComboBox, "Along");
    assert_eq!(along.value().as_deref(), Some("Seat height"));
    bench.wait_until(|bench| bench.says("move along it"));
}

#[test]
fn a_click_on_the_map_sets_both_dimensions_in_one_step() {
    let mut bench = on_page("Map");
    bench.wait_until(|bench| bench.says("Map of the room: 2500 rings"));
    let sizes =
        |bench: &Bench| [RingKey::LipFaceDepth, RingKey::SpigotLength].map(|key| bench.size(key));
    let before = sizes(&bench);
    let map = bench.window.get_by_label_contains("Map of the room").rect();
    let at = map.center() + egui::vec2(60.0, -40.0);
    bench.window.hover_at(at);
    bench.window.run_steps(1);
    bench.window.drag_at(at);
    bench.window.run_steps(1);
    bench.window.drop_at(at);
    bench.window.run_steps(2);
    let after = sizes(&bench);
    assert!(
        after.iter().zip(before).all(|(a, b)| (a - b).abs() > 0.005),
        "{before:?} {after:?}"
    );
    bench.press_button("Undo");
    let back = sizes(&bench);
    assert!(back.iter().zip(before).all(|(a, b)| (a - b).abs() < 1e-12));
    assert!(!bench.workspace().can_undo());
}

/// Of the four clashes of the demo, a lip of 0.6 goes to 0.8 and a relief of 1.2 to 1.5 at least: the default limits.
#[test]
fn settling_shows_what_moves_and_is_taken_in_one_step() {
    let mut bench = Bench::new();
    bench.enter("Lip thickness", "0.5");
    bench.show(Page::Room);
    show(&mut bench, "Settle");
    assert_eq!(bench.workspace().evaluation().count(Severity::Clash), 1);
    bench.press_button("What the findings would change");
    assert!(bench.says("1 dimension may move"));
    bench.press_button("Find the nearest ring");
    bench.wait_until(|bench| bench.says("findings before: 1 clash"));
    assert!(bench.says("0.80 mm") && bench.says("+0.30 mm"));
    assert_eq!(bench.workspace().evaluation().count(Severity::Clash), 1);
    bench.press_button("Take it");
    assert!((bench.size(RingKey::LipThickness) - 0.8).abs() < 1e-9);
    assert_eq!(bench.workspace().evaluation().count(Severity::Clash), 0);
    assert!(bench.says("The design has changed since"));
    bench.press_button("Undo");
    assert!((bench.size(RingKey::LipThickness) - 0.5).abs() < 1e-9);
}

#[test]
fn what_contradicts_what_is_named() {
    let mut bench = Bench::new();
    bench.enter("Lip thickness", "0.5");
    bench.show(Page::Room);
    show(&mut bench, "Settle");
    tick(&mut bench, "Lip thickness  0.50 mm");
    bench.enter("Lip thickness may move: to", "0.7");
    bench.press_button("Find the nearest ring");
    bench.wait_until(|bench| bench.says("No ring without a clash was found"));
    assert!(bench.says("These 2 cannot all hold. No smaller set contradicts itself"));
    assert!(bench.says("Lip thickness: no clash") && bench.says("the bounds of lip thickness"));
    bench.enter("Lip thickness may move: weight", "-3");
    assert!(bench.says("refused:"));
}

#[test]
fn a_long_search_is_called_off() {
    let mut bench = Bench::sized(&demo("four_clashes.ron"), 1280.0, 800.0);
    bench.show(Page::Room);
    show(&mut bench, "Settle");
    bench.press_button("What the findings would change");
    bench.press_button("Find the nearest ring");
    bench.wait_until(|bench| {
        bench
            .window
            .query_by_role_and_label(Role::Button, "Call off settling")
            .is_some()
    });
    bench.press_button("Call off settling");
    bench.wait_until(|bench| bench.says("called off"));
    assert!(!bench.says("Take it"));
}
