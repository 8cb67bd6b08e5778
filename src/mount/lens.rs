//! The lens: everything of it that the ring has to meet or to miss.

use serde::{Deserialize, Serialize};

use super::fields::interface_fields;
use super::{Interface, Presence, RowReadings};
use crate::standards::Thread;

/// One step of the rear barrel: from the step before it (or the seat) to `depth_mm` behind the seat.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BarrelStep {
    /// Where the step ends, mm behind the lens seat.
    pub depth_mm: f64,
    /// Its outer diameter, mm.
    pub diameter_mm: f64,
}

/// A lens mount and the parts of the lens around it. Lengths mm, "behind" is toward the sensor.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Lens {
    /// Name, the user's own.
    pub name: String,
    /// Free notes; an invented part says so here.
    pub notes: String,
    /// Distance from the lens seat to the image plane at infinity, mm.
    pub register: Interface<f64>,
    /// The male thread.
    pub thread: Interface<Thread>,
    /// Length of the male thread behind the seat, run-out counted in, mm.
    pub male_thread_length: Interface<f64>,
    /// Incomplete thread next to the shoulder, mm along the axis.
    pub thread_run_out: Interface<f64>,
    /// Radius of the fillet where thread meets shoulder, mm.
    pub shoulder_fillet: Interface<f64>,
    /// Outer diameter of the shoulder face, mm.
    pub shoulder_diameter: Interface<f64>,
    /// Rear barrel inside the thread, focused at infinity.
    pub barrel_at_infinity: Interface<Vec<BarrelStep>>,
    /// Rear barrel at the closest focus.
    pub barrel_at_close_focus: Interface<Vec<BarrelStep>>,
    /// Whether there is a turning aperture ring near the seat.
    pub aperture_ring: Presence,
    /// Inner diameter of the aperture ring, mm.
    pub aperture_ring_inner: Interface<f64>,
    /// Outer diameter of the aperture ring, mm.
    pub aperture_ring_outer: Interface<f64>,
    /// How far its rear face stands ahead of the seat, mm; negative hangs behind it.
    pub aperture_ring_ahead: Interface<f64>,
    /// Whether there is a stop-down pin.
    pub stop_down_pin: Presence,
    /// Diameter of the circle on which the pin centre lies, mm.
    pub pin_circle: Interface<f64>,
    /// Pin diameter, mm.
    pub pin_diameter: Interface<f64>,
    /// Protrusion behind the seat, untouched, mm.
    pub pin_free: Interface<f64>,
    /// Protrusion behind the seat when the iris is fully stopped down, mm.
    pub pin_stopped_down: Interface<f64>,
    /// Protrusion behind the seat with the pin at its bottom, mm.
    pub pin_bottom: Interface<f64>,
    /// Force that holds the pin in, N.
    pub pin_force: Interface<f64>,
    /// Focal length, mm.
    pub focal_length: Interface<f64>,
    /// Widest f-number.
    pub f_number: Interface<f64>,
    /// Exit pupil to image plane at infinity, mm.
    pub exit_pupil_distance: Interface<f64>,
    /// Exit pupil diameter over entrance pupil diameter.
    pub pupil_magnification: Interface<f64>,
    /// Mass, g.
    pub mass: Interface<f64>,
    /// Centre of gravity ahead of the seat, mm.
    pub centre_of_gravity_ahead: Interface<f64>,
    /// Readings of the numbers of its rear barrel.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub row_readings: Vec<RowReadings>,
}

interface_fields! {
    /// The scalar values of a lens.
    LensField of Lens {
        Register = register, Mm, "Register", (1.0, 400.0), "From a standard, a print, or a focused body of known register and shims until infinity is sharp";
        MaleThreadLength = male_thread_length, Mm, "Male thread length", (0.2, 60.0), "Depth gauge from the shoulder to the end of the thread";
        ThreadRunOut = thread_run_out, Mm, "Thread run-out", (0.0, 20.0), "Caliper: from the shoulder to the first full thread";
        ShoulderFillet = shoulder_fillet, Mm, "Fillet at the shoulder", (0.0, 5.0), "Radius gauge in the corner of thread and shoulder";
        ShoulderDiameter = shoulder_diameter, Mm, "Shoulder diameter", (4.0, 300.0), "Caliper across the flat shoulder face";
        ApertureRingInner = aperture_ring_inner, Mm, "Aperture ring, inside", (4.0, 300.0), "Caliper, inside jaws";
        ApertureRingOuter = aperture_ring_outer, Mm, "Aperture ring, outside", (4.0, 300.0), "Caliper across the ring, grips counted in";
        ApertureRingAhead = aperture_ring_ahead, Mm, "Aperture ring ahead of seat", (-30.0, 200.0), "Depth gauge from the shoulder face forward to the ring's rear face";
        PinCircle = pin_circle, Mm, "Pin circle", (2.0, 200.0), "Caliper from the axis side of the barrel to the pin, or over pin and opposite barrel";
        PinDiameter = pin_diameter, Mm, "Pin diameter", (0.2, 10.0), "Caliper";
        PinFree = pin_free, Mm, "Pin, free", (0.0, 30.0), "Depth gauge from the pin tip to the seat, pin untouched";
        PinStoppedDown = pin_stopped_down, Mm, "Pin, stopped down", (0.0, 30.0), "Press slowly at the smallest stop until the iris no longer moves, measure tip to seat";
        PinBottom = pin_bottom, Mm, "Pin, at its bottom", (0.0, 30.0), "Press until it stops, measure tip to seat";
        PinForce = pin_force, N, "Pin force", (0.0, 200.0), "Kitchen scale under the pin";
        FocalLength = focal_length, Mm, "Focal length", (1.0, 5000.0), "Engraved on the lens";
        FNumber = f_number, One, "Widest f-number", (0.5, 64.0), "Engraved on the lens";
        ExitPupilDistance = exit_pupil_distance, Mm, "Exit pupil to image", (2.0, 10000.0), "Look in from behind: distance of the iris image behind the seat, plus the register";
        PupilMagnification = pupil_magnification, One, "Pupil magnification", (0.05, 20.0), "Iris image seen from behind over iris image seen from ahead";
        Mass = mass, G, "Mass", (1.0, 20000.0), "Kitchen scale";
        CentreOfGravityAhead = centre_of_gravity_ahead, Mm, "Centre of gravity ahead of seat", (-100.0, 600.0), "Balance the lens on an edge, measure to the shoulder";
    }
}
