//! What two shapes share, cover together, or leave of each other.
//!
//! Worked on exact arcs by cutting both contours where they meet; if the parts do not close up again, both are cut
//! into chords for `i_overlay`.

use thiserror::Error;

use super::{Outline, Point, boolean_chords, boolean_parts};

/// A way to combine two shapes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Operation {
    Intersection,
    Union,
    Difference,
}

/// Why two shapes cannot be combined.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum BooleanError {
    /// The integer grid of the last resort refused the coordinates.
    #[error("two shapes reach too far to be combined; look for a size typed in the wrong unit")]
    Grid,
}

/// A flat shape of any number of loops: metal inside the outer ones, none inside the holes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Region {
    /// Loops with metal inside; apart from each other, or one as an island in a hole of another.
    pub outer: Vec<Outline>,
    /// Loops without metal inside, but for islands; each lies in an outer one.
    pub holes: Vec<Outline>,
}

impl Region {
    /// The region inside one outline.
    #[must_use]
    pub fn of<T: Copy + PartialEq>(outline: &Outline<T>) -> Self {
        Self {
            outer: vec![outline.retagged(|_| ())],
            holes: Vec::new(),
        }
    }

    /// The area, mm2.
    #[must_use]
    pub fn area(&self) -> f64 {
        let sum = |loops: &[Outline]| loops.iter().map(Outline::area).sum::<f64>();
        sum(&self.outer) - sum(&self.holes)
    }

    /// Whether nothing is left.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.outer.is_empty()
    }

    /// Whether there is metal at a point.
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        // An island of metal stands in a hole, and the hole in another outer loop.
        let around = |loops: &[Outline]| loops.iter().filter(|one| one.contains(point)).count();
        around(&self.outer) > around(&self.holes)
    }

    /// What is left when a shape is cut away.
    ///
    /// # Errors
    /// [`BooleanError`]; not for shapes from the outline builder.
    pub fn without<T: Copy + PartialEq>(&self, cut: &Outline<T>) -> Result<Self, BooleanError> {
        let mut left = Self::default();
        // Holes that the cut runs into become one hole with it; what they ring in stays as metal.
        let mut whole_cut = cut.retagged(|_| ());
        for hole in &self.holes {
            let both = union(&whole_cut, hole)?;
            match both.outer.as_slice() {
                [one] => {
                    whole_cut = one.clone();
                    left.outer.extend(both.holes);
                }
                _ => left.holes.push(hole.clone()),
            }
        }
        for outline in &self.outer {
            let rest = difference(outline, &whole_cut)?;
            left.outer.extend(rest.outer);
            left.holes.extend(rest.holes);
        }
        Ok(left)
    }
}

/// What two outlines share.
///
/// # Errors
/// [`BooleanError`]; not for outlines from the builder, which keep inside the grid.
pub fn intersection<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
) -> Result<Region, BooleanError> {
    combined(a, b, Operation::Intersection)
}

/// What two outlines cover together.
///
/// # Errors
/// As [`intersection`].
pub fn union<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
) -> Result<Region, BooleanError> {
    combined(a, b, Operation::Union)
}

/// What the second outline leaves of the first.
///
/// # Errors
/// As [`intersection`].
pub fn difference<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
) -> Result<Region, BooleanError> {
    combined(a, b, Operation::Difference)
}

fn combined<A: Copy + PartialEq, B: Copy + PartialEq>(
    a: &Outline<A>,
    b: &Outline<B>,
    operation: Operation,
) -> Result<Region, BooleanError> {
    match boolean_parts::combined(a, b, operation) {
        Some(region) => Ok(region),
        None => boolean_chords::combined(a, b, operation),
    }
}

#[cfg(test)]
mod tests {
    use super::super::OutlineBuilder;
    use super::*;
    use std::f64::consts::PI;

    fn plate(x: f64, y: f64, width: f64, height: f64) -> Outline {
        OutlineBuilder::start(Point::new(x, y))
            .line_to(Point::new(x + width, y), ())
            .line_to(Point::new(x + width, y + height), ())
            .line_to(Point::new(x, y + height), ())
            .close(())
            .unwrap()
    }

    fn disc(x: f64, y: f64, radius: f64) -> Outline {
        OutlineBuilder::start(Point::new(x + radius, y))
            .arc_about(Point::new(x, y), 2.0 * PI, ())
            .close(())
            .unwrap()
    }

    #[test]
    fn two_plates() {
        let (one, two) = (plate(0.0, 0.0, 4.0, 2.0), plate(3.0, 1.0, 4.0, 2.0));
        assert!((intersection(&one, &two).unwrap().area() - 1.0).abs() < 1e-12);
        assert!((union(&one, &two).unwrap().area() - 15.0).abs() < 1e-12);
        assert!((difference(&one, &two).unwrap().area() - 7.0).abs() < 1e-12);
    }

    #[test]
    fn the_lens_of_two_discs() {
        // Two circles of radius r at distance d share 2 r^2 acos(d / 2r) - d/2 sqrt(4 r^2 - d^2).
        let shared = intersection(&disc(0.0, 0.0, 2.0), &disc(1.0, 0.0, 2.0)).unwrap();
        let expected = 8.0 * 0.25_f64.acos() - 0.5 * 15.0_f64.sqrt();
        assert!((shared.area() - expected).abs() < 1e-12);
    }

    #[test]
    fn a_flange_with_holes_and_a_slot() {
        let mut flange = Region::of(&disc(0.0, 0.0, 30.0));
        for cut in [
            disc(0.0, 0.0, 20.0),
            disc(25.0, 0.0, 1.0),
            disc(-25.0, 0.0, 1.0),
        ] {
            flange = flange.without(&cut).unwrap();
        }
        assert_eq!((flange.outer.len(), flange.holes.len()), (1, 3));
        assert!((flange.area() - PI * (900.0 - 400.0 - 2.0)).abs() < 1e-9);
        // A slot from the bore into one hole joins the three into one hole.
        let slotted = flange.without(&plate(15.0, -0.5, 10.0, 1.0)).unwrap();
        assert_eq!((slotted.outer.len(), slotted.holes.len()), (1, 2));
        assert!(
            !slotted.contains(Point::new(22.0, 0.0)) && slotted.contains(Point::new(22.0, 2.0))
        );
        // A slot right through the rim opens the ring.
        let opened = slotted.without(&plate(25.0, -0.5, 10.0, 1.0)).unwrap();
        assert_eq!((opened.outer.len(), opened.holes.len()), (1, 1));
        // A ring-shaped groove leaves the island inside it: cut a disc by two halves of an annulus.
        let half = |sign: f64| {
            OutlineBuilder::start(Point::new(6.0 * sign, 0.0))
                .arc_about(Point::default(), PI, ())
                .line_to(Point::new(-5.0 * sign, 0.0), ())
                .arc_about(Point::default(), -PI, ())
                .close(())
                .unwrap()
        };
        let grooved = Region::of(&disc(0.0, 0.0, 10.0))
            .without(&half(1.0))
            .unwrap()
            .without(&half(-1.0))
            .unwrap();
        assert!((grooved.area() - PI * (100.0 - 36.0 + 25.0)).abs() < 1e-3);
        assert!(grooved.contains(Point::default()));
    }

    #[test]
    fn coinciding_edges() {
        let (one, two) = (plate(0.0, 0.0, 4.0, 2.0), plate(4.0, 0.0, 4.0, 2.0));
        assert!(intersection(&one, &two).unwrap().area().abs() < 1e-4);
        assert!((union(&one, &two).unwrap().area() - 16.0).abs() < 1e-4);
        assert!((intersection(&one, &one).unwrap().area() - 8.0).abs() < 1e-4);
        assert!(difference(&one, &one).unwrap().area().abs() < 1e-4);
    }
}
