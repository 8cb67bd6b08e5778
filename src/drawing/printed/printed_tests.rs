use super::*;
use crate::drawing::lettering::{Text, unknown_letters};
use crate::drawing::{Extent, Path, Shape};
use crate::geometry::Point;

fn sheet(blocks: Vec<Block>) -> PrintedSheet {
    PrintedSheet {
        title: "Shop plan".to_owned(),
        foot: "a ring".to_owned(),
        blocks,
    }
}

fn texts(scene: &Scene) -> Vec<&Text> {
    scene
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text(text) => Some(text),
            _ => None,
        })
        .collect()
}

fn words(scene: &Scene) -> String {
    let lines: Vec<&str> = texts(scene).iter().map(|text| text.text.as_str()).collect();
    lines.join("\n")
}

fn square(side: f64) -> Scene {
    let mut scene = Scene::view();
    let corners = Extent::sized(Point { x: 5.0, y: 7.0 }, side, side).corners();
    scene.draw(
        Shape::Path(Path::polygon(corners)),
        crate::drawing::LineType::ContinuousWide,
        crate::drawing::Role::Ring,
    );
    scene
}

fn long_table(rows: usize) -> Table {
    Table {
        columns: vec![
            Column::Tick,
            Column::Words("what".to_owned()),
            Column::Number("mm".to_owned()),
            Column::Room("readings".to_owned(), 30.0),
        ],
        rows: (0..rows)
            .map(|row| {
                vec![
                    String::new(),
                    format!(
                        "row {row} with some words that make it long enough to be broken somewhere"
                    ),
                    "12.345".to_owned(),
                ]
            })
            .collect(),
    }
}

fn every_kind() -> Vec<Block> {
    let long = "words of a sentence that goes on ".repeat(30);
    vec![
        Block::Heading("Order of cuts".to_owned()),
        Block::Text(long.clone()),
        Block::Caution(long.clone()),
        Block::Tick(long.clone()),
        Block::Named("tool".to_owned(), "parting blade".to_owned()),
        Block::Table(long_table(60)),
        Block::Picture {
            scene: square(30.0),
            height_mm: 60.0,
            caption: "a square".to_owned(),
        },
        Block::Beside {
            blocks: vec![Block::Tick("a step".to_owned()), Block::Text(long)],
            scene: square(3.0),
            width_mm: 50.0,
            height_mm: 50.0,
            caption: String::new(),
        },
        Block::Text("a".repeat(400)),
    ]
}

/// Everything stays inside the borders of ISO 5457: 20 mm on the left, 10 on the other sides.
#[test]
fn nothing_leaves_the_borders_and_no_two_texts_overlap() {
    let pages = pages(&sheet(every_kind()));
    assert!(pages.len() > 3);
    let inside = Extent {
        left: 20.0,
        bottom: 9.0,
        right: 200.0,
        top: 287.5,
    };
    for page in &pages {
        for item in &page.items {
            let extent = item.extent().unwrap();
            assert!(inside.contains(&extent), "{item:?}");
        }
        let boxes: Vec<Extent> = texts(page)
            .iter()
            .filter(|text| !text.text.trim().is_empty())
            .map(|text| text.text_box().extent().grown(-0.05))
            .collect();
        for (index, one) in boxes.iter().enumerate() {
            assert!(
                boxes
                    .iter()
                    .skip(index + 1)
                    .all(|other| !one.overlaps(other))
            );
        }
    }
}

#[test]
fn every_word_is_there_in_order_and_every_page_is_numbered() {
    let pages = pages(&sheet(every_kind()));
    let count = pages.len();
    for (index, page) in pages.iter().enumerate() {
        assert!(words(page).contains(&format!("page {} of {count}", index + 1)));
        assert!(words(page).contains("Shop plan"));
    }
    let all: Vec<String> = pages.iter().map(words).collect();
    for row in 0..60 {
        let told = all
            .iter()
            .filter(|page| page.contains(&format!("row {row} ")))
            .count();
        assert_eq!(told, 1, "row {row}");
    }
    assert_eq!(
        all.join("").matches("sentence").count(),
        4 * 30,
        "no word is lost at the end of a page"
    );
}

#[test]
fn the_head_of_a_table_stands_on_every_page_that_it_goes_over() {
    let pages = pages(&sheet(vec![Block::Table(long_table(80))]));
    assert!(pages.len() > 1);
    assert!(pages.iter().all(|page| words(page).contains("readings")));
}

#[test]
fn a_heading_never_stands_last() {
    for lines in 0..60 {
        let mut blocks = vec![Block::Text("one line".to_owned()); lines];
        blocks.push(Block::Heading("MATERIAL".to_owned()));
        blocks.push(Block::Text("round bar".to_owned()));
        let pages = pages(&sheet(blocks));
        let with = |word: &str| pages.iter().position(|page| words(page).contains(word));
        assert_eq!(
            with("MATERIAL"),
            with("round bar"),
            "{lines} lines before it"
        );
    }
}

#[test]
fn main_text_is_read_at_arms_length_and_an_empty_sheet_is_a_page() {
    let pages = pages(&sheet(vec![Block::Tick("face".to_owned())]));
    let step = texts(&pages[0])
        .into_iter()
        .find(|text| text.text == "face")
        .unwrap();
    assert!(step.height_mm >= 3.5);
    assert!(unknown_letters("°±×µØ–'\"").is_empty());
    assert_eq!(super::pages(&sheet(Vec::new())).len(), 1);
}

/// A picture keeps its shape and lies beside its text, not on it.
#[test]
fn a_picture_lies_beside_its_text() {
    let pages = pages(&sheet(every_kind()));
    let drawn: Vec<Extent> = pages
        .iter()
        .flat_map(|page| &page.items)
        .filter(|item| item.pen.role == crate::drawing::Role::Ring)
        .map(|item| item.extent().unwrap())
        .collect();
    assert_eq!(drawn.len(), 2);
    assert!((drawn[0].height() - 60.0).abs() < 1e-9);
    assert!(
        (drawn[1].width() - 30.0).abs() < 1e-9,
        "ten times 3 mm at most"
    );
    assert!((drawn[1].height() - drawn[1].width()).abs() < 1e-9);
    assert!(drawn[1].left > 140.0);
}
