//! The page Workshop: edited by keyboard, kept apart from the design, and refused where a value makes no sense.

use egui::accesskit::Role;
use egui_kittest::kittest::Queryable as _;
use flangewright::app::own_folder::{read_workshop, workshop_file};
use flangewright::app::page::Page;
use flangewright::workshop::{Dials, Workshop};

use crate::bench::Bench;

fn bench() -> Bench {
    let mut bench = Bench::new();
    bench.show(Page::Workshop);
    bench
}

#[test]
fn a_number_is_changed_refused_and_taken_back() {
    let mut bench = bench();
    let pitch = |bench: &Bench| bench.workspace().workshop().lathe.leadscrew_pitch_mm;
    bench.enter("Leadscrew pitch", "0.125 in");
    assert!((pitch(&bench) - 3.175).abs() < 1e-12);
    bench.enter("Leadscrew pitch", "4");
    assert!((pitch(&bench) - 4.0).abs() < 1e-12);
    bench.enter("Leadscrew pitch", "-4");
    assert!(bench.says("refused: leadscrew pitch: -4.00 mm is refused; allowed is 0.50 mm"));
    assert!((pitch(&bench) - 4.0).abs() < 1e-12);
    bench.click("Undo");
    bench.click("Undo");
    assert!((pitch(&bench) - 3.0).abs() < 1e-12);
    assert!(!bench.workspace().is_changed(), "the design is not touched");
    bench.click("Redo");
    bench.click("Redo");
    assert!((pitch(&bench) - 4.0).abs() < 1e-12);
}

#[test]
fn lists_choices_and_names_are_changed() {
    let mut bench = bench();
    bench.enter("Change gears, teeth", "20, 40 60");
    bench.enter("Lathe speeds, rpm", "55 110 220");
    bench.enter("end mill 1, name", "long mill");
    bench.enter("long mill, Ø", "3,98");
    bench.choose("Dials of the lathe in", "inches");
    let shop = bench.workspace().workshop();
    assert_eq!(shop.lathe.change_gears, [20, 40, 60]);
    assert_eq!(shop.lathe.spindle_rpm, [55.0, 110.0, 220.0]);
    assert_eq!(shop.cutters[0].name, "long mill");
    assert!((shop.cutters[0].diameter_mm - 3.98).abs() < 1e-12);
    assert_eq!(shop.lathe.dials, Dials::Inch);
    bench
        .window
        .get_by_role_and_label(
            Role::CheckBox,
            "the force of a jaw follows from the chuck's key",
        )
        .click();
    bench.window.run();
    bench.enter("Torque on the key", "2500");
    let key = bench.workspace().workshop().chuck.key.unwrap();
    assert!((key.torque_nmm - 2500.0).abs() < 1e-12);
    bench.enter("Share not lost to friction", "2");
    assert!(bench.says("chuck key, efficiency: 2.00 is refused; allowed is 0.01 to 1.00"));
    bench.enter("Lathe speeds, rpm", "220 110");
    assert!(bench.says("each speed once, lowest first"));
    bench.enter("end mill 2, name", "long mill");
    assert!(bench.says("each name once"));
}

#[test]
fn rows_are_added_and_removed_and_the_shipped_set_comes_back() {
    let mut bench = bench();
    let count = |bench: &Bench| bench.workspace().workshop().instruments.len();
    let before = count(&bench);
    bench.press_by_key("Add instrument");
    assert_eq!(count(&bench), before + 1);
    bench.press_by_key("remove caliper 0.02");
    assert_eq!(count(&bench), before);
    bench.press_by_key("Back to the shipped set");
    assert_eq!(
        *bench.workspace().workshop(),
        Workshop::default_set().unwrap()
    );
    bench.click("Undo");
    assert!(
        bench
            .workspace()
            .workshop()
            .instruments
            .iter()
            .all(|one| one.name != "caliper 0.02")
    );
}

#[test]
fn the_page_says_what_the_design_assumes_and_what_is_missing() {
    let mut bench = bench();
    assert!(bench.says("The open design assumes:") && bench.says("aluminium 6061-T6"));
    assert!(bench.says("changes last till the window closes"));
    let cutter = bench.workspace().design().ring.cutter.clone();
    let named = if cutter.is_empty() {
        "end mill 4"
    } else {
        cutter.as_str()
    }
    .to_owned();
    bench.press_by_key(&format!("remove {named}"));
    let other = &bench.workspace().workshop().cutters[0].name;
    assert!(bench.says(other));
    if !cutter.is_empty() {
        assert!(bench.says("which is not there"));
    }
}

#[test]
fn every_change_is_kept_in_the_users_own_file_and_read_at_the_next_start() {
    let home = tempfile::tempdir().unwrap();
    let mut first = Bench::with_own_folder(home.path());
    first.show(Page::Workshop);
    assert!(first.says("workshop.ron"));
    first.enter("Leadscrew pitch", "2.5");
    let kept = read_workshop(&workshop_file(home.path())).unwrap();
    assert!((kept.lathe.leadscrew_pitch_mm - 2.5).abs() < 1e-12);
    let second = Bench::with_own_folder(home.path());
    assert_eq!(*second.workspace().workshop(), kept);
}

#[test]
fn a_file_that_cannot_be_read_is_never_written_over() {
    let home = tempfile::tempdir().unwrap();
    let file = workshop_file(home.path());
    std::fs::write(&file, "(format: 1, lathe: nothing").unwrap();
    let mut bench = Bench::with_own_folder(home.path());
    bench.show(Page::Workshop);
    assert!(bench.says("is left alone"));
    bench.enter("Leadscrew pitch", "2.5");
    assert_eq!(
        std::fs::read_to_string(&file).unwrap(),
        "(format: 1, lathe: nothing"
    );
}

#[test]
fn a_changed_cutter_is_evaluated_at_once() {
    let mut bench = bench();
    let lugs = |bench: &Bench| {
        let ring = bench.workspace().evaluation().derivation.ring.clone();
        ring.unwrap().cutter_radius
    };
    let before = lugs(&bench);
    let cutter = bench.workspace().design().ring.cutter.clone();
    let shop = bench.workspace().workshop();
    let name = shop.cutter(&cutter).unwrap().name.clone();
    bench.enter(&format!("{name}, Ø"), "3.5");
    assert!((lugs(&bench) - 1.75).abs() < 1e-12 && (before - 1.75).abs() > 0.1);
}

#[test]
fn nothing_is_cut_off_in_a_small_window() {
    let mut bench = Bench::sized(&crate::bench::demo("archive_portrait.ron"), 1024.0, 700.0);
    bench.show(Page::Workshop);
    for node in bench.window.query_all_by_role(Role::TextInput) {
        let rect = node.rect();
        assert!(rect.right() <= 1024.0 && rect.left() >= 0.0, "{rect:?}");
    }
}

/// The workshop is one for all open designs: what is changed under one tab holds under the other.
#[test]
fn another_tab_works_with_the_changed_workshop() {
    let mut bench = bench();
    bench.enter("Leadscrew pitch", "4");
    bench
        .window
        .state_mut()
        .open(&crate::bench::demo("tall_ring.ron"));
    bench.window.run();
    assert!((bench.workspace().workshop().lathe.leadscrew_pitch_mm - 4.0).abs() < 1e-12);
}
