//! Numbers for the property tests that are the same on every run.

/// A multiply-with-shift generator (xorshift64*, Vigna 2016).
pub struct Random(u64);

impl Random {
    /// A generator from a fixed seed.
    pub fn seeded(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D)
    }

    /// A number from 0 up to but not `count`.
    pub fn below(&mut self, count: u32) -> u32 {
        u32::try_from((self.next() >> 33) % u64::from(count)).unwrap()
    }

    /// A number between two others.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * f64::from(self.below(1 << 30)) / f64::from(1 << 30)
    }
}
