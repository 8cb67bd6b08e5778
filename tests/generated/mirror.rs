//! The plan from the body side is the mirror image of the plan from the lens side: every x the other way.

use flangewright::drawing::{PlanOptions, Scene, Shape, plan_view};
use flangewright::evaluate::evaluate;
use flangewright::geometry::{Point, Side};
use flangewright::workshop::Workshop;

use crate::pairs::plausible;

/// Corners and centres of what carries a number: lugs, lock hole, cutting line.
fn numbered(scene: &Scene) -> Vec<(u32, Vec<Point>)> {
    let points = |shape: &Shape| match shape {
        Shape::Path(path) => path.vertices.iter().map(|vertex| vertex.at).collect(),
        Shape::Circle { centre, .. } => vec![*centre],
        _ => Vec::new(),
    };
    scene
        .items
        .iter()
        .filter_map(|item| Some((item.tag?, points(&item.shape))))
        .collect()
}

#[test]
fn plans_from_the_two_sides_are_mirror_images() {
    let workshop = Workshop::default_set().unwrap();
    let mut compared = 0;
    for index in 0..300 {
        let design = plausible(60, index);
        let evaluation = evaluate(&design, &workshop);
        let seen = |side: Side| {
            let cut_deg = Some(design.sheet.section_angle_deg);
            numbered(&plan_view(
                &design,
                &evaluation,
                &PlanOptions {
                    side,
                    body: true,
                    entry: false,
                    cut_deg,
                },
            ))
        };
        let (lens, body) = (seen(Side::Lens), seen(Side::Body));
        assert_eq!(lens.len(), body.len(), "{index}");
        for ((tag, there), (other, mirrored)) in lens.iter().zip(&body) {
            assert_eq!((tag, there.len()), (other, mirrored.len()), "{index}");
            for (a, b) in there.iter().zip(mirrored) {
                assert!(
                    (a.x + b.x).abs() < 1e-9 && (a.y - b.y).abs() < 1e-9,
                    "{index}: {a:?} and {b:?}"
                );
                compared += 1;
            }
        }
    }
    assert!(compared > 3_000, "{compared}");
}
