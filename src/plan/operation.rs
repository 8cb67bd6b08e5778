//! The operations that make a ring out of bar.

use std::fmt;

/// An operation, in the order in which they are usually thought of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Operation {
    /// Face the end of the bar.
    FaceEnd,
    /// Rough the outside.
    RoughOutside,
    /// Drill and rough the bore.
    RoughBore,
    /// Turn the rim.
    Rim,
    /// Turn a threaded arbor with a shoulder.
    MakeArbor,
    /// Bore soft jaws to the rim, with a step.
    BoreJaws,
    /// Face the parted side.
    FaceSecondSide,
    /// Face the plate's front.
    PlateFront,
    /// Turn the boss, or bore the counterbore.
    SeatSide,
    /// Face the seat, leaving the last skim where it is skimmed last.
    SeatFace,
    /// Bore for the thread down to the lip, and the lip.
    ThreadBore,
    /// Turn the annulus for a free pin.
    PinAnnulus,
    /// Turn the relief.
    Relief,
    /// Chamfer the mouth of the thread.
    ThreadChamfer,
    /// Drill and tap the set-screws of the insert.
    SetScrews,
    /// Cut the thread.
    Thread,
    /// Take the burr off the mouth of the thread.
    ThreadMouth,
    /// Turn lugs and nose to diameter and length.
    BayonetDiameters,
    /// Bore behind the lip.
    RearBore,
    /// Face the rear of the flange, leaving the last skim where it is skimmed last.
    FlangeRear,
    /// Turn the groove behind the flange.
    Groove,
    /// Chamfer the lugs.
    LugLeadIn,
    /// Skim the face that makes the register.
    FinalSkim,
    /// Scribe the witness line of datum zero.
    AngleMark,
    /// Mill the gaps.
    MillGaps,
    /// Drill the lock hole.
    LockHole,
    /// Engrave the index mark.
    IndexMark,
    /// Deburr the lugs.
    DeburrLugs,
    /// Part off.
    PartOff,
    /// Deburr and wash.
    DeburrAndWash,
    /// Measure at 20 °C.
    Measure,
    /// Fit a cap or dummy, then the lens.
    TrialFit,
    /// Anodise or blacken.
    Coat,
}

impl Operation {
    /// What to do, as it stands on the plan.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::FaceEnd => "face the end of the bar",
            Self::RoughOutside => "rough the outside",
            Self::RoughBore => "drill and rough the bore",
            Self::Rim => "turn the rim",
            Self::MakeArbor => "turn a threaded arbor with a shoulder, leave it in the chuck",
            Self::BoreJaws => "bore soft jaws to the rim, with a step faced in the same setting",
            Self::FaceSecondSide => "face the parted side",
            Self::PlateFront => "face the front of the plate",
            Self::SeatSide => "turn boss or counterbore",
            Self::SeatFace => "face the seat",
            Self::ThreadBore => "bore for the thread, lip face and lip",
            Self::PinAnnulus => "turn the pin annulus",
            Self::Relief => "turn the thread relief",
            Self::ThreadChamfer => "chamfer the mouth of the thread",
            Self::SetScrews => "drill and tap the set-screws",
            Self::Thread => "cut the thread",
            Self::ThreadMouth => "take the burr off the mouth of the thread",
            Self::BayonetDiameters => "turn lugs and nose",
            Self::RearBore => "bore behind the lip",
            Self::FlangeRear => "face the rear of the flange",
            Self::Groove => "turn the groove behind the flange",
            Self::LugLeadIn => "chamfer the lugs",
            Self::FinalSkim => "skim the face that makes the register",
            Self::AngleMark => "scribe the witness line of datum zero",
            Self::MillGaps => "mill the gaps between the lugs",
            Self::LockHole => "drill the lock hole",
            Self::IndexMark => "engrave the index mark",
            Self::DeburrLugs => "deburr the lugs",
            Self::PartOff => "part off",
            Self::DeburrAndWash => "deburr and wash",
            Self::Measure => "let it cool to 20 °C and measure it (inspection sheet)",
            Self::TrialFit => "fit a cap or dummy first, then the lens; infinity trial",
            Self::Coat => "anodise or blacken, then measure again",
        }
    }
}

impl fmt::Display for Operation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.label())
    }
}
