//! Files in the real window: a crash and what comes back, and dialogs that fail or hang.

use std::fs;
use std::os::unix::fs::PermissionsExt as _;
use std::path::Path;

use crate::hand::{Bench, pause, until};
use crate::{DEMO, seat_height};

const SIZE: (u32, u32) = (1280, 800);
/// The button Restore of the first design in the question after a crash.
const RESTORE: (u32, u32) = (350, 444);

fn kept(folder: &Path) -> usize {
    let recovery = folder.join("flangewright/recovery");
    fs::read_dir(recovery).map_or(0, |listed| {
        let names = listed.map(|entry| entry.unwrap().file_name());
        names
            .filter(|name| name.to_string_lossy().ends_with(".ron"))
            .count()
    })
}

#[test]
#[ignore = "needs an X display; .ci/run brings one"]
fn unsaved_work_is_back_after_a_crash() {
    let bench = Bench::open(Path::new(DEMO), SIZE);
    bench.type_into(seat_height(), "1,56");
    bench.wait_for_title("ring * - ");
    until("the change is kept", || kept(bench.folder()) == 1);

    let bench = bench.cut_short_and_started_again(SIZE);
    bench.wait_for_title("ring - no clash");
    bench.click(RESTORE);
    bench.wait_for_title("ring * - ");
    bench.key("ctrl+s");
    until("it is saved, and nothing is left to bring back", || {
        kept(bench.folder()) == 0
    });
    let saved = fs::read_to_string(bench.folder().join("ring.ron")).unwrap();
    assert!(saved.contains("1.56"), "{saved}");
    let before = fs::read_to_string(bench.folder().join("ring.ron.bak")).unwrap();
    assert!(!before.contains("1.56"), "{before}");
    bench.quit();
}

/// Opens the tall demo by typing its path, whatever the system's dialog does.
fn a_path_can_be_typed(variables: &[(&str, &str)]) {
    let bench = Bench::open_with(Path::new(DEMO), SIZE, variables);
    fs::copy(
        concat!(env!("CARGO_MANIFEST_DIR"), "/assets/demos/tall_ring.ron"),
        bench.folder().join("second ring.ron"),
    )
    .unwrap();
    bench.key("ctrl+o");
    pause();
    pause();
    bench.replace_text(&bench.folder().join("second ring.ron").display().to_string());
    bench.key("Return");
    bench.wait_for_title("second ring - ");
}

const NO_PORTAL: (&str, &str) = ("DBUS_SESSION_BUS_ADDRESS", "unix:path=/nonexistent");

#[test]
#[ignore = "needs an X display; .ci/run brings one"]
fn without_a_portal_and_without_zenity_a_path_is_typed() {
    let empty = tempfile::tempdir().unwrap();
    let path = empty.path().display().to_string();
    a_path_can_be_typed(&[NO_PORTAL, ("PATH", &path)]);
}

#[test]
#[ignore = "needs an X display; .ci/run brings one"]
fn a_dialog_that_hangs_does_not_hold_the_window_up() {
    let folder = tempfile::tempdir().unwrap();
    let zenity = folder.path().join("zenity");
    fs::write(&zenity, "#!/bin/sh\nexec /bin/sleep 60\n").unwrap();
    fs::set_permissions(&zenity, fs::Permissions::from_mode(0o755)).unwrap();
    let path = folder.path().display().to_string();
    a_path_can_be_typed(&[NO_PORTAL, ("PATH", &path)]);
}
