use rand_distr::{Distribution, UnitDisc};
use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::SeedableRng;

use super::*;

const CORNER: f64 = 21.63;

fn edge(distance_mm: f64, radius_mm: f64) -> BoreEdge {
    BoreEdge {
        distance_mm,
        radius_mm,
    }
}

fn seen_through(edges: &[BoreEdge]) -> Vignetting {
    Vignetting::new(ExitPupil::at_infinity(60.0), edges.to_vec())
}

/// Share of random rays from the image point to the pupil that pass every edge.
fn traced(edges: &[BoreEdge], height: f64, f_number: f64, rays: u32) -> f64 {
    let (pupil_distance, pupil_radius) = (60.0, 60.0 / f_number / 2.0);
    let mut random = Xoshiro256PlusPlus::seed_from_u64(7);
    let passed = (0..rays)
        .filter(|_| {
            let [x, y]: [f64; 2] = UnitDisc.sample(&mut random);
            edges.iter().all(|edge| {
                let along = edge.distance_mm / pupil_distance;
                let ray_x = height + (pupil_radius * x - height) * along;
                let ray_y = pupil_radius * y * along;
                ray_x.hypot(ray_y) <= edge.radius_mm
            })
        })
        .count();
    f64::from(u32::try_from(passed).unwrap()) / f64::from(rays)
}

/// Three lands that each clip: the closed form against two million rays.
#[test]
fn three_lands_against_traced_rays() {
    let lands = [
        BoreEdge::of_land((46.0, 14.0), (44.0, 14.0)),
        BoreEdge::of_land((38.0, 15.2), (36.0, 15.2)),
        BoreEdge::of_land((22.0, 17.2), (20.0, 17.6)),
    ];
    let edges: Vec<BoreEdge> = lands.concat();
    for (height, f_number) in [(CORNER, 1.8), (CORNER, 2.8), (15.0, 1.4)] {
        let closed = seen_through(&edges).clear_share(height, f_number);
        let rays = traced(&edges, height, f_number, 2_000_000);
        assert!(
            (closed - rays).abs() < 0.002,
            "{height} {f_number}: {closed} {rays}"
        );
    }
    let whole = seen_through(&edges).clear_share(CORNER, 1.8);
    for land in lands {
        let alone = seen_through(&land).clear_share(CORNER, 1.8);
        assert!(alone < 0.9, "a land that does not clip: {alone}");
        assert!(
            whole < alone - 0.01,
            "one land alone reports too much light: {alone}, {whole}"
        );
    }
}

/// Rays that cross behind the pupil: an edge farther from the image than the pupil.
#[test]
fn an_edge_ahead_of_the_pupil_against_traced_rays() {
    let edges = [edge(75.0, 17.0), edge(30.0, 17.5)];
    let closed = seen_through(&edges).clear_share(18.0, 2.0);
    let rays = traced(&edges, 18.0, 2.0, 1_000_000);
    assert!(
        closed < 0.97 && (closed - rays).abs() < 0.002,
        "{closed} {rays}"
    );
}

#[test]
fn stopping_down_ends_the_clipping_where_it_says() {
    let view = seen_through(&[edge(44.0, 17.0), edge(18.0, 19.0)]);
    let ends = view.clipping_ends_at(CORNER).unwrap();
    assert!((view.clear_share(CORNER, ends) - 1.0).abs() < 1e-9);
    assert!(view.clear_share(CORNER, ends - 0.01) < 1.0 - 1e-6);
    assert_eq!(seen_through(&[]).clipping_ends_at(CORNER), Some(0.0));
    assert_eq!(
        seen_through(&[edge(18.0, 15.0)]).clipping_ends_at(CORNER),
        None
    );
}

#[test]
fn the_worst_edge_is_named() {
    let view = seen_through(&[edge(44.0, 30.0), edge(44.0, 16.0), edge(18.0, 20.0)]);
    assert_eq!(view.light(CORNER, 1.8).worst_edge, Some(1));
    assert_eq!(view.light(0.0, 8.0).worst_edge, None);
    assert_eq!(view.edges().len(), 3);
}

#[test]
fn curves_run_from_the_middle_to_the_corner() {
    let view = seen_through(&[edge(44.0, 17.0), edge(18.0, 19.5)]);
    let curves = view.curves(&[1.8, 4.0, 16.0], CORNER, 20);
    assert_eq!(curves.len(), 3);
    for curve in &curves {
        assert_eq!(curve.points.len(), 21);
        let shares: Vec<f64> = curve.points.iter().map(|point| point.clear_share).collect();
        assert!(
            shares.is_sorted_by(|inner, outer| inner >= &(outer - 1e-12)),
            "{shares:?}"
        );
        let corner = curve.points.last().unwrap();
        assert!((corner.height_mm - CORNER).abs() < 1e-12);
        assert!((2.0_f64.powf(-corner.lost_stops) - corner.clear_share).abs() < 1e-12);
    }
    assert!((curves[2].points[20].clear_share - 1.0).abs() < 1e-12);
    assert_eq!(view.curves(&[2.0], CORNER, 0)[0].points.len(), 1);
}

#[test]
fn no_edge_no_loss_and_a_closed_edge_no_light() {
    let open = seen_through(&[edge(-3.0, 1.0)]).light(CORNER, 1.8);
    assert_eq!(
        (open.clear_share, open.lost_stops, open.worst_edge),
        (1.0, 0.0, None)
    );
    assert!(open.lost_stops.is_sign_positive());
    let dark = seen_through(&[edge(18.0, 2.0)]).light(CORNER, 8.0);
    assert_eq!((dark.clear_share, dark.lost_stops), (0.0, f64::INFINITY));
}
