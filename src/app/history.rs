//! Undo and redo of everything, of a design or of a workshop, to the very first step.
//!
//! A step is kept as what it changed in the text of the whole, some tens of bytes: a hundred thousand of them take
//! less room than a thousand whole designs.

use std::collections::VecDeque;

use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::document::{pack, unpack};

/// What all steps may take, bytes; beyond it the oldest go. An ordinary step takes about a hundred.
const MOST_BYTES: usize = 64_000_000;
/// What a step takes beside its words, bytes.
const BESIDE: usize = 72;

/// One step: at a place in the text other words came to stand.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Step {
    at: usize,
    /// The words before, then the words after.
    words: Box<str>,
    /// Where in `words` the words after begin.
    split: usize,
}

impl Step {
    /// The step that leads from one text to another.
    fn between(old: &str, new: &str) -> Self {
        let mut at = same_bytes(old.bytes(), new.bytes());
        while !(old.is_char_boundary(at) && new.is_char_boundary(at)) {
            at -= 1;
        }
        // Cut only where a letter of both begins.
        let (old, new) = (&old[at..], &new[at..]);
        let mut end = same_bytes(old.bytes().rev(), new.bytes().rev());
        while !(old.is_char_boundary(old.len() - end) && new.is_char_boundary(new.len() - end)) {
            end -= 1;
        }
        let (old, new) = (&old[..old.len() - end], &new[..new.len() - end]);
        Self {
            at,
            words: format!("{old}{new}").into_boxed_str(),
            split: old.len(),
        }
    }

    fn before(&self) -> &str {
        self.words.get(..self.split).unwrap_or_default()
    }

    fn after(&self) -> &str {
        self.words.get(self.split..).unwrap_or_default()
    }

    fn bytes(&self) -> usize {
        self.words.len() + BESIDE
    }

    /// `text` with other words at the place of `gone`.
    fn exchanged(&self, text: &str, gone: &str, come: &str) -> Option<String> {
        let before = text.get(..self.at)?;
        let behind = text.get(self.at..)?.strip_prefix(gone)?;
        Some(format!("{before}{come}{behind}"))
    }
}

/// How many bytes two texts begin with in common.
fn same_bytes(one: impl Iterator<Item = u8>, other: impl Iterator<Item = u8>) -> usize {
    one.zip(other)
        .take_while(|(one, other)| one == other)
        .count()
}

/// The steps back and forward.
#[derive(Clone, Debug)]
pub struct History<T> {
    /// The whole as the last step left it, and its text.
    now: T,
    text: String,
    back: VecDeque<Step>,
    forward: Vec<Step>,
    bytes: usize,
}

impl<T: Clone + PartialEq + Serialize + DeserializeOwned> History<T> {
    /// A history that begins with `first`.
    #[must_use]
    pub fn starting_at(first: &T) -> Self {
        Self {
            now: first.clone(),
            // What could not be written would begin a history without steps; our own types are written.
            text: pack(first).unwrap_or_default(),
            back: VecDeque::new(),
            forward: Vec::new(),
            bytes: 0,
        }
    }

    /// Ends a step: what comes after it is undone by itself.
    pub fn end_step(&mut self, now: &T) {
        if *now == self.now {
            return;
        }
        let Ok(text) = pack(now) else { return };
        for gone in self.forward.drain(..) {
            self.bytes -= gone.bytes();
        }
        let step = Step::between(&self.text, &text);
        self.bytes += step.bytes();
        self.back.push_back(step);
        self.now.clone_from(now);
        self.text = text;
        while self.bytes > MOST_BYTES
            && let Some(oldest) = self.back.pop_front()
        {
            self.bytes -= oldest.bytes();
        }
    }

    /// What it was one step back.
    pub fn undo(&mut self, now: &T) -> Option<T> {
        self.end_step(now);
        let step = self.back.pop_back()?;
        let text = step.exchanged(&self.text, step.after(), step.before());
        self.go_to(text)?;
        self.forward.push(step);
        Some(self.now.clone())
    }

    /// What it was one step forward.
    pub fn redo(&mut self, now: &T) -> Option<T> {
        // Whatever was done since the last step back, there is no way forward from it.
        self.end_step(now);
        let step = self.forward.pop()?;
        let text = step.exchanged(&self.text, step.before(), step.after());
        self.go_to(text)?;
        self.back.push_back(step);
        Some(self.now.clone())
    }

    fn go_to(&mut self, text: Option<String>) -> Option<()> {
        let text = text?;
        self.now = unpack(&text).ok()?;
        self.text = text;
        Some(())
    }

    /// Whether there is a step back.
    #[must_use]
    pub fn can_undo(&self, now: &T) -> bool {
        !self.back.is_empty() || *now != self.now
    }

    /// Whether there is a step forward.
    #[must_use]
    pub fn can_redo(&self, now: &T) -> bool {
        !self.forward.is_empty() && *now == self.now
    }
}

#[cfg(test)]
#[path = "history_tests.rs"]
mod tests;
