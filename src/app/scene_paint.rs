//! A scene as shapes of the screen.
//!
//! Lettering, line widths, dashes and hatch spacing are millimetres on paper; on the screen a paper
//! millimetre has a fixed number of points, whatever the zoom.

use egui::{Align2, Color32, FontId, Painter, Pos2, Shape, Stroke, pos2};

use super::areas::filled;
use super::lettering_paint::paint_text;
use super::palette::Palette;
use super::sight::ToScreen;
use crate::drawing::path::Piece;
use crate::drawing::{Item, Path, Placement, Role, Scene, Shape as SceneShape, Text, Tone};
use crate::geometry::Point;

/// Longest chord by which an arc is drawn, degrees.
const ARC_STEP_DEG: f64 = 3.0;

/// An item whose tag is asked for light.
pub type IsLit<'a> = dyn Fn(u32) -> bool + 'a;

/// A scene made ready for the screen.
#[derive(Clone, Debug, Default)]
pub struct Painted {
    shapes: Vec<Shape>,
    lettering: Vec<Lettering>,
}

#[derive(Clone, Debug)]
struct Lettering {
    text: Text,
    colour: Color32,
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "the screen is painted in single precision"
)]
fn single(value: f64) -> f32 {
    value as f32
}

/// The placement from the part's millimetres to paper millimetres of the screen.
fn on_paper(way: &ToScreen) -> Placement {
    Placement::scaling(way.points_per_mm / way.print.points_per_mm)
}

/// A point of the placed scene on the screen.
fn paper_to_screen(way: &ToScreen, point: Point) -> Pos2 {
    let shrink = way.print.points_per_mm / way.points_per_mm;
    way.at(Point {
        x: point.x * shrink,
        y: point.y * shrink,
    })
}

/// Makes a scene ready; the lit items come last, so that nothing covers them.
#[must_use]
pub fn painted(scene: &Scene, way: &ToScreen, palette: Palette, is_lit: &IsLit<'_>) -> Painted {
    let placement = on_paper(way);
    let mut painted = Painted::default();
    let lit = |item: &Item| item.tag.is_some_and(is_lit);
    for item in scene.items.iter().filter(|item| !lit(item)) {
        paint_item(item, &placement, way, palette, false, &mut painted);
    }
    for item in scene.items.iter().filter(|item| lit(item)) {
        paint_item(item, &placement, way, palette, true, &mut painted);
    }
    painted
}

fn paint_item(
    item: &Item,
    placement: &Placement,
    way: &ToScreen,
    palette: Palette,
    lit: bool,
    painted: &mut Painted,
) {
    let colour = if lit {
        palette.accent
    } else {
        palette.line(item.pen.role)
    };
    match &item.shape {
        SceneShape::Fill { loops, tone } => {
            let colour = match tone {
                Tone::Solid => colour,
                Tone::Tint => palette.tint(item.pen.role),
            };
            let loops: Vec<Vec<Pos2>> = loops.iter().map(|path| screen_points(path, way)).collect();
            painted.shapes.extend(filled(&loops, colour));
        }
        SceneShape::Text(text) => painted.lettering.push(Lettering {
            text: text.clone(),
            colour,
        }),
        SceneShape::Path(_)
        | SceneShape::Circle { .. }
        | SceneShape::Arc { .. }
        | SceneShape::Hatch(_) => {
            let placed = Item {
                shape: item.shape.placed(placement),
                ..item.clone()
            };
            let width = single(item.pen.width_mm(way.print.group) * way.print.points_per_mm);
            let width = if lit { width * 1.4 + 1.0 } else { width };
            let stroke = Stroke::new(width, colour);
            for path in placed.strokes(way.print.group) {
                let points = flattened(&path, |point| paper_to_screen(way, point));
                painted.shapes.push(if path.closed {
                    Shape::closed_line(points, stroke)
                } else {
                    Shape::line(points, stroke)
                });
            }
        }
    }
}

/// A path of the part as points of the screen.
#[must_use]
pub fn screen_points(path: &Path, way: &ToScreen) -> Vec<Pos2> {
    flattened(path, |point| way.at(point))
}

/// A path as points of the screen, arcs in short pieces.
pub(super) fn flattened(path: &Path, place: impl Fn(Point) -> Pos2) -> Vec<Pos2> {
    let mut points: Vec<Pos2> = Vec::new();
    for piece in path.pieces() {
        let steps = match piece {
            Piece::Line { .. } => 1.0,
            Piece::Arc { sweep_deg, .. } => (sweep_deg.abs() / ARC_STEP_DEG).ceil().max(1.0),
        };
        if points.is_empty() {
            points.push(place(piece.at_share(0.0)));
        }
        let mut step = 1.0;
        while step <= steps {
            points.push(place(piece.at_share(step / steps)));
            step += 1.0;
        }
    }
    if path.closed && points.len() > 1 && points.first() == points.last() {
        points.pop();
    }
    points
}

impl Painted {
    /// Paints it.
    pub fn paint(&self, painter: &Painter, way: &ToScreen) {
        painter.extend(self.shapes.iter().cloned());
        // Lettering is laid out each time: the font's picture may have moved since.
        for lettering in &self.lettering {
            paint_text(painter, &lettering.text, way, lettering.colour);
        }
    }
}

/// Rulings every so many millimetres with their numbers, and the names of the axes.
pub fn paint_grid(
    painter: &Painter,
    rect: egui::Rect,
    way: &ToScreen,
    palette: Palette,
    axes: [&str; 2],
) {
    let step = grid_step(way.points_per_mm);
    let (low, high) = (way.back(rect.left_bottom()), way.back(rect.right_top()));
    let line = Stroke::new(1.0, palette.line(Role::Grid));
    let font = FontId::proportional(9.5);
    // Adding 0 turns the minus zero of a count below it into a plain one.
    let number = |value: f64| {
        if step < 1.0 {
            format!("{:.1}", value + 0.0)
        } else {
            format!("{:.0}", value + 0.0)
        }
    };
    for value in ruled(low.x, high.x, step) {
        let x = way.at(Point { x: value, y: 0.0 }).x;
        painter.vline(x, rect.y_range(), line);
        if x > rect.left() + 30.0 && x < rect.right() - 40.0 {
            let at = pos2(x, rect.bottom() - 2.0);
            painter.text(
                at,
                Align2::CENTER_BOTTOM,
                number(value),
                font.clone(),
                palette.faint_ink,
            );
        }
    }
    for value in ruled(low.y, high.y, step) {
        let y = way.at(Point { x: 0.0, y: value }).y;
        painter.hline(rect.x_range(), y, line);
        if y > rect.top() + 20.0 && y < rect.bottom() - 18.0 {
            painter.text(
                pos2(rect.left() + 3.0, y),
                Align2::LEFT_CENTER,
                number(value),
                font.clone(),
                palette.faint_ink,
            );
        }
    }
    let [across, up] = axes;
    let corner = pos2(rect.right() - 4.0, rect.bottom() - 2.0);
    painter.text(
        corner,
        Align2::RIGHT_BOTTOM,
        format!("{across} mm"),
        font.clone(),
        palette.faint_ink,
    );
    painter.text(
        rect.left_top() + egui::vec2(3.0, 3.0),
        Align2::LEFT_TOP,
        format!("{up} mm"),
        font,
        palette.faint_ink,
    );
}

/// A step of 1, 2 or 5 times a power of ten that leaves at least 45 points from line to line.
fn grid_step(points_per_mm: f64) -> f64 {
    let least = 45.0 / points_per_mm;
    let power = 10_f64.powf(least.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|times| times * power)
        .find(|step| *step >= least)
        .unwrap_or(10.0 * power)
}

fn ruled(from: f64, to: f64, step: f64) -> impl Iterator<Item = f64> {
    let first = (from / step).ceil();
    std::iter::successors(Some(first), |count| Some(count + 1.0))
        .map(move |count| count * step)
        .take_while(move |value| *value <= to)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rulings_keep_their_distance() {
        for points_per_mm in [0.3, 1.0, 4.7, 12.0, 77.0, 390.0] {
            let step = grid_step(points_per_mm);
            assert!(
                (45.0..=113.0).contains(&(step * points_per_mm)),
                "{points_per_mm}: {step}"
            );
        }
        let values: Vec<f64> = ruled(-7.0, 11.0, 5.0).collect();
        assert_eq!(values.len(), 4);
        assert!((values[0] + 5.0).abs() < 1e-12);
    }

    #[test]
    fn a_circle_is_drawn_round_and_closed() {
        let way = super::super::sight::Sight::default().to_screen(
            egui::Rect::EVERYTHING.intersect(egui::Rect::from_min_size(
                pos2(0.0, 0.0),
                egui::vec2(100.0, 100.0),
            )),
            super::super::sight::Scope::default(),
        );
        let points = screen_points(&Path::circle(Point { x: 0.0, y: 0.0 }, 4.0), &way);
        assert!(points.len() >= 100);
        let centre = way.at(Point { x: 0.0, y: 0.0 });
        assert!(
            points
                .iter()
                .all(|point| ((*point - centre).length() - 20.0).abs() < 1e-2)
        );
    }
}
