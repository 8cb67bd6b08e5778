//! The names of the sizes that are inspected on the finished ring.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::RingKey;
use crate::mount::Unit;

/// More lugs than this are not worked with.
const MOST_LUGS: usize = 72;

/// What a size is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub enum SizeOf {
    /// A dimension of the ring.
    Ring(RingKey),
    /// Where a lug begins, a clock angle; lugs counted from 1 as the ring lists them.
    LugStart(usize),
    /// The width of a lug, an angle.
    LugWidth(usize),
    /// The thread, over two opposed balls of the best diameter.
    ThreadOverBalls,
}

/// What a size may not be called.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[error(
    "no size of a ring is called \"{0}\"; it is the name of a ring dimension such as seat_height, or lug_start_1, \
     lug_width_1, thread_over_balls"
)]
pub struct SizeNameError(pub String);

const LUG_START: &str = "lug_start_";
const LUG_WIDTH: &str = "lug_width_";
const OVER_BALLS: &str = "thread_over_balls";

impl SizeOf {
    /// The unit of its readings.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Ring(key) => key.unit(),
            Self::LugStart(_) | Self::LugWidth(_) => Unit::Deg,
            Self::ThreadOverBalls => Unit::Mm,
        }
    }

    /// Least and greatest reading that is not absurd.
    #[must_use]
    pub const fn range(self) -> (f64, f64) {
        match self {
            Self::Ring(key) => key.range(),
            Self::LugStart(_) => (-720.0, 720.0),
            Self::LugWidth(_) => (0.1, 360.0),
            Self::ThreadOverBalls => (1.0, 300.0),
        }
    }

    /// Its name for people.
    #[must_use]
    pub fn label(self) -> String {
        match self {
            Self::Ring(key) => key.label().to_owned(),
            Self::LugStart(number) => format!("Lug {number} begins"),
            Self::LugWidth(number) => format!("Lug {number}, width at its tip"),
            Self::ThreadOverBalls => "Thread over balls".to_owned(),
        }
    }
}

impl fmt::Display for SizeOf {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Ring(key) => f.write_str(key.name()),
            Self::LugStart(number) => write!(f, "{LUG_START}{number}"),
            Self::LugWidth(number) => write!(f, "{LUG_WIDTH}{number}"),
            Self::ThreadOverBalls => f.write_str(OVER_BALLS),
        }
    }
}

impl FromStr for SizeOf {
    type Err = SizeNameError;

    fn from_str(name: &str) -> Result<Self, Self::Err> {
        let lug = |number: &str| {
            number
                .parse()
                .ok()
                .filter(|number| (1..=MOST_LUGS).contains(number))
        };
        let found = if name == OVER_BALLS {
            Some(Self::ThreadOverBalls)
        } else if let Some(number) = name.strip_prefix(LUG_START) {
            lug(number).map(Self::LugStart)
        } else if let Some(number) = name.strip_prefix(LUG_WIDTH) {
            lug(number).map(Self::LugWidth)
        } else {
            let mut keys = RingKey::ALL.iter().copied();
            keys.find(|key| key.name() == name).map(Self::Ring)
        };
        found.ok_or_else(|| SizeNameError(name.to_owned()))
    }
}

impl TryFrom<String> for SizeOf {
    type Error = SizeNameError;

    fn try_from(name: String) -> Result<Self, Self::Error> {
        name.parse()
    }
}

impl From<SizeOf> for String {
    fn from(size: SizeOf) -> Self {
        size.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_name_comes_back() {
        let rings = RingKey::ALL.iter().map(|key| SizeOf::Ring(*key));
        let others = [
            SizeOf::LugStart(1),
            SizeOf::LugWidth(12),
            SizeOf::ThreadOverBalls,
        ];
        for size in rings.chain(others) {
            assert_eq!(size.to_string().parse(), Ok(size));
        }
    }

    #[test]
    fn what_is_no_size_is_named() {
        for name in ["", "seat", "lug_start_0", "lug_width_73", "lug_start_x"] {
            let error = name.parse::<SizeOf>().unwrap_err();
            assert!(error.to_string().contains("seat_height"), "{error}");
        }
    }
}
