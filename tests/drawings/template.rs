//! The lug template: at 1:1, nothing over anything else.

use flangewright::document::Choice;
use flangewright::drawing::template::{FORMAT, TemplateError, template};
use flangewright::drawing::{Extent, Scene, Shape, Text};
use flangewright::geometry::Point;
use flangewright::mount::Sector;

use super::bench::{DEMOS, demo, evaluated};

fn texts(scene: &Scene) -> Vec<&Text> {
    scene
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text(text) => Some(text),
            Shape::Path(_)
            | Shape::Circle { .. }
            | Shape::Arc { .. }
            | Shape::Fill { .. }
            | Shape::Hatch(_) => None,
        })
        .collect()
}

fn nothing_overlaps(scene: &Scene, name: &str) {
    let (width, height) = FORMAT.size_mm();
    let page = Extent::sized(Point { x: 0.0, y: 0.0 }, width, height).grown(-5.0);
    let all = texts(scene);
    for (index, own) in all.iter().enumerate() {
        assert!(
            page.contains(&own.text_box().extent()),
            "{name}: {own:?} off the page"
        );
        for other in &all[index + 1..] {
            assert!(
                !own.text_box().overlaps(&other.text_box()),
                "{name}: {own:?} {other:?}"
            );
        }
    }
    assert!(page.contains(&scene.bounds().unwrap()), "{name}");
}

#[test]
fn demos_have_their_flange_at_true_size_and_clear_lettering() {
    for name in DEMOS {
        let design = demo(name);
        let evaluation = evaluated(&design);
        let scene = template(&design, &evaluation).unwrap();
        nothing_overlaps(&scene, name);
        let flange = evaluation
            .derivation
            .ring
            .as_ref()
            .unwrap()
            .sizes
            .flange_diameter;
        let widest = scene.items.iter().filter_map(|item| match item.shape {
            Shape::Circle { radius_mm, .. } => Some(2.0 * radius_mm),
            Shape::Path(_)
            | Shape::Arc { .. }
            | Shape::Fill { .. }
            | Shape::Hatch(_)
            | Shape::Text(_) => None,
        });
        assert!((widest.fold(0.0, f64::max) - flange).abs() < 1e-12);
        let says_side = texts(&scene)
            .iter()
            .any(|text| text.text.contains("body side"));
        assert!(says_side, "{name}");
    }
}

/// `count` lugs, evenly set, of `share` of their pitch.
fn lugs(count: u16, share: f64) -> Vec<Sector> {
    let pitch = 360.0 / f64::from(count);
    (0..count)
        .map(|index| Sector {
            start_deg: pitch * f64::from(index) + 7.0,
            extent_deg: share * pitch,
        })
        .collect()
}

#[test]
fn many_lugs_stay_readable_or_are_refused() {
    let mut design = demo("archive_portrait");
    for count in [1, 2, 6, 12, 30, 60] {
        design.ring.lugs = Choice::Set(lugs(count, 0.4));
        nothing_overlaps(
            &template(&design, &evaluated(&design)).unwrap(),
            &format!("{count} lugs"),
        );
    }
}

#[test]
fn a_flange_wider_than_the_paper_is_refused_with_its_size() {
    let design = demo("archive_portrait");
    let mut evaluation = evaluated(&design);
    let ring = evaluation.derivation.ring.as_mut().unwrap();
    ring.sizes.flange_diameter = 240.0;
    assert_eq!(
        template(&design, &evaluation),
        Err(TemplateError::TooLarge(240.0))
    );
}

/// The template is laid on from the body side: what is clockwise from the lens side runs the other way on it.
#[test]
fn an_asymmetric_pattern_is_turned_round() {
    let mut design = demo("archive_portrait");
    // One lug from 20 to 60 degrees, seen from the lens side: right of 12 o'clock there, left of it from behind.
    design.ring.lugs = Choice::Set(vec![Sector {
        start_deg: 20.0,
        extent_deg: 40.0,
    }]);
    let scene = template(&design, &evaluated(&design)).unwrap();
    let number = texts(&scene)
        .into_iter()
        .find(|text| text.text == "1")
        .unwrap();
    assert!(number.text_box().extent().centre().x < FORMAT.size_mm().0 / 2.0);
}
