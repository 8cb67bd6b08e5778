//! `settle`: a design is mended and written, or it is said what contradicts what.

use std::path::PathBuf;

use flangewright::document::{Choice, RingKey, read_design};

use super::program::{Answer, Bench, run};

fn thin_lip(bench: &Bench) -> PathBuf {
    bench.changed("thin.ron", |design| {
        design.ring.dimensions.get_mut(RingKey::LipThickness).value = Choice::Set(0.5);
    })
}

fn settled(bench: &Bench, moves: &[&str], more: &[&str]) -> Answer {
    let (file, out) = (thin_lip(bench), bench.path("out.ron"));
    let mut arguments = vec![
        "settle",
        file.to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
    ];
    for one in moves {
        arguments.extend(["--move", one]);
    }
    arguments.extend(more);
    run(arguments)
}

/// A lip of 0.5 goes to 0.8, the limit.
#[test]
fn the_mended_design_is_written_and_has_no_clash() {
    let bench = Bench::new();
    let answer = settled(&bench, &["lip_thickness=0.3..2.0", "flange_diameter"], &[]);
    assert_eq!(answer.code, 0, "{}{}", answer.out, answer.err);
    assert!(
        answer.out.contains("lip_thickness: 0.50 mm to 0.80 mm"),
        "{}",
        answer.out
    );
    let out = bench.path("out.ron");
    let design = read_design(&std::fs::read_to_string(&out).unwrap()).unwrap();
    let lip = design.ring.dimensions.lip_thickness.value;
    assert!(
        matches!(lip, Choice::Set(value) if (value - 0.8).abs() < 1e-9),
        "{lip:?}"
    );
    assert_eq!(run(["check", out.to_str().unwrap()]).code, 0);
    let again = settled(&bench, &["lip_thickness"], &[]);
    assert_eq!(again.code, 2, "a file that is there is kept");
    assert!(again.err.contains("--force"), "{}", again.err);
    assert_eq!(settled(&bench, &["lip_thickness"], &["--force"]).code, 0);
}

#[test]
fn a_contradiction_is_told_and_nothing_written() {
    let bench = Bench::new();
    let answer = settled(&bench, &["lip_thickness=0.3..0.7"], &[]);
    assert_eq!(answer.code, 1, "{}{}", answer.out, answer.err);
    assert!(
        answer.out.contains("finding lip-thickness"),
        "{}",
        answer.out
    );
    assert!(
        answer.out.contains("the bounds of lip_thickness"),
        "{}",
        answer.out
    );
    assert!(!bench.path("out.ron").exists());
}

#[test]
fn bounds_that_are_none_are_refused() {
    let bench = Bench::new();
    for (text, said) in [
        ("lip_thickness=0.8", "LOW..HIGH"),
        ("lip_thickness=thin..2", "thin"),
        ("lip_thickness=2..1", "lesser first"),
        ("lip", "no ring dimension"),
    ] {
        let answer = settled(&bench, &[text], &[]);
        assert_eq!(answer.code, 2, "{text}: {}", answer.out);
        assert!(answer.err.contains(said), "{text}: {}", answer.err);
    }
}
