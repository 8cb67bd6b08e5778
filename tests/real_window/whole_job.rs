//! The whole job by mouse and keys alone: new from two mounts, dragged clear, drawing and plan on paper, saved.

use std::path::{Path, PathBuf};

use egui::Key;
use egui::accesskit::Role;
use flangewright::checks::{FindingKey, Severity};
use flangewright::document::{Design, RingKey, read_design};

use super::hand::until;
use super::twin::{Both, Chord};

const DEMO: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/assets/demos/four_clashes.ron");
const LENS: &str = "archive portrait lens 58, second";
const BODY: &str = "archive copying camera";
const SPACE: Chord = Chord::plain("space", Key::Space);

fn severity(both: &Both, key: FindingKey) -> Severity {
    let evaluation = both.twin.state().workspace().evaluation();
    evaluation.finding(key).unwrap().severity
}

/// Keeps both mounts of the demo, and starts anew from them.
fn new_from_two_mounts(both: &mut Both) {
    for entry in ["Keep the lens in my mounts", "Keep the body in my mounts"] {
        both.click(Role::Button, "File");
        both.click_named(entry);
    }
    both.key(&Chord::command("ctrl+n", Key::N));
    for name in [LENS, BODY] {
        both.focus_by_tab(Role::RadioButton, name);
        both.key(&SPACE);
    }
    both.click(Role::Button, "Start");
    // The rule makes the flange cover the lock pin, and there the aperture ring is.
    both.real
        .wait_for_title("second on archive copying camera * - 1 clash");
}

/// Drags the flange smaller until it no longer fouls the aperture ring.
fn drag_the_flange_clear(both: &mut Both) {
    both.enter("Flange diameter", "63");
    assert_eq!(severity(both, FindingKey::ApertureRing), Severity::Clash);
    for _ in 0..8 {
        let grip = both.place(Role::Splitter, "Drag Flange diameter");
        let way: Vec<egui::Pos2> = [0.0, 20.0, 60.0, 110.0, 160.0]
            .iter()
            .map(|left| grip - egui::vec2(*left, 0.0))
            .collect();
        both.drag(&way);
        if severity(both, FindingKey::ApertureRing) != Severity::Clash {
            return;
        }
    }
    panic!("the aperture ring is fouled however small the flange");
}

/// Answers the question for a path, and waits for the file.
fn written(both: &mut Both, name: &str, begins: &[u8]) -> PathBuf {
    let (real, twin) = (both.real.folder().join(name), both.twin_path(name));
    both.write(&real.display().to_string(), &twin.display().to_string());
    until("the file is written", || real.exists());
    both.twin_until("the file is written", |_| twin.exists());
    assert!(std::fs::read(&real).unwrap().starts_with(begins), "{name}");
    both.settle();
    real
}

fn read(path: &Path) -> Design {
    read_design(&std::fs::read_to_string(path).unwrap()).unwrap()
}

#[test]
#[ignore = "needs an X display; .ci/run brings one"]
fn the_whole_job_by_mouse_and_keys_alone() {
    let mut both = Both::open(Path::new(DEMO), (1280, 800));
    new_from_two_mounts(&mut both);
    drag_the_flange_clear(&mut both);

    both.key(&Chord::command("ctrl+e", Key::E));
    written(&mut both, "sheet.png", b"\x89PNG");
    both.key(&Chord::command("ctrl+e", Key::E));
    written(&mut both, "sheet.pdf", b"%PDF");

    both.click(Role::Button, "File");
    both.click_named("Print the shop plan");
    written(&mut both, "plan.pdf", b"%PDF");

    both.key(&Chord::command("ctrl+s", Key::S));
    let saved = written(&mut both, "made.ron", b"(");
    let made = read(&saved);
    // What was saved through the real window is what the same steps come to without one.
    assert_eq!(made, *both.twin.state().workspace().design());
    assert_eq!(
        (made.lens.name.as_str(), made.body.name.as_str()),
        (LENS, BODY)
    );
    let flange = made.ring.dimensions.get(RingKey::FlangeDiameter);
    assert!(!flange.value.is_derived());
    both.real.quit();
}
