//! The bench on which the rules are worked: one after the other, each from fields and from earlier ones.

use crate::document::{
    Choice, Design, FieldRef, LORE, LimitKey, RingKey, RingSizes, SeatKind, Term, Working,
};
use crate::mount::{BodyField, LensField};

use super::assumptions;
use super::resolved::{DimensionState, PinUse, Refusal};
use super::tolerances;

/// The fields a rule lacks.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Missing(pub(super) Vec<FieldRef>);

impl From<FieldRef> for Missing {
    fn from(field: FieldRef) -> Self {
        Self(vec![field])
    }
}

/// What a rule gives.
pub(super) type Worked = Result<Term, Missing>;

/// Both terms, or everything either of them lacks.
pub(super) fn both<A, B>(a: Result<A, Missing>, b: Result<B, Missing>) -> Result<(A, B), Missing> {
    match (a, b) {
        (Ok(a), Ok(b)) => Ok((a, b)),
        (Err(Missing(mut first)), Err(Missing(second))) => {
            first.extend(second);
            Err(Missing(first))
        }
        (Err(missing), Ok(_)) | (Ok(_), Err(missing)) => Err(missing),
    }
}

/// The rules in work.
pub(super) struct Rules<'a> {
    pub(super) design: &'a Design,
    pub(super) states: Vec<DimensionState>,
    pub(super) sizes: RingSizes,
    pub(super) pin: PinUse,
    pub(super) seat: Option<SeatKind>,
    pub(super) runs_through: bool,
    pub(super) refusal: Option<Refusal>,
}

impl<'a> Rules<'a> {
    pub(super) fn new(design: &'a Design, pin: PinUse) -> Self {
        Self {
            design,
            states: Vec::with_capacity(RingKey::COUNT),
            sizes: RingSizes::default(),
            pin,
            seat: None,
            runs_through: false,
            refusal: None,
        }
    }

    /// Puts a dimension in force: the hand's value, else the rule's.
    pub(super) fn settle(&mut self, key: RingKey, worked: Worked) {
        self.settle_from(key, worked, LORE);
    }

    /// The same with the source of the rule.
    pub(super) fn settle_from(&mut self, key: RingKey, worked: Worked, source: &'static str) {
        let dimension = self.design.ring.dimensions.get(key);
        let (by_rule, working, missing) = match worked {
            Ok(term) => {
                let by_rule = term.value();
                (
                    Some(by_rule),
                    Some(
                        Working::new(key.label().to_lowercase(), term, key.unit(), source)
                            .assuming(assumptions::of(key)),
                    ),
                    Vec::new(),
                )
            }
            Err(Missing(fields)) => (None, None, fields),
        };
        let (value, is_set) = match dimension.value {
            Choice::Set(value) => (Some(value), true),
            Choice::Derived => (by_rule, false),
        };
        if let Some(value) = value {
            *self.sizes.get_mut(key) = value;
        }
        let (deviations, tolerance_text) = tolerances::of(self.design, key, value.unwrap_or(0.0));
        let missing = if is_set { Vec::new() } else { missing };
        self.states.push(DimensionState {
            key,
            value,
            by_rule,
            is_set,
            deviations,
            tolerance_text,
            working,
            missing,
        });
    }

    /// A dimension worked before.
    pub(super) fn size(&self, key: RingKey) -> Worked {
        let state = self.states.iter().find(|state| state.key == key);
        match state {
            Some(DimensionState {
                value: Some(value), ..
            }) => Ok(Term::field(FieldRef::Ring(key), *value)),
            Some(state) => Err(Missing(state.missing.clone())),
            // The order of the rules is fixed and tested: a rule never asks for a later one.
            None => Err(FieldRef::Ring(key).into()),
        }
    }

    /// The value set by hand, if any.
    pub(super) fn set_by_hand(&self, key: RingKey) -> Option<Term> {
        self.design
            .ring
            .dimensions
            .get(key)
            .value
            .set()
            .map(|value| Term::field(FieldRef::Ring(key), *value))
    }

    pub(super) fn lens(&self, key: LensField) -> Worked {
        let field = FieldRef::Lens(key);
        self.design
            .lens
            .field(key)
            .number()
            .map(|value| Term::field(field, value))
            .ok_or_else(|| field.into())
    }

    pub(super) fn body(&self, key: BodyField) -> Worked {
        let field = FieldRef::Body(key);
        self.design
            .body
            .field(key)
            .number()
            .map(|value| Term::field(field, value))
            .ok_or_else(|| field.into())
    }

    pub(super) fn limit(&self, key: LimitKey) -> Term {
        Term::field(FieldRef::Limit(key), self.design.limits.get(key))
    }
}
