//! The paper: its size, frame, centring marks and title block.

use crate::drawing::cell::CellError;
use crate::drawing::extent::Extent;
use crate::drawing::line_type::{LineGroup, LineType};
use crate::drawing::path::Path;
use crate::drawing::scene::{Role, Scene, Shape};
use crate::drawing::title_block::{HEIGHT_MM, TitleBlock, WIDTH_MM, title_block};
use crate::geometry::Point;

/// Sheets of ISO 216 that a workshop printer takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SheetFormat {
    /// 297 x 210 mm.
    A4Landscape,
    /// 210 x 297 mm.
    A4Portrait,
    /// 420 x 297 mm.
    A3Landscape,
}

/// A framed sheet and where there is room on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Frame, marks and title block.
    pub scene: Scene,
    /// Inside of the frame, mm.
    pub frame: Extent,
    /// The title block, mm.
    pub title_block: Extent,
    /// Room over the title block, over the whole width, mm.
    pub field: Extent,
    /// Room beside the title block, mm; none where it takes the whole width.
    pub beside: Option<Extent>,
}

/// Filing margin on the left, mm (ISO 5457, from memory; public excerpts agree).
const LEFT_BORDER_MM: f64 = 20.0;

/// Border on the other three sides, mm (ISO 5457, from memory; public excerpts agree).
const BORDER_MM: f64 = 10.0;

/// How far centring marks reach past the frame to either side, mm. ISO 5457 has them begin in the border
/// and end inside the field; the length is from memory and not confirmed.
const MARK_MM: f64 = 5.0;

/// Room kept free along the frame, so that no view touches it or a centring mark, mm.
const INSET_MM: f64 = 5.0;

impl SheetFormat {
    /// Every format.
    pub const ALL: [Self; 3] = [Self::A4Landscape, Self::A4Portrait, Self::A3Landscape];

    /// Width and height, mm.
    #[must_use]
    pub fn size_mm(self) -> (f64, f64) {
        match self {
            Self::A4Landscape => (297.0, 210.0),
            Self::A4Portrait => (210.0, 297.0),
            Self::A3Landscape => (420.0, 297.0),
        }
    }

    /// The line widths for it (common practice: 0.5 on A4, 0.7 on A3).
    #[must_use]
    pub fn line_group(self) -> LineGroup {
        match self {
            Self::A4Landscape | Self::A4Portrait => LineGroup::Half,
            Self::A3Landscape => LineGroup::SevenTenths,
        }
    }

    /// The words for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::A4Landscape => "A4 landscape",
            Self::A4Portrait => "A4 portrait",
            Self::A3Landscape => "A3 landscape",
        }
    }

    /// Inside of the frame, mm.
    #[must_use]
    pub fn frame(self) -> Extent {
        let (width, height) = self.size_mm();
        Extent {
            left: LEFT_BORDER_MM,
            bottom: BORDER_MM,
            right: width - BORDER_MM,
            top: height - BORDER_MM,
        }
    }
}

/// A sheet with frame, centring marks and title block.
///
/// # Errors
/// When a text of the title block fits into its field at no standard height.
pub fn sheet(format: SheetFormat, block: &TitleBlock) -> Result<Sheet, CellError> {
    let (width, height) = format.size_mm();
    let frame = format.frame();
    let block_area = Extent {
        left: frame.right - WIDTH_MM,
        bottom: frame.bottom,
        right: frame.right,
        top: frame.bottom + HEIGHT_MM,
    };
    let mut scene = Scene::sheet(width, height);
    let mut wide = |path| {
        scene.draw(Shape::Path(path), LineType::ContinuousWide, Role::Frame);
    };
    wide(Path::polygon(frame.corners()));
    for mark in centring_marks(&frame, (width, height), &block_area) {
        wide(mark);
    }
    let lower_right = Point {
        x: frame.right,
        y: frame.bottom,
    };
    scene.extend(title_block(block, lower_right)?);
    let inside = frame.grown(-INSET_MM);
    let beside = Extent {
        right: block_area.left - INSET_MM,
        top: block_area.top,
        ..inside
    };
    Ok(Sheet {
        scene,
        frame,
        title_block: block_area,
        field: Extent {
            bottom: block_area.top + INSET_MM,
            ..inside
        },
        beside: (beside.width() > 0.0).then_some(beside),
    })
}

/// Four short lines on the axes of the sheet; one that would run into the title block ends at the frame.
fn centring_marks(frame: &Extent, size_mm: (f64, f64), block: &Extent) -> Vec<Path> {
    let middle = Point {
        x: size_mm.0 / 2.0,
        y: size_mm.1 / 2.0,
    };
    let point = |x, y| Point { x, y };
    let ends = [
        (
            point(frame.left - MARK_MM, middle.y),
            point(frame.left + MARK_MM, middle.y),
            point(frame.left, middle.y),
        ),
        (
            point(frame.right + MARK_MM, middle.y),
            point(frame.right - MARK_MM, middle.y),
            point(frame.right, middle.y),
        ),
        (
            point(middle.x, frame.top + MARK_MM),
            point(middle.x, frame.top - MARK_MM),
            point(middle.x, frame.top),
        ),
        (
            point(middle.x, frame.bottom - MARK_MM),
            point(middle.x, frame.bottom + MARK_MM),
            point(middle.x, frame.bottom),
        ),
    ];
    ends.into_iter()
        .map(|(outer, inner, at_frame)| {
            let clashes = Extent::between(inner, at_frame).grown(0.1).overlaps(block);
            Path::line(outer, if clashes { at_frame } else { inner })
        })
        .collect()
}

#[cfg(test)]
#[path = "sheet_tests.rs"]
mod tests;
