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
