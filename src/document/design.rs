//! The design: one file, one ring.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::{Correction, Limits, Reading, Ring, RingKey, Sheet, Trial};
use crate::mount::{Body, Lens};

/// The format number this program writes.
pub const FORMAT: u32 = 1;

/// A ring kept beside the present one.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Variant {
    /// Its name.
    pub name: String,
    /// Why it is kept.
    #[serde(default)]
    pub note: String,
    /// The ring.
    pub ring: Ring,
}

impl Serialize for RingKey {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

impl<'de> Deserialize<'de> for RingKey {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let name = String::deserialize(deserializer)?;
        Self::ALL
            .iter()
            .copied()
            .find(|key| key.name() == name)
            .ok_or_else(|| {
                serde::de::Error::custom(format!("no ring dimension is called \"{name}\""))
            })
    }
}

impl fmt::Display for RingKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.label())
    }
}

/// Everything one ring is designed from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Design {
    /// Number of the file format.
    pub format: u32,
    /// Name of the design.
    #[serde(default)]
    pub name: String,
    /// Free notes.
    #[serde(default)]
    pub notes: String,
    /// The lens.
    pub lens: Lens,
    /// The body.
    pub body: Body,
    /// The ring.
    #[serde(default)]
    pub ring: Ring,
    /// Limits and clearances.
    #[serde(default)]
    pub limits: Limits,
    /// How the drawing is laid out.
    #[serde(default)]
    pub sheet: Sheet,
    /// Rings kept beside the present one.
    #[serde(default)]
    pub variants: Vec<Variant>,
    /// Readings of the finished ring.
    #[serde(default)]
    pub readings: Vec<Reading>,
    /// Infinity trials made with it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub trials: Vec<Trial>,
    /// Corrections made to it.
    #[serde(default)]
    pub corrections: Vec<Correction>,
}

impl Design {
    /// A new design from two mounts, every ring dimension by its rule.
    #[must_use]
    pub fn new(lens: Lens, body: Body) -> Self {
        let name = format!("{} on {}", lens.name, body.name);
        Self {
            format: FORMAT,
            name,
            notes: String::new(),
            lens,
            body,
            ring: Ring::default(),
            limits: Limits::default(),
            sheet: Sheet::default(),
            variants: Vec::new(),
            readings: Vec::new(),
            trials: Vec::new(),
            corrections: Vec::new(),
        }
    }
}
