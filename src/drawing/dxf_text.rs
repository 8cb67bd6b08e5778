//! Lettering in a DXF file: words of letters, and drawn signs as strokes.

use crate::drawing::lettering::{Run, Text, runs, width_mm};
use crate::drawing::path::Path;
use crate::drawing::placement::{Placement, unit_at};
use crate::drawing::signs;
use crate::geometry::Point;

/// A stretch of a line of lettering.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Stretch {
    /// Letters, between two places on the baseline.
    Letters {
        /// What they say, as the file writes it.
        text: String,
        /// Where they start.
        start: Point,
        /// Where they end.
        end: Point,
        /// Height of the capitals, mm.
        height_mm: f64,
        /// Reading direction, degrees counter-clockwise from x.
        rotation_deg: f64,
    },
    /// A line of a drawn sign.
    Stroke(Path),
    /// A filled part of a drawn sign.
    Area(Path),
}

/// The stretches of a line of lettering.
pub(super) fn stretches(text: &Text) -> Vec<Stretch> {
    // The diameter sign has a code of its own among letters; the other signs have none.
    let plain = text.text.replace(signs::DIAMETER, "\u{d8}");
    // Its cell in the font is another width than the sign's: the whole line keeps the room it has on the sheet.
    let stretch = width_mm(&text.text, text.height_mm)
        / width_mm(&plain, text.height_mm).max(f64::MIN_POSITIVE);
    runs(&plain, text.height_mm)
        .iter()
        .flat_map(|run| of_run(text, run, stretch))
        .collect()
}

fn of_run(text: &Text, run: &Run, stretch: f64) -> Vec<Stretch> {
    let along = unit_at(text.rotation_deg);
    let origin = text.start();
    let at = |mm: f64| Point {
        x: origin.x + stretch * mm * along.x,
        y: origin.y + stretch * mm * along.y,
    };
    let sign = run
        .text
        .chars()
        .next()
        .filter(|_| run.is_sign)
        .and_then(signs::sign);
    if let Some(sign) = sign {
        let placement = Placement {
            scale: text.height_mm,
            origin: at(run.start_mm),
            rotation_deg: text.rotation_deg,
            ..Placement::IDENTITY
        };
        let strokes = sign
            .strokes
            .iter()
            .map(|path| Stretch::Stroke(path.placed(&placement)));
        let fills = sign
            .fills
            .iter()
            .map(|path| Stretch::Area(path.placed(&placement)));
        return strokes.chain(fills).collect();
    }
    let blank = run.text.len() - run.text.trim_start().len();
    let word = run.text.trim();
    if word.is_empty() {
        return Vec::new();
    }
    let lead = width_mm(run.text.get(..blank).unwrap_or_default(), text.height_mm);
    let start_mm = run.start_mm + lead;
    vec![Stretch::Letters {
        text: ascii(word),
        start: at(start_mm),
        end: at(start_mm + width_mm(word, text.height_mm)),
        height_mm: text.height_mm,
        rotation_deg: text.rotation_deg,
    }]
}

/// Letters as release 12 writes them: codes for diameter, degree and plus-minus, look-alikes for true minus and
/// times; a percent sign is written thrice, since two begin a code.
fn ascii(text: &str) -> String {
    let mut written = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '\u{d8}' => written.push_str("%%c"),
            '\u{b0}' => written.push_str("%%d"),
            '\u{b1}' => written.push_str("%%p"),
            '%' => written.push_str("%%%"),
            '\u{2212}' | '\u{2013}' | '\u{2014}' => written.push('-'),
            '\u{d7}' => written.push('x'),
            '\u{b5}' | '\u{3bc}' => written.push('u'),
            '\u{2026}' => written.push_str("..."),
            usual => written.push(usual),
        }
    }
    written
}

/// A value in code page 1252: its upper half from 0xA0 on is that of Unicode; other letters are written by number.
/// A value ends with its line, so control characters become blanks.
pub(super) fn encoded(value: &str) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(value.len());
    for letter in value.chars() {
        match u8::try_from(u32::from(letter)) {
            Ok(0x00..=0x1f | 0x7f..=0x9f) => bytes.push(b' '),
            Ok(byte) => bytes.push(byte),
            Err(_) => bytes.extend(format!("\\U+{:04X}", u32::from(letter)).bytes()),
        }
    }
    bytes
}
