//! Basic profile of a thread of any form.

use super::iso_thread;
use super::thread::{Thread, ThreadForm};
use super::whitworth_thread;

/// Basic profile of a thread, mm, not rounded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BasicProfile {
    /// Major diameter, mm.
    pub major_diameter: f64,
    /// Pitch diameter, mm.
    pub pitch_diameter: f64,
    /// Minor diameter, mm.
    pub minor_diameter: f64,
    /// Height of the fundamental triangle H, mm.
    pub triangle_height: f64,
    /// Depth of the internal thread, from minor to major diameter, mm: 5/8 H, or 2/3 H of the Whitworth form.
    pub internal_depth: f64,
    /// Depth of the external thread down to the rounded root, mm: 17/24 H, or 2/3 H of the Whitworth form.
    pub external_depth: f64,
    /// Radius of the external root, mm: H/6 of the design profile, or the Whitworth radius.
    pub root_radius: f64,
}

impl Thread {
    /// Basic profile, mm (ISO 68-1; ASME B1.1 has the same; Whitworth form Machinery's Handbook 31 p. 2087).
    #[must_use]
    pub fn basic(&self) -> BasicProfile {
        let (nominal, pitch) = (self.nominal_mm(), self.pitch_mm());
        match self.form() {
            ThreadForm::Metric | ThreadForm::Unified { .. } => BasicProfile {
                major_diameter: nominal,
                pitch_diameter: iso_thread::basic_pitch_diameter_mm(nominal, pitch),
                minor_diameter: iso_thread::basic_minor_mm(nominal, pitch),
                triangle_height: iso_thread::TRIANGLE_HEIGHT * pitch,
                internal_depth: 5.0 / 8.0 * iso_thread::TRIANGLE_HEIGHT * pitch,
                external_depth: iso_thread::rounded_root_depth_mm(pitch),
                root_radius: iso_thread::TRIANGLE_HEIGHT / 6.0 * pitch,
            },
            ThreadForm::Whitworth => BasicProfile {
                major_diameter: nominal,
                pitch_diameter: nominal - whitworth_thread::DEPTH * pitch,
                minor_diameter: nominal - 2.0 * whitworth_thread::DEPTH * pitch,
                triangle_height: whitworth_thread::TRIANGLE_HEIGHT * pitch,
                internal_depth: whitworth_thread::DEPTH * pitch,
                external_depth: whitworth_thread::DEPTH * pitch,
                root_radius: whitworth_thread::RADIUS * pitch,
            },
        }
    }
}
