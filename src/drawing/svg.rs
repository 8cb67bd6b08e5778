//! A scene as an SVG file in millimetres.
//!
//! Letters are painted as outlines, each held once, so that they look the same without the font; over each line of
//! lettering lies the same text unpainted, so that it can be found and copied.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use kurbo::{BezPath, PathEl};

use crate::drawing::extent::Extent;
use crate::drawing::font;
use crate::drawing::ink::{Ink, MITER_LIMIT, TINT, ink, page};
use crate::drawing::lettering::Text;
use crate::drawing::line_type::LineGroup;
use crate::drawing::raster::Ground;
use crate::drawing::scene::{Scene, Tone};

/// Decimals of a coordinate: a tenth of a micrometre.
const DECIMALS: usize = 4;

/// The file as text; none when there is nothing to show.
#[must_use]
pub fn svg(scene: &Scene, title: &str, ground: Ground, group: LineGroup) -> Option<String> {
    let page = page(scene)?;
    let mut file = Writer {
        text: String::new(),
        page,
    };
    file.open(title, ground);
    file.letters(scene);
    for thing in ink(scene, group) {
        match thing {
            Ink::Area { curves, tone } => file.area(&curves, tone),
            Ink::Line { curves, width_mm } => file.line(&curves, width_mm),
            Ink::Lettering(text) => file.lettering(text),
        }
    }
    file.text.push_str("</g>\n</svg>\n");
    Some(file.text)
}

struct Writer {
    text: String,
    page: Extent,
}

impl Writer {
    fn open(&mut self, title: &str, ground: Ground) {
        let (width, height) = (number(self.page.width()), number(self.page.height()));
        self.put(format_args!(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" \
             xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"{width}mm\" \
             height=\"{height}mm\" viewBox=\"0 0 {width} {height}\">\n<title>{}</title>\n",
            escaped(title)
        ));
        match ground {
            Ground::White => self.put(format_args!(
                "<rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>\n"
            )),
            Ground::Transparent => {}
        }
        self.put(format_args!("<g stroke-linecap=\"butt\" stroke-linejoin=\"miter\" stroke-miterlimit=\"{MITER_LIMIT}\">\n"));
    }

    /// Writing to a string cannot fail.
    fn put(&mut self, what: std::fmt::Arguments<'_>) {
        let _always_well = self.text.write_fmt(what);
    }

    fn area(&mut self, curves: &BezPath, tone: Tone) {
        let shade = match tone {
            Tone::Solid => "#000".to_owned(),
            Tone::Tint => format!("rgb({0}%,{0}%,{0}%)", TINT * 100.0),
        };
        let data = self.data(curves);
        self.put(format_args!(
            "<path fill=\"{shade}\" fill-rule=\"evenodd\" d=\"{data}\"/>\n"
        ));
    }

    fn line(&mut self, curves: &BezPath, width_mm: f64) {
        let (data, width) = (self.data(curves), number(width_mm));
        self.put(format_args!(
            "<path fill=\"none\" stroke=\"#000\" stroke-width=\"{width}\" d=\"{data}\"/>\n"
        ));
    }

    /// The outlines of the letters, each once, to be used where they are wanted.
    fn letters(&mut self, scene: &Scene) {
        let used: BTreeSet<char> = ink(scene, LineGroup::Half)
            .filter_map(|thing| match thing {
                Ink::Lettering(text) => Some(text.text.chars()),
                Ink::Area { .. } | Ink::Line { .. } => None,
            })
            .flatten()
            .collect();
        self.put(format_args!("<defs>\n"));
        for letter in used {
            let outline = &font::letter(letter).outline;
            if !outline.elements().is_empty() {
                let data = path_data(outline, kurbo::Point::ZERO);
                self.put(format_args!(
                    "<path id=\"{}\" d=\"{data}\"/>\n",
                    name(letter)
                ));
            }
        }
        self.put(format_args!("</defs>\n"));
    }

    fn lettering(&mut self, text: &Text) {
        let start = text.start();
        let (x, y) = (
            number(start.x - self.page.left),
            number(self.page.top - start.y),
        );
        let turn = match number(-text.rotation_deg).as_str() {
            "0" => String::new(),
            degrees => format!(" rotate({degrees})"),
        };
        let height = number(text.height_mm);
        self.put(format_args!(
            "<g transform=\"translate({x} {y}){turn} scale({height})\">"
        ));
        let mut along = 0.0;
        for letter in text.text.chars() {
            let shape = font::letter(letter);
            if !shape.outline.elements().is_empty() {
                self.put(format_args!(
                    "<use xlink:href=\"#{}\" x=\"{}\"/>",
                    name(letter),
                    number(along)
                ));
            }
            along += shape.advance;
        }
        self.put(format_args!(
            "<text font-family=\"sans-serif\" font-size=\"{}\" textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\" \
             fill=\"none\">{}</text></g>\n",
            number(font::em_height()),
            number(along),
            escaped(&text.text)
        ));
    }

    fn data(&self, curves: &BezPath) -> String {
        path_data(curves, kurbo::Point::new(self.page.left, self.page.top))
    }
}

/// What a letter's outline is called in the file.
fn name(letter: char) -> String {
    format!("u{:x}", u32::from(letter))
}

/// Curves as path data, x to the right and y downward from an origin.
fn path_data(curves: &BezPath, origin: kurbo::Point) -> String {
    let mut data = String::new();
    for element in curves.elements() {
        let (letter, points): (char, &[kurbo::Point]) = match element {
            PathEl::MoveTo(to) => ('M', &[*to]),
            PathEl::LineTo(to) => ('L', &[*to]),
            PathEl::QuadTo(first, to) => ('Q', &[*first, *to]),
            PathEl::CurveTo(first, second, to) => ('C', &[*first, *second, *to]),
            PathEl::ClosePath => ('Z', &[]),
        };
        data.push(letter);
        for (index, point) in points.iter().enumerate() {
            if index > 0 {
                data.push(' ');
            }
            data.push_str(&number(point.x - origin.x));
            data.push(' ');
            data.push_str(&number(origin.y - point.y));
        }
    }
    data
}

/// A number without zeros at its end, with no sign where it rounds to nothing.
fn number(value: f64) -> String {
    super::number::machine(value, DECIMALS)
}

/// Text that XML takes: signs of its own replaced, and what it forbids (XML 1.0, section 2.2) shown as missing.
#[must_use]
pub(super) fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\t' | '\n' | '\r' => safe.push(' '),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => safe.push('\u{fffd}'),
            usual => safe.push(usual),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;
    use crate::drawing::line_type::LineType;
    use crate::drawing::scene::Role;
    use crate::geometry::Point;

    fn sheet() -> Scene {
        let mut scene = Scene::sheet(100.0, 50.0);
        let text = Text::level(Point { x: 10.0, y: 20.0 }, 3.5, "<R&D> \u{1} \u{d8}42");
        scene.draw(
            Shape::Text(text),
            LineType::ContinuousNarrow,
            Role::Annotation,
        );
        scene
    }

    #[test]
    fn the_sheet_is_in_millimetres_and_text_stands_in_it_escaped() {
        let text = svg(&sheet(), "a & b", Ground::White, LineGroup::Half).unwrap();
        assert!(text.contains("width=\"100mm\" height=\"50mm\" viewBox=\"0 0 100 50\""));
        assert!(text.contains("<title>a &amp; b</title>"));
        assert!(text.contains(">&lt;R&amp;D&gt; \u{fffd} \u{d8}42</text>"));
        // y counts from the top in SVG: 50 - 20.
        assert!(text.contains("translate(10 30) scale(3.5)"));
    }

    #[test]
    fn transparent_ground_has_no_paper() {
        let paper = |ground| {
            svg(&sheet(), "", ground, LineGroup::Half)
                .unwrap()
                .contains("<rect")
        };
        assert!(paper(Ground::White) && !paper(Ground::Transparent));
    }

    #[test]
    fn nothing_drawn_is_no_file() {
        assert!(svg(&Scene::view(), "", Ground::White, LineGroup::Half).is_none());
    }
}
