//! The sign for surface texture.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::{Label, Style};
use crate::drawing::lettering::width_mm;
use crate::drawing::path::Path;
use crate::drawing::placement::{Placement, polar};
use crate::geometry::Point;

/// What may be done to reach the surface (ISO 21920-1, formerly ISO 1302).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Removal {
    /// Any process: the bare sign.
    Any,
    /// Material must be removed: a bar across the short leg.
    Required,
    /// Material must not be removed: a circle in the angle.
    Forbidden,
}

/// A surface texture sign.
#[derive(Debug, Clone, PartialEq)]
pub struct SurfaceSign {
    /// The point that touches the surface, mm.
    pub at: Point,
    /// Turn of the sign, degrees counter-clockwise from upright.
    pub rotation_deg: f64,
    /// What may be done.
    pub removal: Removal,
    /// The requirement, such as "Ra 1,6".
    pub requirement: String,
}

/// Height of the short leg, in lettering heights (ISO 1302:2002 annex, from memory: 5 at 3.5).
const SHORT_LEG: f64 = 1.4;

/// Least height of the long leg, in lettering heights (ISO 1302:2002 annex, from memory: 10.5 at 3.5).
const LONG_LEG: f64 = 3.0;

/// Angle of the legs to the surface, degrees.
const LEG_DEG: f64 = 60.0;

/// Space round the requirement, in lettering heights.
const MARGIN: f64 = 0.3;

/// The point of the sign before it is placed.
const FOOT: Point = Point { x: 0.0, y: 0.0 };

impl SurfaceSign {
    /// Width and height of the upright sign, mm, and how far it reaches to the left of its point.
    #[must_use]
    pub fn size_mm(&self, style: &Style) -> (f64, f64, f64) {
        let height = style.height_mm;
        let run = |leg: f64| leg * height / LEG_DEG.to_radians().tan();
        let left = run(SHORT_LEG);
        let bar = 2.0_f64.mul_add(MARGIN * height, width_mm(&self.requirement, height));
        (left + run(LONG_LEG) + bar, LONG_LEG * height, left)
    }
}

/// Two unequal legs at 60 degrees, the sign for removal, and the requirement under the bar of the long leg.
#[must_use]
pub fn surface_sign(wanted: &SurfaceSign, style: &Style) -> Annotation {
    let placement = Placement {
        rotation_deg: wanted.rotation_deg,
        origin: wanted.at,
        ..Placement::IDENTITY
    };
    let mut drawn = Annotation::default();
    for path in strokes(wanted, style) {
        drawn.narrow(path.placed(&placement), style.role);
    }
    if !wanted.requirement.is_empty() {
        let height = style.height_mm;
        let long = leg_end(LONG_LEG, LEG_DEG, style);
        let start = placement.point(Point {
            x: MARGIN.mul_add(height, long.x),
            y: long.y - (1.0 + MARGIN) * height,
        });
        drawn.join(Label::plain(wanted.requirement.clone()).from_start(
            start,
            wanted.rotation_deg,
            style,
        ));
    }
    drawn
}

/// The end of a leg that rises by some lettering heights at an angle, its foot at the origin.
fn leg_end(rise: f64, angle_deg: f64, style: &Style) -> Point {
    polar(
        FOOT,
        rise * style.height_mm / LEG_DEG.to_radians().sin(),
        angle_deg,
    )
}

/// The lines of the upright sign with its point at the origin.
fn strokes(wanted: &SurfaceSign, style: &Style) -> Vec<Path> {
    let height = style.height_mm;
    let short = leg_end(SHORT_LEG, 180.0 - LEG_DEG, style);
    let long = leg_end(LONG_LEG, LEG_DEG, style);
    let legs = if wanted.requirement.is_empty() {
        Path::open([short, FOOT, long])
    } else {
        let bar = 2.0_f64.mul_add(MARGIN * height, width_mm(&wanted.requirement, height));
        let bar_end = Point {
            x: long.x + bar,
            y: long.y,
        };
        Path::open([short, FOOT, long, bar_end])
    };
    let removal = match wanted.removal {
        Removal::Any => None,
        Removal::Required => Some(Path::line(short, leg_end(SHORT_LEG, LEG_DEG, style))),
        Removal::Forbidden => {
            // The circle that touches both legs and the height of the short one.
            let radius = SHORT_LEG * height / 3.0;
            let centre = Point {
                x: FOOT.x,
                y: FOOT.y + 2.0 * radius,
            };
            Some(Path::circle(centre, radius))
        }
    };
    std::iter::once(legs).chain(removal).collect()
}
