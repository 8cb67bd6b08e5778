//! The scales of ISO 5455.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A scale: lengths on paper to lengths of the part. Only those of the standard can be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Scale {
    paper: u32,
    part: u32,
}

/// Enlargements, full size and reductions of ISO 5455:1979 clause 3, largest first.
pub const SCALES: [Scale; 13] = [
    Scale::enlarged(50),
    Scale::enlarged(20),
    Scale::enlarged(10),
    Scale::enlarged(5),
    Scale::enlarged(2),
    Scale::FULL,
    Scale::reduced(2),
    Scale::reduced(5),
    Scale::reduced(10),
    Scale::reduced(20),
    Scale::reduced(50),
    Scale::reduced(100),
    Scale::reduced(200),
];

/// A scale that is not one of the standard.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error(
    "\"{0}\" is no scale of ISO 5455: take 50:1, 20:1, 10:1, 5:1, 2:1, 1:1, 1:2, 1:5, 1:10 or a smaller one of the list"
)]
pub struct ScaleError(String);

impl Scale {
    /// Full size.
    pub const FULL: Self = Self { paper: 1, part: 1 };

    const fn enlarged(paper: u32) -> Self {
        Self { paper, part: 1 }
    }

    const fn reduced(part: u32) -> Self {
        Self { paper: 1, part }
    }

    /// Paper mm per mm of the part.
    #[must_use]
    pub fn factor(self) -> f64 {
        f64::from(self.paper) / f64::from(self.part)
    }
}

impl fmt::Display for Scale {
    /// As ISO 5455 writes it in a title block: "2:1".
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}:{}", self.paper, self.part)
    }
}

impl FromStr for Scale {
    type Err = ScaleError;

    fn from_str(text: &str) -> Result<Self, ScaleError> {
        SCALES
            .into_iter()
            .find(|scale| scale.to_string() == text.trim())
            .ok_or_else(|| ScaleError(text.to_owned()))
    }
}

impl TryFrom<String> for Scale {
    type Error = ScaleError;

    fn try_from(text: String) -> Result<Self, ScaleError> {
        text.parse()
    }
}

impl From<Scale> for String {
    fn from(scale: Scale) -> Self {
        scale.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_are_those_of_the_standard() {
        // ISO 5455:1979 clause 3: 50:1 20:1 10:1 5:1 2:1, 1:1, 1:2 1:5 1:10 and tenfold on.
        let written: Vec<String> = SCALES.iter().map(ToString::to_string).collect();
        assert_eq!(
            written.join(" "),
            "50:1 20:1 10:1 5:1 2:1 1:1 1:2 1:5 1:10 1:20 1:50 1:100 1:200"
        );
    }

    #[test]
    fn no_other_scale_is_read() {
        assert_eq!("5:1".parse::<Scale>().map(Scale::factor), Ok(5.0));
        for text in ["3:1", "1:0", "", "2", "2.5:1"] {
            assert!(text.parse::<Scale>().is_err(), "{text}");
        }
    }
}
