//! One formula, worked in plain numbers or in terms that show their working.

use std::ops::{Add, Div, Mul, Sub};

use crate::document::Term;

/// What a formula of this floor is worked in: `f64`, or [`Term`] where the working is shown.
pub trait Number:
    Clone
    + From<f64>
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
{
    /// The square root.
    #[must_use]
    fn square_root(self) -> Self;
}

impl Number for f64 {
    fn square_root(self) -> Self {
        self.sqrt()
    }
}

impl Number for Term {
    fn square_root(self) -> Self {
        self.apply("√", f64::sqrt)
    }
}
