use super::*;
use crate::drawing::path::Path;
use crate::drawing::scene::Shape;

fn point(x: f64, y: f64) -> Point {
    Point { x, y }
}

fn lines(drawn: &Annotation) -> Vec<Path> {
    drawn
        .items
        .iter()
        .filter_map(|item| item.shape.centre_line())
        .collect()
}

/// Tips of the arrowheads: the first corner of each filled area.
fn tips(drawn: &Annotation) -> Vec<(Point, Point)> {
    drawn
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Fill { loops, .. } => Some((loops[0].vertices[0].at, loops[0].vertices[1].at)),
            Shape::Path(_)
            | Shape::Circle { .. }
            | Shape::Arc { .. }
            | Shape::Hatch(_)
            | Shape::Text(_) => None,
        })
        .collect()
}

#[test]
fn level_distance_has_its_lines_where_the_standard_puts_them() {
    // Extension lines 1 mm clear of the outline and 2 mm past the dimension line; text above the line.
    let style = Style::default();
    let wanted = Linear::level(point(10.0, 5.0), point(60.0, 7.0), 20.0, Label::plain("50"));
    let drawn = linear(&wanted, &style);
    let ends: Vec<(Point, Point)> = lines(&drawn)
        .iter()
        .map(|path| (path.vertices[0].at, path.vertices[1].at))
        .collect();
    assert_eq!(ends[0], (point(10.0, 6.0), point(10.0, 22.0)));
    assert_eq!(ends[1], (point(60.0, 8.0), point(60.0, 22.0)));
    assert_eq!(ends[2], (point(10.0, 20.0), point(60.0, 20.0)));
    let text = drawn.boxes[0].extent();
    assert!((text.bottom - 21.0).abs() < 0.1 && (text.centre().x - 35.0).abs() < 1e-9);
    let tips = tips(&drawn);
    assert_eq!(
        (tips[0].0, tips[1].0),
        (point(10.0, 20.0), point(60.0, 20.0))
    );
    // The heads lie inside, 3.5 long.
    assert!((tips[0].1.x - 13.5).abs() < 1e-9 && (tips[1].1.x - 56.5).abs() < 1e-9);
}

#[test]
fn upright_distance_reads_from_the_right() {
    let wanted = Linear::upright(point(0.0, 0.0), point(0.0, 40.0), 12.0, Label::plain("40"));
    let drawn = linear(&wanted, &Style::default());
    let text = drawn.boxes[0];
    assert!((text.rotation_deg - 90.0).abs() < 1e-12);
    // Left of its line.
    assert!((text.extent().right - 11.0).abs() < 0.1);
}

#[test]
fn short_span_has_its_arrows_outside_and_its_text_on_a_tail() {
    let wanted = Linear::level(
        point(0.0, 0.0),
        point(4.0, 0.0),
        10.0,
        Label::plain("4 \u{b1}0,01"),
    );
    let drawn = linear(&wanted, &Style::default());
    let tips = tips(&drawn);
    assert!(tips[0].1.x < 0.0 && tips[1].1.x > 4.0);
    let text = drawn.boxes[0].extent();
    assert!(text.left > 4.0 + 3.5);
    let line = lines(&drawn)[2].extent().unwrap();
    assert!(line.left < -3.5 && (line.right - text.right).abs() < 1e-9);
}

#[test]
fn half_diameter_has_one_arrow_and_crosses_the_axis() {
    let style = Style::default();
    let wanted = Linear::half_diameter(
        point(5.0, 40.0),
        0.0,
        20.0,
        Label::plain("\u{2300}80"),
        &style,
    );
    let drawn = linear(&wanted, &style);
    assert_eq!(tips(&drawn).len(), 1);
    let line = lines(&drawn).last().unwrap().extent().unwrap();
    assert!(line.bottom < -2.0 && (line.top - 40.0).abs() < 1e-9);
}

#[test]
fn distance_measured_backwards_is_drawn_the_same() {
    let style = Style::default();
    let label = Label::plain("30");
    let (a, b) = (point(2.0, 3.0), point(32.0, 3.0));
    let there = linear(&Linear::aligned(a, b, 9.0, label.clone()), &style);
    let back = linear(&Linear::aligned(b, a, -9.0, label), &style);
    assert_eq!(there.boxes[0].extent(), back.boxes[0].extent());
}
