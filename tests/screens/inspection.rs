//! The page Inspection, as somebody with a finished ring and no manual meets it.

use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use flangewright::app::page::Page;
use flangewright::document::{RingKey, SizeOf, read_design};

use crate::bench::{Bench, demo};

const SEAT: SizeOf = SizeOf::Ring(RingKey::SeatHeight);

/// Asks about a row of the list.
fn ask(bench: &mut Bench, name: &str) {
    bench
        .window
        .query_all_by_label_contains(&format!("{name}, "))
        .find(|node| node.accesskit_node().role() == Role::Button)
        .unwrap()
        .click();
    bench.window.run();
}

/// Types readings of the seat height, so far off the drawn one, one after the other.
fn read_seat(bench: &mut Bench, off_mm: [f64; 6]) {
    let seat = bench.size(RingKey::SeatHeight);
    for (place, off) in off_mm.iter().enumerate() {
        let label = format!("next reading {} at {}°", place + 1, 60 * place);
        bench.enter(&label, &format!("{:.3}", seat + off));
    }
}

#[test]
fn an_empty_page_says_what_to_do_first() {
    let mut bench = Bench::new();
    bench.show(Page::Inspection);
    assert!(bench.says("No readings yet. Type the first one"));
    assert!(bench.says("to read"));
    ask(&mut bench, "Correction");
    assert!(bench.says("Nothing is known of the register yet"));
    bench.click("Make an infinity trial");
    assert!(bench.says("No trial yet. Type how far away the object stands"));
}

#[test]
fn a_thick_ring_is_read_corrected_noted_undone_saved_and_opened_again() {
    let mut bench = Bench::new();
    bench.show(Page::Inspection);
    read_seat(&mut bench, [0.07, 0.08, 0.08, 0.07, 0.06, 0.06]);
    assert!(bench.says("OUT"), "no verdict");
    assert!(bench.says("parallel within") && bench.says("guard band"));
    assert!(
        bench
            .window
            .query_by_role_and_label(Role::Canvas, "Readings round the ring")
            .is_some()
    );

    ask(&mut bench, "Correction");
    assert!(bench.says("Skim 0.07 mm off the seat."));
    // 360 degrees a millimetre at a pitch of 1 mm: 25.2 degrees.
    assert!(bench.says("25.20° further clockwise"));
    bench.enter("How much", "0,068");
    bench.enter("When", "3 May");
    bench.enter("Why", "infinity not reached");
    bench.click("Take note of it as done");
    let design = bench.workspace().design().clone();
    let done = &design.corrections[0];
    assert!((done.skim_mm - 0.068).abs() < 1e-12 && done.date == "3 May");
    assert!((done.expected.unwrap().error_mm - 0.002).abs() < 1e-9);
    assert!(bench.says("skimmed off the seat, 3 May"));
    // What was read before is history, no longer present.
    assert_eq!(design.readings.len(), 1);
    assert!(bench.says("Nothing is known of the register yet"));

    bench.click("Undo");
    assert!(bench.workspace().design().corrections.is_empty());
    assert!(bench.says("Skim 0.07 mm off the seat."));
    bench.press(
        egui::Modifiers::COMMAND.plus(egui::Modifiers::SHIFT),
        egui::Key::Z,
    );
    assert_eq!(bench.workspace().design(), &design);

    ask(&mut bench, "Seat height");
    assert!(bench.says("before correction 1:"));
    read_seat(&mut bench, [0.002, 0.003, 0.002, 0.001, 0.001, 0.002]);
    assert!(bench.window.query_by_label("Seat height, in").is_some());
    ask(&mut bench, "Correction");
    assert!(bench.says("Leave it.") && bench.says("found then 0.002 mm"));

    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("ring.ron");
    flangewright::app::files::save_design(&file, bench.workspace().design()).unwrap();
    let mut again = Bench::sized(&file, 1024.0, 700.0);
    assert_eq!(again.workspace().design(), bench.workspace().design());
    again.show(Page::Inspection);
    assert!(again.window.query_by_label("Seat height, in").is_some());
    assert!(read_design(&std::fs::read_to_string(&file).unwrap()).is_ok());
}

#[test]
fn a_trial_gives_an_error_and_a_correction() {
    let mut bench = Bench::new();
    bench.show(Page::Inspection);
    ask(&mut bench, "Infinity trial");
    let design = bench.workspace().design();
    let f = design.lens.focal_length.number().unwrap();
    bench.enter("Object at", "5 m");
    // Thin lens, a ring too thick by 0.15: the scale stands farther out than the object is.
    let scale = flangewright::optics::FocusScale::thin(f);
    let asked = scale.extension_mm(5000.0).unwrap();
    for step in [-0.01, 0.0, 0.01] {
        let extension = asked - 0.15 + step;
        let mark = (f + f * f / extension + f + extension) / 1000.0;
        bench.enter("next setting", &format!("{mark:.4}"));
    }
    assert!(bench.says("Register too thick by 0.15 mm"), "no error");
    let trial = &bench.workspace().design().trials[0];
    assert_eq!((trial.object_mm, trial.scale_mm.len()), (Some(5000.0), 3));
    // The object is taken to be a hundredth off, the scale three, until somebody says better.
    assert!((trial.object_error_mm - 50.0).abs() < 1e-9 && trial.scale_error_mm > 150.0);
    bench.enter("known within ±", "2 cm");
    bench.enter("scale good to ±", "0.05");
    assert!((bench.workspace().design().trials[0].object_error_mm - 20.0).abs() < 1e-9);
    ask(&mut bench, "Correction");
    assert!(bench.says("by the infinity trial") && bench.says("Skim 0.15 mm off the seat."));
    ask(&mut bench, "Infinity trial");
    bench.click("Begin another trial");
    assert!(bench.says("Before, kept as history"));
    bench.enter("Object at", "infinity");
    assert_eq!(bench.workspace().design().trials[1].object_mm, None);
    bench.enter("next setting", "far away");
    assert!(bench.says("or infinity"));
}

#[test]
fn a_rough_instrument_proves_nothing_and_a_better_one_is_named() {
    let mut bench = Bench::new();
    bench.show(Page::Inspection);
    bench.choose("Instrument", "caliper 0.02");
    read_seat(&mut bench, [0.0, 0.0, 0.02, 0.0, 0.0, 0.0]);
    assert!(bench.says("not provable with this instrument"));
    assert!(bench.says("reads it better: measure again with it."));
}

#[test]
fn lugs_balls_and_diameters_take_readings_too() {
    let mut bench = Bench::new();
    bench.show(Page::Inspection);
    for (name, size) in [
        ("Lug 1 begins", SizeOf::LugStart(1)),
        ("Lug 1, width at its tip", SizeOf::LugWidth(1)),
        ("Lug diameter", SizeOf::Ring(RingKey::LugDiameter)),
    ] {
        ask(&mut bench, name);
        assert!(
            bench
                .window
                .query_by_role_and_label(Role::Canvas, "Where it is")
                .is_some(),
            "{name}"
        );
        for place in 1..=3 {
            bench.enter(&format!("next reading {place}"), "53.7");
        }
        let design = bench.workspace().design();
        let reading = design.readings.last().unwrap();
        assert_eq!(
            (reading.dimension, reading.values.len()),
            (size, 3),
            "{name}"
        );
    }
    bench.click("remove reading 2");
    assert_eq!(
        bench
            .workspace()
            .design()
            .readings
            .last()
            .unwrap()
            .values
            .len(),
        2
    );
    bench.enter("reading 1", "4000");
    assert!(bench.says("refused: reading of Lug diameter: 4000.00 mm is refused"));
    assert!(
        bench
            .workspace()
            .design()
            .present_reading(SEAT, flangewright::document::SeatKind::Boss)
            .is_none()
    );
}

#[test]
fn without_a_ring_the_page_says_what_is_missing() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("nothing.ron");
    std::fs::write(&file, "(format: 1, lens: (), body: ())").unwrap();
    let mut bench = Bench::sized(&file, 1024.0, 700.0);
    bench.show(Page::Inspection);
    assert!(bench.says("lens register"));
}

#[test]
fn the_page_holds_in_the_small_window() {
    let mut bench = Bench::sized(&demo("tall_ring.ron"), 1024.0, 700.0);
    bench.show(Page::Inspection);
    let picture = bench
        .window
        .get_by_role_and_label(Role::Canvas, "How it is measured")
        .rect();
    assert!(
        picture.width() > 300.0 && picture.height() > 300.0,
        "{picture:?}"
    );
    let list = bench.window.get_by_label_contains("Seat height, ").rect();
    assert!(list.right() < 290.0, "{list:?}");
}

#[test]
fn the_sheet_is_written_from_the_page_as_pdf_and_text() {
    let folder = tempfile::tempdir().unwrap();
    let mut bench = Bench::new();
    bench.show(Page::Inspection);
    for (name, begins) in [("sheet.pdf", "%PDF-"), ("sheet.txt", "INSPECTION")] {
        bench.press_by_key("Inspection sheet…");
        assert!(bench.says("Write the inspection sheet"));
        let path = folder.path().join(name);
        bench.write("Path", path.to_str().unwrap());
        bench.press_button("Write");
        bench.wait_until(|bench| bench.says("written to"));
        let written = std::fs::read(&path).unwrap();
        assert!(written.starts_with(begins.as_bytes()), "{name}");
        bench.click("Dismiss");
    }
    bench.press_by_key("Inspection sheet…");
    let path = folder.path().join("sheet.pdf");
    bench.write("Path", path.to_str().unwrap());
    bench.click("Write");
    assert!(bench.says("is there already"));
    bench.click("Cancel");
}
