//! Moving, turning, mirroring and enlarging a drawing.

use crate::geometry::Point;

/// A similarity: first mirrored in the y axis if asked, then enlarged, turned and moved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placement {
    /// Enlargement, paper mm per drawn mm; positive.
    pub scale: f64,
    /// Turn, degrees, counter-clockwise.
    pub rotation_deg: f64,
    /// Whether x is turned round before everything else.
    pub mirrored: bool,
    /// Where the origin goes, mm.
    pub origin: Point,
}

impl Placement {
    /// Leaves everything where it is.
    pub const IDENTITY: Self = Self {
        scale: 1.0,
        rotation_deg: 0.0,
        mirrored: false,
        origin: Point { x: 0.0, y: 0.0 },
    };

    /// Moves by the given amounts, mm.
    #[must_use]
    pub fn translation(x_mm: f64, y_mm: f64) -> Self {
        Self {
            origin: Point { x: x_mm, y: y_mm },
            ..Self::IDENTITY
        }
    }

    /// Enlarges about the origin.
    #[must_use]
    pub fn scaling(scale: f64) -> Self {
        Self {
            scale,
            ..Self::IDENTITY
        }
    }

    /// Turns about the origin, degrees, counter-clockwise.
    #[must_use]
    pub fn rotation(rotation_deg: f64) -> Self {
        Self {
            rotation_deg,
            ..Self::IDENTITY
        }
    }

    /// Turns left and right round: x becomes -x.
    #[must_use]
    pub fn mirror_left_right() -> Self {
        Self {
            mirrored: true,
            ..Self::IDENTITY
        }
    }

    /// Turns up and down round: y becomes -y.
    #[must_use]
    pub fn mirror_up_down() -> Self {
        Self {
            mirrored: true,
            rotation_deg: 180.0,
            ..Self::IDENTITY
        }
    }

    /// Where a point goes.
    #[must_use]
    pub fn point(&self, point: Point) -> Point {
        let turned = self.direction(point);
        Point {
            x: self.scale.mul_add(turned.x, self.origin.x),
            y: self.scale.mul_add(turned.y, self.origin.y),
        }
    }

    /// Where a direction goes: mirrored and turned, with its length kept.
    #[must_use]
    pub fn direction(&self, direction: Point) -> Point {
        let x = if self.mirrored {
            -direction.x
        } else {
            direction.x
        };
        turned(Point { x, y: direction.y }, self.rotation_deg)
    }

    /// Where the direction at `angle_deg` goes, degrees counter-clockwise from x.
    #[must_use]
    pub fn angle_deg(&self, angle_deg: f64) -> f64 {
        let own = if self.mirrored {
            180.0 - angle_deg
        } else {
            angle_deg
        };
        own + self.rotation_deg
    }

    /// +1, or -1 where left and right hand are exchanged.
    #[must_use]
    pub fn hand(&self) -> f64 {
        if self.mirrored { -1.0 } else { 1.0 }
    }
}

/// A vector turned counter-clockwise by an angle in degrees; quarter turns are exact.
#[must_use]
pub fn turned(vector: Point, angle_deg: f64) -> Point {
    let unit = unit_at(angle_deg);
    Point {
        x: vector.x * unit.x - vector.y * unit.y,
        y: vector.x * unit.y + vector.y * unit.x,
    }
}

/// The unit vector at an angle in degrees, counter-clockwise from x; quarter turns are exact.
#[must_use]
#[expect(
    clippy::float_cmp,
    reason = "only angles that are quarter turns to the last bit are meant"
)]
pub fn unit_at(angle_deg: f64) -> Point {
    let turn = angle_deg.rem_euclid(360.0);
    let exact = [
        (0.0, 1.0, 0.0),
        (90.0, 0.0, 1.0),
        (180.0, -1.0, 0.0),
        (270.0, 0.0, -1.0),
    ];
    for (quarter, x, y) in exact {
        if turn == quarter {
            return Point { x, y };
        }
    }
    let (y, x) = turn.to_radians().sin_cos();
    Point { x, y }
}

/// The point at a distance and an angle (degrees, counter-clockwise from x) from a centre.
#[must_use]
pub fn polar(centre: Point, radius_mm: f64, angle_deg: f64) -> Point {
    let unit = unit_at(angle_deg);
    Point {
        x: centre.x + radius_mm * unit.x,
        y: centre.y + radius_mm * unit.y,
    }
}

/// The direction from one point to another, degrees counter-clockwise from x, in (-180, 180].
#[must_use]
pub fn direction_deg(from: Point, to: Point) -> f64 {
    (to.y - from.y).atan2(to.x - from.x).to_degrees()
}

/// The distance between two points, mm.
#[must_use]
pub fn distance_mm(a: Point, b: Point) -> f64 {
    (a.x - b.x).hypot(a.y - b.y)
}

/// An angle brought into (-90, 90] by half turns, so that lettering along it reads from below or
/// from the right (ISO 129-1).
#[must_use]
pub fn readable_deg(angle_deg: f64) -> f64 {
    // A hair under -90 is what rounding makes of "straight down": it too reads from the right.
    const ROUNDING_DEG: f64 = 1e-9;
    let half = (angle_deg + 90.0).rem_euclid(180.0) - 90.0;
    if half <= -90.0 + ROUNDING_DEG {
        half + 180.0
    } else {
        half
    }
}
