//! What every painter puts on paper: areas, continuous lines and lettering, dashes and hatching carried out.

use kurbo::BezPath;

use crate::drawing::curves::bezier;
use crate::drawing::extent::Extent;
use crate::drawing::lettering::Text;
use crate::drawing::line_type::LineGroup;
use crate::drawing::scene::{Item, Scene, Shape, Tone};

/// Shade of a tint, 0 black to 1 white.
pub const TINT: f32 = 0.88;

/// Where two lines meet, the corner is cut off when it would stand out further than this many half line
/// widths; the same in every painter, so that all draw the same corner.
pub const MITER_LIMIT: f32 = 4.0;

/// Room left round a view that has no sheet, mm.
const MARGIN_MM: f64 = 2.0;

/// A thing to paint, in mm with y upward.
#[derive(Debug, Clone)]
pub enum Ink<'a> {
    /// An area to fill; a loop inside a loop is a hole.
    Area {
        /// Its border.
        curves: BezPath,
        /// How dark.
        tone: Tone,
    },
    /// A black line with butt ends.
    Line {
        /// Its middle.
        curves: BezPath,
        /// Its width, mm.
        width_mm: f64,
    },
    /// A line of black lettering.
    Lettering(&'a Text),
}

/// The things to paint, first things first.
pub fn ink(scene: &Scene, group: LineGroup) -> impl Iterator<Item = Ink<'_>> {
    scene
        .items
        .iter()
        .map(move |item| ink_of(item, group))
        .filter(|ink| match ink {
            Ink::Area { curves, .. } | Ink::Line { curves, .. } => !curves.elements().is_empty(),
            Ink::Lettering(text) => !text.text.trim().is_empty(),
        })
}

fn ink_of(item: &Item, group: LineGroup) -> Ink<'_> {
    match &item.shape {
        Shape::Fill { loops, tone } => Ink::Area {
            curves: loops.iter().flat_map(bezier).collect(),
            tone: *tone,
        },
        Shape::Text(text) => Ink::Lettering(text),
        Shape::Path(_) | Shape::Circle { .. } | Shape::Arc { .. } | Shape::Hatch(_) => Ink::Line {
            curves: item.strokes(group).iter().flat_map(bezier).collect(),
            width_mm: item.pen.width_mm(group),
        },
    }
}

/// The rectangle that goes on paper: the sheet, or what is drawn with a margin; none when nothing is.
#[must_use]
pub fn page(scene: &Scene) -> Option<Extent> {
    match scene.size {
        Some(_) => scene.frame(),
        None => scene.bounds().map(|bounds| bounds.grown(MARGIN_MM)),
    }
}
