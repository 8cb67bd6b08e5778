use super::*;
use crate::drawing::lettering::Text;

fn filled() -> TitleBlock {
    TitleBlock {
        // As long as ISO 7200 lets each mandatory field be: 16, 10, 4, 25, 20, 20, 30 letters.
        owner: "Invented workshop, Example Lane 5, Nowhere".to_owned(),
        identification: "FW-0042-AAAA-123".to_owned(),
        issued: "2026-11-25".to_owned(),
        sheet: "1/12".to_owned(),
        title: "Adapter ring with pin lip".to_owned(),
        approved_by: "Annemarie Nobody-Jon".to_owned(),
        created_by: "Bartholomew Somebody".to_owned(),
        document_type: "Part drawing, invented example".to_owned(),
        supplement: "M42 \u{d7} 1, register 45,46".to_owned(),
        revision: "AB".to_owned(),
        status: "For trial cut".to_owned(),
        material: "Free-cutting aluminium bar, half hard".to_owned(),
        finish: "black anodised, 10 \u{b5}m a side".to_owned(),
        mass: "38 g".to_owned(),
        scale: "2:1".to_owned(),
        general_tolerances: "ISO 2768-m".to_owned(),
        surface: "Ra 3,2".to_owned(),
        outside_edges: "\u{2212}0,2".to_owned(),
        inside_edges: "+0,2".to_owned(),
        projection: Projection::FirstAngle,
    }
}

fn texts(items: &[Item]) -> Vec<Text> {
    items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text(text) => Some(text.clone()),
            Shape::Path(_)
            | Shape::Circle { .. }
            | Shape::Arc { .. }
            | Shape::Fill { .. }
            | Shape::Hatch(_) => None,
        })
        .collect()
}

const CORNER: Point = Point { x: 287.0, y: 10.0 };

#[test]
fn longest_allowed_texts_fit_and_stay_in_their_fields() {
    let items = title_block(&filled(), CORNER).unwrap();
    let lower_left = Point {
        x: CORNER.x - WIDTH_MM,
        y: CORNER.y,
    };
    let fields = cells(&filled(), lower_left);
    for text in texts(&items) {
        let around = text.text_box().extent();
        let home = fields
            .iter()
            .filter(|cell| cell.area.grown(-0.3).contains(&around));
        assert_eq!(home.count(), 1, "{text:?}");
    }
}

#[test]
fn no_two_texts_of_the_block_overlap() {
    let texts = texts(&title_block(&filled(), CORNER).unwrap());
    assert!(texts.len() > 30);
    for (index, own) in texts.iter().enumerate() {
        for other in &texts[index + 1..] {
            assert!(
                !own.text_box().overlaps(&other.text_box()),
                "{own:?} {other:?}"
            );
        }
    }
}

#[test]
fn fields_fill_the_block_without_overlap() {
    let corner = Point { x: 0.0, y: 0.0 };
    let fields = cells(&filled(), corner);
    let total: f64 = fields
        .iter()
        .map(|cell| cell.area.width() * cell.area.height())
        .sum();
    assert!((total - WIDTH_MM * HEIGHT_MM).abs() < 1e-9);
    for (index, own) in fields.iter().enumerate() {
        for other in &fields[index + 1..] {
            assert!(!own.area.grown(-1e-9).overlaps(&other.area));
        }
    }
    let rows: f64 = ROWS_MM.iter().sum();
    assert!((rows - HEIGHT_MM).abs() < 1e-9);
}

#[test]
fn every_word_of_every_field_is_on_the_paper() {
    let drawn: Vec<String> = texts(&title_block(&filled(), CORNER).unwrap())
        .into_iter()
        .map(|text| text.text)
        .collect();
    let page = drawn.join(" ");
    for field in [
        filled().owner,
        filled().identification,
        filled().title,
        filled().document_type,
        filled().material,
        filled().surface,
        filled().outside_edges,
        filled().inside_edges,
    ] {
        assert!(page.contains(&field), "{field} in {page}");
    }
}

#[test]
fn text_too_long_for_its_field_is_refused() {
    let long = TitleBlock {
        revision: "ABCDEFGHIJKLMNO".to_owned(),
        ..filled()
    };
    let refusal = title_block(&long, CORNER).unwrap_err();
    assert!(refusal.to_string().contains("Revision"));
    let rough = TitleBlock {
        surface: "Ra 3,2 all over and more".to_owned(),
        ..filled()
    };
    assert!(title_block(&rough, CORNER).is_err());
}
