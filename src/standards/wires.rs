//! Pitch diameter over three wires, and over two balls in an internal thread.
//!
//! Relations for a wire resting on both flanks (Machinery's Handbook 31 pp. 2129 to 2131 prints the same for
//! 60 and 55 degrees); the internal ones are their mirror (own derivation).

use super::thread::{Thread, ThreadForm};
use super::whitworth_thread;

/// Sine, cosine and cotangent of a half flank angle.
struct Flank {
    sine: f64,
    cosine: f64,
    cotangent: f64,
}

fn flank(half_angle_deg: f64) -> Flank {
    let (sine, cosine) = half_angle_deg.to_radians().sin_cos();
    Flank {
        sine,
        cosine,
        cotangent: cosine / sine,
    }
}

/// Wire that touches the flanks at the pitch diameter, mm: P / (2 cos a).
#[must_use]
pub fn best_wire_mm(pitch_mm: f64, half_angle_deg: f64) -> f64 {
    pitch_mm / (2.0 * flank(half_angle_deg).cosine)
}

/// Measurement over wires of diameter `wire_mm` for an external pitch diameter, all in mm.
///
/// ```
/// use flangewright::standards::wires::{best_wire_mm, over_wires_mm};
/// let over = over_wires_mm(41.324, 1.0, 30.0, best_wire_mm(1.0, 30.0));
/// assert!((over - 42.190).abs() < 5e-4); // M42x1-6g, largest
/// ```
#[must_use]
pub fn over_wires_mm(
    pitch_diameter_mm: f64,
    pitch_mm: f64,
    half_angle_deg: f64,
    wire_mm: f64,
) -> f64 {
    pitch_diameter_mm + over_pitch_diameter_mm(pitch_mm, half_angle_deg, wire_mm)
}

/// External pitch diameter that a measurement over wires stands for, all in mm.
#[must_use]
pub fn pitch_diameter_from_wires_mm(
    over_mm: f64,
    pitch_mm: f64,
    half_angle_deg: f64,
    wire_mm: f64,
) -> f64 {
    over_mm - over_pitch_diameter_mm(pitch_mm, half_angle_deg, wire_mm)
}

/// What the wires add: w (1 + 1/sin a) - P/2 cot a.
fn over_pitch_diameter_mm(pitch_mm: f64, half_angle_deg: f64, wire_mm: f64) -> f64 {
    let flank = flank(half_angle_deg);
    wire_mm * (1.0 + 1.0 / flank.sine) - pitch_mm / 2.0 * flank.cotangent
}

/// What the slant of the wires by the lead angle adds to the measurement, mm (FED-STD-H28 form, from memory):
/// w/2 tan^2 L cos a cot a. Some hundredths of a micrometre for lens threads.
#[must_use]
pub fn lead_correction_mm(wire_mm: f64, lead_angle_deg: f64, half_angle_deg: f64) -> f64 {
    let flank = flank(half_angle_deg);
    wire_mm / 2.0 * lead_angle_deg.to_radians().tan().powi(2) * flank.cosine * flank.cotangent
}

/// Measurement over the outer ends of two opposed balls of diameter `ball_mm` lying in an internal thread of
/// this pitch diameter, all in mm, as ball-ended inside jaws read it; the half pitch between them left out.
#[must_use]
pub fn over_balls_mm(
    pitch_diameter_mm: f64,
    pitch_mm: f64,
    half_angle_deg: f64,
    ball_mm: f64,
) -> f64 {
    ball_centres_mm(pitch_diameter_mm, pitch_mm, half_angle_deg, ball_mm) + ball_mm
}

/// Gap between the two balls across the same thread, mm, as gauge blocks or a telescopic gauge find it.
#[must_use]
pub fn between_balls_mm(
    pitch_diameter_mm: f64,
    pitch_mm: f64,
    half_angle_deg: f64,
    ball_mm: f64,
) -> f64 {
    ball_centres_mm(pitch_diameter_mm, pitch_mm, half_angle_deg, ball_mm) - ball_mm
}

/// Distance of the ball centres across the internal thread, mm, square to the axis.
#[must_use]
pub fn ball_centres_mm(
    pitch_diameter_mm: f64,
    pitch_mm: f64,
    half_angle_deg: f64,
    ball_mm: f64,
) -> f64 {
    let flank = flank(half_angle_deg);
    pitch_diameter_mm + pitch_mm / 2.0 * flank.cotangent - ball_mm / flank.sine
}

/// Distance of the ball centres when the two balls lie in grooves half a pitch apart along the axis, as two
/// single balls must, mm.
#[must_use]
pub fn staggered_ball_centres_mm(square_distance_mm: f64, pitch_mm: f64) -> f64 {
    square_distance_mm.hypot(pitch_mm / 2.0)
}

/// Smallest and largest wire for a thread of basic profile, mm: the one just proud of the crests, the other
/// touching at the end of the straight flank.
#[must_use]
pub fn usable_wires_mm(thread: &Thread) -> (f64, f64) {
    let flank = flank(thread.half_angle_deg());
    let profile = thread.basic();
    let pitch_mm = thread.pitch_mm();
    let crest_mm = (profile.major_diameter - profile.pitch_diameter) / 2.0;
    let flank_end_mm = match thread.form() {
        ThreadForm::Metric | ThreadForm::Unified { .. } => crest_mm,
        ThreadForm::Whitworth => crest_mm - whitworth_thread::ROUNDING_DEPTH * pitch_mm,
    };
    let apex_mm = profile.triangle_height / 2.0;
    let proud_mm = 2.0 * (apex_mm + crest_mm) / (1.0 + 1.0 / flank.sine);
    let contact_mm = 2.0 * (apex_mm + flank_end_mm) * flank.sine / flank.cosine.powi(2);
    (proud_mm, contact_mm)
}
