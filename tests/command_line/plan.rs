//! `plan`: two sheets a machinist can read, or the reason why there are none.

use flangewright::document::{Reading, RingKey, SizeOf, write_ron};
use flangewright::mount::Interface;
use flangewright::workshop::Workshop;

use super::program::{Bench, demo, run};

#[test]
fn both_sheets_are_printed() {
    let file = demo("archive_portrait");
    let answer = run(["plan", file.to_str().unwrap()]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    for told in [
        "SHOP PLAN",
        "ORDER OF CUTS",
        "DIVIDING, seen from the body side",
        "THREAD M42x1",
        "half-nut",
        "INSPECTION",
        "ISO 14253-1",
        "rules of the workshop you stand in come first",
    ] {
        assert!(
            answer.out.to_lowercase().contains(&told.to_lowercase()),
            "{told}: {}",
            answer.out
        );
    }
    assert!(answer.out.matches("[ ]").count() > 30);
    assert!(!answer.out.contains("NaN") && !answer.out.contains("inf "));
    assert_eq!(run(["plan", file.to_str().unwrap()]).out, answer.out);
}

#[test]
fn a_ring_that_clashes_is_not_to_be_cut() {
    let good = run(["plan", demo("archive_portrait").to_str().unwrap()]);
    assert!(!good.out.contains("lip-thickness: "), "{}", good.out);
    let clashing = run(["plan", demo("four_clashes").to_str().unwrap()]);
    assert_eq!(clashing.code, 0, "{}", clashing.err);
    let (warning, plan) = clashing.out.split_once("MATERIAL").unwrap();
    assert!(warning.contains("DO NOT CUT") && warning.contains("lip-thickness: "));
    assert!(plan.contains("ORDER OF CUTS"));
}

#[test]
fn readings_in_the_design_are_judged() {
    let bench = Bench::new();
    let file = bench.changed("read.ron", |design| {
        design.readings.push(Reading {
            dimension: SizeOf::Ring(RingKey::FlangeDiameter),
            values: vec![12.0, 12.0, 12.01],
            instrument: "caliper 0.02".to_owned(),
            places: 0,
            after_corrections: 0,
        });
    });
    let answer = run(["plan", file.to_str().unwrap()]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    assert!(answer.out.contains("Flange diameter: 12.003 mm") && answer.out.contains("OUT"));
}

#[test]
fn the_plan_is_written_by_the_ending_and_never_over_a_file() {
    let bench = Bench::new();
    let file = demo("archive_portrait");
    for (name, begins) in [("plan.pdf", "%PDF-"), ("plan.TXT", "SHOP PLAN")] {
        let out = bench.path(name);
        let ask = |more: &[&str]| {
            let mut all = vec![
                "plan",
                file.to_str().unwrap(),
                "--out",
                out.to_str().unwrap(),
            ];
            all.extend(more);
            run(all)
        };
        let answer = ask(&[]);
        assert_eq!(answer.code, 0, "{}", answer.err);
        assert!(answer.out.contains(name));
        let first = std::fs::read(&out).unwrap();
        assert!(first.starts_with(begins.as_bytes()), "{name}");
        let again = ask(&[]);
        assert_eq!(again.code, 2);
        assert!(again.err.contains("--force"), "{}", again.err);
        assert_eq!(ask(&["--force"]).code, 0);
        assert_eq!(std::fs::read(&out).unwrap(), first);
    }
    let wrong = bench.path("plan.png");
    let answer = run([
        "plan",
        file.to_str().unwrap(),
        "--out",
        wrong.to_str().unwrap(),
    ]);
    assert_eq!(answer.code, 2);
    assert!(answer.err.contains(".pdf or .txt"), "{}", answer.err);
    assert!(!wrong.exists());
}

#[test]
fn a_workshop_with_a_bad_value_is_refused_by_name() {
    let bench = Bench::new();
    let mut workshop = Workshop::default_set().unwrap();
    workshop.cutters[0].diameter_mm = -4.0;
    let shop = bench.write("bad.ron", &write_ron(&workshop).unwrap());
    let file = demo("archive_portrait");
    let answer = run([
        "plan",
        file.to_str().unwrap(),
        "--workshop",
        shop.to_str().unwrap(),
    ]);
    assert_eq!(answer.code, 2);
    assert!(
        answer.err.contains("end mill 4, diameter") && answer.err.contains("allowed"),
        "{}",
        answer.err
    );
}

#[test]
fn a_workshop_without_the_tool_says_which() {
    let bench = Bench::new();
    let mut workshop = Workshop::default_set().unwrap();
    workshop
        .turning_tools
        .retain(|tool| !tool.name.contains("threading"));
    let shop = bench.write("shop.ron", &write_ron(&workshop).unwrap());
    let file = demo("archive_portrait");
    let answer = run([
        "plan",
        file.to_str().unwrap(),
        "--workshop",
        shop.to_str().unwrap(),
    ]);
    assert_eq!(answer.code, 2);
    assert!(
        answer.err.contains("inside threading tool") && answer.out.is_empty(),
        "{}",
        answer.err
    );
}

#[test]
fn an_unknown_value_that_stops_the_ring_is_named() {
    let bench = Bench::new();
    let file = bench.changed("unknown.ron", |design| {
        design.body.throat = Interface::Unknown;
    });
    let answer = run(["plan", file.to_str().unwrap()]);
    assert_eq!(answer.code, 2);
    assert!(answer.err.contains("throat"), "{}", answer.err);
}
