//! ISO 2768-1 general tolerances: table 1 as a copy of DIN ISO 2768-1 prints it (class c of the two smallest
//! ranges as ISO 2768-1:1989, from memory: that copy prints 0.15 and 0.2), tables 2 and 3.

use flangewright::standards::GeneralClass::{self, Coarse, Fine, Medium, VeryCoarse};

const CLASSES: [GeneralClass; 4] = [Fine, Medium, Coarse, VeryCoarse];

#[test]
fn table_1_linear() {
    // Least and greatest size of the column; f, m, c, v.
    for (least, greatest, cells) in [
        (0.5, 3.0, [Some(0.05), Some(0.1), Some(0.2), None]),
        (3.001, 6.0, [Some(0.05), Some(0.1), Some(0.3), Some(0.5)]),
        (6.001, 30.0, [Some(0.1), Some(0.2), Some(0.5), Some(1.0)]),
        (30.001, 120.0, [Some(0.15), Some(0.3), Some(0.8), Some(1.5)]),
        (120.001, 400.0, [Some(0.2), Some(0.5), Some(1.2), Some(2.5)]),
    ] {
        for (class, cell) in CLASSES.into_iter().zip(cells) {
            assert_eq!(class.linear_mm(least).ok(), cell, "{class:?} {least}");
            assert_eq!(class.linear_mm(greatest).ok(), cell, "{class:?} {greatest}");
        }
    }
}

#[test]
fn table_2_broken_edges() {
    for (size, fine, coarse) in [
        (0.5, 0.2, 0.4),
        (3.0, 0.2, 0.4),
        (3.1, 0.5, 1.0),
        (6.0, 0.5, 1.0),
        (6.1, 1.0, 2.0),
    ] {
        for (class, expected) in CLASSES.into_iter().zip([fine, fine, coarse, coarse]) {
            assert_eq!(class.broken_edge_mm(size), Ok(expected), "{class:?} {size}");
        }
    }
}

#[test]
fn table_3_angles() {
    // Shorter leg; minutes of f and m, c, v.
    for (leg, minutes) in [
        (10.0, [60.0, 90.0, 180.0]),
        (50.0, [30.0, 60.0, 120.0]),
        (120.0, [20.0, 30.0, 60.0]),
        (400.0, [10.0, 15.0, 30.0]),
    ] {
        let [fine, coarse, very_coarse] = minutes;
        for (class, expected) in CLASSES.into_iter().zip([fine, fine, coarse, very_coarse]) {
            assert_eq!(class.angle_deg(leg), Ok(expected / 60.0), "{class:?} {leg}");
        }
    }
    // Half a degree at the radius of a bayonet lug, 25.5 mm: 0.22 mm.
    let at_lug = Medium.angle_deg(25.5).unwrap().to_radians() * 25.5;
    assert!((at_lug - 0.22).abs() < 0.005);
}

#[test]
fn outside_the_tables() {
    for size in [0.0, 0.49, -5.0, 400.1, f64::NAN, f64::INFINITY] {
        for class in CLASSES {
            let text = class.linear_mm(size).unwrap_err().to_string();
            assert!(text.contains("beside the dimension"), "{text}");
            assert!(class.broken_edge_mm(size).is_err());
        }
    }
    assert!(
        VeryCoarse
            .linear_mm(2.0)
            .unwrap_err()
            .to_string()
            .contains("from 3 to 400")
    );
    for leg in [0.0, -1.0, 400.1, f64::NAN] {
        assert!(Medium.angle_deg(leg).is_err());
    }
}
