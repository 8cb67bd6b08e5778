//! The dimensions of one side of a view, placed.

use crate::drawing::annotation::Annotation;
use crate::drawing::dimension::{Ends, Label, Linear, Style, linear};
use crate::drawing::extent::Extent;
use crate::drawing::tiers::{Request, Side, place};
use crate::geometry::Point;

/// A side of a view.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Edge {
    /// Above: level dimensions.
    Top,
    /// Below: level dimensions.
    Bottom,
    /// To the left: upright dimensions.
    Left,
    /// To the right: upright dimensions.
    Right,
}

/// A dimension wanted on a side.
#[derive(Debug, Clone, PartialEq)]
pub struct SideDimension {
    /// Its number, given back; each only once on a side.
    pub id: u32,
    /// First point on the part, mm on paper.
    pub from: Point,
    /// Second point on the part, mm on paper.
    pub to: Point,
    /// What it says.
    pub label: Label,
    /// Which ends are on the part.
    pub ends: Ends,
}

/// A dimension in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct SideDrawn {
    /// Its number.
    pub id: u32,
    /// Its tier, 0 nearest to the part.
    pub tier: usize,
    /// The dimension in its place.
    pub line: Linear,
    /// What is drawn there.
    pub drawn: Annotation,
}

impl Edge {
    /// Direction in which distances along the side are measured, degrees.
    #[must_use]
    pub fn direction_deg(self) -> f64 {
        match self {
            Self::Top | Self::Bottom => 0.0,
            Self::Left | Self::Right => 90.0,
        }
    }

    /// Whether lettering lies away from the part: it stands above level lines and left of upright ones.
    #[must_use]
    pub fn text_outward(self) -> bool {
        match self {
            Self::Top | Self::Left => true,
            Self::Bottom | Self::Right => false,
        }
    }

    /// The coordinate along the side.
    fn along(self, point: Point) -> f64 {
        match self {
            Self::Top | Self::Bottom => point.x,
            Self::Left | Self::Right => point.y,
        }
    }

    /// The coordinate away from the part.
    fn outward(self, point: Point) -> f64 {
        match self {
            Self::Top => point.y,
            Self::Bottom => -point.y,
            Self::Left => -point.x,
            Self::Right => point.x,
        }
    }

    /// A point moved in or out until it is so far out.
    fn with_depth(self, point: Point, outward_mm: f64) -> Point {
        match self {
            Self::Top => Point {
                y: outward_mm,
                ..point
            },
            Self::Bottom => Point {
                y: -outward_mm,
                ..point
            },
            Self::Left => Point {
                x: -outward_mm,
                ..point
            },
            Self::Right => Point {
                x: outward_mm,
                ..point
            },
        }
    }

    /// A point of a dimension line so far from the view.
    fn line_point(self, view: &Extent, offset_mm: f64) -> Point {
        let corner = |x, y| Point { x, y };
        match self {
            Self::Top => corner(view.left, view.top + offset_mm),
            Self::Bottom => corner(view.left, view.bottom - offset_mm),
            Self::Left => corner(view.left - offset_mm, view.bottom),
            Self::Right => corner(view.right + offset_mm, view.bottom),
        }
    }
}

impl SideDimension {
    /// A dimension with both ends on the part.
    #[must_use]
    pub fn new(id: u32, from: Point, to: Point, label: Label) -> Self {
        Self {
            id,
            from,
            to,
            label,
            ends: Ends::Both,
        }
    }

    fn request(&self, edge: Edge, style: &Style) -> Request {
        let (from, to) = (edge.along(self.from), edge.along(self.to));
        let both = self.ends == Ends::Both;
        Request {
            id: self.id,
            low_mm: from.min(to),
            high_mm: from.max(to),
            on_part_low: both || to < from,
            on_part_high: both || to >= from,
            text_mm: self.label.width_mm(style),
            rise_mm: self.label.baseline_mm(style) + self.label.rise_mm(style),
        }
    }
}

/// Places for the dimensions of one side of a view that covers `view` on paper.
#[must_use]
pub fn side(wanted: &[SideDimension], edge: Edge, view: &Extent, style: &Style) -> Vec<SideDrawn> {
    let requests: Vec<Request> = wanted
        .iter()
        .map(|dimension| dimension.request(edge, style))
        .collect();
    let [first, _, last, _] = view.corners();
    let ground = Side {
        part_low_mm: edge.along(first),
        part_high_mm: edge.along(last),
        text_outward: edge.text_outward(),
    };
    let placed = place(&requests, &ground, style);
    let mut lines: Vec<Linear> = placed
        .iter()
        .zip(wanted)
        .map(|(placed, dimension)| Linear {
            from: dimension.from,
            to: dimension.to,
            direction_deg: edge.direction_deg(),
            through: edge.line_point(view, placed.offset_mm),
            label: dimension.label.clone(),
            text_centre_mm: Some(placed.text_centre_mm),
            ends: dimension.ends,
            extensions: [true, true],
        })
        .collect();
    share_extension_lines(&mut lines, edge);
    placed
        .iter()
        .zip(&lines)
        .map(|(placed, line)| SideDrawn {
            id: placed.id,
            tier: placed.tier,
            line: line.clone(),
            drawn: linear(line, style),
        })
        .collect()
}

/// Where several dimensions have an extension line at the same place, the one farthest out draws it
/// from the point deepest in the part, and the others leave it to that one.
fn share_extension_lines(lines: &mut [Linear], edge: Edge) {
    let all: Vec<ExtensionLine> = lines
        .iter()
        .enumerate()
        .flat_map(|(index, line)| ExtensionLine::of(index, line, edge))
        .collect();
    for own in &all {
        let same = all.iter().filter(|other| other.is_at_place_of(own));
        let deepest = same
            .clone()
            .map(|other| other.depth_mm)
            .fold(own.depth_mm, f64::min);
        let farthest = same.fold(*own, |far, other| {
            if other.line_mm > far.line_mm {
                *other
            } else {
                far
            }
        });
        let Some(line) = lines.get_mut(own.index) else {
            continue;
        };
        // Two that end equally far out are drawn by the first.
        let is_drawn =
            farthest.line_mm <= own.line_mm && !all.iter().any(|other| own.repeats(other));
        let end = if own.at_to {
            &mut line.to
        } else {
            &mut line.from
        };
        *end = edge.with_depth(*end, deepest);
        let [at_from, at_to] = &mut line.extensions;
        *(if own.at_to { at_to } else { at_from }) = is_drawn;
    }
}

/// An extension line of a dimension.
#[derive(Clone, Copy)]
struct ExtensionLine {
    /// Which dimension.
    index: usize,
    /// Whether it stands at `to`.
    at_to: bool,
    /// Place along the side, mm.
    place_mm: f64,
    /// How far out the part ends there, mm.
    depth_mm: f64,
    /// How far out the dimension line is, mm.
    line_mm: f64,
}

impl ExtensionLine {
    fn of(index: usize, line: &Linear, edge: Edge) -> impl Iterator<Item = Self> + use<> {
        let end = |at_to: bool, point: Point| Self {
            index,
            at_to,
            place_mm: edge.along(point),
            depth_mm: edge.outward(point),
            line_mm: edge.outward(line.through),
        };
        let from = (line.ends == Ends::Both).then(|| end(false, line.from));
        from.into_iter().chain([end(true, line.to)])
    }

    fn is_at_place_of(&self, other: &Self) -> bool {
        const SAME_PLACE_MM: f64 = 1e-6;
        (self.place_mm - other.place_mm).abs() < SAME_PLACE_MM
    }

    /// True when an earlier dimension draws the very same line.
    fn repeats(&self, other: &Self) -> bool {
        self.is_at_place_of(other)
            && (other.index, other.at_to) < (self.index, self.at_to)
            && other.line_mm >= self.line_mm
    }
}

#[cfg(test)]
#[path = "dimension_side_tests.rs"]
mod tests;
