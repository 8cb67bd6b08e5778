//! A scene as dots: PNG files and pictures for the clipboard.
//!
//! The picture is painted in bands, so a large sheet at a fine pitch takes little memory, and the same
//! scene always gives the same bytes.

use png::{BitDepth, ColorType, Compression, Encoder, PixelDimensions, Unit};
use thiserror::Error;
use tiny_skia::{Color, FillRule, Paint, Pixmap, Stroke, Transform};

use crate::drawing::extent::Extent;
use crate::drawing::ink::{Ink, MITER_LIMIT, TINT, ink, page};
use crate::drawing::line_type::LineGroup;
use crate::drawing::scene::{Scene, Tone};
use crate::drawing::whole::{dots, single};

/// What lies behind the lines.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Ground {
    /// White paper; the file is in shades of grey.
    #[default]
    White,
    /// Nothing; the file has colour and opacity.
    Transparent,
}

/// How a scene becomes dots.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Raster {
    /// Dots to the inch, 72 to 1200.
    pub dpi: u32,
    /// What lies behind.
    pub ground: Ground,
    /// Line widths.
    pub group: LineGroup,
}

/// A picture in memory: rows from the top, four bytes a dot (red, green, blue, opacity, not premultiplied).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pixels {
    /// Dots in a row.
    pub width: u32,
    /// Rows.
    pub height: u32,
    /// The bytes.
    pub rgba: Vec<u8>,
}

/// Why a picture cannot be made.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum RasterError {
    /// Dots to the inch out of range.
    #[error("{dpi} dots to the inch is out of range: give a number from {MIN_DPI} to {MAX_DPI}")]
    Dpi {
        /// What was asked for.
        dpi: u32,
    },
    /// Too many dots.
    #[error(
        "a picture of {width} x {height} dots is over the limit of {limit} million: give fewer dots to the inch \
         or a smaller sheet"
    )]
    TooLarge {
        /// Dots in a row.
        width: u32,
        /// Rows.
        height: u32,
        /// The limit, millions of dots.
        limit: u64,
    },
    /// There is nothing to show.
    #[error("the drawing is empty: there is nothing to make a picture of")]
    Empty,
    /// The file could not be put together.
    #[error("the PNG file could not be put together: {0}")]
    Encoding(String),
}

/// Fewest dots to the inch.
pub const MIN_DPI: u32 = 72;

/// Most dots to the inch.
pub const MAX_DPI: u32 = 1200;

/// Limit of a file, millions of dots: A3 at 1200 dots to the inch has 278.
const FILE_LIMIT: u64 = 300;

/// Limit of a picture in memory, millions of dots: A3 at 400 dots to the inch has 31.
const MEMORY_LIMIT: u64 = 40;

/// Dots painted at a time: 16 MB.
const BAND_DOTS: u32 = 4_000_000;

const MM_PER_INCH: f64 = 25.4;

/// A PNG file that states its dots to the metre.
///
/// # Errors
/// When the dots to the inch are out of range, the picture is too large or the scene is empty.
pub fn png(scene: &Scene, raster: Raster) -> Result<Vec<u8>, RasterError> {
    let canvas = Canvas::new(scene, raster, FILE_LIMIT)?;
    let mut file = Vec::new();
    write_png(&canvas, raster, &mut file)
        .map_err(|error| RasterError::Encoding(error.to_string()))?;
    Ok(file)
}

/// The picture in memory, for the clipboard.
///
/// # Errors
/// When the dots to the inch are out of range, the picture is too large or the scene is empty.
pub fn pixels(scene: &Scene, raster: Raster) -> Result<Pixels, RasterError> {
    let canvas = Canvas::new(scene, raster, MEMORY_LIMIT)?;
    let mut rgba = Vec::new();
    canvas.paint_bands(raster.ground, BAND_DOTS, |band| {
        rgba.extend(straight_rgba(band));
    });
    Ok(Pixels {
        width: canvas.width,
        height: canvas.height,
        rgba,
    })
}

fn write_png(
    canvas: &Canvas,
    raster: Raster,
    file: &mut Vec<u8>,
) -> Result<(), png::EncodingError> {
    let mut encoder = Encoder::new(file, canvas.width, canvas.height);
    encoder.set_depth(BitDepth::Eight);
    encoder.set_color(match raster.ground {
        Ground::White => ColorType::Grayscale,
        Ground::Transparent => ColorType::Rgba,
    });
    encoder.set_compression(Compression::Fast);
    let per_metre = dots(f64::from(raster.dpi) * 1000.0 / MM_PER_INCH);
    encoder.set_pixel_dims(Some(PixelDimensions {
        xppu: per_metre,
        yppu: per_metre,
        unit: Unit::Meter,
    }));
    let mut header = encoder.write_header()?;
    let mut writer = header.stream_writer()?;
    let mut outcome = Ok(());
    canvas.paint_bands(raster.ground, BAND_DOTS, |band| {
        if outcome.is_ok() {
            let bytes: Vec<u8> = match raster.ground {
                // Black on white has three equal channels.
                Ground::White => band.pixels().iter().map(|dot| dot.red()).collect(),
                Ground::Transparent => straight_rgba(band).collect(),
            };
            outcome = std::io::Write::write_all(&mut writer, &bytes);
        }
    });
    outcome?;
    writer.finish()
}

/// The dots of a band with their colours not premultiplied.
fn straight_rgba(band: &Pixmap) -> impl Iterator<Item = u8> + '_ {
    band.pixels().iter().flat_map(|dot| {
        let colour = dot.demultiply();
        [colour.red(), colour.green(), colour.blue(), colour.alpha()]
    })
}

/// A scene made ready to paint.
struct Canvas {
    strokes: Vec<Ready>,
    frame: Extent,
    /// Dots to the mm.
    per_mm: f64,
    width: u32,
    height: u32,
}

/// A thing to paint, in mm.
enum Ready {
    Area(tiny_skia::Path, FillRule, Tone),
    Line(tiny_skia::Path, f32),
}

impl Canvas {
    fn new(scene: &Scene, raster: Raster, limit: u64) -> Result<Self, RasterError> {
        let dpi = raster.dpi;
        if !(MIN_DPI..=MAX_DPI).contains(&dpi) {
            return Err(RasterError::Dpi { dpi });
        }
        let frame = page(scene).ok_or(RasterError::Empty)?;
        let per_mm = f64::from(dpi) / MM_PER_INCH;
        let width = dots(frame.width() * per_mm);
        let height = dots(frame.height() * per_mm);
        if width == 0 || height == 0 {
            return Err(RasterError::Empty);
        }
        if u64::from(width) * u64::from(height) > limit * 1_000_000 {
            return Err(RasterError::TooLarge {
                width,
                height,
                limit,
            });
        }
        Ok(Self {
            strokes: ready(scene, raster.group),
            frame,
            per_mm,
            width,
            height,
        })
    }

    /// Paints the picture from the top in bands and hands each on.
    fn paint_bands(&self, ground: Ground, band_dots: u32, mut take: impl FnMut(&Pixmap)) {
        let band_rows = (band_dots / self.width).clamp(1, self.height);
        let mut top = 0;
        while top < self.height {
            let rows = band_rows.min(self.height - top);
            // A band of at least one dot either way can always be set aside.
            if let Some(mut band) = Pixmap::new(self.width, rows) {
                if ground == Ground::White {
                    band.fill(Color::WHITE);
                }
                self.paint(&mut band, top);
                take(&band);
            }
            top += rows;
        }
    }

    fn paint(&self, band: &mut Pixmap, top: u32) {
        let scale = single(self.per_mm);
        let to_dots = Transform::from_row(
            scale,
            0.0,
            0.0,
            -scale,
            single(-self.frame.left * self.per_mm),
            single(self.frame.top.mul_add(self.per_mm, -f64::from(top))),
        );
        let mut paint = Paint {
            anti_alias: true,
            ..Paint::default()
        };
        for thing in &self.strokes {
            match thing {
                Ready::Area(path, rule, tone) => {
                    paint.set_color(match tone {
                        Tone::Solid => Color::BLACK,
                        Tone::Tint => {
                            Color::from_rgba(TINT, TINT, TINT, 1.0).unwrap_or(Color::WHITE)
                        }
                    });
                    band.fill_path(path, &paint, *rule, to_dots, None);
                }
                Ready::Line(path, width) => {
                    paint.set_color(Color::BLACK);
                    let stroke = Stroke {
                        width: *width,
                        miter_limit: MITER_LIMIT,
                        ..Stroke::default()
                    };
                    band.stroke_path(path, &paint, &stroke, to_dots, None);
                }
            }
        }
    }
}

/// Everything of a scene as areas and continuous strokes.
fn ready(scene: &Scene, group: LineGroup) -> Vec<Ready> {
    ink(scene, group)
        .filter_map(|thing| match thing {
            Ink::Area { curves, tone } => {
                skia_path(&curves).map(|path| Ready::Area(path, FillRule::EvenOdd, tone))
            }
            Ink::Line { curves, width_mm } => {
                skia_path(&curves).map(|path| Ready::Line(path, single(width_mm)))
            }
            Ink::Lettering(text) => skia_path(&text.outline())
                .map(|path| Ready::Area(path, FillRule::Winding, Tone::Solid)),
        })
        .collect()
}

/// Curves in the painter's own type; none when there are none.
fn skia_path(curves: &kurbo::BezPath) -> Option<tiny_skia::Path> {
    let mut path = tiny_skia::PathBuilder::new();
    let xy = |point: kurbo::Point| (single(point.x), single(point.y));
    for element in curves.iter() {
        match element {
            kurbo::PathEl::MoveTo(to) => {
                let (x, y) = xy(to);
                path.move_to(x, y);
            }
            kurbo::PathEl::LineTo(to) => {
                let (x, y) = xy(to);
                path.line_to(x, y);
            }
            kurbo::PathEl::QuadTo(control, to) => {
                let ((x1, y1), (x, y)) = (xy(control), xy(to));
                path.quad_to(x1, y1, x, y);
            }
            kurbo::PathEl::CurveTo(first, second, to) => {
                let ((x1, y1), (x2, y2), (x, y)) = (xy(first), xy(second), xy(to));
                path.cubic_to(x1, y1, x2, y2, x, y);
            }
            kurbo::PathEl::ClosePath => path.close(),
        }
    }
    path.finish()
}

#[cfg(test)]
#[path = "raster_tests.rs"]
mod tests;
