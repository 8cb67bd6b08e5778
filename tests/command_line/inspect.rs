//! `inspect`: the inspection sheet, printed or as a file.

use std::fs;

use flangewright::document::{Reading, RingKey, SizeOf};

use crate::program::{Bench, demo, run};

/// A design with readings of a seat that is 0.07 too thick.
fn thick(bench: &Bench) -> std::path::PathBuf {
    bench.changed("thick.ron", |design| {
        design.readings.push(Reading {
            dimension: SizeOf::Ring(RingKey::SeatHeight),
            values: [1.53, 1.54, 1.54, 1.53, 1.52, 1.52].to_vec(),
            instrument: "micrometer 0-25".to_owned(),
            places: 6,
            after_corrections: 0,
        });
    })
}

#[test]
fn limits_verdict_and_correction_are_printed() {
    let bench = Bench::new();
    let file = thick(&bench);
    let answer = run(["inspect", file.to_str().unwrap()]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    // Lines are broken to the width of the paper.
    let said = answer.out.replace("\n    ", " ");
    for told in [
        "[x]  Seat height",
        "1.445",
        "OUT",
        "ISO 14253-1",
        "parallel within",
        "By readings of the seat height: Skim 0.07 mm off the seat.",
        "further clockwise",
    ] {
        assert!(said.contains(told), "{told}: {}", answer.out);
    }
}

#[test]
fn a_sheet_is_written_as_pdf_or_text_and_never_over_another_file_unasked() {
    let bench = Bench::new();
    let file = thick(&bench);
    for (name, begins) in [("sheet.pdf", "%PDF-"), ("sheet.txt", "INSPECTION")] {
        let out = bench.path(name);
        let write = |force: &[&str]| {
            let fixed = [
                "inspect",
                file.to_str().unwrap(),
                "--out",
                out.to_str().unwrap(),
            ];
            run(fixed.iter().chain(force).copied())
        };
        let answer = write(&[]);
        assert_eq!(answer.code, 0, "{}", answer.err);
        let written = fs::read(&out).unwrap();
        assert!(written.starts_with(begins.as_bytes()), "{name}");
        let refused = write(&[]);
        assert_eq!(refused.code, 2);
        assert!(
            refused.err.contains("--force replaces it"),
            "{}",
            refused.err
        );
        assert_eq!(write(&["--force"]).code, 0);
        assert_eq!(fs::read(&out).unwrap(), written, "{name}: other bytes");
    }
}

#[test]
fn an_ending_that_is_no_sheet_and_a_design_without_a_ring_say_so() {
    let bench = Bench::new();
    let out = bench.path("sheet.doc");
    let design = demo("archive_portrait");
    let answer = run([
        "inspect",
        design.to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
    ]);
    assert_eq!(answer.code, 2);
    assert!(
        answer.err.contains(".pdf or .txt") && !out.exists(),
        "{}",
        answer.err
    );
    let blank = bench.write("blank.ron", "(format: 1, lens: (), body: ())");
    let answer = run(["inspect", blank.to_str().unwrap()]);
    assert_eq!(answer.code, 2);
    assert!(answer.err.contains("no whole ring"), "{}", answer.err);
}
