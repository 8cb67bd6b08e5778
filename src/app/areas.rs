//! Areas with holes as triangles: the screen fills nothing but triangles by itself.

use egui::{Color32, Mesh, Pos2, Shape};

/// Closed loops, filled inside, a loop inside a loop being a hole.
#[must_use]
pub fn filled(loops: &[Vec<Pos2>], colour: Color32) -> Vec<Shape> {
    if let [only] = loops
        && is_convex(only)
        && is_blunt(only)
    {
        return vec![Shape::convex_polygon(
            only.clone(),
            colour,
            egui::Stroke::NONE,
        )];
    }
    outer_loops(loops)
        .into_iter()
        .filter_map(|area| triangles(&area, colour))
        .collect()
}

/// Each outer loop with its holes.
fn outer_loops(loops: &[Vec<Pos2>]) -> Vec<Vec<&Vec<Pos2>>> {
    let around = |of: usize| -> Vec<usize> {
        let Some(corner) = loops.get(of).and_then(|points| points.first()) else {
            return Vec::new();
        };
        loops
            .iter()
            .enumerate()
            .filter(|(other, points)| *other != of && encloses(points, *corner))
            .map(|(other, _)| other)
            .collect()
    };
    let surroundings: Vec<Vec<usize>> = (0..loops.len()).map(around).collect();
    let mut areas = Vec::new();
    for (place, outer) in loops.iter().enumerate() {
        let depth = surroundings.get(place).map_or(0, Vec::len);
        if depth % 2 == 1 || outer.len() < 3 {
            continue;
        }
        let holes = loops.iter().enumerate().filter(|(hole, points)| {
            let lies_in = surroundings
                .get(*hole)
                .is_some_and(|around| around.contains(&place) && around.len() == depth + 1);
            lies_in && points.len() >= 3
        });
        let mut area = vec![outer];
        area.extend(holes.map(|(_, points)| points));
        areas.push(area);
    }
    areas
}

/// Whether a point lies inside a closed loop (even-odd).
#[must_use]
pub fn encloses(points: &[Pos2], at: Pos2) -> bool {
    let next = points.iter().cycle().skip(1);
    let crossings = points.iter().zip(next).filter(|(a, b)| {
        (a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x
    });
    crossings.count() % 2 == 1
}

fn is_convex(points: &[Pos2]) -> bool {
    if points.len() < 3 {
        return false;
    }
    let ahead = |by: usize| points.iter().cycle().skip(by);
    let turns: Vec<f32> = points
        .iter()
        .zip(ahead(1))
        .zip(ahead(2))
        .map(|((a, b), c)| (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x))
        .collect();
    // A star-shaped loop turns one way too, but goes round more than once; ours are drawn once round.
    turns.iter().all(|turn| *turn >= 0.0) || turns.iter().all(|turn| *turn <= 0.0)
}

/// Whether no corner is so sharp that the softened edge of the screen library would stand out of it as a spike.
fn is_blunt(points: &[Pos2]) -> bool {
    // The cosine of a turn by some 140 degrees.
    const SHARPEST: f32 = -0.77;
    let ahead = |by: usize| points.iter().cycle().skip(by);
    points
        .iter()
        .zip(ahead(1))
        .zip(ahead(2))
        .all(|((a, b), c)| (*b - *a).normalized().dot((*c - *b).normalized()) > SHARPEST)
}

fn triangles(area: &[&Vec<Pos2>], colour: Color32) -> Option<Shape> {
    let mut flat = Vec::new();
    let mut holes = Vec::new();
    let mut mesh = Mesh::default();
    for (place, points) in area.iter().enumerate() {
        if place > 0 {
            holes.push(mesh.vertices.len());
        }
        for point in *points {
            flat.extend([f64::from(point.x), f64::from(point.y)]);
            mesh.colored_vertex(*point, colour);
        }
    }
    let corners = earcutr::earcut(&flat, &holes, 2).ok()?;
    mesh.indices = corners
        .into_iter()
        .map(u32::try_from)
        .collect::<Result<_, _>>()
        .ok()?;
    mesh.is_valid().then(|| Shape::mesh(mesh))
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    fn square(from: f32, to: f32) -> Vec<Pos2> {
        vec![
            pos2(from, from),
            pos2(to, from),
            pos2(to, to),
            pos2(from, to),
        ]
    }

    fn area_of(shapes: &[Shape]) -> f32 {
        shapes
            .iter()
            .map(|shape| match shape {
                Shape::Mesh(mesh) => mesh
                    .indices
                    .chunks(3)
                    .map(|corners| {
                        let [a, b, c] =
                            [0, 1, 2].map(|place| mesh.vertices[corners[place] as usize].pos);
                        ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)).abs() / 2.0
                    })
                    .sum::<f32>(),
                other => panic!("no mesh: {other:?}"),
            })
            .sum()
    }

    #[test]
    fn a_hole_stays_free_and_an_island_in_it_is_filled() {
        let shapes = filled(
            &[square(0.0, 10.0), square(2.0, 8.0), square(4.0, 6.0)],
            Color32::RED,
        );
        assert!((area_of(&shapes) - (100.0 - 36.0 + 4.0)).abs() < 1e-3);
    }

    #[test]
    fn a_notched_outline_keeps_its_notch() {
        let notched = vec![
            pos2(0.0, 0.0),
            pos2(10.0, 0.0),
            pos2(10.0, 10.0),
            pos2(6.0, 10.0),
            pos2(6.0, 4.0),
            pos2(4.0, 4.0),
            pos2(4.0, 10.0),
            pos2(0.0, 10.0),
        ];
        assert!((area_of(&filled(&[notched], Color32::RED)) - 88.0).abs() < 1e-3);
    }
}
