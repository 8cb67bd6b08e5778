//! The title block: who, what, when, and the general notes.

use crate::drawing::cell::{Cell, CellError, USUAL_HEIGHTS_MM};
use crate::drawing::dimension::Style;
use crate::drawing::extent::Extent;
use crate::drawing::line_type::LineType;
use crate::drawing::number::DecimalMark;
use crate::drawing::path::Path;
use crate::drawing::scene::{Item, Role, Shape};
use crate::drawing::signs::edge::{EdgeKind, edge_sign, edge_sign_width_mm};
use crate::drawing::signs::projection::{Projection, projection_sign};
use crate::drawing::signs::surface::{Removal, SurfaceSign, surface_sign};
use crate::geometry::Point;

/// What the title block says. The first eight are those that ISO 7200 makes mandatory.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TitleBlock {
    /// Legal owner.
    pub owner: String,
    /// Identification number.
    pub identification: String,
    /// Date of issue.
    pub issued: String,
    /// Sheet number, such as "1/2".
    pub sheet: String,
    /// Title.
    pub title: String,
    /// Approval person.
    pub approved_by: String,
    /// Creator.
    pub created_by: String,
    /// Document type.
    pub document_type: String,
    /// Supplementary title.
    pub supplement: String,
    /// Revision.
    pub revision: String,
    /// Status of the document.
    pub status: String,
    /// Material.
    pub material: String,
    /// Finish.
    pub finish: String,
    /// Mass with its unit.
    pub mass: String,
    /// Scale of the main view.
    pub scale: String,
    /// General tolerances.
    pub general_tolerances: String,
    /// General surface texture, such as "Ra 3,2"; empty for none.
    pub surface: String,
    /// Size at outside edges, such as "−0,2"; empty for none.
    pub outside_edges: String,
    /// Size at inside corners, such as "+0,2"; empty for none.
    pub inside_edges: String,
    /// How the views are arranged.
    pub projection: Projection,
}

/// Width of the block, mm (ISO 7200, from memory).
pub const WIDTH_MM: f64 = 180.0;

/// Heights of the rows from the top, mm.
const ROWS_MM: [f64; 5] = [12.0, 12.0, 11.0, 11.0, 11.0];

/// Height of the block, mm.
pub const HEIGHT_MM: f64 = 57.0;

/// Lettering height of the signs in the block, mm.
const SIGN_MM: f64 = 2.5;

/// Heights of the title, mm (ISO 3098-1 series).
const TITLE_HEIGHTS_MM: &[f64] = &[5.0, 3.5, 2.5, 1.8];

/// The block with its lower right corner at a point.
///
/// # Errors
/// When a text fits into its field at no standard height.
pub fn title_block(block: &TitleBlock, lower_right: Point) -> Result<Vec<Item>, CellError> {
    let corner = Point {
        x: lower_right.x - WIDTH_MM,
        y: lower_right.y,
    };
    let mut items = Vec::new();
    for cell in cells(block, corner) {
        items.extend(cell.draw()?);
    }
    let [surface, edges, projection] = sign_rooms(corner);
    items.extend(surface_note(block, &surface)?);
    items.extend(edge_note(block, &edges)?);
    let middle = projection.room().centre();
    items.extend(projection_sign(block.projection, middle, SIGN_MM));
    items.push(Item::new(
        Shape::Path(Path::polygon(
            Extent::sized(corner, WIDTH_MM, HEIGHT_MM).corners(),
        )),
        LineType::ContinuousWide,
        Role::Frame,
    ));
    Ok(items)
}

/// The rectangle of rows `first` to `last` and of a stretch from left to right, mm from the corner.
fn area(corner: Point, rows: (usize, usize), left_mm: f64, width_mm: f64) -> Extent {
    let above: f64 = ROWS_MM.iter().take(rows.0).sum();
    let height: f64 = ROWS_MM.iter().take(rows.1 + 1).skip(rows.0).sum();
    let at = Point {
        x: corner.x + left_mm,
        y: corner.y + HEIGHT_MM - above - height,
    };
    Extent::sized(at, width_mm, height)
}

/// A lettered field: first and last row, left edge and width (mm), caption, and what it says.
type Field = (
    (usize, usize),
    f64,
    f64,
    &'static str,
    fn(&TitleBlock) -> &str,
);

/// The lettered fields from the top, left to right.
const FIELDS: [Field; 17] = [
    ((0, 0), 0.0, 58.0, "Material", |block| &block.material),
    ((0, 0), 58.0, 42.0, "Finish", |block| &block.finish),
    ((0, 0), 100.0, 24.0, "Mass", |block| &block.mass),
    ((1, 1), 0.0, 58.0, "General tolerances", |block| {
        &block.general_tolerances
    }),
    ((1, 1), 58.0, 22.0, "Scale", |block| &block.scale),
    ((1, 1), 80.0, 20.0, "Lengths in", |_| "mm"),
    ((1, 1), 124.0, 56.0, "Document type", |block| {
        &block.document_type
    }),
    ((2, 3), 0.0, 50.0, "Legal owner", |block| &block.owner),
    ((2, 2), 50.0, 40.0, "Created by", |block| &block.created_by),
    ((3, 3), 50.0, 40.0, "Approved by", |block| {
        &block.approved_by
    }),
    ((2, 2), 90.0, 90.0, TITLE, |block| &block.title),
    ((3, 3), 90.0, 90.0, "Supplementary title", |block| {
        &block.supplement
    }),
    ((4, 4), 0.0, 50.0, "Status", |block| &block.status),
    ((4, 4), 50.0, 65.0, "Identification number", |block| {
        &block.identification
    }),
    ((4, 4), 115.0, 16.0, "Revision", |block| &block.revision),
    ((4, 4), 131.0, 33.0, "Date of issue", |block| &block.issued),
    ((4, 4), 164.0, 16.0, "Sheet", |block| &block.sheet),
];

/// The field whose lettering may be larger than the others'.
const TITLE: &str = "Title";

/// All fields.
fn cells(block: &TitleBlock, corner: Point) -> Vec<Cell> {
    FIELDS
        .into_iter()
        .map(|(rows, left_mm, width_mm, caption, text)| Cell {
            area: area(corner, rows, left_mm, width_mm),
            caption,
            text: text(block).to_owned(),
            heights_mm: if caption == TITLE {
                TITLE_HEIGHTS_MM
            } else {
                USUAL_HEIGHTS_MM
            },
        })
        .chain(sign_rooms(corner))
        .collect()
}

/// The fields that hold signs: surface texture, edges, projection.
fn sign_rooms(corner: Point) -> [Cell; 3] {
    let field = |rows, left_mm, width_mm, caption| Cell {
        area: area(corner, rows, left_mm, width_mm),
        caption,
        text: String::new(),
        heights_mm: USUAL_HEIGHTS_MM,
    };
    [
        field((0, 0), 124.0, 28.0, "Surfaces"),
        field((0, 0), 152.0, 28.0, "Edges ISO 13715"),
        field((1, 1), 100.0, 24.0, "Projection"),
    ]
}

fn sign_style() -> Style {
    Style {
        height_mm: SIGN_MM,
        mark: DecimalMark::Comma,
        role: Role::Frame,
    }
}

/// The general surface texture in its field.
fn surface_note(block: &TitleBlock, cell: &Cell) -> Result<Vec<Item>, CellError> {
    if block.surface.is_empty() {
        return Ok(Vec::new());
    }
    let room = cell.room();
    let mut sign = SurfaceSign {
        at: Point { x: 0.0, y: 0.0 },
        rotation_deg: 0.0,
        removal: Removal::Required,
        requirement: block.surface.clone(),
    };
    let (width, height, left) = sign.size_mm(&sign_style());
    refuse_over(width, room.width(), cell, &block.surface)?;
    sign.at = Point {
        x: room.left + left,
        y: room.bottom + (room.height() - height) / 2.0,
    };
    Ok(surface_sign(&sign, &sign_style()).items)
}

/// The general edge note in its field: outside edges above, inside corners below.
fn edge_note(block: &TitleBlock, cell: &Cell) -> Result<Vec<Item>, CellError> {
    let room = cell.room();
    let half = room.width() / 2.0;
    let mut items = Vec::new();
    for (kind, size, left) in [
        (EdgeKind::External, &block.outside_edges, room.left),
        (EdgeKind::Internal, &block.inside_edges, room.left + half),
    ] {
        if size.is_empty() {
            continue;
        }
        let style = Style {
            height_mm: 1.8,
            ..sign_style()
        };
        refuse_over(edge_sign_width_mm(size, &style), half, cell, size)?;
        let at = Point {
            x: left,
            y: room.bottom + 2.0,
        };
        items.extend(edge_sign(kind, at, size, &style).items);
    }
    Ok(items)
}

/// An error when a sign is wider than its room.
fn refuse_over(width_mm: f64, limit_mm: f64, cell: &Cell, text: &str) -> Result<(), CellError> {
    if width_mm <= limit_mm {
        return Ok(());
    }
    Err(CellError::TooLong {
        caption: cell.caption,
        text: text.to_owned(),
    })
}

#[cfg(test)]
#[path = "title_block_tests.rs"]
mod tests;
