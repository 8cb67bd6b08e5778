//! `draw`: a PNG that is one, and that replaces nothing unasked.

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
        (&["draw", file, "--out", "ring.pdf", "--dpi", "72"], "png"),
    ];
    for (arguments, told) in cases {
        let answer = run(arguments);
        assert_eq!(answer.code, 2, "{arguments:?}");
        assert!(answer.err.contains(told), "{arguments:?}: {}", answer.err);
        assert!(!out.exists(), "{arguments:?}");
    }
}
