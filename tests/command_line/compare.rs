//! `compare`: files and variants side by side, and what is written of it.

use flangewright::document::{Choice, RingKey, Variant};

use super::program::{Bench, demo, run};

#[test]
fn two_files_are_told_apart_by_what_differs() {
    let bench = Bench::new();
    let thick = demo("archive_portrait");
    let thin = bench.changed("thin lip.ron", |design| {
        design.ring.dimensions.get_mut(RingKey::LipThickness).value = Choice::Set(0.6);
    });
    let (csv, png) = (bench.path("table.csv"), bench.path("picture.png"));
    let answer = run([
        "compare",
        thick.to_str().unwrap(),
        thin.to_str().unwrap(),
        "--csv",
        csv.to_str().unwrap(),
        "--png",
        png.to_str().unwrap(),
    ]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    let row = answer
        .out
        .lines()
        .find(|line| line.contains("Lip thickness "))
        .unwrap();
    assert!(row.contains("0.60 mm"), "{row}");
    // 0.6 mm is 0.2 mm under the 0.8 mm below which a lip clashes, by default.
    let finding = answer
        .out
        .lines()
        .find(|line| line.starts_with("lip-thickness"))
        .unwrap();
    assert!(finding.contains("clash -0.20 mm"), "{finding}");
    assert!(answer.out.contains("metal against archive_portrait"));
    let table = std::fs::read_to_string(&csv).unwrap();
    assert!(table.starts_with("part,key,name,what,unit,archive_portrait,thin lip\r\n"));
    assert_eq!(&std::fs::read(&png).unwrap()[..8], b"\x89PNG\r\n\x1a\n");

    let again = run([
        "compare",
        thick.to_str().unwrap(),
        thin.to_str().unwrap(),
        "--csv",
        csv.to_str().unwrap(),
    ]);
    assert_eq!(again.code, 2);
    assert!(again.err.contains("--force replaces it"), "{}", again.err);
}

#[test]
fn one_file_is_compared_with_its_variants() {
    let bench = Bench::new();
    let file = bench.changed("ring.ron", |design| {
        let mut ring = design.ring.clone();
        ring.dimensions.get_mut(RingKey::EdgeBreak).value = Choice::Set(0.2);
        design.variants.push(Variant {
            name: "broken more".to_owned(),
            note: String::new(),
            ring,
        });
    });
    let answer = run(["compare", file.to_str().unwrap()]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    let rows: Vec<&str> = answer
        .out
        .lines()
        .filter(|line| line.starts_with("ring  "))
        .collect();
    assert_eq!(rows.len(), 1, "{}", answer.out);
    assert!(rows[0].contains("Edge break") && rows[0].contains("0.20 mm"));
}

#[test]
fn a_design_compared_with_itself_differs_nowhere() {
    let file = demo("archive_portrait");
    let answer = run(["compare", file.to_str().unwrap(), file.to_str().unwrap()]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    assert!(
        answer
            .out
            .starts_with("no dimension, mating value or limit differs")
    );
    let areas: Vec<&str> = answer
        .out
        .lines()
        .filter(|line| line.starts_with("archive_portrait (2), "))
        .collect();
    assert_eq!(areas.len(), 3, "{}", answer.out);
    assert!(
        areas
            .iter()
            .all(|line| line.contains("+0.00 mm²") && line.contains("-0.00 mm²"))
    );
}

#[test]
fn too_few_too_many_and_unreadable_are_said() {
    let file = demo("archive_portrait");
    let file = file.to_str().unwrap();
    let alone = run(["compare", file]);
    assert_eq!(alone.code, 2);
    assert!(alone.err.contains("give a second file"), "{}", alone.err);
    let many = run(["compare", file, file, file, file, file, file, file]);
    assert_eq!(many.code, 2);
    assert!(many.err.contains("at most 6"), "{}", many.err);
    let missing = run(["compare", file, "/nowhere/ring.ron"]);
    assert_eq!(missing.code, 2);
    assert!(missing.err.contains("/nowhere/ring.ron"), "{}", missing.err);
}
