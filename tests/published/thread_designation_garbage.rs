//! Thread designations put together at random from a fixed seed: nothing panics, and what is read reads back.

use flangewright::standards::Thread;

use crate::thread_designations::READ;

/// Pieces of a few designations.
const LIKELY: [&str; 9] = ["M42x", "1", "0,75", "-", "6H", " ", "-32", "UN", "LH"];

/// Pieces that designations are made of, and some that they are not.
const PIECES: [&str; 44] = [
    "M",
    "m",
    "42",
    "1",
    "0.75",
    "0,75",
    "x",
    "X",
    "*",
    "\u{d7}",
    "-",
    "\u{2013}",
    "6H",
    "6g",
    "5g6g",
    "H",
    "UN",
    "UNC",
    "unef",
    "2B",
    "3A",
    "1/4",
    "2 1/2",
    "/",
    "#",
    "\"",
    "in",
    "mm",
    "tpi",
    "Whitworth",
    "whit",
    "LH",
    " ",
    "\t",
    "0",
    "99999999999999999999",
    "1e9",
    "NaN",
    "inf",
    ".",
    ",",
    "\u{1f527}",
    "\u{0}",
    "\u{df}",
];

#[test]
fn garbage_never_panics_and_what_is_read_reads_back() {
    let mut state = 0x9e37_79b9_7f4a_7c15_u64;
    let mut next = move |bound: u64| {
        // xorshift64, fixed seed.
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        usize::try_from(state % bound).unwrap()
    };
    let mut read = 0;
    for round in 0..200_000 {
        // Every other round draws from the likely pieces only, so that some come out right.
        let pieces = if round % 2 == 0 {
            &PIECES[..]
        } else {
            &LIKELY[..]
        };
        let count = u64::try_from(pieces.len()).unwrap();
        let text: String = (0..next(9)).map(|_| pieces[next(count)]).collect();
        match text.parse::<Thread>() {
            Ok(thread) => {
                read += 1;
                let again: Thread = thread.to_string().parse().unwrap();
                assert_eq!(again, thread, "{text:?}");
                for limits in [thread.internal(), thread.external()].into_iter().flatten() {
                    assert!(
                        limits
                            .pitch_diameter_min
                            .or(limits.pitch_diameter_max)
                            .unwrap()
                            > 0.0
                    );
                }
            }
            Err(error) => assert!(!error.to_string().is_empty()),
        }
    }
    assert!(
        read > 20,
        "only {read} of the random texts were designations"
    );
}

#[test]
fn every_truncation_and_swap_of_a_good_one_is_survived() {
    for (typed, ..) in READ {
        let characters: Vec<char> = typed.chars().collect();
        for cut in 0..=characters.len() {
            let _ = characters[..cut]
                .iter()
                .collect::<String>()
                .parse::<Thread>();
            for other in ['x', '-', '9', '/', '\u{2033}', 'H', ',', '.'] {
                let mut changed = characters.clone();
                if let Some(place) = changed.get_mut(cut) {
                    *place = other;
                }
                if let Ok(thread) = changed.iter().collect::<String>().parse::<Thread>() {
                    assert_eq!(thread.to_string().parse::<Thread>().unwrap(), thread);
                }
            }
        }
    }
}
