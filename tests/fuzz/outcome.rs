//! What became of one input, coarse enough that like outcomes are one.

use std::hash::{DefaultHasher, Hasher as _};

/// A digest of an outcome.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Outcome(u64);

impl Outcome {
    /// From whatever tells outcomes apart.
    pub fn of(parts: impl std::hash::Hash) -> Self {
        let mut digest = DefaultHasher::new();
        parts.hash(&mut digest);
        Self(digest.finish())
    }

    /// From the message to an input: numbers, the input itself and what stands in quotes are left out, for they differ
    /// without end.
    pub fn of_message(kind: &str, message: &str, input: &str) -> Self {
        let message = if input.len() > 3 {
            message.replace(input.trim(), "")
        } else {
            message.to_owned()
        };
        let mut shape = String::new();
        let mut quoted = false;
        for letter in message.chars() {
            match letter {
                '"' | '`' => quoted = !quoted,
                letter if quoted || letter.is_ascii_digit() => {}
                letter => shape.push(letter),
            }
        }
        shape.truncate(shape.floor_char_boundary(80));
        Self::of((kind, shape))
    }
}
