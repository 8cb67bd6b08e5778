//! Slabs: pieces of a page that are not broken any more, and how blocks become slabs.

use super::table::table_slabs;
use super::words::broken;
use super::{Block, HEADING_MM, SMALL_MM, TEXT_MM};
use crate::drawing::cell::DESCENT;
use crate::drawing::extent::Extent;
use crate::drawing::lettering::{LINE_PITCH, Text};
use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::placement::Placement;
use crate::drawing::scene::{Item, Role, Scene, Shape, Tone};
use crate::geometry::Point;

/// Free room after a block, in heights of the main text.
const AFTER: f64 = 0.45;
/// Free room before a heading, mm.
const BEFORE_HEADING_MM: f64 = 4.0;
/// From the box to the text beside it, mm.
const AFTER_BOX_MM: f64 = 2.5;
/// Clear room inside the box of a caution, mm.
const CAUTION_PAD_MM: f64 = 1.6;
/// Width of the dark bar at the left of a caution, mm.
const BAR_MM: f64 = 1.2;
/// Room for the word of a named text, mm.
const WORD_MM: f64 = 17.0;
/// From text to the picture beside it, mm.
const BESIDE_MM: f64 = 5.0;

/// A piece of a page, its origin at its upper left corner, y upward.
#[derive(Debug, Clone, Default)]
pub(super) struct Slab {
    pub(super) height_mm: f64,
    pub(super) items: Vec<Item>,
    /// Whether the next slab must stand on the same page.
    pub(super) holds_next: bool,
    /// What is repeated above it where it is the first of a page.
    pub(super) head: Option<Box<Slab>>,
}

impl Slab {
    pub(super) fn free(height_mm: f64) -> Self {
        Self {
            height_mm,
            ..Self::default()
        }
    }

    /// The items moved right and down.
    pub(super) fn moved(&self, right_mm: f64, down_mm: f64) -> Vec<Item> {
        let placement = Placement::translation(right_mm, -down_mm);
        self.items
            .iter()
            .map(|item| Item {
                shape: item.shape.placed(&placement),
                ..item.clone()
            })
            .collect()
    }

    /// Slabs under one another as one.
    pub(super) fn stacked(slabs: &[Self]) -> Self {
        let mut whole = Self::default();
        for slab in slabs {
            whole.items.extend(slab.moved(0.0, whole.height_mm));
            whole.height_mm += slab.height_mm;
        }
        whole
    }
}

/// A line of lettering whose capitals begin `down_mm` under the slab's upper edge.
pub(super) fn lettering(text: &str, height_mm: f64, right_mm: f64, down_mm: f64) -> Item {
    let at = Point {
        x: right_mm,
        y: -down_mm - height_mm,
    };
    Item::new(
        Shape::Text(Text::level(at, height_mm, text)),
        LineType::ContinuousNarrow,
        Role::Annotation,
    )
}

/// A box to tick, as high as the capitals, and the tick in it.
pub(super) fn tick_box(side_mm: f64, right_mm: f64, down_mm: f64, is_ticked: bool) -> Vec<Item> {
    let area = Extent::sized(
        Point {
            x: right_mm,
            y: -down_mm - side_mm,
        },
        side_mm,
        side_mm,
    );
    let line = |path| {
        Item::new(
            Shape::Path(path),
            LineType::ContinuousNarrow,
            Role::Annotation,
        )
    };
    let mut items = vec![line(Path::polygon(area.corners()))];
    if is_ticked {
        let at = |right: f64, up: f64| Point {
            x: area.left + right * side_mm,
            y: area.bottom + up * side_mm,
        };
        items.push(line(Path::open([
            at(0.2, 0.5),
            at(0.42, 0.2),
            at(0.85, 0.85),
        ])));
    }
    items
}

/// The slabs of a block in a width.
pub(super) fn slabs(block: &Block, width_mm: f64) -> Vec<Slab> {
    match block {
        Block::Heading(text) => heading(text, width_mm),
        Block::Text(text) => paragraph(text, TEXT_MM, 0.0, width_mm),
        Block::Small(text) => paragraph(text, SMALL_MM, 0.0, width_mm),
        Block::Tick(text) => tick(text, width_mm),
        Block::Named(word, text) => named(word, text, width_mm),
        Block::Caution(text) => vec![caution(text, width_mm)],
        Block::Table(table) => table_slabs(table, width_mm),
        Block::Picture {
            scene,
            height_mm,
            caption,
        } => vec![picture(scene, width_mm, *height_mm, caption)],
        Block::Beside {
            blocks,
            scene,
            width_mm: picture_mm,
            height_mm,
            caption,
        } => vec![beside(
            blocks,
            width_mm,
            *picture_mm,
            &picture(scene, *picture_mm, *height_mm, caption),
        )],
        Block::Together(blocks) => together(blocks, width_mm),
        Block::Gap(height_mm) => vec![Slab::free(*height_mm)],
    }
}

fn together(blocks: &[Block], width_mm: f64) -> Vec<Slab> {
    let mut all: Vec<Slab> = blocks
        .iter()
        .flat_map(|block| slabs(block, width_mm))
        .collect();
    let last = all.len().saturating_sub(1);
    for slab in all.iter_mut().take(last) {
        slab.holds_next = true;
    }
    all
}

fn heading(text: &str, width_mm: f64) -> Vec<Slab> {
    let mut all = vec![Slab::free(BEFORE_HEADING_MM)];
    all.extend(paragraph(text, HEADING_MM, 0.0, width_mm));
    for slab in &mut all {
        slab.holds_next = true;
    }
    all
}

/// Lines of text, each a slab, the last with free room after it.
fn paragraph(text: &str, height_mm: f64, indent_mm: f64, width_mm: f64) -> Vec<Slab> {
    let pitch = LINE_PITCH * height_mm;
    let mut all: Vec<Slab> = broken(text, height_mm, width_mm - indent_mm)
        .iter()
        .map(|line| Slab {
            height_mm: pitch,
            items: vec![lettering(line, height_mm, indent_mm, 0.0)],
            ..Slab::default()
        })
        .collect();
    keep_ends_together(&mut all);
    if let Some(last) = all.last_mut() {
        last.height_mm += AFTER * TEXT_MM;
    }
    all
}

/// No single first or last line of a paragraph on a page.
fn keep_ends_together(all: &mut [Slab]) {
    let count = all.len();
    for (index, slab) in all.iter_mut().enumerate() {
        slab.holds_next = index + 1 < count && (index == 0 || index + 2 == count);
    }
}

fn tick(text: &str, width_mm: f64) -> Vec<Slab> {
    let mut all = paragraph(text, TEXT_MM, TEXT_MM + AFTER_BOX_MM, width_mm);
    if let Some(first) = all.first_mut() {
        first.items.extend(tick_box(TEXT_MM, 0.0, 0.0, false));
    }
    all
}

fn named(word: &str, text: &str, width_mm: f64) -> Vec<Slab> {
    let mut all = paragraph(text, TEXT_MM, WORD_MM, width_mm);
    if let Some(first) = all.first_mut() {
        first.items.push(lettering(word, TEXT_MM, 0.0, 0.0));
    }
    all
}

fn caution(text: &str, width_mm: f64) -> Slab {
    let pitch = LINE_PITCH * TEXT_MM;
    let left = BAR_MM + 1.5 * CAUTION_PAD_MM;
    let lines = broken(text, TEXT_MM, width_mm - left - CAUTION_PAD_MM);
    let down = |line: usize| pitch.mul_add(crate::drawing::whole::as_f64(line), CAUTION_PAD_MM);
    let height = down(lines.len()) - pitch + TEXT_MM * (1.0 + DESCENT) + CAUTION_PAD_MM;
    let area = |width: f64| {
        Path::polygon(Extent::sized(Point { x: 0.0, y: -height }, width, height).corners())
    };
    let fill = |width: f64, tone| {
        let shape = Shape::Fill {
            loops: vec![area(width)],
            tone,
        };
        Item::new(shape, LineType::ContinuousNarrow, Role::Annotation)
    };
    let mut items = vec![fill(width_mm, Tone::Tint), fill(BAR_MM, Tone::Solid)];
    items.extend(
        lines
            .iter()
            .enumerate()
            .map(|(index, line)| lettering(line, TEXT_MM, left, down(index))),
    );
    Slab {
        height_mm: height + AFTER * TEXT_MM,
        items,
        ..Slab::default()
    }
}

/// A picture in the middle of the width.
fn picture(scene: &Scene, width_mm: f64, height_limit_mm: f64, caption: &str) -> Slab {
    let Some(bounds) = scene.bounds() else {
        return Slab::default();
    };
    let scale = (width_mm / bounds.width())
        .min(height_limit_mm / bounds.height())
        .min(LARGEST_SCALE);
    let (wide, high) = (scale * bounds.width(), scale * bounds.height());
    let mut page = Scene::view();
    let origin = Point {
        x: (width_mm - wide) / 2.0 - scale * bounds.left,
        y: -scale * bounds.top,
    };
    page.place(scene, scale, origin);
    let mut slab = Slab {
        height_mm: high + AFTER * TEXT_MM,
        items: page.items,
        ..Slab::default()
    };
    if !caption.is_empty() {
        let mut under = paragraph(caption, SMALL_MM, 0.0, width_mm);
        under.insert(0, std::mem::take(&mut slab));
        slab = Slab::stacked(&under);
    }
    slab
}

/// A small part is not blown up beyond this.
const LARGEST_SCALE: f64 = 10.0;

/// Text on the left and a picture on the right of it.
fn beside(blocks: &[Block], width_mm: f64, picture_mm: f64, picture: &Slab) -> Slab {
    let text_mm = width_mm - picture_mm - BESIDE_MM;
    let left: Vec<Slab> = blocks
        .iter()
        .flat_map(|block| slabs(block, text_mm))
        .collect();
    let mut whole = Slab::stacked(&left);
    whole.items.extend(picture.moved(text_mm + BESIDE_MM, 0.0));
    whole.height_mm = whole.height_mm.max(picture.height_mm);
    whole
}
