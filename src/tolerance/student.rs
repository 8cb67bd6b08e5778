//! Student's t distribution, for the few readings that a workshop takes.

use super::normal::{normal_below, normal_quantile};
use super::root::crossing;

/// Beyond so many degrees of freedom t is the normal distribution to ten figures.
const NORMAL_FROM: f64 = 1e9;
/// No t of use lies beyond this: half a degree of freedom and a share of 1e-9 stay under it.
const FARTHEST: f64 = 1e12;
/// Terms of the continued fraction; it settles in a few dozen.
const TERMS: u32 = 500;
/// Keeps the fraction from dividing by nothing.
const TINY: f64 = 1e-300;

/// Share of a t population below `t`, with `dof` degrees of freedom (positive, need not be whole, may be
/// infinite); not a number where `dof` is not positive.
#[must_use]
pub fn student_below(t: f64, dof: f64) -> f64 {
    if dof.is_nan() || dof <= 0.0 {
        return f64::NAN;
    }
    if dof > NORMAL_FROM {
        return normal_below(t);
    }
    let tail = incomplete_beta(dof / 2.0, 0.5, dof / (dof + t * t)) / 2.0;
    if t > 0.0 { 1.0 - tail } else { tail }
}

/// The factor t for an interval either way of the mean that holds the share `p`, with `dof` degrees of freedom.
#[must_use]
pub fn student_factor(p: f64, dof: f64) -> f64 {
    if dof.is_nan() || dof <= 0.0 || p.is_nan() || !(0.0..1.0).contains(&p) {
        return f64::NAN;
    }
    let below = f64::midpoint(1.0, p);
    if dof > NORMAL_FROM {
        return normal_quantile(below);
    }
    crossing(0.0, FARTHEST, below, |t| student_below(t, dof))
}

/// The regularised incomplete beta function, by its continued fraction (NIST Digital Library of Mathematical
/// Functions 8.17.22; from memory, tested against tables of t).
fn incomplete_beta(a: f64, b: f64, x: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    if x >= 1.0 {
        return 1.0;
    }
    // The fraction settles fast only on this side of the mean; the other side by symmetry.
    if x > (a + 1.0) / (a + b + 2.0) {
        return 1.0 - incomplete_beta(b, a, 1.0 - x);
    }
    let beta = libm::lgamma(a) + libm::lgamma(b) - libm::lgamma(a + b);
    (a * x.ln() + b * (-x).ln_1p() - beta).exp() / (a * fraction(a, b, x))
}

/// The continued fraction `1 + d1 / (1 + d2 / (1 + ...))`, worked from the front (Lentz).
fn fraction(a: f64, b: f64, x: f64) -> f64 {
    let (mut value, mut above, mut below) = (1.0, 1.0, 0.0);
    for index in 1..TERMS {
        let half = f64::from(index / 2);
        let last = a + 2.0 * half;
        let term = if index % 2 == 0 {
            half * (b - half) * x / ((last - 1.0) * last)
        } else {
            -(a + half) * (a + b + half) * x / (last * (last + 1.0))
        };
        below = away_from_zero(1.0 + term * below).recip();
        above = away_from_zero(1.0 + term / above);
        let step = above * below;
        value *= step;
        if (step - 1.0).abs() < f64::EPSILON {
            break;
        }
    }
    value
}

fn away_from_zero(value: f64) -> f64 {
    if value.abs() < TINY { TINY } else { value }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    /// Closed forms: one degree of freedom is the Cauchy distribution, two have t / (2 √(2 + t²)).
    #[test]
    fn closed_forms() {
        for t in [-40.0_f64, -1.0, 0.0, 0.3, 2.0, 12.7, 1e4] {
            assert!(
                (student_below(t, 1.0) - (0.5 + t.atan() / PI)).abs() < 1e-13,
                "{t}"
            );
            let two = 0.5 + t / (2.0 * (2.0 + t * t).sqrt());
            assert!((student_below(t, 2.0) - two).abs() < 1e-13, "{t}");
        }
    }

    #[test]
    fn many_degrees_of_freedom_are_normal() {
        assert!((student_factor(0.95, f64::INFINITY) - 1.959_964).abs() < 5e-7);
        assert!((student_factor(0.95, 1e6) - 1.959_966).abs() < 2e-6);
        assert!((student_factor(0.95, 661.0) - student_factor(0.95, 660.0)).abs() < 1e-4);
    }

    #[test]
    fn what_makes_no_sense_is_not_a_number() {
        for (p, dof) in [
            (0.95, 0.0),
            (0.95, -1.0),
            (0.95, f64::NAN),
            (1.0, 3.0),
            (-0.1, 3.0),
            (f64::NAN, 3.0),
        ] {
            assert!(student_factor(p, dof).is_nan(), "{p} {dof}");
        }
        assert!(student_below(1.0, 0.0).is_nan());
    }
}
