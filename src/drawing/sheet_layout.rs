//! Where the views, the notes and the details of a sheet stand: rectangles that do not touch.

use crate::drawing::extent::Extent;
use crate::drawing::sheet::Sheet;
use crate::geometry::Point;

/// Least distance between what stands on the sheet, mm.
const BETWEEN: f64 = 6.0;

/// The room inside the frame, with the title block in its lower right corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// All of it, mm.
    pub inside: Extent,
    /// What the title block takes, its distance included, mm.
    pub block: Extent,
}

impl Room {
    /// The room of a sheet.
    #[must_use]
    pub fn of(sheet: &Sheet) -> Self {
        let field = sheet.field;
        let inside = Extent {
            bottom: sheet.beside.map_or(field.bottom, |beside| beside.bottom),
            ..field
        };
        let left = sheet.beside.map_or(inside.left, |beside| beside.right);
        let block = Extent {
            left,
            bottom: inside.bottom,
            right: inside.right,
            top: field.bottom,
        };
        Self { inside, block }
    }

    /// Rectangles of some sizes (width and height, mm) side by side from the left along the top; what ends left of the
    /// title block may reach down beside it. None where they do not fit. With `spread` what room is left is shared out
    /// between them.
    #[must_use]
    pub fn row(&self, sizes_mm: &[(f64, f64)], spread: bool) -> Option<Vec<Extent>> {
        let mut left = self.inside.left;
        let mut row = Vec::new();
        for (width, height) in sizes_mm {
            let corner = Point {
                x: left,
                y: self.inside.top - height,
            };
            let placed = Extent::sized(corner, *width, *height);
            if !self.takes(&placed, &row) {
                return None;
            }
            left = placed.right + BETWEEN;
            row.push(placed);
        }
        if spread {
            self.share_out(&mut row)?;
        }
        Some(row)
    }

    /// Moves what stands over the title block to the right by its share of the room that is left.
    fn share_out(&self, row: &mut [Extent]) -> Option<()> {
        let left_over = self.inside.right - row.last()?.right;
        let count = crate::drawing::whole::as_f64(row.len());
        let mut share = 0.5;
        for placed in row {
            let by = left_over * share / count;
            let moved = Extent {
                left: placed.left + by,
                right: placed.right + by,
                ..*placed
            };
            if self.takes(&moved, &[]) {
                *placed = moved;
            }
            share += 1.0;
        }
        Some(())
    }

    /// Whether a rectangle lies in the room, clear of the title block and of what is there.
    #[must_use]
    pub fn takes(&self, wanted: &Extent, taken: &[Extent]) -> bool {
        self.inside.grown(1e-6).contains(wanted)
            && !wanted.overlaps(&self.block)
            && !taken
                .iter()
                .any(|other| other.grown(BETWEEN - 1e-6).overlaps(wanted))
    }

    /// The largest free rectangles: none can grow on any side. Smallest first.
    #[must_use]
    pub fn free(&self, taken: &[Extent]) -> Vec<Extent> {
        let grown: Vec<Extent> = taken
            .iter()
            .map(|other| other.grown(BETWEEN))
            .chain([self.block])
            .collect();
        let edges = |own: [f64; 2], of: fn(&Extent) -> [f64; 2]| -> Vec<f64> {
            let mut all: Vec<f64> = own.into_iter().chain(grown.iter().flat_map(of)).collect();
            all.retain(|edge| *edge >= own[0] && *edge <= own[1]);
            all.sort_by(f64::total_cmp);
            all.dedup();
            all
        };
        let xs = edges([self.inside.left, self.inside.right], |extent| {
            [extent.left, extent.right]
        });
        let ys = edges([self.inside.bottom, self.inside.top], |extent| {
            [extent.bottom, extent.top]
        });
        let mut free: Vec<Extent> = Vec::new();
        for (place, left) in xs.iter().enumerate() {
            for right in xs.iter().skip(place + 1) {
                for (place, bottom) in ys.iter().enumerate() {
                    for top in ys.iter().skip(place + 1) {
                        let candidate = Extent {
                            left: *left,
                            bottom: *bottom,
                            right: *right,
                            top: *top,
                        };
                        if !grown
                            .iter()
                            .any(|other| other.grown(-1e-6).overlaps(&candidate))
                        {
                            free.push(candidate);
                        }
                    }
                }
            }
        }
        let area = |extent: &Extent| extent.width() * extent.height();
        free.sort_by(|a, b| area(b).total_cmp(&area(a)));
        let mut largest: Vec<Extent> = Vec::new();
        for candidate in free {
            if !largest
                .iter()
                .any(|known| known.grown(1e-6).contains(&candidate))
            {
                largest.push(candidate);
            }
        }
        largest.reverse();
        largest
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::sheet::{SheetFormat, sheet};
    use crate::drawing::test_random::Random;
    use crate::drawing::title_block::TitleBlock;

    fn room(format: SheetFormat) -> Room {
        Room::of(&sheet(format, &TitleBlock::default()).unwrap())
    }

    #[test]
    fn a_tall_view_stands_beside_the_title_block_and_a_wide_one_over_it() {
        let room = room(SheetFormat::A4Landscape);
        // ISO 5457 and ISO 7200: 267 x 190 inside the frame, the block 180 wide: 77 beside it, less the distances.
        let tall = room.row(&[(70.0, 178.0), (100.0, 100.0)], false).unwrap();
        assert!(tall[0].bottom < room.block.top && tall[1].bottom >= room.block.top);
        assert_eq!(room.row(&[(100.0, 178.0)], false), None);
        assert_eq!(room.row(&[(150.0, 80.0), (150.0, 80.0)], false), None);
    }

    #[test]
    fn rows_and_free_rectangles_never_touch_each_other_or_leave_the_room() {
        let mut random = Random::seeded(3);
        let mut placed = 0;
        for _ in 0..500 {
            let room = room(if random.below(2) == 0 {
                SheetFormat::A4Landscape
            } else {
                SheetFormat::A3Landscape
            });
            let sizes: Vec<(f64, f64)> = (0..=random.below(3))
                .map(|_| (random.between(30.0, 120.0), random.between(30.0, 150.0)))
                .collect();
            let Some(row) = room.row(&sizes, random.below(2) == 0) else {
                continue;
            };
            placed += 1;
            for (place, own) in row.iter().enumerate() {
                assert!(room.takes(own, &row[..place]), "{own:?} {row:?}");
            }
            for free in room.free(&row) {
                assert!(room.takes(&free, &row), "{free:?} {row:?}");
            }
        }
        assert!(placed > 100);
    }
}
