//! Ten thousand random sides: what is drawn never overlaps.

use super::*;
use crate::drawing::path::Path;
use crate::drawing::scene::Shape;
use crate::drawing::test_random::Random;
use crate::drawing::text_box::TextBox;

const EDGES: [Edge; 4] = [Edge::Top, Edge::Bottom, Edge::Left, Edge::Right];

const VIEW: Extent = Extent {
    left: 0.0,
    bottom: 0.0,
    right: 90.0,
    top: 90.0,
};

/// A point at a place along a side and somewhat inside the view.
fn on_part(edge: Edge, along: f64, depth: f64) -> Point {
    match edge {
        Edge::Top => Point {
            x: along,
            y: VIEW.top - depth,
        },
        Edge::Bottom => Point { x: along, y: depth },
        Edge::Left => Point { x: depth, y: along },
        Edge::Right => Point {
            x: VIEW.right - depth,
            y: along,
        },
    }
}

fn label(random: &mut Random, span: f64) -> Label {
    use crate::drawing::dimension::{Kind, Size, Tolerance};
    let size = Size::new(Kind::Length, span);
    let mark = crate::drawing::number::DecimalMark::Comma;
    match random.below(4) {
        0 => size.within(Tolerance::PlusMinus(0.02)).label(mark),
        1 => {
            let unequal = Tolerance::Deviations {
                upper: 0.05,
                lower: 0.0,
            };
            size.within(unequal).label(mark)
        }
        2 => size.in_brackets().label(mark),
        _ => size.label(mark),
    }
}

/// Faces in random places, and dimensions that join them to a tree, as a good set of dimensions does.
fn random_tree(random: &mut Random, edge: Edge) -> Vec<SideDimension> {
    let count = 2 + random.below(8);
    let mut faces: Vec<f64> = vec![0.0, 90.0];
    while u32::try_from(faces.len()).unwrap() < count {
        faces.push(random.between(0.0, 90.0));
    }
    let mut wanted = Vec::new();
    for (id, &face) in (0_u32..).zip(&faces).skip(1) {
        let other = faces[usize::try_from(random.below(id)).unwrap()];
        let depth = random.between(0.0, 20.0);
        let span = ((face - other).abs() * 1000.0).round() / 1000.0;
        let label = label(random, span);
        wanted.push(SideDimension::new(
            id,
            on_part(edge, face, depth),
            on_part(edge, other, 0.0),
            label,
        ));
    }
    wanted
}

/// The three corners of each arrowhead as a box round it.
fn heads(drawn: &Annotation) -> Vec<Extent> {
    drawn
        .items
        .iter()
        .filter(|item| matches!(item.shape, Shape::Fill { .. }))
        .filter_map(crate::drawing::scene::Item::extent)
        .collect()
}

fn lines(drawn: &Annotation) -> Vec<Path> {
    drawn
        .items
        .iter()
        .filter_map(|item| item.shape.centre_line())
        .collect()
}

fn meets(text: &TextBox, line: &Path) -> bool {
    text.meets_line(line.vertices[0].at, line.vertices[1].at)
}

fn span(dimension: &SideDimension, edge: Edge) -> (f64, f64) {
    let (a, b) = (edge.along(dimension.from), edge.along(dimension.to));
    (a.min(b), a.max(b))
}

fn check(wanted: &[SideDimension], edge: Edge, all: &[SideDrawn]) {
    let ids: Vec<u32> = all.iter().map(|drawn| drawn.id).collect();
    let wanted_ids: Vec<u32> = wanted.iter().map(|dimension| dimension.id).collect();
    assert_eq!(ids, wanted_ids, "every dimension once");
    for (index, own) in all.iter().enumerate() {
        let text = own.drawn.boxes[0];
        for (other_index, other) in all.iter().enumerate() {
            for line in lines(&other.drawn) {
                assert!(
                    !meets(&text, &line),
                    "text across a line: {own:?} {other:?}"
                );
            }
            if other_index == index {
                continue;
            }
            let other_text = other.drawn.boxes[0];
            assert!(
                !text.grown(0.5).overlaps(&other_text.grown(0.5)),
                "texts 1 mm apart"
            );
            for head in heads(&other.drawn) {
                assert!(!text.extent().overlaps(&head), "text across an arrow");
            }
            // Own dimension line is the last drawn; it crosses no other head in its tier.
            let own_line = lines(&own.drawn).pop().unwrap().extent().unwrap();
            for head in heads(&other.drawn) {
                assert!(!own_line.grown(-1e-6).overlaps(&head.grown(-1e-6)));
            }
            let (inner, outer) = (span(&wanted[index], edge), span(&wanted[other_index], edge));
            let is_nested = inner.0 >= outer.0 && inner.1 <= outer.1 && inner != outer;
            assert!(!is_nested || own.tier < other.tier, "nested lies inside");
        }
    }
}

#[test]
fn nothing_overlaps_in_ten_thousand_random_sides() {
    let style = Style::default();
    let mut random = Random::seeded(20_261_125);
    let mut most_tiers = 0;
    for case in 0..10_000_usize {
        let edge = EDGES[case % 4];
        let wanted = random_tree(&mut random, edge);
        let all = side(&wanted, edge, &VIEW, &style);
        check(&wanted, edge, &all);
        most_tiers = all
            .iter()
            .map(|drawn| drawn.tier)
            .fold(most_tiers, usize::max);
    }
    // Nine faces have eight dimensions at most, one tier each.
    assert!(most_tiers <= 8);
}

#[test]
fn half_diameters_side_by_side_do_not_overlap() {
    let style = Style::default();
    let mut random = Random::seeded(3);
    for _ in 0..2000 {
        let edge = if random.below(2) == 0 {
            Edge::Left
        } else {
            Edge::Right
        };
        let wanted: Vec<SideDimension> = (0..2 + random.below(5))
            .map(|id| {
                let radius = random.between(12.0, 90.0);
                SideDimension {
                    ends: Ends::OnlyTo,
                    ..SideDimension::new(
                        id,
                        on_part(edge, -7.0, 0.0),
                        on_part(edge, radius, 2.0),
                        label(&mut random, 2.0 * radius),
                    )
                }
            })
            .collect();
        check(&wanted, edge, &side(&wanted, edge, &VIEW, &style));
    }
}

#[test]
fn mirrored_part_gets_the_mirrored_places() {
    let style = Style::default();
    let mut random = Random::seeded(11);
    for _ in 0..1000 {
        // The whole length is its own mirror image: which side its tail takes is not decided by it.
        let mut wanted = random_tree(&mut random, Edge::Top);
        wanted.retain(|dimension| span(dimension, Edge::Top) != (0.0, 90.0));
        let mirror = |point: Point| Point {
            x: 90.0 - point.x,
            ..point
        };
        let mirrored: Vec<SideDimension> = wanted
            .iter()
            .map(|dimension| SideDimension {
                from: mirror(dimension.from),
                to: mirror(dimension.to),
                ..dimension.clone()
            })
            .collect();
        let there = side(&wanted, Edge::Top, &VIEW, &style);
        let back = side(&mirrored, Edge::Top, &VIEW, &style);
        for (a, b) in there.iter().zip(&back) {
            assert_eq!(a.tier, b.tier);
            let (a, b) = (a.drawn.boxes[0].extent(), b.drawn.boxes[0].extent());
            assert!((a.left - (90.0 - b.right)).abs() < 1e-6, "{a:?} {b:?}");
        }
    }
}

#[test]
fn dimensions_from_one_face_share_its_extension_line() {
    let style = Style::default();
    let from = |depth| on_part(Edge::Top, 0.0, depth);
    let wanted = [
        SideDimension::new(
            1,
            from(3.0),
            on_part(Edge::Top, 40.0, 0.0),
            Label::plain("40"),
        ),
        SideDimension::new(
            2,
            from(0.0),
            on_part(Edge::Top, 90.0, 0.0),
            Label::plain("90"),
        ),
    ];
    let all = side(&wanted, Edge::Top, &VIEW, &style);
    let at_face: Vec<Extent> = all
        .iter()
        .flat_map(|drawn| lines(&drawn.drawn))
        .filter_map(|line| line.extent())
        .filter(|line| line.width() < 1e-9 && line.left.abs() < 1e-9)
        .collect();
    // From 1 mm off the deeper point to 2 mm past the outer line, 18 mm off the view.
    assert_eq!(at_face.len(), 1);
    assert!((at_face[0].bottom - 88.0).abs() < 1e-9 && (at_face[0].top - 110.0).abs() < 1e-9);
}

#[test]
fn equal_input_gives_equal_places() {
    let style = Style::default();
    let wanted = random_tree(&mut Random::seeded(5), Edge::Left);
    assert_eq!(
        side(&wanted, Edge::Left, &VIEW, &style),
        side(&wanted, Edge::Left, &VIEW, &style)
    );
}
