//! Working laid open: of findings, of ring dimensions, and their tolerances.

use egui::accesskit::Role;
use egui_kittest::kittest::Queryable as _;
use flangewright::app::page::Page;
use flangewright::document::{LimitKey, RingKey, Tolerance};

use crate::bench::Bench;

fn tolerance(bench: &Bench) -> Tolerance {
    let ring = &bench.workspace().design().ring;
    ring.dimensions.get(RingKey::LugDiameter).tolerance.clone()
}

#[test]
fn a_finding_opens_to_formula_numbers_inputs_source_and_assumption() {
    let mut bench = Bench::new();
    bench.press_by_key("Lip thickness");
    assert!(bench.says("lip thickness = 1.00 mm"));
    assert!(bench.says("source: common practice, no source"));
    assert!(bench.says("holds if"));
}

#[test]
fn an_input_leads_to_its_field_also_on_another_page() {
    let mut bench = Bench::new();
    bench.press_by_key("Rule of Groove root diameter: by its rule");
    assert!(bench.says("= body throat - 2 × limit \"Spigot in the throat, radial\""));
    assert!(bench.says("= 48.00 - 2 × 0.15"));
    assert!(bench.says("holds if the throat is round"));
    assert!(bench.says("rule of the tolerance: h9 of ISO 286"));
    bench
        .window
        .query_all_by_label_contains("limit \"Spigot in the throat, radial\" 0.15 mm")
        .last()
        .unwrap()
        .focus();
    bench.window.run();
    bench.press(egui::Modifiers::NONE, egui::Key::Space);
    let limit = bench
        .window
        .get_by_role_and_label(Role::TextInput, LimitKey::SpigotClearance.label());
    assert!(limit.is_focused());
}

#[test]
fn a_tolerance_is_given_in_three_ways_and_let_go() {
    let mut bench = Bench::sized(&crate::bench::demo("archive_portrait.ron"), 1280.0, 1400.0);
    bench.press_by_key("Rule of Lug diameter: by its rule");
    bench.choose("Tolerance", "plus and minus");
    assert!(matches!(tolerance(&bench), Tolerance::PlusMinus(_)));
    bench.enter("Tolerance as written", "±0,02");
    assert_eq!(tolerance(&bench), Tolerance::PlusMinus(0.02));
    bench.choose("Tolerance", "two deviations");
    bench.enter("Tolerance as written", "0/-0.05");
    assert_eq!(tolerance(&bench), Tolerance::Deviations(-0.05, 0.0));
    bench.choose("Tolerance", "ISO 286 fit");
    bench.enter("Tolerance as written", "f7");
    assert_eq!(tolerance(&bench), Tolerance::Fit("f7".to_owned()));
    bench.choose("Tolerance", "by its rule");
    assert_eq!(tolerance(&bench), Tolerance::Derived);
}

#[test]
fn a_question_of_words_takes_the_keyboard_when_it_is_jumped_to() {
    let mut bench = Bench::new();
    bench.show(Page::Tolerance);
    bench
        .window
        .query_all_by_label("growth with warmth")
        .next()
        .unwrap()
        .click();
    bench.window.run();
    let material = bench
        .window
        .get_by_role_and_label(Role::ComboBox, "Material");
    assert!(material.is_focused());
}
