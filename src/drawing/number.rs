//! How numbers are written on a drawing.

/// The sign between whole and parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum DecimalMark {
    /// "12,5", as ISO 129-1 writes it.
    #[default]
    Comma,
    /// "12.5".
    Point,
}

/// Lengths and angles are written to this many decimals at most: a micrometre.
pub const MOST_DECIMALS: usize = 3;

/// True minus sign, as long as the plus sign.
pub const MINUS: char = '\u{2212}';

/// A number with at most `most_decimals` decimals, zeros at its end left off.
#[must_use]
pub fn plain(value: f64, most_decimals: usize, mark: DecimalMark) -> String {
    fixed(value, decimals(value, most_decimals), mark)
}

/// A number with exactly so many decimals.
#[must_use]
pub fn fixed(value: f64, decimals: usize, mark: DecimalMark) -> String {
    let digits = format!("{:.decimals$}", value.abs());
    let digits = match mark {
        DecimalMark::Comma => digits.replace('.', ","),
        DecimalMark::Point => digits,
    };
    // Something that rounds to nothing has no sign.
    let is_zero = digits.chars().all(|digit| !matches!(digit, '1'..='9'));
    if value < 0.0 && !is_zero {
        format!("{MINUS}{digits}")
    } else {
        digits
    }
}

/// A number as files for machines write it: a point, a short minus, zeros at its end left off.
#[must_use]
pub fn machine(value: f64, most_decimals: usize) -> String {
    let digits = format!("{value:.most_decimals$}");
    let short = if digits.contains('.') {
        digits.trim_end_matches('0').trim_end_matches('.')
    } else {
        &digits
    };
    if short == "-0" { "0" } else { short }.to_owned()
}

/// A deviation: with its sign always written, and a bare 0 for nothing (ISO 129-1).
#[must_use]
pub fn deviation(value: f64, decimals: usize, mark: DecimalMark) -> String {
    let text = fixed(value, decimals, mark);
    if text.chars().all(|digit| !matches!(digit, '1'..='9')) {
        "0".to_owned()
    } else if value > 0.0 {
        format!("+{text}")
    } else {
        text
    }
}

/// How many decimals a number needs, at most `most`.
#[must_use]
pub fn decimals(value: f64, most: usize) -> usize {
    let digits = format!("{:.most$}", value.abs());
    match digits.split_once('.') {
        Some((_, parts)) => parts.trim_end_matches('0').len(),
        None => 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zeros_at_the_end_are_left_off_and_the_mark_is_the_comma() {
        // ISO 129-1: the decimal marker is the comma.
        assert_eq!(plain(12.50, 3, DecimalMark::Comma), "12,5");
        assert_eq!(plain(40.0, 3, DecimalMark::Comma), "40");
        assert_eq!(plain(0.1 + 0.2, 3, DecimalMark::Point), "0.3");
        assert_eq!(plain(1.0005, 3, DecimalMark::Point), "1");
        assert_eq!(plain(100.0, 0, DecimalMark::Point), "100");
    }

    #[test]
    fn machines_read_a_point_and_no_spare_zeros() {
        assert_eq!(machine(-12.5, 4), "-12.5");
        assert_eq!(machine(100.0, 0), "100");
        assert_eq!(machine(-0.000_01, 4), "0");
        assert_eq!(machine(0.123_46, 4), "0.1235");
    }

    #[test]
    fn nothing_has_no_sign() {
        assert_eq!(plain(-0.0004, 3, DecimalMark::Comma), "0");
        assert_eq!(deviation(-0.0, 2, DecimalMark::Comma), "0");
    }

    #[test]
    fn deviations_carry_their_sign_and_equal_decimals() {
        assert_eq!(deviation(0.05, 2, DecimalMark::Comma), "+0,05");
        assert_eq!(deviation(-0.1, 2, DecimalMark::Comma), "\u{2212}0,10");
        assert_eq!(deviation(0.0, 2, DecimalMark::Comma), "0");
    }

    #[test]
    fn written_number_is_the_number() {
        for step in -20_000..20_000 {
            let value = f64::from(step) * 0.001;
            let text = plain(value, 3, DecimalMark::Point).replace(MINUS, "-");
            assert!(
                (text.parse::<f64>().unwrap() - value).abs() < 1e-9,
                "{value} {text}"
            );
        }
    }
}
