//! The embedded font and the drawn signs, as outlines in capital heights.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::LazyLock;

use kurbo::{Affine, BezPath, Shape as _};
use skrifa::charmap::Charmap;
use skrifa::instance::{LocationRef, Size};
use skrifa::metrics::{GlyphMetrics, Metrics};
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, GlyphId, MetadataProvider as _, OutlineGlyphCollection};

use crate::drawing::curves::{bezier, stroke_area};
use crate::drawing::signs::{self, Sign};

/// The embedded font, for exports that carry it with them.
pub static FONT: &[u8] = include_bytes!("../../assets/fonts/lettering.otf");

/// A letter or sign in capital heights, its origin at the start of the baseline.
#[derive(Clone)]
pub(super) struct Letter {
    /// Width of its cell.
    pub(super) advance: f64,
    /// Areas to fill (non-zero rule).
    pub(super) outline: BezPath,
    /// Lowest ink.
    pub(super) bottom: f64,
    /// Highest ink.
    pub(super) top: f64,
}

impl Letter {
    fn new(advance: f64, outline: BezPath) -> Self {
        let ink = outline.bounding_box();
        Self {
            advance,
            outline,
            bottom: ink.y0,
            top: ink.y1,
        }
    }

    /// A drawn sign as an area.
    fn of_sign(sign: &Sign) -> Self {
        let strokes = sign
            .strokes
            .iter()
            .map(|path| stroke_area(path, signs::STROKE));
        let fills = sign.fills.iter().map(bezier);
        // All parts turn the same way, or they would cancel where they overlap.
        let area = strokes
            .chain(fills)
            .flat_map(|part| {
                if part.area() < 0.0 {
                    part.reverse_subpaths()
                } else {
                    part
                }
            })
            .collect();
        Self::new(sign.advance, area)
    }
}

/// The letter as a sign, or from the font.
pub(super) fn letter(letter: char) -> Cow<'static, Letter> {
    match FACE.ready.get(&letter) {
        Some(ready) => Cow::Borrowed(ready),
        None => Cow::Owned(FACE.letter(letter)),
    }
}

/// Whether the font has a letter.
pub(super) fn has_letter(letter: char) -> bool {
    FACE.charmap.map(letter).is_some()
}

/// The glyph of a letter and its advance in thousandths of the em; none where the font lacks it.
pub(super) fn glyph(letter: char) -> Option<(u16, f32)> {
    let glyph = FACE.charmap.map(letter)?;
    let advance = FACE.metrics.advance_width(glyph)?;
    // The tables of the font number glyphs with 16 bits.
    let number = u16::try_from(glyph.to_u32()).ok()?;
    Some((
        number,
        1000.0 * advance / f32::from(FACE.sizes.units_per_em),
    ))
}

/// Height of the em over the height of the capitals.
pub(super) fn em_height() -> f64 {
    f64::from(FACE.sizes.units_per_em) / FACE.cap_height
}

/// Sizes of the whole font, font units.
pub(super) fn face_sizes() -> &'static Metrics {
    &FACE.sizes
}

/// The parts of the embedded font that lettering needs.
struct Face {
    charmap: Charmap<'static>,
    metrics: GlyphMetrics<'static>,
    outlines: OutlineGlyphCollection<'static>,
    sizes: Metrics,
    /// Height of the capitals, font units.
    cap_height: f64,
    /// The drawn signs and the letters in daily use, drawn once.
    ready: BTreeMap<char, Letter>,
}

static FACE: LazyLock<Face> = LazyLock::new(|| {
    // The bytes are compiled in, so neither can fail in one run and not in another; the tests
    // of the lettering read them.
    let font = FontRef::new(FONT).expect("the embedded font is a font");
    let sizes = font.metrics(Size::unscaled(), LocationRef::default());
    let cap_height = sizes
        .cap_height
        .expect("the embedded font states its capital height");
    let mut face = Face {
        charmap: font.charmap(),
        metrics: font.glyph_metrics(Size::unscaled(), LocationRef::default()),
        outlines: font.outline_glyphs(),
        sizes,
        cap_height: f64::from(cap_height),
        ready: BTreeMap::new(),
    };
    let daily = (' '..='~').chain('\u{a1}'..='\u{ff}').chain(['\u{2212}']);
    face.ready =
        daily
            .map(|letter| (letter, face.letter(letter)))
            .chain(signs::ALL.into_iter().filter_map(|letter| {
                signs::sign(letter).map(|sign| (letter, Letter::of_sign(&sign)))
            }))
            .collect();
    face
});

impl Face {
    /// A letter of the font; its own "missing letter" box where it has none.
    fn letter(&self, letter: char) -> Letter {
        let glyph = self.charmap.map(letter).unwrap_or(GlyphId::NOTDEF);
        let advance = self.metrics.advance_width(glyph).unwrap_or_default();
        let mut pen = CurvePen(BezPath::new());
        let settings = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
        // A glyph that cannot be drawn shows as nothing; the tests draw every one in daily use.
        let drawn = self
            .outlines
            .get(glyph)
            .is_some_and(|outline| outline.draw(settings, &mut pen).is_ok());
        if !drawn {
            pen.0 = BezPath::new();
        }
        pen.0.apply_affine(Affine::scale(1.0 / self.cap_height));
        Letter::new(f64::from(advance) / self.cap_height, pen.0)
    }
}

/// Takes a glyph's outline as curves.
struct CurvePen(BezPath);

impl OutlinePen for CurvePen {
    fn move_to(&mut self, x: f32, y: f32) {
        self.0.move_to(pair(x, y));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.0.line_to(pair(x, y));
    }

    fn quad_to(&mut self, cx0: f32, cy0: f32, x: f32, y: f32) {
        self.0.quad_to(pair(cx0, cy0), pair(x, y));
    }

    fn curve_to(&mut self, cx0: f32, cy0: f32, cx1: f32, cy1: f32, x: f32, y: f32) {
        self.0.curve_to(pair(cx0, cy0), pair(cx1, cy1), pair(x, y));
    }

    fn close(&mut self) {
        self.0.close_path();
    }
}

/// A glyph point.
fn pair(x: f32, y: f32) -> kurbo::Point {
    kurbo::Point::new(f64::from(x), f64::from(y))
}
