//! A scene as a PDF file: vector, at its true size, with lettering that can be found.
//!
//! Letters come from a subset of the embedded font. Drawn signs are areas; a line of lettering that holds one
//! says by its `ActualText` what it reads, so that it is found too. Same scene, same bytes: no dates, no chance.

use std::collections::BTreeMap;
use std::io::Write as _;

use flate2::Compression;
use flate2::write::ZlibEncoder;
use kurbo::{Affine, BezPath, PathEl};
use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Content, Filter, Finish as _, Name, Pdf, Rect, Ref, Str, TextStr};
use skrifa::raw::types::Tag;
use skrifa::{FontRef, raw::TableProvider as _};
use subsetter::GlyphRemapper;
use thiserror::Error;

use crate::drawing::curves::kurbo_point;
use crate::drawing::extent::Extent;
use crate::drawing::font::{FONT, em_height, face_sizes, glyph};
use crate::drawing::ink::{Ink, MITER_LIMIT, TINT, ink, page};
use crate::drawing::lettering::{Text, outline, runs, unknown_letters};
use crate::drawing::line_type::LineGroup;
use crate::drawing::scene::{Scene, Tone};
use crate::drawing::signs;
use crate::drawing::whole::single;

/// Why a PDF file cannot be made.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum PdfError {
    /// There is nothing to show.
    #[error("the drawing is empty: there is nothing to put on a page")]
    Empty,
    /// The font could not be cut down to the letters in use.
    #[error("the lettering could not be put into the PDF file: {0}")]
    Font(String),
    /// The file could not be put together.
    #[error("the PDF file could not be put together: {0}")]
    Packing(String),
}

/// PDF counts in points, 72 to the inch (ISO 32000-1, 8.3.2.3).
const POINTS_PER_MM: f64 = 72.0 / 25.4;

/// Name of the font on the page.
const FONT_NAME: Name = Name(b"L");

/// Six letters before a font's name say that it is a subset (ISO 32000-1, 9.6.4); ours is one a file.
const BASE_FONT: Name = Name(b"FWRING+BenchLettering");

/// Fonts of numbered glyphs whose number is the code on the page.
const IDENTITY: SystemInfo = SystemInfo {
    registry: Str(b"Adobe"),
    ordering: Str(b"Identity"),
    supplement: 0,
};

/// The objects of the file.
struct Ids {
    catalog: Ref,
    pages: Ref,
    /// Page and content of each scene.
    sheets: Vec<(Ref, Ref)>,
    info: Ref,
    font: Ref,
    cid_font: Ref,
    descriptor: Ref,
    font_file: Ref,
    to_unicode: Ref,
}

impl Ids {
    fn new(count: usize) -> Self {
        let mut next = Ref::new(1);
        Self {
            catalog: next.bump(),
            pages: next.bump(),
            sheets: (0..count).map(|_| (next.bump(), next.bump())).collect(),
            info: next.bump(),
            font: next.bump(),
            cid_font: next.bump(),
            descriptor: next.bump(),
            font_file: next.bump(),
            to_unicode: next.bump(),
        }
    }
}

/// The file of one scene.
///
/// # Errors
/// [`PdfError`] when the scene is empty or the file cannot be put together.
pub fn pdf(scene: &Scene, title: &str, group: LineGroup) -> Result<Vec<u8>, PdfError> {
    pdf_of_pages(std::slice::from_ref(scene), title, group)
}

/// The file of several scenes, a page each.
///
/// # Errors
/// [`PdfError`] when there is no scene, one is empty, or the file cannot be put together.
pub fn pdf_of_pages(scenes: &[Scene], title: &str, group: LineGroup) -> Result<Vec<u8>, PdfError> {
    let pages: Option<Vec<Extent>> = scenes.iter().map(page).collect();
    let pages = pages
        .filter(|pages| !pages.is_empty())
        .ok_or(PdfError::Empty)?;
    let ids = Ids::new(scenes.len());
    let mut letters = Letters::default();
    let mut file = Pdf::new();
    structure(&mut file, &ids, &pages, title);
    for ((scene, page), (_, content_id)) in scenes.iter().zip(&pages).zip(&ids.sheets) {
        let content = content(scene, page, group, &mut letters);
        stream(&mut file, *content_id, &content, None)?;
    }
    letters.write(&mut file, &ids)?;
    Ok(file.finish())
}

fn structure(file: &mut Pdf, ids: &Ids, pages: &[Extent], title: &str) {
    let mut catalog = file.catalog(ids.catalog);
    catalog.pages(ids.pages);
    let mut wishes = catalog.viewer_preferences();
    wishes.display_doc_title(true);
    // The print dialog then proposes no fitting to the page: the sheet comes out 1:1 (ISO 32000-1, table 150).
    wishes.pair(Name(b"PrintScaling"), Name(b"None"));
    wishes.finish();
    catalog.finish();
    file.pages(ids.pages)
        .kids(ids.sheets.iter().map(|(page, _)| *page))
        .count(i32::try_from(ids.sheets.len()).unwrap_or(i32::MAX));
    for ((page_id, content_id), page) in ids.sheets.iter().zip(pages) {
        let size = Rect::new(
            0.0,
            0.0,
            single(page.width() * POINTS_PER_MM),
            single(page.height() * POINTS_PER_MM),
        );
        let mut sheet = file.page(*page_id);
        sheet
            .media_box(size)
            .parent(ids.pages)
            .contents(*content_id);
        sheet.resources().fonts().pair(FONT_NAME, ids.font);
        sheet.finish();
    }
    file.document_info(ids.info)
        .title(TextStr(title))
        .producer(TextStr("Flangewright"));
}

/// Adds a packed stream.
fn stream(file: &mut Pdf, id: Ref, bytes: &[u8], subtype: Option<Name>) -> Result<(), PdfError> {
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::default());
    let packed = encoder
        .write_all(bytes)
        .and_then(|()| encoder.finish())
        .map_err(|error| PdfError::Packing(error.to_string()))?;
    let mut stream = file.stream(id, &packed);
    stream.filter(Filter::FlateDecode);
    if let Some(subtype) = subtype {
        stream.pair(Name(b"Subtype"), subtype);
    }
    Ok(())
}

/// What is painted, as operators in mm.
fn content(scene: &Scene, page: &Extent, group: LineGroup, letters: &mut Letters) -> Vec<u8> {
    let mut pen = Content::new();
    let scale = single(POINTS_PER_MM);
    let shift = |mm: f64| single(-mm * POINTS_PER_MM);
    pen.transform([scale, 0.0, 0.0, scale, shift(page.left), shift(page.bottom)]);
    pen.set_miter_limit(MITER_LIMIT);
    for thing in ink(scene, group) {
        match thing {
            Ink::Area { curves, tone } => {
                let shade = match tone {
                    Tone::Solid => 0.0,
                    Tone::Tint => TINT,
                };
                pen.set_fill_gray(shade);
                trace(&mut pen, &curves);
                pen.fill_even_odd();
                pen.set_fill_gray(0.0);
            }
            Ink::Line { curves, width_mm } => {
                pen.set_line_width(single(width_mm));
                trace(&mut pen, &curves);
                pen.stroke();
            }
            Ink::Lettering(text) => lettering(&mut pen, text, letters),
        }
    }
    pen.finish().to_vec()
}

fn trace(pen: &mut Content, curves: &BezPath) {
    let xy = |point: kurbo::Point| (single(point.x), single(point.y));
    let mut at = kurbo::Point::ZERO;
    for element in curves.elements() {
        match *element {
            PathEl::MoveTo(to) => {
                pen.move_to(xy(to).0, xy(to).1);
            }
            PathEl::LineTo(to) => {
                pen.line_to(xy(to).0, xy(to).1);
            }
            PathEl::QuadTo(control, to) => {
                // A quadratic curve as a cubic one: controls two thirds of the way to its own.
                let (first, second) = (at.lerp(control, 2.0 / 3.0), to.lerp(control, 2.0 / 3.0));
                cubic(pen, xy(first), xy(second), xy(to));
            }
            PathEl::CurveTo(first, second, to) => cubic(pen, xy(first), xy(second), xy(to)),
            PathEl::ClosePath => {
                pen.close_path();
            }
        }
        at = element.end_point().unwrap_or(at);
    }
}

fn cubic(pen: &mut Content, first: (f32, f32), second: (f32, f32), to: (f32, f32)) {
    pen.cubic_to(first.0, first.1, second.0, second.1, to.0, to.1);
}

/// A line of lettering: letters by the font, signs as areas.
fn lettering(pen: &mut Content, text: &Text, letters: &mut Letters) {
    let runs = runs(&text.text, text.height_mm);
    let says_otherwise =
        runs.iter().any(|run| run.is_sign) || !unknown_letters(&text.text).is_empty();
    if says_otherwise {
        // What people type to find a diameter is the letter, not the sign.
        let reads = text.text.replace(signs::DIAMETER, "\u{d8}");
        pen.begin_marked_content_with_properties(Name(b"Span"))
            .properties()
            .actual_text(TextStr(&reads));
    }
    let start = kurbo_point(text.start()).to_vec2();
    let turn = Affine::translate(start) * Affine::rotate(text.rotation_deg.to_radians());
    for run in &runs {
        let place = turn * Affine::translate((run.start_mm, 0.0));
        let known = !run.is_sign && unknown_letters(&run.text).is_empty();
        if !known {
            trace(pen, &(place * outline(&run.text, text.height_mm)));
            pen.fill_nonzero();
        }
        // Readers hang what a line says on its letters: a sign has a blank under it.
        let shown = if known { run.text.as_str() } else { " " };
        pen.begin_text();
        pen.set_font(FONT_NAME, single(text.height_mm * em_height()));
        pen.set_text_matrix(place.as_coeffs().map(single));
        pen.show(Str(&letters.codes(shown)));
        pen.end_text();
    }
    if says_otherwise {
        pen.end_marked_content();
    }
}

/// The letters in use.
#[derive(Default)]
struct Letters {
    glyphs: GlyphRemapper,
    /// Letter and advance (thousandths of the em) by number in the subset.
    used: BTreeMap<u16, (char, f32)>,
}

impl Letters {
    /// The codes of a text on the page: two bytes a letter. Letters that the font lacks have none.
    fn codes(&mut self, text: &str) -> Vec<u8> {
        let mut codes = Vec::new();
        for letter in text.chars() {
            if let Some((number, advance)) = glyph(letter) {
                let code = self.glyphs.remap(number);
                // Two letters may share a glyph; the first one found is what it reads as.
                self.used.entry(code).or_insert((letter, advance));
                codes.extend(code.to_be_bytes());
            }
        }
        codes
    }

    fn write(&self, file: &mut Pdf, ids: &Ids) -> Result<(), PdfError> {
        file.type0_font(ids.font)
            .base_font(BASE_FONT)
            .encoding_predefined(Name(b"Identity-H"))
            .descendant_font(ids.cid_font)
            .to_unicode(ids.to_unicode);
        let mut font = file.cid_font(ids.cid_font);
        font.subtype(CidFontType::Type0)
            .base_font(BASE_FONT)
            .system_info(IDENTITY)
            .font_descriptor(ids.descriptor)
            .default_width(0.0);
        let mut widths = font.widths();
        for (code, (_, advance)) in &self.used {
            widths.consecutive(*code, [*advance]);
        }
        widths.finish();
        font.finish();
        descriptor(file, ids);
        let mut cmap = UnicodeCmap::new(Name(b"Letters"), IDENTITY);
        for (code, (letter, _)) in &self.used {
            cmap.pair(*code, *letter);
        }
        let cmap = cmap.finish();
        stream(file, ids.to_unicode, &cmap, None)?;
        let curves = self.subset()?;
        stream(file, ids.font_file, &curves, Some(Name(b"CIDFontType0C")))
    }

    /// The curve table of the font with these letters only.
    fn subset(&self) -> Result<Vec<u8>, PdfError> {
        let whole = subsetter::subset(FONT, 0, &self.glyphs)
            .map_err(|error| PdfError::Font(error.to_string()))?;
        let font = FontRef::new(&whole).map_err(|error| PdfError::Font(error.to_string()))?;
        let table = font
            .data_for_tag(Tag::new(b"CFF "))
            .ok_or_else(|| PdfError::Font("the font has no table of curves".to_owned()))?;
        Ok(table.as_bytes().to_vec())
    }
}

fn descriptor(file: &mut Pdf, ids: &Ids) {
    let sizes = face_sizes();
    let thousandths = |units: f32| 1000.0 * units / f32::from(sizes.units_per_em);
    let bounds = sizes.bounds.unwrap_or_default();
    file.font_descriptor(ids.descriptor)
        .name(BASE_FONT)
        .flags(FontFlags::NON_SYMBOLIC)
        .bbox(Rect::new(
            thousandths(bounds.x_min),
            thousandths(bounds.y_min),
            thousandths(bounds.x_max),
            thousandths(bounds.y_max),
        ))
        .italic_angle(sizes.italic_angle)
        .ascent(thousandths(sizes.ascent))
        .descent(thousandths(sizes.descent))
        .cap_height(thousandths(sizes.cap_height.unwrap_or(sizes.ascent)))
        // Readers use the stem only to stand in for a font that is missing; ours is there.
        .stem_v(80.0)
        .font_file3(ids.font_file);
}
