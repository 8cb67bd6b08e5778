//! The page by what is on it.

use super::*;
use crate::document::{Choice, Design, RingKey, demo_designs};
use crate::drawing::lettering::Text;
use crate::evaluate::{Evaluation, evaluate};
use crate::workshop::Workshop;

fn drawn(count: usize, choices: &SheetChoices) -> Scene {
    let workshop = Workshop::default_set().unwrap();
    let demo = demo_designs().unwrap().remove(0);
    let lips = [1.0, 1.2, 0.9, 1.4, 1.1, 0.7];
    let designs: Vec<Design> = lips[..count]
        .iter()
        .map(|lip| {
            let mut design = demo.clone();
            design.ring.dimensions.get_mut(RingKey::LipThickness).value = Choice::Set(*lip);
            design.name = format!("lip {lip}");
            design
        })
        .collect();
    let evaluations: Vec<Evaluation> = designs
        .iter()
        .map(|design| evaluate(design, &workshop))
        .collect();
    let subjects: Vec<Subject<'_>> = designs
        .iter()
        .zip(&evaluations)
        .map(|(design, evaluation)| Subject {
            name: &design.name,
            design,
            evaluation,
        })
        .collect();
    page(&subjects, choices)
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

#[test]
fn names_side_legend_and_differing_dimensions_are_on_it_and_nothing_leaves_it() {
    for count in 2..=6 {
        let scene = drawn(count, &SheetChoices::default());
        let frame = scene.frame().unwrap();
        for item in &scene.items {
            if let Some(extent) = item.extent() {
                assert!(frame.contains(&extent), "{count}: {item:?}");
            }
        }
        let words: Vec<&str> = texts(&scene)
            .iter()
            .map(|text| text.text.as_str())
            .collect();
        for wanted in [
            "lip 1.2",
            "ring: Lip thickness",
            "1.20 mm",
            "+ metal added by the second",
        ] {
            assert!(words.contains(&wanted), "{count}: {wanted}");
        }
        assert!(
            words
                .iter()
                .any(|line| line.contains("seen from the lens side"))
        );
    }
}

#[test]
fn no_two_texts_overlap() {
    for choices in [
        SheetChoices::default(),
        SheetChoices {
            side: Side::Body,
            partners: true,
            ..SheetChoices::default()
        },
    ] {
        let scene = drawn(6, &choices);
        let texts = texts(&scene);
        for (place, text) in texts.iter().enumerate() {
            let own = text.text_box().extent();
            for other in &texts[place + 1..] {
                let overlaps = own.overlaps(&other.text_box().extent());
                assert!(!overlaps, "{} over {}", text.text, other.text);
            }
        }
    }
}

/// All half-sections stand at one distance from the flange rear face: the seat and nose of equal rings are a column's
/// width apart.
#[test]
fn half_sections_are_aligned_and_in_equal_scale() {
    let scene = drawn(3, &SheetChoices::default());
    let rear = crate::drawing::tag_of(crate::ring::Feature::FlangeRearFace);
    let places: Vec<Point> = scene
        .items
        .iter()
        .filter(|item| item.tag == Some(rear) && item.pen.role == Role::Ring)
        .filter_map(crate::drawing::Item::extent)
        .map(|extent| extent.centre())
        .take(3)
        .collect();
    let column = (WIDTH - 2.0 * BORDER - NAMES) / 3.0;
    for pair in places.windows(2) {
        assert!((pair[1].x - pair[0].x - column).abs() < 1e-9);
        assert!((pair[1].y - pair[0].y).abs() < 1e-9);
    }
}
