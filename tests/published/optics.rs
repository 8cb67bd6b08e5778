//! Focus, depth of focus, tilt and vignetting against worked examples. Sources beside each: the thin-lens equation
//! and similar triangles worked by hand, public pages on depth of focus and sensor sizes, Modern Optical
//! Engineering ch. 9 for the vignetted pupil, a paraxial trace of the 50 mm f/2 prescription of US patent
//! 2,673,491.

use flangewright::optics::{
    BoreEdge, Disc, ExitPupil, FocusScale, Vignetting, circle_of_format_mm, circle_of_pixels_mm,
    clear_radius_mm, common_area_mm2, corner_defocus_mm, diffraction_half_depth_mm,
    greatest_parallelism_mm, half_depth_mm, half_depth_near_by_mm, image_circle_radius_mm,
    infinity_mark_mm, left_after_root_sum_square_mm, left_after_sum_mm, lost_stops,
    object_distance_mm, tilt_slope,
};

use crate::close;

/// Half diagonal of 36 x 24.
const CORNER_MM: f64 = 21.63;

/// Thin-lens equation, worked by hand.
#[test]
fn farthest_distance_and_infinity_mark() {
    for (focal, error, metres) in [(28.0, 0.05, 15.708), (50.0, 0.05, 50.050)] {
        close(
            "farthest",
            object_distance_mm(focal, error) / 1e3,
            metres,
            5e-4,
        );
        let mark = infinity_mark_mm(focal, -error).unwrap();
        close("infinity mark", mark / 1e3, metres, 5e-4);
    }
}

/// Thin-lens equation, worked by hand: f 50, scale from the image plane.
#[test]
fn close_limit_and_scale_with_an_error() {
    let scale = FocusScale::thin(50.0);
    close(
        "object",
        scale.from_principal_plane_mm(450.0).unwrap(),
        392.705,
        5e-4,
    );
    let extension = scale.extension_mm(450.0).unwrap();
    close("extension", extension, 7.2949, 5e-5);
    close(
        "magnification",
        scale.magnification(extension),
        7.2949 / 50.0,
        1e-6,
    );
    for (reads_mm, error, sharp_mm, tolerance) in [
        (450.0, -0.10, 454.66, 0.005),
        (450.0, 0.10, 445.47, 0.005),
        (3000.0, 0.05, 2841.0, 0.5),
        (3000.0, -0.05, 3178.0, 0.5),
    ] {
        close(
            "sharp at",
            scale.sharp_at_mm(reads_mm, error).unwrap(),
            sharp_mm,
            tolerance,
        );
    }
    let reach = scale.reach(450.0, 0.05).unwrap();
    // From the image plane: the 50.050 m of the front principal plane and twice the focal length less nothing.
    close("farthest", reach.farthest_mm, 50_050.0 + 50.05, 1e-3);
}

/// Public pages on depth of focus: ±N c, and N c (1 + m); the pupil form worked by hand.
#[test]
fn depth_of_focus() {
    for (stop, circle, half) in [
        (1.4, 0.029, 0.0406),
        (1.8, 0.029, 0.0522),
        (2.8, 0.029, 0.0812),
        (5.6, 0.029, 0.1624),
        (1.8, 0.019, 0.0342),
        (1.8, 0.008, 0.0144),
    ] {
        close("N c", half_depth_mm(stop, circle), half, 5e-5);
    }
    close(
        "m 0.1, P 1",
        half_depth_near_by_mm(1.8, 0.029, 0.1, 1.0),
        0.0574,
        5e-5,
    );
    close(
        "m 0.1, P 1.2",
        half_depth_near_by_mm(1.8, 0.029, 0.1, 1.2),
        0.0566,
        5e-5,
    );
}

/// Thin-lens equation, worked by hand: an error of N c puts the farthest distance at the hyperfocal one.
#[test]
fn an_error_of_the_half_depth_reaches_the_hyperfocal_distance() {
    let half = half_depth_mm(1.8, 0.029);
    close("f² / N c", 2500.0 / half / 1e3, 47.893, 5e-4);
    close(
        "farthest",
        object_distance_mm(50.0, half) / 1e3,
        47.943,
        5e-4,
    );
}

/// Rayleigh's quarter wave at 0.55 um, worked by hand.
#[test]
fn diffraction_floor() {
    for (stop, um) in [(1.4, 2.16), (2.0, 4.4), (2.8, 8.6), (4.0, 17.6)] {
        close("2 λ N²", diffraction_half_depth_mm(stop) * 1e3, um, 0.05);
    }
}

/// Worked by hand: f/1.8, c 0.029, body and lens 0.02 each.
#[test]
fn what_is_left_for_the_ring() {
    let half = half_depth_mm(1.8, 0.029);
    close(
        "linear",
        left_after_sum_mm(half, &[0.02, 0.02]),
        0.0122,
        5e-5,
    );
    let square = left_after_root_sum_square_mm(half, &[0.02, 0.02]).unwrap();
    close("root sum square", square, 0.04387, 5e-6);
}

/// Public sensor-size pages (two rows from memory: 24.89 x 18.66 and the "1 inch" sizes); width, height, half
/// diagonal, d / 1500, d / 1730.
#[test]
fn circles_of_confusion_by_format() {
    for (width, height, half, by_1500, by_1730) in [
        (36.0, 24.0, 21.63, 0.0288, 0.0250),
        (24.89, 18.66, 15.55, 0.0207, 0.0180),
        (23.6, 15.6, 14.14, 0.0189, 0.0164),
        (22.3, 14.9, 13.41, 0.0179, 0.0155),
        (17.3, 13.0, 10.82, 0.0144, 0.0125),
        (13.2, 8.8, 7.93, 0.0106, 0.0092),
        (12.8, 9.6, 8.00, 0.0107, 0.0092),
        (8.8, 6.6, 5.50, 0.0073, 0.0064),
        (6.4, 4.8, 4.00, 0.0053, 0.0046),
    ] {
        let diagonal = f64::hypot(width, height);
        close("half diagonal", diagonal / 2.0, half, 0.0051);
        close(
            "d / 1500",
            circle_of_format_mm(diagonal, 1500.0),
            by_1500,
            5.1e-5,
        );
        close(
            "d / 1730",
            circle_of_format_mm(diagonal, 1730.0),
            by_1730,
            5.1e-5,
        );
    }
    close(
        "0.030 is d / 1442",
        circle_of_format_mm(43.267, 1442.0),
        0.030,
        5e-5,
    );
    close(
        "two pixels of 4 um",
        circle_of_pixels_mm(0.004),
        0.008,
        1e-12,
    );
}

/// Worked by hand; a trace of rays through a tilted thin lens gave the factor 1 + m.
#[test]
fn tilt_and_decentre() {
    let minutes = |slope: f64| slope.atan().to_degrees() * 60.0;
    close("0.02 over 60", minutes(tilt_slope(0.02, 60.0)), 1.146, 5e-4);
    close(
        "corner",
        corner_defocus_mm(0.02, 60.0, CORNER_MM, 0.0),
        0.00721,
        5e-6,
    );
    close(
        "factor 1 + m",
        corner_defocus_mm(1.0, 1.0, 1.0, 0.1),
        1.1,
        1e-12,
    );
    let most = greatest_parallelism_mm(60.0, half_depth_mm(1.8, 0.029), 0.02, CORNER_MM, 0.0);
    close("greatest parallelism", most, 0.0893, 5e-5);
    let one_minute = (1.0_f64 / 60.0).to_radians().tan();
    close(
        "one minute",
        corner_defocus_mm(one_minute, 1.0, CORNER_MM, 0.0) * 1e3,
        6.29,
        5e-3,
    );
    close(
        "image circle",
        image_circle_radius_mm(CORNER_MM, 0.15, 0.0),
        21.78,
        1e-9,
    );
}

/// Similar triangles, worked by hand.
#[test]
fn clear_radius_of_the_ray_cone() {
    let pupil = ExitPupil::at_infinity(60.0);
    for (distance, radius) in [(44.0, 17.990), (18.0, 20.141)] {
        let diameter = pupil.diameter_mm(1.8);
        let clear = clear_radius_mm(CORNER_MM, distance, pupil.distance_mm(), diameter);
        close("clear radius", clear, radius, 5e-4);
    }
}

/// Modern Optical Engineering ch. 9: area common to two circles; unit circles one apart, closed form.
#[test]
fn area_common_to_two_circles() {
    let unit = |x_mm| Disc {
        x_mm,
        y_mm: 0.0,
        radius_mm: 1.0,
    };
    let area = common_area_mm2(&[unit(0.0), unit(1.0)]);
    close("area", area, 1.228_370, 5e-7);
    close("share", area / unit(0.0).area_mm2(), 0.391_002, 5e-7);
}

/// Worked from the same formula; the share 0.8206 also by 400 000 random rays (0.8208).
#[test]
fn vignetted_pupil() {
    for (radius_mm, share) in [(17.0, 0.9761), (14.0, 0.8206), (20.0, 1.0)] {
        let edges = vec![BoreEdge {
            distance_mm: 44.0,
            radius_mm,
        }];
        let view = Vignetting::new(ExitPupil::at_infinity(60.0), edges);
        let light = view.light(CORNER_MM, 1.8);
        close("clear share", light.clear_share, share, 5e-5);
        close("stops", light.lost_stops, -share.log2(), 2e-4);
        // Closed form: N = z / (2 (R - h (1 - z / z_e))).
        let ends = 44.0 / (2.0 * (radius_mm - CORNER_MM * (1.0 - 44.0 / 60.0)));
        close(
            "ends at",
            view.clipping_ends_at(CORNER_MM).unwrap(),
            ends,
            1e-12,
        );
    }
    close("half the light", lost_stops(0.5), 1.0, 1e-15);
}

/// cos⁴ of atan(21.63 / 60) = 19.82 degrees, worked by hand.
#[test]
fn fall_off_by_slant() {
    let pupil = ExitPupil::at_infinity(60.0);
    close(
        "slant",
        (CORNER_MM / pupil.distance_mm()).atan().to_degrees(),
        19.82,
        5e-3,
    );
    close("cos⁴", pupil.slant_share(CORNER_MM), 0.7832, 5e-5);
}

/// Paraxial trace of the 50 mm f/2 prescription of US patent 2,673,491, scaled: focal length 50.36, exit pupil
/// 53.88 from the image, pupil magnification 1.070, f/2.03, exit pupil 26.54 across.
#[test]
fn a_traced_lens_keeps_the_pupil_identities() {
    close("P f", 1.070 * 50.36, 53.88, 0.01);
    close(
        "z_e / N",
        ExitPupil::at_infinity(53.88).diameter_mm(2.03),
        26.54,
        0.005,
    );
}
