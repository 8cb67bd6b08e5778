//! The program as a person meets it: a real window on a screen, mouse, keys, and what is to be seen afterwards.
//!
//! Needs an X display, a window manager, `xdotool` and the picture tools `import`, `convert` and `compare`; ignored
//! without them and run by `.ci/run`, which brings all of them.

mod files;
mod hand;
mod pictures;
mod twin;
mod whole_job;

use std::path::Path;
use std::time::{Duration, Instant};

use hand::{Area, Bench, differing, pause, until};

const DEMO: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/assets/demos/archive_portrait.ron"
);
/// The half-section on a window of 1280 x 800.
const SECTION: Area = Area {
    x: 10,
    y: 62,
    width: 860,
    height: 370,
};

/// Where the field of the seat height stands in a window of 1280 x 800.
fn seat_height() -> (u32, u32) {
    let role = egui::accesskit::Role::TextInput;
    twin::place_of(Path::new(DEMO), (1280, 800), role, "Seat height")
}

/// Opens the demo, makes the seat a tenth too high, sees it, undoes it, exports the drawing, quits.
#[test]
#[ignore = "needs an X display; .ci/run brings one"]
fn a_wrong_seat_height_is_seen_undone_and_the_drawing_exported() {
    let bench = Bench::open(Path::new(DEMO), (1280, 800));
    bench.wait_for_title("no clash");
    let before = bench.look(SECTION);

    bench.type_into(seat_height(), "1,56");
    bench.wait_for_title("clashes");
    let wrong = bench.look(SECTION);
    assert!(
        differing(&before, &wrong) > 500.0,
        "the half-section did not follow the seat height"
    );

    bench.key("ctrl+z");
    bench.wait_for_title("no clash");
    let after = bench.look(SECTION);
    // What had the keyboard is still lit, no more than that.
    let (astray, left) = (differing(&before, &wrong), differing(&before, &after));
    println!("dots: {astray} astray, {left} left after undo");
    assert!(
        left < astray / 4.0,
        "undo did not bring the half-section back: {left} of {astray} dots"
    );

    let png = bench.folder().join("sheet.png");
    bench.key("ctrl+e");
    pause();
    bench.replace_text(&png.display().to_string());
    bench.key("Return");
    until("the drawing is written", || png.exists());
    let (width, height) = hand::size_of(&png);
    assert_eq!(
        (width, height),
        (3508, 2480),
        "an A4 sheet at 300 dots an inch"
    );

    bench.key("Escape");
    bench.quit();
}

/// Start to first frame, printed for the record; far under what would annoy.
#[test]
#[ignore = "needs an X display; .ci/run brings one"]
fn the_first_frame_comes_soon() {
    let started = Instant::now();
    let bench = Bench::open(Path::new(DEMO), (1280, 800));
    let shown = bench.shown_after().unwrap_or_else(|| started.elapsed());
    println!("start to first frame seen from outside: {shown:?}");
    assert!(shown < Duration::from_secs(5), "{shown:?}");
    bench.quit();
}
