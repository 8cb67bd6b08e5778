//! ISO 965-1 tables 1 and 3 to 6, row by row: a public transcription of ISO 965-1:1998, with Machinery's Handbook
//! 27 p. 1794 and 31 p. 2025. The formulas of clause 13 (1998) stand against every cell; the cells where
//! they differ are listed, and the list must stay exact.

use flangewright::standards::iso_tolerance::{
    crest_tolerance, diameter_group_mm, formula_external_major_um, formula_internal_minor_um,
    formula_pitch_diameter_um, fundamental_deviation, pitch_diameter_tolerance,
};
use flangewright::standards::preferred::nearest_r40_um;
use flangewright::standards::{Basis, Position, Side};

use crate::close;

/// A cell that the table leaves blank.
const NONE: f64 = 0.0;
const PITCHES: [f64; 10] = [0.5, 0.6, 0.7, 0.75, 0.8, 1.0, 1.25, 1.5, 1.75, 2.0];

/// Whether the table has the cell.
fn is_listed(um: f64) -> bool {
    um > NONE
}

/// Whether two whole numbers of micrometres are different ones.
fn differ_um(a: f64, b: f64) -> bool {
    (a - b).abs() > 0.1
}

#[test]
fn table_1_deviations() {
    let rows = [
        (
            Position::SmallG,
            [20.0, 21.0, 22.0, 22.0, 24.0, 26.0, 28.0, 32.0, 34.0, 38.0],
        ),
        (
            Position::CapitalG,
            [20.0, 21.0, 22.0, 22.0, 24.0, 26.0, 28.0, 32.0, 34.0, 38.0],
        ),
        // The column f is from memory.
        (
            Position::SmallF,
            [36.0, 36.0, 38.0, 38.0, 38.0, 40.0, 42.0, 45.0, 48.0, 52.0],
        ),
        (
            Position::SmallE,
            [50.0, 53.0, 56.0, 56.0, 60.0, 60.0, 63.0, 67.0, 71.0, 71.0],
        ),
    ];
    for (position, cells) in rows {
        for (pitch, um) in PITCHES.into_iter().zip(cells) {
            let got = fundamental_deviation(position, pitch);
            assert_eq!(
                (got.um, got.basis),
                (um, Basis::Table),
                "{position:?} P {pitch}"
            );
        }
    }
    for position in [Position::CapitalH, Position::SmallH] {
        close("H, h", fundamental_deviation(position, 0.9).um, 0.0, 0.0);
    }
}

#[test]
fn table_1_against_its_formulas() {
    // Where 15 + 11 P and 50 + 11 P rounded to R40 leave the table.
    let differ = |position, constant: f64| -> Vec<f64> {
        PITCHES
            .into_iter()
            .filter(|pitch| {
                differ_um(
                    fundamental_deviation(position, *pitch).um,
                    nearest_r40_um(constant + 11.0 * pitch),
                )
            })
            .collect()
    };
    assert_eq!(differ(Position::SmallG, 15.0), [0.75, 1.0]);
    assert_eq!(differ(Position::SmallE, 50.0), [0.5, 0.6, 0.75]);
}

#[test]
fn table_3_internal_minor() {
    let rows = [
        [90.0, 112.0, 140.0, 180.0, NONE],
        [100.0, 125.0, 160.0, 200.0, NONE],
        [112.0, 140.0, 180.0, 224.0, NONE],
        [118.0, 150.0, 190.0, 236.0, NONE],
        [125.0, 160.0, 200.0, 250.0, 315.0],
        [150.0, 190.0, 236.0, 300.0, 375.0],
        [170.0, 212.0, 265.0, 335.0, 425.0],
        [190.0, 236.0, 300.0, 375.0, 475.0],
        [212.0, 265.0, 335.0, 425.0, 530.0],
        [236.0, 300.0, 375.0, 475.0, 600.0],
    ];
    let mut differing = Vec::new();
    for (pitch, cells) in PITCHES.into_iter().zip(rows) {
        for (grade, um) in (4..=8).zip(cells) {
            let got = crest_tolerance(Side::Internal, pitch, grade);
            check_cell(&format!("TD1 P {pitch} grade {grade}"), got, um);
            if is_listed(um)
                && differ_um(nearest_r40_um(formula_internal_minor_um(pitch, grade)), um)
            {
                differing.push((pitch, grade));
            }
        }
    }
    assert_eq!(
        differing,
        [
            (0.5, 4),
            (0.5, 5),
            (0.5, 6),
            (0.5, 7),
            (1.0, 4),
            (1.0, 5),
            (1.0, 6),
            (1.0, 7),
            (1.5, 5),
            (1.5, 8)
        ]
    );
}

#[test]
fn table_4_external_major() {
    let rows = [
        [67.0, 106.0, NONE],
        [80.0, 125.0, NONE],
        [90.0, 140.0, NONE],
        [90.0, 140.0, NONE],
        [95.0, 150.0, 236.0],
        [112.0, 180.0, 280.0],
        [132.0, 212.0, 335.0],
        [150.0, 236.0, 375.0],
        [170.0, 265.0, 425.0],
        [180.0, 280.0, 450.0],
    ];
    let mut differing = Vec::new();
    for (pitch, cells) in PITCHES.into_iter().zip(rows) {
        for (grade, um) in [4, 6, 8].into_iter().zip(cells) {
            let got = crest_tolerance(Side::External, pitch, grade);
            check_cell(&format!("Td P {pitch} grade {grade}"), got, um);
            if is_listed(um)
                && differ_um(nearest_r40_um(formula_external_major_um(pitch, grade)), um)
            {
                differing.push((pitch, grade));
            }
        }
    }
    assert_eq!(differing, [(0.7, 4), (1.75, 4)]);
}

/// Diameter in the group, pitch, TD2 grades 4 to 8, Td2 grades 3 to 9. The group 5.6 to 11.2 is from memory.
const GROUPS: [(f64, f64, [f64; 5], [f64; 7]); 14] = [
    (
        10.0,
        0.75,
        [85.0, 106.0, 132.0, 170.0, NONE],
        [50.0, 63.0, 80.0, 100.0, 125.0, NONE, NONE],
    ),
    (
        10.0,
        1.0,
        [95.0, 118.0, 150.0, 190.0, 236.0],
        [56.0, 71.0, 90.0, 112.0, 140.0, 180.0, 224.0],
    ),
    (
        10.0,
        1.25,
        [100.0, 125.0, 160.0, 200.0, 250.0],
        [60.0, 75.0, 95.0, 118.0, 150.0, 190.0, 236.0],
    ),
    (
        10.0,
        1.5,
        [112.0, 140.0, 180.0, 224.0, 280.0],
        [67.0, 85.0, 106.0, 132.0, 170.0, 212.0, 265.0],
    ),
    (
        20.0,
        1.0,
        [100.0, 125.0, 160.0, 200.0, 250.0],
        [60.0, 75.0, 95.0, 118.0, 150.0, 190.0, 236.0],
    ),
    (
        20.0,
        1.25,
        [112.0, 140.0, 180.0, 224.0, 280.0],
        [67.0, 85.0, 106.0, 132.0, 170.0, 212.0, 265.0],
    ),
    (
        20.0,
        1.5,
        [118.0, 150.0, 190.0, 236.0, 300.0],
        [71.0, 90.0, 112.0, 140.0, 180.0, 224.0, 280.0],
    ),
    (
        20.0,
        1.75,
        [125.0, 160.0, 200.0, 250.0, 315.0],
        [75.0, 95.0, 118.0, 150.0, 190.0, 236.0, 300.0],
    ),
    (
        20.0,
        2.0,
        [132.0, 170.0, 212.0, 265.0, 335.0],
        [80.0, 100.0, 125.0, 160.0, 200.0, 250.0, 315.0],
    ),
    (
        42.0,
        1.0,
        [106.0, 132.0, 170.0, 212.0, NONE],
        [63.0, 80.0, 100.0, 125.0, 160.0, 200.0, 250.0],
    ),
    (
        42.0,
        1.5,
        [125.0, 160.0, 200.0, 250.0, 315.0],
        [75.0, 95.0, 118.0, 150.0, 190.0, 236.0, 300.0],
    ),
    (
        42.0,
        2.0,
        [140.0, 180.0, 224.0, 280.0, 355.0],
        [85.0, 106.0, 132.0, 170.0, 212.0, 265.0, 335.0],
    ),
    (
        52.0,
        1.5,
        [132.0, 170.0, 212.0, 265.0, 335.0],
        [80.0, 100.0, 125.0, 160.0, 200.0, 250.0, 315.0],
    ),
    (
        52.0,
        2.0,
        [150.0, 190.0, 236.0, 300.0, 375.0],
        [90.0, 112.0, 140.0, 180.0, 224.0, 280.0, 355.0],
    ),
];

#[test]
fn tables_5_and_6_pitch_diameter() {
    let mut differing = Vec::new();
    for (diameter, pitch, internal, external) in GROUPS {
        let (over, up_to) = diameter_group_mm(diameter);
        let mean = (over * up_to).sqrt();
        let cells = (4..=8)
            .zip(internal)
            .map(|(grade, um)| (Side::Internal, grade, um))
            .chain(
                (3..=9)
                    .zip(external)
                    .map(|(grade, um)| (Side::External, grade, um)),
            );
        for (side, grade, um) in cells {
            let got = pitch_diameter_tolerance(side, diameter, pitch, grade);
            check_cell(
                &format!("{side} d {diameter} P {pitch} grade {grade}"),
                got,
                um,
            );
            let formula = nearest_r40_um(formula_pitch_diameter_um(side, mean, pitch, grade));
            if is_listed(um) && differ_um(formula, um) {
                differing.push((side, diameter, pitch, grade));
            }
        }
    }
    assert_eq!(
        differing,
        [
            (Side::Internal, 10.0, 1.5, 6),
            (Side::External, 10.0, 1.5, 4),
            (Side::External, 10.0, 1.5, 7),
            (Side::Internal, 20.0, 1.25, 6),
            (Side::External, 20.0, 1.25, 3),
            (Side::External, 20.0, 1.25, 4),
            (Side::External, 20.0, 1.25, 7),
            (Side::Internal, 20.0, 1.5, 6),
            (Side::External, 20.0, 1.5, 7),
            (Side::Internal, 52.0, 1.5, 4),
            (Side::Internal, 52.0, 1.5, 7),
        ]
    );
}

#[track_caller]
fn check_cell(what: &str, got: flangewright::standards::iso_tolerance::Tolerance, um: f64) {
    if is_listed(um) {
        assert_eq!(
            (got.um, got.basis, got.left_blank),
            (um, Basis::Table, false),
            "{what}"
        );
    } else {
        assert!(
            got.left_blank && got.basis == Basis::Computed,
            "{what} is blank in the table"
        );
    }
}

#[test]
fn blanks_of_table_5_are_those_over_a_quarter_of_the_pitch() {
    for (diameter, pitch, internal, _) in GROUPS {
        let (over, up_to) = diameter_group_mm(diameter);
        for (grade, um) in (4..=8).zip(internal) {
            let mean = (over * up_to).sqrt();
            let formula = nearest_r40_um(formula_pitch_diameter_um(
                Side::Internal,
                mean,
                pitch,
                grade,
            ));
            assert_eq!(
                !is_listed(um),
                formula > 250.0 * pitch,
                "d {diameter} P {pitch} grade {grade}"
            );
        }
    }
}

#[test]
fn computed_pairs_that_the_tables_lack() {
    // The standard's formula rounded to R40; 45-90 / 0.75 / grade 6 lies almost midway, 121.5.
    let rows = [
        (
            42.0,
            0.5,
            [80.0, 100.0, 125.0, 160.0, 200.0],
            [60.0, 75.0, 95.0, 118.0, 150.0],
        ),
        (
            42.0,
            0.75,
            [95.0, 118.0, 150.0, 190.0, 236.0],
            [71.0, 90.0, 112.0, 140.0, 180.0],
        ),
        (
            52.0,
            0.5,
            [90.0, 112.0, 140.0, 180.0, 224.0],
            [67.0, 85.0, 106.0, 132.0, 170.0],
        ),
        (
            52.0,
            0.75,
            [106.0, 132.0, 160.0, 212.0, 265.0],
            [75.0, 95.0, 125.0, 150.0, 190.0],
        ),
        (
            52.0,
            1.0,
            [118.0, 140.0, 180.0, 236.0, 280.0],
            [85.0, 112.0, 140.0, 170.0, 224.0],
        ),
    ];
    for (diameter, pitch, internal, external) in rows {
        for (grade, um) in (4..=8).zip(internal) {
            let got = pitch_diameter_tolerance(Side::Internal, diameter, pitch, grade);
            assert_eq!(
                (got.um, got.basis),
                (um, Basis::Computed),
                "TD2 {diameter} {pitch} {grade}"
            );
            assert_eq!(
                got.left_blank,
                um > 250.0 * pitch,
                "TD2 {diameter} {pitch} {grade}"
            );
        }
        for (grade, um) in (4..=8).zip(external) {
            let got = pitch_diameter_tolerance(Side::External, diameter, pitch, grade);
            assert_eq!(
                (got.um, got.basis),
                (um, Basis::Computed),
                "Td2 {diameter} {pitch} {grade}"
            );
            assert!(!got.left_blank);
        }
    }
}

#[test]
fn geometric_means_of_the_groups() {
    for (diameter, mean) in [
        (10.0, 7.92),
        (11.2, 7.92),
        (11.3, 15.84),
        (45.0, 31.749),
        (45.01, 63.640),
    ] {
        let (over, up_to) = diameter_group_mm(diameter);
        close("mean", (over * up_to).sqrt(), mean, 6e-3);
    }
}
