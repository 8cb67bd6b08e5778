//! The page Shop plan: steps with pictures, settings, passes, routes, and the printed sheet.

use egui_kittest::kittest::Queryable as _;
use flangewright::app::chooser::FileAnswer;
use flangewright::app::page::Page;
use flangewright::document::{Choice, Route};

use crate::bench::{Bench, demo};

fn bench() -> Bench {
    let mut bench = Bench::new();
    bench.show(Page::ShopPlan);
    bench
}

#[test]
fn cautions_and_material_stand_first_and_every_step_opens() {
    let mut bench = bench();
    assert!(bench.says("Eye protection") && bench.says("come first"));
    assert!(bench.says("round bar 65 mm"));
    bench.press_by_key("8  turn the groove behind the flange  !");
    for told in [
        "groove width",
        "parting blade 2",
        "narrow tool",
        "Why here",
        "rpm",
    ] {
        assert!(bench.says(told), "{told}");
    }
    assert!(bench.says("The workpiece after this step"));
    bench.press_by_key("11  mill the gaps between the lugs  !");
    assert!(bench.says("seen from the body side"));
}

#[test]
fn another_route_is_taken_saved_and_undone() {
    let mut bench = bench();
    bench.choose(
        "Route",
        "thread side first, bayonet side and gaps on a threaded arbor",
    );
    assert_eq!(
        bench.workspace().design().ring.route,
        Choice::Set(Route::ThreadFirst)
    );
    assert!(bench.says("a threaded arbor with a shoulder has to be turned"));
    bench.click("Undo");
    assert_eq!(bench.workspace().design().ring.route, Choice::Derived);
    bench.click("Order and why");
    assert!(bench.says("Other routes") && bench.says("Why this order"));
    bench
        .window
        .query_all_by_label("Take this route")
        .next()
        .unwrap()
        .click();
    bench.window.run();
    assert_eq!(
        bench.workspace().design().ring.route,
        Choice::Set(Route::ThreadFirst)
    );
}

#[test]
fn settings_and_passes_are_shown() {
    let mut bench = bench();
    bench.click("Dividing");
    for told in [
        "Seen from the body side",
        "gap 1 begins",
        "lock hole",
        "spaces",
        "on the table",
    ] {
        assert!(bench.says(told), "{told}");
    }
    bench.click("Thread");
    for told in [
        "20 drives 60",
        "constant area, mm",
        "s to stop",
        "over two opposed balls",
    ] {
        assert!(bench.says(told), "{told}");
    }
}

#[test]
fn a_missing_tool_is_named_and_led_to() {
    let mut bench = bench();
    bench.show(Page::Workshop);
    bench.press_by_key("remove inside threading tool 60 deg");
    bench.show(Page::ShopPlan);
    assert!(bench.says("No order of cuts") && bench.says("an inside threading tool that enters"));
    bench.click("To the workshop");
    assert!(bench.says("The open design assumes:"));
}

#[test]
fn the_plan_is_written_as_pages_and_as_text() {
    let folder = tempfile::tempdir().unwrap();
    for (name, begins) in [("plan.pdf", "%PDF-"), ("plan.txt", "SHOP PLAN")] {
        let mut bench = bench();
        let path = folder.path().join(name);
        bench
            .script
            .answers
            .borrow_mut()
            .push_back(FileAnswer::Chosen(path.clone()));
        bench.press_button("Print the shop plan…");
        bench.wait_until(|bench| bench.says("written to"));
        assert!(std::fs::read(&path).unwrap().starts_with(begins.as_bytes()));
    }
}

#[test]
fn without_a_ring_the_page_says_what_to_measure() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(demo("archive_portrait.ron")).unwrap();
    let mut design = flangewright::document::read_design(&text).unwrap();
    design.body.throat = flangewright::mount::Interface::Unknown;
    let path = folder.path().join("unknown.ron");
    std::fs::write(&path, flangewright::document::write_ron(&design).unwrap()).unwrap();
    let mut bench = Bench::sized(&path, 1024.0, 700.0);
    bench.show(Page::ShopPlan);
    assert!(bench.says("There is no whole ring yet"));
}
