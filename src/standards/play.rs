//! Play between two threads: axial float, radial freedom, tilt, and what a shim does to the clocking.
//!
//! Worked out from the flank geometry (own derivation); half angles are 30 degrees for ISO and unified, 27.5
//! for the Whitworth form.

use std::f64::consts::PI;

use super::limits::ThreadLimits;

/// Least and greatest clearance of the pitch diameters, mm on diameter; the least may be negative.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PitchClearance {
    /// Internal at its smallest on external at its largest, mm.
    pub min_mm: f64,
    /// Internal at its largest on external at its smallest, mm.
    pub max_mm: f64,
}

/// Clearance of the pitch diameters of two threads at their limits; `None` where one sets no limit.
#[must_use]
pub fn pitch_clearance(internal: &ThreadLimits, external: &ThreadLimits) -> Option<PitchClearance> {
    Some(PitchClearance {
        min_mm: internal.pitch_diameter_min? - external.pitch_diameter_max?,
        max_mm: internal.pitch_diameter_max? - external.pitch_diameter_min?,
    })
}

/// Whole axial float in mm, flank to flank, of a clearance on diameter in mm.
///
/// ```
/// use flangewright::standards::play::axial_float_mm;
/// assert!((axial_float_mm(0.026, 30.0) - 0.015).abs() < 5e-4); // M42x1-6H/6g at its tightest
/// ```
#[must_use]
pub fn axial_float_mm(clearance_mm: f64, half_angle_deg: f64) -> f64 {
    clearance_mm * tangent(half_angle_deg)
}

/// How far the axes can stand apart, mm, when the external thread sits `offset_mm` from the middle of its
/// axial float; nothing is left when it is drawn hard onto one flank.
#[must_use]
pub fn radial_freedom_mm(clearance_mm: f64, offset_mm: f64, half_angle_deg: f64) -> f64 {
    (clearance_mm / 2.0 - offset_mm.abs() / tangent(half_angle_deg)).max(0.0)
}

/// Greatest tilt in degrees that the play allows over a length of engagement in mm, if no faces seat.
#[must_use]
pub fn tilt_deg(
    clearance_mm: f64,
    pitch_diameter_mm: f64,
    length_mm: f64,
    half_angle_deg: f64,
) -> f64 {
    let tangent = tangent(half_angle_deg);
    (clearance_mm * tangent / (pitch_diameter_mm + length_mm * tangent)).to_degrees()
}

/// What an error of pitch over the engagement, mm, adds to the pitch diameter in effect, mm (text of ISO
/// 965-1 and BS 3643, from memory).
#[must_use]
pub fn virtual_pitch_diameter_mm(lead_error_mm: f64, half_angle_deg: f64) -> f64 {
    lead_error_mm.abs() / tangent(half_angle_deg)
}

/// Lead angle in degrees at a diameter in mm, single start.
#[must_use]
pub fn lead_angle_deg(pitch_diameter_mm: f64, pitch_mm: f64) -> f64 {
    (pitch_mm / (PI * pitch_diameter_mm)).atan().to_degrees()
}

/// Degrees by which the stop of a screwed-up lens turns when its seat moves by `shift_mm`.
#[must_use]
pub fn clocking_shift_deg(shift_mm: f64, pitch_mm: f64) -> f64 {
    360.0 * shift_mm / pitch_mm
}

fn tangent(half_angle_deg: f64) -> f64 {
    half_angle_deg.to_radians().tan()
}
