//! Pieces of a typed thread designation: numbers, words and signs.

use super::designation_error::DesignationError;

/// One piece of a designation, with the text it came from.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Token {
    pub(super) text: String,
    pub(super) kind: Kind,
}

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Kind {
    Number(f64),
    Word,
    Sign(char),
}

impl Token {
    /// Whether this is the given word, in any case.
    pub(super) fn is_word(&self, word: &str) -> bool {
        self.kind == Kind::Word && self.text.eq_ignore_ascii_case(word)
    }
}

/// Cuts a designation into pieces; spaces only part them.
///
/// The signs of multiplication become the word `x`, dashes of any length `-`, quotes of any shape `"`.
pub(super) fn tokens(input: &str) -> Result<Vec<Token>, DesignationError> {
    let mut found = Vec::new();
    let mut rest = input.trim_start();
    while let Some(first) = rest.chars().next() {
        let length = if is_numeric(first) {
            run(rest, is_numeric)
        } else if first.is_alphabetic() {
            word_length(rest)
        } else {
            first.len_utf8()
        };
        let (text, after) = rest.split_at(length);
        found.push(token(text, first)?);
        rest = after.trim_start();
    }
    Ok(found)
}

fn token(text: &str, first: char) -> Result<Token, DesignationError> {
    let (text, kind) = match first {
        _ if is_numeric(first) => (text, number(text)?),
        '*' | '\u{d7}' | '\u{2715}' | '\u{2a2f}' => ("x", Kind::Word),
        '\u{2010}'..='\u{2015}' | '\u{2212}' => ("-", Kind::Sign('-')),
        '\u{201c}' | '\u{201d}' | '\u{2033}' => ("\"", Kind::Sign('"')),
        _ if first.is_alphabetic() => (text, Kind::Word),
        _ => (text, Kind::Sign(first)),
    };
    Ok(Token {
        text: text.to_owned(),
        kind,
    })
}

fn is_numeric(c: char) -> bool {
    c.is_ascii_digit() || c == '.' || c == ','
}

/// Bytes at the start of the text whose characters all fit.
fn run(text: &str, fits: impl Fn(char) -> bool) -> usize {
    text.find(|c| !fits(c)).unwrap_or(text.len())
}

/// A word, less the `x` that is written to a unit without a space, as in `39mmx26`.
fn word_length(text: &str) -> usize {
    let length = run(text, char::is_alphabetic);
    let word = text.get(..length).unwrap_or(text);
    let unit = ["mm", "in", "inch"]
        .into_iter()
        .find(|unit| word.eq_ignore_ascii_case(&format!("{unit}x")));
    unit.map_or(length, str::len)
}

fn number(text: &str) -> Result<Kind, DesignationError> {
    let signs = text.chars().filter(|c| !c.is_ascii_digit()).count();
    if signs > 1 {
        return Err(DesignationError::DecimalSigns { piece: short(text) });
    }
    // With one decimal sign at most, only a sign standing alone is no number.
    Ok(text
        .replace(',', ".")
        .parse()
        .map_or(Kind::Sign('.'), Kind::Number))
}

/// A piece short enough to show in a message.
pub(super) fn short(text: &str) -> String {
    const SHOWN: usize = 24;
    if text.chars().count() <= SHOWN {
        return text.to_owned();
    }
    let mut shown: String = text.chars().take(SHOWN).collect();
    shown.push_str("...");
    shown
}
