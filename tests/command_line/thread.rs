//! `thread`: against printed limits.
//!
//! Sources: ISO 965-1 tables 1, 3, 4 and 5; ISO 68-1 for the basic profile; Machinery's Handbook 27, p. 1794, for
//! the formulas between them; ASME B1.1 for the unified limits, whose 1-32 UN row is worked by its formulas;
//! Machinery's Handbook 31, p. 2087, for the Whitworth profile.

use serde_json::{Value, json};

use super::program::run;

fn thread(designation: &str) -> Value {
    let answer = run(["thread", designation, "--json"]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    assert_eq!(answer.out.lines().count(), 1);
    serde_json::from_str(&answer.out).unwrap()
}

/// ISO 965-1: an openly licensed transcription of the norm prints the same limits for M42x1.
#[test]
fn m42x1_6h_has_the_printed_limits_and_one_side() {
    let answer = thread("M42x1-6H");
    assert_eq!(answer["designation"], "M42x1-6H");
    assert_eq!(answer["basis"], "table");
    assert_eq!(
        answer["internal"],
        json!({
            "major_min": 42.0, "major_max": null,
            "pitch_diameter_min": 41.35, "pitch_diameter_max": 41.52,
            "minor_min": 40.917, "minor_max": 41.153,
        })
    );
    assert!(answer.get("external").is_none());
}

/// ISO 965-1, 6g; the minor diameter is that of the flat root.
#[test]
fn m42x1_6g_has_the_printed_limits_and_no_least_minor_diameter() {
    let answer = thread("M42x1-6g");
    assert_eq!(
        answer["external"],
        json!({
            "major_min": 41.794, "major_max": 41.974,
            "pitch_diameter_min": 41.199, "pitch_diameter_max": 41.324,
            "minor_min": null, "minor_max": 40.891,
        })
    );
    assert!(answer.get("internal").is_none());
}

/// Without a class both sides are given, 6H and 6g. M42x1.5 as the same transcription prints it.
#[test]
fn without_a_class_both_sides_are_given() {
    let answer = thread("M42x1.5");
    let (inside, outside) = (&answer["internal"], &answer["external"]);
    assert_eq!(inside["pitch_diameter_min"], 41.026);
    assert_eq!(inside["pitch_diameter_max"], 41.226);
    assert_eq!(inside["minor_max"], 40.676);
    assert_eq!(outside["major_max"], 41.968);
    assert_eq!(outside["pitch_diameter_min"], 40.844);
    assert_eq!(outside["minor_max"], 40.344);
}

/// The pair of 42 and 0.75 stands in no table of ISO 965-1: its formulas and preferred numbers give these.
#[test]
fn a_pair_outside_the_tables_says_that_it_is_computed() {
    let answer = thread("M42x0,75-6H");
    assert_eq!(answer["designation"], "M42x0.75-6H");
    assert_eq!(answer["basis"], "computed");
    assert_eq!(answer["internal"]["pitch_diameter_max"], 41.663);
    assert_eq!(answer["internal"]["minor_max"], 41.378);
}

/// ASME B1.1, 1-32 UN, classes 2A and 2B, worked by its formulas in inches to four places.
#[test]
fn the_c_interface_thread_is_given_in_mm() {
    let answer = thread("1-32 UN");
    let near = |side: &str, name: &str, inches: f64| {
        let mm = answer[side][name].as_f64().unwrap();
        assert!((mm - inches * 25.4).abs() < 1e-4, "{side} {name} {mm}");
    };
    near("external", "major_max", 0.9989);
    near("external", "major_min", 0.9929);
    near("external", "pitch_diameter_max", 0.9786);
    near("external", "pitch_diameter_min", 0.9748);
    near("external", "minor_max", 0.9651);
    near("internal", "pitch_diameter_min", 0.9797);
    near("internal", "pitch_diameter_max", 0.9846);
    near("internal", "minor_min", 0.966);
    near("internal", "minor_max", 0.974);
}

/// The Whitworth profile: depth 0.640327 p (Machinery's Handbook 31, p. 2087), 26 threads to the inch.
#[test]
fn a_whitworth_thread_has_its_basic_profile_only() {
    let answer = thread("39 x 26 tpi Whitworth");
    assert_eq!(answer["basis"], "basic");
    let pitch_diameter = answer["internal"]["pitch_diameter_min"].as_f64().unwrap();
    assert!((pitch_diameter - (39.0 - 0.640_327 * 25.4 / 26.0)).abs() < 1e-3);
}

#[test]
fn text_says_the_same_as_json() {
    let answer = run(["thread", "M42x1-6H"]);
    assert_eq!(answer.code, 0);
    for number in ["42.000", "41.350", "41.520", "40.917", "41.153"] {
        assert!(answer.out.contains(number), "{}", answer.out);
    }
}

#[test]
fn what_is_no_thread_is_refused_with_a_right_one() {
    for wrong in [
        "",
        "M42",
        "M42x0",
        "M42x-1",
        "M42xNaN",
        "Mx1",
        "M1e300x1",
        "42",
        "M42x1-6Q",
        "1-0 UN",
        "M42x1-6H6H6H",
    ] {
        let answer = run(["thread", wrong]);
        assert_eq!(answer.code, 2, "{wrong}: {}", answer.out);
        assert!(answer.out.is_empty(), "{wrong}");
        assert!(answer.err.len() > 20, "{wrong}: {}", answer.err);
    }
}
