//! Angles, radii, leaders and marks as they come out on paper.

use super::*;
use crate::drawing::annotation::Annotation;
use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::placement::{distance_mm, polar};
use crate::drawing::scene::{Role, Shape};
use crate::geometry::Point;

const CENTRE: Point = Point { x: 20.0, y: -10.0 };

fn angle_of(start_deg: f64, sweep_deg: f64, text: &str) -> Annotation {
    angular(
        &Angular {
            apex: CENTRE,
            radius_mm: 40.0,
            start_deg,
            sweep_deg,
            part_radius_mm: [30.0, 25.0],
            label: Label::plain(text),
        },
        &Style::default(),
    )
}

fn tips(drawn: &Annotation) -> Vec<Point> {
    drawn
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Fill { loops, .. } => Some(loops[0].vertices[0].at),
            Shape::Path(_)
            | Shape::Circle { .. }
            | Shape::Arc { .. }
            | Shape::Hatch(_)
            | Shape::Text(_) => None,
        })
        .collect()
}

fn lines(drawn: &Annotation) -> Vec<Path> {
    drawn
        .items
        .iter()
        .filter_map(|item| item.shape.centre_line())
        .collect()
}

#[test]
fn arrows_of_an_angle_touch_both_rays() {
    let drawn = angle_of(20.0, 60.0, "60\u{b0}");
    let ends = tips(&drawn);
    for (tip, ray_deg) in ends.iter().zip([20.0, 80.0]) {
        assert!(distance_mm(*tip, polar(CENTRE, 40.0, ray_deg)) < 1e-9);
    }
    // Extension lines start 1 mm off the part and end 2 mm past the arc.
    let first = lines(&drawn)[0].clone();
    assert!((distance_mm(CENTRE, first.vertices[0].at) - 31.0).abs() < 1e-9);
    assert!((distance_mm(CENTRE, first.vertices[1].at) - 42.0).abs() < 1e-9);
}

#[test]
fn lettering_of_an_angle_keeps_clear_of_its_arc_all_round() {
    for step in 0..72 {
        let start = 5.0 * f64::from(step);
        for (sweep, text) in [(70.0, "70\u{b0} \u{b1}0,5\u{b0}"), (6.0, "6\u{b0}")] {
            let drawn = angle_of(start, sweep, text);
            let text = drawn.boxes[0];
            assert!(text.rotation_deg > -90.0 && text.rotation_deg <= 90.0);
            for corner in text.corners() {
                let off = distance_mm(CENTRE, corner) - 40.0;
                assert!(off.abs() > 0.4, "{start} {off}");
            }
            let middle = text.extent().centre();
            assert!((distance_mm(CENTRE, middle) - 40.0).abs() < 6.0);
        }
    }
}

#[test]
fn angle_drawn_backwards_is_the_same_angle() {
    let there = angle_of(20.0, 60.0, "60\u{b0}");
    let back = angular(
        &Angular {
            apex: CENTRE,
            radius_mm: 40.0,
            start_deg: 80.0,
            sweep_deg: -60.0,
            part_radius_mm: [25.0, 30.0],
            label: Label::plain("60\u{b0}"),
        },
        &Style::default(),
    );
    assert_eq!(there, back);
}

#[test]
fn radius_arrow_points_at_the_arc_and_its_line_leads_to_the_landing() {
    let style = Style::default();
    for side in [
        RadialSide::Outside { length_mm: 12.0 },
        RadialSide::ThroughCentre { length_mm: 12.0 },
        RadialSide::Inside,
    ] {
        let wanted = Radial {
            centre: CENTRE,
            radius_mm: 30.0,
            angle_deg: 40.0,
            label: Label::plain("R30"),
            side,
        };
        let drawn = radial(&wanted, &style);
        assert!(distance_mm(tips(&drawn)[0], polar(CENTRE, 30.0, 40.0)) < 1e-9);
        for line in lines(&drawn) {
            for pair in line.vertices.windows(2) {
                assert!(!drawn.boxes[0].meets_line(pair[0].at, pair[1].at));
            }
        }
    }
}

#[test]
fn leader_landing_is_as_long_as_its_longest_line_and_lies_under_all() {
    let style = Style::default();
    for side in [-1.0, 1.0] {
        let wanted = Leader {
            tip: CENTRE,
            elbow: Point {
                x: CENTRE.x + 15.0 * side,
                y: 5.0,
            },
            lines: vec![
                Label::plain("3\u{d7} \u{2300}2 (jig)"),
                Label::plain("edge"),
            ],
            terminator: Terminator::Dot,
        };
        let drawn = leader(&wanted, &style);
        let line = &lines(&drawn)[0];
        let landing = distance_mm(line.vertices[1].at, line.vertices[2].at);
        assert!((landing - wanted.width_mm(&style)).abs() < 1e-9);
        assert!((line.vertices[2].at.x - line.vertices[1].at.x) * side > 0.0);
        assert!(!drawn.boxes[0].overlaps(&drawn.boxes[1]));
        for text in &drawn.boxes {
            assert!(text.extent().bottom > 5.0 + 0.4);
        }
    }
}

#[test]
fn detail_letter_is_one_step_larger_and_outside_its_circle() {
    // ISO 3098-1 series: 3.5 is followed by 5.
    let style = Style::default();
    for step in 0..24 {
        let drawn = detail_circle(CENTRE, 8.0, 'X', 15.0 * f64::from(step), 0.0, &style);
        assert!((view_letters(&style).height_mm - 5.0).abs() < 1e-12);
        let text = drawn.boxes[0];
        for corner in text.corners() {
            assert!(distance_mm(CENTRE, corner) > 8.0);
        }
    }
}

#[test]
fn section_mark_has_two_letters_and_arrows_the_way_one_looks() {
    let style = Style::default();
    let mark = SectionMark {
        from: Point { x: 0.0, y: 50.0 },
        to: Point { x: 0.0, y: -50.0 },
        looking_deg: 180.0,
        letter: 'A',
    };
    let drawn = section_mark(&mark, &style);
    assert_eq!(drawn.boxes.len(), 2);
    for tip in tips(&drawn) {
        assert!(tip.x < -5.0 && (tip.y.abs() - 50.0).abs() < 1e-9);
    }
    // ISO 128-2: 04.2 at the ends, 04.1 between.
    let kinds: Vec<LineType> = drawn.items.iter().map(|item| item.pen.line).collect();
    assert!(kinds.contains(&LineType::LongDashDotWide));
    assert!(kinds.contains(&LineType::LongDashDotNarrow));
    assert!(
        drawn
            .items
            .iter()
            .all(|item| item.pen.role == Role::Annotation)
    );
}

#[test]
fn stacked_deviations_stand_one_above_the_other_in_one_height() {
    // ISO 129-1: one character height for size and deviations; the lower one on the baseline of the size.
    let style = Style::default();
    let label = Size::new(Kind::Length, 2.2)
        .within(Tolerance::Deviations {
            upper: 0.05,
            lower: 0.0,
        })
        .label(style.mark);
    let drawn = label.centred(CENTRE, 0.0, &style);
    let texts: Vec<_> = drawn
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text(text) => Some(text.clone()),
            Shape::Path(_)
            | Shape::Circle { .. }
            | Shape::Arc { .. }
            | Shape::Fill { .. }
            | Shape::Hatch(_) => None,
        })
        .collect();
    let said: Vec<&str> = texts.iter().map(|text| text.text.as_str()).collect();
    assert_eq!(said, ["2,2", "+0,05", "0"]);
    assert!(
        texts
            .iter()
            .all(|text| (text.height_mm - 3.5).abs() < 1e-12)
    );
    assert!((texts[2].at.y - texts[0].at.y).abs() < 1e-12);
    assert!(!texts[1].text_box().overlaps(&texts[2].text_box()));
    let around = drawn.boxes[0].extent();
    for text in &texts {
        assert!(
            around.grown(0.1).contains(&text.text_box().extent()),
            "{text:?}"
        );
    }
}
