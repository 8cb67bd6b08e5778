//! The sizes to reach at each operation, with what is left for a later one.

use super::operation::Operation as Op;
use crate::document::RingKey;
use crate::document::Route;
use crate::mount::Unit;
use crate::ring::{Derivation, ResolvedRing};
use crate::workshop::Dials;

/// Left on a diameter by roughing, mm; common practice, no source.
pub const ROUGHING_ALLOWANCE_MM: f64 = 1.0;
/// Left on the face that is skimmed last, mm; common practice, no source.
pub const SKIM_ALLOWANCE_MM: f64 = 0.2;

/// A size to reach.
#[derive(Clone, Debug, PartialEq)]
pub struct TargetSize {
    /// What it is of.
    pub label: String,
    /// Least and greatest, in the unit of the size; both the same where it is a rough size.
    pub limits: (f64, f64),
    /// The unit.
    pub unit: Unit,
}

impl TargetSize {
    /// The size as it stands on the plan.
    #[must_use]
    pub fn text(&self) -> String {
        let (least, greatest) = self.limits;
        let shown = self.unit.show(greatest);
        // Exact on purpose: a rough size has one number, not two.
        if least.to_bits() == greatest.to_bits() {
            return format!("{} about {shown}", self.label);
        }
        format!("{} {} to {shown}", self.label, self.unit.show(least))
    }
}

impl TargetSize {
    /// The size as it stands on the plan, with inches behind a length where the dials count in them.
    #[must_use]
    pub fn text_on(&self, dials: Dials) -> String {
        let text = self.text();
        if dials == Dials::Mm || self.unit != Unit::Mm {
            return text;
        }
        let (least, greatest) = self.limits;
        let (least, greatest) = (dials.shown(least), dials.shown(greatest));
        let inches = if least == greatest {
            greatest
        } else {
            format!("{least} to {greatest}")
        };
        format!("{text} ({inches} {})", dials.unit())
    }
}

/// The sizes of one operation.
pub(super) fn target_sizes(
    route: Route,
    operation: Op,
    derivation: &Derivation,
    ring: &ResolvedRing,
) -> Vec<TargetSize> {
    let mut found: Vec<TargetSize> = keys(operation, ring)
        .iter()
        .filter_map(|key| finished(derivation, *key))
        .collect();
    found.extend(rough(route, operation, ring));
    if operation == Op::ThreadBore {
        found.extend(minor_diameter(ring));
    }
    found
}

/// The finished sizes that an operation makes.
fn keys(operation: Op, ring: &ResolvedRing) -> &'static [RingKey] {
    match operation {
        Op::Rim => &[RingKey::FlangeDiameter],
        Op::PlateFront => &[RingKey::PlateThickness],
        Op::SeatSide => &[RingKey::SeatDiameter],
        Op::ThreadBore if ring.thread_runs_through => &[],
        Op::ThreadBore => &[RingKey::LipFaceDepth, RingKey::LipBore],
        Op::PinAnnulus => &[
            RingKey::AnnulusInner,
            RingKey::AnnulusOuter,
            RingKey::AnnulusDepth,
        ],
        Op::Relief => &[RingKey::ReliefWidth, RingKey::ReliefDiameter],
        Op::ThreadChamfer => &[RingKey::ThreadChamfer],
        Op::Thread => &[RingKey::ThreadLength],
        Op::RearBore => &[RingKey::RearBore, RingKey::LipThickness],
        Op::BayonetDiameters => &[
            RingKey::LugDiameter,
            RingKey::NoseDiameter,
            RingKey::SpigotLength,
        ],
        Op::Groove => &[
            RingKey::GrooveWidth,
            RingKey::GrooveRootDiameter,
            RingKey::LugThickness,
        ],
        Op::LugLeadIn => &[RingKey::LugLeadIn],
        Op::LockHole => &[
            RingKey::LockHoleDiameter,
            RingKey::LockHoleDepth,
            RingKey::LockHoleCircle,
        ],
        Op::FinalSkim => &[RingKey::SeatHeight],
        Op::DeburrLugs | Op::DeburrAndWash => &[RingKey::EdgeBreak],
        Op::FaceEnd
        | Op::RoughOutside
        | Op::RoughBore
        | Op::MakeArbor
        | Op::BoreJaws
        | Op::FaceSecondSide
        | Op::SeatFace
        | Op::SetScrews
        | Op::ThreadMouth
        | Op::FlangeRear
        | Op::AngleMark
        | Op::MillGaps
        | Op::IndexMark
        | Op::PartOff
        | Op::Measure
        | Op::TrialFit
        | Op::Coat => &[],
    }
}

fn finished(derivation: &Derivation, key: RingKey) -> Option<TargetSize> {
    let state = derivation.dimension(key)?;
    let value = state.value?;
    Some(TargetSize {
        label: key.label().to_lowercase(),
        limits: (value + state.deviations.0, value + state.deviations.1),
        unit: key.unit(),
    })
}

fn rough(route: Route, operation: Op, ring: &ResolvedRing) -> Vec<TargetSize> {
    let sizes = &ring.sizes;
    let about = |label: &str, value: f64| TargetSize {
        label: label.to_owned(),
        limits: (value, value),
        unit: Unit::Mm,
    };
    let is_thread_first = route == Route::ThreadFirst;
    match operation {
        Op::RoughOutside => vec![about("rim", sizes.flange_diameter + ROUGHING_ALLOWANCE_MM)],
        Op::RoughBore => {
            let least = ring.thread_minor.min(sizes.lip_bore).min(sizes.rear_bore);
            vec![about("bore", least - ROUGHING_ALLOWANCE_MM)]
        }
        // On the route where the seat is skimmed last it stands proud till then.
        Op::SeatFace if !is_thread_first => vec![about(
            "seat above the flange rear face",
            sizes.seat_height + SKIM_ALLOWANCE_MM,
        )],
        Op::FlangeRear if is_thread_first => vec![about(
            "seat to flange rear face",
            sizes.seat_height + SKIM_ALLOWANCE_MM,
        )],
        Op::PartOff => vec![about(
            "length of ring",
            sizes.plate_thickness.max(sizes.seat_height) + sizes.spigot_length,
        )],
        Op::SeatFace
        | Op::FlangeRear
        | Op::FaceEnd
        | Op::Rim
        | Op::MakeArbor
        | Op::BoreJaws
        | Op::FaceSecondSide
        | Op::PlateFront
        | Op::SeatSide
        | Op::ThreadBore
        | Op::PinAnnulus
        | Op::Relief
        | Op::ThreadChamfer
        | Op::SetScrews
        | Op::Thread
        | Op::ThreadMouth
        | Op::BayonetDiameters
        | Op::RearBore
        | Op::Groove
        | Op::LugLeadIn
        | Op::FinalSkim
        | Op::AngleMark
        | Op::MillGaps
        | Op::LockHole
        | Op::IndexMark
        | Op::DeburrLugs
        | Op::DeburrAndWash
        | Op::Measure
        | Op::TrialFit
        | Op::Coat => Vec::new(),
    }
}

fn minor_diameter(ring: &ResolvedRing) -> Option<TargetSize> {
    let limits = ring
        .thread
        .internal()
        .or_else(|_| ring.thread.without_class().internal())
        .ok()?;
    Some(TargetSize {
        label: "bore for the thread".to_owned(),
        limits: (limits.minor_min?, limits.minor_max?),
        unit: Unit::Mm,
    })
}
