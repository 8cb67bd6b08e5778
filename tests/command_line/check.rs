//! `check`: exit codes, JSON, text.

use std::io::Read;
use std::process::Stdio;

use flangewright::checks::FindingKey;
use flangewright::document::{Choice, RingKey};
use serde_json::Value;
use tempfile::TempDir;

use super::program::{Bench, command, demo, run};

fn json_lines(text: &str) -> Vec<Value> {
    text.lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

#[test]
fn a_good_design_has_no_clash_and_exit_code_0() {
    let answer = run([
        "check",
        "--json",
        demo("archive_portrait").to_str().unwrap(),
    ]);
    assert_eq!(answer.code, 0, "{}{}", answer.out, answer.err);
    let lines = json_lines(&answer.out);
    assert_eq!(lines.len(), 1);
    assert_eq!(lines[0]["clashes"], 0);
}

#[test]
fn every_check_is_in_the_json_with_every_part() {
    let file = demo("archive_portrait");
    let answer = run(["check", "--json", file.to_str().unwrap()]);
    let line = &json_lines(&answer.out)[0];
    assert_eq!(line["file"], file.to_str().unwrap());
    let findings = line["findings"].as_array().unwrap();
    for key in FindingKey::ALL {
        let found: Vec<_> = findings
            .iter()
            .filter(|finding| finding["key"] == key.name())
            .collect();
        assert_eq!(found.len(), 1, "{}", key.name());
        let severity = found[0]["severity"].as_str().unwrap();
        assert!(["clash", "caution", "note", "ok"].contains(&severity));
        for part in ["value", "limit", "margin", "unit", "working", "remedy"] {
            assert!(found[0].get(part).is_some(), "{}: no {part}", key.name());
        }
    }
}

/// Seat height = lens register - body register: 45.46 - 44.00 = 1.46.
#[test]
fn the_ring_is_in_the_json_without_noise() {
    let answer = run([
        "check",
        "--json",
        demo("archive_portrait").to_str().unwrap(),
    ]);
    let ring = json_lines(&answer.out)[0]["ring"].clone();
    assert_eq!(ring["seat_height"].to_string(), "1.46");
    for key in RingKey::ALL {
        let value = ring[key.name()]
            .as_f64()
            .unwrap_or_else(|| panic!("{} is missing", key.name()));
        assert!(
            (value * 1e6 - (value * 1e6).round()).abs() < 1e-3,
            "{}: {value}",
            key.name()
        );
    }
}

#[test]
fn a_clash_gives_exit_code_1_and_a_remedy() {
    let bench = Bench::new();
    let file = bench.changed("thin.ron", |design| {
        design.ring.dimensions.get_mut(RingKey::LipThickness).value = Choice::Set(0.5);
    });
    let answer = run(["check", "--json", file.to_str().unwrap()]);
    assert_eq!(answer.code, 1, "{}", answer.err);
    let line = &json_lines(&answer.out)[0];
    assert!(line["clashes"].as_u64().unwrap() >= 1);
    let findings = line["findings"].as_array().unwrap();
    let lip = findings
        .iter()
        .find(|finding| finding["key"] == "lip-thickness")
        .unwrap();
    assert_eq!(lip["severity"], "clash");
    assert_eq!(lip["value"], 0.5);
    assert_eq!(lip["limit"], 0.8);
    assert_eq!(lip["margin"].to_string(), "-0.3");
    assert_eq!(lip["unit"], "mm");
    assert!(lip["remedy"].as_str().unwrap().contains("lip thickness"));
    assert!(!lip["working"].as_array().unwrap().is_empty());
}

#[test]
fn the_demo_of_clashes_has_them() {
    let answer = run(["check", demo("four_clashes").to_str().unwrap()]);
    assert_eq!(answer.code, 1, "{}{}", answer.out, answer.err);
    assert!(answer.out.contains("clash"));
}

#[test]
fn of_several_files_the_worst_decides_and_all_are_checked() {
    let (good, bad) = (demo("archive_portrait"), demo("four_clashes"));
    let (good, bad) = (good.to_str().unwrap(), bad.to_str().unwrap());
    let both = run(["check", "--json", bad, good]);
    assert_eq!(both.code, 1);
    assert_eq!(json_lines(&both.out).len(), 2);
    let with_a_gap = run(["check", "--json", good, "no such file.ron", bad]);
    assert_eq!(with_a_gap.code, 2);
    assert_eq!(json_lines(&with_a_gap.out).len(), 2);
    assert!(with_a_gap.err.contains("no such file.ron"));
}

#[test]
fn working_is_shown_on_request() {
    let file = demo("archive_portrait");
    let answer = run(["check", "--working", file.to_str().unwrap()]);
    assert!(
        answer.out.contains("lens register - body register"),
        "{}",
        answer.out
    );
    assert!(
        !run(["check", file.to_str().unwrap()])
            .out
            .contains("lens register - body register")
    );
}

/// Same design, same bytes.
#[test]
fn twice_the_same() {
    let file = demo("tall_ring");
    let arguments = ["check", "--json", file.to_str().unwrap()];
    assert_eq!(run(arguments).out, run(arguments).out);
}

/// What `check … | head -1` does: the reader goes away at once.
#[test]
fn a_reader_that_goes_away_is_no_fault() {
    let home = TempDir::new().unwrap();
    let file = demo("archive_portrait");
    let mut child = command(&home)
        .args(["check", "--json"])
        .args(std::iter::repeat_n(&file, 40))
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let mut err = String::new();
    child
        .stderr
        .take()
        .unwrap()
        .read_to_string(&mut err)
        .unwrap();
    let heard_out = run(["check", file.to_str().unwrap()]).code;
    assert_eq!(child.wait().unwrap().code(), Some(heard_out), "{err}");
    assert!(err.is_empty(), "{err}");
}

#[test]
fn no_file_named_is_a_fault_of_use() {
    assert_eq!(run(["check"]).code, 2);
    assert_eq!(run(["check", "--jsn", "x"]).code, 2);
}

#[test]
fn another_workshop_is_read_and_what_is_none_is_refused() {
    let bench = Bench::new();
    let shop = bench.write("shop.ron", include_str!("../../assets/workshop.ron"));
    let file = demo("archive_portrait");
    let file = file.to_str().unwrap();
    let own = run([
        "check",
        "--json",
        "--workshop",
        shop.to_str().unwrap(),
        file,
    ]);
    let shipped = run(["check", "--json", file]);
    assert_eq!((own.code, own.out), (shipped.code, shipped.out));
    let none = run(["check", "--workshop", file, file]);
    assert_eq!(none.code, 2);
    assert!(none.err.contains("archive_portrait.ron"), "{}", none.err);
}
