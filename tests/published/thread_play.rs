//! Play, tilt and clocking of a pair of threads: own derivation from the flank angle, worked by hand for the
//! limits of ISO 965-1 and ASME B1.1.

use flangewright::standards::Thread;
use flangewright::standards::play::{
    axial_float_mm, clocking_shift_deg, lead_angle_deg, pitch_clearance, radial_freedom_mm,
    tilt_deg, virtual_pitch_diameter_mm,
};

use crate::close;

#[test]
fn clearance_and_axial_float() {
    // Clearance least, greatest; float least, greatest; mm.
    for (designation, clearance, float) in [
        ("M42x1", [0.026, 0.321], [0.015, 0.185]),
        ("M25x0.75", [0.022, 0.284], [0.013, 0.164]),
        ("M42x0.75", [0.022, 0.284], [0.013, 0.164]),
        ("1-32 UN", [0.028, 0.249], [0.016, 0.144]),
    ] {
        let thread: Thread = designation.parse().unwrap();
        let got =
            pitch_clearance(&thread.internal().unwrap(), &thread.external().unwrap()).unwrap();
        close(designation, got.min_mm, clearance[0], 5.1e-4);
        close(designation, got.max_mm, clearance[1], 5.1e-4);
        close(
            designation,
            axial_float_mm(got.min_mm, 30.0),
            float[0],
            5.1e-4,
        );
        close(
            designation,
            axial_float_mm(got.max_mm, 30.0),
            float[1],
            5.1e-4,
        );
    }
    close("tan 30", axial_float_mm(1.0, 30.0), 0.57735, 5e-6);
    close("tan 27.5", axial_float_mm(1.0, 27.5), 0.52057, 5e-6);
}

#[test]
fn radial_freedom() {
    close(
        "in the middle",
        radial_freedom_mm(0.026, 0.0, 30.0),
        0.013,
        1e-12,
    );
    close(
        "in the middle",
        radial_freedom_mm(0.321, 0.0, 30.0),
        0.160,
        5.1e-4,
    );
    let seated = axial_float_mm(0.321, 30.0) / 2.0;
    close(
        "hard on one flank",
        radial_freedom_mm(0.321, seated, 30.0),
        0.0,
        1e-12,
    );
}

#[test]
fn tilt_without_seats() {
    let milliradians = tilt_deg(0.321, 41.35, 4.0, 30.0).to_radians() * 1000.0;
    close("M42x1 over 4 mm", milliradians, 4.2, 0.05);
}

#[test]
fn lead_angles() {
    // atan(P / (pi D2)) by a general mathematics library.
    for (nominal, pitch, angle) in [
        (42.0, 1.0, 0.4410),
        (39.0, 1.0, 0.4755),
        (25.0, 0.75, 0.5580),
        (42.0, 0.75, 0.3295),
        (52.0, 1.0, 0.3552),
    ] {
        let diameter = Thread::metric(nominal, pitch)
            .unwrap()
            .basic()
            .pitch_diameter;
        close("lead angle", lead_angle_deg(diameter, pitch), angle, 5.1e-5);
    }
}

#[test]
fn clocking_and_lead_error() {
    close("P 1, 0.01 mm", clocking_shift_deg(0.01, 1.0), 3.6, 1e-12);
    close(
        "P 0.75, 0.01 mm",
        clocking_shift_deg(0.01, 0.75),
        4.8,
        1e-12,
    );
    close("cot 30", virtual_pitch_diameter_mm(1.0, 30.0), 1.732, 5e-4);
}

#[test]
fn threads_without_tolerance_have_no_clearance_limits() {
    let thread: Thread = "39 x 26 tpi Whitworth".parse().unwrap();
    let clearance = pitch_clearance(&thread.internal().unwrap(), &thread.external().unwrap());
    assert_eq!(clearance, None);
}
