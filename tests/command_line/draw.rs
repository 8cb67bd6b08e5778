//! `draw`: files that are what their ending says, and that replace nothing unasked.

use super::program::{Bench, demo, run};

/// Reads the picture as any PNG reader would: width, height, dots to the metre.
fn read_png(path: &std::path::Path) -> (u32, u32, u32, Vec<u8>) {
    let file = std::io::BufReader::new(std::fs::File::open(path).unwrap());
    let mut reader = png::Decoder::new(file).read_info().unwrap();
    let mut picture = vec![0; reader.output_buffer_size().unwrap()];
    let frame = reader.next_frame(&mut picture).unwrap();
    picture.truncate(frame.buffer_size());
    let dots = reader.info().pixel_dims.unwrap().xppu;
    (frame.width, frame.height, dots, picture)
}

/// ISO 216 A4 is 297 x 210 mm; at 100 dots to the inch 1169 x 827 dots, and 100 to the inch are 3937 to the metre.
#[test]
fn the_drawing_is_an_a4_sheet_with_ink_on_it() {
    let bench = Bench::new();
    let out = bench.path("ring.png");
    let file = demo("archive_portrait");
    let answer = run([
        "draw",
        file.to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
        "--dpi",
        "100",
    ]);
    assert_eq!(answer.code, 0, "{}", answer.err);
    let (width, height, dots, picture) = read_png(&out);
    assert!(
        width.abs_diff(1169) <= 1 && height.abs_diff(827) <= 1,
        "{width} x {height}"
    );
    assert_eq!(dots, 3937);
    let ink = picture.iter().filter(|shade| **shade < 128).count();
    assert!(
        ink > picture.len() / 500 && ink < picture.len() / 2,
        "{ink} dark of {}",
        picture.len()
    );
}

#[test]
fn a_file_that_is_there_is_kept_without_force() {
    let bench = Bench::new();
    let out = bench.write("ring.png", "mine");
    let file = demo("archive_portrait");
    let arguments = [
        "draw",
        file.to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
        "--dpi",
        "72",
    ];
    let kept = run(arguments);
    assert_eq!(kept.code, 2);
    assert!(
        kept.err.contains("ring.png") && kept.err.contains("--force"),
        "{}",
        kept.err
    );
    assert_eq!(std::fs::read_to_string(&out).unwrap(), "mine");
    let forced = run(arguments.into_iter().chain(["--force"]));
    assert_eq!(forced.code, 0, "{}", forced.err);
    assert!(read_png(&out).0 > 800);
}

#[test]
fn what_cannot_be_drawn_says_why_and_leaves_no_file() {
    let bench = Bench::new();
    let out = bench.path("ring.png");
    let unknown = bench.changed("unknown.ron", |design| {
        design.body.throat = flangewright::mount::Interface::Unknown;
    });
    let file = demo("archive_portrait");
    let (unknown, file) = (unknown.to_str().unwrap(), file.to_str().unwrap());
    let picture = out.to_str().unwrap();
    let folder = bench.path("no/such/folder/ring.png");
    let cases: [(&[&str], &str); 5] = [
        (&["draw", unknown, "--out", picture], "throat"),
        (&["draw", file, "--out", picture, "--dpi", "7"], "72"),
        (&["draw", file, "--out", picture, "--dpi", "100000"], "1200"),
        (
            &[
                "draw",
                file,
                "--out",
                folder.to_str().unwrap(),
                "--dpi",
                "72",
            ],
            "ring.png",
        ),
        (
            &["draw", file, "--out", "ring.dwg"],
            ".png, .svg, .pdf, .dxf, .3mf or .stl",
        ),
    ];
    for (arguments, told) in cases {
        let answer = run(arguments);
        assert_eq!(answer.code, 2, "{arguments:?}");
        assert!(answer.err.contains(told), "{arguments:?}: {}", answer.err);
        assert!(!out.exists(), "{arguments:?}");
    }
}

#[test]
fn every_ending_writes_its_kind_and_template_another_sheet() {
    let bench = Bench::new();
    let file = demo("archive_portrait");
    let file = file.to_str().unwrap();
    let heads: [(&str, &[u8]); 5] = [
        ("svg", b"<?xml"),
        ("pdf", b"%PDF"),
        ("dxf", b"  0\r\nSECTION"),
        ("3mf", b"PK"),
        ("stl", b"Flangewright, mm"),
    ];
    for (ending, head) in heads {
        let out = bench.path(&format!("ring.{ending}"));
        let answer = run(["draw", file, "--out", out.to_str().unwrap()]);
        assert_eq!(answer.code, 0, "{}", answer.err);
        let drawing = std::fs::read(&out).unwrap();
        assert!(drawing.starts_with(head), "{ending}");
        let solid = ["3mf", "stl"].contains(&ending);
        let template = run([
            "draw",
            file,
            "--out",
            out.to_str().unwrap(),
            "--template",
            "--force",
        ]);
        assert_eq!(template.code, if solid { 2 } else { 0 }, "{}", template.err);
        assert_eq!(std::fs::read(&out).unwrap() == drawing, solid, "{ending}");
    }
}

#[test]
fn options_of_the_solid_reach_it_and_wrong_ones_leave_no_file() {
    let bench = Bench::new();
    let file = demo("archive_portrait");
    let file = file.to_str().unwrap();
    let size = |name: &str, more: &[&str]| {
        let out = bench.path(name);
        let answer = run(["draw", file, "--out", out.to_str().unwrap()]
            .iter()
            .chain(more));
        (answer, std::fs::read(&out).ok())
    };
    let (_, fine) = size("fine.stl", &["--chord", "0.005"]);
    let (_, coarse) = size("coarse.stl", &["--chord", "0.1"]);
    assert!(fine.unwrap().len() > 2 * coarse.unwrap().len());
    let (_, tight) = size("tight.stl", &["--thread-allowance", "-0.1"]);
    let (_, wide) = size("wide.stl", &["--thread-allowance", "1.2"]);
    assert_ne!(tight.unwrap(), wide.unwrap());
    for (option, value, told) in [
        ("--chord", "3", "0.001 to 0.2"),
        ("--thread-allowance", "70", "-0.5 to 5"),
    ] {
        let (answer, written) = size("wrong.stl", &[option, value]);
        assert_eq!((answer.code, written), (2, None));
        assert!(answer.err.contains(told), "{}", answer.err);
    }
}

#[test]
fn transparent_ground_is_a_picture_with_opacity() {
    let bench = Bench::new();
    let file = demo("archive_portrait");
    let out = bench.path("ring.png");
    let arguments = [
        "draw",
        file.to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
        "--dpi",
        "72",
        "--transparent",
    ];
    assert_eq!(run(arguments).code, 0);
    let (width, height, _, picture) = read_png(&out);
    assert_eq!(picture.len(), 4 * usize::try_from(width * height).unwrap());
    assert_eq!(picture.get(3), Some(&0));
}
