//! Undo and redo of everything: a pile of whole designs, or of whole workshops.

use egui::util::undoer::Undoer;

/// The steps back and forward.
#[derive(Clone, Debug)]
pub struct History<T> {
    steps: Undoer<T>,
}

impl<T: Clone + PartialEq> History<T> {
    /// A history that begins with `first`.
    #[must_use]
    pub fn starting_at(first: &T) -> Self {
        let mut steps = Undoer::default();
        steps.add_undo(first);
        Self { steps }
    }

    /// Ends a step: what comes after it is undone by itself.
    pub fn end_step(&mut self, now: &T) {
        // Feeding first drops the steps forward, which adding alone would leave to be redone wrongly.
        self.steps.feed_state(0.0, now);
        self.steps.add_undo(now);
    }

    /// What it was one step back.
    pub fn undo(&mut self, now: &T) -> Option<T> {
        self.steps.undo(now).cloned()
    }

    /// What it was one step forward.
    pub fn redo(&mut self, now: &T) -> Option<T> {
        self.steps.redo(now).cloned()
    }

    /// Whether there is a step back.
    #[must_use]
    pub fn can_undo(&self, now: &T) -> bool {
        self.steps.has_undo(now)
    }

    /// Whether there is a step forward.
    #[must_use]
    pub fn can_redo(&self, now: &T) -> bool {
        self.steps.has_redo(now)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Design;
    use crate::mount::{Body, Lens};

    fn named(name: &str) -> Design {
        Design {
            name: name.to_owned(),
            ..Design::new(Lens::default(), Body::default())
        }
    }

    #[test]
    fn each_step_is_undone_by_itself_and_redone() {
        let (a, b, c) = (named("a"), named("b"), named("c"));
        let mut history = History::starting_at(&a);
        assert!(!history.can_undo(&a));
        history.end_step(&b);
        history.end_step(&c);
        assert_eq!(history.undo(&c), Some(b.clone()));
        assert_eq!(history.undo(&b), Some(a.clone()));
        assert_eq!(history.undo(&a), None);
        assert_eq!(history.redo(&a), Some(b));
    }

    #[test]
    fn a_new_step_drops_the_steps_forward() {
        let (a, b, c) = (named("a"), named("b"), named("c"));
        let mut history = History::starting_at(&a);
        history.end_step(&b);
        assert_eq!(history.undo(&b), Some(a.clone()));
        history.end_step(&c);
        assert!(!history.can_redo(&c));
        assert_eq!(history.redo(&c), None);
        assert_eq!(history.undo(&c), Some(a));
    }

    #[test]
    fn a_drag_that_has_not_ended_is_undone_as_one() {
        let (a, last) = (named("a"), named("dragged far"));
        let mut history = History::starting_at(&a);
        assert!(history.can_undo(&last));
        assert_eq!(history.undo(&last), Some(a));
    }
}
