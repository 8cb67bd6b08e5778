//! What a sheet is made of, for tests: boxes of lettering, and every line as short straight strokes.

use flangewright::drawing::line_type::LineType;
use flangewright::drawing::path::{Path, Piece};
use flangewright::drawing::{Hatch, Item, Role, Scene, Shape, TextBox};
use flangewright::geometry::Point;

/// A line of lettering.
pub struct Lettering {
    /// What it says.
    pub text: String,
    /// What it covers.
    pub space: TextBox,
}

/// A straight stroke of a drawn line.
pub struct Stroke {
    /// One end.
    pub from: Point,
    /// The other.
    pub to: Point,
    /// What the line stands for.
    pub role: Role,
    /// Its kind.
    pub line: LineType,
}

/// All lettering.
pub fn lettering(scene: &Scene) -> Vec<Lettering> {
    let text = |item: &Item| match &item.shape {
        Shape::Text(text) => Some(Lettering {
            text: text.text.clone(),
            space: text.text_box(),
        }),
        _ => None,
    };
    scene.items.iter().filter_map(text).collect()
}

/// All lines, hatching and arrowheads included.
pub fn strokes(scene: &Scene) -> Vec<Stroke> {
    let mut all = Vec::new();
    for item in &scene.items {
        for path in centre_lines(&item.shape) {
            let points = points_of(&path);
            all.extend(points.windows(2).map(|ends| Stroke {
                from: ends[0],
                to: ends[1],
                role: item.pen.role,
                line: item.pen.line,
            }));
        }
    }
    all
}

fn centre_lines(shape: &Shape) -> Vec<Path> {
    match shape {
        Shape::Path(path) => vec![path.clone()],
        Shape::Circle { centre, radius_mm } => vec![Path::circle(*centre, *radius_mm)],
        Shape::Arc {
            centre,
            radius_mm,
            start_deg,
            sweep_deg,
        } => {
            vec![Path::arc(*centre, *radius_mm, *start_deg, *sweep_deg)]
        }
        // A tint lies under lettering; an arrowhead is as dark as a line.
        Shape::Fill { loops, tone } => match tone {
            flangewright::drawing::Tone::Solid => loops.clone(),
            flangewright::drawing::Tone::Tint => Vec::new(),
        },
        Shape::Hatch(hatch) => Hatch::lines(hatch),
        Shape::Text(_) => Vec::new(),
    }
}

/// Corners, and arcs in pieces of at most 3 degrees.
fn points_of(path: &Path) -> Vec<Point> {
    let mut points = Vec::new();
    for piece in path.pieces() {
        match piece {
            Piece::Line { from, to } => points.extend([from, to]),
            Piece::Arc {
                centre,
                radius_mm,
                start_deg,
                sweep_deg,
            } => {
                let steps = (sweep_deg.abs() / 3.0).ceil().max(1.0) as u32;
                points.extend((0..=steps).map(|step| {
                    let angle =
                        (start_deg + sweep_deg * f64::from(step) / f64::from(steps)).to_radians();
                    Point {
                        x: centre.x + radius_mm * angle.cos(),
                        y: centre.y + radius_mm * angle.sin(),
                    }
                }));
            }
        }
    }
    points
}
