//! Settings of a dividing head: US Army course OD1644 (dividing head, hole circles of a double-sided plate), an edition
//! of Machinery's Handbook of 1916 (angles by 40:1), and the rest by the formula `T = K A / 360` worked by hand. The
//! hole circles of the three plates are from memory, as seen in public code.

use flangewright::plan::{CrankSetting, settings};
use flangewright::workshop::DividingHead;

fn head(ratio: u32, plates: &[&[u32]]) -> DividingHead {
    DividingHead {
        is_there: true,
        name: "of the tests".to_owned(),
        ratio,
        plates: plates.iter().map(|plate| plate.to_vec()).collect(),
        takes_lathe_chuck: true,
    }
}

const THREE_PLATES: [&[u32]; 3] = [
    &[15, 16, 17, 18, 19, 20],
    &[21, 23, 27, 29, 31, 33],
    &[37, 39, 41, 43, 47, 49],
];
const DOUBLE_SIDED: [&[u32]; 2] = [
    &[24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43],
    &[46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66],
];

/// Turns, spaces, circle, and the error in seconds.
type Printed = (u32, u32, u32, f64);

/// The printed setting is among those of the least error, and its error is the printed one.
#[track_caller]
fn check(head: &DividingHead, angle_deg: f64, (turns, spaces, circle, seconds): Printed) {
    let found = settings(head, angle_deg);
    let is_it = |one: &CrankSetting| {
        one.turns == turns && one.spaces == spaces && (spaces == 0 || one.circle == circle)
    };
    let one = found
        .iter()
        .find(|one| is_it(one))
        .unwrap_or_else(|| panic!("{angle_deg}: {found:?}"));
    let error = one.error_deg * 3600.0;
    assert!((error - seconds).abs() < 0.06, "{angle_deg}: {error}");
}

#[test]
fn angles_on_four_heads() {
    let heads = [
        head(40, &THREE_PLATES),
        head(40, &DOUBLE_SIDED),
        head(60, &THREE_PLATES),
        head(90, &THREE_PLATES),
    ];
    let rows: [(f64, [Printed; 4]); 8] = [
        (
            17.0 + 20.0 / 60.0,
            [
                (1, 25, 27, 0.0),
                (1, 50, 54, 0.0),
                (2, 16, 18, 0.0),
                (4, 5, 15, 0.0),
            ],
        ),
        (
            35.0,
            [
                (3, 16, 18, 0.0),
                (3, 48, 54, 0.0),
                (5, 15, 18, 0.0),
                (8, 12, 16, 0.0),
            ],
        ),
        (
            11.5,
            [
                (1, 5, 18, 0.0),
                (1, 15, 54, 0.0),
                (1, 45, 49, 36.7),
                (2, 14, 16, 0.0),
            ],
        ),
        (
            48.0 + 40.0 / 60.0,
            [
                (5, 11, 27, 0.0),
                (5, 22, 54, 0.0),
                (8, 2, 18, 0.0),
                (12, 3, 18, 0.0),
            ],
        ),
        (
            120.0,
            [
                (13, 5, 15, 0.0),
                (13, 8, 24, 0.0),
                (20, 0, 15, 0.0),
                (30, 0, 15, 0.0),
            ],
        ),
        (
            60.0,
            [
                (6, 10, 15, 0.0),
                (6, 16, 24, 0.0),
                (10, 0, 15, 0.0),
                (15, 0, 15, 0.0),
            ],
        ),
        (
            45.0,
            [
                (5, 0, 15, 0.0),
                (5, 0, 24, 0.0),
                (7, 8, 16, 0.0),
                (11, 4, 16, 0.0),
            ],
        ),
        (
            6.3794,
            [
                (0, 22, 31, 27.7),
                (0, 17, 24, -15.8),
                (1, 3, 47, 12.9),
                (1, 22, 37, -3.7),
            ],
        ),
    ];
    for (angle, printed) in rows {
        for (head, printed) in heads.iter().zip(printed) {
            check(head, angle, printed);
        }
    }
}

/// OD1644: six divisions are 6 turns and 12 in 18 or 26 in 39; 42 divisions are 20 in 21; 54' are 2 in 20; and the
/// handbook of 1916: 1 degree is 2 in 18 or 3 in 27, 20' is 1 in 27, 30' is 1 in 18.
#[test]
fn printed_divisions() {
    let three = head(40, &THREE_PLATES);
    check(&three, 60.0, (6, 12, 18, 0.0));
    check(&three, 60.0, (6, 26, 39, 0.0));
    check(&three, 360.0 / 42.0, (0, 20, 21, 0.0));
    check(&three, 54.0 / 60.0, (0, 2, 20, 0.0));
    check(&three, 1.0, (0, 2, 18, 0.0));
    check(&three, 1.0, (0, 3, 27, 0.0));
    check(&three, 20.0 / 60.0, (0, 1, 27, 0.0));
    check(&three, 30.0 / 60.0, (0, 1, 18, 0.0));
    check(&head(40, &DOUBLE_SIDED), 360.0 / 42.0, (0, 40, 42, 0.0));
}

/// OD1644: 24' are 540 / 24 = 22.5, so 1 hole in 23 comes to 23.478'.
#[test]
fn the_nearest_circle_to_24_minutes() {
    let only = head(40, &[&[23]]);
    let one = settings(&only, 24.0 / 60.0)[0];
    assert_eq!((one.turns, one.spaces, one.circle), (0, 1, 23));
    assert!((one.error_minutes() + 0.52).abs() < 0.005);
}

/// Every tenth of a degree: no hole of any circle comes nearer, tried one by one without rounding.
#[test]
fn no_hole_comes_nearer_at_any_tenth_of_a_degree() {
    for head in [
        head(40, &THREE_PLATES),
        head(40, &DOUBLE_SIDED),
        head(60, &THREE_PLATES),
        head(90, &THREE_PLATES),
    ] {
        let circles: Vec<u32> = head.plates.iter().flatten().copied().collect();
        for tenth in 1..3600 {
            let angle = f64::from(tenth) / 10.0;
            let part = (f64::from(head.ratio) * angle / 360.0).fract();
            let least = circles
                .iter()
                .flat_map(|circle| {
                    (0..=*circle).map(move |hole| f64::from(hole) / f64::from(*circle))
                })
                .map(|share| (share - part).abs())
                .fold(f64::INFINITY, f64::min)
                * 360.0
                / f64::from(head.ratio);
            let all = settings(&head, angle);
            assert!(!all.is_empty());
            for one in all {
                assert!((one.error_deg.abs() - least).abs() < 2e-9, "{angle}: {one}");
                let set = (f64::from(one.turns) + f64::from(one.spaces) / f64::from(one.circle))
                    * 360.0
                    / f64::from(head.ratio);
                assert!((set - angle - one.error_deg).abs() < 1e-9, "{angle}: {one}");
                assert!(one.spaces < one.circle);
            }
        }
    }
}

/// Worst case over all angles lies beside a whole turn: half the first hole of 49, 331 seconds at 40:1 (own count).
#[test]
fn the_worst_error_of_three_plates() {
    let three = head(40, &THREE_PLATES);
    let worst = (0..90_000)
        .map(|step| {
            settings(&three, f64::from(step) / 10_000.0)[0]
                .error_deg
                .abs()
                * 3600.0
        })
        .fold(0.0, f64::max);
    assert!((worst - 331.0).abs() < 1.0, "{worst}");
}
