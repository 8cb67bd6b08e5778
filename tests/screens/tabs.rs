//! Several designs in one window.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use flangewright::app::chooser::FileAnswer;
use flangewright::document::RingKey;

use crate::bench::{Bench, demo};

fn open(bench: &mut Bench, name: &str) {
    bench.press(Modifiers::COMMAND, Key::O);
    bench
        .script
        .answers
        .borrow_mut()
        .push_back(FileAnswer::Chosen(demo(name)));
    bench.window.run();
}

fn in_hand(bench: &Bench) -> String {
    bench.workspace().title_name()
}

#[test]
fn a_second_design_stands_beside_the_first_with_its_own_history_and_mark() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.5");
    open(&mut bench, "tall_ring.ron");
    assert_eq!(bench.window.state().open_designs(), 2);
    assert_eq!(in_hand(&bench), "tall_ring");
    assert!(!bench.workspace().is_changed() && !bench.workspace().can_undo());
    assert!(
        bench.says("archive_portrait *"),
        "the unsaved mark is on the tab"
    );

    bench.press(Modifiers::COMMAND, Key::PageUp);
    assert_eq!(in_hand(&bench), "archive_portrait");
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!(!bench.workspace().is_changed());
    // The views follow: they are drawn for the design in hand, not for the one before.
    let shown = bench.shown("Seat height").unwrap();
    assert!(shown.starts_with("1.46"), "{shown}");
}

#[test]
fn a_file_that_is_open_already_is_gone_to() {
    let mut bench = Bench::new();
    open(&mut bench, "tall_ring.ron");
    open(&mut bench, "archive_portrait.ron");
    assert_eq!(bench.window.state().open_designs(), 2);
    assert_eq!(in_hand(&bench), "archive_portrait");
}

#[test]
fn each_design_keeps_its_page_and_its_tab_is_reached_by_mouse_and_by_key() {
    let mut bench = Bench::new();
    open(&mut bench, "tall_ring.ron");
    bench.press(Modifiers::COMMAND, Key::Num3);
    let there = |bench: &Bench| bench.says("Half-section");
    assert!(!there(&bench));
    bench.press(Modifiers::COMMAND, Key::PageDown);
    assert_eq!(in_hand(&bench), "archive_portrait");
    assert!(there(&bench));
    bench.window.get_by_label("tall_ring").click();
    bench.window.run();
    assert_eq!(in_hand(&bench), "tall_ring");
    assert!(!there(&bench));
}

#[test]
fn a_tab_is_closed_by_its_cross_and_the_last_one_leaves_an_empty_design() {
    let mut bench = Bench::new();
    open(&mut bench, "tall_ring.ron");
    bench.click("Close archive_portrait");
    assert_eq!(bench.window.state().open_designs(), 1);
    assert_eq!(in_hand(&bench), "tall_ring");
    bench.press(Modifiers::COMMAND, Key::W);
    assert_eq!(bench.window.state().open_designs(), 1);
    assert_eq!(in_hand(&bench), "new design");
}

#[test]
fn quitting_asks_about_each_unsaved_design_in_turn() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.5");
    open(&mut bench, "tall_ring.ron");
    bench.enter("Seat height", "9.9");
    bench.press(Modifiers::COMMAND, Key::Q);
    assert!(bench.says("\"tall_ring\" has changes"));
    bench.click("Discard");
    assert!(bench.says("\"archive_portrait\" has changes"));
    bench.click("Cancel");
    // Given up after all: both are there, changed as they were.
    assert_eq!(bench.window.state().open_designs(), 2);
    bench.press(Modifiers::COMMAND, Key::Q);
    assert!(bench.says("\"archive_portrait\" has changes"));
    bench.click("Discard");
    assert!(bench.says("\"tall_ring\" has changes"));
}
