//! Spoilt text is refused with a message, or it is a design that may be worked with; the reader never panics.

use std::panic::catch_unwind;

use flangewright::document::{ReadError, faults_of, read_design, read_library, write_ron};
use flangewright::evaluate::evaluate;
use flangewright::workshop::Workshop;

use crate::dice::Dice;
use crate::pairs::plausible;

const CASES: usize = 10_000;
const VALUES: [&str; 14] = [
    "NaN",
    "inf",
    "-inf",
    "-1",
    "0",
    "1e300",
    "-1e300",
    "1e-300",
    "\"text\"",
    "()",
    "[]",
    "None",
    "true",
    "99999999999999999999",
];

/// Text with one thing wrong, or a few.
fn spoilt(dice: &mut Dice, text: &str) -> String {
    let mut bytes = text.as_bytes().to_vec();
    match dice.below(6) {
        0 => bytes.truncate(dice.below(text.len())),
        1 => {
            for _ in 0..=dice.below(4) {
                let at = dice.below(bytes.len());
                bytes[at] = dice.below(256) as u8;
            }
        }
        2 => {
            let (from, length) = (dice.below(bytes.len()), dice.below(200));
            let to = (from + length).min(bytes.len());
            bytes.drain(from..to);
        }
        3 => {
            let (from, at) = (dice.below(bytes.len()), dice.below(bytes.len()));
            let piece = bytes[from..(from + dice.below(200)).min(text.len())].to_vec();
            bytes.splice(at..at, piece);
        }
        _ => return with_another_value(dice, text),
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// One number of the text replaced.
fn with_another_value(dice: &mut Dice, text: &str) -> String {
    let starts: Vec<usize> = text.match_indices(": ").map(|(at, _)| at + 2).collect();
    let at = dice.pick(&starts);
    let end = text[at..]
        .find([',', '\n', ')'])
        .map_or(text.len(), |length| at + length);
    format!("{}{}{}", &text[..at], dice.pick(&VALUES), &text[end..])
}

#[test]
fn ten_thousand_spoilt_texts() {
    let workshop = Workshop::default_set().unwrap();
    let texts: Vec<String> = (0..20)
        .map(|index| write_ron(&plausible(50, index)).unwrap())
        .collect();
    let mut dice = Dice::new(51);
    let (mut read, mut refused) = (0, 0);
    for case in 0..CASES {
        let text = spoilt(&mut dice, &texts[case % texts.len()]);
        let outcome = catch_unwind(|| read_design(&text))
            .unwrap_or_else(|_| panic!("case {case} panicked:\n{text}"));
        match outcome {
            Ok(design) => {
                assert_eq!(faults_of(&design), [], "case {case}");
                read += 1;
                if read % 10 == 0 {
                    let judged = catch_unwind(|| evaluate(&design, &workshop).findings.len());
                    assert!(
                        judged.is_ok(),
                        "case {case} panicked in the evaluation:\n{text}"
                    );
                }
            }
            Err(error) => {
                assert!(!error.to_string().trim().is_empty(), "case {case}");
                refused += 1;
            }
        }
    }
    assert!(
        read > CASES / 100 && refused > CASES / 10,
        "{read} read, {refused} refused"
    );
}

/// A number in the place of every number: none of these may come through as a value.
#[test]
fn no_value_that_is_no_number_comes_through() {
    let text = write_ron(&plausible(50, 1)).unwrap();
    for value in ["NaN", "inf", "-inf", "1e300"] {
        for (at, _) in text.match_indices("value: ") {
            let start = at + "value: ".len();
            if !text[start..].starts_with(|letter: char| letter.is_ascii_digit()) {
                continue;
            }
            let end = start + text[start..].find([',', '\n', ')']).unwrap();
            let spoilt = format!("{}{value}{}", &text[..start], &text[end..]);
            let error = read_design(&spoilt)
                .expect_err(&spoilt[at.saturating_sub(60)..(end + 10).min(spoilt.len())]);
            assert!(matches!(error, ReadError::Faults(_)), "{error}");
            assert!(error.to_string().contains("allowed"), "{error}");
        }
    }
}

#[test]
fn deep_and_huge_texts_are_refused() {
    for one in ["(", "[", "Some(", "(lens:", "{", "\"", "/*", "Known(value:"] {
        for count in [6, 1_000, 100_000] {
            let text = one.repeat(count);
            assert!(read_design(&text).is_err(), "{one}");
            assert!(read_library(&text).is_err(), "{one}");
        }
    }
    let long = format!(
        "(format: 1, name: \"{}\", lens: (), body: ())",
        "x".repeat(10_000_000)
    );
    assert!(matches!(read_design(&long), Err(ReadError::TooLarge { bytes }) if bytes > 10_000_000));
    for empty in ["", " \n\t", "// nothing but a remark"] {
        assert!(read_design(empty).is_err(), "{empty:?}");
    }
}
