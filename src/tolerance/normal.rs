//! The normal distribution.

use std::f64::consts::{PI, SQRT_2};

use super::root::crossing;

/// Beyond so many standard deviations nothing is left that a number can hold.
const FARTHEST: f64 = 39.0;

/// Share of a standard normal population below `z`, 0 to 1: `½ erfc(-z / √2)`.
#[must_use]
pub fn normal_below(z: f64) -> f64 {
    libm::erfc(-z / SQRT_2) / 2.0
}

/// Height of the standard normal curve at `z`.
pub(super) fn normal_density(z: f64) -> f64 {
    (-z * z / 2.0).exp() / (2.0 * PI).sqrt()
}

/// The `z` below which the share `p` of a standard normal population lies; infinite at 0 and 1, not a number
/// outside.
#[must_use]
pub fn normal_quantile(p: f64) -> f64 {
    if !(0.0..=1.0).contains(&p) {
        f64::NAN
    } else if p <= 0.0 {
        f64::NEG_INFINITY
    } else if p >= 1.0 {
        f64::INFINITY
    } else {
        crossing(-FARTHEST, FARTHEST, p, normal_below)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Table values of any handbook of statistics, from memory: 1.644854, 1.959964, 2.575829; 99.73 % in ±3.
    #[test]
    fn well_known_values() {
        for (p, z) in [
            (0.95, 1.644_854),
            (0.975, 1.959_964),
            (0.995, 2.575_829),
            (0.5, 0.0),
        ] {
            assert!((normal_quantile(p) - z).abs() < 5e-7, "{p}");
            assert!((normal_below(normal_quantile(p)) - p).abs() < 1e-15);
        }
        assert!((normal_below(3.0) - normal_below(-3.0) - 0.997_300_2).abs() < 5e-8);
    }

    #[test]
    fn the_ends() {
        let ends = (normal_quantile(0.0), normal_quantile(1.0));
        assert_eq!(ends, (f64::NEG_INFINITY, f64::INFINITY));
        assert!(normal_quantile(1.5).is_nan() && normal_quantile(f64::NAN).is_nan());
        assert_eq!(
            (normal_below(f64::INFINITY), normal_below(f64::NEG_INFINITY)),
            (1.0, 0.0)
        );
    }
}
