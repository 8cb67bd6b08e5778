//! A value of a mating part: unknown, or known with where it came from and how well.

use serde::{Deserialize, Serialize};

/// A value as somebody printed it, and where.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Citation {
    /// The number as printed, in the unit of the field.
    pub says: f64,
    /// Where it was printed.
    pub source: String,
}

/// Where a known value came from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Origin {
    /// Fixed by the named standard.
    Standard(String),
    /// Printed somewhere that is not a standard; several prints may disagree.
    Published(Vec<Citation>),
    /// Measured on the part at hand.
    Measured {
        /// The readings, in the unit of the field; may be empty when only their mean was kept.
        readings: Vec<f64>,
        /// The instrument, by its name in the workshop file.
        instrument: String,
    },
    /// Taken for granted until measured, for the stated reason.
    Assumed(String),
}

/// How far a value can be trusted, in one word.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Standing {
    /// From a standard.
    Standard,
    /// Printed, not a standard.
    Published,
    /// Printed by several who do not agree.
    Disputed,
    /// Measured on the part.
    Measured,
    /// Assumed.
    Assumed,
    /// Not known.
    Unknown,
}

impl Standing {
    /// The word shown beside the value.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Standard => "standard",
            Self::Published => "published",
            Self::Disputed => "disputed",
            Self::Measured => "measured",
            Self::Assumed => "assumed",
            Self::Unknown => "unknown",
        }
    }

    /// A short mark for tight places; a letter, so that it never depends on a font or a colour.
    #[must_use]
    pub const fn mark(self) -> &'static str {
        match self {
            Self::Standard => "S",
            Self::Published => "P",
            Self::Disputed => "D",
            Self::Measured => "M",
            Self::Assumed => "A",
            Self::Unknown => "?",
        }
    }

    /// Whether the part must still be measured before metal is cut on this value.
    #[must_use]
    pub const fn wants_measuring(self) -> bool {
        match self {
            Self::Standard | Self::Measured | Self::Published => false,
            Self::Disputed | Self::Assumed | Self::Unknown => true,
        }
    }
}

/// A known value with its standard uncertainty and origin.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Known<T> {
    /// The value, in the unit of the field.
    pub value: T,
    /// Standard uncertainty (one standard deviation), same unit; 0 where none is stated.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub uncertainty: f64,
    /// Where it came from.
    pub origin: Origin,
}

// serde hands the field over by reference.
#[allow(clippy::trivially_copy_pass_by_ref)]
fn is_zero(value: &f64) -> bool {
    *value == 0.0
}

/// A value of a mating part.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub enum Interface<T> {
    /// Nobody has said.
    #[default]
    Unknown,
    /// Known, with its origin.
    Known(Known<T>),
}

impl<T> Interface<T> {
    /// A value assumed for the stated reason.
    pub fn assumed(value: T, why: &str) -> Self {
        Self::Known(Known {
            value,
            uncertainty: 0.0,
            origin: Origin::Assumed(why.to_owned()),
        })
    }

    /// A value fixed by a standard.
    pub fn standard(value: T, source: &str) -> Self {
        Self::Known(Known {
            value,
            uncertainty: 0.0,
            origin: Origin::Standard(source.to_owned()),
        })
    }

    /// A value measured with the named instrument, readings not kept.
    pub fn measured(value: T, instrument: &str) -> Self {
        let origin = Origin::Measured {
            readings: Vec::new(),
            instrument: instrument.to_owned(),
        };
        Self::Known(Known {
            value,
            uncertainty: 0.0,
            origin,
        })
    }

    /// The value, if known.
    pub const fn value(&self) -> Option<&T> {
        match self {
            Self::Unknown => None,
            Self::Known(known) => Some(&known.value),
        }
    }

    /// Standard uncertainty, 0 when unknown or not stated.
    pub const fn uncertainty(&self) -> f64 {
        match self {
            Self::Unknown => 0.0,
            Self::Known(known) => known.uncertainty,
        }
    }

    /// How far the value can be trusted.
    pub fn standing(&self) -> Standing {
        let Self::Known(known) = self else {
            return Standing::Unknown;
        };
        match &known.origin {
            Origin::Standard(_) => Standing::Standard,
            Origin::Published(citations) => {
                let first = citations.first().map(|citation| citation.says);
                if citations
                    .iter()
                    .any(|citation| Some(citation.says) != first)
                {
                    Standing::Disputed
                } else {
                    Standing::Published
                }
            }
            Origin::Measured { .. } => Standing::Measured,
            Origin::Assumed(_) => Standing::Assumed,
        }
    }

    /// Where the value came from, in words for a hover text.
    pub fn origin_text(&self) -> String {
        let Self::Known(known) = self else {
            return "unknown: measure it".to_owned();
        };
        match &known.origin {
            Origin::Standard(source) => format!("standard: {source}"),
            Origin::Published(citations) => {
                let parts: Vec<String> = citations
                    .iter()
                    .map(|citation| format!("{} ({})", citation.says, citation.source))
                    .collect();
                format!("published: {}", parts.join("; "))
            }
            Origin::Measured {
                readings,
                instrument,
            } if readings.is_empty() => format!("measured: {instrument}"),
            Origin::Measured {
                readings,
                instrument,
            } => {
                format!(
                    "measured: mean of {} readings, {instrument}",
                    readings.len()
                )
            }
            Origin::Assumed(why) => format!("assumed: {why}"),
        }
    }
}

impl Interface<f64> {
    /// The number, if known.
    #[must_use]
    pub fn number(&self) -> Option<f64> {
        self.value().copied()
    }
}
