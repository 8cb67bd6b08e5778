//! Text spoilt: letters, pieces, words that mean something, and pieces of other texts.

use crate::dice::Dice;

/// A text of the pool with one thing wrong, or a few. `words` are pieces that the reader takes notice of.
pub fn spoilt_text(dice: &mut Dice, pool: &[String], words: &[&str], longest: usize) -> String {
    let parent = &pool[dice.below(pool.len())];
    let mut bytes = parent.as_bytes().to_vec();
    let most = dice_times(dice);
    let times = 1 + dice.below(most);
    for _ in 0..times {
        let other = &pool[dice.below(pool.len())];
        spoil(dice, &mut bytes, other.as_bytes(), words);
    }
    bytes.truncate(longest);
    String::from_utf8_lossy(&bytes).into_owned()
}

/// Most inputs are spoilt a little, some a lot.
fn dice_times(dice: &mut Dice) -> usize {
    dice.pick(&[1, 2, 2, 4, 8, 24])
}

/// A piece of `from`, at most `longest` bytes.
fn piece<'b>(dice: &mut Dice, from: &'b [u8], longest: usize) -> &'b [u8] {
    if from.is_empty() {
        return from;
    }
    let start = dice.below(from.len());
    let length = 1 + dice.below(longest);
    &from[start..(start + length).min(from.len())]
}

fn spoil(dice: &mut Dice, bytes: &mut Vec<u8>, other: &[u8], words: &[&str]) {
    let at = dice.below(bytes.len() + 1);
    let length = dice.pick(&[1, 3, 12, 60, 400]);
    let end = (at + 1 + dice.below(length)).min(bytes.len());
    match dice.below(9) {
        0 if at < bytes.len() => bytes[at] = dice.below(256) as u8,
        1 if at < bytes.len() => bytes[at] ^= 1 << dice.below(8),
        2 => {
            bytes.drain(at..end.max(at));
        }
        3 => {
            let copied = piece(dice, bytes, length).to_vec();
            bytes.splice(at..at, copied);
        }
        4 => {
            let copied = piece(dice, other, length).to_vec();
            bytes.splice(at..end.max(at), copied);
        }
        5 => {
            let word = dice.pick(words).bytes();
            bytes.splice(at..at, word);
        }
        6 => {
            let (from, to) = number_at(bytes, at);
            bytes.splice(from..to, dice.pick(&NUMBERS).bytes());
        }
        7 => {
            let word = dice.pick(words).bytes();
            bytes.splice(at..end.max(at), word);
        }
        _ => {
            let many = dice.pick(&[2, 7, 40, 1000]);
            let copied = piece(dice, bytes, 6).repeat(many);
            bytes.splice(at..at, copied);
        }
    }
}

/// The run of digits and signs round a place, or after it.
fn number_at(bytes: &[u8], at: usize) -> (usize, usize) {
    let is_part = |byte: &u8| byte.is_ascii_digit() || matches!(byte, b'.' | b'-' | b',');
    let from = at + bytes[at..].iter().position(is_part).unwrap_or(0);
    let length = bytes[from..]
        .iter()
        .take_while(|byte| is_part(byte))
        .count();
    (from, from + length)
}

/// Numbers at the edges of what numbers are.
pub const NUMBERS: [&str; 28] = [
    "0",
    "-0",
    "1",
    "-1",
    "0.5",
    "0.001",
    "0.0000001",
    "1e-300",
    "5e-324",
    "1e300",
    "1.7976931348623157e308",
    "-1e308",
    "1e999",
    "NaN",
    "inf",
    "-inf",
    "9007199254740993",
    "18446744073709551616",
    "4294967296",
    "-2147483649",
    "360",
    "359.9999999",
    "-360.0000001",
    "1,5",
    "1.2.3",
    "12e",
    "0x1F",
    "1_000",
];
