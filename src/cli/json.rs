//! Numbers and units as the JSON of the command line writes them.

use flangewright::mount::Unit;

/// A number without the noise of binary fractions: a millionth of the unit is kept. `None`, written as null,
/// where there is no finite number.
pub fn clean(value: f64) -> Option<f64> {
    const STEPS: f64 = 1e6;
    if !value.is_finite() {
        return None;
    }
    let rounded = (value * STEPS).round() / STEPS;
    // Of a number past 1e300 no step is left to round to.
    let kept = if rounded.is_finite() { rounded } else { value };
    // Adding zero turns -0 into 0.
    Some(kept + 0.0)
}

/// The same of a number that may be missing.
pub fn clean_option(value: Option<f64>) -> Option<f64> {
    value.and_then(clean)
}

/// The name of a unit in plain letters; none for a plain number.
pub const fn unit_name(unit: Unit) -> &'static str {
    match unit {
        Unit::Mm => "mm",
        Unit::M => "m",
        Unit::Um => "um",
        Unit::Deg => "deg",
        Unit::N => "N",
        Unit::G => "g",
        Unit::Mpa => "MPa",
        Unit::S => "s",
        Unit::Mm2 => "mm2",
        Unit::One => "",
        Unit::Percent => "%",
        Unit::Turns => "turns",
        Unit::Stops => "stops",
        Unit::K => "K",
        Unit::Nmm => "Nmm",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn noise_is_cut_and_what_is_no_number_is_null() {
        assert_eq!(clean(45.46 - 44.0), Some(1.46));
        assert_eq!(clean(-1e-9).map(f64::to_bits), Some(0.0_f64.to_bits()));
        assert_eq!(clean(1e305), Some(1e305));
        assert_eq!(clean(f64::NAN), None);
        assert_eq!(clean(f64::INFINITY), None);
    }
}
