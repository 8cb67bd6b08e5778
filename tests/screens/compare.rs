//! The page Compare: variants, files brought in, what differs, what lights up, the overlay, the way out to files.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use flangewright::app::chooser::FileAnswer;
use flangewright::app::files::open_design;
use flangewright::app::page::Page;
use flangewright::document::{Choice, RingKey};

use crate::bench::{Bench, demo};

#[derive(Debug)]
struct Dropped(PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|error| error.to_string())
    }
}

impl Bench {
    fn keep_variant(&mut self) {
        self.press(Modifiers::COMMAND, Key::K);
    }

    fn drop_in(&mut self, paths: &[PathBuf]) {
        for path in paths {
            self.window
                .input_mut()
                .dropped_files
                .push(Arc::new(Dropped(path.clone())));
        }
        self.window.run();
    }

    /// Presses the name of a row.
    fn row(&mut self, label: &str) {
        self.click(label);
    }

    fn has_row(&self, label: &str) -> bool {
        self.window
            .query_by_role_and_label(Role::Button, label)
            .is_some()
    }
}

/// A variant is kept, the ring changed, the change compared.
fn with_a_variant() -> Bench {
    let mut bench = Bench::new();
    bench.keep_variant();
    bench.show(Page::Design);
    bench.enter("Lip thickness", "0.6");
    bench.show(Page::Compare);
    bench
}

#[test]
fn a_kept_ring_differs_once_the_ring_at_work_is_changed() {
    let mut bench = Bench::new();
    bench.show(Page::Compare);
    assert!(bench.says("There is one design on the page."));
    bench.keep_variant();
    assert!(bench.says("Nothing differs"));
    bench.show(Page::Design);
    bench.enter("Lip thickness", "0.6");
    bench.show(Page::Compare);
    assert!(bench.has_row("ring: Lip thickness"));
    assert!(bench.says("0.60 mm"));
    assert!(!bench.has_row("ring: Flange diameter"));
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!(bench.says("Nothing differs"));
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!(bench.says("There is one design on the page."));
}

#[test]
fn a_picked_row_stays_lit_and_can_be_put_out() {
    let mut bench = with_a_variant();
    let dark = bench.window.query_by_label("Put the light out");
    assert!(dark.is_none());
    bench.row("ring: Lip thickness");
    assert!(bench.says("Put the light out"));
    bench.click("Put the light out");
    assert!(!bench.says("Put the light out"));
    // Pressed twice it goes out too.
    bench.row("ring: Lip thickness");
    bench.row("ring: Lip thickness");
    assert!(!bench.says("Put the light out"));
}

#[test]
fn every_finding_stands_in_the_table_with_the_worst_first() {
    let mut bench = with_a_variant();
    let count = flangewright::checks::FindingKey::ALL.len();
    bench.click(&format!("Findings ({count})"));
    assert!(bench.has_row("Lip thickness"));
    let top = |title: &str| {
        let row = bench.window.query_by_role_and_label(Role::Button, title)?;
        Some(row.rect().top())
    };
    let worst = top("Lip thickness").unwrap();
    let others = flangewright::checks::FindingKey::ALL
        .iter()
        .filter_map(|key| top(key.title()));
    assert!(others.filter(|other| *other > worst).count() >= 3);
    assert!(bench.says("clash"));
    bench
        .window
        .get_by_role_and_label(Role::CheckBox, "only where they differ")
        .click();
    bench.window.run();
    let rows = flangewright::checks::FindingKey::ALL
        .iter()
        .filter(|key| bench.has_row(key.title()))
        .count();
    assert!(bench.has_row("Lip thickness") && rows < 8, "{rows}");
    bench.row("Lip thickness");
    assert!(bench.says("Put the light out"));
}

#[test]
fn a_variant_is_named_noted_swapped_in_and_deleted_and_all_of_it_is_undone() {
    let mut bench = with_a_variant();
    bench.enter("Name of variant 1", "as first drawn");
    bench.enter("Note of variant 1", "before the thin lip");
    let variant = &bench.workspace().design().variants[0];
    assert_eq!(variant.name, "as first drawn");
    assert_eq!(variant.note, "before the thin lip");
    bench.click("Swap in variant 1");
    let design = bench.workspace().design();
    assert_eq!(
        design.ring.dimensions.get(RingKey::LipThickness).value,
        Choice::Derived
    );
    let names: Vec<&str> = design
        .variants
        .iter()
        .map(|variant| variant.name.as_str())
        .collect();
    assert_eq!(names, ["as first drawn", "before as first drawn"]);
    bench.click("Delete variant 1");
    assert_eq!(bench.workspace().design().variants.len(), 1);
    bench.press(Modifiers::COMMAND, Key::Z);
    bench.press(Modifiers::COMMAND, Key::Z);
    let design = bench.workspace().design();
    assert_eq!(
        design.ring.dimensions.get(RingKey::LipThickness).value,
        Choice::Set(0.6)
    );
    assert_eq!(design.variants.len(), 1);
}

#[test]
fn a_name_that_is_taken_is_refused_under_its_box() {
    let mut bench = with_a_variant();
    bench.keep_variant();
    bench.enter("Name of variant 2", "variant");
    assert!(bench.says("another variant has this name"));
    assert_eq!(bench.workspace().design().variants[1].name, "variant 2");
}

#[test]
fn a_change_of_the_limits_is_followed_by_every_variant() {
    let mut bench = with_a_variant();
    let count = flangewright::checks::FindingKey::ALL.len();
    bench.click(&format!("Findings ({count})"));
    assert!(bench.says("clash"));
    bench.show(Page::Limits);
    bench.enter("Lip thickness, clash under", "5");
    bench.show(Page::Compare);
    // Both lips are under 5 mm now: the derived one of 1 mm clashes too.
    let clashes = bench.window.query_all_by_label("clash").count();
    assert!(clashes >= 2, "{clashes}");
}

#[test]
fn files_are_dropped_in_and_taken_out_again_and_the_open_design_stays() {
    let mut bench = Bench::new();
    bench.show(Page::Compare);
    let before = bench.workspace().design().clone();
    bench.drop_in(&[demo("tall_ring.ron"), demo("four_clashes.ron")]);
    assert!(bench.says("Half-section of tall_ring") && bench.says("Half-section of four_clashes"));
    assert!(bench.says("from a file, read only"));
    bench.click("Take out tall_ring");
    assert!(!bench.says("Half-section of tall_ring"));
    assert!(bench.says("Half-section of four_clashes"));
    assert_eq!(bench.workspace().design(), &before);
    assert!(!bench.workspace().is_changed());
}

#[test]
fn a_file_that_cannot_be_read_is_told_and_nothing_is_lost() {
    let folder = tempfile::tempdir().unwrap();
    let broken = folder.path().join("broken.ron");
    std::fs::write(&broken, "(format: 1, lens: (regis").unwrap();
    let mut bench = with_a_variant();
    let before = bench.workspace().design().clone();
    bench.drop_in(&[broken, demo("tall_ring.ron")]);
    assert!(bench.says("broken.ron"));
    assert!(bench.says("Half-section of tall_ring"));
    assert_eq!(bench.workspace().design(), &before);
}

#[test]
fn a_path_can_be_typed_to_bring_a_design_in() {
    let mut bench = Bench::new();
    bench.show(Page::Compare);
    let none = FileAnswer::Unavailable("none here".to_owned());
    bench.script.answers.borrow_mut().push_back(none);
    bench.click("Bring in to compare…");
    bench.write("Path", "/nowhere/at all.ron");
    bench.press(Modifiers::NONE, Key::Enter);
    assert!(bench.says("there is no such file"));
    bench.write("Path", &demo("tall_ring.ron").display().to_string());
    bench.press(Modifiers::NONE, Key::Enter);
    assert!(bench.says("Half-section of tall_ring"));
    assert_eq!(
        bench.workspace().design(),
        &open_design(&demo("archive_portrait.ron")).unwrap()
    );
}

#[test]
fn two_are_laid_over_each_other_with_the_areas_in_words() {
    let mut bench = with_a_variant();
    bench.click("Overlay");
    assert!(bench.says("Half-sections over each other"));
    assert!(bench.says("mm² added") && bench.says("mm² removed"));
    assert!(bench.says("Nose and lugs in the plan: no difference"));
    let combo = bench.window.get_by_role_and_label(Role::ComboBox, "To");
    combo.click();
    bench.window.run();
    bench.click("Archive portrait ring");
    assert!(bench.says("Half-section: no difference"));
}

#[test]
fn the_comparison_is_written_as_table_and_picture_and_never_over_another_file_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let table = folder.path().join("rings.csv");
    std::fs::write(&table, "something of mine").unwrap();
    let mut bench = with_a_variant();
    bench.press(Modifiers::COMMAND | Modifiers::SHIFT, Key::E);
    bench.write("Path", &table.display().to_string());
    bench.press(Modifiers::NONE, Key::Enter);
    assert!(bench.says("is there already"));
    assert_eq!(
        std::fs::read_to_string(&table).unwrap(),
        "something of mine"
    );
    bench.press_button("Replace");
    bench.wait_until(|bench| bench.says("written to"));
    let text = std::fs::read_to_string(&table).unwrap();
    assert!(
        text.contains("ring,lip_thickness,Lip thickness,value,mm,0.6,"),
        "{text}"
    );

    let picture = folder.path().join("rings.png");
    bench.press(Modifiers::COMMAND | Modifiers::SHIFT, Key::E);
    bench.write("Path", &picture.display().to_string());
    bench.press(Modifiers::NONE, Key::Enter);
    bench.wait_until(|_| picture.exists());
    assert_eq!(&std::fs::read(&picture).unwrap()[..4], b"\x89PNG");

    bench.press(Modifiers::COMMAND | Modifiers::SHIFT, Key::E);
    let unknown = folder.path().join("rings.odt");
    bench.write("Path", &unknown.display().to_string());
    bench.press(Modifiers::NONE, Key::Enter);
    assert!(bench.says("ends in neither") && !unknown.exists());
}

#[test]
fn six_fit_on_a_small_window_and_the_keyboard_reaches_every_row() {
    let mut bench = Bench::sized(&demo("archive_portrait.ron"), 1024.0, 700.0);
    for _ in 0..5 {
        bench.keep_variant();
    }
    bench.show(Page::Design);
    bench.enter("Lip thickness", "0.6");
    bench.show(Page::Compare);
    let room = egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(1024.0, 700.0));
    for name in ["variant", "variant 2", "variant 5"] {
        let label = format!("Half-section of {name}");
        let canvas = bench.window.get_by_label(&label).rect();
        assert!(room.contains_rect(canvas), "{label}: {canvas:?}");
        assert!(
            canvas.width() > 100.0 && canvas.height() > 90.0,
            "{canvas:?}"
        );
    }
    for number in 1..=5 {
        for action in ["Swap in", "Delete"] {
            let label = format!("{action} variant {number}");
            let button = bench.window.get_by_role_and_label(Role::Button, &label);
            assert!(room.contains_rect(button.rect()));
        }
    }
    bench
        .window
        .get_by_role_and_label(Role::Button, "ring: Lip thickness")
        .focus();
    bench.window.run();
    bench.press(Modifiers::NONE, Key::Space);
    assert!(bench.says("Put the light out"));
}
