//! Target: numbers with units as a person types them.

use flangewright::document::parse_quantity;
use flangewright::mount::Unit;

use crate::campaign::campaign;
use crate::outcome::Outcome;
use crate::spoil::spoilt_text;

const UNITS: [Unit; 15] = [
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
];

/// What the reader takes notice of.
const WORDS: [&str; 40] = [
    "mm", "in", "\"", "″", "'", "′", "deg", "°", "min", "um", "µm", "N", "kN", "g", "kg", "MPa",
    "s", "%", "K", "Nm", "Nmm", "N·mm", "mm²", "turns", "stops", "thou", "+", "-", "−", "–", ".",
    ",", "/", " ", "\u{a0}", "1/2", "25.4", "60", "0,5", "1/0",
];

fn corpus() -> Vec<String> {
    include_str!("corpus/quantities.txt")
        .lines()
        .map(str::to_owned)
        .collect()
}

fn try_one(text: &str) -> Outcome {
    let mut taken = 0_u32;
    let mut refused = String::new();
    for (place, unit) in UNITS.into_iter().enumerate() {
        match parse_quantity(text, unit) {
            Ok(value) => {
                assert!(value.is_finite(), "{value} {unit:?}");
                taken |= 1 << place;
                // What is shown of it is taken again, as far as it is shown.
                let shown = unit.show(value);
                if shown.len() < 40 {
                    let again = parse_quantity(&shown, unit)
                        .unwrap_or_else(|error| panic!("{shown}: {error}"));
                    let step = 0.5 * 0.1_f64.powf(unit.decimals() as f64);
                    let off = (again - value).abs();
                    assert!(
                        off <= step * 1.001 + value.abs() * 1e-12,
                        "{text:?} is {value}, shown {shown}, read {again}"
                    );
                }
            }
            Err(error) => {
                if refused.is_empty() {
                    refused = error.to_string();
                }
                assert!(error.to_string().contains("type"), "{error}");
            }
        }
    }
    Outcome::of_message(&taken.to_string(), &refused, text)
}

#[test]
fn quantities() {
    campaign(
        "quantities",
        corpus(),
        |dice, pool| spoilt_text(dice, pool, &WORDS, 200),
        |text| try_one(text),
        |text| format!("{text:?}"),
    );
}
