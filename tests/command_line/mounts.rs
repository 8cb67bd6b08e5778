//! `mounts`: the library as a table.

use super::program::{Bench, run};

#[test]
fn every_mount_is_listed_with_the_standing_of_its_register() {
    let answer = run(["mounts"]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    let library = flangewright::document::library().unwrap();
    let names = library
        .lenses
        .iter()
        .map(|lens| (&lens.name, lens.register.standing()))
        .chain(
            library
                .bodies
                .iter()
                .map(|body| (&body.name, body.register.standing())),
        );
    for (name, standing) in names {
        let mut lines = answer
            .out
            .lines()
            .filter(|line| line.starts_with(&format!("{name}  ")));
        let line = lines
            .next()
            .unwrap_or_else(|| panic!("{name} is not listed"));
        assert!(line.contains(standing.mark()), "{line}");
    }
    assert!(answer.out.contains("S standard") && answer.out.contains("? unknown"));
}

#[test]
fn sources_are_shown_on_request() {
    let answer = run(["mounts", "--sources"]);
    assert!(answer.out.contains("standard: ISO 10935"), "{}", answer.out);
    assert!(answer.out.contains("45.5 (page drawn from a GOST)"));
}

#[test]
fn an_own_list_is_taken_in_and_a_broken_one_named() {
    let bench = Bench::new();
    let own = bench.write(
        "own.ron",
        "(lenses: [(name: \"my 58\", register: Known(value: 45.44, origin: Measured(readings: [], instrument: \"depth micrometer\")))])",
    );
    let listed = run(["mounts", "--own", own.to_str().unwrap()]);
    assert_eq!(listed.code, 0, "{}", listed.err);
    let line = listed
        .out
        .lines()
        .find(|line| line.starts_with("my 58"))
        .unwrap();
    assert!(line.contains("45.44 M"), "{line}");
    let broken = bench.write(
        "broken.ron",
        "(lenses: [(name: \"x\", register: Known(value: NaN, origin: Assumed(\"\")))])",
    );
    let refused = run(["mounts", "--own", broken.to_str().unwrap()]);
    assert_eq!(refused.code, 2);
    assert!(
        refused.err.contains("broken.ron") && refused.err.contains("register"),
        "{}",
        refused.err
    );
}
