//! DXF, read by `ezdxf`: no repairs, arcs as arcs, lengths of the design.

use flangewright::drawing::export::{ExportOptions, Format};

use super::bench::{DEMOS, demo, evaluated, file, on_disk, python, template};

fn read(name: &str, options: &ExportOptions) -> Vec<String> {
    let (_folder, path) = on_disk("ring.dxf", &file(name, Format::Dxf, options));
    python("read_dxf.py", &path)
        .lines()
        .map(str::to_owned)
        .collect()
}

/// The numbers of the lines that begin with some words.
fn numbers(lines: &[String], head: &str) -> Vec<Vec<f64>> {
    let rest = lines.iter().filter_map(|line| line.strip_prefix(head));
    rest.map(|rest| {
        rest.split_whitespace()
            .filter_map(|word| word.parse().ok())
            .collect()
    })
    .collect()
}

#[test]
#[ignore = "needs Python with ezdxf"]
fn opens_without_errors_or_repairs() {
    for name in DEMOS {
        for options in [ExportOptions::default(), template()] {
            let lines = read(name, &options);
            assert_eq!(lines[0], "AUDIT 0 0", "{name}");
        }
    }
}

#[test]
#[ignore = "needs Python with ezdxf"]
fn the_plan_has_its_true_size_round_the_origin() {
    for name in DEMOS {
        let evaluation = evaluated(&demo(name));
        let sizes = evaluation.derivation.ring.as_ref().unwrap().sizes.clone();
        let lines = read(name, &ExportOptions::default());
        let circles = numbers(&lines, "CIRCLE OUTLINE_01-2 ");
        for diameter in [sizes.flange_diameter, sizes.nose_diameter, sizes.lip_bore] {
            let there = circles.iter().any(|circle| {
                circle[0].abs() < 1e-6
                    && circle[1].abs() < 1e-6
                    && (2.0 * circle[2] - diameter).abs() < 2e-6
            });
            assert!(there, "{name}: {diameter} not among {circles:?}");
        }
        if sizes.lock_hole_diameter > 0.0 {
            let there = circles.iter().any(|circle| {
                (circle[0].hypot(circle[1]) - sizes.lock_hole_circle / 2.0).abs() < 2e-6
                    && (2.0 * circle[2] - sizes.lock_hole_diameter).abs() < 2e-6
            });
            assert!(there, "{name}: lock hole");
        }
    }
}

#[test]
#[ignore = "needs Python with ezdxf"]
fn lugs_are_closed_runs_with_bends_and_broken_lines_stay_whole_lines() {
    let lines = read("archive_portrait", &ExportOptions::default());
    let closed = lines
        .iter()
        .filter(|line| line.starts_with("POLYLINE OUTLINE_01-2 True"));
    let bent = closed
        .filter(|line| line.split_whitespace().nth(3) != Some("0"))
        .count();
    // Three lugs from the body side at true size, three on the sheet.
    assert_eq!(bent, 6, "{lines:?}");
    assert!(
        lines
            .iter()
            .any(|line| line == "LAYER HIDDEN_02-1 DASHED_02-1")
    );
    assert!(
        lines
            .iter()
            .any(|line| line == "LAYER AXIS_04-1 CHAIN_04-1")
    );
    // The thread's root from the lens side is three quarters of a circle (ISO 6410-1).
    let arcs = numbers(&lines, "ARC NARROW_01-1 ");
    let major = evaluated(&demo("archive_portrait"))
        .derivation
        .ring
        .unwrap()
        .thread_major;
    assert!(
        arcs.iter().any(|arc| (2.0 * arc[0] - major).abs() < 2e-6),
        "{arcs:?}"
    );
}

#[test]
#[ignore = "needs Python with ezdxf"]
fn texts_come_back_with_their_signs() {
    let lines = read("archive_portrait", &ExportOptions::default());
    for words in [
        "TEXT M42x1-6H",
        "TEXT 1.46 \u{b1}0.015",
        "TEXT lock hole: 150\u{b0} \u{b1}0.1\u{b0}",
    ] {
        assert!(
            lines.iter().any(|line| line == words),
            "{words} in {lines:?}"
        );
    }
    assert!(
        lines.iter().any(|line| line.starts_with("TEXT \u{d8}63")),
        "{lines:?}"
    );
}

#[test]
fn same_sheet_without_tools_has_the_groups_of_release_12() {
    let bytes = file("archive_portrait", Format::Dxf, &ExportOptions::default());
    assert!(bytes.is_ascii(), "the demo needs nothing but ASCII");
    let text = String::from_utf8(bytes).unwrap();
    let groups: Vec<&str> = text.split("\r\n").collect();
    // Code and value in turn, and an empty end after the last line.
    assert_eq!(groups.len() % 2, 1);
    for code in groups.iter().step_by(2).filter(|code| !code.is_empty()) {
        assert!(code.trim().parse::<u16>().is_ok(), "{code}");
    }
    assert!(text.contains("AC1009") && text.ends_with("  0\r\nEOF\r\n"));
}
