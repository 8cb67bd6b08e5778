//! PDF, looked at by poppler.

use std::path::Path;
use std::process::Command;

use flangewright::drawing::export::{ExportOptions, Format};
use flangewright::drawing::template::{SCALE_AT, SCALE_MM, UPRIGHT_AT};

use super::bench::{DEMOS, file, on_disk, printed, template};

/// A4 is 210 x 297 mm (ISO 216), at 72 points to the inch 595.276 x 841.89.
const A4_POINTS: (f64, f64) = (595.276, 841.890);

fn page_size(path: &Path) -> (f64, f64) {
    let facts = printed(Command::new("pdfinfo").arg(path));
    let line = facts
        .lines()
        .find(|line| line.starts_with("Page size:"))
        .unwrap();
    let mut numbers = line
        .split_whitespace()
        .filter_map(|word| word.parse::<f64>().ok());
    (numbers.next().unwrap(), numbers.next().unwrap())
}

#[test]
fn print_dialogs_are_asked_not_to_scale() {
    let bytes = file("archive_portrait", Format::Pdf, &template());
    let wish = b"/PrintScaling /None";
    assert!(bytes.windows(wish.len()).any(|window| window == wish));
}

#[test]
#[ignore = "needs pdfinfo, pdffonts and pdftotext of poppler"]
fn poppler_finds_page_size_embedded_font_and_text() {
    for name in DEMOS {
        let (_folder, path) = on_disk(
            "ring.pdf",
            &file(name, Format::Pdf, &ExportOptions::default()),
        );
        let (width, height) = page_size(&path);
        assert!(
            (width - A4_POINTS.1).abs() < 0.01 && (height - A4_POINTS.0).abs() < 0.01,
            "{width} x {height}"
        );
        let fonts = printed(Command::new("pdffonts").arg(&path));
        let rows: Vec<&str> = fonts.lines().skip(2).collect();
        // Columns: name, type, encoding, embedded, subset, unicode.
        assert!(
            rows.len() == 1 && rows[0].contains(" yes yes yes "),
            "{fonts}"
        );
        let text = printed(Command::new("pdftotext").arg("-layout").arg(&path).arg("-"));
        for words in [
            "from the body side",
            "General tolerances",
            "h9",
            "\u{d8}",
            "\u{b1}",
            "\u{b0}",
        ] {
            assert!(text.contains(words), "{name}: {words} in {text}");
        }
    }
}

#[test]
#[ignore = "needs pdftotext of poppler"]
fn a_diameter_is_found_by_the_letter_that_people_type() {
    let (_folder, path) = on_disk(
        "ring.pdf",
        &file("archive_portrait", Format::Pdf, &ExportOptions::default()),
    );
    let text = printed(Command::new("pdftotext").arg("-layout").arg(&path).arg("-"));
    for words in ["\u{d8}63", "\u{d8}47.7 h9", "M42x1-6H", "1.46 \u{b1}0.015"] {
        assert!(text.contains(words), "{words} in {text}");
    }
}

/// Ink along a row or a column of grey dots, in dots of full black.
fn ink(shades: impl Iterator<Item = u8>) -> f64 {
    shades.map(|shade| 1.0 - f64::from(shade) / 255.0).sum()
}

fn index(mm: f64, per_mm: f64) -> usize {
    format!("{:.0}", (mm * per_mm).floor()).parse().unwrap()
}

#[test]
#[ignore = "needs pdftoppm of poppler"]
fn fifty_millimetres_measure_fifty_millimetres_both_ways() {
    let (folder, path) = on_disk(
        "template.pdf",
        &file("archive_portrait", Format::Pdf, &template()),
    );
    let out = folder.path().join("page");
    printed(
        Command::new("pdftoppm")
            .args(["-r", "600", "-gray", "-png", "-singlefile"])
            .arg(&path)
            .arg(&out),
    );
    let page = std::io::BufReader::new(std::fs::File::open(out.with_extension("png")).unwrap());
    let mut reader = png::Decoder::new(page).read_info().unwrap();
    let mut dots = vec![0; reader.output_buffer_size().unwrap()];
    let frame = reader.next_frame(&mut dots).unwrap();
    let width = usize::try_from(frame.width).unwrap();
    // Grey may come as three equal channels.
    let channels = frame.line_size / width;
    let dots: Vec<u8> = dots.into_iter().step_by(channels).collect();
    let per_mm = 600.0 / 25.4;
    // In the half of the line that the ticks do not reach.
    let beside = 0.06;
    let row = index(297.0 - (SCALE_AT.y - beside), per_mm);
    let (from, to) = (
        index(SCALE_AT.x - 5.0, per_mm),
        index(SCALE_AT.x + SCALE_MM + 5.0, per_mm),
    );
    let level = ink(dots[row * width + from..row * width + to].iter().copied()) / per_mm;
    assert!((level - 50.0).abs() < 0.05, "{level}");
    let column = index(UPRIGHT_AT.x + beside, per_mm);
    let rows = index(297.0 - UPRIGHT_AT.y - SCALE_MM - 5.0, per_mm)
        ..index(297.0 - UPRIGHT_AT.y + 5.0, per_mm);
    let upright = ink(rows.map(|row| dots[row * width + column])) / per_mm;
    assert!((upright - 50.0).abs() < 0.05, "{upright}");
}
