//! Geometrical tolerances in their frames.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::{Label, Style};
use crate::drawing::extent::Extent;
use crate::drawing::lettering::width_mm;
use crate::drawing::path::Path;
use crate::drawing::signs;
use crate::geometry::Point;

/// Geometrical characteristics of ISO 1101 that turned and milled rings need.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Characteristic {
    /// Flatness; without datum.
    Flatness,
    /// Parallelism.
    Parallelism,
    /// Perpendicularity.
    Perpendicularity,
    /// Concentricity.
    Concentricity,
    /// Position.
    Position,
    /// Circular run-out.
    CircularRunOut,
    /// Total run-out.
    TotalRunOut,
}

impl Characteristic {
    /// Its sign.
    #[must_use]
    pub fn sign(self) -> char {
        match self {
            Self::Flatness => signs::FLATNESS,
            Self::Parallelism => signs::PARALLELISM,
            Self::Perpendicularity => signs::PERPENDICULARITY,
            Self::Concentricity => signs::CONCENTRICITY,
            Self::Position => signs::POSITION,
            Self::CircularRunOut => signs::CIRCULAR_RUN_OUT,
            Self::TotalRunOut => signs::TOTAL_RUN_OUT,
        }
    }
}

/// A geometrical tolerance.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToleranceFrame {
    /// What is toleranced.
    pub characteristic: Characteristic,
    /// The zone as written, such as "0,02".
    pub zone: String,
    /// Datum letters, in order.
    pub datums: Vec<char>,
}

/// Height of the frame, in lettering heights (ISO 7083, from memory).
const HEIGHT: f64 = 2.0;

/// Room beside the lettering of a compartment, together, in lettering heights (from memory).
const ROOM: f64 = 1.0;

impl ToleranceFrame {
    /// The compartments: what stands in each and how wide it is, mm.
    fn compartments(&self, style: &Style) -> Vec<(String, f64)> {
        let height = style.height_mm;
        let sign = self.characteristic.sign().to_string();
        let cells =
            std::iter::once(self.zone.clone()).chain(self.datums.iter().map(char::to_string));
        let sign_width = (HEIGHT * height).max(width_mm(&sign, height));
        std::iter::once((sign.clone(), sign_width))
            .chain(cells.map(|text| {
                let width = ROOM.mul_add(height, width_mm(&text, height));
                (text, width.max(HEIGHT * height))
            }))
            .collect()
    }

    /// Width of the whole frame, mm.
    #[must_use]
    pub fn width_mm(&self, style: &Style) -> f64 {
        self.compartments(style).iter().map(|cell| cell.1).sum()
    }
}

/// The frame with its left edge's middle at a point; the leader is drawn apart and ends there or at
/// the middle of its right edge.
#[must_use]
pub fn tolerance_frame(frame: &ToleranceFrame, left_middle: Point, style: &Style) -> Annotation {
    let half = HEIGHT * style.height_mm / 2.0;
    let mut drawn = Annotation::default();
    let mut left = left_middle.x;
    for (text, width) in frame.compartments(style) {
        let cell = Extent::sized(
            Point {
                x: left,
                y: left_middle.y - half,
            },
            width,
            2.0 * half,
        );
        drawn.narrow(Path::polygon(cell.corners()), style.role);
        let baseline = Point {
            x: cell.centre().x,
            y: left_middle.y - style.height_mm / 2.0,
        };
        drawn.join(Label::plain(text).centred(baseline, 0.0, style));
        left += width;
    }
    drawn
}
