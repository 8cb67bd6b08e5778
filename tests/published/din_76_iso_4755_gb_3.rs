//! Thread undercuts. DIN 76-1: rows of 0.5, 0.6 and 1 mm cross-read in public test data citing the standard and
//! a trade table book, the others from memory. ISO 4755 (same as GB/T 3-1997 external) and GB/T 3-1997 internal
//! read in public tables.

use flangewright::standards::undercut::{UndercutForm, undercut};

use crate::close;

/// Pitch; external diameter below nominal; A, B, ISO 4755 as g1, g2; radius; internal diameter above nominal;
/// C, D; GB/T 3 normal, short, radius.
type Row = (f64, f64, [[f64; 2]; 3], f64, f64, [[f64; 2]; 2], [f64; 3]);

const ROWS: [Row; 10] = [
    (
        0.5,
        0.8,
        [[1.1, 1.75], [0.5, 1.25], [0.8, 1.5]],
        0.2,
        0.3,
        [[2.0, 2.7], [1.25, 2.0]],
        [2.0, 1.0, 0.2],
    ),
    (
        0.6,
        1.0,
        [[1.2, 2.1], [0.6, 1.5], [0.9, 1.8]],
        0.4,
        0.3,
        [[2.4, 3.3], [1.5, 2.4]],
        [2.4, 1.2, 0.3],
    ),
    (
        0.7,
        1.1,
        [[1.5, 2.45], [0.8, 1.75], [1.1, 2.1]],
        0.4,
        0.3,
        [[2.8, 3.8], [1.75, 2.75]],
        [2.8, 1.4, 0.4],
    ),
    (
        0.75,
        1.2,
        [[1.6, 2.6], [0.9, 1.9], [1.2, 2.25]],
        0.4,
        0.3,
        [[3.0, 4.0], [1.9, 2.9]],
        [3.0, 1.5, 0.4],
    ),
    (
        0.8,
        1.3,
        [[1.7, 2.8], [0.9, 2.0], [1.3, 2.4]],
        0.4,
        0.3,
        [[3.2, 4.2], [2.0, 3.0]],
        [3.2, 1.6, 0.4],
    ),
    (
        1.0,
        1.6,
        [[2.1, 3.5], [1.1, 2.5], [1.6, 3.0]],
        0.6,
        0.5,
        [[4.0, 5.2], [2.5, 3.7]],
        [4.0, 2.0, 0.5],
    ),
    (
        1.25,
        2.0,
        [[2.7, 4.4], [1.5, 3.2], [2.0, 3.75]],
        0.6,
        0.5,
        [[5.0, 6.7], [3.2, 4.9]],
        [5.0, 2.5, 0.6],
    ),
    (
        1.5,
        2.3,
        [[3.2, 5.2], [1.8, 3.8], [2.5, 4.5]],
        0.8,
        0.5,
        [[6.0, 7.8], [3.8, 5.6]],
        [6.0, 3.0, 0.8],
    ),
    (
        1.75,
        2.6,
        [[3.9, 6.1], [2.1, 4.3], [3.0, 5.25]],
        1.0,
        0.5,
        [[7.0, 9.1], [4.3, 6.4]],
        [7.0, 3.5, 0.9],
    ),
    (
        2.0,
        3.0,
        [[4.5, 7.0], [2.5, 5.0], [3.4, 6.0]],
        1.0,
        0.5,
        [[8.0, 10.3], [5.0, 7.3]],
        [8.0, 4.0, 1.0],
    ),
];

#[test]
fn every_row() {
    for (pitch, below, external, radius, above, internal, gb) in ROWS {
        let [a, b, iso] = external;
        let [c, d] = internal;
        let [normal, short, gb_radius] = gb;
        for (form, g1, g2, excess, radius) in [
            (
                UndercutForm::Din76ExternalRegular,
                a[0],
                Some(a[1]),
                -below,
                radius,
            ),
            (
                UndercutForm::Din76ExternalShort,
                b[0],
                Some(b[1]),
                -below,
                radius,
            ),
            (
                UndercutForm::Iso4755External,
                iso[0],
                Some(iso[1]),
                -below,
                radius,
            ),
            (
                UndercutForm::Din76InternalRegular,
                c[0],
                Some(c[1]),
                above,
                radius,
            ),
            (
                UndercutForm::Din76InternalShort,
                d[0],
                Some(d[1]),
                above,
                radius,
            ),
            (
                UndercutForm::Gb3InternalNormal,
                normal,
                None,
                above,
                gb_radius,
            ),
            (
                UndercutForm::Gb3InternalShort,
                short,
                None,
                above,
                gb_radius,
            ),
        ] {
            let got = undercut(form, pitch).unwrap();
            assert_eq!(
                (
                    got.width_min_mm,
                    got.width_max_mm,
                    got.diameter_excess_mm,
                    got.radius_mm
                ),
                (g1, g2, excess, radius),
                "{} P {pitch}",
                form.name()
            );
            assert_eq!((got.row_pitch_mm, got.note), (pitch, None));
            assert_eq!(
                got.diameter_tolerance,
                if excess > 0.0 { "H13" } else { "h13" }
            );
        }
    }
}

#[test]
fn rules_behind_the_tables() {
    // ISO 4755: g2 = 3 P. GB/T 3: 4 P and 2 P. DIN 76-1 C and D are never under GB/T 3 short.
    for (pitch, ..) in ROWS {
        let of = |form| undercut(form, pitch).unwrap();
        close(
            "3 P",
            of(UndercutForm::Iso4755External).width_max_mm.unwrap(),
            3.0 * pitch,
            1e-9,
        );
        close(
            "4 P",
            of(UndercutForm::Gb3InternalNormal).width_min_mm,
            4.0 * pitch,
            1e-9,
        );
        close(
            "2 P",
            of(UndercutForm::Gb3InternalShort).width_min_mm,
            2.0 * pitch,
            1e-9,
        );
        let short = of(UndercutForm::Din76InternalShort).width_min_mm;
        assert!(short >= of(UndercutForm::Gb3InternalShort).width_min_mm);
        assert!(short < of(UndercutForm::Din76InternalRegular).width_min_mm);
    }
}

#[test]
fn pitches_between_rows_take_the_next_one_up_and_say_so() {
    for (pitch, row) in [(25.4 / 26.0, 1.0), (25.4 / 32.0, 0.8), (1.3, 1.5)] {
        let got = undercut(UndercutForm::Din76InternalShort, pitch).unwrap();
        close("row", got.row_pitch_mm, row, 0.0);
        assert!(got.note.unwrap().contains(&format!("row of {row} mm")));
    }
}

#[test]
fn outside_the_tables_is_an_error_with_the_range() {
    for pitch in [0.2, 2.5, f64::NAN, f64::INFINITY, -1.0] {
        let text = undercut(UndercutForm::Din76InternalShort, pitch)
            .unwrap_err()
            .to_string();
        assert!(text.contains("from 0.5 to 2 mm"), "{text}");
    }
}

#[test]
fn diameter_of_a_relief() {
    let internal = undercut(UndercutForm::Din76InternalRegular, 1.0).unwrap();
    close("internal", internal.diameter_mm(42.0), 42.5, 1e-12);
    let external = undercut(UndercutForm::Iso4755External, 1.0).unwrap();
    close("external", external.diameter_mm(42.0), 40.4, 1e-12);
}
