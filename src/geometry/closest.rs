//! The exact distance between two lines or arcs, and where they cross.
//!
//! The least distance between two pieces is at a crossing, at an end of one of them, or where one straight
//! line is square to both; each of these is worked in closed form, so no arc is ever cut into chords.

use super::segment::Arc;
use super::{CONTACT, Point, Segment};

/// The two nearest places of two pieces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pair {
    pub square: f64,
    pub on_first: Point,
    pub on_second: Point,
}

impl Pair {
    pub fn of(on_first: Point, on_second: Point) -> Self {
        let step = on_second - on_first;
        Self {
            square: step.dot(step),
            on_first,
            on_second,
        }
    }

    fn offer(&mut self, on_first: Point, on_second: Point) {
        let other = Self::of(on_first, on_second);
        if other.square < self.square {
            *self = other;
        }
    }

    const fn swapped(self) -> Self {
        Self {
            square: self.square,
            on_first: self.on_second,
            on_second: self.on_first,
        }
    }
}

/// The two nearest places of two pieces; the same place twice where they cross.
pub(super) fn closest(first: &Segment, second: &Segment) -> Pair {
    match (first.arc(), second.arc()) {
        (None, None) => lines(first, second),
        (None, Some(arc)) => line_and_arc(first, second, &arc),
        (Some(arc), None) => line_and_arc(second, first, &arc).swapped(),
        (Some(one), Some(two)) => arcs(first, &one, second, &two),
    }
}

fn from_ends(first: &Segment, one: Option<&Arc>, second: &Segment, two: Option<&Arc>) -> Pair {
    let mut best = Pair::of(first.a, second.nearest_with(two, first.a));
    best.offer(first.b, second.nearest_with(two, first.b));
    best.offer(first.nearest_with(one, second.a), second.a);
    best.offer(first.nearest_with(one, second.b), second.b);
    best
}

fn lines(first: &Segment, second: &Segment) -> Pair {
    match crossing_of_lines(first, second) {
        Some(place) => Pair::of(place, place),
        None => from_ends(first, None, second, None),
    }
}

fn line_and_arc(line: &Segment, curve: &Segment, arc: &Arc) -> Pair {
    if let Some(place) = crossings_of_line_and_arc(line, arc)[0] {
        return Pair::of(place, place);
    }
    let mut best = from_ends(line, None, curve, Some(arc));
    let foot = line.nearest_with(None, arc.centre);
    if let Some(place) = arc.toward(foot).filter(|place| arc.covers(*place)) {
        best.offer(foot, place);
    }
    best
}

fn arcs(first: &Segment, one: &Arc, second: &Segment, two: &Arc) -> Pair {
    if let Some(place) = crossings_of_arcs(one, two)[0] {
        return Pair::of(place, place);
    }
    let mut best = from_ends(first, Some(one), second, Some(two));
    let Some(unit) = (two.centre - one.centre).unit() else {
        return best;
    };
    for (sign_one, sign_two) in [(1.0, -1.0), (1.0, 1.0), (-1.0, -1.0)] {
        let on_one = one.centre + unit * (sign_one * one.radius);
        let on_two = two.centre + unit * (sign_two * two.radius);
        if one.covers(on_one) && two.covers(on_two) {
            best.offer(on_one, on_two);
        }
    }
    best
}

/// Where two pieces cross or touch away from their ends, and at ends where these lie on the other exactly.
pub(super) fn crossings(first: &Segment, second: &Segment) -> [Option<Point>; 2] {
    match (first.arc(), second.arc()) {
        (None, None) => [crossing_of_lines(first, second), None],
        (None, Some(arc)) => crossings_of_line_and_arc(first, &arc),
        (Some(arc), None) => crossings_of_line_and_arc(second, &arc),
        (Some(one), Some(two)) => crossings_of_arcs(&one, &two),
    }
}

fn crossing_of_lines(first: &Segment, second: &Segment) -> Option<Point> {
    let (along, across) = (first.chord(), second.chord());
    let area = along.cross(across);
    let step = second.a - first.a;
    let (share, other) = (step.cross(across) / area, step.cross(along) / area);
    // Parallel lines give infinity or NaN, which are in no range.
    ((0.0..=1.0).contains(&share) && (0.0..=1.0).contains(&other)).then(|| first.a + along * share)
}

fn crossings_of_line_and_arc(line: &Segment, arc: &Arc) -> [Option<Point>; 2] {
    let chord = line.chord();
    let length = chord.norm();
    let along = chord * (1.0 / length);
    let to_centre = arc.centre - line.a;
    let (ahead, aside) = (to_centre.dot(along), to_centre.cross(along));
    let square = (arc.radius - aside) * (arc.radius + aside);
    if square < 0.0 {
        return [None, None];
    }
    let half = square.sqrt();
    let places = [ahead - half, ahead + half].map(|at| {
        let place = line.a + along * at;
        (at >= 0.0 && at <= length && arc.covers(place)).then_some(place)
    });
    in_front(places)
}

fn crossings_of_arcs(one: &Arc, two: &Arc) -> [Option<Point>; 2] {
    let step = two.centre - one.centre;
    let apart = step.norm();
    // Circles that are one have no crossing, only ends; what rounding leaves between them means nothing.
    if apart + (one.radius - two.radius).abs() <= CONTACT {
        return [None, None];
    }
    let unit = step * (1.0 / apart);
    let ahead = 0.5 * (apart + (one.radius - two.radius) * (one.radius + two.radius) / apart);
    let square = (one.radius - ahead) * (one.radius + ahead);
    if square < 0.0 {
        return [None, None];
    }
    let places = [square.sqrt(), -square.sqrt()].map(|aside| {
        let place = one.centre + unit * ahead + unit.left() * aside;
        (one.covers(place) && two.covers(place)).then_some(place)
    });
    in_front(places)
}

fn in_front(places: [Option<Point>; 2]) -> [Option<Point>; 2] {
    if places[0].is_some() {
        places
    } else {
        [places[1], None]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    fn arc(centre: Point, radius: f64, from: f64, sweep: f64) -> Segment {
        Segment::new(
            centre + Point::polar(radius, from),
            centre + Point::polar(radius, from + sweep),
            (sweep / 4.0).tan(),
        )
    }

    fn least_by_sampling(first: &Segment, second: &Segment) -> f64 {
        let shares = (0..=600).map(|index| f64::from(index) / 600.0);
        shares
            .map(|share| {
                let place = first.point_at(share);
                second.nearest(place).distance(place)
            })
            .fold(f64::INFINITY, f64::min)
    }

    #[test]
    fn facing_arcs_a_millimetre_apart() {
        let left = arc(Point::new(0.0, 0.0), 2.0, -1.0, 2.0);
        let right = arc(Point::new(6.0, 0.0), 3.0, PI - 1.0, 2.0);
        let pair = closest(&left, &right);
        assert!((pair.square.sqrt() - 1.0).abs() < 1e-14);
        assert!(pair.on_first.distance(Point::new(2.0, 0.0)) < 1e-14);
    }

    #[test]
    fn nested_and_concentric_arcs() {
        let outer = arc(Point::new(0.0, 0.0), 5.0, 0.0, PI);
        let inner = arc(Point::new(0.0, 1.0), 3.0, 0.5, 2.0);
        assert!((closest(&outer, &inner).square.sqrt() - 1.0).abs() < 1e-14);
        let concentric = arc(Point::new(0.0, 0.0), 4.9, 1.0, 1.0);
        assert!((closest(&outer, &concentric).square.sqrt() - 0.1).abs() < 1e-14);
    }

    #[test]
    fn crossings_are_found_and_counted() {
        let circle = arc(Point::new(0.0, 0.0), 1.0, 0.0, PI);
        let chord = Segment::line(Point::new(-2.0, 0.5), Point::new(2.0, 0.5));
        let both = crossings(&chord, &circle);
        assert!(both[0].unwrap().distance(Point::new(-0.75_f64.sqrt(), 0.5)) < 1e-15);
        assert!(both[1].unwrap().distance(Point::new(0.75_f64.sqrt(), 0.5)) < 1e-15);
        assert!(closest(&circle, &chord).square <= 0.0);
        let other = arc(Point::new(1.0, 0.0), 1.0, PI / 2.0, PI / 2.0);
        let cross = crossings(&circle, &other)[0].unwrap();
        assert!(cross.distance(Point::new(0.5, 0.75_f64.sqrt())) < 1e-15);
    }

    #[test]
    fn agrees_with_sampling() {
        let mut seed = 0x9e37_79b9_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            f64::from(u32::try_from(seed >> 33).unwrap()) / f64::from(1_u32 << 31)
        };
        for _ in 0..2000 {
            let mut piece = || {
                let a = Point::new(10.0 * next(), 10.0 * next());
                let b = Point::new(10.0 * next(), 10.0 * next());
                let bulge = if next() < 0.3 {
                    0.0
                } else {
                    2.0 * next() - 1.0
                };
                Segment::new(a, b, bulge)
            };
            let (first, second) = (piece(), piece());
            let exact = closest(&first, &second).square.sqrt();
            let sampled = least_by_sampling(&first, &second);
            let coarse = first.length() / 1200.0;
            assert!(
                exact <= sampled + 1e-12,
                "{first:?} {second:?} {exact} {sampled}"
            );
            assert!(
                exact >= sampled - coarse - 1e-12,
                "{first:?} {second:?} {exact} {sampled}"
            );
        }
    }
}
