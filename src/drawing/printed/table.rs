//! A ruled table: how wide its columns are, and its rows as slabs.

use super::slab::{Slab, lettering, tick_box};
use super::words::{broken, widest_mm};
use super::{Column, SMALL_MM, TEXT_MM, Table};
use crate::drawing::cell::DESCENT;
use crate::drawing::lettering::{LINE_PITCH, width_mm};
use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::scene::{Item, Role, Shape};
use crate::drawing::whole::as_f64;
use crate::geometry::Point;

/// Clear room left and right in a cell, mm.
const PAD_MM: f64 = 1.2;
/// Clear room above and below in a cell, mm.
const RISE_MM: f64 = 1.3;
/// Words are not squeezed into less than this, mm.
const LEAST_WORDS_MM: f64 = 22.0;
/// Free room after a table, mm.
const AFTER_MM: f64 = 2.5;
/// Least height of a row with room to write, mm (common practice, no source).
const WRITING_MM: f64 = 8.0;

impl Column {
    fn head(&self) -> &str {
        match self {
            Self::Tick => "",
            Self::Words(head) | Self::Number(head) | Self::Room(head, _) => head,
        }
    }

    /// The width that its widest cell asks for, mm.
    fn natural_mm<'a>(&self, cells: impl Iterator<Item = &'a str>, height_mm: f64) -> f64 {
        let text = |cells| widest_mm(cells, height_mm);
        // A head may break at its blanks, a number may not.
        let head = widest_mm(self.head().split_whitespace(), height_mm);
        2.0 * PAD_MM
            + match self {
                Self::Tick => height_mm,
                Self::Words(_) | Self::Number(_) => f64::max(text(cells.collect::<Vec<_>>()), head),
                Self::Room(_, least_mm) => head.max(*least_mm),
            }
    }
}

/// Widths of the columns and the height of the lettering.
struct Layout {
    columns_mm: Vec<f64>,
    height_mm: f64,
}

/// The rows of a table as slabs, the head first and repeated on every page.
pub(super) fn table_slabs(table: &Table, width_mm: f64) -> Vec<Slab> {
    let layout = layout(table, width_mm);
    let heads: Vec<String> = table
        .columns
        .iter()
        .map(|column| column.head().to_owned())
        .collect();
    let mut head = row(table, &layout, &heads, true);
    head.holds_next = true;
    let mut all = vec![head.clone()];
    all.extend(table.rows.iter().map(|cells| Slab {
        head: Some(Box::new(head.clone())),
        ..row(table, &layout, cells, false)
    }));
    all.push(Slab::free(AFTER_MM));
    all
}

fn layout(table: &Table, width_mm: f64) -> Layout {
    let tried_at = |height_mm: f64| {
        let natural: Vec<f64> = table
            .columns
            .iter()
            .enumerate()
            .map(|(index, column)| {
                let cells = table
                    .rows
                    .iter()
                    .filter_map(move |row| row.get(index).map(String::as_str));
                column.natural_mm(cells, height_mm)
            })
            .collect();
        squeezed(table, natural, width_mm)
    };
    let (columns_mm, fits) = tried_at(TEXT_MM);
    if fits {
        return Layout {
            columns_mm,
            height_mm: TEXT_MM,
        };
    }
    Layout {
        columns_mm: tried_at(SMALL_MM).0,
        height_mm: SMALL_MM,
    }
}

/// The widths made to fit, and whether they do: words give way first, room to write takes what is left.
fn squeezed(table: &Table, mut widths: Vec<f64>, width_mm: f64) -> (Vec<f64>, bool) {
    let total: f64 = widths.iter().sum();
    let is_words = |index: usize| matches!(table.columns.get(index), Some(Column::Words(_)));
    let rooms = table
        .columns
        .iter()
        .filter(|column| matches!(column, Column::Room(..)))
        .count();
    if total <= width_mm {
        let spare = (width_mm - total) / as_f64(rooms.max(1));
        for (width, column) in widths.iter_mut().zip(&table.columns) {
            if matches!(column, Column::Room(..)) {
                *width += spare;
            }
        }
        return (widths, true);
    }
    let mut over = total - width_mm;
    // The widest column of words gives way down to the next one, and so on.
    while over > 1e-9 {
        let words: Vec<usize> = (0..widths.len()).filter(|index| is_words(*index)).collect();
        let widest = words.iter().map(|index| widths[*index]).fold(0.0, f64::max);
        if widest <= LEAST_WORDS_MM {
            return (widths, false);
        }
        let (at_top, below): (Vec<usize>, Vec<usize>) = words
            .iter()
            .partition(|index| widths[**index] >= widest - 1e-9);
        let next = below
            .iter()
            .map(|index| widths[*index])
            .fold(LEAST_WORDS_MM, f64::max);
        let step = (widest - next).min(over / as_f64(at_top.len()));
        for index in &at_top {
            widths[*index] -= step;
        }
        over -= step * as_f64(at_top.len());
    }
    (widths, true)
}

fn row(table: &Table, layout: &Layout, cells: &[String], is_head: bool) -> Slab {
    let size = layout.height_mm;
    let pitch = LINE_PITCH * size;
    let lines: Vec<Vec<String>> = table
        .columns
        .iter()
        .zip(&layout.columns_mm)
        .enumerate()
        .map(|(index, (column, width))| {
            let text = cells.get(index).map_or("", String::as_str);
            match column {
                Column::Tick => Vec::new(),
                Column::Words(_) | Column::Number(_) | Column::Room(..) => {
                    broken(text, size, width - 2.0 * PAD_MM)
                }
            }
        })
        .collect();
    let most = lines.iter().map(Vec::len).max().unwrap_or(1).max(1);
    let has_room = table
        .columns
        .iter()
        .any(|column| matches!(column, Column::Room(..)));
    let text_mm = pitch.mul_add(as_f64(most - 1), size * (1.0 + DESCENT)) + 2.0 * RISE_MM;
    let height = if has_room && !is_head {
        text_mm.max(WRITING_MM)
    } else {
        text_mm
    };
    let mut items = Vec::new();
    let mut left = 0.0;
    for ((column, width), (index, lines)) in table
        .columns
        .iter()
        .zip(&layout.columns_mm)
        .zip(lines.iter().enumerate())
    {
        let is_ticked = cells.get(index).is_some_and(|cell| !cell.is_empty());
        if *column == Column::Tick && !is_head {
            items.extend(tick_box(size, left + PAD_MM, RISE_MM, is_ticked));
        }
        for (number, line) in lines.iter().enumerate() {
            let start = match column {
                Column::Number(_) => left + width - PAD_MM - width_mm(line, size),
                Column::Tick | Column::Words(_) | Column::Room(..) => left + PAD_MM,
            };
            items.push(lettering(
                line,
                size,
                start,
                pitch.mul_add(as_f64(number), RISE_MM),
            ));
        }
        left += width;
    }
    items.extend(rules(layout, height, is_head));
    Slab {
        height_mm: height,
        items,
        ..Slab::default()
    }
}

/// The lines round a row: under it, at its sides and between its cells; the head has one above and a wide one below.
fn rules(layout: &Layout, height_mm: f64, is_head: bool) -> Vec<Item> {
    let total: f64 = layout.columns_mm.iter().sum();
    let line = |from: (f64, f64), to: (f64, f64), line| {
        let point = |(x, y)| Point { x, y };
        Item::new(
            Shape::Path(Path::line(point(from), point(to))),
            line,
            Role::Annotation,
        )
    };
    let narrow = LineType::ContinuousNarrow;
    let under = if is_head {
        LineType::ContinuousWide
    } else {
        narrow
    };
    let mut items = vec![line((0.0, -height_mm), (total, -height_mm), under)];
    if is_head {
        items.push(line((0.0, 0.0), (total, 0.0), narrow));
    }
    let mut at = 0.0;
    items.push(line((at, 0.0), (at, -height_mm), narrow));
    for width in &layout.columns_mm {
        at += width;
        items.push(line((at, 0.0), (at, -height_mm), narrow));
    }
    items
}
