//! Angles, drawn as an arc between two rays.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::arrow::arrowhead;
use crate::drawing::dimension::label::Label;
use crate::drawing::dimension::style::{EXTENSION_GAP_MM, EXTENSION_OVERSHOOT_MM, Style};
use crate::drawing::path::Path;
use crate::drawing::placement::{polar, readable_deg};
use crate::geometry::Point;

/// An angle to be drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Angular {
    /// Where the two rays meet, mm.
    pub apex: Point,
    /// Radius of the dimension line, mm.
    pub radius_mm: f64,
    /// First ray, degrees counter-clockwise from x.
    pub start_deg: f64,
    /// Angle to the second ray, degrees; positive counter-clockwise.
    pub sweep_deg: f64,
    /// Distance from the apex at which the part ends on the first and on the second ray, mm;
    /// extension lines run from there to the dimension line.
    pub part_radius_mm: [f64; 2],
    /// What it says.
    pub label: Label,
}

/// Extension lines, arc, arrows and lettering of an angle.
///
/// The lettering follows the arc and reads from below or from the right; arrows and lettering go
/// outside where the arc is too short for them.
#[must_use]
pub fn angular(wanted: &Angular, style: &Style) -> Annotation {
    // Everything below turns counter-clockwise.
    let (low_deg, sweep_deg, part_mm) = if wanted.sweep_deg < 0.0 {
        let [first, second] = wanted.part_radius_mm;
        (
            wanted.start_deg + wanted.sweep_deg,
            -wanted.sweep_deg,
            [second, first],
        )
    } else {
        (wanted.start_deg, wanted.sweep_deg, wanted.part_radius_mm)
    };
    let high_deg = low_deg + sweep_deg;
    let outside = style.is_cramped(sweep_deg.to_radians() * wanted.radius_mm);
    let (line_deg, text_deg) = spread_deg(wanted, low_deg, high_deg, style);
    let mut drawn = extension_lines(wanted, [low_deg, high_deg], part_mm, style);
    drawn.narrow(
        Path::arc(
            wanted.apex,
            wanted.radius_mm,
            line_deg.0,
            line_deg.1 - line_deg.0,
        ),
        style.role,
    );
    drawn.join(arrows(wanted, low_deg, high_deg, outside, style));
    drawn.join(lettering(wanted, text_deg, style));
    drawn
}

/// Where the arc starts and ends and where its lettering has its middle, degrees.
fn spread_deg(wanted: &Angular, low_deg: f64, high_deg: f64, style: &Style) -> ((f64, f64), f64) {
    let per_mm_deg = (1.0 / wanted.radius_mm).to_degrees();
    let arc_mm = (high_deg - low_deg) / per_mm_deg;
    let tail_deg = style.tail_mm() * per_mm_deg;
    let text_deg = wanted.label.width_mm(style) * per_mm_deg;
    let line_deg = if style.is_cramped(arc_mm) {
        (low_deg - tail_deg, high_deg + tail_deg)
    } else {
        (low_deg, high_deg)
    };
    let room_deg = (arc_mm - 2.0 * style.end_room_mm(arc_mm)) * per_mm_deg;
    if text_deg <= room_deg {
        (line_deg, low_deg.midpoint(high_deg))
    } else {
        let centre = high_deg + tail_deg + text_deg / 2.0;
        ((line_deg.0, centre + text_deg / 2.0), centre)
    }
}

/// The rays from the part to a little past the arc.
fn extension_lines(
    wanted: &Angular,
    rays_deg: [f64; 2],
    part_mm: [f64; 2],
    style: &Style,
) -> Annotation {
    let mut drawn = Annotation::default();
    for (ray_deg, part_mm) in rays_deg.into_iter().zip(part_mm) {
        let away = wanted.radius_mm - part_mm;
        if away.abs() > EXTENSION_GAP_MM {
            let side = away.signum();
            drawn.narrow_line(
                polar(wanted.apex, part_mm + side * EXTENSION_GAP_MM, ray_deg),
                polar(
                    wanted.apex,
                    wanted.radius_mm + side * EXTENSION_OVERSHOOT_MM,
                    ray_deg,
                ),
                style.role,
            );
        }
    }
    drawn
}

/// Arrowheads along the chord of the arc that they cover, so that both their ends lie on it.
fn arrows(
    wanted: &Angular,
    low_deg: f64,
    high_deg: f64,
    outside: bool,
    style: &Style,
) -> Annotation {
    let lean_deg = (style.arrow_mm() / (2.0 * wanted.radius_mm))
        .min(1.0)
        .asin()
        .to_degrees();
    let inside = [
        (low_deg, low_deg - 90.0 + lean_deg),
        (high_deg, high_deg + 90.0 - lean_deg),
    ];
    let from_outside = [
        (low_deg, low_deg + 90.0 - lean_deg),
        (high_deg, high_deg - 90.0 + lean_deg),
    ];
    let mut drawn = Annotation::default();
    for (ray_deg, direction_deg) in if outside { from_outside } else { inside } {
        let tip = polar(wanted.apex, wanted.radius_mm, ray_deg);
        drawn.join(arrowhead(tip, direction_deg, style));
    }
    drawn
}

/// The label on the reading side of the arc.
fn lettering(wanted: &Angular, text_deg: f64, style: &Style) -> Annotation {
    let reads_deg = readable_deg(text_deg - 90.0);
    let up = crate::drawing::placement::unit_at(reads_deg + 90.0);
    let out = crate::drawing::placement::unit_at(text_deg);
    let is_outside = up.x * out.x + up.y * out.y > 0.0;
    // Inside the bend the ends of the arc rise towards the straight baseline by this much.
    let half_mm = wanted.label.width_mm(style) / 2.0;
    let radius = wanted.radius_mm;
    let distance_mm = if is_outside {
        radius + wanted.label.baseline_mm(style)
    } else if half_mm < radius {
        (radius * radius - half_mm * half_mm).sqrt() - wanted.label.baseline_mm(style)
    } else {
        -wanted.label.baseline_mm(style)
    };
    wanted
        .label
        .centred(polar(wanted.apex, distance_mm, text_deg), reads_deg, style)
}
