//! What a check may look at, with values that remember their field.

use crate::document::{Design, FieldRef, LimitKey, Limits, RingKey, Term};
use crate::mount::{BodyField, Interface, LensField};
use crate::ring::{Derivation, Parts, ResolvedRing};
use crate::workshop::Workshop;

use super::judge::Bounds;

/// A check lacks these values.
#[derive(Clone, Debug, PartialEq)]
pub struct NotJudged(pub Vec<FieldRef>);

impl From<FieldRef> for NotJudged {
    fn from(field: FieldRef) -> Self {
        Self(vec![field])
    }
}

/// The design as it was resolved.
#[derive(Clone, Copy, Debug)]
pub struct Context<'a> {
    /// The design.
    pub design: &'a Design,
    /// The workshop.
    pub workshop: &'a Workshop,
    /// What became of the rules.
    pub derivation: &'a Derivation,
    /// The whole ring.
    pub ring: &'a ResolvedRing,
    /// The shapes.
    pub parts: &'a Parts,
}

impl Context<'_> {
    /// A lens value.
    ///
    /// # Errors
    /// [`NotJudged`] when it is unknown.
    pub fn lens(&self, key: LensField) -> Result<Term, NotJudged> {
        known(FieldRef::Lens(key), self.design.lens.field(key))
    }

    /// A body value.
    ///
    /// # Errors
    /// [`NotJudged`] when it is unknown.
    pub fn body(&self, key: BodyField) -> Result<Term, NotJudged> {
        known(FieldRef::Body(key), self.design.body.field(key))
    }

    /// Any other interface value, such as the ears.
    ///
    /// # Errors
    /// [`NotJudged`] when it is unknown.
    pub fn known<'v, T>(
        &self,
        field: FieldRef,
        value: &'v Interface<T>,
    ) -> Result<&'v T, NotJudged> {
        value.value().ok_or_else(|| field.into())
    }

    /// A resolved ring size.
    #[must_use]
    pub fn size(&self, key: RingKey) -> Term {
        Term::field(FieldRef::Ring(key), self.ring.sizes.get(key))
    }

    /// A limit.
    #[must_use]
    pub fn limit(&self, key: LimitKey) -> Term {
        Term::field(FieldRef::Limit(key), self.limits().get(key))
    }

    /// The limits of the design.
    #[must_use]
    pub const fn limits(&self) -> &Limits {
        &self.design.limits
    }

    /// Clash and caution limits together.
    #[must_use]
    pub const fn bounds(&self, clash: LimitKey, caution: LimitKey) -> Bounds {
        Bounds::of(&self.design.limits, clash, caution)
    }

    /// Lower and upper deviation of a ring dimension, in its unit.
    #[must_use]
    pub fn deviations(&self, key: RingKey) -> (f64, f64) {
        self.derivation
            .dimension(key)
            .map_or((0.0, 0.0), |state| state.deviations)
    }
}

fn known(field: FieldRef, value: &Interface<f64>) -> Result<Term, NotJudged> {
    value
        .number()
        .map(|number| Term::field(field, number))
        .ok_or_else(|| field.into())
}
