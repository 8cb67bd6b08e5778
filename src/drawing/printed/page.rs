//! Pages filled with slabs, with the title above and the number below.

use super::slab::{Slab, lettering, slabs};
use super::{HEADING_MM, PrintedSheet, SMALL_MM};
use crate::drawing::extent::Extent;
use crate::drawing::lettering::{Anchor, Text, width_mm};
use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::placement::Placement;
use crate::drawing::scene::{Item, Role, Scene, Shape};
use crate::geometry::Point;

/// The paper: A4 upright (ISO 216), mm.
pub const PAPER_MM: (f64, f64) = (210.0, 297.0);
/// Filing margin on the left, mm (ISO 5457, from memory).
const LEFT_MM: f64 = 20.0;
/// Border on the other sides, mm (ISO 5457, from memory).
const BORDER_MM: f64 = 10.0;
/// From the title's line to the text, mm.
const UNDER_TITLE_MM: f64 = 4.0;
/// Room at the foot of the page, mm.
const FOOT_MM: f64 = 7.0;
/// Width of the text, mm.
pub const TEXT_WIDTH_MM: f64 = PAPER_MM.0 - LEFT_MM - BORDER_MM;

/// Where text stands on a page, mm.
fn field() -> Extent {
    Extent {
        left: LEFT_MM,
        bottom: BORDER_MM + FOOT_MM,
        right: PAPER_MM.0 - BORDER_MM,
        top: PAPER_MM.1 - BORDER_MM - HEADING_MM - 2.0 * UNDER_TITLE_MM,
    }
}

/// The sheet as pages, at least one.
#[must_use]
pub fn pages(sheet: &PrintedSheet) -> Vec<Scene> {
    let all: Vec<Slab> = sheet
        .blocks
        .iter()
        .flat_map(|block| slabs(block, TEXT_WIDTH_MM))
        .collect();
    let filled = filled(&all, field().height());
    let count = filled.len();
    filled
        .into_iter()
        .enumerate()
        .map(|(index, items)| page(sheet, items, index + 1, count))
        .collect()
}

/// The items of each page, from the field's upper left corner.
fn filled(all: &[Slab], room_mm: f64) -> Vec<Vec<Item>> {
    let mut pages: Vec<Vec<Item>> = vec![Vec::new()];
    let mut used = 0.0;
    let mut rest = all;
    while let Some(first) = rest.first() {
        let held = 1 + rest.iter().take_while(|slab| slab.holds_next).count();
        let group = rest.get(..held).unwrap_or(rest);
        let whole: f64 = group.iter().map(|slab| slab.height_mm).sum();
        // A group that no page holds is broken anyway.
        let needed = if whole > room_mm {
            first.height_mm
        } else {
            whole
        };
        if used + needed > room_mm && used > 0.0 {
            pages.push(Vec::new());
            used = 0.0;
        }
        let Some(page) = pages.last_mut() else { break };
        if used <= 0.0 && is_free(first) {
            rest = rest.get(1..).unwrap_or(&[]);
            continue;
        }
        if used <= 0.0
            && let Some(head) = &first.head
        {
            page.extend(head.moved(0.0, 0.0));
            used += head.height_mm;
        }
        page.extend(first.moved(0.0, used));
        used += first.height_mm;
        rest = rest.get(1..).unwrap_or(&[]);
    }
    pages
}

/// Free room is not carried over to the top of a page.
fn is_free(slab: &Slab) -> bool {
    slab.items.is_empty()
}

fn page(sheet: &PrintedSheet, items: Vec<Item>, number: usize, count: usize) -> Scene {
    let field = field();
    let mut scene = Scene::sheet(PAPER_MM.0, PAPER_MM.1);
    let corner = Placement::translation(field.left, field.top);
    scene.extend(items.into_iter().map(|item| Item {
        shape: item.shape.placed(&corner),
        ..item
    }));
    let top = PAPER_MM.1 - BORDER_MM;
    let narrow = |path| Item::new(Shape::Path(path), LineType::ContinuousNarrow, Role::Frame);
    let across = |y: f64| Path::line(Point { x: field.left, y }, Point { x: field.right, y });
    let title = shortened(&sheet.title, HEADING_MM, field.width());
    scene.extend(
        Slab {
            items: vec![lettering(&title, HEADING_MM, field.left, -top)],
            ..Slab::default()
        }
        .items,
    );
    scene.extend([
        narrow(across(field.top + UNDER_TITLE_MM)),
        narrow(across(field.bottom - 1.5)),
    ]);
    let number = format!("page {number} of {count}");
    let foot_mm = field.width() - width_mm(&number, SMALL_MM) - 2.0 * UNDER_TITLE_MM;
    let foot = shortened(&sheet.foot, SMALL_MM, foot_mm);
    let baseline = BORDER_MM + 1.0;
    let text = |x, text: String, anchor| {
        let at = Point { x, y: baseline };
        Item::new(
            Shape::Text(Text::level(at, SMALL_MM, text).anchored(anchor)),
            LineType::ContinuousNarrow,
            Role::Annotation,
        )
    };
    scene.extend([
        text(field.left, foot, Anchor::Left),
        text(field.right, number, Anchor::Right),
    ]);
    scene
}

/// A text cut off where it is too long for its line, and saying so.
fn shortened(text: &str, height_mm: f64, limit_mm: f64) -> String {
    let line = text.replace(['\n', '\r', '\t'], " ");
    if width_mm(&line, height_mm) <= limit_mm {
        return line;
    }
    let mut kept = String::new();
    for letter in line.chars() {
        let longer = format!("{kept}{letter} ...");
        if width_mm(&longer, height_mm) > limit_mm {
            break;
        }
        kept.push(letter);
    }
    format!("{kept} ...")
}
