//! ASME B1.1 unified threads: the 2019 rows as the MIT-licensed package screw-thread-lib 0.0.6 prints them, the
//! worked example of Machinery's Handbook 31 (1/2-28 UNEF), and 1-32 UN by the formulas. Inches.

use flangewright::standards::{Thread, ThreadLimits};

use crate::{close, printed};

/// Designation; dmax, dmin, d2max, d2min, d1max; D1min, D1max, D2min, D2max.
const ROWS: [(&str, [f64; 5], [f64; 4]); 11] = [
    (
        "10-24 UNC",
        [0.1890, 0.1818, 0.1619, 0.1586, 0.1439],
        [0.145, 0.155, 0.1629, 0.1672],
    ),
    (
        "10-32 UNF",
        [0.1891, 0.1831, 0.1688, 0.1658, 0.1553],
        [0.156, 0.164, 0.1697, 0.1736],
    ),
    (
        "1/4-20 UNC",
        [0.2489, 0.2408, 0.2164, 0.2127, 0.1948],
        [0.196, 0.207, 0.2175, 0.2224],
    ),
    (
        "1/4-28 UNF",
        [0.2490, 0.2425, 0.2258, 0.2225, 0.2103],
        [0.211, 0.220, 0.2268, 0.2311],
    ),
    (
        "1/2-13 UNC",
        [0.4985, 0.4876, 0.4485, 0.4435, 0.4152],
        [0.417, 0.434, 0.4500, 0.4565],
    ),
    (
        "1/2-20 UNF",
        [0.4987, 0.4906, 0.4662, 0.4619, 0.4446],
        [0.446, 0.457, 0.4675, 0.4731],
    ),
    (
        "3/4-10 UNC",
        [0.7482, 0.7353, 0.6832, 0.6773, 0.6399],
        [0.642, 0.663, 0.6850, 0.6927],
    ),
    (
        "3/4-16 UNF",
        [0.7485, 0.7391, 0.7079, 0.7029, 0.6808],
        [0.682, 0.696, 0.7094, 0.7159],
    ),
    (
        "1-8 UNC",
        [0.9980, 0.9830, 0.9168, 0.9101, 0.8627],
        [0.865, 0.890, 0.9188, 0.9276],
    ),
    (
        "1-12 UNF",
        [0.9982, 0.9868, 0.9441, 0.9382, 0.9080],
        [0.910, 0.928, 0.9459, 0.9535],
    ),
    (
        "1-14 UNS",
        [0.9984, 0.9881, 0.9520, 0.9467, 0.9211],
        [0.923, 0.938, 0.9536, 0.9605],
    ),
];

#[test]
fn rows_of_classes_2a_and_2b() {
    for (designation, external, internal) in ROWS {
        check_external(designation, external);
        check_internal(designation, internal);
    }
}

#[test]
fn worked_example_half_28_unef() {
    check_external("1/2-28 UNEF-2A", [0.4989, 0.4924, 0.4757, 0.4720, 0.4602]);
    let ring = limits("1/2-28 UNEF-2B", true);
    printed("D1 min", ring.minor_min.map(inch), 0.461, 4);
    printed("D1 max", ring.minor_max.map(inch), 0.470, 4);
    printed("D2 min", ring.pitch_diameter_min.map(inch), 0.4768, 4);
}

#[test]
fn one_inch_32_un() {
    check_external("1-32 UN-2A", [0.9989, 0.9929, 0.9786, 0.9748, 0.9651]);
    check_internal("1-32 UN-2B", [0.966, 0.974, 0.9797, 0.9846]);
    let lens = limits("1-32 UN-2A", false);
    printed("UNR root", lens.rounded_minor_max.map(inch), 0.9617, 4);
    // The same in mm.
    printed("major max", lens.major_max, 25.372, 3);
    printed("major min", lens.major_min, 25.220, 3);
    printed("pitch max", lens.pitch_diameter_max, 24.856, 3);
    printed("pitch min", lens.pitch_diameter_min, 24.760, 3);
    let ring = limits("1-32 UN-2B", true);
    printed("minor min", ring.minor_min, 24.536, 3);
    printed("minor max", ring.minor_max, 24.740, 3);
    printed("pitch min", ring.pitch_diameter_min, 24.884, 3);
    printed("pitch max", ring.pitch_diameter_max, 25.009, 3);
    close(
        "P",
        "1-32 UN".parse::<Thread>().unwrap().pitch_mm(),
        0.79375,
        1e-12,
    );
    assert_eq!((ring.major_max, lens.minor_min), (None, None));
}

#[test]
fn five_eighths_and_fifteen_sixteenths() {
    // A public table of 15/16-20 UNEF agrees with the formulas to four places; the tolerance by hand here:
    // Td2(2A) = 0.0015 (D^1/3 + (9P)^1/2 + 10 P^2/3).
    for (designation, diameter, tpi) in [
        ("15/16-20 UNEF", 15.0 / 16.0, 20.0),
        ("5/8-32 UN", 0.625, 32.0f64),
    ] {
        let pitch: f64 = 1.0 / tpi;
        let class_2a =
            0.0015 * (f64::cbrt(diameter) + (9.0 * pitch).sqrt() + 10.0 * pitch.powf(2.0 / 3.0));
        let lens = limits(designation, false);
        let width = lens.pitch_diameter_max.unwrap() - lens.pitch_diameter_min.unwrap();
        close(designation, inch(width), class_2a, 1.01e-4);
        close(
            designation,
            inch(lens.major_max.unwrap()),
            diameter - 0.3 * class_2a,
            5.1e-5,
        );
    }
}

#[test]
fn older_tables_differ_by_a_ten_thousandth() {
    // Tables from before ASME B1.30: 15/16-12 d2 min .8760 and D2 max .8908, 15/16-16 D2 max .9034,
    // 2 3/8-20 d2 min 2.3359.
    let cases = [
        (limits("15/16-12 UN", false).pitch_diameter_min, 0.8760),
        (limits("15/16-12 UN", true).pitch_diameter_max, 0.8908),
        (limits("15/16-16 UN", true).pitch_diameter_max, 0.9034),
        (limits("2 3/8-20 UN", false).pitch_diameter_min, 2.3359),
    ];
    for (got, older) in cases {
        let difference = (inch(got.unwrap()) - older).abs();
        assert!(
            (difference - 1e-4).abs() < 1e-9,
            "differs by {difference} from {older}"
        );
    }
}

#[test]
fn classes_1_and_3_in_their_ratios() {
    // ASME B1.1: 1A 1.5, 3A 0.75, 1B 1.95, 3B 0.975 of the 2A tolerance; 3A has no allowance.
    let width = |limits: &ThreadLimits| {
        inch(limits.pitch_diameter_max.unwrap() - limits.pitch_diameter_min.unwrap())
    };
    let class_2a = width(&limits("1-32 UN-2A", false));
    for (class, is_internal, factor) in [
        ("1A", false, 1.5),
        ("3A", false, 0.75),
        ("1B", true, 1.95),
        ("3B", true, 0.975),
    ] {
        let limits = limits(&format!("1-32 UN-{class}"), is_internal);
        close(class, width(&limits), factor * class_2a, 2e-4);
    }
    printed(
        "3A major",
        limits("1-32 UN-3A", false).major_max.map(inch),
        1.0,
        4,
    );
}

#[test]
fn minor_diameters_of_class_3b() {
    // Printed rows of class 3B (from memory): least and greatest minor diameter, four decimals.
    for (designation, row) in [
        ("1/4-20 UNC-3B", [0.1960, 0.2067]),
        ("10-32 UNF-3B", [0.1560, 0.1641]),
        ("1/2-13 UNC-3B", [0.4170, 0.4284]),
        ("1-8 UNC-3B", [0.8650, 0.8797]),
        ("1-12 UNF-3B", [0.9100, 0.9198]),
    ] {
        let ring = limits(designation, true);
        printed(designation, ring.minor_min.map(inch), row[0], 4);
        printed(designation, ring.minor_max.map(inch), row[1], 4);
    }
}

fn limits(designation: &str, is_internal: bool) -> ThreadLimits {
    let thread: Thread = designation.parse().unwrap();
    if is_internal {
        thread.internal().unwrap()
    } else {
        thread.external().unwrap()
    }
}

fn inch(mm: f64) -> f64 {
    mm / 25.4
}

#[track_caller]
fn check_external(designation: &str, row: [f64; 5]) {
    let lens = limits(designation, false);
    let got = [
        lens.major_max,
        lens.major_min,
        lens.pitch_diameter_max,
        lens.pitch_diameter_min,
        lens.minor_max,
    ];
    compare(designation, &got, &row);
}

#[track_caller]
fn check_internal(designation: &str, row: [f64; 4]) {
    let ring = limits(designation, true);
    let got = [
        ring.minor_min,
        ring.minor_max,
        ring.pitch_diameter_min,
        ring.pitch_diameter_max,
    ];
    compare(designation, &got, &row);
}

/// Printed values, exact: the limits are rounded as the table is.
#[track_caller]
fn compare(designation: &str, got: &[Option<f64>], row: &[f64]) {
    for (index, (got, expected)) in got.iter().zip(row).enumerate() {
        close(
            &format!("{designation} column {index}"),
            inch(got.unwrap()),
            *expected,
            1e-9,
        );
    }
}
