//! The printed shop plan: as pages, and through poppler's eyes.

use std::process::Command;

use flangewright::document::{Choice, Design, Route, demo_designs};
use flangewright::drawing::printed::pages;
use flangewright::drawing::{Extent, Scene, Shape};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::paper::file::{plan_pdf, plan_text};
use flangewright::paper::plan_sheet::printed_plan;
use flangewright::plan::shop_plan;
use flangewright::workshop::Workshop;

use super::bench::{on_disk, printed};

/// Every demo on every route, with the workshop that is shipped.
fn cases() -> Vec<(Design, Workshop, Evaluation)> {
    let workshop = Workshop::default_set().unwrap();
    let mut all = Vec::new();
    for design in demo_designs().unwrap() {
        for route in Route::ALL {
            let mut design = design.clone();
            design.ring.route = Choice::Set(route);
            let evaluation = evaluate(&design, &workshop);
            all.push((design, workshop.clone(), evaluation));
        }
    }
    all
}

fn plan_pages(design: &Design, workshop: &Workshop, evaluation: &Evaluation) -> Vec<Scene> {
    let plan = shop_plan(design, workshop, evaluation).unwrap();
    pages(&printed_plan(design, workshop, evaluation, &plan))
}

fn words(scene: &Scene) -> String {
    let lines: Vec<&str> = scene
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text(text) => Some(text.text.as_str()),
            _ => None,
        })
        .collect();
    lines.join("\n")
}

/// Borders of ISO 5457; no two lines of lettering on top of each other.
#[test]
fn every_plan_keeps_inside_its_borders_and_is_readable() {
    let inside = Extent {
        left: 20.0 - 1e-6,
        bottom: 9.0,
        right: 200.0 + 1e-6,
        top: 288.0,
    };
    for (design, workshop, evaluation) in cases() {
        for (number, page) in plan_pages(&design, &workshop, &evaluation)
            .iter()
            .enumerate()
        {
            let mut boxes: Vec<Extent> = Vec::new();
            for item in &page.items {
                let extent = item.extent().unwrap();
                assert!(inside.contains(&extent), "{}: {item:?}", design.name);
                if let Shape::Text(text) = &item.shape {
                    let ink = text.text_box().extent().grown(-0.05);
                    assert!(
                        boxes.iter().all(|other| !other.overlaps(&ink)),
                        "{}, page {}: \"{}\" lies on other lettering",
                        design.name,
                        number + 1,
                        text.text
                    );
                    boxes.push(ink);
                }
            }
        }
    }
}

#[test]
fn every_step_is_there_once_with_its_box_and_its_picture() {
    for (design, workshop, evaluation) in cases() {
        let plan = shop_plan(&design, &workshop, &evaluation).unwrap();
        let all: Vec<String> = plan_pages(&design, &workshop, &evaluation)
            .iter()
            .map(words)
            .collect();
        let text = all.join("\n");
        for (index, step) in plan.steps.iter().enumerate() {
            let first = step.operation.label().split_whitespace().next().unwrap();
            let head = format!("{} {first}", index + 1);
            assert!(text.contains(&head), "{head}");
        }
        for told in [
            "The rules of the workshop you stand in come first",
            "Eye protection",
            "body side",
            "constant",
            "Caution: catch the ring",
            "page 1 of",
        ] {
            assert!(text.contains(told), "{}: {told}", design.name);
        }
        assert_eq!(plan.stages(&evaluation).len(), plan.steps.len());
    }
}

#[test]
fn the_same_plan_gives_the_same_bytes() {
    let (design, workshop, evaluation) = cases().remove(0);
    let pdf = || plan_pdf(&design, &workshop, &evaluation).unwrap();
    assert_eq!(pdf(), pdf());
    let text = || plan_text(&design, &workshop, &evaluation).unwrap();
    assert_eq!(text(), text());
}

#[test]
#[ignore = "needs pdfinfo, pdffonts and pdftotext of poppler"]
fn poppler_finds_every_page_the_font_and_the_text() {
    for (design, workshop, evaluation) in cases() {
        let bytes = plan_pdf(&design, &workshop, &evaluation).unwrap();
        let count = plan_pages(&design, &workshop, &evaluation).len();
        let (_folder, path) = on_disk("plan.pdf", &bytes);
        let facts = printed(Command::new("pdfinfo").arg(&path));
        assert!(
            facts
                .lines()
                .any(|line| line.starts_with("Pages:") && line.ends_with(&format!(" {count}"))),
            "{facts}"
        );
        assert!(
            facts.contains("A4") && facts.contains("Shop plan"),
            "{facts}"
        );
        let fonts = printed(Command::new("pdffonts").arg(&path));
        let rows: Vec<&str> = fonts.lines().skip(2).collect();
        assert!(
            rows.len() == 1 && rows[0].contains(" yes yes yes "),
            "{fonts}"
        );
        let text = printed(Command::new("pdftotext").arg("-layout").arg(&path).arg("-"));
        for told in [
            "turn the thread relief",
            "mill the gaps between the lugs",
            "datum zero",
            "on the table",
            "20 \u{b0}C",
        ] {
            assert!(text.contains(told), "{}: {told} in {text}", design.name);
        }
        assert!(text.contains(&format!("page {count} of {count}")));
    }
}
