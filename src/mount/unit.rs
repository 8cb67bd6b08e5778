//! The units a value can carry.

use serde::{Deserialize, Serialize};

/// The unit of a value as it is stored and shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Unit {
    /// Millimetres.
    Mm,
    /// Metres: distances of objects.
    M,
    /// Micrometres.
    Um,
    /// Degrees of angle.
    Deg,
    /// Newtons.
    N,
    /// Grams.
    G,
    /// Megapascals.
    Mpa,
    /// Seconds.
    S,
    /// Square millimetres.
    Mm2,
    /// A plain number or ratio.
    One,
    /// Per cent.
    Percent,
    /// Full turns of a thread.
    Turns,
    /// Stops of light: halvings.
    Stops,
    /// Kelvins of difference.
    K,
    /// Newton millimetres.
    Nmm,
}

impl Unit {
    /// The sign printed behind a number; empty for a plain number.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::M => "m",
            Self::Um => "µm",
            Self::Deg => "°",
            Self::N => "N",
            Self::G => "g",
            Self::Mpa => "MPa",
            Self::S => "s",
            Self::Mm2 => "mm²",
            Self::One => "",
            Self::Percent => "%",
            Self::Turns => "turns",
            Self::Stops => "stops",
            Self::K => "K",
            Self::Nmm => "N·mm",
        }
    }

    /// Decimals that a reader can use: more would be false precision on a manual machine.
    #[must_use]
    pub const fn decimals(self) -> usize {
        match self {
            Self::Mm | Self::M | Self::Deg | Self::One => 3,
            Self::Mm2 | Self::S | Self::N | Self::Turns | Self::Stops => 2,
            Self::Um | Self::G | Self::Mpa | Self::Percent | Self::K | Self::Nmm => 1,
        }
    }

    /// `value` with its unit, trailing zeros cut but at least two decimals kept for lengths.
    #[must_use]
    pub fn show(self, value: f64) -> String {
        let number = show_number(value, self.decimals());
        match self {
            Self::One => number,
            Self::Deg | Self::Percent => format!("{number}{}", self.sign()),
            Self::Mm
            | Self::M
            | Self::Um
            | Self::N
            | Self::G
            | Self::Mpa
            | Self::S
            | Self::Mm2
            | Self::Turns
            | Self::Stops
            | Self::K
            | Self::Nmm => {
                format!("{number} {}", self.sign())
            }
        }
    }
}

/// `value` rounded to `decimals`, with trailing zeros cut down to two decimals and no "-0".
#[must_use]
pub fn show_number(value: f64, decimals: usize) -> String {
    let mut text = format!("{value:.decimals$}");
    if decimals > 2 {
        while text.ends_with('0') && text.rfind('.').is_some_and(|dot| text.len() - dot > 3) {
            text.pop();
        }
    }
    if text.starts_with('-') && text.chars().all(|c| matches!(c, '-' | '0' | '.')) {
        text.remove(0);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_two_decimals_and_lose_idle_zeros() {
        assert_eq!(show_number(1.46, 3), "1.46");
        assert_eq!(show_number(17.526, 3), "17.526");
        assert_eq!(show_number(2.0, 3), "2.00");
        assert_eq!(show_number(-0.0001, 3), "0.00");
        assert_eq!(Unit::Deg.show(65.0), "65.00°");
    }
}
