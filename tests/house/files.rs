//! A file holds one idea: it is short, and it leaves nothing for later.

use super::source::{rust_files, text_of, without_comments};

/// Lines of the longest file allowed.
const LONGEST: usize = 450;

#[test]
fn no_file_is_long() {
    for folder in ["src", "tests", "examples"] {
        for file in rust_files(folder) {
            let lines = file.text.lines().count();
            assert!(lines <= LONGEST, "{} has {lines} lines", file.path);
        }
    }
}

#[test]
fn every_file_says_what_it_is() {
    for file in rust_files("src") {
        assert!(
            file.is_tests() || file.text.starts_with("//!"),
            "{} does not open with a sentence that says what it is",
            file.path
        );
    }
}

#[test]
fn nothing_is_left_for_later() {
    for file in rust_files("src") {
        let code = without_comments(&file.text);
        for word in ["todo!", "unimplemented!", "dbg!"] {
            assert!(!code.contains(word), "{}: {word}", file.path);
        }
        for word in ["TODO", "FIXME"] {
            assert!(!file.text.contains(word), "{}: {word}", file.path);
        }
    }
}

/// The names under a head such as `[dependencies]`.
fn packages_under<'a>(manifest: &'a str, head: &str) -> Vec<&'a str> {
    manifest
        .lines()
        .skip_while(|line| *line != head)
        .skip(1)
        .take_while(|line| !line.starts_with('['))
        .filter_map(|line| line.split_once(" = ").map(|(name, _)| name))
        .collect()
}

#[test]
fn every_package_we_lean_on_has_a_line_that_says_what_for() {
    let manifest = text_of("Cargo.toml");
    let page = text_of("DEVELOPERS.md");
    let mut packages = packages_under(&manifest, "[dependencies]");
    packages.extend(packages_under(&manifest, "[dev-dependencies]"));
    assert!(packages.len() > 10, "{packages:?}");
    packages.retain(|package| {
        let start = format!("| `{package}` |");
        let line = page.lines().find(|line| line.starts_with(&start));
        let said = line.and_then(|line| line.split('|').nth(2)).unwrap_or("");
        said.trim().len() < 10
    });
    assert_eq!(packages, [""; 0], "DEVELOPERS.md does not say what for");
}

#[test]
fn every_package_we_lean_on_is_used() {
    let manifest = text_of("Cargo.toml");
    let code: Vec<String> = ["src", "examples"]
        .iter()
        .flat_map(|folder| rust_files(folder))
        .filter(|file| !file.is_tests())
        .map(|file| without_comments(&file.text))
        .collect();
    let mut packages = packages_under(&manifest, "[dependencies]");
    packages.retain(|package| {
        let name = package.replace('-', "_");
        let (path, whole) = (format!("{name}::"), format!("use {name}"));
        !code
            .iter()
            .any(|text| text.contains(&path) || text.contains(&whole))
    });
    assert_eq!(
        packages, [""; 0],
        "asked for in Cargo.toml and used nowhere"
    );
}
