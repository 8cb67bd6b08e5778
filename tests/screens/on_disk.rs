//! The file of the open design, changed by somebody else.

use std::fs;
use std::path::Path;

use egui::{Key, Modifiers};
use flangewright::app::files::{before_of, open_design};
use flangewright::document::RingKey;

use crate::bench::{Bench, demo};

/// A window on a copy of the demo, changed here and meanwhile on the disk.
fn changed_on_both_sides(path: &Path) -> Bench {
    fs::copy(demo("archive_portrait.ron"), path).unwrap();
    let mut bench = Bench::sized(path, 1280.0, 800.0);
    bench.enter("Seat height", "1.5");
    fs::copy(demo("tall_ring.ron"), path).unwrap();
    bench.press(Modifiers::COMMAND, Key::S);
    assert!(
        bench.says("The file has changed") && bench.says("has changes that are not in that file")
    );
    assert_eq!(
        open_design(path).unwrap(),
        open_design(&demo("tall_ring.ron")).unwrap()
    );
    bench
}

#[test]
fn mine_is_kept_and_theirs_becomes_the_version_before() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut bench = changed_on_both_sides(&path);
    bench.click("Keep mine");
    bench.press(Modifiers::COMMAND, Key::S);
    assert_eq!(&open_design(&path).unwrap(), bench.workspace().design());
    assert_eq!(
        open_design(&before_of(&path)).unwrap(),
        open_design(&demo("tall_ring.ron")).unwrap()
    );
}

#[test]
fn theirs_is_loaded_and_undo_brings_mine_back() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut bench = changed_on_both_sides(&path);
    bench.click("Load theirs");
    assert!(!bench.workspace().is_changed());
    assert_eq!(bench.workspace().design(), &open_design(&path).unwrap());
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!((bench.size(RingKey::SeatHeight) - 1.5).abs() < 1e-12);
}

#[test]
fn mine_goes_to_another_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut bench = changed_on_both_sides(&path);
    bench.click("Save as…");
    let other = folder.path().join("other.ron");
    bench.write("Path", &other.display().to_string());
    bench.press(Modifiers::NONE, Key::Enter);
    assert_eq!(&open_design(&other).unwrap(), bench.workspace().design());
    assert_eq!(
        open_design(&path).unwrap(),
        open_design(&demo("tall_ring.ron")).unwrap()
    );
}

/// Goes to another window and comes back.
fn come_back(bench: &mut Bench) {
    bench.window.input_mut().focused = false;
    bench.window.step();
    bench.window.input_mut().focused = true;
    bench.window.step();
}

#[test]
fn a_change_on_the_disk_is_noticed_when_the_window_comes_to_the_front() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    fs::copy(demo("archive_portrait.ron"), &path).unwrap();
    let mut bench = Bench::sized(&path, 1280.0, 800.0);
    come_back(&mut bench);
    fs::copy(demo("tall_ring.ron"), &path).unwrap();
    come_back(&mut bench);
    bench.wait_until(|bench| bench.says("The file has changed"));
    assert!(bench.says("The design in hand is as it was saved here"));
    // Put off, it is not asked again until the file changes once more; saving asks whatever was put off.
    bench.click("Later");
    for _ in 0..3 {
        come_back(&mut bench);
        std::thread::sleep(std::time::Duration::from_millis(30));
        bench.window.run();
    }
    assert!(!bench.says("The file has changed"));
    bench.press(Modifiers::COMMAND, Key::S);
    assert!(bench.says("The file has changed"));
    bench.click("Load theirs");
    assert_eq!(bench.workspace().design(), &open_design(&path).unwrap());
}

#[test]
fn a_file_that_is_gone_is_told_plainly_and_written_anew() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    fs::copy(demo("archive_portrait.ron"), &path).unwrap();
    let mut bench = Bench::sized(&path, 1280.0, 800.0);
    fs::remove_file(&path).unwrap();
    come_back(&mut bench);
    bench.wait_until(|bench| bench.says("is not there any more"));
    bench.press(Modifiers::COMMAND, Key::S);
    assert_eq!(&open_design(&path).unwrap(), bench.workspace().design());
}

#[test]
fn the_second_window_says_that_the_file_is_open_in_the_first() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let path = folder.path().join("ring.ron");
    fs::copy(demo("archive_portrait.ron"), &path).unwrap();
    let mut first = Bench::on_file(&path, own.path());
    assert!(!first.says("is open in another window"));
    let mut second = Bench::on_file(&path, own.path());
    assert!(second.says("is open in another window of this program too"));

    // Both change it and save: the second one is asked, and what the first saved is kept.
    first.enter("Seat height", "1.5");
    first.press(Modifiers::COMMAND, Key::S);
    second.enter("Seat height", "1.55");
    second.press(Modifiers::COMMAND, Key::S);
    assert!(second.says("The file has changed"));
    second.click("Keep mine");
    second.press(Modifiers::COMMAND, Key::S);
    assert_eq!(&open_design(&path).unwrap(), second.workspace().design());
    assert_eq!(
        &open_design(&before_of(&path)).unwrap(),
        first.workspace().design()
    );
}
