//! Room to move: the bars under the dimensions of the ring.

use egui::accesskit::Role;
use egui_kittest::kittest::Queryable as _;
use flangewright::document::RingKey;

use crate::bench::Bench;

const BAR: &str = "Room of Flange diameter: no clash from ";

/// The bar of a dimension, dragged by so many points in steps as a hand does.
fn drag_bar(bench: &mut Bench, name: &str, by: f32) {
    bench.window.get_by_label_contains(name).scroll_to_me();
    bench.window.run_steps(4);
    let from = bench.window.get_by_label_contains(name).rect().center();
    bench.window.drag_at(from);
    bench.window.step();
    for step in 1_u8..=5 {
        let along = by * f32::from(step) / 5.0;
        bench.window.hover_at(from + egui::vec2(along, 0.0));
        bench.window.step();
    }
    bench.window.drop_at(from + egui::vec2(by, 0.0));
    bench.window.step();
}

/// Brings the flange diameter into sight: what has the keyboard may have pushed it out.
fn show_flange(bench: &mut Bench) {
    bench
        .window
        .get_by_role_and_label(Role::TextInput, "Flange diameter")
        .scroll_to_me();
    bench.window.run_steps(4);
}

#[test]
fn every_dimension_in_sight_has_a_bar_that_says_where_it_ends() {
    let mut bench = Bench::with_room();
    assert!(!bench.says("Room of"));
    bench.wait_until(|bench| bench.says(BAR));
    for title in ["Seat height", "Plate thickness", "Thread length"] {
        assert!(
            bench.says(&format!("Room of {title}: no clash from ")),
            "{title}"
        );
    }
    // At rest again: nothing asks for another frame.
    assert!(bench.window.run() <= 2);
}

#[test]
fn a_changed_design_keeps_the_old_bars_until_the_new_ones_are_there() {
    let mut bench = Bench::with_room();
    bench.wait_until(|bench| bench.says(BAR));
    bench.enter("Lip thickness", "0.9");
    assert!(bench.says("(before the last change)"));
    bench.wait_until(|bench| !bench.says("(before the last change)"));
    show_flange(&mut bench);
    bench.wait_until(|bench| bench.says(BAR));
}

#[test]
fn a_bar_is_dragged_as_one_step_of_undo() {
    let mut bench = Bench::with_room();
    bench.wait_until(|bench| bench.says(BAR));
    let before = bench.size(RingKey::FlangeDiameter);
    drag_bar(&mut bench, BAR, -4.0);
    let after = bench.size(RingKey::FlangeDiameter);
    assert!(after < before - 0.01, "{before} to {after}");
    bench.click("Undo");
    assert!((bench.size(RingKey::FlangeDiameter) - before).abs() < 1e-12);
    assert!(!bench.workspace().can_undo());
}

#[test]
fn working_the_room_is_called_off_and_begun_again() {
    let mut bench = Bench::with_room();
    bench.wait_until(|bench| {
        bench
            .window
            .query_by_role_and_label(Role::Button, "Call off room to move")
            .is_some()
    });
    bench.press_button("Call off room to move");
    bench.wait_until(|bench| bench.says("room to move was called off"));
    assert!(!bench.says("Room of"));
    bench.press_button("Work out the room to move");
    bench.wait_until(|bench| bench.says(BAR));
}

#[test]
fn of_a_ring_that_clashes_the_rest_is_shown_on_request() {
    let mut bench = Bench::with_room();
    bench.enter("Lip thickness", "0.5");
    show_flange(&mut bench);
    bench.wait_until(|bench| bench.says("Room of Flange diameter: no value without a clash"));
    let choice = bench.window.get_by_label("leave out what clashes now");
    choice.scroll_to_me();
    bench.window.run_steps(4);
    bench
        .window
        .get_by_label("leave out what clashes now")
        .click();
    bench.window.run_steps(2);
    show_flange(&mut bench);
    bench.wait_until(|bench| bench.says("Room of Flange diameter: no clash from"));
}

#[test]
fn the_menu_takes_the_bars_away() {
    let mut bench = Bench::with_room();
    bench.wait_until(|bench| bench.says(BAR));
    bench.menu("View", "Room to move on or off");
    assert!(!bench.says("Room of") && !bench.says("room: "));
}
