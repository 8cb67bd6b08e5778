//! The upright rectangle that a piece of drawing covers.

use crate::geometry::Point;

/// An upright rectangle; all four in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extent {
    /// Left edge, mm.
    pub left: f64,
    /// Bottom edge, mm.
    pub bottom: f64,
    /// Right edge, mm.
    pub right: f64,
    /// Top edge, mm.
    pub top: f64,
}

impl Extent {
    /// The rectangle between two opposite corners, in whatever order they come.
    #[must_use]
    pub fn between(a: Point, b: Point) -> Self {
        Self {
            left: a.x.min(b.x),
            bottom: a.y.min(b.y),
            right: a.x.max(b.x),
            top: a.y.max(b.y),
        }
    }

    /// The smallest rectangle round some points; none for no points.
    #[must_use]
    pub fn around(points: impl IntoIterator<Item = Point>) -> Option<Self> {
        points
            .into_iter()
            .map(|point| Self::between(point, point))
            .reduce(Self::union)
    }

    /// The rectangle from its lower left corner, width and height, mm.
    #[must_use]
    pub fn sized(corner: Point, width_mm: f64, height_mm: f64) -> Self {
        Self::between(
            corner,
            Point {
                x: corner.x + width_mm,
                y: corner.y + height_mm,
            },
        )
    }

    /// Width, mm.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// Height, mm.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.top - self.bottom
    }

    /// The middle.
    #[must_use]
    pub fn centre(&self) -> Point {
        Point {
            x: self.left.midpoint(self.right),
            y: self.bottom.midpoint(self.top),
        }
    }

    /// The smallest rectangle that covers both.
    #[must_use]
    pub fn union(self, other: Self) -> Self {
        Self {
            left: self.left.min(other.left),
            bottom: self.bottom.min(other.bottom),
            right: self.right.max(other.right),
            top: self.top.max(other.top),
        }
    }

    /// The rectangle grown on all sides by `by_mm` (shrunk when negative).
    #[must_use]
    pub fn grown(self, by_mm: f64) -> Self {
        Self {
            left: self.left - by_mm,
            bottom: self.bottom - by_mm,
            right: self.right + by_mm,
            top: self.top + by_mm,
        }
    }

    /// True when the two share some area.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.bottom < other.top
            && other.bottom < self.top
    }

    /// True when `other` lies wholly inside, up to 1e-9 mm.
    #[must_use]
    pub fn contains(&self, other: &Self) -> bool {
        const SLACK_MM: f64 = 1e-9;
        other.left >= self.left - SLACK_MM
            && other.right <= self.right + SLACK_MM
            && other.bottom >= self.bottom - SLACK_MM
            && other.top <= self.top + SLACK_MM
    }

    /// The corners, counter-clockwise from the lower left one.
    #[must_use]
    pub fn corners(&self) -> [Point; 4] {
        let corner = |x, y| Point { x, y };
        [
            corner(self.left, self.bottom),
            corner(self.right, self.bottom),
            corner(self.right, self.top),
            corner(self.left, self.top),
        ]
    }
}
