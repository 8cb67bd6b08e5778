//! `new`: a design from the library.

use flangewright::document::read_design;

use super::program::{Bench, run};

const LENS: &str = "M42x1, register 45.46";
const BODY: &str = "bayonet 44.00, throat 54, 3 lugs";

#[test]
fn a_design_of_two_mounts_is_written_and_says_what_to_measure() {
    let bench = Bench::new();
    let out = bench.path("new.ron");
    let answer = run([
        "new",
        "--lens",
        LENS,
        "--body",
        BODY,
        "--out",
        out.to_str().unwrap(),
    ]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    let design = read_design(&std::fs::read_to_string(&out).unwrap()).unwrap();
    assert_eq!(design.lens.name, LENS);
    assert_eq!(design.body.name, BODY);
    assert_eq!(design.lens.register.number(), Some(45.46));
    assert!(
        answer.out.contains("to measure") && answer.out.contains("slot diameter"),
        "{}",
        answer.out
    );
    let checked = run(["check", out.to_str().unwrap()]);
    assert_eq!(
        checked.code, 1,
        "no ring yet: {}{}",
        checked.out, checked.err
    );
    assert!(
        checked.out.contains("clash   assumed-values"),
        "{}",
        checked.out
    );
}

#[test]
fn a_part_that_fits_one_name_is_enough() {
    let bench = Bench::new();
    let out = bench.path("new.ron");
    let answer = run([
        "new",
        "--lens",
        "iso 10935",
        "--body",
        "16.00",
        "--out",
        out.to_str().unwrap(),
    ]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    let design = read_design(&std::fs::read_to_string(&out).unwrap()).unwrap();
    assert!(design.lens.name.starts_with("C interface"));
}

#[test]
fn a_name_that_fits_none_or_several_is_refused_with_names() {
    let bench = Bench::new();
    let out = bench.path("new.ron");
    let out_text = out.to_str().unwrap();
    let none = run(["new", "--lens", "M43x1", "--body", BODY, "--out", out_text]);
    assert_eq!(none.code, 2);
    assert!(
        none.err.contains("M43x1") && none.err.contains("M42x1, register 45.46"),
        "{}",
        none.err
    );
    let several = run(["new", "--lens", LENS, "--body", "20.00", "--out", out_text]);
    assert_eq!(several.code, 2);
    assert!(
        several.err.contains("throat 54") && several.err.contains("throat 51.6"),
        "{}",
        several.err
    );
    assert!(!out.exists());
}

#[test]
fn a_design_that_is_there_is_kept_without_force() {
    let bench = Bench::new();
    let out = bench.write("new.ron", "mine");
    let arguments = [
        "new",
        "--lens",
        LENS,
        "--body",
        BODY,
        "--out",
        out.to_str().unwrap(),
    ];
    assert_eq!(run(arguments).code, 2);
    assert_eq!(std::fs::read_to_string(&out).unwrap(), "mine");
    assert_eq!(run(arguments.into_iter().chain(["--force"])).code, 0);
    assert_ne!(std::fs::read_to_string(&out).unwrap(), "mine");
}
