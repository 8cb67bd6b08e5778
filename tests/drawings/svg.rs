//! SVG, painted by `resvg`, against our own PNG.

use flangewright::drawing::export::{ExportOptions, Format};
use flangewright::drawing::raster::Ground;
use resvg::{tiny_skia, usvg};

use super::bench::{DEMOS, file, template};

const DPI: u32 = 150;

fn decoded(bytes: &[u8]) -> (u32, u32, Vec<u8>) {
    let mut reader = png::Decoder::new(std::io::Cursor::new(bytes))
        .read_info()
        .unwrap();
    let mut dots = vec![0; reader.output_buffer_size().unwrap()];
    reader.next_frame(&mut dots).unwrap();
    (reader.info().width, reader.info().height, dots)
}

fn painted(svg: &[u8], width: u32, height: u32) -> Vec<tiny_skia::PremultipliedColorU8> {
    let tree = usvg::Tree::from_data(svg, &usvg::Options::default()).unwrap();
    let mut dots = tiny_skia::Pixmap::new(width, height).unwrap();
    let scale = f32::from(u16::try_from(DPI).unwrap()) / 96.0;
    resvg::render(
        &tree,
        tiny_skia::Transform::from_scale(scale, scale),
        &mut dots.as_mut(),
    );
    dots.pixels().to_vec()
}

#[test]
fn resvg_paints_what_the_png_shows() {
    for name in DEMOS {
        for options in [ExportOptions::default(), template()] {
            let options = ExportOptions {
                dpi: Some(DPI),
                ..options
            };
            let (width, height, own) = decoded(&file(name, Format::Png, &options));
            let other = painted(&file(name, Format::Svg, &options), width, height);
            assert_eq!(own.len(), other.len());
            let off: Vec<u8> = own
                .iter()
                .zip(&other)
                .map(|(own, other)| own.abs_diff(other.red()))
                .collect();
            let far = off.iter().filter(|off| **off > 64).count();
            let mean = off.iter().map(|off| f64::from(*off)).sum::<f64>()
                / f64::from(width)
                / f64::from(height);
            // Coordinates are written to 0.1 um: what is left is rounding at the edges of dots.
            assert!(
                far < 40 && mean < 0.05,
                "{name}: {far} dots far off, {mean} on average"
            );
        }
    }
}

#[test]
fn size_is_in_millimetres() {
    // ISO 216 A4, 297 x 210 mm; CSS counts 96 to the inch.
    let tree = usvg::Tree::from_data(
        &file("tall_ring", Format::Svg, &ExportOptions::default()),
        &usvg::Options::default(),
    );
    let size = tree.unwrap().size();
    assert!((size.width() - 297.0 / 25.4 * 96.0).abs() < 0.01);
    assert!((size.height() - 210.0 / 25.4 * 96.0).abs() < 0.01);
}

#[test]
fn transparent_ground_lets_through() {
    let options = ExportOptions {
        ground: Ground::Transparent,
        ..ExportOptions::default()
    };
    let dots = painted(&file("archive_portrait", Format::Svg, &options), 200, 200);
    assert!(dots.iter().any(|dot| dot.alpha() == 0));
}

#[test]
fn text_can_be_found() {
    let text = String::from_utf8(file(
        "archive_portrait",
        Format::Svg,
        &ExportOptions::default(),
    ))
    .unwrap();
    for words in [
        "M42x1-6H",
        "Archive portrait ring",
        "Part drawing",
        "from the body side",
    ] {
        assert!(text.contains(words), "{words}");
    }
}
