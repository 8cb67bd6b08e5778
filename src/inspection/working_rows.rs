//! The working of a verdict, row by row, as page and sheets show it.

use super::correction::Corrected;
use super::doubt::Doubt;
use super::functional_size::FunctionalSize;
use super::infinity_trial::TrialWorked;
use super::judgement::{DEFAULT_RULE, Judgement};
use crate::mount::{Unit, show_number};
use crate::tolerance::{Component, Conformity, ERROR_CAUSE, Limits, STEP_CAUSE};

/// The decision rule, in a sentence.
pub const RULE: &str = "ISO 14253-1: the limits drawn in by 1.645 standard uncertainties, so that a size called in is in \
                        with 95 % likelihood; out as far beyond them; between that nothing is proved.";

/// How the expanded uncertainty is made.
const EXPANDED: &str = "each cause by Student's t of its own degrees of freedom, root of the sum of squares; own choice, a \
                        little wider than JCGM 100 G.4";

/// One row of a working.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WorkingRow {
    /// What it is.
    pub name: String,
    /// Its value with its unit.
    pub value: String,
    /// How it comes about.
    pub why: String,
}

fn row(name: &str, value: String, why: impl Into<String>) -> WorkingRow {
    WorkingRow {
        name: name.to_owned(),
        value,
        why: why.into(),
    }
}

/// A figure of uncertainty needs a decimal more than the size.
#[must_use]
pub fn fine(value: f64, unit: Unit) -> String {
    let number = show_number(value, unit.decimals() + 1);
    match unit {
        Unit::Deg => format!("{number}°"),
        Unit::Mm
        | Unit::M
        | Unit::Um
        | Unit::N
        | Unit::G
        | Unit::Mpa
        | Unit::S
        | Unit::Mm2
        | Unit::One
        | Unit::Percent
        | Unit::Turns
        | Unit::Stops
        | Unit::K
        | Unit::Nmm => format!("{number} {}", unit.sign()),
    }
}

/// Every step from the readings to the verdict.
#[must_use]
pub fn working_rows(size: &FunctionalSize, judged: &Judgement) -> Vec<WorkingRow> {
    let unit = size.unit;
    let count = judged.count;
    let mut rows = vec![
        row(
            "mean",
            fine(judged.mean, unit),
            format!("of {count} readings, range {}", fine(judged.range, unit)),
        ),
        row(
            "off nominal",
            fine(judged.mean - size.nominal, unit),
            format!("nominal {}", unit.show(size.nominal)),
        ),
    ];
    rows.extend(judged.causes.iter().map(|cause| cause_row(cause, unit)));
    rows.push(row(
        "standard uncertainty",
        fine(judged.doubt.standard, unit),
        "root of the sum of squares (JCGM 100 5.1.2)",
    ));
    rows.push(row(
        "expanded, 95 %",
        format!("±{}", fine(judged.doubt.expanded, unit)),
        EXPANDED,
    ));
    rows.push(row(
        "guard band",
        fine(judged.guard, unit),
        "1.645 standard uncertainties (ISO 14253-1, by public summaries)",
    ));
    rows.push(match judged.accepted {
        Some(zone) => row(
            "proves in",
            format!(
                "{} to {}",
                fine(zone.low_mm, unit),
                fine(zone.high_mm, unit)
            ),
            "the limits drawn in by the guard band",
        ),
        None => row(
            "proves in",
            "nothing".to_owned(),
            "the two guard bands meet: no reading with this instrument could",
        ),
    });
    rows
}

/// Every step from the settings of a trial to the error of the register.
#[must_use]
pub fn trial_rows(found: &TrialWorked) -> Vec<WorkingRow> {
    let unit = Unit::Mm;
    let said: Vec<String> = found
        .said_mm
        .iter()
        .map(|said| show_number(*said, 3))
        .collect();
    let doubt = Doubt::of(&found.causes);
    let mut rows = vec![
        row(
            "wanted for the object",
            fine(found.wanted_mm, unit),
            "out of the infinity place, f²/(u - f) with u from the principal plane (thin lens, focused as a whole)",
        ),
        row(
            "said by the scale",
            said.join("  "),
            "the same of every setting, mm",
        ),
        row(
            "register error",
            fine(found.error_mm, unit),
            "wanted less said: positive is too thick",
        ),
    ];
    rows.extend(found.causes.iter().map(|cause| cause_row(cause, unit)));
    rows.push(row(
        "standard uncertainty",
        fine(doubt.standard, unit),
        "root of the sum of squares (JCGM 100 5.1.2)",
    ));
    rows.push(row(
        "expanded, 95 %",
        format!("±{}", fine(doubt.expanded, unit)),
        EXPANDED,
    ));
    rows
}

/// How a correction was decided on.
#[must_use]
pub fn correction_rows(corrected: &Corrected) -> Vec<WorkingRow> {
    let unit = Unit::Mm;
    let (measured, limits) = (corrected.measured, corrected.limits);
    let guard = DEFAULT_RULE.guard_mm(measured.doubt.standard);
    let allowed = |low: f64, high: f64| format!("{} to {}", fine(low, unit), fine(high, unit));
    vec![
        row(
            "error found",
            format!(
                "{} ± {}",
                fine(measured.error_mm, unit),
                fine(measured.doubt.expanded, unit)
            ),
            "positive: ring too thick; 95 %",
        ),
        row(
            "allowed",
            allowed(limits.low_mm, limits.high_mm),
            "tolerance of the seat height, or of infinity and scale",
        ),
        match limits.acceptance(guard) {
            Some(zone) => row(
                "left as it is",
                allowed(zone.low_mm, zone.high_mm),
                format!(
                    "drawn in by the guard band of {} (ISO 14253-1)",
                    fine(guard, unit)
                ),
            ),
            None => row(
                "left as it is",
                "nothing".to_owned(),
                format!(
                    "two guard bands of {} meet (ISO 14253-1)",
                    fine(guard, unit)
                ),
            ),
        },
        row(
            "expected then",
            format!(
                "{} ± {}",
                fine(corrected.proposal.expected_mm, unit),
                fine(corrected.proposal.doubt.expanded, unit)
            ),
            "error less the cut; a cut comes out within 0.005 mm, a shim goes by hundredths (common practice, no source)",
        ),
    ]
}

fn cause_row(cause: &Component, unit: Unit) -> WorkingRow {
    let why = if cause.dof.is_finite() {
        format!(
            "standard deviation over the root of the count, {:.0} degrees of freedom (JCGM 100 4.2.3)",
            cause.dof
        )
    } else {
        format!(
            "limits of ±{} over √3 (JCGM 100 4.3.7)",
            fine(cause.standard_uncertainty * 3.0_f64.sqrt(), unit)
        )
    };
    row(&cause.name, fine(effect(cause), unit), why)
}

/// The permissible error with which half of the tolerance would be left to be proved in: a guard band of `w / 4`, 1.645
/// times the standard uncertainty, of which causes that have nothing to do with the instrument take their part. None
/// for limits that do not close, or where those causes take more than there is.
#[must_use]
pub fn wanted_error(limits: Limits, causes: &[Component]) -> Option<f64> {
    let standard = (limits.high_mm - limits.low_mm) / 4.0 / 1.645;
    let others: f64 = causes
        .iter()
        .filter(|cause| ![STEP_CAUSE, ERROR_CAUSE].contains(&cause.name.as_ref()))
        .map(|cause| effect(cause).powi(2))
        .sum();
    let left = standard * standard - others;
    (left.is_finite() && left > 0.0).then(|| (3.0 * left).sqrt())
}

/// What a cause does to the size.
fn effect(cause: &Component) -> f64 {
    cause.sensitivity * cause.standard_uncertainty
}

/// What would prove more than these readings do; none where they prove the size in or out.
#[must_use]
pub fn advice(size: &FunctionalSize, judged: &Judgement, better: Option<&str>) -> Option<String> {
    match judged.verdict {
        Conformity::Inside | Conformity::Outside => return None,
        Conformity::NotProvable => {}
    }
    if let Some(better) = better {
        return Some(format!("{better} reads it better: measure again with it."));
    }
    // Where the spread is what leaves most open, more readings narrow it; an instrument's own error they do not.
    let worst = judged
        .causes
        .iter()
        .max_by(|a, b| effect(a).total_cmp(&effect(b)));
    if worst.is_some_and(|cause| cause.dof.is_finite()) {
        return Some(
            "Most is left open by the spread of the readings: take more of them.".to_owned(),
        );
    }
    let finer = wanted_error(size.limits, &judged.causes).map_or_else(
        || {
            " Besides, what has nothing to do with the instrument takes more than half of the tolerance already."
                .to_owned()
        },
        |error| {
            format!(
                " One with a permissible error of at most {} and a step to match would leave half of the tolerance to be \
                 proved in.",
                fine(error, size.unit)
            )
        },
    );
    Some(format!(
        "No instrument of the workshop reads it better.{finer}"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{RingKey, SizeOf};
    use crate::inspection::{DEFAULT_RULE, Grip, judge};
    use crate::workshop::Instrument;

    fn seat() -> FunctionalSize {
        FunctionalSize {
            of: SizeOf::Ring(RingKey::SeatHeight),
            label: "Seat height".to_owned(),
            unit: Unit::Mm,
            nominal: 1.46,
            limits: Limits {
                low_mm: 1.44,
                high_mm: 1.48,
            },
            grip: Grip::Depth,
            how: "",
            instrument: None,
        }
    }

    fn tool(permissible_error_mm: f64) -> Instrument {
        Instrument {
            name: "tool".to_owned(),
            permissible_error_mm,
            step_mm: 0.001,
        }
    }

    /// By hand (JCGM 100): s/√5 = 0.00071, 0.004/√3 = 0.00231, together 0.00242, guard 0.00397.
    #[test]
    fn the_working_holds_every_number_of_the_verdict() {
        let size = seat();
        let readings = [1.458, 1.459, 1.460, 1.461, 1.462];
        let judged = judge(&readings, &tool(0.004), &[], size.limits, DEFAULT_RULE).unwrap();
        let rows = working_rows(&size, &judged);
        let value = |name: &str| {
            let found = rows.iter().find(|row| row.name == name);
            found
                .unwrap_or_else(|| panic!("{name}: {rows:?}"))
                .value
                .clone()
        };
        assert_eq!(value("spread of the readings"), "0.0007 mm");
        assert_eq!(value("permissible error of the instrument"), "0.0023 mm");
        assert_eq!(value("standard uncertainty"), "0.0024 mm");
        assert_eq!(value("guard band"), "0.004 mm");
        assert_eq!(value("proves in"), "1.444 mm to 1.476 mm");
        assert_eq!(advice(&size, &judged, None), None);
    }

    #[test]
    fn what_would_prove_it_is_named() {
        let size = seat();
        let judged = judge(
            &[1.46, 1.47, 1.45],
            &tool(0.04),
            &[],
            size.limits,
            DEFAULT_RULE,
        )
        .unwrap();
        assert!(
            advice(&size, &judged, Some("depth micrometer"))
                .unwrap()
                .contains("depth micrometer")
        );
        // 0.04 / 4 = 0.01 = 1.645 a / √3.
        assert!((wanted_error(size.limits, &[]).unwrap() - 0.010_529).abs() < 1e-6);
        let blocks = [Component::within("difference of the blocks", 0.006)];
        // As squares: 0.010529² - 0.006² = 0.008652².
        assert!((wanted_error(size.limits, &blocks).unwrap() - 0.008_652).abs() < 1e-6);
        let coarse = [Component::within("difference of the blocks", 0.02)];
        assert_eq!(wanted_error(size.limits, &coarse), None);
        assert!(
            advice(&size, &judged, None)
                .unwrap()
                .contains("permissible error of at most 0.0033 mm")
        );
        let scattered = judge(
            &[1.45, 1.49, 1.47],
            &tool(0.004),
            &[],
            size.limits,
            DEFAULT_RULE,
        )
        .unwrap();
        assert!(
            advice(&size, &scattered, None)
                .unwrap()
                .contains("take more")
        );
    }
}
