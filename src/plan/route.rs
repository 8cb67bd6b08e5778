//! The ways through the shop: which side first, and where the gaps are milled.

use super::operation::Operation as Op;
use crate::document::{Design, Pieces, Route, SeatKind};
use crate::ring::{PinUse, ResolvedRing};

/// Where the work stands while an operation is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Setting {
    /// In the bar.
    First,
    /// The other side.
    Second,
    /// On a mandrel in the dividing head.
    Third,
    /// On the bench.
    Bench,
}

impl Setting {
    /// The words over the steps done in it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::First => "First setting: in the bar",
            Self::Second => "Second setting: the other side",
            Self::Third => "Third setting: on a mandrel",
            Self::Bench => "On the bench",
        }
    }
}

impl Route {
    /// The name on the plan.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::LugsInTheBar => "bayonet side first, gaps milled in the bar",
            Self::ThreadFirst => "thread side first, bayonet side and gaps on a threaded arbor",
            Self::LugsOnAMandrel => "bayonet side first, thread side, gaps last on a mandrel",
        }
    }

    /// What the route costs beside the others, and what it does to clocking.
    #[must_use]
    pub const fn cost(self) -> &'static str {
        match self {
            Self::LugsInTheBar => {
                "two settings; soft jaws bored to the rim. The bar is a stiff handle and keeps the angles. The thread \
                 starts where it starts: where the lens's mark comes to rest is known after the trial fit, and is put \
                 right by a skim or a shim"
            }
            Self::ThreadFirst => {
                "two settings; a threaded arbor with a shoulder has to be turned. Lugs come after the thread: screw \
                 the lens in before milling, see where its mark comes to rest, and turn the whole pattern to it, so \
                 that no skim is spent on clocking"
            }
            Self::LugsOnAMandrel => {
                "three settings; soft jaws and a mandrel, and the ring is indicated again for milling, to 0.01 to \
                 0.02. Lugs come after the thread, so the pattern can be turned to the lens's mark"
            }
        }
    }

    /// How the work is held in a setting, and what makes seat and flange parallel.
    #[must_use]
    pub const fn holding(self, setting: Setting) -> &'static str {
        match (self, setting) {
            (Self::LugsInTheBar | Self::LugsOnAMandrel, Setting::First) => {
                "bar in the three-jaw chuck, body side outward"
            }
            (Self::ThreadFirst, Setting::First) => "bar in the three-jaw chuck, lens side outward",
            (Self::LugsInTheBar | Self::LugsOnAMandrel, Setting::Second) => {
                "soft jaws bored to the rim within +0/-0.05, flange rear face on their step: this setting makes seat \
                 and flange parallel. Never hold by the plate that is being faced"
            }
            (Self::ThreadFirst, Setting::Second) => {
                "screwed on the arbor, seat on its shoulder: this setting makes flange and seat parallel. Do not take \
                 the arbor out until the ring is done"
            }
            (Self::LugsInTheBar | Self::ThreadFirst | Self::LugsOnAMandrel, Setting::Third) => {
                "on a close mandrel in the dividing head, clamped endwise, indicated to 0.01 to 0.02"
            }
            (Self::LugsInTheBar | Self::ThreadFirst | Self::LugsOnAMandrel, Setting::Bench) => {
                "on the bench"
            }
        }
    }

    /// The setting of an operation on this route.
    #[must_use]
    pub const fn setting(self, operation: Op) -> Setting {
        match operation {
            Op::FaceEnd | Op::RoughOutside | Op::RoughBore | Op::Rim | Op::PartOff => {
                Setting::First
            }
            Op::FaceSecondSide | Op::MakeArbor | Op::BoreJaws | Op::FinalSkim => Setting::Second,
            Op::PlateFront
            | Op::SeatSide
            | Op::SeatFace
            | Op::ThreadBore
            | Op::PinAnnulus
            | Op::Relief
            | Op::ThreadChamfer
            | Op::SetScrews
            | Op::Thread
            | Op::ThreadMouth => match self {
                Self::ThreadFirst => Setting::First,
                Self::LugsInTheBar | Self::LugsOnAMandrel => Setting::Second,
            },
            Op::BayonetDiameters | Op::RearBore | Op::FlangeRear | Op::Groove | Op::LugLeadIn => {
                match self {
                    Self::ThreadFirst => Setting::Second,
                    Self::LugsInTheBar | Self::LugsOnAMandrel => Setting::First,
                }
            }
            Op::AngleMark | Op::MillGaps | Op::LockHole | Op::IndexMark | Op::DeburrLugs => {
                match self {
                    Self::LugsInTheBar => Setting::First,
                    Self::ThreadFirst => Setting::Second,
                    Self::LugsOnAMandrel => Setting::Third,
                }
            }
            Op::DeburrAndWash | Op::Measure | Op::TrialFit | Op::Coat => Setting::Bench,
        }
    }

    /// The operations this route takes for a ring, unordered.
    #[must_use]
    pub fn operations(self, design: &Design, ring: &ResolvedRing) -> Vec<Op> {
        let mut all = vec![
            Op::FaceEnd,
            Op::RoughOutside,
            Op::RoughBore,
            Op::Rim,
            Op::FaceSecondSide,
            Op::SeatFace,
            Op::ThreadBore,
            Op::ThreadChamfer,
            Op::Thread,
            Op::ThreadMouth,
            Op::BayonetDiameters,
            Op::RearBore,
            Op::FlangeRear,
            Op::Groove,
            Op::LugLeadIn,
            Op::FinalSkim,
            Op::AngleMark,
            Op::MillGaps,
            Op::IndexMark,
            Op::DeburrLugs,
            Op::PartOff,
            Op::DeburrAndWash,
            Op::Measure,
            Op::TrialFit,
        ];
        all.push(match self {
            Self::ThreadFirst => Op::MakeArbor,
            Self::LugsInTheBar | Self::LugsOnAMandrel => Op::BoreJaws,
        });
        let sizes = &ring.sizes;
        // The front of a flush plate is the seat itself.
        let has_own_plate = ring.seat != SeatKind::Flush;
        let when = [
            (has_own_plate, Op::PlateFront),
            (has_own_plate, Op::SeatSide),
            (ring.pin == PinUse::LeftFree, Op::PinAnnulus),
            (has_relief(ring), Op::Relief),
            (design.ring.pieces != Pieces::One, Op::SetScrews),
            (sizes.lock_hole_diameter > 0.0, Op::LockHole),
            (design.ring.finish.build_up_mm > 0.0, Op::Coat),
        ];
        all.extend(
            when.into_iter()
                .filter(|(is_there, _)| *is_there)
                .map(|(_, op)| op),
        );
        all
    }
}

/// Whether the thread ends in a relief.
#[must_use]
pub fn has_relief(ring: &ResolvedRing) -> bool {
    !ring.thread_runs_through && ring.sizes.relief_width > 0.0
}
