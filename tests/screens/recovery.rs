//! Work that was not saved when the program was cut short.

use std::fs;
use std::path::Path;

use egui::{Key, Modifiers};
use flangewright::app::files::open_design;
use flangewright::document::RingKey;

use crate::bench::{Bench, demo};

fn kept(folder: &Path) -> Vec<String> {
    let listed = fs::read_dir(folder.join("recovery")).into_iter().flatten();
    let names = listed.map(|entry| entry.unwrap().file_name().into_string().unwrap());
    names.filter(|name| name.contains(".ron")).collect()
}

/// A window on a copy of the demo in which something is changed, cut short.
fn crashed(own: &Path, file: &Path, seat_height: &str) {
    fs::copy(demo("archive_portrait.ron"), file).unwrap();
    let mut bench = Bench::on_file(file, own);
    if bench.says("Unsaved work") {
        bench.click("Later");
    }
    bench.enter("Seat height", seat_height);
    bench.wait_until(|_| !kept(own).is_empty());
    // The window goes without having been closed.
    drop(bench);
}

#[test]
fn after_a_crash_the_work_is_asked_about_and_brought_back_unsaved() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let file = folder.path().join("Blende für 58 100%.ron");
    crashed(own.path(), &file, "1.5");

    let mut bench = Bench::with_own_folder(own.path());
    assert!(bench.says("Unsaved work") && bench.says("Blende für 58 100%"));
    assert!(bench.says(&format!("of the file {}", file.display())));
    assert!(bench.says(" ago, ") && bench.says("UTC"));
    bench.click("Restore");
    assert!(!bench.says("The program was cut short"));
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);
    assert!(bench.workspace().is_changed());
    assert_eq!(bench.workspace().path(), Some(file.as_path()));
    // Its file is untouched until it is saved.
    assert_eq!(
        open_design(&file).unwrap(),
        open_design(&demo("archive_portrait.ron")).unwrap()
    );
    bench.press(Modifiers::COMMAND, Key::S);
    assert_eq!(&open_design(&file).unwrap(), bench.workspace().design());
    bench.wait_until(|_| kept(own.path()).is_empty());
}

#[test]
fn work_on_the_file_that_is_open_already_comes_back_as_a_step_of_it() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let file = folder.path().join("one.ron");
    crashed(own.path(), &file, "1.5");
    let mut bench = Bench::on_file(&file, own.path());
    bench.click("Restore");
    assert_eq!(bench.window.state().open_designs(), 1);
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);
    assert!(bench.workspace().is_changed() && !bench.says("is open in another window"));
    bench.press(Modifiers::COMMAND, Key::Z);
    assert_eq!(bench.workspace().design(), &open_design(&file).unwrap());
    assert!(!bench.workspace().is_changed());
}

#[test]
fn work_put_off_is_asked_about_again_and_goes_only_when_it_is_discarded() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    crashed(own.path(), &folder.path().join("one.ron"), "1.5");
    for _ in 0..2 {
        let mut bench = Bench::with_own_folder(own.path());
        bench.click("Later");
        assert!(!bench.says("The program was cut short"));
        assert_eq!(kept(own.path()).len(), 1);
    }
    let mut bench = Bench::with_own_folder(own.path());
    bench.click("Discard…");
    assert!(bench.says("Take it away for good?"));
    bench.click("Keep it");
    assert_eq!(kept(own.path()).len(), 1);
    bench.click("Discard…");
    bench.click("Discard it");
    assert!(kept(own.path()).is_empty());
    drop(bench);
    assert!(!Bench::with_own_folder(own.path()).says("The program was cut short"));
}

#[test]
fn all_of_several_are_brought_back_each_in_a_tab() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    crashed(own.path(), &folder.path().join("one.ron"), "1.5");
    crashed(own.path(), &folder.path().join("two.ron"), "1.55");
    let mut bench = Bench::with_own_folder(own.path());
    bench.click("Restore all");
    // The design that was opened at the start stays too.
    assert_eq!(bench.window.state().open_designs(), 3);
    assert!(bench.says("one *") && bench.says("two *"));
    drop(bench);
    // A crash right after leaves both again.
    assert_eq!(kept(own.path()).len(), 2);
}

#[test]
fn a_copy_that_cannot_be_read_is_named_with_the_reason_and_left_alone() {
    let own = tempfile::tempdir().unwrap();
    fs::create_dir(own.path().join("recovery")).unwrap();
    fs::write(own.path().join("recovery/17-5-1.ron"), "(format: 1, na").unwrap();
    let mut bench = Bench::with_own_folder(own.path());
    assert!(bench.says("17-5-1.ron") && bench.says("cannot be read: line 1"));
    bench.click("Later");
    assert_eq!(kept(own.path()), ["17-5-1.ron"]);
}

#[test]
fn text_that_a_key_ends_on_its_way_to_another_tab_is_kept() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let files = ["one.ron", "two.ron"].map(|name| folder.path().join(name));
    for file in &files {
        fs::copy(demo("archive_portrait.ron"), file).unwrap();
    }
    let mut bench = Bench::on_file(&files[0], own.path());
    bench.window.state_mut().open(&files[1]);
    bench.window.run();
    bench.write("Seat height", "1.5");
    bench.press(Modifiers::COMMAND, Key::PageUp);
    assert_eq!(bench.workspace().title_name(), "one");
    bench.wait_until(|_| !kept(own.path()).is_empty());
    drop(bench);
    let mut bench = Bench::with_own_folder(own.path());
    assert!(bench.says(&format!("of the file {}", files[1].display())));
    bench.click("Restore");
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);
}

#[test]
fn undoing_back_to_what_is_saved_leaves_nothing_to_bring_back() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let file = folder.path().join("one.ron");
    fs::copy(demo("archive_portrait.ron"), &file).unwrap();
    let mut bench = Bench::on_file(&file, own.path());
    bench.enter("Seat height", "1.5");
    bench.wait_until(|_| !kept(own.path()).is_empty());
    bench.press(Modifiers::COMMAND, Key::Z);
    bench.wait_until(|_| kept(own.path()).is_empty());
}
