//! Target: thread designations.

use flangewright::standards::Thread;

use crate::campaign::campaign;
use crate::outcome::Outcome;
use crate::spoil::spoilt_text;

/// What the reader takes notice of.
const WORDS: [&str; 36] = [
    "M",
    "m",
    "42",
    "1",
    "0.75",
    "0,75",
    "x",
    "×",
    "*",
    "-",
    "–",
    "6H",
    "6g",
    "5g6g",
    "4H5H",
    "UN",
    "UNC",
    "UNEF",
    "UNS",
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
    "BSW",
    "LH",
    " ",
    "\t",
    "1e9",
    "\u{0}",
];

fn corpus() -> Vec<String> {
    include_str!("corpus/designations.txt")
        .lines()
        .map(str::to_owned)
        .collect()
}

fn try_one(text: &str) -> Outcome {
    match text.parse::<Thread>() {
        Ok(thread) => {
            let written = thread.to_string();
            let back: Thread = written.parse().unwrap();
            assert_eq!(back, thread, "{written}");
            assert_eq!(back.to_string(), written);
            assert!(thread.pitch_mm().is_finite() && thread.pitch_mm() > 0.0);
            assert!(thread.nominal_mm().is_finite() && thread.nominal_mm() > 0.0);
            let limits = [thread.internal(), thread.external()];
            let kinds = limits.map(|limits| match limits {
                Ok(limits) => {
                    let words = format!("{limits:?}");
                    assert!(!words.contains("NaN") && !words.contains("inf"), "{words}");
                    0_u8
                }
                Err(error) => {
                    assert!(!error.to_string().is_empty());
                    1
                }
            });
            let size = (
                thread.nominal_mm().log2() as i32,
                thread.pitch_mm().log2() as i32,
            );
            Outcome::of((
                kinds,
                size,
                format!("{:?}{:?}", thread.form(), thread.class()),
            ))
        }
        Err(error) => {
            // The text itself stands in the message: the kind of the fault is its name.
            let kind = format!("{error:?}");
            let name = kind.split([' ', '(', '{']).next().unwrap_or_default();
            assert!(!error.to_string().is_empty());
            Outcome::of((name.to_owned(), text.len().checked_ilog2()))
        }
    }
}

#[test]
fn designations() {
    campaign(
        "designations",
        corpus(),
        |dice, pool| spoilt_text(dice, pool, &WORDS, 200),
        |text| try_one(text),
        |text| format!("{text:?}"),
    );
}
