//! What the front page promises.

use serde_json::Value;

use super::program::{Bench, run};

const PAGE: &str = include_str!("../../README.md");

/// The indented block of the page that begins with `first`, without its indent.
fn block(first: &str) -> String {
    let lines: Vec<&str> = PAGE
        .lines()
        .skip_while(|line| line.trim_start() != first || !line.starts_with("    "))
        .take_while(|line| line.starts_with("    "))
        .map(|line| &line[4..])
        .collect();
    assert!(!lines.is_empty(), "{first} is not on the page");
    lines.join("\n")
}

#[test]
fn the_smallest_design_of_the_page_is_read_and_lacks_values() {
    let bench = Bench::new();
    let file = bench.write("small.ron", &block("("));
    let answer = run(["check", "--json", file.to_str().unwrap()]);
    assert_eq!(answer.code, 1, "{}", answer.err);
    let line: Value = serde_json::from_str(&answer.out).unwrap();
    assert!((line["ring"]["seat_height"].as_f64().unwrap() - 1.46).abs() < 1e-9);
}

#[test]
fn the_thread_of_the_page_is_what_is_printed() {
    let answer = run(["thread", "M42x1-6H", "--json"]);
    let mut told: Value = serde_json::from_str(&block_of_json("{\"designation\"")).unwrap();
    let mut printed: Value = serde_json::from_str(&answer.out).unwrap();
    // The page leaves the name of the standard out.
    told["source"].take();
    printed["source"].take();
    assert_eq!(told, printed);
}

fn block_of_json(start: &str) -> String {
    let first = PAGE
        .lines()
        .find(|line| line.trim_start().starts_with(start))
        .unwrap();
    block(first.trim_start())
}

#[test]
fn every_command_of_the_page_is_there_with_its_options() {
    let rows = PAGE
        .lines()
        .filter_map(|line| line.strip_prefix("| `flangewright "));
    let mut seen = 0;
    for row in rows {
        let (usage, _) = row.split_once('`').unwrap();
        let Some(task) = usage
            .split(' ')
            .next()
            .filter(|word| word.chars().all(char::is_lowercase))
        else {
            continue;
        };
        seen += 1;
        let help = run([task, "--help"]).out;
        let options = usage
            .split([' ', '[', ']'])
            .filter(|word| word.starts_with("--"));
        for option in options {
            assert!(help.contains(option), "{task} {option}: {help}");
        }
    }
    assert!(seen >= 10, "{seen}");
}
