//! The measures that all dimensions of a drawing share.

use crate::drawing::number::DecimalMark;
use crate::drawing::scene::Role;

/// Clear space between the outline and an extension line, mm (ISO 129-1 allows none or about
/// eight line widths; 1 mm is common practice).
pub const EXTENSION_GAP_MM: f64 = 1.0;

/// How far an extension line goes past the dimension line, mm (ISO 129-1: about eight line widths).
pub const EXTENSION_OVERSHOOT_MM: f64 = 2.0;

/// Clear space between the dimension line and the lettering above it, mm (common practice, no source).
pub const TEXT_GAP_MM: f64 = 1.0;

/// Least distance of the first dimension line from the outline, mm (common practice: 10 mm or more).
pub const FIRST_LINE_MM: f64 = 10.0;

/// Least distance of neighbouring dimension lines, mm (common practice: 8 mm with 3.5 mm lettering).
pub const LINE_PITCH_MM: f64 = 8.0;

/// What all dimensions of one drawing have in common.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Style {
    /// Lettering height, mm; arrowheads are as long.
    pub height_mm: f64,
    /// Comma or point.
    pub mark: DecimalMark,
    /// What the items stand for.
    pub role: Role,
}

impl Default for Style {
    /// Lettering of 3.5 mm and the decimal comma.
    fn default() -> Self {
        Self {
            height_mm: 3.5,
            mark: DecimalMark::Comma,
            role: Role::Dimension,
        }
    }
}

impl Style {
    /// Length of an arrowhead, mm: the lettering height.
    #[must_use]
    pub fn arrow_mm(&self) -> f64 {
        self.height_mm
    }

    /// Length of the line behind an arrow that points inward from outside, arrowhead included, mm.
    #[must_use]
    pub fn tail_mm(&self) -> f64 {
        2.0 * self.height_mm
    }

    /// Whether a span is too short for two arrowheads between its ends, mm.
    #[must_use]
    pub fn is_cramped(&self, span_mm: f64) -> bool {
        // The heads and a stretch of line between them that still shows as a line.
        const LINE_LEFT_MM: f64 = 1.0;
        span_mm < 2.0_f64.mul_add(self.arrow_mm(), LINE_LEFT_MM)
    }

    /// Room that lettering between both ends of a span leaves at each: for the arrowhead, or where the
    /// arrows stand outside for the extension line, mm.
    #[must_use]
    pub fn end_room_mm(&self, span_mm: f64) -> f64 {
        // Half the usual clearance: nothing but the dimension's own line is there (common practice, no source).
        const OWN_LINE_MM: f64 = 0.5;
        if self.is_cramped(span_mm) {
            OWN_LINE_MM
        } else {
            self.arrow_mm()
        }
    }
}
