//! A design with some of its dimensions tried at other values.

use super::reading::Reading;
use crate::checks::FindingKey;
use crate::document::{Choice, Design, RingKey};
use crate::evaluate::judge;
use crate::workshop::Workshop;

/// What is tried out.
#[derive(Clone, Copy, Debug)]
pub(super) struct Trial<'a> {
    pub(super) design: &'a Design,
    pub(super) workshop: &'a Workshop,
    /// Findings that do not count.
    pub(super) aside: &'a [FindingKey],
}

impl Trial<'_> {
    /// The design with these dimensions set by hand.
    pub(super) fn with(&self, sizes: &[(RingKey, f64)]) -> Design {
        let mut design = self.design.clone();
        for (key, value) in sizes {
            design.ring.dimensions.get_mut(*key).value = Choice::Set(*value);
        }
        design
    }

    /// What the checks say of it.
    pub(super) fn read(&self, sizes: &[(RingKey, f64)]) -> Reading {
        let judgement = judge(&self.with(sizes), self.workshop);
        Reading::of(&judgement, self.aside)
    }
}
