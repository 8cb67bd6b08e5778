//! The pages Optics and Tolerance.

use egui_kittest::kittest::Queryable as _;
use flangewright::app::page::Page;
use flangewright::mount::{Interface, LensField};

use crate::bench::{Bench, demo};

#[test]
fn light_and_sharpness_are_plotted_and_told_in_words() {
    let mut bench = Bench::new();
    bench.show(Page::Optics);
    assert!(bench.says("Light over the image height"));
    // 21.63 mm is half the diagonal of 36 x 24; cos⁴ at 60 mm leaves 0.783 of the light, 0.35 stops less.
    assert!(bench.says("corner, 21.63 mm from the middle, at f/2"));
    assert!(bench.says("slant takes 0.35 stops"));
    // c = 43.27 / 1500 = 28.8 µm, N c = 0.058 at f/2.
    assert!(bench.says("depth of focus of ±0.058 mm at f/2"));
    assert!(bench.says("infinity is sharp at the infinity mark"));
}

#[test]
fn a_thick_ring_says_how_far_it_is_sharp_and_shows_its_working() {
    let mut bench = Bench::new();
    bench.enter("Seat height", "1.51");
    bench.show(Page::Optics);
    // Thin lens: 58² / 0.05 + 58 mm = 67.34 m.
    assert!(bench.says("67.34 m"));
    assert!(bench.says("infinity is not reached"));
    bench.click("Working of Farthest sharp distance");
    assert!(bench.says("source: thin-lens equation"));
    assert!(bench.says("holds if the distance is counted from the front principal plane"));
    bench
        .window
        .query_all_by_label_contains("lens focal length 58.00 mm")
        .last()
        .unwrap()
        .click();
    bench.window.run();
    assert!(bench.says("Half-section"), "the link leads to the design");
    let focal = bench
        .window
        .get_by_role_and_label(egui::accesskit::Role::TextInput, "Focal length");
    assert!(focal.is_focused());
}

#[test]
fn unknown_optics_say_what_to_measure() {
    let folder = tempfile::tempdir().unwrap();
    let mut design = flangewright::app::files::open_design(&demo("archive_portrait.ron")).unwrap();
    for key in [
        LensField::FNumber,
        LensField::ExitPupilDistance,
        LensField::PupilMagnification,
    ] {
        *design.lens.field_mut(key) = Interface::Unknown;
    }
    let path = folder.path().join("dark.ron");
    flangewright::app::files::save_design(&path, &design).unwrap();
    let mut bench = Bench::sized(&path, 1280.0, 800.0);
    bench.show(Page::Optics);
    assert!(bench.says("To measure first:"));
    assert!(bench.says("Look in from behind: distance of the iris image"));
    assert!(bench.says("measure lens widest f-number"));
    bench.show(Page::Tolerance);
    assert!(bench.says("not known without the depth of focus"));
}

#[test]
fn the_mark_of_the_scale_is_typed_and_refused_where_no_lens_focuses() {
    let mut bench = Bench::new();
    bench.show(Page::Optics);
    bench.enter("Mark of the distance scale", "100");
    // Four focal lengths of 58 mm.
    assert!(bench.says("give a mark from 0.232 m on"));
    bench.enter("Mark of the distance scale", "-3");
    assert!(bench.says("refused:"));
    assert!(!bench.workspace().is_changed());
}

#[test]
fn the_stack_tells_its_parts_and_what_reaches_infinity() {
    let mut bench = Bench::new();
    bench.show(Page::Tolerance);
    for words in [
        "seat height",
        "body register",
        "lens register",
        "growth with warmth",
        "worst case",
        "root sum square",
        "standard uncertainty",
        "of such rings reach infinity",
    ] {
        assert!(bench.says(words), "{words}");
    }
}

#[test]
fn a_trial_runs_off_the_frame_and_goes_stale_with_the_design() {
    let mut bench = Bench::new();
    bench.show(Page::Tolerance);
    bench.press_button("Run the trial");
    bench.wait_until(|bench| bench.says("rings in "));
    assert!(bench.says("1 000 000 rings in "));
    assert!(bench.says("the shortest such interval"));
    assert!(!bench.says("The design has changed since"));
    // At rest again: no frame asks for another one.
    assert!(bench.window.run() <= 2);
    bench.show(Page::Design);
    bench.enter("Seat height", "1.5");
    bench.show(Page::Tolerance);
    assert!(bench.says("The design has changed since"));
}

#[test]
fn a_long_trial_is_called_off() {
    let mut bench = Bench::new();
    bench.show(Page::Tolerance);
    bench
        .window
        .get_by_role_and_label(egui::accesskit::Role::ComboBox, "Rings")
        .click();
    bench.window.run();
    bench.window.get_by_label("10 000 000").click();
    bench.window.run();
    bench.press_button("Run the trial");
    bench.wait_until(|bench| bench.window.query_by_label("Call it off").is_some());
    bench.press_button("Call it off");
    bench.wait_until(|bench| bench.says("was stopped before its end"));
    assert!(!bench.says("10 000 000 rings in"));
}
