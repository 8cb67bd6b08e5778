//! Opening, saving, exporting, and never losing work.

use std::fs;

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use flangewright::app::chooser::FileAnswer;
use flangewright::app::files::open_design;
use flangewright::document::RingKey;

use crate::bench::{Bench, demo};

#[test]
fn a_broken_file_leaves_the_design_untouched() {
    let folder = tempfile::tempdir().unwrap();
    let broken = folder.path().join("broken.ron");
    fs::write(&broken, "(format: 1, lens: (regis").unwrap();
    let mut bench = Bench::new();
    let before = bench.workspace().design().clone();
    bench
        .script
        .answers
        .borrow_mut()
        .push_back(FileAnswer::Chosen(broken));
    bench.press(Modifiers::COMMAND, Key::O);
    assert!(bench.says("broken.ron"));
    assert_eq!(bench.workspace().design(), &before);
}

#[test]
fn a_path_can_be_typed_where_there_is_no_dialog() {
    let mut bench = Bench::new();
    bench
        .script
        .answers
        .borrow_mut()
        .push_back(FileAnswer::Unavailable("none here".to_owned()));
    bench.press(Modifiers::COMMAND, Key::O);
    assert!(bench.says("The file dialog is not available: none here"));
    let path = demo("tall_ring.ron").display().to_string();
    bench.write("Path", &path);
    bench.press(Modifiers::NONE, Key::Enter);
    assert_eq!(
        bench.workspace().design(),
        &open_design(&demo("tall_ring.ron")).unwrap()
    );
    assert!(bench.window.query_by_label("Path").is_none());
}

#[test]
fn unsaved_work_is_asked_about() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.5");
    bench.press(Modifiers::COMMAND, Key::W);
    assert!(bench.says("Unsaved changes") && bench.says("before it is closed"));
    bench.click("Cancel");
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);

    bench.press(Modifiers::COMMAND, Key::W);
    bench.click("Discard");
    assert!(bench.workspace().is_untouched());
}

#[test]
fn save_in_the_question_saves_first_and_goes_on() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mine.ron");
    fs::copy(demo("archive_portrait.ron"), &path).unwrap();
    let mut bench = Bench::sized(&path, 1280.0, 800.0);
    bench.enter("Seat height", "1.5");
    bench.press(Modifiers::COMMAND, Key::W);
    assert!(bench.says("Unsaved changes"));
    // The button of the menu bar has the same name; the question's is the last one drawn.
    bench
        .window
        .query_all_by_role_and_label(egui::accesskit::Role::Button, "Save")
        .last()
        .unwrap()
        .click();
    bench.window.run();
    assert!(bench.workspace().is_untouched());
    let saved = open_design(&path).unwrap();
    assert_eq!(
        saved.ring.dimensions.get(RingKey::SeatHeight).value.set(),
        Some(&1.5)
    );
}

#[test]
fn save_as_asks_before_it_replaces() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("there.ron");
    fs::write(&path, "something of mine").unwrap();
    let mut bench = Bench::new();
    bench
        .script
        .answers
        .borrow_mut()
        .push_back(FileAnswer::Unavailable("none here".to_owned()));
    bench.press(Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    bench.write("Path", &path.display().to_string());
    bench.press(Modifiers::NONE, Key::Enter);
    assert!(bench.says("is there already"));
    assert_eq!(fs::read_to_string(&path).unwrap(), "something of mine");
    bench.click("Replace");
    assert_eq!(&open_design(&path).unwrap(), bench.workspace().design());
    assert_eq!(bench.workspace().path(), Some(path.as_path()));
}

#[test]
fn text_being_typed_is_in_the_file_that_a_key_saves() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mine.ron");
    fs::copy(demo("archive_portrait.ron"), &path).unwrap();
    let mut bench = Bench::sized(&path, 1280.0, 800.0);
    bench.write("Seat height", "1.48");
    bench.press(Modifiers::COMMAND, Key::S);
    let saved = open_design(&path).unwrap();
    assert_eq!(
        saved.ring.dimensions.get(RingKey::SeatHeight).value.set(),
        Some(&1.48)
    );
    assert!(!bench.workspace().is_changed());
}

#[test]
fn the_drawing_is_written_and_never_over_another_file_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.png");
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.46");
    bench.press(Modifiers::COMMAND, Key::E);
    bench.enter("Dots to the inch", "96");
    bench.write("Path", &path.display().to_string());
    bench.press(Modifiers::NONE, Key::Enter);
    bench.wait_until(|bench| bench.says("written to"));
    assert!(bench.says("ring.png"));
    let first = fs::read(&path).unwrap();
    assert_eq!(&first[..8], b"\x89PNG\r\n\x1a\n");

    fs::write(&path, "something of mine").unwrap();
    bench.press(Modifiers::COMMAND, Key::E);
    bench.write("Path", &path.display().to_string());
    bench.click("Write PNG");
    assert_eq!(fs::read_to_string(&path).unwrap(), "something of mine");
    bench.press_button("Replace");
    bench.wait_until(|_| fs::read(&path).unwrap() == first);
}

#[test]
fn the_ending_says_what_is_written_and_an_unknown_one_is_refused_in_the_panel() {
    let folder = tempfile::tempdir().unwrap();
    let mut bench = Bench::new();
    bench.press(Modifiers::COMMAND, Key::E);
    let unknown = folder.path().join("ring.dwg");
    bench.write("Path", &unknown.display().to_string());
    bench.press(Modifiers::NONE, Key::Enter);
    assert!(bench.says(".png, .svg, .pdf, .dxf, .3mf or .stl"));
    assert!(!unknown.exists());
    for (ending, head) in [("pdf", "%PDF"), ("stl", "Flangewright")] {
        let path = folder.path().join(format!("ring.{ending}"));
        bench.write("Path", &path.display().to_string());
        bench.click(&format!("Write {}", ending.to_uppercase()));
        bench.wait_until(|bench| bench.says(&format!("ring.{ending}")) && path.exists());
        assert!(fs::read(&path).unwrap().starts_with(head.as_bytes()));
        bench.press(Modifiers::COMMAND, Key::E);
    }
}

#[test]
fn closing_asks_only_when_something_would_be_lost() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.5");
    let close = egui::ViewportEvent::Close;
    let id = egui::ViewportId::ROOT;
    bench
        .window
        .input_mut()
        .viewports
        .entry(id)
        .or_default()
        .events
        .push(close);
    bench.window.step();
    bench
        .window
        .input_mut()
        .viewports
        .entry(id)
        .or_default()
        .events
        .clear();
    bench.window.run();
    assert!(bench.says("Unsaved changes") && bench.says("the window closes"));
}

#[test]
fn a_new_design_can_be_a_copy_of_an_invented_one() {
    let mut bench = Bench::new();
    bench.press(Modifiers::COMMAND, Key::N);
    let demos = flangewright::document::demo_designs().unwrap();
    assert_eq!(demos.len(), 4);
    bench.click(&demos[1].name);
    assert_eq!(bench.workspace().design(), &demos[1]);
    assert!(bench.workspace().path().is_none() && bench.workspace().is_changed());
}

#[test]
fn what_was_saved_is_told_in_sight() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mine.ron");
    fs::copy(demo("archive_portrait.ron"), &path).unwrap();
    for (width, height) in [(1280.0, 800.0), (1024.0, 700.0)] {
        let mut bench = Bench::sized(&path, width, height);
        bench.enter("Lens name", "another");
        bench.press(Modifiers::COMMAND, Key::S);
        for _ in 0..4 {
            bench.window.step();
        }
        let said = bench.window.get_by_label_contains("saved to ").rect();
        let whole = egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(width, height));
        assert!(whole.contains_rect(said), "{said:?} in {whole:?}");
        let button = bench.window.get_by_label_contains("Show the file").rect();
        assert!(
            said.y_range().contains(button.center().y),
            "{said:?} beside {button:?}"
        );
    }
}
