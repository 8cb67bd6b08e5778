//! Area and moments of what a contour of lines and arcs encloses, in closed form.
//!
//! The area is the polygon of the chords and a circular segment on each arc (Green's theorem). The functions of
//! the segment's half angle vanish with its third to seventh power, so small angles are summed as series.

use super::piece::Piece;
use super::{Point, Segment};

/// Area, first and second moments about the origin.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Moments {
    /// The area, mm2.
    pub area: f64,
    /// The integral of x over the area, mm3.
    pub x: f64,
    /// The integral of y over the area, mm3.
    pub y: f64,
    /// The integral of x y over the area, mm4.
    pub xy: f64,
    /// The integral of x x over the area, mm4.
    pub xx: f64,
    /// The integral of y y over the area, mm4.
    pub yy: f64,
}

impl Moments {
    fn add(&mut self, other: Self) {
        self.area += other.area;
        self.x += other.x;
        self.y += other.y;
        self.xy += other.xy;
        self.xx += other.xx;
        self.yy += other.yy;
    }
}

/// The moments of a closed run of pieces; negative area when it runs clockwise.
pub(super) fn moments_of<T>(pieces: &[Piece<T>]) -> Moments {
    let mut sum = Moments::default();
    for piece in pieces {
        sum.add(chord_moments(piece.segment.a, piece.segment.b));
        if !piece.segment.is_line() {
            sum.add(bow_moments(&piece.segment));
        }
    }
    sum
}

/// Triangle from the origin to a chord, signed.
fn chord_moments(a: Point, b: Point) -> Moments {
    let cross = a.cross(b);
    Moments {
        area: cross / 2.0,
        x: cross * (a.x + b.x) / 6.0,
        y: cross * (a.y + b.y) / 6.0,
        xy: cross * (2.0 * (a.x * a.y + b.x * b.y) + a.x * b.y + b.x * a.y) / 24.0,
        xx: cross * (a.x * a.x + a.x * b.x + b.x * b.x) / 12.0,
        yy: cross * (a.y * a.y + a.y * b.y + b.y * b.y) / 12.0,
    }
}

/// The bow between a chord and its arc; positive where the arc lies to the right of its chord.
fn bow_moments(segment: &Segment) -> Moments {
    let chord = segment.chord();
    let Some(along) = chord.unit() else {
        return Moments::default();
    };
    let sign = segment.bulge.signum();
    let out = -along.left() * sign;
    let half_angle = 2.0 * segment.bulge.abs().atan();
    let radius = chord.norm() / (2.0 * half_angle.sin());
    let bow = Bow::of(radius, half_angle);
    let middle = segment.a.midpoint(segment.b);
    let area = bow.area;
    Moments {
        area: sign * area,
        x: sign * (area * middle.x + bow.first * out.x),
        y: sign * (area * middle.y + bow.first * out.y),
        xy: sign
            * (area * middle.x * middle.y
                + bow.first * (middle.x * out.y + middle.y * out.x)
                + bow.along * along.x * along.y
                + bow.out * out.x * out.y),
        xx: sign
            * (area * middle.x * middle.x
                + 2.0 * bow.first * middle.x * out.x
                + bow.along * along.x * along.x
                + bow.out * out.x * out.x),
        yy: sign
            * (area * middle.y * middle.y
                + 2.0 * bow.first * middle.y * out.y
                + bow.along * along.y * along.y
                + bow.out * out.y * out.y),
    }
}

/// A circular segment seen from the middle of its chord: area, first moment outward, second moments.
struct Bow {
    area: f64,
    first: f64,
    along: f64,
    out: f64,
}

impl Bow {
    fn of(radius: f64, half_angle: f64) -> Self {
        let square = radius * radius;
        Self {
            area: square * area_of(half_angle),
            first: square * radius * first_of(half_angle),
            along: square * square * along_of(half_angle),
            out: square * square * out_of(half_angle),
        }
    }
}

/// Below this half angle the closed forms would lose digits to cancelling.
const SERIES_BELOW: f64 = 0.5;

/// Sums `coefficient(k, 2^n / n!, 4^n / n!) * angle^n` over the odd n = 2k + 1 from `first`, with the
/// signs of a sine; 12 terms reach the last digit below [`SERIES_BELOW`].
fn odd_series(angle: f64, first: u32, coefficient: impl Fn(f64, f64, f64) -> f64) -> f64 {
    let (mut twos, mut fours, mut power) = (2.0, 4.0, angle);
    let mut sum = 0.0;
    for index in 0..first + 12 {
        let order = f64::from(2 * index + 1);
        if index >= first {
            let sign = if index % 2 == 0 { 1.0 } else { -1.0 };
            sum += sign * coefficient(order, twos, fours) * power;
        }
        let next = (order + 1.0) * (order + 2.0);
        twos *= 4.0 / next;
        fours *= 16.0 / next;
        power *= angle * angle;
    }
    sum
}

/// a - sin a cos a.
fn area_of(angle: f64) -> f64 {
    if angle < SERIES_BELOW {
        return odd_series(angle, 1, |_, twos, _| -twos / 2.0);
    }
    angle - angle.sin() * angle.cos()
}

/// 2/3 sin^3 a - cos a (a - sin a cos a), the first moment about the chord.
fn first_of(angle: f64) -> f64 {
    let (sin, cos) = angle.sin_cos();
    if angle < SERIES_BELOW {
        // By multiple angles 3/4 sin a - a cos a + sin 3a / 12, an odd series of its own.
        let (mut ones, mut threes, mut power, mut sum) = (1.0, 3.0, angle, 0.0);
        for index in 0..14_u32 {
            let order = f64::from(2 * index + 1);
            if index >= 2 {
                let turn = if index % 2 == 0 { 1.0 } else { -1.0 };
                sum += turn * (0.75 * ones - order * ones + threes / 12.0) * power;
            }
            let next = (order + 1.0) * (order + 2.0);
            ones *= 1.0 / next;
            threes *= 9.0 / next;
            power *= angle * angle;
        }
        return sum;
    }
    2.0 / 3.0 * sin * sin * sin - cos * area_of(angle)
}

/// (3 a - 2 sin 2a + sin 4a / 4) / 12, the second moment along the chord.
fn along_of(angle: f64) -> f64 {
    if angle < SERIES_BELOW {
        return odd_series(angle, 2, |_, twos, fours| {
            (-2.0 * twos + fours / 4.0) / 12.0
        });
    }
    (3.0 * angle - 2.0 * (2.0 * angle).sin() + (4.0 * angle).sin() / 4.0) / 12.0
}

/// 3/4 a + a/2 cos 2a - 7/12 sin 2a - sin 4a / 48, the second moment outward from the chord.
fn out_of(angle: f64) -> f64 {
    if angle < SERIES_BELOW {
        // a cos 2a / 2 has the terms of sin 2a, each times its order over four.
        return odd_series(angle, 3, |order, twos, fours| {
            order * twos / 4.0 - 7.0 / 12.0 * twos - fours / 48.0
        });
    }
    0.75 * angle + 0.5 * angle * (2.0 * angle).cos()
        - 7.0 / 12.0 * (2.0 * angle).sin()
        - (4.0 * angle).sin() / 48.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::{FRAC_PI_2, PI};

    #[test]
    fn a_half_disc_has_the_handbook_moments() {
        // Machinery's Handbook, properties of sections: half circle, about its base pi r^4 / 8 both ways,
        // centroid 4 r / 3 pi above the base.
        let bow = Bow::of(1.0, FRAC_PI_2);
        assert!((bow.area - PI / 2.0).abs() < 1e-15);
        assert!((bow.first - 2.0 / 3.0).abs() < 1e-15);
        assert!((bow.along - PI / 8.0).abs() < 1e-15);
        assert!((bow.out - PI / 8.0).abs() < 1e-15);
    }

    #[test]
    fn series_and_closed_forms_meet() {
        let just_below = SERIES_BELOW - 1e-13;
        for form in [area_of, first_of, along_of, out_of] {
            let (series, closed) = (form(just_below), form(SERIES_BELOW));
            assert!(
                ((series - closed) / closed).abs() < 1e-11,
                "{series} {closed}"
            );
        }
    }

    #[test]
    fn a_flat_bow_is_a_parabola() {
        // Parabola of half chord c and rise h: area 4/3 c h, first moment 8/15 c h^2,
        // second moments 4/15 c^3 h and 32/105 c h^3.
        let angle = 1e-4_f64;
        let (half, rise) = (angle.sin(), 2.0 * (angle / 2.0).sin().powi(2));
        let bow = Bow::of(1.0, angle);
        assert!((bow.area / (4.0 / 3.0 * half * rise) - 1.0).abs() < 1e-8);
        assert!((bow.first / (8.0 / 15.0 * half * rise * rise) - 1.0).abs() < 1e-8);
        assert!((bow.along / (4.0 / 15.0 * half.powi(3) * rise) - 1.0).abs() < 1e-8);
        assert!((bow.out / (32.0 / 105.0 * half * rise.powi(3)) - 1.0).abs() < 1e-8);
    }
}
