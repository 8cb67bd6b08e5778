use kurbo::Shape as _;
use skrifa::instance::{LocationRef, Size};
use skrifa::{FontRef, MetadataProvider as _};

use super::*;
use crate::drawing::font::FONT;

fn origin() -> Point {
    Point { x: 0.0, y: 0.0 }
}

#[test]
fn capitals_are_as_high_as_the_nominal_height() {
    // ISO 3098-1: the nominal height is that of the capitals.
    for height in HEIGHTS_MM {
        let ink = outline("H", height).bounding_box();
        assert!((ink.height() - height).abs() < 0.02 * height, "{ink:?}");
        assert!(ink.y0.abs() < 0.01 * height);
    }
}

#[test]
fn width_is_the_sum_of_the_advances_of_the_font() {
    let font = FontRef::new(FONT).unwrap();
    let metrics = font.glyph_metrics(Size::unscaled(), LocationRef::default());
    let capital = font
        .metrics(Size::unscaled(), LocationRef::default())
        .cap_height
        .unwrap();
    let text = "M42 \u{d7} 1 - 6H, 35 \u{b1}0,02";
    let units: f32 = text
        .chars()
        .map(|letter| {
            metrics
                .advance_width(font.charmap().map(letter).unwrap())
                .unwrap()
        })
        .sum();
    let expected = f64::from(units / capital) * 3.5;
    assert!((width_mm(text, 3.5) - expected).abs() < 1e-4);
}

#[test]
fn figures_are_all_equally_wide() {
    let width = width_mm("0", 3.5);
    for figure in '1'..='9' {
        assert!((width_mm(&figure.to_string(), 3.5) - width).abs() < 1e-9);
    }
}

#[test]
fn every_sign_is_drawn_inside_its_cell() {
    for sign in signs::ALL {
        let text = sign.to_string();
        let ink = outline(&text, 3.5).bounding_box();
        assert!(ink.width() > 1.0 && ink.height() > 1.0, "{sign}");
        assert!(ink.x0 >= 0.0 && ink.x1 <= width_mm(&text, 3.5), "{sign}");
        assert!(unknown_letters(&text).is_empty());
        assert!(runs(&text, 3.5)[0].is_sign);
    }
}

#[test]
fn letters_in_daily_use_have_ink() {
    for letter in ('!'..='~').chain("\u{d8}\u{b0}\u{b1}\u{d7}\u{2212}\u{b5}".chars()) {
        let ink = outline(&letter.to_string(), 10.0).bounding_box();
        assert!(ink.width() > 0.5 && ink.height() > 0.5, "{letter}");
    }
    assert_eq!(unknown_letters("a\u{4e00}b"), vec!['\u{4e00}']);
}

#[test]
fn ink_lies_inside_the_text_box() {
    for text in ["35 \u{b1}0,02", "(12,5)", "gauge jig", "\u{2300}40 H7"] {
        let line = Text {
            rotation_deg: 0.0,
            ..Text::level(Point { x: 4.0, y: -3.0 }, 5.0, text).anchored(Anchor::Centre)
        };
        let ink = line.outline().bounding_box();
        let around = line.text_box().extent().grown(1e-9);
        assert!(ink.x0 >= around.left && ink.x1 <= around.right, "{text}");
        assert!(ink.y0 >= around.bottom && ink.y1 <= around.top, "{text}");
    }
}

#[test]
fn upright_lettering_runs_up_the_page() {
    let line = Text {
        rotation_deg: 90.0,
        ..Text::level(origin(), 3.5, "100")
    };
    let ink = line.outline().bounding_box();
    assert!(ink.x0 > -3.7 && ink.x1 < 0.1 && ink.y0 >= 0.0 && ink.y1 > 6.0);
}

#[test]
fn runs_split_at_signs_and_keep_their_places() {
    let parts = runs("3\u{d7} \u{2300}40 H7", 3.5);
    let texts: Vec<&str> = parts.iter().map(|run| run.text.as_str()).collect();
    assert_eq!(texts, ["3\u{d7} ", "\u{2300}", "40 H7"]);
    assert!((parts[1].start_mm - width_mm("3\u{d7} ", 3.5)).abs() < 1e-12);
    assert!((parts[2].start_mm - width_mm("3\u{d7} \u{2300}", 3.5)).abs() < 1e-12);
}
