//! Unified threads (ASME B1.1): limits of size of classes 1 to 3.
//!
//! Worked in inches in the manner of ASME B1.30 as Machinery's Handbook 31 shows it in a worked example:
//! pitch to 8 decimals, tolerances to 6 before use, major and pitch diameters half up to 4 decimals before the
//! next is built on them; internal minor diameters in one go, to 3 decimals in classes 1B and 2B. That is the
//! chain which gives the printed limits. Then turned into mm at 25.4 exactly.

use super::limits::{Basis, Side, ThreadLimits};
use super::nominal::MM_PER_INCH;
use super::preferred::half_up;
use super::thread::UnifiedSeries;
use super::thread_class::UnifiedClass;

const SOURCE: &str = "ASME B1.1 (formulas of section 5, rounding of ASME B1.30)";
/// Three quarters of the fundamental triangle over the pitch, to the six decimals that ASME B1.30 works with.
const PITCH_LINE: f64 = 0.649_519;
/// Five quarters of it: flat minor diameter.
const FLAT_ROOT: f64 = 1.082_532;
/// Rounded root of the UNR form.
const ROUNDED_ROOT: f64 = 1.190_785;

/// Length of engagement in inches that the tolerance of a series is based on: the diameter for UNC, UNF and
/// UN of 8 threads per inch and coarser, nine pitches for UNEF, finer UN and UNS (ASME B1.1 section 5).
#[must_use]
pub fn engagement_for_tolerance_inch(series: UnifiedSeries, diameter_inch: f64, tpi: f64) -> f64 {
    match series {
        UnifiedSeries::Unc | UnifiedSeries::Unf => diameter_inch,
        UnifiedSeries::Un if tpi <= 8.0 => diameter_inch,
        UnifiedSeries::Un | UnifiedSeries::Unef | UnifiedSeries::Uns => 9.0 / tpi,
    }
}

/// Limits of size in mm of a unified thread: nominal diameter in inches, threads per inch, series, class.
#[must_use]
pub fn limits(
    diameter_inch: f64,
    tpi: f64,
    series: UnifiedSeries,
    class: UnifiedClass,
) -> ThreadLimits {
    let pitch = decimals(1.0 / tpi, 8);
    let engagement = engagement_for_tolerance_inch(series, diameter_inch, tpi);
    let class_2a = decimals(
        0.0015 * (diameter_inch.cbrt() + engagement.sqrt() + 10.0 * pitch.powf(2.0 / 3.0)),
        6,
    );
    let mut limits = ThreadLimits::empty(class.side(), Basis::Computed, SOURCE);
    match class.side() {
        Side::Internal => internal(&mut limits, diameter_inch, pitch, class.grade(), class_2a),
        Side::External => external(&mut limits, diameter_inch, pitch, class.grade(), class_2a),
    }
    if diameter_inch > 6.0 {
        limits.beyond_standard = true;
        limits
            .notes
            .push("Over 6 in: beyond the tables of ASME B1.1, by its formulas.".to_owned());
    }
    limits
}

fn internal(limits: &mut ThreadLimits, diameter: f64, pitch: f64, grade: u8, class_2a: f64) {
    let pitch_factor = match grade {
        1 => 1.95,
        3 => 0.975,
        _ => 1.3,
    };
    let minor_decimals = if grade == 3 { 4 } else { 3 };
    let pitch_min = decimals(diameter - PITCH_LINE * pitch, 4);
    let minor_min = diameter - FLAT_ROOT * pitch;
    let minor_tolerance = decimals(minor_tolerance_inch(diameter, pitch, grade), 6);
    limits.major_min = Some(mm(diameter, 4));
    limits.pitch_diameter_min = Some(mm(pitch_min, 4));
    limits.pitch_diameter_max = Some(mm(pitch_min + decimals(pitch_factor * class_2a, 6), 4));
    // Three decimals in every class; 3B prints them as four (from memory).
    limits.minor_min = Some(mm(minor_min, 3));
    limits.minor_max = Some(mm(minor_min + minor_tolerance, minor_decimals));
}

fn external(limits: &mut ThreadLimits, diameter: f64, pitch: f64, grade: u8, class_2a: f64) {
    let (pitch_factor, major_factor, allowance) = match grade {
        1 => (1.5, 0.090, 0.3 * class_2a),
        3 => (0.75, 0.060, 0.0),
        _ => (1.0, 0.060, 0.3 * class_2a),
    };
    let major_tolerance = decimals(major_factor * pitch.powf(2.0 / 3.0), 6);
    let major_max = decimals(diameter - allowance, 4);
    let pitch_max = decimals(major_max - PITCH_LINE * pitch, 4);
    limits.major_max = Some(mm(major_max, 4));
    limits.major_min = Some(mm(major_max - major_tolerance, 4));
    limits.pitch_diameter_max = Some(mm(pitch_max, 4));
    limits.pitch_diameter_min = Some(mm(pitch_max - decimals(pitch_factor * class_2a, 6), 4));
    limits.minor_max = Some(mm(major_max - FLAT_ROOT * pitch, 4));
    limits.rounded_minor_max = Some(mm(major_max - ROUNDED_ROOT * pitch, 4));
}

/// Tolerance of the internal minor diameter, inches. From 1/4 in up classes 1B and 2B: 0.25 P - 0.4 P^2, or
/// 0.15 P at 4 threads per inch and coarser (the latter from memory). Smaller threads and class 3B:
/// 0.05 P^(2/3) + 0.03 P/D - 0.002 between bounds (from memory; agrees with printed rows).
fn minor_tolerance_inch(diameter: f64, pitch: f64, grade: u8) -> f64 {
    let general = if pitch >= 0.25 - 1e-9 {
        0.15 * pitch
    } else {
        0.25 * pitch - 0.4 * pitch * pitch
    };
    if grade != 3 && diameter >= 0.25 - 1e-9 {
        return general;
    }
    let close = 0.05 * pitch.powf(2.0 / 3.0) + 0.03 * pitch / diameter - 0.002;
    let least = match grade {
        3 if pitch > 1.0 / 12.5 => 0.12 * pitch,
        3 => 0.23 * pitch - 1.5 * pitch * pitch,
        _ => general,
    };
    close.max(least).min(0.394 * pitch)
}

/// Rounds half up at so many decimals.
fn decimals(value: f64, places: i32) -> f64 {
    let scale = 10f64.powi(places);
    half_up(value * scale) / scale
}

/// Inches, rounded as printed, in mm.
fn mm(inch: f64, places: i32) -> f64 {
    decimals(inch, places) * MM_PER_INCH
}
