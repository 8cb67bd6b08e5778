//! Areas that carry load in a thread: shear of the flanks, and the tensile stress area.
//!
//! FED-STD-H28/2B table II.B.1 (ASME B1.1 appendix B has the same), formulas (1b), (2a), (3), (4a), (5);
//! written with the flank angle so that they also hold for the Whitworth form.

use std::f64::consts::PI;

use super::limits::ThreadLimits;
use super::thread::{Thread, ThreadForm};

/// Shear areas of a pair of threads, each in mm2 for every mm of engagement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShearAreas {
    /// Internal thread, sheared at the crest of the external one.
    pub internal_mm2_per_mm: f64,
    /// External thread, sheared at the crest of the internal one.
    pub external_mm2_per_mm: f64,
}

/// Least shear areas of two threads at their limits of size (formulas 2a and 4a); never negative.
///
/// `None` where a limit that it needs is not set, as for the Whitworth form: see [`simplified_shear_areas`].
#[must_use]
pub fn least_shear_areas(
    internal: &ThreadLimits,
    external: &ThreadLimits,
    pitch_mm: f64,
    half_angle_deg: f64,
) -> Option<ShearAreas> {
    let tangent = half_angle_deg.to_radians().tan();
    let per_mm = |shear_diameter: f64, overlap: f64| {
        (PI * shear_diameter / pitch_mm * (pitch_mm / 2.0 + overlap * tangent)).max(0.0)
    };
    let (internal_pitch_max, internal_minor_max) =
        (internal.pitch_diameter_max?, internal.minor_max?);
    let (external_major_min, external_pitch_min) =
        (external.major_min?, external.pitch_diameter_min?);
    Some(ShearAreas {
        internal_mm2_per_mm: per_mm(external_major_min, external_major_min - internal_pitch_max),
        external_mm2_per_mm: per_mm(internal_minor_max, external_pitch_min - internal_minor_max),
    })
}

/// Rough shear areas from the basic pitch diameter in mm (formulas 3 and 5): 0.75 and 0.625 of its
/// circumference for every mm of engagement.
#[must_use]
pub fn simplified_shear_areas(pitch_diameter_mm: f64) -> ShearAreas {
    ShearAreas {
        internal_mm2_per_mm: 0.75 * PI * pitch_diameter_mm,
        external_mm2_per_mm: 0.625 * PI * pitch_diameter_mm,
    }
}

/// Tensile stress area in mm2: metric threads by ISO 898-1, from the mean of d2 and d3; unified threads by
/// FED-STD-H28/2B formula (1b), d - 9 sqrt(3)/16 P. `None` for the Whitworth form, which neither covers.
#[must_use]
pub fn tensile_stress_area_mm2(thread: &Thread) -> Option<f64> {
    let profile = thread.basic();
    let diameter_mm = match thread.form() {
        ThreadForm::Metric => {
            let rounded_minor = profile.major_diameter - 2.0 * profile.external_depth;
            f64::midpoint(profile.pitch_diameter, rounded_minor)
        }
        ThreadForm::Unified { .. } => {
            profile.major_diameter - 9.0 * 3f64.sqrt() / 16.0 * thread.pitch_mm()
        }
        ThreadForm::Whitworth => return None,
    };
    Some(PI / 4.0 * diameter_mm * diameter_mm)
}
