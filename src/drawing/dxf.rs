//! A scene as a DXF file of release 12, written so that any reader opens it without repair.
//!
//! Arcs stay arcs, circles circles, and runs of both are polylines with bulges. The layers follow the line types
//! of ISO 128-2; dimensions, lettering, hatching, arrowheads and the sheet's frame have layers of their own. Tints
//! are left out. Release 12 has no field for the unit: a length of 1 is 1 mm, as the title block says.

use crate::drawing::dxf_path::{Drawn, drawn};
use crate::drawing::dxf_text::{self, Stretch};
use crate::drawing::line_type::{LineGroup, LineType, pattern_mm};
use crate::drawing::number::machine;
use crate::drawing::path::Path;
use crate::drawing::scene::{Item, Pen, Role, Scene, Shape, Tone};
use crate::geometry::Point;

/// Decimals of a coordinate: a nanometre.
const DECIMALS: usize = 6;

/// A layer: name, colour number, line type.
type Layer = (&'static str, u8, LineType);

/// Colour 7 is black on white paper, 8 and 9 are greys, 5 is blue (common practice, no source).
const LAYERS: [Layer; 11] = [
    ("OUTLINE_01-2", 7, LineType::ContinuousWide),
    ("NARROW_01-1", 8, LineType::ContinuousNarrow),
    ("HIDDEN_02-1", 8, LineType::DashedNarrow),
    ("AXIS_04-1", 8, LineType::LongDashDotNarrow),
    ("CUT_04-2", 7, LineType::LongDashDotWide),
    ("NEIGHBOUR_05-1", 8, LineType::LongDashDoubleDotNarrow),
    (HATCH, 9, LineType::ContinuousNarrow),
    (DIMENSION, 5, LineType::ContinuousNarrow),
    (TEXT, 5, LineType::ContinuousNarrow),
    (FILL, 7, LineType::ContinuousNarrow),
    (FRAME, 7, LineType::ContinuousWide),
];
const HATCH: &str = "HATCH";
const DIMENSION: &str = "DIMENSION";
const TEXT: &str = "TEXT";
const FILL: &str = "FILL";
const FRAME: &str = "FRAME";

/// Name of the one text style.
const STYLE: &str = "STANDARD";

/// The file, in the code page 1252 that its head names.
#[must_use]
pub fn dxf(scene: &Scene, group: LineGroup) -> Vec<u8> {
    let mut file = Writer { bytes: Vec::new() };
    file.head(scene);
    file.tables(group);
    file.text(0, "SECTION");
    file.text(2, "ENTITIES");
    for item in &scene.items {
        file.item(item);
    }
    file.text(0, "ENDSEC");
    file.text(0, "EOF");
    file.bytes
}

/// The name of a line type in the file.
fn line_name(line: LineType) -> &'static str {
    match line {
        LineType::ContinuousWide | LineType::ContinuousNarrow => "CONTINUOUS",
        LineType::DashedNarrow => "DASHED_02-1",
        LineType::LongDashDotNarrow => "CHAIN_04-1",
        LineType::LongDashDotWide => "CHAIN_04-2",
        LineType::LongDashDoubleDotNarrow => "CHAIN_05-1",
    }
}

/// The layer of a line.
fn layer_of(pen: Pen) -> &'static str {
    match pen.role {
        Role::Dimension | Role::Annotation => DIMENSION,
        Role::Frame => FRAME,
        Role::Ring
        | Role::RingHatch
        | Role::Lens
        | Role::Body
        | Role::Axis
        | Role::Grid
        | Role::Highlight
        | Role::Hidden
        | Role::Pin
        | Role::Light
        | Role::Added
        | Role::Removed => line_layer(pen.line),
    }
}

fn line_layer(line: LineType) -> &'static str {
    match line {
        LineType::ContinuousWide => "OUTLINE_01-2",
        LineType::ContinuousNarrow => "NARROW_01-1",
        LineType::DashedNarrow => "HIDDEN_02-1",
        LineType::LongDashDotNarrow => "AXIS_04-1",
        LineType::LongDashDotWide => "CUT_04-2",
        LineType::LongDashDoubleDotNarrow => "NEIGHBOUR_05-1",
    }
}

struct Writer {
    bytes: Vec<u8>,
}

impl Writer {
    /// A group: its code on one line, its value on the next.
    fn text(&mut self, code: u16, value: &str) {
        self.bytes.extend(format!("{code:>3}\r\n").bytes());
        self.bytes.extend(dxf_text::encoded(value));
        self.bytes.extend(b"\r\n");
    }

    fn whole(&mut self, code: u16, value: usize) {
        self.text(code, &value.to_string());
    }

    fn number(&mut self, code: u16, value: f64) {
        let mut digits = machine(value, DECIMALS);
        if !digits.contains('.') {
            // Real values carry a point, or strict readers take them for whole numbers.
            digits.push_str(".0");
        }
        self.text(code, &digits);
    }

    /// A place; its codes are `code` and ten more for y.
    fn point(&mut self, code: u16, at: Point) {
        self.number(code, at.x);
        self.number(code + 10, at.y);
    }

    fn head(&mut self, scene: &Scene) {
        self.text(0, "SECTION");
        self.text(2, "HEADER");
        self.text(9, "$ACADVER");
        self.text(1, "AC1009");
        self.text(9, "$DWGCODEPAGE");
        self.text(3, "ANSI_1252");
        if let Some(extent) = scene.frame() {
            for (name, at) in [
                ("$EXTMIN", Point::new(extent.left, extent.bottom)),
                ("$EXTMAX", Point::new(extent.right, extent.top)),
            ] {
                self.text(9, name);
                self.point(10, at);
            }
        }
        self.text(9, "$LTSCALE");
        self.number(40, 1.0);
        self.text(0, "ENDSEC");
    }

    fn tables(&mut self, group: LineGroup) {
        self.text(0, "SECTION");
        self.text(2, "TABLES");
        self.table("LTYPE", LineType::ALL.len() - 1);
        self.line_type("CONTINUOUS", "", &[]);
        for line in LineType::ALL {
            if let Some(elements) = pattern_mm(line, line.width_mm(group)) {
                let words = format!("ISO 128-2 line {}", line.number());
                self.line_type(line_name(line), &words, &elements);
            }
        }
        self.text(0, "ENDTAB");
        self.table("LAYER", LAYERS.len() + 1);
        self.layer("0", 7, LineType::ContinuousWide);
        for (name, colour, line) in LAYERS {
            self.layer(name, colour, line);
        }
        self.text(0, "ENDTAB");
        self.table("STYLE", 1);
        self.text(0, "STYLE");
        self.text(2, STYLE);
        self.whole(70, 0);
        self.number(40, 0.0);
        self.number(41, 1.0);
        self.number(50, 0.0);
        self.whole(71, 0);
        self.number(42, 2.5);
        self.text(3, "txt");
        self.text(4, "");
        self.text(0, "ENDTAB");
        self.text(0, "ENDSEC");
    }

    fn table(&mut self, name: &str, entries: usize) {
        self.text(0, "TABLE");
        self.text(2, name);
        self.whole(70, entries);
    }

    /// Drawn elements are positive, gaps negative, mm.
    fn line_type(&mut self, name: &str, words: &str, elements: &[f64]) {
        self.text(0, "LTYPE");
        self.text(2, name);
        self.whole(70, 0);
        self.text(3, words);
        self.whole(72, 65);
        self.whole(73, elements.len());
        self.number(40, elements.iter().map(|element| element.abs()).sum());
        for element in elements {
            self.number(49, *element);
        }
    }

    fn layer(&mut self, name: &str, colour: u8, line: LineType) {
        self.text(0, "LAYER");
        self.text(2, name);
        self.whole(70, 0);
        self.whole(62, usize::from(colour));
        self.text(6, line_name(line));
    }

    /// The head of a thing drawn: kind, layer, and the line type where it is not the layer's.
    fn entity(&mut self, kind: &str, layer: &str, line: LineType) {
        self.text(0, kind);
        self.text(8, layer);
        let own = LAYERS
            .iter()
            .find(|(name, _, _)| *name == layer)
            .map(|layer| layer.2);
        if own.map(line_name) != Some(line_name(line)) {
            self.text(6, line_name(line));
        }
    }

    fn item(&mut self, item: &Item) {
        let layer = layer_of(item.pen);
        match &item.shape {
            Shape::Path(_) | Shape::Circle { .. } | Shape::Arc { .. } => {
                if let Some(path) = item.shape.centre_line() {
                    self.path(&path, layer, item.pen.line);
                }
            }
            Shape::Hatch(hatch) => {
                for line in hatch.lines() {
                    self.path(&line, HATCH, LineType::ContinuousNarrow);
                }
            }
            Shape::Fill { loops, tone } => match tone {
                Tone::Solid => loops.iter().for_each(|border| self.solid(border)),
                Tone::Tint => {}
            },
            Shape::Text(text) => {
                for stretch in dxf_text::stretches(text) {
                    self.stretch(&stretch);
                }
            }
        }
    }

    fn path(&mut self, path: &Path, layer: &str, line: LineType) {
        match drawn(path) {
            None => {}
            Some(Drawn::Line { from, to }) => {
                self.entity("LINE", layer, line);
                self.point(10, from);
                self.point(11, to);
            }
            Some(Drawn::Circle { centre, radius_mm }) => {
                self.entity("CIRCLE", layer, line);
                self.point(10, centre);
                self.number(40, radius_mm);
            }
            Some(Drawn::Arc {
                centre,
                radius_mm,
                start_deg,
                end_deg,
            }) => {
                self.entity("ARC", layer, line);
                self.point(10, centre);
                self.number(40, radius_mm);
                self.number(50, start_deg);
                self.number(51, end_deg);
            }
            Some(Drawn::Run { vertices, closed }) => {
                self.entity("POLYLINE", layer, line);
                self.whole(66, 1);
                self.point(10, Point::new(0.0, 0.0));
                self.whole(70, usize::from(closed));
                for vertex in vertices {
                    self.text(0, "VERTEX");
                    self.text(8, layer);
                    self.point(10, vertex.at);
                    if vertex.bulge != 0.0 {
                        self.number(42, vertex.bulge);
                    }
                }
                self.text(0, "SEQEND");
                self.text(8, layer);
            }
        }
    }

    /// A filled area of three or four straight sides; others keep their border only.
    fn solid(&mut self, border: &Path) {
        let corners: Vec<Point> = border.vertices.iter().map(|vertex| vertex.at).collect();
        let straight = border.vertices.iter().all(|vertex| vertex.bulge == 0.0);
        // The third and fourth corner of a solid stand the other way round than on a polygon.
        let (first, second, third, fourth) = match corners.as_slice() {
            [a, b, c] if straight => (*a, *b, *c, *c),
            [a, b, c, d] if straight => (*a, *b, *d, *c),
            _ => return self.path(border, FILL, LineType::ContinuousNarrow),
        };
        self.entity("SOLID", FILL, LineType::ContinuousNarrow);
        for (code, at) in [(10, first), (11, second), (12, third), (13, fourth)] {
            self.point(code, at);
        }
    }

    fn stretch(&mut self, stretch: &Stretch) {
        match stretch {
            Stretch::Letters {
                text,
                start,
                end,
                height_mm,
                rotation_deg,
            } => {
                self.entity("TEXT", TEXT, LineType::ContinuousNarrow);
                self.point(10, *start);
                self.number(40, *height_mm);
                self.text(1, text);
                self.number(50, *rotation_deg);
                self.text(7, STYLE);
                // Fitted between two places, so that another font takes the room that was kept for ours.
                self.whole(72, 5);
                self.point(11, *end);
            }
            Stretch::Stroke(path) => self.path(path, TEXT, LineType::ContinuousNarrow),
            Stretch::Area(path) => self.solid(path),
        }
    }
}

#[cfg(test)]
#[path = "dxf_tests.rs"]
mod tests;
