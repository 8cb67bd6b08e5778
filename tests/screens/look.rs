//! Colours, contrast and text size; the list of keys; the bar of pages; what has the keyboard.

use egui::{Key, Modifiers, Rect};
use egui_kittest::kittest::{AccessKitNode, By, Queryable as _};
use flangewright::app::command::keyed;
use flangewright::app::look::TEXT_SIZES;
use flangewright::app::page::Page;

use crate::bench::{Bench, demo};

fn has_focus(node: &AccessKitNode<'_>) -> bool {
    node.is_focused()
}

/// Where what has the keyboard is, if anything has it.
fn focused(bench: &Bench) -> Option<Rect> {
    bench
        .window
        .query(By::new().predicate(has_focus))
        .map(|node| node.rect())
}

#[test]
fn f1_lists_every_key_and_escape_puts_the_list_away() {
    let mut bench = Bench::new();
    bench.press(Modifiers::NONE, Key::F1);
    assert!(bench.says("This field and all keys"));
    for (_, command) in keyed() {
        assert!(bench.says(command.explains()), "{command:?}");
    }
    bench.press(Modifiers::NONE, Key::Escape);
    assert!(!bench.says("This field and all keys"));
}

#[test]
fn no_key_of_the_page_works_behind_the_list_of_keys() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.5");
    bench.press(Modifiers::NONE, Key::F1);
    bench.press(Modifiers::COMMAND, Key::Z);
    bench.press(Modifiers::NONE, Key::Escape);
    assert_eq!(bench.shown("Seat height").as_deref(), Some("1.50"));
}

#[test]
fn the_text_grows_and_shrinks_by_its_keys() {
    let mut bench = Bench::new();
    let percent = |bench: &Bench| bench.window.state().settings().look.text_percent;
    bench.press(Modifiers::COMMAND, Key::Plus);
    assert_eq!(percent(&bench), 110);
    assert!((bench.window.ctx.zoom_factor() - 1.1).abs() < 1e-6);
    bench.press(Modifiers::COMMAND, Key::Minus);
    bench.press(Modifiers::COMMAND, Key::Minus);
    assert_eq!(percent(&bench), 90);
    bench.press(Modifiers::COMMAND, Key::Num0);
    assert_eq!(percent(&bench), 100);
}

#[test]
fn the_look_is_there_at_the_next_start() {
    let folder = tempfile::tempdir().unwrap();
    let mut bench = Bench::with_own_folder(folder.path());
    bench.menu("View", "Strong contrast");
    bench.menu("View", "Light colours");
    bench.press(Modifiers::COMMAND, Key::Plus);
    let chosen = bench.window.state().settings().look;
    let again = Bench::with_own_folder(folder.path());
    assert_eq!(again.window.state().settings().look, chosen);
    assert!(chosen.strong_contrast && chosen.text_percent == 110);
    assert_eq!(again.window.ctx.theme(), egui::Theme::Light);
}

#[test]
fn every_page_can_be_gone_to_in_a_small_window_and_with_twice_the_text() {
    // 1920 x 1080 at 200 % has room for 960 x 540 points.
    for (width, height) in [(1024.0, 700.0), (960.0, 540.0), (1280.0, 800.0)] {
        let mut bench = Bench::sized(&demo("archive_portrait.ron"), width, height);
        let room = Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(width, height));
        for page in Page::ALL {
            let tab = bench
                .window
                .query_all_by_label(page.title())
                .find(|node| node.rect().top() < 80.0)
                .unwrap_or_else(|| panic!("{} at {width}", page.title()));
            assert!(room.contains_rect(tab.rect()), "{}", page.title());
            tab.click();
            bench.window.run_steps(4);
        }
        for name in ["Undo", "Redo", "Save"] {
            let button = bench.window.get_all_by_label(name).next().unwrap().rect();
            assert!(room.contains_rect(button), "{name} at {width}");
        }
    }
}

#[test]
fn the_design_page_holds_at_twice_the_text() {
    let mut bench = Bench::sized(&demo("four_clashes.ron"), 1920.0, 1080.0);
    for _ in TEXT_SIZES {
        bench.press(Modifiers::COMMAND, Key::Plus);
    }
    let room = bench.window.ctx.content_rect().expand(0.5);
    assert!((room.width() - 961.0).abs() < 1.0, "{room:?}");
    for name in [
        "Half-section drawing",
        "Plan of the lugs",
        "Findings",
        "Lens",
        "Ring",
        "Body",
    ] {
        // A node tells pixels of the screen, twice the points.
        let rect = bench.window.get_by_label(name).rect();
        assert!(
            room.contains_rect(rect) && rect.width() > 20.0,
            "{name} {rect:?}"
        );
    }
}

#[test]
fn what_the_tab_key_gives_the_keyboard_to_is_in_sight() {
    let mut bench = Bench::new();
    let room = bench.window.ctx.content_rect();
    let mut seen = 0;
    for _ in 0..160 {
        bench.press(Modifiers::NONE, Key::Tab);
        if let Some(rect) = focused(&bench) {
            assert!(
                room.expand(1.0).contains_rect(rect),
                "step {seen}: {rect:?}"
            );
            seen += 1;
        }
    }
    assert!(seen > 150, "{seen}");
}
