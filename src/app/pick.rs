//! Between the numbered items of the drawings and the fields behind them.

use crate::document::{FieldRef, RingKey};
use crate::drawing::plan_view::{CUT_TAG, LOCK_HOLE_TAG, LUG_TAG};
use crate::drawing::section_view::tag_of;
use crate::ring::Feature;

/// Every feature that can be picked in the half-section.
const FEATURES: [Feature; 23] = [
    Feature::Seat,
    Feature::BossSide,
    Feature::CounterboreSide,
    Feature::PlateFront,
    Feature::Rim,
    Feature::FlangeRearFace,
    Feature::GrooveRoot,
    Feature::LugFront,
    Feature::LugTip,
    Feature::LugLeadIn,
    Feature::LugRear,
    Feature::Nose,
    Feature::NoseFace,
    Feature::RearBore,
    Feature::LipBore,
    Feature::LipFace,
    Feature::AnnulusFloor,
    Feature::AnnulusSide,
    Feature::ReliefEnd,
    Feature::ReliefFloor,
    Feature::ReliefStart,
    Feature::Thread,
    Feature::ThreadChamfer,
];

/// What a numbered item shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Picked {
    /// An edge of the half-section.
    Feature(Feature),
    /// A lug of the plan, by its place in the list.
    Lug(u32),
    /// The lock hole of the plan.
    LockHole,
    /// The cutting line of the plan.
    Cut,
}

impl Picked {
    /// What the item of this number shows.
    #[must_use]
    pub fn of(tag: u32) -> Option<Self> {
        match tag {
            CUT_TAG => Some(Self::Cut),
            LOCK_HOLE_TAG => Some(Self::LockHole),
            LUG_TAG..LOCK_HOLE_TAG => Some(Self::Lug(tag - LUG_TAG)),
            // Numbers of no feature of ours belong to nothing.
            _ => FEATURES
                .into_iter()
                .find(|feature| tag_of(*feature) == tag)
                .map(Self::Feature),
        }
    }

    /// The name under the pointer.
    #[must_use]
    pub fn label(self) -> String {
        match self {
            Self::Feature(feature) => feature.label().to_owned(),
            Self::Lug(place) => format!("lug {}", place + 1),
            Self::LockHole => "lock hole".to_owned(),
            Self::Cut => "cutting line: drag it round".to_owned(),
        }
    }

    /// The field that is edited when it is picked.
    #[must_use]
    pub fn field(self) -> Option<FieldRef> {
        match self {
            Self::Feature(feature) => feature.dimensions().first().copied().map(FieldRef::Ring),
            Self::Lug(_) => Some(FieldRef::Lugs),
            Self::LockHole => Some(FieldRef::Ring(RingKey::LockHoleDiameter)),
            Self::Cut => None,
        }
    }

    /// Whether it is placed or sized by this field.
    #[must_use]
    pub fn belongs_to(self, field: FieldRef) -> bool {
        match self {
            Self::Feature(feature) => feature
                .dimensions()
                .iter()
                .any(|key| FieldRef::Ring(*key) == field),
            Self::Lug(_) => matches!(field, FieldRef::Lugs | FieldRef::Ring(RingKey::LugDiameter)),
            Self::LockHole => matches!(
                field,
                FieldRef::Ring(
                    RingKey::LockHoleDiameter | RingKey::LockHoleCircle | RingKey::LockHoleAngle
                )
            ),
            Self::Cut => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_feature_is_found_again_by_its_number() {
        for feature in FEATURES {
            assert_eq!(Picked::of(tag_of(feature)), Some(Picked::Feature(feature)));
        }
        let numbers: BTreeSet<u32> = FEATURES.into_iter().map(tag_of).collect();
        // The numbers are places in the list of features: all of them from 0 on, none left out.
        assert_eq!(
            numbers.into_iter().collect::<Vec<_>>(),
            (0..23).collect::<Vec<_>>()
        );
    }

    #[test]
    fn an_edge_lights_the_value_that_moves_it() {
        assert_eq!(
            Picked::Feature(Feature::LipBore).field(),
            Some(FieldRef::Ring(RingKey::LipBore))
        );
        assert_eq!(Picked::of(LUG_TAG + 2), Some(Picked::Lug(2)));
        assert!(Picked::LockHole.belongs_to(FieldRef::Ring(RingKey::LockHoleAngle)));
    }
}
