//! The one picture that the window and every export paint.
//!
//! All coordinates are mm with y upward. A sheet has a size and its origin at the lower left corner;
//! a view in the lengths of the part has none. Lettering heights and hatch spacings are always mm on
//! the paper: placing a scene at another scale moves them and leaves their size alone.

use crate::drawing::extent::Extent;
use crate::drawing::hatch::Hatch;
use crate::drawing::lettering::Text;
use crate::drawing::line_type::{LineGroup, LineType, dashes};
use crate::drawing::path::Path;
use crate::drawing::placement::Placement;
use crate::geometry::Point;

/// Width and height of a sheet of paper, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PaperSize {
    /// Width, mm.
    pub width_mm: f64,
    /// Height, mm.
    pub height_mm: f64,
}

/// A picture: things to draw in the order in which they are painted.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Scene {
    /// The sheet, or none for a view that is as large as what it holds.
    pub size: Option<PaperSize>,
    /// What is drawn, first things first.
    pub items: Vec<Item>,
}

/// One thing in a picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// What it looks like.
    pub shape: Shape,
    /// How its lines are drawn and what they stand for.
    pub pen: Pen,
    /// The number of the feature of the part that it shows, for picking on screen.
    pub tag: Option<u32>,
}

/// Line type and meaning.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Pen {
    /// Line type of ISO 128-2.
    pub line: LineType,
    /// What the item stands for; a window may colour by it.
    pub role: Role,
}

/// What an item stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Role {
    /// Edges of the ring.
    Ring,
    /// Cut metal of the ring.
    RingHatch,
    /// The lens and its parts.
    Lens,
    /// The camera body and its parts.
    Body,
    /// Axes and pitch circles.
    Axis,
    /// Background rulings.
    Grid,
    /// Dimensions with their lettering.
    Dimension,
    /// Notes, signs and view titles.
    Annotation,
    /// Sheet frame and title block.
    Frame,
    /// A place pointed at.
    Highlight,
    /// Edges out of sight.
    Hidden,
    /// Stop-down pin and lock pin.
    Pin,
    /// Rays of light.
    Light,
    /// Metal that the second of two compared rings has more.
    Added,
    /// Metal that the second of two compared rings has less.
    Removed,
}

/// What an item looks like.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// Lines and arcs, drawn along their middle.
    Path(Path),
    /// A full circle, drawn along its middle.
    Circle {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius_mm: f64,
    },
    /// A circular arc, drawn along its middle.
    Arc {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius_mm: f64,
        /// Where it starts, degrees counter-clockwise from x.
        start_deg: f64,
        /// How far it turns, degrees; positive counter-clockwise.
        sweep_deg: f64,
    },
    /// An area filled inside its loops; a loop inside a loop is a hole.
    Fill {
        /// Closed paths.
        loops: Vec<Path>,
        /// How dark.
        tone: Tone,
    },
    /// Section lines.
    Hatch(Hatch),
    /// Lettering.
    Text(Text),
}

/// How dark an area is filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Tone {
    /// As dark as the lines: arrowheads.
    Solid,
    /// A light tint under lines.
    Tint,
}

/// Sheet frames are 0.7 mm wide in every line group (ISO 5457, from memory).
const FRAME_WIDTH_MM: f64 = 0.7;

impl Pen {
    /// A pen from its two parts.
    #[must_use]
    pub fn new(line: LineType, role: Role) -> Self {
        Self { line, role }
    }

    /// Line width on paper, mm. The wide lines of the sheet frame keep their own width.
    #[must_use]
    pub fn width_mm(&self, group: LineGroup) -> f64 {
        if self.role == Role::Frame && self.line.is_wide() {
            FRAME_WIDTH_MM
        } else {
            self.line.width_mm(group)
        }
    }
}

impl Item {
    /// An item without a feature number.
    #[must_use]
    pub fn new(shape: Shape, line: LineType, role: Role) -> Self {
        Self {
            shape,
            pen: Pen::new(line, role),
            tag: None,
        }
    }

    /// The same item with a feature number.
    #[must_use]
    pub fn tagged(self, tag: u32) -> Self {
        Self {
            tag: Some(tag),
            ..self
        }
    }

    /// The rectangle it covers, line widths left out; none when it draws nothing.
    #[must_use]
    pub fn extent(&self) -> Option<Extent> {
        self.shape.extent()
    }

    /// The drawn strokes with dashes and hatching carried out, each to be drawn as a continuous
    /// line with butt ends; empty for filled areas and lettering.
    #[must_use]
    pub fn strokes(&self, group: LineGroup) -> Vec<Path> {
        let Some(path) = self.shape.centre_line() else {
            return match &self.shape {
                Shape::Hatch(hatch) => hatch.lines(),
                Shape::Path(_)
                | Shape::Circle { .. }
                | Shape::Arc { .. }
                | Shape::Fill { .. }
                | Shape::Text(_) => Vec::new(),
            };
        };
        let length = path.length_mm();
        match dashes(length, self.pen.line, self.pen.width_mm(group), path.closed).as_slice() {
            [_] => vec![path],
            several => several
                .iter()
                .map(|&(from, to)| path.part(from, to))
                .collect(),
        }
    }
}

impl Shape {
    /// The line along the middle of what is drawn; none for areas, hatching and lettering.
    #[must_use]
    pub fn centre_line(&self) -> Option<Path> {
        match self {
            Self::Path(path) => Some(path.clone()),
            Self::Circle { centre, radius_mm } => Some(Path::circle(*centre, *radius_mm)),
            Self::Arc {
                centre,
                radius_mm,
                start_deg,
                sweep_deg,
            } => Some(Path::arc(*centre, *radius_mm, *start_deg, *sweep_deg)),
            Self::Fill { .. } | Self::Hatch(_) | Self::Text(_) => None,
        }
    }

    /// The rectangle it covers, line widths left out; none when it draws nothing.
    #[must_use]
    pub fn extent(&self) -> Option<Extent> {
        match self {
            Self::Path(path) => path.extent(),
            Self::Circle { centre, radius_mm } => {
                Some(Extent::between(*centre, *centre).grown(*radius_mm))
            }
            Self::Arc { .. } => self.centre_line().and_then(|path| path.extent()),
            Self::Fill { loops, .. } => extent_of(loops),
            Self::Hatch(hatch) => extent_of(&hatch.loops),
            Self::Text(text) => Some(text.text_box().extent()),
        }
    }

    /// The shape after a placement; lettering and hatch spacing keep their size on paper.
    #[must_use]
    pub fn placed(&self, placement: &Placement) -> Self {
        match self {
            Self::Path(path) => Self::Path(path.placed(placement)),
            Self::Circle { centre, radius_mm } => Self::Circle {
                centre: placement.point(*centre),
                radius_mm: radius_mm * placement.scale,
            },
            Self::Arc {
                centre,
                radius_mm,
                start_deg,
                sweep_deg,
            } => Self::Arc {
                centre: placement.point(*centre),
                radius_mm: radius_mm * placement.scale,
                start_deg: placement.angle_deg(*start_deg),
                sweep_deg: sweep_deg * placement.hand(),
            },
            Self::Fill { loops, tone } => Self::Fill {
                loops: loops.iter().map(|path| path.placed(placement)).collect(),
                tone: *tone,
            },
            Self::Hatch(hatch) => Self::Hatch(hatch.placed(placement)),
            Self::Text(text) => Self::Text(text.placed(placement)),
        }
    }
}

/// The rectangle round some paths.
fn extent_of(paths: &[Path]) -> Option<Extent> {
    paths.iter().filter_map(Path::extent).reduce(Extent::union)
}

impl Scene {
    /// An empty sheet.
    #[must_use]
    pub fn sheet(width_mm: f64, height_mm: f64) -> Self {
        Self {
            size: Some(PaperSize {
                width_mm,
                height_mm,
            }),
            items: Vec::new(),
        }
    }

    /// An empty view.
    #[must_use]
    pub fn view() -> Self {
        Self::default()
    }

    /// Adds a shape.
    pub fn draw(&mut self, shape: Shape, line: LineType, role: Role) {
        self.items.push(Item::new(shape, line, role));
    }

    /// Adds items at the end.
    pub fn extend(&mut self, items: impl IntoIterator<Item = Item>) {
        self.items.extend(items);
    }

    /// The rectangle round everything drawn, line widths left out; none when nothing is.
    #[must_use]
    pub fn bounds(&self) -> Option<Extent> {
        self.items
            .iter()
            .filter_map(Item::extent)
            .reduce(Extent::union)
    }

    /// The rectangle to show: the sheet, or else what is drawn; none for an empty view.
    #[must_use]
    pub fn frame(&self) -> Option<Extent> {
        match self.size {
            Some(size) => Some(Extent::sized(
                Placement::IDENTITY.origin,
                size.width_mm,
                size.height_mm,
            )),
            None => self.bounds(),
        }
    }

    /// A view of the same things after a placement; lettering and hatch spacing keep their size.
    #[must_use]
    pub fn transformed(&self, placement: &Placement) -> Self {
        Self {
            size: None,
            items: self
                .items
                .iter()
                .map(|item| Item {
                    shape: item.shape.placed(placement),
                    ..item.clone()
                })
                .collect(),
        }
    }

    /// Adds a view at a scale (paper mm per mm of the part) with its origin at a point of this sheet.
    pub fn place(&mut self, view: &Self, scale: f64, origin: Point) {
        let placement = Placement {
            scale,
            origin,
            ..Placement::IDENTITY
        };
        self.items.extend(view.transformed(&placement).items);
    }
}

#[cfg(test)]
#[path = "scene_tests.rs"]
mod tests;
