//! Chance from a seed: the same seed gives the same design on every machine.

use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::{RngCore, SeedableRng};

/// A source of chance.
pub struct Dice(Xoshiro256PlusPlus);

impl Dice {
    /// From a seed.
    pub fn new(seed: u64) -> Self {
        Self(Xoshiro256PlusPlus::seed_from_u64(seed))
    }

    /// From 0 to below 1.
    pub fn share(&mut self) -> f64 {
        // 53 bits are what an f64 holds exactly.
        (self.0.next_u64() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A number between two, in hundredths, as one reads it off a caliper.
    pub fn between(&mut self, one: f64, other: f64) -> f64 {
        let (least, most) = (one.min(other), one.max(other));
        let plain = least + self.share() * (most - least);
        ((plain * 100.0).round() / 100.0).clamp(least, most)
    }

    /// True so often in a hundred.
    pub fn chance(&mut self, percent: u64) -> bool {
        self.0.next_u64() % 100 < percent
    }

    /// A whole number below another.
    pub fn below(&mut self, count: usize) -> usize {
        // The remainder is below `count`, so it fits.
        (self.0.next_u64() % count as u64) as usize
    }

    /// One of several.
    pub fn pick<T: Clone>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())].clone()
    }
}
