//! What a check says: the number, its limit, where, how it was worked, and what would cure it.

use crate::document::{FieldRef, RingKey, Working};
use crate::mount::{Sector, Unit};
use crate::ring::Feature;

/// How bad it is. Sorted worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// It cannot work.
    Clash,
    /// It may not work.
    Caution,
    /// Not judged, or worth knowing.
    Note,
    /// It works.
    Ok,
}

impl Severity {
    /// The word on screen and in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Clash => "clash",
            Self::Caution => "caution",
            Self::Note => "note",
            Self::Ok => "ok",
        }
    }
}

/// Writes the finding keys.
macro_rules! finding_keys {
    ($($variant:ident = $name:literal, $title:literal, $asks:literal;)*) => {
        /// The checks, in the order of the optical axis.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum FindingKey { $(#[doc = $asks] $variant,)* }

        impl FindingKey {
            /// Every check.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The key in JSON.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)* }
            }

            /// The title on screen.
            #[must_use]
            pub const fn title(self) -> &'static str {
                match self { $(Self::$variant => $title,)* }
            }

            /// What it asks, in words.
            #[must_use]
            pub const fn asks(self) -> &'static str {
                match self { $(Self::$variant => $asks,)* }
            }
        }
    };
}

finding_keys! {
    Register = "register", "Register", "Is the seat as high as the two registers ask, and can it stand there?";
    AssumedValues = "assumed-values", "Assumed values", "Which values has nobody measured, and which unknown ones stop the ring?";
    LipThickness = "lip-thickness", "Lip thickness", "Is the lip thick enough, and does it bear the pin?";
    PinLanding = "pin-landing", "Pin landing", "Does the lip cover the whole pin circle, with margin?";
    PinTravel = "pin-travel", "Pin travel", "Does the lip stop the pin between fully stopped down and its bottom?";
    ThreadBottoming = "thread-bottoming", "Thread bottoming", "Does the male thread end before the ring stops it?";
    ThreadEngagement = "thread-engagement", "Thread engagement", "Do enough full turns engage?";
    Relief = "relief", "Thread relief", "Is the relief wide and deep enough to stop the tool in?";
    ThinWall = "thin-wall", "Thin wall", "Is the thinnest wall thick enough?";
    FlangeStrength = "flange-strength", "Flange strength", "Does the plate bear the lens, handled hard?";
    LugStrength = "lug-strength", "Lug strength", "Does a single lug bear the lens, handled hard?";
    ThreadStrength = "thread-strength", "Thread strength", "Do the flanks engaged bear the lens, handled hard?";
    ApertureRing = "aperture-ring", "Aperture ring", "Can the aperture ring turn, fingers included?";
    LensBarrel = "lens-barrel", "Rear barrel", "Does the rear barrel pass lip and bores at every focus?";
    Throat = "throat", "Throat", "Does the spigot pass the throat?";
    EarRoom = "ear-room", "Room for the ears", "Do the ears fit the groove, and with how much play?";
    NoseDepth = "nose-depth", "Nose depth", "Does everything behind the flange miss mirror and shutter?";
    Obstacles = "obstacles", "Obstacles", "Do ring and lens miss what stands out of the body, over the whole twist?";
    FlangeBearing = "flange-bearing", "Flange bearing", "Is enough flange left on the body, and is the lock pin covered?";
    SeatBearing = "seat-bearing", "Seat bearing", "Is enough seat left under the lens shoulder?";
    ThreadHand = "thread-hand", "Thread hand", "Does locking or unlocking turn the lens out of its thread?";
    LensStart = "lens-start", "Lens start", "Do run-out and fillet at the male shoulder find room in the ring?";
    LugEntry = "lug-entry", "Lug entry", "Do the lugs drop through the slots?";
    LugEngagement = "lug-engagement", "Lug engagement", "How much of each ear does its lug cover when locked?";
    LugStop = "lug-stop", "Lug stop", "Does a lug meet the stop when locked, and not before?";
    SingleEntry = "single-entry", "Single entry", "Can the ring be entered at one angle only, the intended one?";
    LockHole = "lock-hole", "Lock hole", "Does the lock hole fit its pin, in place, with metal round it?";
    Vignetting = "vignetting", "Vignetting", "Do the bores leave the light to the corner of the image?";
    FocusTolerance = "focus-tolerance", "Focus tolerance", "How many rings made to this drawing reach infinity?";
    Tilt = "tilt", "Tilt", "Do seat and flange lie parallel enough for the corners of the image?";
    IndexMark = "index-mark", "Index mark", "Where do the marks of lens and ring come to rest?";
    ToolAccess = "tool-access", "Tool access", "Do the tools of the workshop reach and fit?";
    Chucking = "chucking", "Chucking", "Does the chuck squeeze the ring out of round?";
}

/// A place that a finding points at.
#[derive(Clone, Debug, PartialEq)]
pub enum Place {
    /// A stretch between two points (z, r) of the half-section, mm.
    Span {
        /// One end.
        a: (f64, f64),
        /// The other end.
        b: (f64, f64),
    },
    /// A whole feature of the ring.
    Feature(Feature),
    /// An annular sector of the plan, clock angles seen from the lens side.
    Plan {
        /// The sector.
        sector: Sector,
        /// Inner radius, mm.
        inner_mm: f64,
        /// Outer radius, mm.
        outer_mm: f64,
    },
    /// A hole in the plan.
    Hole {
        /// Clock angle of its centre.
        angle_deg: f64,
        /// Distance of its centre from the axis, mm.
        radius_mm: f64,
        /// Its diameter, mm.
        diameter_mm: f64,
    },
    /// A field.
    Field(FieldRef),
}

/// What one click changes.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// Set this ring dimension.
    Dimension(RingKey, f64),
    /// Let this ring dimension follow its rule again.
    LetGo(RingKey),
    /// Set the lugs.
    Lugs(Vec<Sector>),
    /// Let the lugs follow their rule again.
    LetLugsGo,
    /// Set what keeps the lens from turning.
    ThreadHold(crate::document::ThreadHold),
    /// Take this end mill.
    Cutter(String),
}

/// What would cure it.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// In words, with numbers.
    pub text: String,
    /// Where one change would do it.
    pub change: Option<Change>,
}

impl Remedy {
    /// A remedy in words alone.
    #[must_use]
    pub fn words(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            change: None,
        }
    }

    /// A remedy by one dimension.
    #[must_use]
    pub fn dimension(key: RingKey, value: f64) -> Self {
        let text = format!(
            "set {} to {}",
            key.label().to_lowercase(),
            key.unit().show(value)
        );
        Self {
            text,
            change: Some(Change::Dimension(key, value)),
        }
    }
}

/// What one check says.
#[derive(Clone, Debug)]
pub struct Finding {
    /// Which check.
    pub key: FindingKey,
    /// How bad.
    pub severity: Severity,
    /// One plain sentence with the number in it.
    pub message: String,
    /// The judged value, in `unit`.
    pub value: Option<f64>,
    /// The limit it was judged by, in `unit`.
    pub limit: Option<f64>,
    /// How far inside the limit; negative is outside. In `unit`.
    pub margin: Option<f64>,
    /// The margin as a share of the limit, so that findings of different units sort together.
    pub share: Option<f64>,
    /// Unit of value, limit and margin.
    pub unit: Unit,
    /// Where.
    pub places: Vec<Place>,
    /// How it was worked.
    pub working: Vec<Working>,
    /// What would cure it.
    pub remedy: Option<Remedy>,
}

impl Finding {
    /// A finding with a sentence and no number.
    #[must_use]
    pub fn said(key: FindingKey, severity: Severity, message: impl Into<String>) -> Self {
        Self {
            key,
            severity,
            message: message.into(),
            value: None,
            limit: None,
            margin: None,
            share: None,
            unit: Unit::One,
            places: Vec::new(),
            working: Vec::new(),
            remedy: None,
        }
    }

    /// A check that lacks values: a note that names them and how to measure.
    #[must_use]
    pub fn not_judged(key: FindingKey, missing: &[FieldRef]) -> Self {
        let names: Vec<String> = missing.iter().map(|field| field.long_label()).collect();
        let mut finding = Self::said(
            key,
            Severity::Note,
            format!("not judged: {} unknown", names.join(", ")),
        );
        finding.places = missing.iter().copied().map(Place::Field).collect();
        let how: Vec<String> = missing
            .iter()
            .map(|field| format!("{}: {}", field.long_label(), field.how()))
            .collect();
        finding.remedy = Some(Remedy::words(format!("measure {}", how.join("; "))));
        finding
    }

    /// The same at a place.
    #[must_use]
    pub fn at(mut self, place: Place) -> Self {
        self.places.push(place);
        self
    }

    /// The same with a line of working.
    #[must_use]
    pub fn worked(mut self, working: Working) -> Self {
        self.working.push(working);
        self
    }

    /// The same with a remedy, kept only where there is something to cure.
    #[must_use]
    pub fn cured_by(mut self, remedy: Remedy) -> Self {
        if matches!(self.severity, Severity::Clash | Severity::Caution) {
            self.remedy = Some(remedy);
        }
        self
    }

    /// The same with another sentence.
    #[must_use]
    pub fn saying(mut self, message: impl Into<String>) -> Self {
        self.message = message.into();
        self
    }
}
