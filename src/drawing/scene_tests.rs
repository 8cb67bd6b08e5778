use super::*;
use crate::drawing::hatch::Hatch;
use crate::drawing::lettering::Anchor;

fn point(x: f64, y: f64) -> Point {
    Point { x, y }
}

fn sample() -> Scene {
    let mut scene = Scene::view();
    let ring = [
        point(0.0, 0.0),
        point(8.0, 0.0),
        point(8.0, 3.0),
        point(0.0, 5.0),
    ];
    scene.draw(
        Shape::Hatch(Hatch::at_45_deg(vec![Path::polygon(ring)], 1.0)),
        LineType::ContinuousNarrow,
        Role::RingHatch,
    );
    scene.draw(
        Shape::Arc {
            centre: point(2.0, 1.0),
            radius_mm: 4.0,
            start_deg: 20.0,
            sweep_deg: 100.0,
        },
        LineType::LongDashDotNarrow,
        Role::Axis,
    );
    scene.draw(
        Shape::Text(Text::level(point(1.0, 6.0), 3.5, "12,5")),
        LineType::ContinuousNarrow,
        Role::Dimension,
    );
    scene
}

fn text_of(scene: &Scene) -> Text {
    scene
        .items
        .iter()
        .find_map(|item| match &item.shape {
            Shape::Text(text) => Some(text.clone()),
            Shape::Path(_)
            | Shape::Circle { .. }
            | Shape::Arc { .. }
            | Shape::Fill { .. }
            | Shape::Hatch(_) => None,
        })
        .unwrap()
}

#[test]
fn lettering_keeps_its_height_at_any_scale() {
    let mut sheet = Scene::sheet(297.0, 210.0);
    sheet.place(&sample(), 5.0, point(100.0, 50.0));
    let text = text_of(&sheet);
    assert!((text.height_mm - 3.5).abs() < 1e-12);
    assert!((text.at.x - 105.0).abs() < 1e-12 && (text.at.y - 80.0).abs() < 1e-12);
}

#[test]
fn mirrored_lettering_stays_readable_in_the_mirrored_box() {
    for angle in [0.0, 30.0, 90.0] {
        for anchor in [Anchor::Left, Anchor::Centre, Anchor::Right] {
            let text = Text {
                rotation_deg: angle,
                ..Text::level(point(7.0, 2.0), 3.5, "HEM").anchored(anchor)
            };
            for placement in [Placement::mirror_left_right(), Placement::mirror_up_down()] {
                let placed = text.placed(&placement);
                let mut expected = text
                    .text_box()
                    .corners()
                    .map(|corner| placement.point(corner));
                let mut got = placed.text_box().corners();
                let by_place =
                    |a: &Point, b: &Point| (a.x + 1e-3 * a.y).total_cmp(&(b.x + 1e-3 * b.y));
                expected.sort_by(by_place);
                got.sort_by(by_place);
                for (a, b) in expected.iter().zip(got) {
                    assert!((a.x - b.x).hypot(a.y - b.y) < 0.05, "{angle} {anchor:?}");
                }
                assert!(placed.rotation_deg > -90.0 && placed.rotation_deg <= 90.0);
            }
        }
    }
}

#[test]
fn two_mirrors_and_a_half_turn_leave_everything_in_place() {
    let scene = sample();
    let twice = scene
        .transformed(&Placement::mirror_left_right())
        .transformed(&Placement::mirror_left_right());
    let turned = scene
        .transformed(&Placement::rotation(180.0))
        .transformed(&Placement::mirror_left_right())
        .transformed(&Placement::mirror_up_down());
    let bounds = scene.bounds().unwrap();
    for other in [twice, turned] {
        let back = other.bounds().unwrap();
        assert!(back.grown(1e-9).contains(&bounds) && bounds.grown(1e-9).contains(&back));
    }
}

#[test]
fn bounds_hold_every_stroke_and_grow_with_the_scale() {
    let mut scene = sample();
    let bounds = scene.bounds().unwrap();
    for item in &scene.items {
        for stroke in item.strokes(LineGroup::Half) {
            assert!(bounds.grown(1e-9).contains(&stroke.extent().unwrap()));
        }
    }
    scene
        .items
        .retain(|item| !matches!(item.shape, Shape::Text(_)));
    let width = scene.bounds().unwrap().width();
    let doubled = scene.transformed(&Placement::scaling(2.0));
    assert!((doubled.bounds().unwrap().width() - 2.0 * width).abs() < 1e-9);
}

#[test]
fn hatch_keeps_its_spacing_on_paper_and_its_lines_in_the_region() {
    let Shape::Hatch(hatch) = &sample().items[0].shape else {
        panic!("the first item is the hatch");
    };
    let placement = Placement {
        scale: 4.0,
        rotation_deg: 25.0,
        mirrored: true,
        origin: point(50.0, 60.0),
    };
    let placed = hatch.placed(&placement);
    let area = |lines: &[Path]| lines.iter().map(Path::length_mm).sum::<f64>();
    // The region has (5 + 3) / 2 x 8 = 32 mm2, sixteen times as much at 4:1.
    assert!((area(&placed.lines()) / 512.0 - 1.0).abs() < 0.02);
    assert!((placed.spacing_mm - 1.0).abs() < 1e-12);
}

#[test]
fn frame_lines_keep_their_width_in_both_groups() {
    let pen = Pen::new(LineType::ContinuousWide, Role::Frame);
    assert!((pen.width_mm(LineGroup::Half) - 0.7).abs() < 1e-12);
    let edge = Pen::new(LineType::ContinuousWide, Role::Ring);
    assert!((edge.width_mm(LineGroup::Half) - 0.5).abs() < 1e-12);
}

#[test]
fn chain_line_strokes_add_up_to_the_line_less_its_gaps() {
    let mut scene = Scene::view();
    scene.draw(
        Shape::Path(Path::line(point(0.0, 0.0), point(60.0, 0.0))),
        LineType::LongDashDotNarrow,
        Role::Axis,
    );
    let strokes = scene.items[0].strokes(LineGroup::Half);
    let first = strokes.first().unwrap().extent().unwrap();
    let last = strokes.last().unwrap().extent().unwrap();
    assert!(first.left.abs() < 1e-9 && (last.right - 60.0).abs() < 1e-9);
    let drawn: f64 = strokes.iter().map(Path::length_mm).sum();
    let gaps = crate::drawing::whole::as_f64(strokes.len() - 1) * 0.75;
    assert!((drawn + gaps - 60.0).abs() < 1e-9);
}
