//! The flat shape between two radii over an angle interval.

use std::f64::consts::{PI, TAU};

use thiserror::Error;

use super::Interval;
use crate::geometry::{Outline, OutlineBuilder, OutlineError, Point, plan_point};

/// A lug, an ear, a slot: all between two radii over an interval of clock angles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AnnularSector {
    /// Inner radius, mm; 0 for a sector that reaches the axis.
    pub inner: f64,
    /// Outer radius, mm.
    pub outer: f64,
    /// The clock angles it covers.
    pub interval: Interval,
}

/// The sides of a sector, as tags of its outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SectorEdge {
    /// The outer arc.
    Outer,
    /// The flank where it ends.
    End,
    /// The inner arc.
    Inner,
    /// The flank where it begins.
    Start,
    /// A rounded corner.
    Corner,
}

/// Why a sector cannot be drawn.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum SectorError {
    /// Radii out of order.
    #[error(
        "a sector from radius {inner} to {outer} is empty; the outer radius must exceed the inner"
    )]
    Radii {
        /// Inner radius, mm.
        inner: f64,
        /// Outer radius, mm.
        outer: f64,
    },
    /// A closed ring has two contours.
    #[error(
        "a sector all the way round is a ring with two contours; give it a gap or draw two circles"
    )]
    FullTurn,
    /// A corner radius that does not fit.
    #[error("corner radius {radius} is too large for the sector; at most {limit:.3} fits")]
    Corner {
        /// The corner radius asked for, mm.
        radius: f64,
        /// The largest that fits, mm.
        limit: f64,
    },
    /// The sector is too small to draw.
    #[error(transparent)]
    Outline(#[from] OutlineError),
}

impl AnnularSector {
    /// A sector between two radii.
    ///
    /// # Errors
    /// [`SectorError::Radii`] when the outer radius does not exceed the inner, or one is negative or no number.
    pub fn new(inner: f64, outer: f64, interval: Interval) -> Result<Self, SectorError> {
        if inner >= 0.0 && outer > inner && outer.is_finite() {
            Ok(Self {
                inner,
                outer,
                interval,
            })
        } else {
            Err(SectorError::Radii { inner, outer })
        }
    }

    /// The area, mm2.
    #[must_use]
    pub fn area(&self) -> f64 {
        0.5 * self.interval.extent_rad * (self.outer - self.inner) * (self.outer + self.inner)
    }

    /// The area shared with another sector about the same axis, mm2, in closed form.
    #[must_use]
    pub fn overlap_area(&self, other: &Self) -> f64 {
        let (inner, outer) = (self.inner.max(other.inner), self.outer.min(other.outer));
        if outer <= inner {
            return 0.0;
        }
        0.5 * self.interval.overlap_length(other.interval) * (outer - inner) * (outer + inner)
    }

    /// Whether a point of the plan lies in it, edges included.
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        let radius = point.norm();
        radius >= self.inner
            && radius <= self.outer
            && self.interval.contains(crate::geometry::clock_of(point))
    }

    /// Turned clockwise.
    #[must_use]
    pub fn shifted(&self, by_rad: f64) -> Self {
        Self {
            interval: self.interval.shifted(by_rad),
            ..*self
        }
    }

    /// Seen from the other side.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self {
            interval: self.interval.mirrored(),
            ..*self
        }
    }

    /// The largest corner radius that fits all four corners, mm. A corner may take half the depth, and at each arc
    /// half the angle: 2 asin(f / (inner + f)) and 2 asin(f / (outer - f)) may not exceed the extent.
    #[must_use]
    pub fn largest_corner(&self) -> f64 {
        let by_depth = (self.outer - self.inner) / 2.0;
        by_depth
            .min(self.largest_inner_corner())
            .min(self.largest_outer_corner())
    }

    fn largest_inner_corner(&self) -> f64 {
        let sine = (self.interval.extent_rad.min(PI) / 2.0).sin();
        if sine >= 1.0 {
            f64::INFINITY
        } else {
            self.inner * sine / (1.0 - sine)
        }
    }

    fn largest_outer_corner(&self) -> f64 {
        let sine = (self.interval.extent_rad.min(PI) / 2.0).sin();
        self.outer * sine / (1.0 + sine)
    }

    /// The outline in the plan as seen from the lens side, with rounded corners; radii of 0 leave them sharp.
    ///
    /// # Errors
    /// [`SectorError`] when a corner radius does not fit, the sector is a full ring, or too small to draw.
    pub fn outline(
        &self,
        outer_corner: f64,
        inner_corner: f64,
    ) -> Result<Outline<SectorEdge>, SectorError> {
        if self.interval.is_full_turn() {
            return Err(SectorError::FullTurn);
        }
        self.check_corners(outer_corner, inner_corner)?;
        let outer = Corner::outer(self.outer, outer_corner);
        let inner = Corner::inner(self.inner, inner_corner);
        let (start, end) = (self.interval.start_rad, self.interval.end_rad());
        let arc = (self.interval.extent_rad - 2.0 * outer.angle).max(0.0);
        let inner_arc = (self.interval.extent_rad - 2.0 * inner.angle).max(0.0);
        let flank = |clock: f64, corner: &Corner| plan_point(corner.on_flank, clock);
        let origin = Point::default();
        let edge = SectorEdge::Corner;
        // Clockwise on the clock, so arcs about the axis run with a negative sweep; corners too.
        let builder = OutlineBuilder::start(flank(start, &outer))
            .arc_to(
                plan_point(self.outer, start + outer.angle),
                -outer.bulge,
                edge,
            )
            .arc_about(origin, -arc, SectorEdge::Outer)
            .arc_to(flank(end, &outer), -outer.bulge, edge)
            .line_to(flank(end, &inner), SectorEdge::End);
        if self.inner <= 0.0 {
            return Ok(builder
                .line_to(origin, SectorEdge::End)
                .close(SectorEdge::Start)?);
        }
        let outline = builder
            .arc_to(
                plan_point(self.inner, end - inner.angle),
                -inner.bulge,
                edge,
            )
            .arc_about(origin, inner_arc, SectorEdge::Inner)
            .arc_to(flank(start, &inner), -inner.bulge, edge)
            .close(SectorEdge::Start)?;
        Ok(outline)
    }

    fn check_corners(&self, outer_corner: f64, inner_corner: f64) -> Result<(), SectorError> {
        let depth = self.outer - self.inner;
        let limits = [
            (
                outer_corner,
                self.largest_outer_corner().min(depth - inner_corner),
            ),
            (
                inner_corner,
                self.largest_inner_corner().min(depth - outer_corner),
            ),
        ];
        for (radius, limit) in limits {
            if !(radius >= 0.0 && radius <= limit.max(0.0)) {
                return Err(SectorError::Corner {
                    radius,
                    limit: limit.max(0.0),
                });
            }
        }
        Ok(())
    }
}

/// Where a rounded corner leaves the arc and the flank.
struct Corner {
    /// Angle from the flank to where the corner meets the arc.
    angle: f64,
    /// Radius at which it meets the flank.
    on_flank: f64,
    /// Bulge of the corner's own arc.
    bulge: f64,
}

impl Corner {
    /// Its centre lies at `arc - radius`; the corner turns through a right angle and the angle it takes.
    fn outer(arc: f64, radius: f64) -> Self {
        let centre = arc - radius;
        let angle = if radius > 0.0 {
            (radius / centre).min(1.0).asin()
        } else {
            0.0
        };
        Self {
            angle,
            on_flank: centre * angle.cos(),
            bulge: if radius > 0.0 {
                ((TAU / 4.0 + angle) / 4.0).tan()
            } else {
                0.0
            },
        }
    }

    /// Its centre lies at `arc + radius`; the corner turns through a right angle less the angle it takes.
    fn inner(arc: f64, radius: f64) -> Self {
        let centre = arc + radius;
        let angle = if radius > 0.0 {
            (radius / centre).min(1.0).asin()
        } else {
            0.0
        };
        Self {
            angle,
            on_flank: centre * angle.cos(),
            bulge: if radius > 0.0 {
                ((TAU / 4.0 - angle) / 4.0).tan()
            } else {
                0.0
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sector(inner: f64, outer: f64, start: f64, extent: f64) -> AnnularSector {
        AnnularSector::new(inner, outer, Interval::from_degrees(start, extent).unwrap()).unwrap()
    }

    #[test]
    fn area_three_ways() {
        let lug = AnnularSector::new(20.0, 23.0, Interval::new(1.0, 0.9).unwrap()).unwrap();
        assert!((lug.area() - 58.05).abs() < 1e-12);
        assert!((lug.outline(0.0, 0.0).unwrap().area() - 58.05).abs() < 1e-12);
        assert!((lug.overlap_area(&lug) - 58.05).abs() < 1e-12);
        let turned = lug.shifted(0.5);
        assert!((lug.overlap_area(&turned) - 0.5 * 0.4 * 129.0).abs() < 1e-12);
        let wide = sector(20.0, 23.0, 10.0, 300.0);
        assert!((wide.outline(0.0, 0.0).unwrap().area() - wide.area()).abs() < 1e-10);
        let pie = sector(0.0, 5.0, 0.0, 90.0);
        assert!((pie.outline(0.0, 0.0).unwrap().area() - 6.25 * PI).abs() < 1e-12);
    }

    #[test]
    fn rounded_corners_take_off_what_they_should() {
        let lug = sector(24.0, 27.0, 20.0, 50.0);
        let radius = 0.5;
        let sharp = lug.area();
        // Outer corner lost: the kite from axis to corner centre, less the triangle and the corner's own sector.
        let lost = |centre: f64, arc: f64, turn: f64, angle: f64| {
            let kite = 0.5 * centre * angle.cos() * radius;
            0.5 * arc * arc * angle - kite - 0.5 * radius * radius * turn
        };
        let outer_angle = (radius / 26.5_f64).asin();
        let outer = lost(26.5, 27.0, PI / 2.0 + outer_angle, outer_angle);
        let inner_angle = (radius / 24.5_f64).asin();
        let kite = 0.5 * 24.5 * inner_angle.cos() * radius;
        let inner = kite
            - 0.5 * 24.0 * 24.0 * inner_angle
            - 0.5 * radius * radius * (PI / 2.0 - inner_angle);
        let rounded = lug.outline(radius, radius).unwrap();
        assert!((rounded.area() - (sharp - 2.0 * outer - 2.0 * inner)).abs() < 1e-10);
        assert_eq!(rounded.pieces().len(), 8);
    }

    #[test]
    fn corners_that_do_not_fit_are_refused() {
        let lug = sector(24.0, 27.0, 20.0, 50.0);
        assert!((lug.largest_corner() - 1.5).abs() < 1e-12);
        assert!(lug.outline(1.5, 1.5).is_ok());
        assert!(matches!(
            lug.outline(1.6, 1.5),
            Err(SectorError::Corner { .. })
        ));
        let narrow = sector(24.0, 27.0, 20.0, 4.0);
        let limit = narrow.largest_corner();
        assert!(limit < 1.5 && limit > 0.8);
        assert!(narrow.outline(limit, limit).is_ok());
        assert!(matches!(
            narrow.outline(limit * 1.05, limit * 1.05),
            Err(SectorError::Corner { .. })
        ));
        let ring = sector(24.0, 27.0, 20.0, 360.0);
        assert_eq!(ring.outline(0.0, 0.0), Err(SectorError::FullTurn));
        assert!(AnnularSector::new(5.0, 5.0, Interval::full_turn()).is_err());
    }

    #[test]
    fn a_lug_at_three_o_clock_is_on_the_right() {
        let outline = sector(10.0, 12.0, 80.0, 20.0).outline(0.0, 0.0).unwrap();
        assert!(outline.contains(Point::new(11.0, 0.0)));
        let begins = sector(10.0, 12.0, 0.0, 20.0).outline(0.0, 0.0).unwrap();
        assert!(begins.contains(Point::new(0.5, 11.0)) && !begins.contains(Point::new(-0.5, 11.0)));
    }
}
