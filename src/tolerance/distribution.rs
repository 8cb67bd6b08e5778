//! How a value may lie inside its tolerance.

use rand_distr::{Distribution as _, StandardNormal, StandardUniform};
use rand_xoshiro::Xoshiro256PlusPlus;

use super::normal::{normal_below, normal_density};

/// A tolerance is read as so many standard deviations of a normal distribution: 99.73 % lie inside.
pub(super) const SIGMAS: f64 = 3.0;

/// The spread of one value about the middle of its tolerance, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Distribution {
    /// Anywhere between the limits alike: only the limits are known (JCGM 100 4.3.7).
    Uniform {
        /// Half the distance between the limits, mm.
        half_mm: f64,
    },
    /// Rather in the middle than at the limits (JCGM 100 4.3.9).
    Triangular {
        /// Half the distance between the limits, mm.
        half_mm: f64,
    },
    /// A triangle that leans: the turner works toward the limit that leaves metal to take off.
    Skewed {
        /// Half the distance between the limits, mm.
        half_mm: f64,
        /// Where it is most likely, mm from the middle, within the limits.
        mode_mm: f64,
    },
    /// Normal with the tolerance as three standard deviations, cut off at the limits.
    NormalWithin {
        /// Half the distance between the limits, mm.
        half_mm: f64,
    },
    /// Normal without limits: a measured value with its standard uncertainty.
    Normal {
        /// The standard deviation, mm.
        sigma_mm: f64,
    },
}

impl Distribution {
    /// How far the tolerance reaches either way of the middle, mm; three standard deviations where there are
    /// no limits.
    #[must_use]
    pub const fn half_mm(&self) -> f64 {
        match *self {
            Self::Uniform { half_mm }
            | Self::Triangular { half_mm }
            | Self::Skewed { half_mm, .. }
            | Self::NormalWithin { half_mm } => half_mm,
            Self::Normal { sigma_mm } => SIGMAS * sigma_mm,
        }
    }

    /// Whether nothing can lie beyond [`Self::half_mm`].
    #[must_use]
    pub const fn has_limits(&self) -> bool {
        match self {
            Self::Uniform { .. }
            | Self::Triangular { .. }
            | Self::Skewed { .. }
            | Self::NormalWithin { .. } => true,
            Self::Normal { .. } => false,
        }
    }

    /// The mean, mm from the middle of the tolerance.
    #[must_use]
    pub const fn mean_mm(&self) -> f64 {
        match *self {
            Self::Uniform { .. }
            | Self::Triangular { .. }
            | Self::NormalWithin { .. }
            | Self::Normal { .. } => 0.0,
            Self::Skewed { mode_mm, .. } => mode_mm / 3.0,
        }
    }

    /// The standard uncertainty, mm (JCGM 100 4.3.7 and 4.3.9; JCGM 101 6.4).
    #[must_use]
    pub fn standard_uncertainty_mm(&self) -> f64 {
        match *self {
            Self::Uniform { half_mm } => half_mm / 3.0_f64.sqrt(),
            Self::Triangular { half_mm } => half_mm / 6.0_f64.sqrt(),
            Self::Skewed { half_mm, mode_mm } => {
                ((3.0 * half_mm * half_mm + mode_mm * mode_mm) / 18.0).sqrt()
            }
            Self::NormalWithin { half_mm } => {
                let inside = 2.0 * normal_below(SIGMAS) - 1.0;
                let lost = 2.0 * SIGMAS * normal_density(SIGMAS) / inside;
                half_mm / SIGMAS * (1.0 - lost).sqrt()
            }
            Self::Normal { sigma_mm } => sigma_mm,
        }
    }

    /// Adds `factor` times a random value to every sum.
    pub(super) fn add_to(&self, sums: &mut [f64], factor: f64, random: &mut Xoshiro256PlusPlus) {
        match *self {
            Self::Uniform { half_mm } => {
                add_each(sums, factor * half_mm, || 2.0 * share(random) - 1.0);
            }
            Self::Triangular { half_mm } => {
                add_each(sums, factor * half_mm, || share(random) - share(random));
            }
            Self::Skewed { half_mm, mode_mm } => {
                add_each(sums, factor, || skewed(share(random), half_mm, mode_mm));
            }
            Self::NormalWithin { half_mm } => {
                add_each(sums, factor * half_mm / SIGMAS, || within(random));
            }
            Self::Normal { sigma_mm } => {
                add_each(sums, factor * sigma_mm, || StandardNormal.sample(random));
            }
        }
    }
}

fn add_each(sums: &mut [f64], factor: f64, mut draw: impl FnMut() -> f64) {
    for sum in sums {
        *sum += factor * draw();
    }
}

/// A random number from 0 to 1.
fn share(random: &mut Xoshiro256PlusPlus) -> f64 {
    StandardUniform.sample(random)
}

/// A standard normal number within three; one in 370 is thrown again.
fn within(random: &mut Xoshiro256PlusPlus) -> f64 {
    loop {
        let z: f64 = StandardNormal.sample(random);
        if z.abs() <= SIGMAS {
            return z;
        }
    }
}

/// The leaning triangle at the share `below` of its population.
fn skewed(below: f64, half_mm: f64, mode_mm: f64) -> f64 {
    let (rising, falling) = (half_mm + mode_mm, half_mm - mode_mm);
    let width = 2.0 * half_mm;
    if below * width < rising {
        (below * width * rising).sqrt() - half_mm
    } else {
        half_mm - ((1.0 - below) * width * falling).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand_xoshiro::rand_core::SeedableRng;

    /// Mean and standard deviation of a million draws against the closed forms.
    #[test]
    fn draws_have_the_stated_mean_and_spread() {
        for distribution in [
            Distribution::Uniform { half_mm: 0.02 },
            Distribution::Triangular { half_mm: 0.02 },
            Distribution::Skewed {
                half_mm: 0.02,
                mode_mm: 0.015,
            },
            Distribution::Skewed {
                half_mm: 0.02,
                mode_mm: -0.02,
            },
            Distribution::NormalWithin { half_mm: 0.02 },
            Distribution::Normal { sigma_mm: 0.02 },
        ] {
            let mut draws = vec![0.0; 1_000_000];
            let mut random = Xoshiro256PlusPlus::seed_from_u64(3);
            distribution.add_to(&mut draws, 1.0, &mut random);
            let mean = draws.iter().sum::<f64>() / 1e6;
            let square = draws.iter().map(|draw| (draw - mean).powi(2)).sum::<f64>() / 1e6;
            // Four standard errors of a million draws.
            let u = distribution.standard_uncertainty_mm();
            assert!(
                (mean - distribution.mean_mm()).abs() < 0.004 * u,
                "{distribution:?}"
            );
            assert!((square.sqrt() / u - 1.0).abs() < 0.004, "{distribution:?}");
            let limit = distribution.half_mm() + 1e-12;
            let all_inside = draws.iter().all(|draw| draw.abs() <= limit);
            assert_eq!(all_inside, distribution.has_limits());
        }
    }

    #[test]
    fn a_triangle_that_does_not_lean_is_the_triangle() {
        let (plain, leaning) = (
            Distribution::Triangular { half_mm: 1.0 },
            Distribution::Skewed {
                half_mm: 1.0,
                mode_mm: 0.0,
            },
        );
        let gap = plain.standard_uncertainty_mm() - leaning.standard_uncertainty_mm();
        assert!(gap.abs() < 1e-15);
        assert!(skewed(0.5, 1.0, 0.0).abs() < 1e-15);
        assert_eq!((skewed(0.0, 1.0, 0.5), skewed(1.0, 1.0, 0.5)), (-1.0, 1.0));
    }
}
