//! The lug table and the notes of a ring's sheet.

use crate::checks::count_assumed;
use crate::document::{Design, Lengths, RingKey};
use crate::drawing::dimension::Label;
use crate::drawing::extent::Extent;
use crate::drawing::lettering::{HEIGHTS_MM, LINE_PITCH, Text, width_mm};
use crate::drawing::lug_table::lug_table;
use crate::drawing::number::{DecimalMark, plain};
use crate::drawing::ring_dimensions::ASSUMED_MARK;
use crate::drawing::ring_plan::lock_hole_labels;
use crate::drawing::{Item, LineType, Role, Scene, Shape};
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::ring::ResolvedRing;

/// How high letters rise over their line, in lettering heights: higher than capitals (of the font).
const ASCENT: f64 = 1.2;
/// Space between columns, in lettering heights.
const COLUMN_GAP: f64 = 2.0;

/// What the views say already, so that the notes need not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct SaidOnViews {
    /// The lock hole by size, depth and circle.
    pub lock_hole: bool,
    /// The chamfer behind the lugs.
    pub lead_in: bool,
}

/// The lines of the notes.
#[must_use]
pub fn note_lines(
    design: &Design,
    evaluation: &Evaluation,
    ring: &ResolvedRing,
    mark: DecimalMark,
    said: SaidOnViews,
) -> Vec<String> {
    let notes = Notes {
        design,
        evaluation,
        ring,
        mark,
    };
    let mut lines = notes.angles();
    if !said.lock_hole {
        lines.extend(notes.lock_hole());
    }
    lines.extend(notes.chamfers(said.lead_in));
    lines.extend(notes.fits());
    lines.push(format!(
        "Edges broken {}",
        notes.number(ring.sizes.edge_break)
    ));
    if design.sheet.lengths == Lengths::WithInches {
        lines.push("In [ ]: inches, for information".to_owned());
    }
    lines.extend(notes.assumed());
    lines.extend(
        design
            .sheet
            .notes
            .lines()
            .filter(|line| !line.trim().is_empty())
            .map(str::to_owned),
    );
    lines
}

struct Notes<'a> {
    design: &'a Design,
    evaluation: &'a Evaluation,
    ring: &'a ResolvedRing,
    mark: DecimalMark,
}

impl Notes<'_> {
    fn number(&self, value: f64) -> String {
        plain(value, 3, self.mark)
    }

    /// Lugs and lock hole by their angles from the index mark.
    fn angles(&self) -> Vec<String> {
        let mut lines = lug_table(self.ring, self.mark);
        lines.push("Drawn in the locked position.".to_owned());
        lines
    }

    fn lock_hole(&self) -> Option<String> {
        let labels = lock_hole_labels(self.design, self.evaluation, self.ring, self.mark)?;
        let words: Vec<String> = labels.iter().map(Label::text).collect();
        Some(format!("lock hole: {}", words.join(" ")))
    }

    /// The chamfers, too small to be dimensioned on the view.
    fn chamfers(&self, lead_in_is_said: bool) -> Vec<String> {
        let sizes = &self.ring.sizes;
        [
            ("Thread entry", sizes.thread_chamfer, false),
            ("Lug lead-in", sizes.lug_lead_in, lead_in_is_said),
        ]
        .into_iter()
        .filter(|(_, size, is_said)| *size > 0.0 && !is_said)
        .map(|(what, size, _)| (what, size))
        .map(|(what, size)| format!("{what} {} × 45°", self.number(size)))
        .collect()
    }

    /// What each fit is in numbers: its lettering on the view stays short.
    fn fits(&self) -> Vec<String> {
        [RingKey::NoseDiameter, RingKey::LugDiameter]
            .into_iter()
            .filter_map(|key| self.evaluation.derivation.dimension(key))
            .filter(|state| state.tolerance_text.starts_with('h'))
            .map(|state| {
                let (lower, upper) = state.deviations;
                let size = self.number(self.ring.sizes.get(state.key));
                let (upper, lower) = (self.number(upper), self.number(lower));
                format!("Ø{size} {}: {upper} / {lower}", state.tolerance_text)
            })
            .collect()
    }

    /// How many values are assumed, and what the star behind a size means.
    fn assumed(&self) -> Vec<String> {
        let star = || format!("{ASSUMED_MARK} rests on an assumed value");
        match count_assumed(self.design, &self.evaluation.derivation) {
            0 => vec!["No assumed values.".to_owned()],
            1 => vec!["1 ASSUMED VALUE: MEASURE BEFORE CUTTING".to_owned(), star()],
            several => vec![
                format!("{several} ASSUMED VALUES: MEASURE BEFORE CUTTING"),
                star(),
            ],
        }
    }
}

/// Lines from the top of an area down, in as many columns as they take, in the first of some areas that takes them at
/// the largest standard lettering up to `height_mm`; none where even the smallest fits nowhere.
#[must_use]
pub fn note_block(lines: &[String], areas: &[Extent], height_mm: f64) -> Option<Vec<Item>> {
    let heights = HEIGHTS_MM
        .into_iter()
        .rev()
        .filter(|height| *height <= height_mm);
    heights
        .flat_map(|height| areas.iter().map(move |area| (area, height)))
        .find_map(|(area, height)| block_at(lines, area, height))
}

/// The same at one lettering height; none where it does not fit.
fn block_at(lines: &[String], area: &Extent, height: f64) -> Option<Vec<Item>> {
    let widest = lines
        .iter()
        .map(|line| width_mm(line, height))
        .fold(0.0, f64::max);
    let pitch = height * LINE_PITCH;
    let step = widest + COLUMN_GAP * height;
    let mut at = Point {
        x: area.left,
        y: area.top - ASCENT * height,
    };
    let mut scene = Scene::default();
    for line in lines {
        // Brackets and tails reach under the line.
        if at.y - 0.5 * height < area.bottom {
            at = Point {
                x: at.x + step,
                y: area.top - ASCENT * height,
            };
        }
        if at.x + widest > area.right || at.y - 0.5 * height < area.bottom {
            return None;
        }
        let text = Text::level(at, height, line.clone());
        scene.draw(
            Shape::Text(text),
            LineType::ContinuousNarrow,
            Role::Annotation,
        );
        at.y -= pitch;
    }
    Some(scene.items)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(count: usize) -> Vec<String> {
        (0..count).map(|line| format!("line {line}")).collect()
    }

    const AREA: Extent = Extent {
        left: 0.0,
        bottom: 0.0,
        right: 60.0,
        top: 50.0,
    };

    #[test]
    fn lettering_shrinks_to_a_standard_height_and_no_further() {
        let height = |count: usize| {
            note_block(&lines(count), &[AREA], 2.5).map(|items| match &items[0].shape {
                Shape::Text(text) => text.height_mm,
                other => panic!("{other:?}"),
            })
        };
        assert_eq!(height(10), Some(2.5));
        assert_eq!(height(60), Some(1.8));
        assert_eq!(height(500), None);
    }

    #[test]
    fn no_line_is_left_out_and_none_leaves_the_area() {
        let items = note_block(&lines(40), &[AREA], 2.5).unwrap();
        assert_eq!(items.len(), 40);
        for item in items {
            let extent = item.extent().unwrap();
            assert!(extent.bottom >= 0.0 && extent.right <= 60.0, "{extent:?}");
        }
    }
}
