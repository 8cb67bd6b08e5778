//! Typed numbers with units: `17.526`, `17,526 mm`, `0.690 in`, `0.690"`, `1/2 in`, `17 deg 20'`.

use thiserror::Error;

use crate::mount::Unit;

/// Why typed text is not a number of the wanted unit.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum QuantityError {
    /// Nothing was typed.
    #[error("nothing was typed; type a number such as {example}")]
    Empty {
        /// A right one.
        example: &'static str,
    },
    /// Comma and point in one number.
    #[error("\"{text}\" has both a point and a comma; type one of them as the decimal sign")]
    BothSeparators {
        /// The text.
        text: String,
    },
    /// A piece was not understood.
    #[error("\"{piece}\" was not understood in \"{text}\"; type a number such as {example}")]
    NotUnderstood {
        /// The piece.
        piece: String,
        /// The whole text.
        text: String,
        /// A right one.
        example: &'static str,
    },
    /// The unit does not fit.
    #[error("\"{unit}\" is no unit for this value; type it such as {example}")]
    WrongUnit {
        /// The unit typed.
        unit: String,
        /// A right one.
        example: &'static str,
    },
}

const fn example(unit: Unit) -> &'static str {
    match unit {
        Unit::Mm | Unit::Um => "17.526, 17,526 mm or 0.690 in",
        Unit::M => "10, 3,5 m or 12 ft",
        Unit::Deg => "65.5, 65,5 deg or 17 deg 20'",
        Unit::N => "1.5 or 1.5 N",
        Unit::G => "240 g or 0.24 kg",
        Unit::Mpa => "240 or 240 MPa",
        Unit::S => "1.2 or 1.2 s",
        Unit::Mm2 => "12.5",
        Unit::One => "1.8",
        Unit::Percent => "80 or 80 %",
        Unit::Turns => "3",
        Unit::Stops => "0.5",
        Unit::K => "20 or 20 K",
        Unit::Nmm => "300, 300 Nmm or 0.3 Nm",
    }
}

/// Reads `text` as a value of `unit`: mm for lengths, degrees for angles.
///
/// # Errors
/// [`QuantityError`] names the piece that was not understood and shows a right one.
///
/// ```
/// use flangewright::document::parse_quantity;
/// use flangewright::mount::Unit;
/// assert!((parse_quantity("0.690\"", Unit::Mm).unwrap() - 17.526).abs() < 1e-12);
/// assert!((parse_quantity("17 deg 20'", Unit::Deg).unwrap() - 17.333_333_333_333).abs() < 1e-9);
/// assert!(parse_quantity("1.234,5", Unit::Mm).is_err());
/// ```
pub fn parse_quantity(text: &str, unit: Unit) -> Result<f64, QuantityError> {
    let clean: String = text
        .trim()
        .chars()
        .map(|c| match c {
            '\u{2212}' | '–' => '-',
            '′' | '’' => '\'',
            '″' | '”' => '"',
            '\u{a0}' | '\u{202f}' => ' ',
            other => other,
        })
        .collect();
    if clean.is_empty() {
        return Err(QuantityError::Empty {
            example: example(unit),
        });
    }
    if clean.len() > 64 {
        let piece: String = clean.chars().take(20).collect();
        return Err(QuantityError::NotUnderstood {
            piece: format!("{piece}…"),
            text: piece,
            example: example(unit),
        });
    }
    let (sign, body) = clean
        .strip_prefix('-')
        .map_or((1.0, clean.as_str()), |rest| (-1.0, rest));
    let pieces = split(body.trim_start_matches('+').trim(), &clean, unit)?;
    Ok(sign * sum(&pieces, &clean, unit)?)
}

/// A number and the unit behind it.
struct Piece {
    number: f64,
    unit: String,
}

fn split(body: &str, whole: &str, unit: Unit) -> Result<Vec<Piece>, QuantityError> {
    let wrong = |piece: &str| QuantityError::NotUnderstood {
        piece: piece.to_owned(),
        text: whole.to_owned(),
        example: example(unit),
    };
    let mut pieces = Vec::new();
    let mut rest = body.trim();
    while !rest.is_empty() {
        let length = rest
            .find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '/')))
            .unwrap_or(rest.len());
        let (digits, after) = rest.split_at(length);
        if digits.is_empty() {
            return Err(wrong(rest));
        }
        let number = number(digits, whole, unit)?;
        let after = after.trim_start();
        let unit_length = after
            .find(|c: char| c.is_ascii_digit() || c.is_whitespace() || matches!(c, '.' | ',' | '-'))
            .unwrap_or(after.len());
        let (unit_text, next) = after.split_at(unit_length);
        pieces.push(Piece {
            number,
            unit: unit_text.to_lowercase(),
        });
        rest = next.trim_start();
    }
    if pieces.is_empty() {
        Err(wrong(body))
    } else {
        Ok(pieces)
    }
}

fn number(digits: &str, whole: &str, unit: Unit) -> Result<f64, QuantityError> {
    if digits.contains('.') && digits.contains(',') {
        return Err(QuantityError::BothSeparators {
            text: whole.to_owned(),
        });
    }
    let wrong = || QuantityError::NotUnderstood {
        piece: digits.to_owned(),
        text: whole.to_owned(),
        example: example(unit),
    };
    let plain = digits.replace(',', ".");
    let value = match plain.split_once('/') {
        Some((above, below)) => {
            let above: f64 = above.parse().map_err(|_| wrong())?;
            let below: f64 = below.parse().map_err(|_| wrong())?;
            above / below
        }
        None => plain.parse().map_err(|_| wrong())?,
    };
    if f64::is_finite(value) {
        Ok(value)
    } else {
        Err(wrong())
    }
}

fn sum(pieces: &[Piece], whole: &str, unit: Unit) -> Result<f64, QuantityError> {
    let mut total = 0.0;
    for (index, piece) in pieces.iter().enumerate() {
        // "1 1/2 in": the whole number takes the unit of the fraction behind it.
        let next_unit = pieces.get(index + 1).map(|next| next.unit.as_str());
        let unit_text = match (piece.unit.as_str(), next_unit) {
            ("", Some(next)) if whole.contains('/') => next,
            ("", Some(_)) => {
                return Err(QuantityError::NotUnderstood {
                    piece: whole.to_owned(),
                    text: whole.to_owned(),
                    example: example(unit),
                });
            }
            (own, _) => own,
        };
        let factor = factor(unit_text, unit).ok_or_else(|| QuantityError::WrongUnit {
            unit: unit_text.to_owned(),
            example: example(unit),
        })?;
        total += piece.number * factor;
    }
    Ok(total)
}

/// What one of the typed unit is in the stored unit.
fn factor(typed: &str, unit: Unit) -> Option<f64> {
    // What is shown can be typed: every unit takes the sign that stands behind its numbers.
    if typed.is_empty() || typed == unit.sign().to_lowercase() {
        return Some(1.0);
    }
    match unit {
        Unit::Mm => match typed {
            "mm" => Some(1.0),
            "cm" => Some(10.0),
            "m" => Some(1000.0),
            "um" | "µm" | "μm" => Some(0.001),
            "in" | "inch" | "inches" | "\"" | "''" => Some(25.4),
            _ => None,
        },
        Unit::M => match typed {
            "m" => Some(1.0),
            "mm" => Some(0.001),
            "cm" => Some(0.01),
            "km" => Some(1000.0),
            "ft" | "foot" | "feet" | "'" => Some(0.3048),
            "in" | "inch" | "inches" | "\"" | "''" => Some(0.0254),
            _ => None,
        },
        Unit::Um => match typed {
            "um" | "µm" | "μm" => Some(1.0),
            "mm" => Some(1000.0),
            _ => None,
        },
        Unit::Deg => match typed {
            "deg" | "°" | "degree" | "degrees" => Some(1.0),
            "'" | "min" => Some(1.0 / 60.0),
            "\"" | "''" | "sec" => Some(1.0 / 3600.0),
            _ => None,
        },
        Unit::N => match typed {
            "n" => Some(1.0),
            "kgf" => Some(9.806_65),
            _ => None,
        },
        Unit::G => match typed {
            "g" => Some(1.0),
            "kg" => Some(1000.0),
            "oz" => Some(28.349_523_125),
            "lb" => Some(453.592_37),
            _ => None,
        },
        Unit::Mpa => match typed {
            "mpa" | "n/mm2" => Some(1.0),
            _ => None,
        },
        Unit::S => match typed {
            "s" | "sec" => Some(1.0),
            _ => None,
        },
        Unit::Percent => match typed {
            "%" => Some(1.0),
            _ => None,
        },
        Unit::K => match typed {
            "k" => Some(1.0),
            _ => None,
        },
        Unit::Nmm => match typed {
            "nmm" => Some(1.0),
            "nm" => Some(1000.0),
            _ => None,
        },
        Unit::Mm2 | Unit::One | Unit::Turns | Unit::Stops => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(text: &str) -> f64 {
        parse_quantity(text, Unit::Mm).unwrap()
    }

    #[test]
    fn lengths_with_both_decimal_signs_and_units() {
        assert!((mm("2,5") - 2.5).abs() < 1e-15);
        assert!((mm(" -0.03 mm") + 0.03).abs() < 1e-15);
        assert!((mm("\u{2212}1") + 1.0).abs() < 1e-15);
        assert!((mm("0.690 in") - 17.526).abs() < 1e-12);
        assert!((mm("1 1/2 in") - 38.1).abs() < 1e-12);
        assert!((mm("1/2\"") - 12.7).abs() < 1e-12);
        assert!((mm("15 µm") - 0.015).abs() < 1e-15);
    }

    #[test]
    fn distances_in_metres_and_feet() {
        let metres = |text| parse_quantity(text, Unit::M).unwrap();
        assert!((metres("10") - 10.0).abs() < 1e-12 && (metres("3,5 m") - 3.5).abs() < 1e-12);
        assert!((metres("850 mm") - 0.85).abs() < 1e-12);
        // The foot of 1959 is 0.3048 m.
        assert!((metres("12 ft") - 3.6576).abs() < 1e-12);
        assert!((metres("1' 6\"") - 0.4572).abs() < 1e-12);
    }

    #[test]
    fn what_is_shown_of_a_value_can_be_typed_back() {
        for unit in [
            Unit::Mm,
            Unit::M,
            Unit::Um,
            Unit::Deg,
            Unit::N,
            Unit::G,
            Unit::Mpa,
            Unit::S,
            Unit::Mm2,
            Unit::One,
            Unit::Percent,
            Unit::Turns,
            Unit::Stops,
            Unit::K,
            Unit::Nmm,
        ] {
            let shown = unit.show(12.5);
            assert_eq!(parse_quantity(&shown, unit), Ok(12.5), "{shown}");
        }
    }

    #[test]
    fn angles_with_minutes_and_seconds() {
        let angle = parse_quantity("-17 deg 20' 30\"", Unit::Deg).unwrap();
        assert!((angle + 17.0 + 20.5 / 60.0).abs() < 1e-12);
        assert!((parse_quantity("65,5°", Unit::Deg).unwrap() - 65.5).abs() < 1e-15);
    }

    #[test]
    fn what_cannot_be_meant_is_refused_by_name() {
        assert_eq!(
            parse_quantity("1.234,5", Unit::Mm),
            Err(QuantityError::BothSeparators {
                text: "1.234,5".into()
            })
        );
        for text in [
            "",
            "  ",
            "mm",
            "NaN",
            "inf",
            "1e5",
            "1..2",
            "3 furlong",
            "1/0",
            "4 5",
            "--3",
            "5 deg",
        ] {
            assert!(parse_quantity(text, Unit::Mm).is_err(), "{text}");
        }
        let message = parse_quantity("3 furlong", Unit::Mm)
            .unwrap_err()
            .to_string();
        assert!(
            message.contains("furlong") && message.contains("0.690 in"),
            "{message}"
        );
    }

    #[test]
    fn a_thousand_broken_texts_never_panic() {
        let signs: Vec<char> = "0123456789.,/'\"° -+medginµ−″x".chars().collect();
        let mut state = 7_u64;
        for _ in 0..1000 {
            let text: String = (0..9)
                .filter_map(|_| {
                    state = state
                        .wrapping_mul(6_364_136_223_846_793_005)
                        .wrapping_add(1);
                    signs
                        .get(usize::try_from((state >> 33) % signs.len() as u64).unwrap())
                        .copied()
                })
                .collect();
            if let Ok(value) = parse_quantity(&text, Unit::Mm) {
                assert!(value.is_finite(), "{text}");
            }
        }
    }
}
