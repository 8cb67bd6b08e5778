//! ISO 261:1998 table, as remembered: which lens threads are in it and which are not.

use flangewright::standards::iso_261::{coarse_pitch_mm, in_iso_261};

#[test]
fn usual_lens_threads_are_not_listed() {
    for (nominal, pitch) in [
        (39.0, 1.0),
        (40.0, 1.0),
        (42.0, 1.0),
        (48.0, 0.75),
        (48.0, 1.0),
        (52.0, 1.0),
        (25.0, 0.5),
        (25.0, 0.75),
        (42.0, 0.75),
    ] {
        assert_eq!(
            in_iso_261(nominal, pitch),
            Some(false),
            "M{nominal}x{pitch}"
        );
    }
}

#[test]
fn listed_fine_pitches() {
    let rows: [(&[f64], &[f64]); 5] = [
        (
            &[20.0, 22.0, 24.0, 25.0, 27.0, 28.0, 30.0],
            &[2.0, 1.5, 1.0],
        ),
        (&[26.0, 35.0, 38.0], &[1.5]),
        (&[32.0, 33.0, 36.0], &[2.0, 1.5]),
        (
            &[
                39.0, 40.0, 42.0, 45.0, 48.0, 50.0, 52.0, 55.0, 56.0, 58.0, 60.0, 62.0, 64.0, 65.0,
                68.0, 70.0, 72.0, 75.0, 76.0, 80.0,
            ],
            &[2.0, 1.5],
        ),
        (&[78.0], &[2.0]),
    ];
    for (diameters, pitches) in rows {
        for diameter in diameters {
            for pitch in [2.0, 1.75, 1.5, 1.25, 1.0, 0.75, 0.5] {
                let listed = pitches.contains(&pitch);
                assert_eq!(
                    in_iso_261(*diameter, pitch),
                    Some(listed),
                    "M{diameter}x{pitch}"
                );
            }
        }
    }
}

#[test]
fn coarse_pitches_from_24_mm() {
    // A public list of preferred sizes (ISO 261 and 262).
    for (nominal, pitch) in [
        (24.0, 3.0),
        (30.0, 3.5),
        (36.0, 4.0),
        (39.0, 4.0),
        (42.0, 4.5),
        (45.0, 4.5),
        (48.0, 5.0),
        (52.0, 5.0),
    ] {
        assert_eq!(coarse_pitch_mm(nominal), Some(pitch));
        assert_eq!(in_iso_261(nominal, pitch), Some(true));
    }
    assert_eq!(coarse_pitch_mm(25.0), None);
}

#[test]
fn beyond_the_list_nothing_is_claimed() {
    assert_eq!(in_iso_261(105.0, 1.0), None);
    assert_eq!(in_iso_261(42.0, 3.0), None);
}
