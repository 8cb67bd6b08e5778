//! A place, or a step from one place to another, in the plane.

use std::ops::{Add, Mul, Neg, Sub};

/// A place or a vector, mm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// To the right; z in the half-section.
    pub x: f64,
    /// Upward; the radius in the half-section.
    pub y: f64,
}

impl Point {
    /// A point from its coordinates.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// A point from its distance and its angle, counter-clockwise from the x axis.
    #[must_use]
    pub fn polar(radius: f64, angle_rad: f64) -> Self {
        let (sin, cos) = angle_rad.sin_cos();
        Self::new(radius * cos, radius * sin)
    }

    /// The scalar product.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// The vector product: positive when `other` is to the left of `self`.
    #[must_use]
    pub fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// The length of the vector.
    #[must_use]
    pub fn norm(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// The distance to another place.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        (self - other).norm()
    }

    /// The vector made `factor` times as long.
    #[must_use]
    pub fn scale(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }

    /// The vector made 1 mm long; `None` for the zero vector and for what is not a number.
    #[must_use]
    pub fn unit(self) -> Option<Self> {
        let norm = self.norm();
        (norm > 0.0 && norm.is_finite()).then(|| Self::new(self.x / norm, self.y / norm))
    }

    /// The vector turned a quarter to the left.
    #[must_use]
    pub const fn left(self) -> Self {
        Self::new(-self.y, self.x)
    }

    /// Turned counter-clockwise about the origin.
    #[must_use]
    pub fn rotated(self, angle_rad: f64) -> Self {
        let (sin, cos) = angle_rad.sin_cos();
        Self::new(self.x * cos - self.y * sin, self.x * sin + self.y * cos)
    }

    /// Mirrored left to right: the plan seen from its other side.
    #[must_use]
    pub const fn mirrored(self) -> Self {
        Self::new(-self.x, self.y)
    }

    /// The place half-way to another.
    #[must_use]
    pub const fn midpoint(self, other: Self) -> Self {
        Self::new(self.x.midpoint(other.x), self.y.midpoint(other.y))
    }

    /// Whether both coordinates are numbers and finite.
    #[must_use]
    pub const fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite()
    }
}

impl Add for Point {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Neg for Point {
    type Output = Self;

    fn neg(self) -> Self {
        Self::new(-self.x, -self.y)
    }
}

impl Mul<f64> for Point {
    type Output = Self;

    fn mul(self, factor: f64) -> Self {
        self.scale(factor)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    #[test]
    fn vectors_of_a_three_four_five_triangle() {
        let side = Point::new(3.0, 4.0);
        assert!((side.norm() - 5.0).abs() < 1e-15);
        assert!((side.distance(Point::new(0.0, 0.0)) - 5.0).abs() < 1e-15);
        assert!((side.dot(side.left())).abs() < 1e-15);
        assert!((side.cross(side.left()) - 25.0).abs() < 1e-14);
        assert_eq!(side.unit(), Some(Point::new(3.0 / 5.0, 4.0 / 5.0)));
        assert_eq!(Point::default().unit(), None);
    }

    #[test]
    fn a_quarter_turn_and_a_mirror() {
        let turned = Point::new(2.0, 0.0).rotated(FRAC_PI_2);
        assert!(turned.distance(Point::new(0.0, 2.0)) < 1e-15);
        assert_eq!(Point::new(2.0, 1.0).mirrored(), Point::new(-2.0, 1.0));
        assert!(Point::polar(2.0, FRAC_PI_2).distance(Point::new(0.0, 2.0)) < 1e-15);
        assert_eq!(
            Point::new(1.0, 2.0) + -Point::new(1.0, 0.0) * 2.0,
            Point::new(-1.0, 2.0)
        );
    }
}
