//! The ring with every dimension resolved, or what stops it.

use crate::document::{FieldRef, MillingMethod, RingKey, RingSizes, SeatKind, Working};
use crate::mount::{Hand, Sector};
use crate::standards::Thread;

/// What the ring does with a stop-down pin, once it is known whether there is one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PinUse {
    /// The lens has none, or nobody knows.
    None,
    /// A lip holds it in.
    Pressed,
    /// It stays out, in an annulus.
    LeftFree,
}

/// One dimension after its rule was worked.
#[derive(Clone, Debug)]
pub struct DimensionState {
    /// Which one.
    pub key: RingKey,
    /// The value in force: set by hand, else by the rule; none where the rule lacks something.
    pub value: Option<f64>,
    /// The value by the rule, also where another is set by hand.
    pub by_rule: Option<f64>,
    /// Whether it is set by hand.
    pub is_set: bool,
    /// Lower and upper deviation, in the unit of the dimension.
    pub deviations: (f64, f64),
    /// The tolerance as printed: `h9`, `±0.02`, `+0.05/0`.
    pub tolerance_text: String,
    /// How the rule came to its value.
    pub working: Option<Working>,
    /// What the rule lacks.
    pub missing: Vec<FieldRef>,
}

/// The bayonet's turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twist {
    /// Degrees from entry to lock.
    pub degrees: f64,
    /// Which way.
    pub hand: Hand,
}

impl Twist {
    /// The turn as a signed clock angle, degrees.
    #[must_use]
    pub const fn signed_deg(self) -> f64 {
        self.degrees * self.hand.sign()
    }
}

/// A whole ring.
#[derive(Clone, Debug)]
pub struct ResolvedRing {
    /// Every size.
    pub sizes: RingSizes,
    /// How the seat stands.
    pub seat: SeatKind,
    /// The lugs, locked, clock angles seen from the lens side.
    pub lugs: Vec<Sector>,
    /// What becomes of the pin.
    pub pin: PinUse,
    /// The female thread.
    pub thread: Thread,
    /// Minor diameter of the female thread, middle of its limits, mm.
    pub thread_minor: f64,
    /// Major diameter of the female thread, mm.
    pub thread_major: f64,
    /// The bayonet's turn, where known.
    pub twist: Option<Twist>,
    /// Radius of the end mill for the gaps, mm.
    pub cutter_radius: f64,
    /// How the gaps are milled.
    pub milling: MillingMethod,
    /// Whether the lens has its thread run right through the ring.
    pub thread_runs_through: bool,
}

/// Why no ring can be built at all.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    /// The reason, with its numbers.
    pub reason: String,
    /// The fields it rests on.
    pub fields: Vec<FieldRef>,
}

/// What became of the rules.
#[derive(Clone, Debug)]
pub struct Derivation {
    /// Every dimension, in the order of [`RingKey::ALL`].
    pub dimensions: Vec<DimensionState>,
    /// How the lugs were found; empty where they are set by hand or lack something.
    pub lug_working: Vec<Working>,
    /// The lugs by the rule, also where others are set by hand.
    pub lugs_by_rule: Option<Vec<Sector>>,
    /// The whole ring, where nothing is missing.
    pub ring: Option<ResolvedRing>,
    /// Fields that must be measured before the ring is whole, each once.
    pub missing: Vec<FieldRef>,
    /// Why no ring can be built, where none can.
    pub refusal: Option<Refusal>,
}

impl Derivation {
    /// The state of one dimension.
    #[must_use]
    pub fn dimension(&self, key: RingKey) -> Option<&DimensionState> {
        self.dimensions.iter().find(|state| state.key == key)
    }
}
