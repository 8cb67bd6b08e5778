//! Tolerances as a machinist types them: `±0.02`, `+0.05/0`, `h9`, or nothing for the rule.

use crate::document::{Tolerance, parse_quantity};
use crate::mount::{Unit, show_number};

/// The words of a tolerance; empty where it follows its rule.
#[must_use]
pub fn tolerance_words(tolerance: &Tolerance) -> String {
    match tolerance {
        Tolerance::Derived => String::new(),
        Tolerance::PlusMinus(half) => format!("±{}", show_number(*half, 3)),
        Tolerance::Deviations(lower, upper) => format!("{}/{}", signed(*upper), signed(*lower)),
        Tolerance::Fit(fit) => fit.clone(),
    }
}

fn signed(value: f64) -> String {
    if value > 0.0 {
        format!("+{}", show_number(value, 3))
    } else {
        show_number(value, 3)
    }
}

/// Reads a tolerance.
///
/// # Errors
/// What was not understood, with right ones beside it.
pub fn read_tolerance(text: &str, unit: Unit) -> Result<Tolerance, String> {
    let text = text.trim();
    if text.is_empty() || text.eq_ignore_ascii_case("rule") {
        return Ok(Tolerance::Derived);
    }
    let half = text
        .strip_prefix('±')
        .or_else(|| text.strip_prefix("+/-"))
        .or_else(|| text.strip_prefix("+-"));
    if let Some(half) = half {
        return number(half, unit).map(Tolerance::PlusMinus);
    }
    if let Some((one, other)) = text
        .split_once('/')
        .filter(|_| !text.starts_with(|c: char| c.is_ascii_alphabetic()))
    {
        let (one, other) = (number(one, unit)?, number(other, unit)?);
        return Ok(Tolerance::Deviations(one.min(other), one.max(other)));
    }
    if text.starts_with(|c: char| c.is_ascii_digit() || c == '.' || c == ',') {
        return number(text, unit).map(Tolerance::PlusMinus);
    }
    if text.chars().all(|c| c.is_ascii_alphanumeric()) {
        return Ok(Tolerance::Fit(text.to_owned()));
    }
    Err(format!(
        "\"{text}\" is no tolerance; type it such as ±0.02, +0.05/0 or h9"
    ))
}

fn number(text: &str, unit: Unit) -> Result<f64, String> {
    parse_quantity(text, unit).map_err(|error| error.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tolerances_are_read_as_they_are_written_in_a_shop() {
        let read = |text| read_tolerance(text, Unit::Mm);
        assert_eq!(read("±0,02"), Ok(Tolerance::PlusMinus(0.02)));
        assert_eq!(read("0.02"), Ok(Tolerance::PlusMinus(0.02)));
        assert_eq!(read("+0.05/0"), Ok(Tolerance::Deviations(0.0, 0.05)));
        assert_eq!(read("-0.02/-0.05"), Ok(Tolerance::Deviations(-0.05, -0.02)));
        assert_eq!(read(" h9 "), Ok(Tolerance::Fit("h9".to_owned())));
        assert_eq!(read(""), Ok(Tolerance::Derived));
        assert!(read("about a hair").unwrap_err().contains("h9"));
    }

    #[test]
    fn what_is_written_is_read_again() {
        let tolerances = [
            Tolerance::Derived,
            Tolerance::PlusMinus(0.015),
            Tolerance::Deviations(-0.062, 0.0),
            Tolerance::Fit("H7".to_owned()),
        ];
        for tolerance in tolerances {
            assert_eq!(
                read_tolerance(&tolerance_words(&tolerance), Unit::Mm),
                Ok(tolerance)
            );
        }
    }
}
