//! Nominal diameter of a thread as it is written: millimetres, inches, fractions, numbered sizes.

use std::fmt;

/// Millimetres in an inch, exact (ISO 1:2002 and the 1959 agreement behind it).
pub(super) const MM_PER_INCH: f64 = 25.4;

/// A nominal diameter, kept in the unit it is named by, so that 5/8 stays 5/8.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Nominal {
    /// Millimetres.
    Millimetres(f64),
    /// Inches.
    Inches(f64),
}

/// Numbered sizes of ASME B1.1 with the threads per inch of their coarse, fine and extra-fine series
/// (from memory): only these read as a numbered size, since 1-32 UN is one inch.
const NUMBERED: [(u8, &[f64]); 10] = [
    (0, &[80.0]),
    (1, &[64.0, 72.0]),
    (2, &[56.0, 64.0]),
    (3, &[48.0, 56.0]),
    (4, &[40.0, 48.0]),
    (5, &[40.0, 44.0]),
    (6, &[32.0, 40.0]),
    (8, &[32.0, 36.0]),
    (10, &[24.0, 32.0]),
    (12, &[24.0, 28.0, 32.0]),
];

/// Diameter of a numbered size in inches: 0.060 + 0.013 n (ASME B1.1). Worked in whole thousandths, so that
/// number 10 is the same value as a typed 0.190.
pub(super) fn numbered_size_inch(number: u8) -> f64 {
    (60.0 + 13.0 * f64::from(number)) / 1000.0
}

/// The numbered size that a whole number stands for with these threads per inch, if it does.
pub(super) fn numbered_size(value: f64, tpi: f64) -> Option<u8> {
    NUMBERED
        .iter()
        .find(|(number, pitches)| same(f64::from(*number), value) && has(pitches, tpi))
        .map(|(number, _)| *number)
}

/// Whether a numbered size of this number exists at all.
pub(super) fn is_numbered_size(value: f64) -> Option<u8> {
    NUMBERED
        .iter()
        .map(|(number, _)| *number)
        .find(|number| same(f64::from(*number), value))
}

fn has(pitches: &[f64], tpi: f64) -> bool {
    pitches.iter().any(|listed| same(*listed, tpi))
}

/// Equal but for the last bits of a decimal number.
fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

impl Nominal {
    /// The diameter in mm.
    #[must_use]
    pub fn mm(self) -> f64 {
        match self {
            Self::Millimetres(mm) => mm,
            Self::Inches(inch) => inch * MM_PER_INCH,
        }
    }

    /// The diameter in inches.
    #[must_use]
    pub fn inch(self) -> f64 {
        match self {
            Self::Millimetres(mm) => mm / MM_PER_INCH,
            Self::Inches(inch) => inch,
        }
    }

    /// The same diameter in inches where it is a whole number of sixty-fourths, so that 25.4 mm and 1 in are
    /// one thread and not two. Inches that are thousandths but for their last bits are those thousandths, so that a
    /// numbered size is one thread however it is written.
    pub(super) fn in_inches_if_whole(self) -> Self {
        if let Some(whole) = whole_parts(self.inch(), 64.0) {
            return Self::Inches(whole / 64.0);
        }
        match self {
            Self::Inches(inch) => {
                let whole = whole_parts(inch, 1000.0);
                Self::Inches(whole.map_or(inch, |whole| whole / 1000.0))
            }
            Self::Millimetres(_) => self,
        }
    }

    /// How a unified designation with these threads per inch writes this diameter.
    pub(super) fn unified_text(self, tpi: f64) -> String {
        let inch = match self {
            Self::Millimetres(mm) => return format!("{mm} mm"),
            Self::Inches(inch) => inch,
        };
        let by_number = NUMBERED
            .iter()
            .find(|(number, pitches)| is_that_size(*number, inch) && has(pitches, tpi));
        if let Some((number, _)) = by_number {
            number.to_string()
        } else if numbered_size(inch, tpi).is_some() {
            // Written bare, this one would be read back as a numbered size.
            self.to_string()
        } else {
            inch_text(inch)
        }
    }
}

impl fmt::Display for Nominal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Millimetres(mm) => write!(f, "{mm}"),
            Self::Inches(inch) => write!(f, "{} in", inch_text(*inch)),
        }
    }
}

/// Whether inches are those of a numbered size, judged by thousandths as where a thread is made.
fn is_that_size(number: u8, inch: f64) -> bool {
    same(numbered_size_inch(number) * 1000.0, inch * 1000.0)
}

/// How many parts of an inch these are, where they are whole but for their last bits.
fn whole_parts(inch: f64, parts: f64) -> Option<f64> {
    let whole = (inch * parts).round();
    same(inch * parts, whole).then_some(whole)
}

/// Inches as the trade writes them: whole, fraction down to 64ths, or decimal.
fn inch_text(inch: f64) -> String {
    // Judged by sixty-fourths as where a thread is made: a fraction is written only for what is read back from it.
    if whole_parts(inch, 64.0).is_none() {
        return format!("{inch}");
    }
    for denominator in [1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 64.0] {
        let numerator = inch * denominator;
        if !same(numerator, numerator.round()) {
            continue;
        }
        let whole = inch.floor();
        let rest = (numerator - whole * denominator).round();
        return match (whole > 0.0, rest > 0.0) {
            (true, true) => format!("{whole} {rest}/{denominator}"),
            (false, true) => format!("{rest}/{denominator}"),
            (_, false) => format!("{whole}"),
        };
    }
    format!("{inch}")
}

#[cfg(test)]
mod tests {
    use crate::standards::Thread;

    /// Found by spoiling designations: a size within the last bits of another was written as that other and read back
    /// as another thread.
    #[test]
    fn a_size_that_is_another_but_for_its_last_bits_is_that_one() {
        for typed in [
            "0.75000000013-12 UNF",
            "0.75000000000013-12 UNF",
            "0.19000000000013-24 UNC",
            "0.19000000010013-24 UNC",
            "0.3333333333333-20 UN",
        ] {
            let thread: Thread = typed.parse().unwrap();
            let written = thread.to_string();
            assert_eq!(
                written.parse::<Thread>().unwrap(),
                thread,
                "{typed}: {written}"
            );
        }
        let tenth: Thread = "0.19000000000013-24 UNC".parse().unwrap();
        assert_eq!(tenth, "10-24 UNC".parse().unwrap());
    }
}
