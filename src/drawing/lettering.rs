//! Lettering: widths and outlines of text at a given capital height.
//!
//! The nominal height of lettering is the height of its capitals (ISO 3098-1), so the font is scaled
//! by its capitals and not by its em. Widths are sums of the font's advances without kerning, so every
//! export and every test finds the same ones. Signs that the font lacks, or draws unlike the
//! standards, are drawn from `signs`.

use kurbo::{Affine, BezPath};

use crate::drawing::curves::kurbo_point;
use crate::drawing::font::{has_letter, letter};
use crate::drawing::placement::{Placement, readable_deg, unit_at};
use crate::drawing::signs;
use crate::drawing::text_box::TextBox;
use crate::geometry::Point;

/// Lettering heights of ISO 3098-1 used on A4 and A3, mm.
pub const HEIGHTS_MM: [f64; 5] = [1.8, 2.5, 3.5, 5.0, 7.0];

/// Distance from baseline to baseline over the height, for letters without accents
/// (ISO 3098-1 type B: 5.25 mm at 3.5 mm).
pub const LINE_PITCH: f64 = 1.5;

/// Where a text is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Anchor {
    /// At the start of its baseline.
    Left,
    /// At the middle of its baseline.
    Centre,
    /// At the end of its baseline.
    Right,
}

/// One line of lettering.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// Where the anchor lies, on the baseline, mm.
    pub at: Point,
    /// Height of the capitals on paper, mm.
    pub height_mm: f64,
    /// Reading direction, degrees counter-clockwise from x.
    pub rotation_deg: f64,
    /// Which point of the baseline lies at `at`.
    pub anchor: Anchor,
    /// What it says.
    pub text: String,
}

/// A stretch of a line of lettering that is all letters or one drawn sign.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// What it says.
    pub text: String,
    /// Start along the baseline, mm.
    pub start_mm: f64,
    /// Whether it is a drawn sign rather than letters of the font.
    pub is_sign: bool,
}

impl Text {
    /// Level lettering held at its left.
    #[must_use]
    pub fn level(at: Point, height_mm: f64, text: impl Into<String>) -> Self {
        Self {
            at,
            height_mm,
            rotation_deg: 0.0,
            anchor: Anchor::Left,
            text: text.into(),
        }
    }

    /// The same lettering held elsewhere.
    #[must_use]
    pub fn anchored(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }

    /// Start of the baseline, mm.
    #[must_use]
    pub fn start(&self) -> Point {
        let back = match self.anchor {
            Anchor::Left => 0.0,
            Anchor::Centre => width_mm(&self.text, self.height_mm) / 2.0,
            Anchor::Right => width_mm(&self.text, self.height_mm),
        };
        let along = unit_at(self.rotation_deg);
        Point {
            x: self.at.x - back * along.x,
            y: self.at.y - back * along.y,
        }
    }

    /// The rectangle from the deepest to the highest ink, at least the capitals, and the whole advance.
    #[must_use]
    pub fn text_box(&self) -> TextBox {
        let (bottom, top) = rise_mm(&self.text, self.height_mm);
        let start = self.start();
        let along = unit_at(self.rotation_deg);
        TextBox {
            corner: Point {
                x: start.x - bottom * along.y,
                y: start.y + bottom * along.x,
            },
            width_mm: width_mm(&self.text, self.height_mm),
            height_mm: top - bottom,
            rotation_deg: self.rotation_deg,
        }
    }

    /// The letters as areas to fill (non-zero rule), mm.
    #[must_use]
    pub fn outline(&self) -> BezPath {
        let mut path = outline(&self.text, self.height_mm);
        path.apply_affine(
            Affine::translate(kurbo_point(self.start()).to_vec2())
                * Affine::rotate(self.rotation_deg.to_radians()),
        );
        path
    }

    /// The text after a placement: moved and turned, never mirrored or enlarged, and turned on by
    /// half a turn where it would otherwise stand on its head.
    #[must_use]
    pub fn placed(&self, placement: &Placement) -> Self {
        let along = placement.direction(unit_at(self.rotation_deg));
        let up = placement.direction(unit_at(self.rotation_deg + 90.0));
        let angle = placement.angle_deg(self.rotation_deg);
        let rotation_deg = readable_deg(angle);
        let reads = unit_at(rotation_deg);
        let same_way = reads.x * along.x + reads.y * along.y > 0.0;
        let head_up = -reads.y * up.x + reads.x * up.y > 0.0;
        let anchor = match (self.anchor, same_way) {
            (Anchor::Left, true) | (Anchor::Right, false) => Anchor::Left,
            (Anchor::Right, true) | (Anchor::Left, false) => Anchor::Right,
            (Anchor::Centre, _) => Anchor::Centre,
        };
        let drop = if head_up { 0.0 } else { self.height_mm };
        let at = placement.point(self.at);
        Self {
            at: Point {
                x: at.x + drop * up.x,
                y: at.y + drop * up.y,
            },
            rotation_deg,
            anchor,
            ..self.clone()
        }
    }
}

/// Sum of the advances of a text at a capital height, mm.
#[must_use]
pub fn width_mm(text: &str, height_mm: f64) -> f64 {
    text.chars().map(|next| letter(next).advance).sum::<f64>() * height_mm
}

/// Letters and signs of a text that can be shown neither from the font nor as a drawn sign.
#[must_use]
pub fn unknown_letters(text: &str) -> Vec<char> {
    text.chars()
        .filter(|&letter| signs::sign(letter).is_none() && !has_letter(letter))
        .collect()
}

/// The stretches of letters and the drawn signs of a text, from left to right.
#[must_use]
pub fn runs(text: &str, height_mm: f64) -> Vec<Run> {
    let mut runs: Vec<Run> = Vec::new();
    let mut start_mm = 0.0;
    for letter in text.chars() {
        let is_sign = signs::sign(letter).is_some();
        match runs.last_mut() {
            Some(run) if !run.is_sign && !is_sign => run.text.push(letter),
            Some(_) | None => runs.push(Run {
                text: letter.to_string(),
                start_mm,
                is_sign,
            }),
        }
        start_mm += self::letter(letter).advance * height_mm;
    }
    runs
}

/// The letters of a text as areas to fill (non-zero rule), baseline from the origin along x, mm.
#[must_use]
pub fn outline(text: &str, height_mm: f64) -> BezPath {
    let mut path = BezPath::new();
    let mut start = 0.0;
    for letter in text.chars().map(letter) {
        let placed = Affine::scale(height_mm) * Affine::translate((start, 0.0));
        path.extend(letter.outline.iter().map(|element| placed * element));
        start += letter.advance;
    }
    path
}

/// Lowest and highest ink of a text against its baseline, at least 0 to the capital height, mm.
#[must_use]
pub fn rise_mm(text: &str, height_mm: f64) -> (f64, f64) {
    text.chars()
        .map(letter)
        .fold((0.0, height_mm), |(bottom, top), letter| {
            (
                f64::min(bottom, letter.bottom * height_mm),
                f64::max(top, letter.top * height_mm),
            )
        })
}

#[cfg(test)]
#[path = "lettering_tests.rs"]
mod tests;
