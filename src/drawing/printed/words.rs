//! Text broken into lines by the width of its letters.

use crate::drawing::lettering::width_mm;

/// A text may be wider than its room by this much, mm: sums of widths do not come out to the last digit.
const SLACK_MM: f64 = 1e-6;

/// The lines of a text in a width, broken at blanks; a word that is wider than the width is broken between letters.
/// Line ends in the text are kept.
pub(super) fn broken(text: &str, height_mm: f64, limit_mm: f64) -> Vec<String> {
    let limit_mm = limit_mm + SLACK_MM;
    text.lines()
        .flat_map(|line| broken_line(line, height_mm, limit_mm))
        .collect()
}

fn broken_line(text: &str, height_mm: f64, limit_mm: f64) -> Vec<String> {
    let mut lines = vec![String::new()];
    let mut used = 0.0;
    let blank = width_mm(" ", height_mm);
    let pieces = text
        .split_whitespace()
        .flat_map(|word| fitting(word, height_mm, limit_mm));
    for piece in pieces {
        let wide = width_mm(&piece, height_mm);
        let Some(last) = lines.last_mut() else { break };
        if last.is_empty() {
            last.push_str(&piece);
            used = wide;
        } else if used + blank + wide <= limit_mm {
            last.push(' ');
            last.push_str(&piece);
            used += blank + wide;
        } else {
            lines.push(piece);
            used = wide;
        }
    }
    lines
}

/// A word whole, or in pieces that fit.
fn fitting(word: &str, height_mm: f64, limit_mm: f64) -> Vec<String> {
    if width_mm(word, height_mm) <= limit_mm {
        return vec![word.to_owned()];
    }
    let mut pieces = vec![String::new()];
    let mut used = 0.0;
    for letter in word.chars() {
        let wide = width_mm(letter.encode_utf8(&mut [0; 4]), height_mm);
        if used + wide > limit_mm && used > 0.0 {
            pieces.push(String::new());
            used = 0.0;
        }
        if let Some(last) = pieces.last_mut() {
            last.push(letter);
        }
        used += wide;
    }
    pieces
}

/// The widest of some lines, mm.
pub(super) fn widest_mm<'a>(lines: impl IntoIterator<Item = &'a str>, height_mm: f64) -> f64 {
    lines
        .into_iter()
        .map(|line| width_mm(line, height_mm))
        .fold(0.0, f64::max)
}
