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
        let mut number = show_number(value, self.decimals());
        match self {
            Self::One => {}
            Self::Deg | Self::Percent => number.push_str(self.sign()),
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
                number.push(' ');
                number.push_str(self.sign());
            }
        }
        number
    }
}

/// `value` rounded to `decimals`, with trailing zeros cut down to two decimals and no "-0".
#[must_use]
pub fn show_number(value: f64, decimals: usize) -> String {
    if let Some(text) = by_whole_numbers(value, decimals) {
        return text;
    }
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

/// The same by whole numbers, for those that are neither large nor half-way between two roundings: every finding of
/// every ring that is tried out says several numbers, and this takes a quarter of the time.
fn by_whole_numbers(value: f64, decimals: usize) -> Option<String> {
    const POWERS: [u32; 5] = [1, 10, 100, 1_000, 10_000];
    const LARGE: f64 = 1e9;
    // Far more than the multiplication can be off.
    const HALF_WAY: f64 = 1e-5;
    let power = *POWERS.get(decimals)?;
    let scaled = value.abs() * f64::from(power);
    let rest = scaled.fract();
    // What is no number lies in no range.
    if !(0.0..LARGE).contains(&scaled) || (rest - 0.5).abs() < HALF_WAY {
        return None;
    }
    let rounded = whole(scaled.round());
    let (before, mut after, mut places) = (rounded / power, rounded % power, decimals);
    while places > 2 && after.is_multiple_of(10) {
        after /= 10;
        places -= 1;
    }
    let mut text = String::with_capacity(20);
    if value < 0.0 && rounded > 0 {
        text.push('-');
    }
    push_digits(&mut text, before, 1);
    if places > 0 {
        text.push('.');
        push_digits(&mut text, after, places);
    }
    Some(text)
}

/// The digits of a whole number, at least so many.
fn push_digits(text: &mut String, number: u32, least: usize) {
    let mut digits = ['0'; 10];
    let (mut left, mut count) = (number, 0);
    for digit in digits.iter_mut().rev() {
        if left == 0 && count >= least {
            break;
        }
        *digit = char::from_digit(left % 10, 10).unwrap_or('0');
        left /= 10;
        count += 1;
    }
    text.extend(digits.iter().skip(digits.len() - count));
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "asked only for whole numbers from 0 to a thousand million"
)]
fn whole(value: f64) -> u32 {
    value as u32
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

    /// Both ways say the same wherever both can say it.
    #[test]
    fn whole_numbers_and_exact_rounding_agree() {
        let exact = |value: f64, decimals: usize| {
            let mut text = format!("{value:.decimals$}");
            while decimals > 2 && text.ends_with('0') && text.len() - text.find('.').unwrap() > 3 {
                text.pop();
            }
            let is_nothing = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
            text.strip_prefix('-')
                .filter(|_| is_nothing)
                .map_or(text.clone(), str::to_owned)
        };
        let mut tried = 0;
        for step in -60_000..60_000_i32 {
            for decimals in 0..=4 {
                let value = f64::from(step) * 0.013_37 + f64::from(step % 7) * 0.000_5;
                if let Some(text) = by_whole_numbers(value, decimals) {
                    assert_eq!(text, exact(value, decimals), "{value} to {decimals}");
                    tried += 1;
                }
            }
        }
        assert!(tried > 500_000, "{tried}");
        for none in [f64::NAN, f64::INFINITY, 2e9, 0.5, -1.5] {
            assert_eq!(by_whole_numbers(none, 0), None);
        }
    }
}
