//! The page Measure, and the user's own mounts.

use std::fs;

use egui::accesskit::Role;
use egui_kittest::kittest::Queryable as _;
use flangewright::app::chooser::FileAnswer;
use flangewright::app::own_folder::{mounts_file, read_mounts, workshop_file};
use flangewright::app::page::Page;
use flangewright::mount::{Interface, Known, LensField, Origin};

use crate::bench::{Bench, demo};

fn shoulder(bench: &Bench) -> Known<f64> {
    match bench
        .workspace()
        .design()
        .lens
        .field(LensField::ShoulderDiameter)
    {
        Interface::Known(known) => known.clone(),
        Interface::Unknown => panic!("unknown"),
    }
}

#[test]
fn readings_become_the_value_with_their_uncertainty() {
    let mut bench = Bench::new();
    bench.show(Page::Measure);
    bench.click("lens shoulder diameter, measured");
    assert!(bench.says("Caliper across the flat shoulder face"));
    assert!(
        bench
            .window
            .query_by_label("Sketch: lens shoulder diameter")
            .is_some()
    );
    for reading in ["52.00", "52,04", "52.02"] {
        bench.enter("next reading", reading);
    }
    let known = shoulder(&bench);
    assert!((known.value - 52.02).abs() < 1e-9);
    // JCGM 100 4.2: s = 0.02, u = 0.02 / √3; the caliper's ±0.02 adds 0.02 / √3 (4.3.7).
    let by_hand = (2.0 * 0.02_f64.powi(2) / 3.0).sqrt();
    assert!(
        (known.uncertainty - by_hand).abs() < 1e-9,
        "{}",
        known.uncertainty
    );
    let expected = Origin::Measured {
        readings: vec![52.0, 52.04, 52.02],
        instrument: "caliper 0.02".to_owned(),
    };
    assert_eq!(known.origin, expected);
    bench.click("remove reading 2");
    assert!((shoulder(&bench).value - 52.01).abs() < 1e-9);
    bench.click("Undo");
    assert!((shoulder(&bench).value - 52.02).abs() < 1e-9);
    bench.enter("next reading", "about two");
    assert!(bench.says("was not understood"));
}

#[test]
fn ears_and_barrel_steps_are_read_as_often_as_one_likes() {
    let mut bench = Bench::new();
    bench.show(Page::Measure);
    bench.press_by_key("body ears, measured");
    bench.click("ear 2, start, not read");
    for reading in ["120,2", "120.4", "120.3"] {
        bench.enter("next reading", reading);
    }
    let ears = |bench: &Bench| {
        bench
            .workspace()
            .design()
            .body
            .ears
            .value()
            .unwrap()
            .clone()
    };
    assert!((ears(&bench)[1].start_deg - 120.3).abs() < 1e-9);
    // JCGM 100 4.2: s = 0.1, type A 0.1 / √3.
    assert!(bench.says("ear 2, start, 3 readings") && bench.says("0.0577"));
    bench.click("remove reading 1");
    assert!((ears(&bench)[1].start_deg - 120.35).abs() < 1e-9);
    bench.click("Undo");
    assert!((ears(&bench)[1].start_deg - 120.3).abs() < 1e-9);
    bench.press_by_key("lens rear barrel at infinity, measured");
    bench.click("step 1, diameter, not read");
    bench.enter("next reading", "36.1");
    let readings = &bench.workspace().design().lens.row_readings;
    assert_eq!(
        (readings.len(), readings[0].values.as_slice()),
        (1, [36.1].as_slice())
    );
}

#[test]
fn a_value_leads_to_its_sketch_from_its_row() {
    let mut bench = Bench::new();
    bench.click("Origin of Male thread length: measured");
    bench.click("Measure lens male thread length");
    assert!(
        bench
            .window
            .query_by_label("Sketch: lens male thread length")
            .is_some()
    );
}

#[test]
fn every_value_has_a_sketch_that_holds_in_the_small_window() {
    let mut bench = Bench::sized(&demo("archive_portrait.ron"), 1024.0, 700.0);
    bench.show(Page::Measure);
    for key in LensField::ALL {
        let name = format!("lens {}", lower(key.label()));
        bench
            .window
            .query_all_by_label_contains(&format!("{name}, "))
            .next()
            .unwrap()
            .click();
        bench.window.run();
        let rect = bench.window.get_by_label(&format!("Sketch: {name}")).rect();
        assert!(
            rect.width() > 300.0 && rect.height() > 300.0,
            "{name}: {rect:?}"
        );
    }
}

fn lower(label: &str) -> String {
    let mut letters = label.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

#[test]
fn a_kept_lens_is_read_back_and_its_name_is_asked_about() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::with_own_folder(home.path());
    bench.show(Page::Measure);
    bench.click("Keep the lens in my mounts");
    assert!(bench.says("kept in"));
    let file = mounts_file(home.path());
    assert_eq!(read_mounts(&file).unwrap().lenses.len(), 1);

    bench.click("Keep the lens in my mounts");
    assert!(bench.says("This lens is there already"));
    bench.click("Cancel");
    assert_eq!(read_mounts(&file).unwrap().lenses.len(), 1);

    bench.click("Keep the lens in my mounts");
    bench.click("Keep both");
    let names: Vec<String> = read_mounts(&file)
        .unwrap()
        .lenses
        .into_iter()
        .map(|lens| lens.name)
        .collect();
    assert_eq!(
        names,
        ["archive portrait lens 58", "archive portrait lens 58 (2)"]
    );

    bench.click("Keep the lens in my mounts");
    bench.click("Replace");
    assert_eq!(read_mounts(&file).unwrap().lenses.len(), 2);

    let mut again = Bench::with_own_folder(home.path());
    again.press(egui::Modifiers::COMMAND, egui::Key::N);
    assert!(
        again
            .window
            .query_by_role_and_label(Role::RadioButton, "archive portrait lens 58 (2)")
            .is_some()
    );
}

#[test]
fn imported_mounts_are_asked_about_one_by_one() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::with_own_folder(home.path());
    bench.show(Page::Measure);
    bench.click("Keep the lens in my mounts");
    let list = home.path().join("from a friend.ron");
    fs::write(
        &list,
        "(lenses: [(name: \"a new one\"), (name: \"archive portrait lens 58\", notes: \"theirs\")])",
    )
    .unwrap();
    bench
        .script
        .answers
        .borrow_mut()
        .push_back(FileAnswer::Chosen(list));
    bench.click("Import mounts…");
    assert!(bench.says("This lens is there already"));
    bench.click("Replace");
    let kept = read_mounts(&mounts_file(home.path())).unwrap();
    assert_eq!(kept.lenses.len(), 2);
    assert!(kept.lenses.iter().any(|lens| lens.notes == "theirs"));
}

#[test]
fn the_own_workshop_is_read_and_a_broken_one_is_told() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::with_own_folder(home.path());
    bench.menu("File", "Write the workshop file");
    assert!(bench.says("the shipped workshop stands in"));
    let file = workshop_file(home.path());
    let text = fs::read_to_string(&file).unwrap();
    fs::write(&file, text.replace("caliper 0.02", "my old caliper")).unwrap();
    drop(bench);
    let own = Bench::with_own_folder(home.path());
    assert!(
        own.workspace()
            .workshop()
            .instruments
            .iter()
            .any(|one| one.name == "my old caliper")
    );

    drop(own);
    fs::write(&file, "(format: 1, lathe").unwrap();
    let broken = Bench::with_own_folder(home.path());
    assert!(broken.says("The shipped workshop is used until the file is repaired"));
    assert!(
        broken
            .workspace()
            .workshop()
            .instruments
            .iter()
            .any(|one| one.name == "caliper 0.02")
    );
}
