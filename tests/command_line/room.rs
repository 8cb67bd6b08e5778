//! `room`: spans as text and as JSON.

use flangewright::document::RingKey;
use serde_json::Value;

use super::program::{demo, run};

/// The lip may be 0.8 thick at least, 1.0 without a caution: the default limits.
#[test]
fn the_room_of_one_dimension_is_in_the_json() {
    let file = demo("archive_portrait");
    let answer = run(["room", file.to_str().unwrap(), "lip_thickness", "--json"]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    let room: Value = serde_json::from_str(&answer.out).unwrap();
    assert_eq!(room["dimension"], "lip_thickness");
    assert_eq!(room["unit"], "mm");
    assert_eq!(room["present"], 1.0);
    for (spans, least) in [("without_clash", 0.8), ("without_caution", 1.0)] {
        let span = &room[spans][0];
        assert!(
            (span["from"].as_f64().unwrap() - least).abs() < 0.001,
            "{span}"
        );
        assert_eq!(span["below"]["kind"], "findings");
        assert_eq!(span["below"]["findings"][0], "lip-thickness");
    }
}

#[test]
fn without_a_name_every_dimension_is_told() {
    let file = demo("archive_portrait");
    let answer = run(["room", file.to_str().unwrap()]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    for key in RingKey::ALL {
        assert!(
            answer.out.contains(&format!("{}: ", key.name())),
            "{}",
            key.name()
        );
    }
    assert!(answer.out.contains("no clash") && answer.out.contains("the present value"));
}

#[test]
fn a_name_that_is_none_is_refused_with_the_names() {
    let file = demo("archive_portrait");
    let answer = run(["room", file.to_str().unwrap(), "lip"]);
    assert_eq!(answer.code, 2);
    assert!(answer.err.contains("lip_thickness"), "{}", answer.err);
}
