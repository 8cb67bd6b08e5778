//! Signs as they come out on paper, against the proportions of their standards (from memory).

use super::datum::datum_sign;
use super::edge::{EdgeKind, edge_sign, edge_sign_width_mm};
use super::surface::{Removal, SurfaceSign, surface_sign};
use super::tolerance_frame::{Characteristic, ToleranceFrame, tolerance_frame};
use super::*;
use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::Style;
use crate::drawing::extent::Extent;
use crate::drawing::scene::Item;

fn extent(drawn: &Annotation) -> Extent {
    drawn
        .items
        .iter()
        .filter_map(Item::extent)
        .reduce(Extent::union)
        .unwrap()
}

fn surface(removal: Removal, requirement: &str) -> SurfaceSign {
    SurfaceSign {
        at: at(0.0, 0.0),
        rotation_deg: 0.0,
        removal,
        requirement: requirement.to_owned(),
    }
}

#[test]
fn surface_sign_has_the_heights_of_the_standard() {
    // ISO 1302:2002 annex (from memory): lettering 3.5, short leg 5, long leg 10.5.
    let style = Style::default();
    let sign = surface(Removal::Required, "Ra 1,6");
    let drawn = surface_sign(&sign, &style);
    let around = extent(&drawn);
    assert!(around.bottom.abs() < 1e-9 && (around.top - 10.5).abs() < 1e-9);
    let bar = drawn.items[1].extent().unwrap();
    assert!((bar.bottom - 4.9).abs() < 0.15 && bar.height() < 1e-9);
    let (width, height, left) = sign.size_mm(&style);
    assert!((around.left + left).abs() < 1e-9 && (around.height() - height).abs() < 1e-9);
    assert!((around.width() - width).abs() < 1e-9);
    assert!(drawn.boxes[0].extent().top < 10.5);
}

#[test]
fn circle_of_the_forbidden_sign_touches_both_legs() {
    let drawn = surface_sign(&surface(Removal::Forbidden, ""), &Style::default());
    let circle = drawn.items[1].extent().unwrap();
    let radius = circle.width() / 2.0;
    // A leg at 60 deg through the origin is y cos 60 away from a point on the axis at height y.
    let distance = circle.centre().y * 60.0_f64.to_radians().cos();
    assert!((distance - radius).abs() < 1e-9);
    assert!((circle.top - 1.4 * 3.5).abs() < 1e-9);
}

#[test]
fn tolerance_frame_is_two_heights_high_with_a_square_first_field() {
    // ISO 7083 (from memory): frame 2h high, first compartment square.
    let style = Style::default();
    let frame = ToleranceFrame {
        characteristic: Characteristic::CircularRunOut,
        zone: "0,03".to_owned(),
        datums: vec!['A', 'B'],
    };
    let drawn = tolerance_frame(&frame, at(10.0, 20.0), &style);
    let around = extent(&drawn);
    assert!((around.bottom - 16.5).abs() < 1e-9 && (around.top - 23.5).abs() < 1e-9);
    assert!((around.left - 10.0).abs() < 1e-9);
    assert!((around.width() - frame.width_mm(&style)).abs() < 1e-9);
    let cells: Vec<Extent> = drawn
        .items
        .iter()
        .filter(|item| item.shape.centre_line().is_some())
        .filter_map(Item::extent)
        .collect();
    assert_eq!(cells.len(), 4);
    assert!((cells[0].width() - 7.0).abs() < 1e-9);
    for (cell, text) in cells.iter().zip(&drawn.boxes) {
        assert!(cell.contains(&text.extent()), "{text:?}");
    }
}

#[test]
fn every_characteristic_fits_its_field() {
    let style = Style::default();
    for characteristic in [
        Characteristic::Flatness,
        Characteristic::Parallelism,
        Characteristic::Perpendicularity,
        Characteristic::Concentricity,
        Characteristic::Position,
        Characteristic::CircularRunOut,
        Characteristic::TotalRunOut,
    ] {
        let frame = ToleranceFrame {
            characteristic,
            zone: "0,02".to_owned(),
            datums: vec!['A'],
        };
        let drawn = tolerance_frame(&frame, at(0.0, 0.0), &style);
        let field = drawn.items[0].extent().unwrap();
        let letter = characteristic.sign().to_string();
        let ink = kurbo::Shape::bounding_box(&crate::drawing::lettering::outline(&letter, 3.5));
        assert!(
            ink.height() <= 7.0 + 1e-6 && ink.width() < field.width(),
            "{characteristic:?}"
        );
        assert!(
            field.contains(&drawn.boxes[0].extent().grown(-0.35)),
            "{characteristic:?}"
        );
    }
}

#[test]
fn datum_stands_off_its_line_in_any_direction() {
    let style = Style::default();
    for step in 0..24 {
        let away = 15.0 * f64::from(step);
        let foot = at(3.0, 4.0);
        let drawn = datum_sign(foot, away, 0.0, 'A', &style);
        let square = drawn.boxes[0].extent();
        let unit = crate::drawing::placement::unit_at(away);
        let along = (square.centre().x - foot.x) * unit.x + (square.centre().y - foot.y) * unit.y;
        // Triangle 3.03, stem 3.5 and half the square.
        assert!(along > 3.03 + 3.5 + 3.5 - 1e-9, "{away}");
        let triangle = drawn.items[0].extent().unwrap();
        let base_reach = triangle.grown(1e-9);
        assert!(base_reach.contains(&Extent::between(foot, foot)));
    }
}

#[test]
fn edge_signs_are_the_two_corners() {
    let style = Style::default();
    for (kind, corner) in [
        (EdgeKind::External, at(2.0, 3.0 + 5.25)),
        (EdgeKind::Internal, at(2.0, 3.0)),
    ] {
        let drawn = edge_sign(kind, at(2.0, 3.0), "\u{2212}0,2", &style);
        let legs = drawn.items[0].shape.centre_line().unwrap();
        assert!(crate::drawing::placement::distance_mm(legs.vertices[1].at, corner) < 1e-9);
        let around = extent(&drawn);
        let width = edge_sign_width_mm("\u{2212}0,2", &style);
        assert!((around.width() - width).abs() < 1e-9);
    }
}
