//! Edges, lugs and dimensions in the hand: dragged, given up, nudged, typed into, told about.

use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2, Vec2, vec2};
use egui_kittest::kittest::Queryable as _;
use flangewright::app::page::Page;
use flangewright::document::{Choice, RingKey};
use flangewright::geometry::Point;

use crate::bench::Bench;

const SECTION: &str = "Half-section drawing";
const PLAN: &str = "Plan of the lugs";

impl Bench {
    fn press_at(&mut self, at: Pos2) {
        self.window.hover_at(at);
        self.window.step();
        self.window.drag_at(at);
        self.window.step();
    }

    fn move_to(&mut self, at: Pos2) {
        self.window.hover_at(at);
        self.window.step();
        self.window.step();
    }

    fn let_go_at(&mut self, at: Pos2) {
        self.window.drop_at(at);
        self.window.run_steps(3);
    }

    fn double_click_at(&mut self, at: Pos2) {
        // A frame of a test is a quarter of a second: too slow a hand for a double click as the window has it.
        self.window
            .ctx
            .options_mut(|options| options.input_options.max_double_click_delay = 10.0);
        for _ in 0..2 {
            self.press_at(at);
            self.let_go_at(at);
        }
        self.window.run();
    }

    /// Where the picked edge is on the screen: picks edges by the keyboard until this dimension is picked.
    fn pick(&mut self, canvas: &str, label: &str) {
        self.window.get_by_label(canvas).focus();
        self.window.run();
        for _ in 0..40 {
            self.press(Modifiers::NONE, Key::PageDown);
            if self.beside(label) {
                return;
            }
        }
        panic!("no edge of {label}");
    }

    /// Whether the words beside the hand are of this name: name, number, unit.
    fn beside(&self, label: &str) -> bool {
        self.window.query_all_by_label_contains(label).any(|node| {
            let words = node.value().unwrap_or_default();
            let number = words
                .strip_prefix(label)
                .and_then(|rest| rest.strip_prefix(' '));
            number.is_some_and(|rest| {
                rest.starts_with(|first: char| first.is_ascii_digit() || first == '-')
            })
        })
    }

    /// A place of the half-section on the screen, by two edges whose places are known.
    fn on_section(&self, z: f64, r: f64) -> Pos2 {
        let way = self.window.state().section_way().unwrap();
        way.at(Point { x: z, y: r })
    }
}

fn set(bench: &Bench, key: RingKey) -> Choice<f64> {
    bench.workspace().design().ring.dimensions.get(key).value
}

/// Half the flange diameter, and where the middle of the rim is.
fn rim(bench: &Bench) -> Pos2 {
    let plate = bench.size(RingKey::PlateThickness);
    bench.on_section(-plate / 2.0, bench.size(RingKey::FlangeDiameter) / 2.0)
}

#[test]
fn the_rim_is_dragged_in_whole_steps_and_undone_as_one() {
    let mut bench = Bench::new();
    let before = bench.size(RingKey::FlangeDiameter);
    let from = rim(&bench);
    bench.press_at(from);
    for down in [4.0, 9.0, 17.0] {
        bench.move_to(from + vec2(1.0, down));
        assert!(
            bench.says("Flange diameter"),
            "the value is told beside the hand"
        );
    }
    assert!(bench.says(", was 63.00"));
    bench.let_go_at(from + vec2(1.0, 17.0));
    let after = bench.size(RingKey::FlangeDiameter);
    assert!(after < before - 0.5, "{after}");
    assert!(
        (after / 0.05 - (after / 0.05).round()).abs() < 1e-6,
        "{after}"
    );
    bench.press(Modifiers::COMMAND, Key::Z);
    assert_eq!(set(&bench, RingKey::FlangeDiameter), Choice::Derived);
}

#[test]
fn escape_in_the_middle_of_a_drag_puts_the_old_value_back() {
    let mut bench = Bench::new();
    let from = rim(&bench);
    bench.press_at(from);
    bench.move_to(from + vec2(0.0, 25.0));
    assert!(set(&bench, RingKey::FlangeDiameter) != Choice::Derived);
    bench.window.key_press(Key::Escape);
    bench.window.run_steps(2);
    assert_eq!(set(&bench, RingKey::FlangeDiameter), Choice::Derived);
    // The hand is empty though the button is still down.
    bench.move_to(from + vec2(0.0, 60.0));
    bench.let_go_at(from + vec2(0.0, 60.0));
    assert_eq!(set(&bench, RingKey::FlangeDiameter), Choice::Derived);
    assert!(!bench.workspace().can_undo());
}

#[test]
fn a_double_click_on_an_edge_opens_a_field_at_the_pointer() {
    let mut bench = Bench::new();
    let at = rim(&bench);
    bench.double_click_at(at);
    let boxes = bench
        .window
        .query_all_by_role_and_label(Role::TextInput, "Flange diameter");
    assert_eq!(
        boxes.count(),
        2,
        "that of the column and that at the pointer"
    );
    bench.window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.window.event(egui::Event::Text("62,4".to_owned()));
    bench.press(Modifiers::NONE, Key::Enter);
    assert!((bench.size(RingKey::FlangeDiameter) - 62.4).abs() < 1e-12);
    assert!(!bench.says("Enter takes it"));
}

#[test]
fn a_value_that_cannot_be_is_refused_in_the_field_at_the_pointer() {
    let mut bench = Bench::new();
    bench.pick(SECTION, "Lip bore");
    bench.press(Modifiers::NONE, Key::Enter);
    bench.window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.window.event(egui::Event::Text("9e9".to_owned()));
    bench.press(Modifiers::NONE, Key::Enter);
    assert!(bench.says("refused:"));
    bench.press(Modifiers::NONE, Key::Escape);
    assert_eq!(set(&bench, RingKey::LipBore), Choice::Derived);
    assert!(!bench.says("Enter takes it"));
}

#[test]
fn the_keyboard_alone_picks_and_nudges_an_edge() {
    let mut bench = Bench::new();
    bench.pick(SECTION, "Lip bore");
    let before = bench.size(RingKey::LipBore);
    // The lip bore is a radius upward: the arrow up makes it larger.
    bench.press(Modifiers::NONE, Key::ArrowUp);
    let once = bench.size(RingKey::LipBore);
    assert!(
        once > before && once - before <= 0.05 + 1e-9,
        "{before} {once}"
    );
    bench.press(Modifiers::SHIFT, Key::ArrowUp);
    assert!((bench.size(RingKey::LipBore) - once - 0.01).abs() < 1e-9);
    // Along the edge it does not go.
    bench.press(Modifiers::NONE, Key::ArrowLeft);
    assert!((bench.size(RingKey::LipBore) - once - 0.01).abs() < 1e-9);
    // Escape lets go; then the arrows move the picture again.
    bench.press(Modifiers::NONE, Key::Escape);
    bench.press(Modifiers::NONE, Key::ArrowUp);
    assert!((bench.size(RingKey::LipBore) - once - 0.01).abs() < 1e-9);
    assert!(bench.workspace().can_undo());
}

#[test]
fn every_edge_can_be_picked_by_the_keyboard() {
    let mut bench = Bench::new();
    bench.window.get_by_label(SECTION).focus();
    bench.window.run();
    let mut picked = std::collections::BTreeSet::new();
    for _ in 0..24 {
        bench.press(Modifiers::NONE, Key::PageDown);
        for key in RingKey::ALL {
            if bench.beside(key.label()) {
                picked.insert(key.label());
            }
        }
    }
    for label in [
        "Seat height",
        "Flange diameter",
        "Groove width",
        "Lug diameter",
        "Spigot length",
        "Lip bore",
        "Thread length",
    ] {
        assert!(picked.contains(label), "{label}: {picked:?}");
    }
}

#[test]
fn a_lug_is_turned_and_ended_in_whole_degrees() {
    let mut bench = Bench::new();
    bench.pick(PLAN, "Lug 1 ends at");
    let lugs = |bench: &Bench| {
        let ring = bench.workspace().evaluation().derivation.ring.clone();
        ring.unwrap().lugs
    };
    let before = lugs(&bench);
    bench.press(Modifiers::NONE, Key::ArrowLeft);
    let after = lugs(&bench);
    let (first, was) = (after[0], before[0]);
    assert!(
        (first.start_deg - was.start_deg).abs() < 1e-9,
        "the beginning stays"
    );
    let end = first.end_deg().rem_euclid(360.0);
    assert!((end - end.round()).abs() < 1e-9 && first.extent_deg < was.extent_deg);
    assert_eq!(after.len(), before.len());
    assert_eq!(after[1], before[1]);
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!(bench.workspace().design().ring.lugs.is_derived());
}

#[test]
fn pointing_at_an_edge_tells_name_value_rule_and_standing() {
    let mut bench = Bench::new();
    let at = rim(&bench);
    bench.window.hover_at(at);
    bench.window.run_steps(12);
    for part in [
        "rim",
        "Flange diameter: 63.00 mm",
        "by its rule: outer diameter",
        "stands well",
        "double-click to type",
    ] {
        assert!(bench.says(part), "{part}");
    }
}

#[test]
fn a_dimension_of_the_sheet_is_typed_into_where_it_is_drawn() {
    let mut bench = Bench::new();
    bench.show(Page::Drawing);
    bench.pick("Drawing as it prints", "Seat height");
    bench.press(Modifiers::NONE, Key::Enter);
    bench.window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.window.event(egui::Event::Text("1.5".to_owned()));
    bench.press(Modifiers::NONE, Key::Enter);
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);
    bench.press(Modifiers::NONE, Key::ArrowUp);
    assert!((bench.size(RingKey::SeatHeight) - 1.55).abs() < 1e-12);
}

#[test]
fn a_dimension_on_its_way_over_the_sheet_goes_back_on_escape() {
    let mut bench = Bench::new();
    bench.show(Page::Drawing);
    let id = flangewright::document::DimensionId::Thread;
    let from = bench.on_screen(id);
    bench.press_at(from);
    bench.move_to(from + Vec2::new(30.0, 20.0));
    assert!(bench.workspace().design().sheet.moved_mm(id) != (0.0, 0.0));
    bench.window.key_press(Key::Escape);
    bench.window.run_steps(2);
    assert_eq!(bench.workspace().design().sheet.moved_mm(id), (0.0, 0.0));
    bench.let_go_at(from + Vec2::new(30.0, 20.0));
    assert!(!bench.workspace().can_undo());
}
