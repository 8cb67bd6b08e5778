//! The slanted rectangle that a line of lettering covers.

use crate::drawing::extent::Extent;
use crate::drawing::placement::turned;
use crate::geometry::Point;

/// A rectangle at any angle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TextBox {
    /// Lower left corner as the lettering reads, mm.
    pub corner: Point,
    /// Length along the reading direction, mm.
    pub width_mm: f64,
    /// Length across it, mm.
    pub height_mm: f64,
    /// Reading direction, degrees counter-clockwise from x.
    pub rotation_deg: f64,
}

impl TextBox {
    /// The corners, counter-clockwise from the lower left one as it reads.
    #[must_use]
    pub fn corners(&self) -> [Point; 4] {
        [
            (0.0, 0.0),
            (self.width_mm, 0.0),
            (self.width_mm, self.height_mm),
            (0.0, self.height_mm),
        ]
        .map(|(along, across)| {
            let offset = turned(
                Point {
                    x: along,
                    y: across,
                },
                self.rotation_deg,
            );
            Point {
                x: self.corner.x + offset.x,
                y: self.corner.y + offset.y,
            }
        })
    }

    /// The upright rectangle round it.
    #[must_use]
    pub fn extent(&self) -> Extent {
        self.corners()
            .into_iter()
            .map(|corner| Extent::between(corner, corner))
            .fold(Extent::between(self.corner, self.corner), Extent::union)
    }

    /// The box with a margin all round, mm.
    #[must_use]
    pub fn grown(&self, by_mm: f64) -> Self {
        let back = turned(Point { x: by_mm, y: by_mm }, self.rotation_deg);
        Self {
            corner: Point {
                x: self.corner.x - back.x,
                y: self.corner.y - back.y,
            },
            width_mm: 2.0_f64.mul_add(by_mm, self.width_mm),
            height_mm: 2.0_f64.mul_add(by_mm, self.height_mm),
            rotation_deg: self.rotation_deg,
        }
    }

    /// True when two boxes share some area.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        let parted = |frame: &Self, points: [Point; 4]| {
            let inside = points.map(|point| frame.along_and_across(point));
            let apart = |values: [f64; 4], size: f64| {
                values.iter().all(|&value| value <= 0.0)
                    || values.iter().all(|&value| value >= size)
            };
            apart(inside.map(|place| place.x), frame.width_mm)
                || apart(inside.map(|place| place.y), frame.height_mm)
        };
        // Two rectangles are apart exactly when a side of one of them parts them.
        !parted(self, other.corners()) && !parted(other, self.corners())
    }

    /// True when some part of a straight line lies inside.
    #[must_use]
    pub fn meets_line(&self, from: Point, to: Point) -> bool {
        let (start, end) = (self.along_and_across(from), self.along_and_across(to));
        let mut entry = 0.0_f64;
        let mut exit = 1.0_f64;
        for (a, b, size) in [
            (start.x, end.x, self.width_mm),
            (start.y, end.y, self.height_mm),
        ] {
            let run = b - a;
            if run.abs() < f64::EPSILON {
                if a <= 0.0 || a >= size {
                    return false;
                }
                continue;
            }
            let (first, second) = (-a / run, (size - a) / run);
            entry = entry.max(first.min(second));
            exit = exit.min(first.max(second));
        }
        exit > entry
    }

    /// A point in the box's own directions, from its lower left corner.
    fn along_and_across(&self, point: Point) -> Point {
        turned(
            Point {
                x: point.x - self.corner.x,
                y: point.y - self.corner.y,
            },
            -self.rotation_deg,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn upright(x: f64, y: f64) -> TextBox {
        TextBox {
            corner: Point { x, y },
            width_mm: 4.0,
            height_mm: 2.0,
            rotation_deg: 0.0,
        }
    }

    #[test]
    fn boxes_that_touch_do_not_overlap() {
        assert!(!upright(0.0, 0.0).overlaps(&upright(4.0, 0.0)));
        assert!(upright(0.0, 0.0).overlaps(&upright(3.9, 1.9)));
    }

    #[test]
    fn slanted_box_beside_a_corner_is_apart_though_the_extents_overlap() {
        let slanted = TextBox {
            corner: Point { x: 4.5, y: -1.0 },
            width_mm: 6.0,
            height_mm: 1.0,
            rotation_deg: 45.0,
        };
        let plain = upright(0.0, 0.0);
        assert!(plain.extent().overlaps(&slanted.extent()));
        assert!(!plain.overlaps(&slanted));
        assert!(plain.grown(1.5).overlaps(&slanted));
    }

    #[test]
    fn line_through_a_turned_box_meets_it() {
        let turned_box = TextBox {
            rotation_deg: 90.0,
            ..upright(0.0, 0.0)
        };
        // Turned by 90 degrees it covers x from -2 to 0 and y from 0 to 4.
        let line = |x: f64| (Point { x, y: -1.0 }, Point { x, y: 9.0 });
        assert!(turned_box.meets_line(line(-1.0).0, line(-1.0).1));
        assert!(!turned_box.meets_line(line(0.5).0, line(0.5).1));
    }
}
