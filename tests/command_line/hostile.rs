//! Files that are no designs, and designs that no ring may have: refused by name, exit code 2, never a panic.

use std::fs::File;
use std::path::Path;

use flangewright::document::{Choice, Design, RingKey, Tolerance, write_ron};
use flangewright::mount::{BarrelStep, Interface, Sector};

use super::program::{Bench, demo, demo_design, run};

/// `check` refuses the file and says each of `told`; nothing is printed as a result.
fn refused(path: &Path, told: &[&str]) {
    let answer = run(["check", "--json", path.to_str().unwrap()]);
    assert_eq!(answer.code, 2, "{}: {}", path.display(), answer.out);
    assert_eq!(answer.out, "", "{}", path.display());
    for word in told {
        assert!(answer.err.contains(word), "{word}: {}", answer.err);
    }
}

/// The same of a design with one change.
fn refused_change(change: impl FnOnce(&mut Design), told: &[&str]) {
    let bench = Bench::new();
    refused(&bench.changed("changed.ron", change), told);
}

#[test]
fn what_is_not_there_or_no_file() {
    let bench = Bench::new();
    refused(&bench.path("nothing.ron"), &["nothing.ron"]);
    refused(&bench.path(""), &["is"]);
}

#[cfg(unix)]
#[test]
fn devices_and_pipes_are_no_designs() {
    let bench = Bench::new();
    refused(Path::new("/dev/null"), &["/dev/null"]);
    refused(Path::new("/dev/zero"), &["/dev/zero"]);
    let pipe = bench.path("pipe.ron");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status();
    if made.is_ok_and(|status| status.success()) {
        refused(&pipe, &["pipe.ron"]);
    }
}

#[test]
fn empty_and_cut_short() {
    let bench = Bench::new();
    refused(&bench.write("empty.ron", ""), &["empty.ron", "is empty"]);
    refused(&bench.write("blank.ron", " \n\t\n"), &["is empty"]);
    let whole = std::fs::read_to_string(demo("archive_portrait")).unwrap();
    for share in [1, 3, 5, 7, 9] {
        let mut end = whole.len() * share / 10;
        while !whole.is_char_boundary(end) {
            end -= 1;
        }
        refused(&bench.write("cut.ron", &whole[..end]), &["cut.ron", "line"]);
    }
}

#[test]
fn no_text_and_too_much_of_it() {
    let bench = Bench::new();
    let path = bench.path("bytes.ron");
    std::fs::write(&path, [0xff, 0xfe, 0x00, 0x80]).unwrap();
    refused(&path, &["bytes.ron"]);
    let large = bench.path("large.ron");
    File::create(&large).unwrap().set_len(100_000_000).unwrap();
    refused(&large, &["large.ron"]);
    let deep = format!("(format: 1, lens: {}", "(".repeat(100_000));
    refused(&bench.write("deep.ron", &deep), &["deep.ron"]);
}

#[test]
fn other_types_unknown_fields_and_newer_formats() {
    let bench = Bench::new();
    refused(&bench.write("list.ron", "[1, 2, 3]"), &["line 1"]);
    refused(
        &bench.write("type.ron", "(format: 1, lens: 5, body: ())"),
        &["line 1"],
    );
    refused(
        &bench.write("field.ron", "(format: 1, lens: (colour: 5), body: ())"),
        &["colour"],
    );
    refused(
        &bench.write("newer.ron", "(format: 99, lens: (), body: ())"),
        &["99"],
    );
    refused(
        &bench.write("negative.ron", "(format: -1, lens: (), body: ())"),
        &["line 1"],
    );
}

#[test]
fn a_thread_that_is_none() {
    let text = write_ron(&demo_design("archive_portrait")).unwrap();
    assert!(text.contains("\"M42x1\""));
    let bench = Bench::new();
    for thread in ["M42x0", "M42x-1", "M42xNaN", "M0x1", "", "M42x40"] {
        let broken = text.replacen("\"M42x1\"", &format!("\"{thread}\""), 1);
        refused(&bench.write("thread.ron", &broken), &["thread"]);
    }
}

#[test]
fn numbers_that_are_none_or_absurd() {
    let absurd = [
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        1e300,
        -1e300,
        -5.0,
        0.0,
        5e-324,
    ];
    for number in absurd {
        refused_change(
            |design| design.lens.register = Interface::assumed(number, "test"),
            &["lens register", "1.00 mm", "400.00 mm"],
        );
        refused_change(
            |design| design.body.throat = Interface::assumed(number, "test"),
            &["body throat", "5.00 mm"],
        );
        refused_change(
            |design| {
                design.ring.dimensions.get_mut(RingKey::LipThickness).value = Choice::Set(number);
            },
            &["lip thickness"],
        );
    }
    for number in [f64::NAN, f64::INFINITY, 1e300, -5.0] {
        refused_change(
            |design| design.limits.lip_clash = number,
            &["Lip thickness, clash under"],
        );
    }
    refused_change(|design| design.ring.trim_mm = f64::NAN, &["trim"]);
    refused_change(|design| design.sheet.dpi = u32::MAX, &["dpi"]);
}

#[test]
fn values_that_contradict_each_other() {
    refused_change(
        |design| design.body.slot_diameter = Interface::assumed(20.0, "test"),
        &["body throat", "slot diameter"],
    );
    let overlapping = vec![
        Sector {
            start_deg: 350.0,
            extent_deg: 40.0,
        },
        Sector {
            start_deg: 20.0,
            extent_deg: 40.0,
        },
    ];
    let lugs = overlapping.clone();
    refused_change(
        |design| design.ring.lugs = Choice::Set(lugs),
        &["ring lugs", "overlap"],
    );
    refused_change(
        |design| design.body.ears = Interface::assumed(overlapping, "test"),
        &["body ears", "overlap"],
    );
    refused_change(
        |design| design.ring.lugs = Choice::Set(Vec::new()),
        &["ring lugs"],
    );
    let steps = vec![
        BarrelStep {
            depth_mm: 5.0,
            diameter_mm: 30.0,
        },
        BarrelStep {
            depth_mm: 2.0,
            diameter_mm: 20.0,
        },
    ];
    refused_change(
        |design| design.lens.barrel_at_infinity = Interface::assumed(steps, "test"),
        &["rear barrel"],
    );
    refused_change(
        |design| {
            let lip = design.ring.dimensions.get_mut(RingKey::LipThickness);
            lip.tolerance = Tolerance::Deviations(0.2, -0.2);
        },
        &["lip thickness", "lower deviation"],
    );
}

/// A line as long as a file may be, and many lugs: read or refused, never a panic.
#[test]
fn a_great_many_lugs() {
    let many: Vec<Sector> = (0..100_u32)
        .map(|index| Sector {
            start_deg: f64::from(index) * 3.6,
            extent_deg: 1.0,
        })
        .collect();
    refused_change(
        |design| design.ring.lugs = Choice::Set(many),
        &["ring lugs", "100"],
    );
}

/// A file without permission would open all the same for a superuser, so the refusal of the system that is
/// tested here is that of a folder.
#[test]
fn every_task_refuses_a_folder_in_the_place_of_a_file() {
    let bench = Bench::new();
    let folder = bench.path("folder.png");
    std::fs::create_dir(&folder).unwrap();
    let out = bench.path("out.png");
    let folder = folder.to_str().unwrap();
    let draw = run(["draw", folder, "--out", out.to_str().unwrap()]);
    assert_eq!(draw.code, 2);
    assert!(!draw.err.is_empty());
    let file = demo("archive_portrait");
    let onto = run(["draw", file.to_str().unwrap(), "--out", folder, "--force"]);
    assert_eq!(onto.code, 2);
    let new = run([
        "new",
        "--lens",
        "iso 10935",
        "--body",
        "16.00",
        "--out",
        folder,
        "--force",
    ]);
    assert_eq!(new.code, 2, "{}", new.out);
}
