//! A field of the title block, and lettering that stays inside it.

use thiserror::Error;

use crate::drawing::extent::Extent;
use crate::drawing::lettering::{LINE_PITCH, Text, width_mm};
use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::scene::{Item, Role, Shape};
use crate::geometry::Point;

/// A bordered field with a small caption and a text under it.
#[derive(Debug, Clone, PartialEq)]
pub struct Cell {
    /// Its border, mm.
    pub area: Extent,
    /// What the field is.
    pub caption: &'static str,
    /// What it says.
    pub text: String,
    /// Lettering heights to try, largest first, mm.
    pub heights_mm: &'static [f64],
}

/// Why a title block cannot be lettered.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum CellError {
    /// The text does not fit at the smallest height.
    #[error("\"{text}\" does not fit into the field \"{caption}\" of the title block: shorten it")]
    TooLong {
        /// The field.
        caption: &'static str,
        /// What was to stand in it.
        text: String,
    },
}

/// Heights of ordinary fields, mm (ISO 3098-1 series).
pub const USUAL_HEIGHTS_MM: &[f64] = &[3.5, 2.5, 1.8];

/// Height of captions, mm (ISO 3098-1 series).
const CAPTION_MM: f64 = 1.8;

/// Clear space between border and lettering, mm (common practice, no source).
pub const MARGIN_MM: f64 = 1.0;

/// Depth of letters with descenders under the baseline, in lettering heights; the tests compare it
/// with the font.
pub const DESCENT: f64 = 0.36;

impl Cell {
    /// Room under the caption, mm.
    #[must_use]
    pub fn room(&self) -> Extent {
        let inside = self.area.grown(-MARGIN_MM);
        Extent {
            top: inside.top - CAPTION_MM - MARGIN_MM,
            ..inside
        }
    }

    /// Left and top border, caption and text.
    ///
    /// # Errors
    /// When the text fits at none of the heights, on however many lines there is room for.
    pub fn draw(&self) -> Result<Vec<Item>, CellError> {
        let item = |shape| Item::new(shape, LineType::ContinuousNarrow, Role::Frame);
        let inside = self.area.grown(-MARGIN_MM);
        let caption = Text::level(
            Point {
                x: inside.left,
                y: inside.top - CAPTION_MM,
            },
            CAPTION_MM,
            self.caption,
        );
        // Left and top side only: the others belong to the neighbours and to the border of the block.
        let [lower_left, _, upper_right, upper_left] = self.area.corners();
        let mut items = vec![
            item(Shape::Path(Path::open([
                lower_left,
                upper_left,
                upper_right,
            ]))),
            item(Shape::Text(caption)),
        ];
        items.extend(
            self.lettering()?
                .into_iter()
                .map(|text| item(Shape::Text(text))),
        );
        Ok(items)
    }

    /// The lines of the text at the largest height that fits.
    fn lettering(&self) -> Result<Vec<Text>, CellError> {
        let room = self.room();
        let fitted = self.heights_mm.iter().find_map(|&height| {
            let lines = wrapped(&self.text, height, room.width())?;
            let pitch = LINE_PITCH * height;
            let block = DESCENT.mul_add(height, pitch * steps(&lines) + height);
            (block <= room.height()).then_some((lines, height, pitch, block))
        });
        let (lines, height, pitch, block) = fitted.ok_or_else(|| CellError::TooLong {
            caption: self.caption,
            text: self.text.clone(),
        })?;
        let mut baseline = room.top - (room.height() - block) / 2.0 - height;
        Ok(lines
            .into_iter()
            .map(|line| {
                let at = Point {
                    x: room.left,
                    y: baseline,
                };
                baseline -= pitch;
                Text::level(at, height, line)
            })
            .collect())
    }
}

/// Baselines to go down from the first line to the last.
fn steps(lines: &[String]) -> f64 {
    crate::drawing::whole::as_f64(lines.len().saturating_sub(1))
}

/// A text broken at its spaces into lines of at most a width; none when a word alone is too wide.
#[must_use]
pub fn wrapped(text: &str, height_mm: f64, width_limit_mm: f64) -> Option<Vec<String>> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        if width_mm(word, height_mm) > width_limit_mm {
            return None;
        }
        match lines.last_mut() {
            Some(line) if width_mm(&format!("{line} {word}"), height_mm) <= width_limit_mm => {
                line.push(' ');
                line.push_str(word);
            }
            Some(_) | None => lines.push(word.to_owned()),
        }
    }
    Some(lines)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cell(text: &str) -> Cell {
        Cell {
            area: Extent::sized(Point { x: 10.0, y: 5.0 }, 45.0, 12.0),
            caption: "Title",
            text: text.to_owned(),
            heights_mm: USUAL_HEIGHTS_MM,
        }
    }

    #[test]
    fn lettering_stays_inside_its_cell_and_keeps_all_words() {
        for text in [
            "",
            "Ring",
            "Adapter ring with lip",
            "Adapter ring, mirror gauge (jig) plate",
            "Adapter ring for a long lens, jig type",
            "gjpqy(gjpqy) gjpqy, gjpqy, gjpqy, gjpqy",
        ] {
            let texts = cell(text).lettering().unwrap();
            let room = cell(text).area.grown(-MARGIN_MM / 2.0);
            for line in &texts {
                assert!(room.contains(&line.text_box().extent()), "{line:?}");
            }
            let joined: Vec<&str> = texts.iter().map(|line| line.text.as_str()).collect();
            assert_eq!(joined.join(" "), text);
        }
    }

    #[test]
    fn short_text_is_lettered_large_and_long_text_smaller_on_more_lines() {
        let short = cell("Ring").lettering().unwrap();
        assert!((short[0].height_mm - 3.5).abs() < 1e-9 && short.len() == 1);
        let long = cell("Adapter ring for a lens with lip")
            .lettering()
            .unwrap();
        assert!(long[0].height_mm < 3.0 && long.len() >= 2);
    }

    #[test]
    fn text_that_cannot_fit_is_refused_by_name() {
        let refusal = cell(&"Ring ".repeat(60)).draw().unwrap_err();
        assert!(refusal.to_string().contains("\"Title\""));
        assert!(cell(&"W".repeat(60)).draw().is_err());
    }

    #[test]
    fn descent_covers_the_deepest_letters_of_the_font() {
        for letter in "gjpqy,;()Q[]/".chars() {
            let height = 10.0;
            let deepest = Text::level(Point { x: 0.0, y: 0.0 }, height, letter).text_box();
            assert!(
                -deepest.corner.y <= DESCENT * height,
                "{letter} {deepest:?}"
            );
        }
    }
}
