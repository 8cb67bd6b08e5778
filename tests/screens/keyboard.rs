//! Keys, names, sizes, quiet.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use flangewright::app::command::keyed;
use flangewright::app::page::Page;
use flangewright::document::RingKey;

use crate::bench::{Bench, demo};

#[test]
fn no_key_stands_for_two_commands() {
    let keyed = keyed();
    assert!(keyed.len() > 10);
    for (place, (key, command)) in keyed.iter().enumerate() {
        for (other_key, other) in &keyed[place + 1..] {
            assert!(
                key != other_key,
                "{key:?} stands for {command:?} and {other:?}"
            );
        }
    }
}

#[test]
fn redo_is_not_undo() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.5");
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!((bench.size(RingKey::SeatHeight) - 1.46).abs() < 1e-9);
    bench.press(Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);
}

#[test]
fn the_undo_key_stays_in_a_text_that_is_typed() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.5");
    bench.write("Plate thickness", "1.2");
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);
}

#[test]
fn the_window_comes_to_rest() {
    // `run` fails where a frame always asks for another one.
    let mut bench = Bench::new();
    assert!(bench.window.run() <= 2);
    bench.press(Modifiers::NONE, Key::B);
    bench.press(Modifiers::NONE, Key::A);
    bench.press(Modifiers::NONE, Key::F);
}

#[test]
fn every_page_holds_from_a_small_window_to_a_large_one() {
    // Running also fails where an input has no name.
    for (width, height) in [
        (1024.0, 700.0),
        (1280.0, 800.0),
        (1920.0, 1080.0),
        (3840.0, 2160.0),
    ] {
        let mut bench = Bench::sized(&demo("four_clashes.ron"), width, height);
        let room = egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(width, height));
        for name in [
            "Half-section drawing",
            "Plan of the lugs",
            "Findings",
            "Lens",
            "Ring",
            "Body",
        ] {
            let rect = bench.window.get_by_label(name).rect();
            assert!(
                room.contains_rect(rect),
                "{name} at {width} x {height}: {rect:?}"
            );
        }
        let seat = bench
            .window
            .get_by_role_and_label(egui::accesskit::Role::TextInput, "Seat height")
            .rect();
        assert!(room.contains_rect(seat));
        bench.show(Page::Limits);
        assert!(bench.says("Limits and clearances"));
        bench.show(Page::Design);
        assert!(bench.says("Half-section"));
    }
}
