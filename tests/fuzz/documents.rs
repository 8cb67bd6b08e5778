//! Target: the text of design, mounts and workshop files.

use std::fs;
use std::path::Path;

use flangewright::document::{Library, faults_of, read_design, read_library, read_ron, write_ron};
use flangewright::workshop::Workshop;

use crate::campaign::campaign;
use crate::outcome::Outcome;
use crate::pairs::plausible;
use crate::spoil::spoilt_text;

/// What the reader takes notice of.
const WORDS: [&str; 40] = [
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    ",",
    ":",
    "\"",
    "\\",
    "\\u{0}",
    "/*",
    "*/",
    "//",
    "Some(",
    "None",
    "()",
    "true",
    "Known",
    "Unknown",
    "Measured",
    "Assumed(",
    "Published(",
    "Standard(",
    "Derived",
    "Set(",
    "format: 1",
    "format: 2",
    "lens: (",
    "body: (",
    "ring: (",
    "value: ",
    "readings: [",
    "variants: [",
    "#![enable(implicit_some)]",
    "r#\"",
    "b'\\xff'",
    "'x'",
    "\u{feff}",
    "\u{1f527}",
];
/// Longer texts only take longer; the limit of a file's size has tests of its own.
const LONGEST: usize = 60_000;

/// The files of the corpus and those that the program brings.
fn corpus() -> Vec<String> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut texts = Vec::new();
    for folder in [
        "tests/fuzz/corpus/documents",
        "assets/demos",
        "assets/mounts",
    ] {
        let mut paths: Vec<_> = fs::read_dir(here.join(folder))
            .unwrap()
            .map(|entry| entry.unwrap().path())
            .collect();
        paths.sort();
        texts.extend(paths.iter().map(|path| fs::read_to_string(path).unwrap()));
    }
    texts.push(Workshop::default_text().to_owned());
    texts.extend((0..6).map(|index| write_ron(&plausible(90, index)).unwrap()));
    texts
}

fn same_again<T: serde::Serialize>(read: &T, written: &str, kind: &str) {
    assert_eq!(
        write_ron(read).unwrap(),
        written,
        "{kind}: read back and written is not the same"
    );
}

fn try_one(text: &str) -> Outcome {
    let lists = match read_library(text) {
        Ok(library) => {
            let written = write_ron(&library).unwrap();
            same_again(&read_ron::<Library>(&written).unwrap(), &written, "mounts");
            "mounts"
        }
        Err(error) => {
            assert!(!error.to_string().trim().is_empty(), "no reason is given");
            ""
        }
    };
    let shop = match read_ron::<Workshop>(text) {
        Ok(workshop) => {
            let written = write_ron(&workshop).unwrap();
            same_again(
                &read_ron::<Workshop>(&written).unwrap(),
                &written,
                "workshop",
            );
            "workshop"
        }
        Err(error) => {
            assert!(!error.to_string().trim().is_empty(), "no reason is given");
            ""
        }
    };
    match read_design(text) {
        Ok(design) => {
            assert_eq!(faults_of(&design), []);
            let written = write_ron(&design).unwrap();
            let back = read_design(&written).unwrap();
            assert_eq!(back, design, "read back is another design");
            Outcome::of((written.len() / 16, lists, shop))
        }
        Err(error) => {
            let message = error.to_string();
            assert!(!message.trim().is_empty(), "no reason is given");
            Outcome::of_message(&format!("{lists}{shop}"), &message, text)
        }
    }
}

#[test]
fn documents() {
    campaign(
        "documents",
        corpus(),
        |dice, pool| spoilt_text(dice, pool, &WORDS, LONGEST),
        |text| try_one(text),
        |text| format!("{text:?}"),
    );
}
