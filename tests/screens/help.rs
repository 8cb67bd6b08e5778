//! Help in place, mounts explained, the hints of the first start, what a screen reader is told.

use egui::accesskit::{Live, Role};
use egui::{Key, Modifiers};
use egui_kittest::kittest::{AccessKitNode, By, NodeT as _, Queryable as _};
use flangewright::app::hints::HINTS;
use flangewright::drawing::Topic;

use crate::bench::{Bench, demo};

fn is_live(node: &AccessKitNode<'_>) -> bool {
    node.live() == Live::Assertive
}

#[test]
fn f1_explains_the_field_that_has_the_keyboard() {
    let mut bench = Bench::new();
    bench
        .window
        .get_by_role_and_label(Role::TextInput, "Lip thickness")
        .focus();
    bench.window.run();
    bench.press(Modifiers::NONE, Key::F1);
    for part in [
        "lip thickness",
        "Rule: 1.0; without a pressed pin",
        "if it is wrong: too thin it bends under the pin",
        "now: ",
    ] {
        assert!(bench.says(part), "{part}");
    }
}

#[test]
fn a_finding_says_what_happens_if_nobody_heeds_it() {
    let mut bench = Bench::sized(&demo("four_clashes.ron"), 1280.0, 800.0);
    let worst = bench.workspace().evaluation().findings[0].key;
    bench.click(worst.title());
    assert!(bench.says("if nobody heeds it: "));
}

#[test]
fn mounts_are_explained_from_the_menu_with_a_picture_for_each_part() {
    let mut bench = Bench::new();
    bench.menu("Help", "Mounts explained");
    for topic in Topic::ALL {
        let picture = format!("Picture: {}", topic.title());
        let found = bench
            .window
            .query_all_by_role_and_label(Role::Image, &picture)
            .count();
        assert_eq!(found, 1, "{picture}");
        assert!(bench.says(topic.text()), "{}", topic.title());
    }
    bench.press(Modifiers::NONE, Key::Escape);
    assert!(!bench.says("Picture: "));
}

#[test]
fn the_hints_are_put_away_for_good() {
    let folder = tempfile::tempdir().unwrap();
    let mut bench = Bench::with_own_folder(folder.path());
    assert!(!bench.says(HINTS[0].0), "not over a design that was opened");
    bench.window.state_mut().show_hints_at_start();
    bench.window.run();
    for (what, comes) in HINTS {
        assert!(bench.says(what) && bench.says(comes));
    }
    bench.click("Put the hints away");
    assert!(!bench.says(HINTS[0].0));
    let mut again = Bench::with_own_folder(folder.path());
    again.window.state_mut().show_hints_at_start();
    again.window.run();
    assert!(!again.says(HINTS[0].0));
    again.menu("Help", "Three hints");
    assert!(again.says(HINTS[0].0));
}

#[test]
fn a_finding_that_turns_to_a_clash_is_announced() {
    let mut bench = Bench::new();
    let told = |bench: &Bench| {
        let node = bench.window.get(By::new().predicate(is_live));
        node.accesskit_node().value().unwrap_or_default()
    };
    assert_eq!(told(&bench), "");
    bench.enter("Lip thickness", "0.5");
    assert!(
        told(&bench).starts_with("clash: Lip thickness: "),
        "{}",
        told(&bench)
    );
    bench.press(Modifiers::COMMAND, Key::Z);
    assert_eq!(told(&bench), "no clash any more");
}

#[test]
fn the_drawings_are_told_in_words() {
    let bench = Bench::new();
    let words = |name: &str| {
        let node = bench.window.get_by_label(name);
        node.accesskit_node().description().unwrap_or_default()
    };
    assert!(words("Half-section drawing").contains("Seat height 1.46 mm"));
    assert!(words("Plan of the lugs").starts_with("3 lugs when locked"));
}
