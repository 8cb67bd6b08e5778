//! The designs that are open. One is in hand: the window works on it. The others lie to its left and to its right,
//! in the order of their tabs, each with the page and the views it was left with.

use super::design_page::DesignPage;
use super::drawing_page::DrawingPage;
use super::page::Page;
use super::view::Selection;
use super::workspace::Workspace;

/// A design with how it was looked at.
pub(super) struct Aside {
    /// The design.
    pub workspace: Workspace,
    /// The page it was on.
    pub page: Page,
    /// The views of the page Design.
    pub design_page: DesignPage,
    /// The view of the page Drawing.
    pub drawing_page: DrawingPage,
    /// What was opened and jumped to.
    pub selection: Selection,
}

impl Aside {
    /// A design that nobody has looked at yet.
    pub fn new(workspace: Workspace) -> Self {
        Self {
            workspace,
            page: Page::default(),
            design_page: DesignPage::default(),
            drawing_page: DrawingPage::default(),
            selection: Selection::default(),
        }
    }
}

/// The designs beside the one in hand.
#[derive(Default)]
pub(super) struct Desk {
    left: Vec<Aside>,
    right: Vec<Aside>,
}

impl Desk {
    /// How many designs are open, the one in hand counted.
    pub const fn count(&self) -> usize {
        self.left.len() + 1 + self.right.len()
    }

    /// The place of the one in hand, from 0.
    pub const fn place(&self) -> usize {
        self.left.len()
    }

    /// The designs beside the one in hand, with their places.
    pub fn others(&self) -> impl Iterator<Item = (usize, &Workspace)> {
        let left = self.left.iter().enumerate();
        let right = self.right.iter().rev().enumerate();
        let after = self.left.len() + 1;
        left.map(|(place, aside)| (place, &aside.workspace))
            .chain(right.map(move |(place, aside)| (after + place, &aside.workspace)))
    }

    /// Takes up the design at `place` for the one in hand, which is laid aside. Nothing where it is in hand already or
    /// there is none.
    pub fn take_up(&mut self, place: usize, in_hand: &mut Aside) -> bool {
        if place == self.place() || place >= self.count() {
            return false;
        }
        while place < self.place() {
            let Some(next) = self.left.pop() else { break };
            self.right.push(std::mem::replace(in_hand, next));
        }
        while place > self.place() {
            let Some(next) = self.right.pop() else { break };
            self.left.push(std::mem::replace(in_hand, next));
        }
        true
    }

    /// Lays the one in hand to the left, for a new one to its right.
    pub fn lay_aside(&mut self, in_hand: Aside) {
        self.left.push(in_hand);
    }

    /// A neighbour of the one in hand, which is put away; none where it is the only one.
    pub fn neighbour(&mut self) -> Option<Aside> {
        self.right.pop().or_else(|| self.left.pop())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Design;
    use crate::mount::{Body, Lens};
    use crate::workshop::Workshop;

    fn named(name: &str) -> Aside {
        let design = Design {
            name: name.to_owned(),
            ..Design::new(Lens::default(), Body::default())
        };
        let workshop = Workshop::default_set().unwrap();
        Aside::new(Workspace::new(design, workshop))
    }

    fn names(desk: &Desk, in_hand: &Aside) -> Vec<String> {
        let mut all: Vec<(usize, &Workspace)> = desk.others().collect();
        all.push((desk.place(), &in_hand.workspace));
        all.sort_by_key(|(place, _)| *place);
        let places: Vec<usize> = all.iter().map(|(place, _)| *place).collect();
        assert_eq!(places, (0..desk.count()).collect::<Vec<_>>());
        all.iter()
            .map(|(_, workspace)| workspace.design().name.clone())
            .collect()
    }

    #[test]
    fn the_tabs_keep_their_order_whichever_is_in_hand() {
        let (mut desk, mut in_hand) = (Desk::default(), named("a"));
        for name in ["b", "c", "d"] {
            desk.lay_aside(std::mem::replace(&mut in_hand, named(name)));
        }
        for place in [0, 2, 3, 1, 1] {
            desk.take_up(place, &mut in_hand);
            assert_eq!(desk.place(), place);
            assert_eq!(names(&desk, &in_hand), ["a", "b", "c", "d"]);
        }
        assert!(!desk.take_up(4, &mut in_hand));
        assert_eq!(in_hand.workspace.design().name, "b");
        in_hand = desk.neighbour().unwrap();
        assert_eq!(names(&desk, &in_hand), ["a", "c", "d"]);
        assert_eq!(in_hand.workspace.design().name, "c");
    }
}
