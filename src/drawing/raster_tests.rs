use super::*;
use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::scene::{Role, Shape};
use crate::geometry::Point;

const RASTER: Raster = Raster {
    dpi: 300,
    ground: Ground::White,
    group: LineGroup::Half,
};

fn line(from: (f64, f64), to: (f64, f64)) -> Shape {
    let point = |(x, y)| Point { x, y };
    Shape::Path(Path::line(point(from), point(to)))
}

fn sheet_with(shape: Shape, line: LineType) -> Scene {
    let mut scene = Scene::sheet(120.0, 40.0);
    scene.draw(shape, line, Role::Ring);
    scene
}

/// Darkness of a row or a column added up, in dots of full black.
fn ink(dots: impl Iterator<Item = u8>) -> f64 {
    dots.map(|shade| 1.0 - f64::from(shade) / 255.0).sum()
}

fn decoded(file: &[u8]) -> (Vec<u8>, usize, png::Info<'static>) {
    let mut reader = png::Decoder::new(std::io::Cursor::new(file))
        .read_info()
        .unwrap();
    let mut dots = vec![0; reader.output_buffer_size().unwrap()];
    reader.next_frame(&mut dots).unwrap();
    let width = usize::try_from(reader.info().width).unwrap();
    (dots, width, reader.info().clone())
}

#[test]
fn reference_line_of_100_mm_is_1181_dots_at_300_dpi() {
    // 100 / 25.4 x 300 = 1181.1.
    let scene = sheet_with(line((10.0, 20.0), (110.0, 20.0)), LineType::ContinuousWide);
    let (dots, width, _) = decoded(&png(&scene, RASTER).unwrap());
    let middle = dots.len() / width / 2;
    let length = ink(dots[middle * width..(middle + 1) * width].iter().copied());
    assert!((length - 1181.1).abs() < 0.2, "{length}");
}

#[test]
fn wide_line_is_half_a_millimetre_and_narrow_a_quarter() {
    // ISO 128-2 group 0.5 / 0.25, at 300 dots to the inch 5.9 and 2.95 dots.
    for (kind, expected) in [
        (LineType::ContinuousWide, 0.5 / 25.4 * 300.0),
        (LineType::ContinuousNarrow, 0.25 / 25.4 * 300.0),
    ] {
        let scene = sheet_with(line((10.0, 20.0), (110.0, 20.0)), kind);
        let (dots, width, _) = decoded(&png(&scene, RASTER).unwrap());
        let column = dots.iter().copied().skip(600).step_by(width);
        assert!((ink(column) - expected).abs() < 0.15);
    }
}

#[test]
fn chain_line_has_the_ink_of_its_dashes() {
    let scene = sheet_with(
        line((10.0, 20.0), (110.0, 20.0)),
        LineType::LongDashDotNarrow,
    );
    let (dots, width, _) = decoded(&png(&scene, RASTER).unwrap());
    let gaps = scene.items[0].strokes(LineGroup::Half).len() - 1;
    let drawn_mm = 100.0 - crate::drawing::whole::as_f64(gaps) * 0.75;
    let middle = dots.len() / width / 2;
    let length = ink(dots[middle * width..(middle + 1) * width].iter().copied());
    assert!((length - drawn_mm / 25.4 * 300.0).abs() < 1.0);
}

#[test]
fn file_states_its_dots_to_the_metre() {
    // PNG specification, pHYs chunk: 300 / 0.0254 = 11811 dots to the metre, unit 1.
    let scene = sheet_with(line((10.0, 20.0), (110.0, 20.0)), LineType::ContinuousWide);
    let (_, width, header) = decoded(&png(&scene, RASTER).unwrap());
    let dims = header.pixel_dims.unwrap();
    assert_eq!(
        (dims.xppu, dims.yppu, dims.unit),
        (11_811, 11_811, Unit::Meter)
    );
    // 120 / 25.4 x 300 = 1417.3; 40 mm are 472.4.
    assert_eq!((width, header.height), (1417, 472));
    let low = Raster { dpi: 72, ..RASTER };
    let (_, _, header) = decoded(&png(&scene, low).unwrap());
    assert_eq!(header.pixel_dims.unwrap().xppu, 2835);
}

#[test]
fn same_scene_gives_the_same_bytes() {
    let scene = sheet_with(line((10.0, 13.0), (110.0, 27.0)), LineType::LongDashDotWide);
    assert_eq!(png(&scene, RASTER).unwrap(), png(&scene, RASTER).unwrap());
}

#[test]
fn bands_join_without_a_seam() {
    let mut scene = sheet_with(line((10.0, 3.0), (110.0, 37.0)), LineType::ContinuousNarrow);
    scene.draw(
        Shape::Circle {
            centre: Point { x: 60.0, y: 20.0 },
            radius_mm: 17.0,
        },
        LineType::ContinuousWide,
        Role::Ring,
    );
    let canvas = Canvas::new(&scene, RASTER, FILE_LIMIT).unwrap();
    let painted = |band_dots: u32| {
        let mut dots = Vec::new();
        canvas.paint_bands(Ground::White, band_dots, |band| {
            dots.extend(band.pixels().iter().map(|dot| dot.red()));
        });
        dots
    };
    let (whole, pieces) = (painted(BAND_DOTS), painted(canvas.width * 7));
    assert_eq!(whole.len(), pieces.len());
    let worst = whole.iter().zip(&pieces).map(|(a, b)| a.abs_diff(*b)).max();
    // The painter samples four lines to a dot and rounds curves to them: a band may move one of the
    // four, which is 64 shades. A lost or doubled row would show as 255.
    assert!(worst <= Some(64), "{worst:?}");
}

#[test]
fn transparent_ground_is_clear_and_lines_are_black() {
    let scene = sheet_with(line((10.0, 20.0), (110.0, 20.0)), LineType::ContinuousWide);
    let clear = Raster {
        ground: Ground::Transparent,
        ..RASTER
    };
    let picture = pixels(&scene, clear).unwrap();
    assert_eq!(picture.rgba.len(), 4 * 1417 * 472);
    assert_eq!(picture.rgba[..4], [0, 0, 0, 0]);
    let on_line = 4 * (236 * 1417 + 700);
    assert_eq!(picture.rgba[on_line..on_line + 4], [0, 0, 0, 255]);
    let (dots, _, header) = decoded(&png(&scene, clear).unwrap());
    assert_eq!(header.color_type, ColorType::Rgba);
    assert_eq!(dots, picture.rgba);
}

#[test]
fn what_cannot_be_painted_is_refused_with_the_numbers() {
    let scene = sheet_with(line((0.0, 0.0), (1.0, 1.0)), LineType::ContinuousWide);
    let fine = Raster {
        dpi: 2400,
        ..RASTER
    };
    assert_eq!(png(&scene, fine), Err(RasterError::Dpi { dpi: 2400 }));
    assert_eq!(png(&Scene::view(), RASTER), Err(RasterError::Empty));
    let huge = Scene::sheet(2000.0, 2000.0);
    let refusal = png(
        &huge,
        Raster {
            dpi: 1200,
            ..RASTER
        },
    )
    .unwrap_err();
    assert!(refusal.to_string().contains("94488 x 94488"), "{refusal}");
    assert!(matches!(
        pixels(
            &Scene::sheet(420.0, 297.0),
            Raster {
                dpi: 1200,
                ..RASTER
            }
        ),
        Err(RasterError::TooLarge { .. })
    ));
}

#[test]
fn view_without_a_sheet_is_painted_whole() {
    let mut view = Scene::view();
    view.draw(
        line((-30.0, -5.0), (30.0, 5.0)),
        LineType::ContinuousWide,
        Role::Ring,
    );
    let picture = pixels(&view, RASTER).unwrap();
    // 60 + 4 by 10 + 4 mm.
    assert_eq!((picture.width, picture.height), (756, 165));
}
