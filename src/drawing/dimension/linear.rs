//! Distances between two points, measured level, upright or aslant.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::arrow::arrowhead;
use crate::drawing::dimension::label::Label;
use crate::drawing::dimension::style::{EXTENSION_GAP_MM, EXTENSION_OVERSHOOT_MM, Style};
use crate::drawing::placement::{direction_deg, polar, readable_deg, unit_at};
use crate::geometry::Point;

/// Which ends of a dimension line lie on the part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Ends {
    /// Arrow and extension line at both.
    Both,
    /// Only at `to`; the line just stops at `from`: a diameter in a half-section, drawn a little
    /// past the axis (ISO 129-1).
    OnlyTo,
}

/// A distance to be drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Linear {
    /// First point on the part, mm.
    pub from: Point,
    /// Second point on the part, mm.
    pub to: Point,
    /// Direction in which the distance is measured: 0 level, 90 upright; degrees.
    pub direction_deg: f64,
    /// A point on the dimension line, mm.
    pub through: Point,
    /// What it says.
    pub label: Label,
    /// Middle of the lettering along the measured direction (x for level, y for upright dimensions),
    /// mm; none for the middle of the span, or beside it where it does not fit.
    pub text_centre_mm: Option<f64>,
    /// Which ends are on the part.
    pub ends: Ends,
    /// Whether the extension lines at `from` and at `to` are drawn; not where another dimension
    /// draws the same line.
    pub extensions: [bool; 2],
}

/// How far a dimension goes along its own line, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Lower end of the span.
    pub low_mm: f64,
    /// Upper end of the span.
    pub high_mm: f64,
    /// Lower end of the lettering.
    pub text_low_mm: f64,
    /// Upper end of the lettering.
    pub text_high_mm: f64,
    /// Whether the low end has an arrow.
    pub arrow_low: bool,
    /// Whether the high end has an arrow.
    pub arrow_high: bool,
}

impl Reach {
    /// Whether the arrows stand outside and point inward.
    #[must_use]
    pub fn arrows_outside(&self, style: &Style) -> bool {
        self.arrow_low && self.arrow_high && style.is_cramped(self.high_mm - self.low_mm)
    }

    /// Where the dimension line starts and ends, tails under lettering beside the span included, mm.
    #[must_use]
    pub fn line_mm(&self, style: &Style) -> (f64, f64) {
        let tail = if self.arrows_outside(style) {
            style.tail_mm()
        } else {
            0.0
        };
        (
            self.text_low_mm.min(self.low_mm - tail),
            self.text_high_mm.max(self.high_mm + tail),
        )
    }

    /// Middle of lettering of a width put beside the high end, mm.
    #[must_use]
    pub fn centre_beside_high(high_mm: f64, text_mm: f64, style: &Style) -> f64 {
        high_mm + style.tail_mm() + text_mm / 2.0
    }
}

impl Linear {
    /// A level distance (along x) with its line at a height.
    #[must_use]
    pub fn level(from: Point, to: Point, line_y_mm: f64, label: Label) -> Self {
        Self {
            through: Point {
                x: from.x,
                y: line_y_mm,
            },
            ..Self::along(from, to, 0.0, label)
        }
    }

    /// An upright distance (along y) with its line at a place.
    #[must_use]
    pub fn upright(from: Point, to: Point, line_x_mm: f64, label: Label) -> Self {
        Self {
            through: Point {
                x: line_x_mm,
                y: from.y,
            },
            ..Self::along(from, to, 90.0, label)
        }
    }

    /// The distance between two points along their own line, drawn `offset_mm` to the left of the
    /// way from one to the other.
    #[must_use]
    pub fn aligned(from: Point, to: Point, offset_mm: f64, label: Label) -> Self {
        let direction = direction_deg(from, to);
        Self {
            through: polar(from, offset_mm, direction + 90.0),
            ..Self::along(from, to, direction, label)
        }
    }

    /// A diameter in a half-section: from past the axis up to a point of the outline, with its line
    /// at `line_x_mm`; the axis lies at the height `axis_y_mm`.
    #[must_use]
    pub fn half_diameter(
        edge: Point,
        axis_y_mm: f64,
        line_x_mm: f64,
        label: Label,
        style: &Style,
    ) -> Self {
        let away = if edge.y >= axis_y_mm { -1.0 } else { 1.0 };
        let stop = Point {
            x: line_x_mm,
            y: axis_y_mm + away * style.tail_mm(),
        };
        Self {
            ends: Ends::OnlyTo,
            ..Self::upright(stop, edge, line_x_mm, label)
        }
    }

    /// A diameter across a circle, at an angle in degrees.
    #[must_use]
    pub fn across_circle(centre: Point, radius_mm: f64, angle_deg: f64, label: Label) -> Self {
        let from = polar(centre, radius_mm, angle_deg + 180.0);
        let to = polar(centre, radius_mm, angle_deg);
        Self::along(from, to, angle_deg, label)
    }

    fn along(from: Point, to: Point, direction_deg: f64, label: Label) -> Self {
        Self {
            from,
            to,
            direction_deg,
            through: from,
            label,
            text_centre_mm: None,
            ends: Ends::Both,
            extensions: [true, true],
        }
    }
}

/// Extension lines, dimension line, arrows and lettering of a distance.
///
/// The lettering stands above the line and reads from below or from the right (ISO 129-1); arrows
/// stand outside where the span is too short for them.
#[must_use]
pub fn linear(wanted: &Linear, style: &Style) -> Annotation {
    let axes = Axes::at(readable_deg(wanted.direction_deg));
    let line_v = axes.across(wanted.through);
    let reach = reach(wanted, &axes, style);
    let mut drawn = extension_lines(wanted, &axes, line_v, style);
    let (line_from, line_to) = reach.line_mm(style);
    drawn.narrow_line(
        axes.point(line_from, line_v),
        axes.point(line_to, line_v),
        style.role,
    );
    let inward_deg = if reach.arrows_outside(style) {
        180.0
    } else {
        0.0
    };
    for (has_arrow, u, direction_deg) in [
        (reach.arrow_low, reach.low_mm, axes.angle_deg + 180.0),
        (reach.arrow_high, reach.high_mm, axes.angle_deg),
    ] {
        if has_arrow {
            let tip = axes.point(u, line_v);
            drawn.join(arrowhead(tip, direction_deg + inward_deg, style));
        }
    }
    let centre = reach.text_low_mm.midpoint(reach.text_high_mm);
    drawn.join(wanted.label.centred(
        axes.point(centre, line_v + wanted.label.baseline_mm(style)),
        axes.angle_deg,
        style,
    ));
    drawn
}

/// The extension lines of the ends that are on the part.
fn extension_lines(wanted: &Linear, axes: &Axes, line_v: f64, style: &Style) -> Annotation {
    let [at_from, at_to] = wanted.extensions;
    let mut drawn = Annotation::default();
    for (point, is_drawn) in [
        (wanted.from, at_from && wanted.ends == Ends::Both),
        (wanted.to, at_to),
    ] {
        let away = line_v - axes.across(point);
        if is_drawn && away.abs() > EXTENSION_GAP_MM {
            let u = axes.along(point);
            let side = away.signum();
            let start = axes.across(point) + side * EXTENSION_GAP_MM;
            let end = line_v + side * EXTENSION_OVERSHOOT_MM;
            drawn.narrow_line(axes.point(u, start), axes.point(u, end), style.role);
        }
    }
    drawn
}

/// The directions along and across a dimension line.
struct Axes {
    angle_deg: f64,
    unit: Point,
}

impl Axes {
    fn at(angle_deg: f64) -> Self {
        Self {
            angle_deg,
            unit: unit_at(angle_deg),
        }
    }

    fn along(&self, point: Point) -> f64 {
        point.x * self.unit.x + point.y * self.unit.y
    }

    fn across(&self, point: Point) -> f64 {
        point.y * self.unit.x - point.x * self.unit.y
    }

    fn point(&self, along: f64, across: f64) -> Point {
        Point {
            x: along * self.unit.x - across * self.unit.y,
            y: along * self.unit.y + across * self.unit.x,
        }
    }
}

/// Where span and lettering lie along the line.
fn reach(wanted: &Linear, axes: &Axes, style: &Style) -> Reach {
    let (from, to) = (axes.along(wanted.from), axes.along(wanted.to));
    let (low, high) = (from.min(to), from.max(to));
    let text = wanted.label.width_mm(style);
    let end_room = style.end_room_mm(high - low);
    let centre = wanted.text_centre_mm.unwrap_or_else(|| {
        let fits = match wanted.ends {
            Ends::Both => text <= high - low - 2.0 * end_room,
            Ends::OnlyTo => text <= high - low - style.arrow_mm(),
        };
        if fits {
            low.midpoint(high)
        } else {
            Reach::centre_beside_high(high, text, style)
        }
    });
    Reach {
        low_mm: low,
        high_mm: high,
        text_low_mm: centre - text / 2.0,
        text_high_mm: centre + text / 2.0,
        arrow_low: wanted.ends == Ends::Both || to < from,
        arrow_high: wanted.ends == Ends::Both || to >= from,
    }
}

#[cfg(test)]
#[path = "linear_tests.rs"]
mod tests;
