//! ISO metric threads: basic profile (ISO 68-1) and limits of size (ISO 965-1).
//!
//! Basic D2 and D1 are rounded to 0.001 mm first and whole micrometres added: so come out the limits that
//! handbooks print (Machinery's Handbook 27 p. 1794 for the relations).

use super::iso_tolerance::{
    Tolerance, crest_tolerance, fundamental_deviation, pitch_diameter_tolerance,
};
use super::limits::{Basis, Side, ThreadLimits};
use super::preferred::to_micrometre;
use super::thread_class::MetricClass;

/// Half the flank angle, degrees.
pub const HALF_ANGLE_DEG: f64 = 30.0;
/// Height of the fundamental triangle over the pitch, H/P = sqrt(3)/2.
pub const TRIANGLE_HEIGHT: f64 = 0.866_025_403_784_438_6;

const SOURCE: &str = "ISO 965-1 (tables 1 and 3 to 6), profile ISO 68-1";

/// Basic pitch diameter in mm: d - 3/4 H, not rounded.
#[must_use]
pub fn basic_pitch_diameter_mm(nominal_mm: f64, pitch_mm: f64) -> f64 {
    nominal_mm - 0.75 * TRIANGLE_HEIGHT * pitch_mm
}

/// Basic minor diameter in mm: d - 5/4 H, not rounded.
#[must_use]
pub fn basic_minor_mm(nominal_mm: f64, pitch_mm: f64) -> f64 {
    nominal_mm - 1.25 * TRIANGLE_HEIGHT * pitch_mm
}

/// Depth of the external thread with the rounded root of the design profile, mm: 17/24 H.
#[must_use]
pub fn rounded_root_depth_mm(pitch_mm: f64) -> f64 {
    17.0 / 24.0 * TRIANGLE_HEIGHT * pitch_mm
}

/// Limits of size in mm of a metric thread of any nominal diameter and pitch.
///
/// Pairs that the tables do not have are worked out by the formulas of the standard, which allows that for
/// threads outside its list, and the notes say so.
#[must_use]
pub fn limits(nominal_mm: f64, pitch_mm: f64, class: MetricClass) -> ThreadLimits {
    let side = class.side();
    let allowance = fundamental_deviation(class.position(), pitch_mm);
    let pitch_diameter =
        pitch_diameter_tolerance(side, nominal_mm, pitch_mm, class.pitch_diameter_grade());
    let crest = crest_tolerance(side, pitch_mm, class.crest_grade());
    let mut limits = ThreadLimits::empty(side, Basis::Table, SOURCE);
    match side {
        Side::Internal => {
            fill_internal(
                &mut limits,
                nominal_mm,
                pitch_mm,
                [allowance, pitch_diameter, crest],
            );
        }
        Side::External => {
            fill_external(
                &mut limits,
                nominal_mm,
                pitch_mm,
                [allowance, pitch_diameter, crest],
            );
        }
    }
    let (pitch_name, crest_name) = match side {
        Side::Internal => (
            "pitch-diameter tolerance TD2",
            "minor-diameter tolerance TD1",
        ),
        Side::External => (
            "pitch-diameter tolerance Td2",
            "major-diameter tolerance Td",
        ),
    };
    note(&mut limits, "fundamental deviation", allowance);
    note(&mut limits, pitch_name, pitch_diameter);
    note(&mut limits, crest_name, crest);
    limits
}

fn fill_internal(limits: &mut ThreadLimits, nominal_mm: f64, pitch_mm: f64, t: [Tolerance; 3]) {
    let [allowance, pitch_diameter, crest] = t.map(Tolerance::mm);
    let pitch_min = to_micrometre(basic_pitch_diameter_mm(nominal_mm, pitch_mm)) + allowance;
    let minor_min = to_micrometre(basic_minor_mm(nominal_mm, pitch_mm)) + allowance;
    let pitch_max = pitch_min + pitch_diameter;
    let reference = pitch_max + 11.0 / 12.0 * TRIANGLE_HEIGHT * pitch_mm;
    limits.major_min = Some(to_micrometre(nominal_mm + allowance));
    limits.major_max_reference = Some(to_micrometre(reference));
    limits.pitch_diameter_min = Some(to_micrometre(pitch_min));
    limits.pitch_diameter_max = Some(to_micrometre(pitch_max));
    limits.minor_min = Some(to_micrometre(minor_min));
    limits.minor_max = Some(to_micrometre(minor_min + crest));
}

fn fill_external(limits: &mut ThreadLimits, nominal_mm: f64, pitch_mm: f64, t: [Tolerance; 3]) {
    let [allowance, pitch_diameter, crest] = t.map(Tolerance::mm);
    let major_max = nominal_mm - allowance;
    let pitch_max = to_micrometre(basic_pitch_diameter_mm(nominal_mm, pitch_mm)) - allowance;
    let pitch_min = pitch_max - pitch_diameter;
    // From the pitch diameter to the flat root H/2, to the rounded root at its least 0.711325 H.
    let flat_root = 0.5 * TRIANGLE_HEIGHT * pitch_mm;
    let deepest_root = 0.711_325 * TRIANGLE_HEIGHT * pitch_mm;
    limits.major_max = Some(to_micrometre(major_max));
    limits.major_min = Some(to_micrometre(major_max - crest));
    limits.pitch_diameter_max = Some(to_micrometre(pitch_max));
    limits.pitch_diameter_min = Some(to_micrometre(pitch_min));
    limits.minor_max = Some(to_micrometre(pitch_max - flat_root));
    limits.rounded_minor_max = Some(to_micrometre(
        major_max - 2.0 * rounded_root_depth_mm(pitch_mm),
    ));
    limits.rounded_minor_min = Some(to_micrometre(pitch_min - deepest_root));
}

fn note(limits: &mut ThreadLimits, name: &str, tolerance: Tolerance) {
    if tolerance.basis == Basis::Computed {
        limits.basis = Basis::Computed;
        limits.notes.push(format!(
            "{name} {} um is worked out with the formula of ISO 965-1 and rounded to R40: the tables kept here do not have this diameter, pitch and grade; where the standard does, it can differ by one step.",
            tolerance.um
        ));
    }
    if tolerance.left_blank {
        limits.beyond_standard = true;
        limits.notes.push(format!(
            "{name} {} um: the standard leaves this grade out for so fine a pitch; take a finer grade.",
            tolerance.um
        ));
    }
}
