//! The area that several discs have in common, in closed form from the arcs that bound it.

use std::f64::consts::{PI, TAU};

/// Two discs whose centres and radii differ by less than this share of the radius are one, so that their
/// boundary is not counted twice: far above rounding, far below anything made of metal.
const SAME: f64 = 1e-12;

/// A disc, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disc {
    /// Centre, to the right, mm.
    pub x_mm: f64,
    /// Centre, up, mm.
    pub y_mm: f64,
    /// Radius, mm.
    pub radius_mm: f64,
}

/// A stretch of a circle, radians, anticlockwise from the first to the second.
type Arc = (f64, f64);

impl Disc {
    /// Its area, mm².
    #[must_use]
    pub const fn area_mm2(&self) -> f64 {
        PI * self.radius_mm * self.radius_mm
    }

    fn is_same(&self, other: &Self) -> bool {
        let least = SAME * self.radius_mm.max(other.radius_mm);
        (self.radius_mm - other.radius_mm).abs() <= least && self.distance_to(other) <= least
    }

    fn distance_to(&self, other: &Self) -> f64 {
        (self.x_mm - other.x_mm).hypot(self.y_mm - other.y_mm)
    }

    /// What of this disc's circle lies outside `other`.
    fn outside_of(&self, other: &Self) -> Outside {
        let distance = self.distance_to(other);
        if other.radius_mm >= distance + self.radius_mm {
            return Outside::Nothing;
        }
        if distance >= self.radius_mm + other.radius_mm
            || self.radius_mm >= distance + other.radius_mm
        {
            return Outside::All;
        }
        // Law of cosines: half the angle under which this circle runs inside the other.
        let cosine = (self.radius_mm.powi(2) + distance.powi(2) - other.radius_mm.powi(2))
            / (2.0 * distance * self.radius_mm);
        let inside_half = cosine.clamp(-1.0, 1.0).acos();
        let toward = (other.y_mm - self.y_mm).atan2(other.x_mm - self.x_mm);
        let from = (toward + inside_half).rem_euclid(TAU);
        Outside::Part((from, from + TAU - 2.0 * inside_half))
    }

    /// The part of the boundary integral of the area, `½ ∮ (x dy - y dx)`, along one arc of this circle.
    fn sweep_mm2(&self, (from, to): Arc) -> f64 {
        let (sine_from, cosine_from) = from.sin_cos();
        let (sine_to, cosine_to) = to.sin_cos();
        let about_centre = self.radius_mm * (to - from);
        let moved = self.x_mm * (sine_to - sine_from) - self.y_mm * (cosine_to - cosine_from);
        self.radius_mm * (about_centre + moved) / 2.0
    }
}

enum Outside {
    Nothing,
    Part(Arc),
    All,
}

/// Area common to all the discs, mm²; 0 for none, for discs that do not meet, and for a radius of 0 or less.
///
/// Exact but for rounding: the boundary is made of those arcs of each circle that lie in all the others.
/// With two discs it is the lens-shaped area of the handbooks (Modern Optical Engineering, ch. 9).
#[must_use]
pub fn common_area_mm2(discs: &[Disc]) -> f64 {
    if discs
        .iter()
        .any(|disc| disc.radius_mm.is_nan() || disc.radius_mm <= 0.0)
    {
        return 0.0;
    }
    let mut area = 0.0;
    for (index, disc) in discs.iter().enumerate() {
        if discs
            .iter()
            .take(index)
            .any(|earlier| earlier.is_same(disc))
        {
            continue;
        }
        area += arcs_inside_all(disc, discs)
            .into_iter()
            .map(|arc| disc.sweep_mm2(arc))
            .sum::<f64>();
    }
    // Arcs that shrink to a point leave rounding behind.
    area.max(0.0)
}

/// The arcs of `disc`'s circle that lie inside every one of `discs`.
fn arcs_inside_all(disc: &Disc, discs: &[Disc]) -> Vec<Arc> {
    let mut taken: Vec<Arc> = Vec::new();
    for other in discs.iter().filter(|other| !other.is_same(disc)) {
        match disc.outside_of(other) {
            Outside::Nothing => {}
            Outside::All => return Vec::new(),
            Outside::Part((from, to)) if to > TAU => {
                taken.push((from, TAU));
                taken.push((0.0, to - TAU));
            }
            Outside::Part(arc) => taken.push(arc),
        }
    }
    taken.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut left = Vec::new();
    let mut reached = 0.0;
    for (from, to) in taken {
        if from > reached {
            left.push((reached, from));
        }
        reached = to.max(reached);
    }
    if reached < TAU {
        left.push((reached, TAU));
    }
    left
}

#[cfg(test)]
mod tests {
    use super::*;

    fn disc(x_mm: f64, y_mm: f64, radius_mm: f64) -> Disc {
        Disc {
            x_mm,
            y_mm,
            radius_mm,
        }
    }

    /// Two circles, closed form: r² acos(..) + R² acos(..) - ½ √(..); worked by hand.
    fn of_two(r: f64, big: f64, d: f64) -> f64 {
        let near = (d * d + r * r - big * big) / (2.0 * d * r);
        let far = (d * d + big * big - r * r) / (2.0 * d * big);
        let kite = (-d + r + big) * (d + r - big) * (d - r + big) * (d + r + big);
        r * r * near.acos() + big * big * far.acos() - kite.sqrt() / 2.0
    }

    #[test]
    fn two_discs_as_in_the_handbook() {
        let unit = [disc(0.0, 0.0, 1.0), disc(1.0, 0.0, 1.0)];
        assert!((common_area_mm2(&unit) - (2.0 * PI / 3.0 - 3.0_f64.sqrt() / 2.0)).abs() < 1e-14);
        for (r, big, d) in [
            (1.0, 2.0, 1.5),
            (3.0, 2.0, 1.1),
            (16.67, 19.0, 7.87),
            (1.0, 50.0, 49.5),
        ] {
            for turn in [0.0_f64, 1.0, 2.5, 4.0] {
                let pair = [
                    disc(3.0, -4.0, r),
                    disc(3.0 + d * turn.cos(), -4.0 + d * turn.sin(), big),
                ];
                let got = common_area_mm2(&pair);
                assert!(
                    (got - of_two(r, big, d)).abs() < 1e-11 * big * big,
                    "{r} {big} {d}: {got}"
                );
            }
        }
    }

    /// Three unit discs about an equilateral triangle of side 1: the Reuleaux triangle, (π - √3) / 2.
    #[test]
    fn three_discs_make_the_reuleaux_triangle() {
        let height = 3.0_f64.sqrt() / 2.0;
        let three = [
            disc(0.0, 0.0, 1.0),
            disc(1.0, 0.0, 1.0),
            disc(0.5, height, 1.0),
        ];
        assert!((common_area_mm2(&three) - (PI - 3.0_f64.sqrt()) / 2.0).abs() < 1e-14);
    }

    #[test]
    fn contained_repeated_and_separate_discs() {
        let inner = disc(0.3, 0.1, 1.0);
        let outer = disc(0.0, 0.0, 5.0);
        assert!((common_area_mm2(&[inner, outer]) - PI).abs() < 1e-13);
        assert!((common_area_mm2(&[outer, inner, inner, outer]) - PI).abs() < 1e-13);
        let apart = common_area_mm2(&[inner, disc(3.0, 0.0, 1.0)]);
        let point = common_area_mm2(&[outer, disc(0.0, 0.0, 0.0)]);
        let no_number = common_area_mm2(&[outer, disc(0.0, 0.0, f64::NAN)]);
        let all = apart + point + no_number + common_area_mm2(&[]);
        assert!(all.abs() <= 0.0, "{all}");
        // Touching from inside and from outside.
        assert!((common_area_mm2(&[disc(4.0, 0.0, 1.0), outer]) - PI).abs() < 1e-12);
        assert!(common_area_mm2(&[disc(6.0, 0.0, 1.0), outer]) < 1e-9);
    }

    /// Three discs that overlap in pairs but have nothing in common.
    #[test]
    fn discs_that_meet_only_in_pairs() {
        let ring = [0.0_f64, 120.0, 240.0].map(|turn| {
            let turn = turn.to_radians();
            disc(1.1 * turn.cos(), 1.1 * turn.sin(), 1.0)
        });
        assert!(common_area_mm2(&ring[..2]) > 0.0);
        assert!(common_area_mm2(&ring) <= 0.0);
    }

    /// A disc crossed by two others from opposite sides keeps two arcs; strips, worked by hand from one cap.
    #[test]
    fn a_disc_cut_from_both_sides() {
        let middle = disc(0.0, 0.0, 1.0);
        let (left, right) = (disc(-1.2, 0.0, 2.0), disc(1.2, 0.0, 2.0));
        let all = common_area_mm2(&[left, middle, right]);
        let cut = PI - common_area_mm2(&[left, middle]);
        assert!((all - (PI - 2.0 * cut)).abs() < 1e-13);
    }
}
