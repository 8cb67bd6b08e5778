//! Every angle at which one set of sectors can be put between another.

use super::{Interval, complement};

/// The rotations of the moving sectors, 0 to a full turn clockwise, at which none of them overlaps a fixed one and
/// all keep `clearance_rad` from them. Exact: each pair forbids one interval of rotations, and what is left is
/// their complement. A fit without any play at all leaves a single angle and is not listed.
#[must_use]
pub fn rotations_where_disjoint(
    moving: &[Interval],
    fixed: &[Interval],
    clearance_rad: f64,
) -> Vec<Interval> {
    let forbidden: Vec<Interval> = moving
        .iter()
        .flat_map(|part| {
            fixed.iter().filter_map(move |other| {
                let from = other.start_rad - part.end_rad() - clearance_rad;
                let extent = part.extent_rad + other.extent_rad + 2.0 * clearance_rad;
                Interval::new(from, extent)
            })
        })
        .collect();
    complement(&forbidden)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn degrees(list: &[(f64, f64)]) -> Vec<Interval> {
        list.iter()
            .map(|(start, extent)| Interval::from_degrees(*start, *extent).unwrap())
            .collect()
    }

    #[test]
    fn an_even_pattern_enters_three_ways_and_a_keyed_one_once() {
        let ears = degrees(&[(0.0, 60.0), (120.0, 60.0), (240.0, 60.0)]);
        let even = degrees(&[(70.0, 40.0), (190.0, 40.0), (310.0, 40.0)]);
        let ways = rotations_where_disjoint(&even, &ears, 0.0);
        assert_eq!(ways.len(), 3);
        for way in &ways {
            assert!((way.extent_rad.to_degrees() - 20.0).abs() < 1e-9);
        }
        let keyed_ears = degrees(&[(0.0, 70.0), (120.0, 60.0), (240.0, 50.0)]);
        let keyed = degrees(&[(71.0, 48.0), (181.0, 58.0), (291.0, 68.0)]);
        let one = rotations_where_disjoint(&keyed, &keyed_ears, 0.0);
        assert_eq!(one.len(), 1);
        assert!(one[0].contains(0.0));
        assert!((one[0].extent_rad.to_degrees() - 2.0).abs() < 1e-9);
        let tight = rotations_where_disjoint(&keyed, &keyed_ears, 0.5_f64.to_radians());
        assert!((tight[0].extent_rad.to_degrees() - 1.0).abs() < 1e-9);
        assert!(rotations_where_disjoint(&keyed, &keyed_ears, 1.1_f64.to_radians()).is_empty());
    }

    #[test]
    fn agrees_with_trying_every_tenth_of_a_degree() {
        let ears = degrees(&[(3.0, 50.0), (100.0, 80.0), (220.0, 33.0)]);
        let lugs = degrees(&[(60.0, 21.0), (200.0, 12.0), (300.0, 50.0)]);
        let ways = rotations_where_disjoint(&lugs, &ears, 0.0);
        for step in 0..3600_u32 {
            let turn = (f64::from(step) / 10.0 + 0.03).to_radians();
            let is_free = lugs.iter().all(|lug| {
                ears.iter()
                    .all(|ear| lug.shifted(turn).overlap_length(*ear) <= 0.0)
            });
            assert_eq!(ways.iter().any(|way| way.contains(turn)), is_free, "{step}");
        }
    }

    #[test]
    fn nothing_fixed_leaves_the_whole_circle() {
        let lugs = degrees(&[(0.0, 10.0)]);
        assert_eq!(
            rotations_where_disjoint(&lugs, &[], 0.0),
            vec![Interval::full_turn()]
        );
    }
}
