//! Whitworth form: Machinery's Handbook 31 p. 2087 table 2 (inches). The e of 40 threads per inch is misprinted
//! there and left out. GOST 6357 prints the same form for pitches of 1.337 and 0.907 mm.

use flangewright::standards::{Basis, Thread, whitworth_thread};

use crate::close;

#[test]
fn rows_of_the_table() {
    // Threads per inch, H, h, e, r, H/6.
    for (tpi, row) in [
        (
            20.0,
            [0.048_025, 0.032_016, 0.003_696, 0.006_866, 0.008_004],
        ),
        (
            26.0,
            [0.036_942, 0.024_628, 0.002_843, 0.005_282, 0.006_157],
        ),
        (
            32.0,
            [0.030_015, 0.020_010, 0.002_310, 0.004_292, 0.005_003],
        ),
    ] {
        let [height, depth, rounding, radius, sixth] = row;
        let pitch = 1.0 / tpi;
        close("H", whitworth_thread::TRIANGLE_HEIGHT * pitch, height, 1e-6);
        close("h", whitworth_thread::DEPTH * pitch, depth, 1e-6);
        close(
            "e",
            whitworth_thread::ROUNDING_DEPTH * pitch,
            rounding,
            1e-6,
        );
        close("r", whitworth_thread::RADIUS * pitch, radius, 1e-6);
        close(
            "H/6",
            whitworth_thread::TRIANGLE_HEIGHT / 6.0 * pitch,
            sixth,
            1e-6,
        );
    }
}

#[test]
fn rows_in_mm() {
    // Pitch, H, h, R.
    for (pitch, height, depth, radius) in [
        (1.337, 1.284_176, 0.856_117, 0.183_609),
        (0.907, 0.871_165, 0.580_777, 0.124_557),
    ] {
        close("H", whitworth_thread::TRIANGLE_HEIGHT * pitch, height, 1e-6);
        close("h", whitworth_thread::DEPTH * pitch, depth, 1e-6);
        close("R", whitworth_thread::RADIUS * pitch, radius, 1e-6);
    }
}

#[test]
fn thirty_nine_by_26() {
    let thread: Thread = "39 x 26 tpi Whitworth".parse().unwrap();
    close("p", thread.pitch_mm(), 0.976_923, 5e-7);
    let profile = thread.basic();
    close("h", profile.internal_depth, 0.625_551, 5e-7);
    close("r", profile.root_radius, 0.134_160, 5e-7);
    close("d2", profile.pitch_diameter, 39.0 - 0.625_551, 5e-7);
    close(
        "d1",
        profile.minor_diameter,
        39.0 - 1.280_654 * 25.4 / 26.0,
        1e-6,
    );
    close("half angle", thread.half_angle_deg(), 27.5, 0.0);
}

#[test]
fn limits_are_the_basic_sizes_on_one_side_only() {
    let thread: Thread = "39 x 26 tpi Whitworth".parse().unwrap();
    let (ring, lens) = (thread.internal().unwrap(), thread.external().unwrap());
    assert_eq!((ring.basis, lens.basis), (Basis::Basic, Basis::Basic));
    let basic = [Some(39.0), Some(38.374), Some(37.749)];
    assert_eq!(
        [ring.major_min, ring.pitch_diameter_min, ring.minor_min],
        basic
    );
    assert_eq!(
        [ring.major_max, ring.pitch_diameter_max, ring.minor_max],
        [None; 3]
    );
    assert_eq!(
        [lens.major_max, lens.pitch_diameter_max, lens.minor_max],
        basic
    );
    assert_eq!(
        [lens.major_min, lens.pitch_diameter_min, lens.minor_min],
        [None; 3]
    );
    assert!(
        ring.notes
            .iter()
            .any(|note| note.contains("Basic sizes only"))
    );
}
