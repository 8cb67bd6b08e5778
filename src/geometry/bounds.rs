//! The upright box around a shape.

use super::Point;

/// The smallest upright box that holds a shape, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoundingBox {
    /// Lower left corner.
    pub min: Point,
    /// Upper right corner.
    pub max: Point,
}

impl BoundingBox {
    /// The box of two corners, in any order.
    #[must_use]
    pub const fn of(a: Point, b: Point) -> Self {
        Self {
            min: Point::new(a.x.min(b.x), a.y.min(b.y)),
            max: Point::new(a.x.max(b.x), a.y.max(b.y)),
        }
    }

    /// The box that also holds a point.
    #[must_use]
    pub const fn with(self, point: Point) -> Self {
        Self {
            min: Point::new(self.min.x.min(point.x), self.min.y.min(point.y)),
            max: Point::new(self.max.x.max(point.x), self.max.y.max(point.y)),
        }
    }

    /// The box that also holds another.
    #[must_use]
    pub const fn joined(self, other: Self) -> Self {
        self.with(other.min).with(other.max)
    }

    /// The width, mm.
    #[must_use]
    pub fn width(self) -> f64 {
        self.max.x - self.min.x
    }

    /// The height, mm.
    #[must_use]
    pub fn height(self) -> f64 {
        self.max.y - self.min.y
    }

    /// The middle.
    #[must_use]
    pub const fn centre(self) -> Point {
        self.min.midpoint(self.max)
    }

    /// The square of the distance between two boxes; 0 when they meet.
    #[must_use]
    pub fn gap_squared(self, other: Self) -> f64 {
        let dx = (other.min.x - self.max.x)
            .max(self.min.x - other.max.x)
            .max(0.0);
        let dy = (other.min.y - self.max.y)
            .max(self.min.y - other.max.y)
            .max(0.0);
        dx * dx + dy * dy
    }

    /// The square of the distance to a point; 0 inside.
    #[must_use]
    pub fn gap_squared_to(self, point: Point) -> f64 {
        self.gap_squared(Self {
            min: point,
            max: point,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gap_between_boxes_runs_over_the_corner() {
        let one = BoundingBox::of(Point::new(1.0, 1.0), Point::new(0.0, 0.0));
        let two = BoundingBox::of(Point::new(4.0, 5.0), Point::new(6.0, 7.0));
        assert!((one.gap_squared(two) - 25.0).abs() < 1e-15);
        assert!(one.gap_squared(one).abs() < 1e-15);
        assert!((one.gap_squared_to(Point::new(0.5, 3.0)) - 4.0).abs() < 1e-15);
        let both = one.joined(two);
        assert!((both.width() - 6.0).abs() < 1e-15 && (both.height() - 7.0).abs() < 1e-15);
        assert_eq!(both.centre(), Point::new(3.0, 3.5));
    }
}
