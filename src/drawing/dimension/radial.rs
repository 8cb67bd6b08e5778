//! Radii.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::arrow::arrowhead;
use crate::drawing::dimension::label::Label;
use crate::drawing::dimension::leader::{Leader, Terminator, leader};
use crate::drawing::dimension::style::Style;
use crate::drawing::placement::{polar, readable_deg};
use crate::geometry::Point;

/// On which side of the arc the lettering of a radius stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RadialSide {
    /// Along the line from centre to arc, for large radii.
    Inside,
    /// On a landing outside, so far from the arc, mm; for corner radii.
    Outside {
        /// Length of the slanted line, mm.
        length_mm: f64,
    },
    /// On a landing on the side of the centre, so far from the arc, mm; for fillets, where outside is metal.
    ThroughCentre {
        /// Length of the slanted line, mm.
        length_mm: f64,
    },
}

/// A radius to be drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Radial {
    /// Centre of the arc, mm.
    pub centre: Point,
    /// Radius on paper, mm.
    pub radius_mm: f64,
    /// Where on the arc the arrow points, degrees counter-clockwise from x.
    pub angle_deg: f64,
    /// What it says.
    pub label: Label,
    /// Where the lettering stands.
    pub side: RadialSide,
}

/// Line, arrow and lettering of a radius.
#[must_use]
pub fn radial(wanted: &Radial, style: &Style) -> Annotation {
    let tip = polar(wanted.centre, wanted.radius_mm, wanted.angle_deg);
    let on_landing = |length_mm: f64, away_deg: f64| {
        leader(
            &Leader {
                tip,
                elbow: polar(tip, length_mm, away_deg),
                lines: vec![wanted.label.clone()],
                terminator: Terminator::Arrow,
            },
            style,
        )
    };
    match wanted.side {
        RadialSide::Outside { length_mm } => on_landing(length_mm, wanted.angle_deg),
        RadialSide::ThroughCentre { length_mm } => on_landing(length_mm, wanted.angle_deg + 180.0),
        RadialSide::Inside => {
            let reads_deg = readable_deg(wanted.angle_deg);
            let middle = polar(
                wanted.centre,
                (wanted.radius_mm - style.arrow_mm()) / 2.0,
                wanted.angle_deg,
            );
            let mut drawn = Annotation::default();
            drawn.narrow_line(wanted.centre, tip, style.role);
            drawn.join(arrowhead(tip, wanted.angle_deg, style));
            drawn.join(wanted.label.centred(
                polar(middle, wanted.label.baseline_mm(style), reads_deg + 90.0),
                reads_deg,
                style,
            ));
            drawn
        }
    }
}
