//! Lettering of a drawing on the screen: letters by the window's own text, signs and large letters as areas.

use egui::{
    Color32, FontId, Painter, Pos2, Rect, Shape, Stroke, Vec2, epaint::TextShape, pos2, vec2,
};
use kurbo::{PathEl, flatten};

use super::areas::filled;
use super::palette::lettering_family;
use super::scene_paint::flattened;
use super::sight::ToScreen;
use crate::drawing::lettering::{outline, runs, width_mm};
use crate::drawing::signs::{STROKE, sign};
use crate::drawing::{Anchor, Text};
use crate::geometry::Point;

/// Height of the capitals of the lettering font over its size (0.715 em, measured in the font file).
const CAPITALS: f64 = 0.715;
/// Thinnest stroke of a sign, points.
const LEAST_STROKE: f32 = 0.8;
/// Letters of a larger size than this are painted as areas, points: the window keeps a picture of every letter of every
/// size that it has shown.
const LARGEST_SIZE: f64 = 60.0;
/// A word so many times wider than in print is set smaller.
const TOO_WIDE: f64 = 1.01;
/// How far the straight pieces of a painted letter may lie off its curves, points.
const OFF: f64 = 0.1;

#[expect(
    clippy::cast_possible_truncation,
    reason = "the screen is painted in single precision"
)]
fn single(value: f64) -> f32 {
    value as f32
}

/// Paints a line of lettering; every word begins where it begins in print.
pub fn paint_text(painter: &Painter, text: &Text, way: &ToScreen, colour: Color32) {
    let scale = way.print.points_per_mm;
    let width = width_mm(&text.text, text.height_mm) * scale;
    let back = match text.anchor {
        Anchor::Left => 0.0,
        Anchor::Centre => width / 2.0,
        Anchor::Right => width,
    };
    let pen = Pen {
        painter,
        start: way.at(text.at),
        turn: egui::emath::Rot2::from_angle(single(-text.rotation_deg.to_radians())),
        height: text.height_mm * scale,
        colour,
    };
    let reach = single(width + 4.0 * pen.height);
    let around = Rect::from_center_size(pen.start, Vec2::splat(2.0 * reach));
    if !painter.clip_rect().intersects(around) {
        return;
    }
    for run in runs(&text.text, text.height_mm) {
        let along = run.start_mm * scale - back;
        if run.is_sign {
            pen.signs(&run.text, along);
        } else if pen.height / CAPITALS > LARGEST_SIZE {
            pen.areas(&run.text, along);
        } else {
            pen.words(&run.text, along);
        }
    }
}

/// Where and how a line of lettering is painted; lengths in points of the screen.
struct Pen<'a> {
    painter: &'a Painter,
    start: Pos2,
    turn: egui::emath::Rot2,
    height: f64,
    colour: Color32,
}

impl Pen<'_> {
    /// A point so far along the line and so far under it.
    fn at(&self, along: f64, down: f64) -> Pos2 {
        self.start + self.turn * vec2(single(along), single(down))
    }

    fn words(&self, text: &str, along: f64) {
        let mut before = 0;
        for word in text.split_inclusive(' ') {
            let gone = text.get(..before).unwrap_or_default();
            self.word(word, along + width_mm(gone, self.height));
            before += word.len();
        }
    }

    fn word(&self, word: &str, along: f64) {
        let size = self.height / CAPITALS;
        let laid = |size: f64| {
            let font = FontId::new(single(size), lettering_family());
            self.painter
                .layout_no_wrap(word.to_owned(), font, self.colour)
        };
        let mut galley = laid(size);
        // On the screen letters stand on whole dots: a word that became too wide for its place is set smaller.
        let room = width_mm(word, self.height);
        let taken = f64::from(galley.rect.width());
        if taken > room * TOO_WIDE {
            galley = laid(size * room / taken);
        }
        let fallback = galley.rect.height() * 0.8;
        let baseline = galley.rows.first().map_or(fallback, |row| {
            row.glyphs
                .first()
                .map_or(row.rect().height() * 0.8, |glyph| row.pos.y + glyph.pos.y)
        });
        let corner = self.at(along, f64::from(-baseline));
        let shape = TextShape::new(corner, galley, self.colour).with_angle(self.turn.angle());
        self.painter.add(shape);
    }

    /// Drawn signs by their strokes.
    fn signs(&self, text: &str, along: f64) {
        let stroke = Stroke::new(single(STROKE * self.height).max(LEAST_STROKE), self.colour);
        let mut start = along;
        for sign in text.chars().filter_map(sign) {
            let place =
                |point: Point| self.at(start + point.x * self.height, -point.y * self.height);
            for path in &sign.strokes {
                let points = flattened(path, place);
                self.painter.add(if path.closed {
                    Shape::closed_line(points, stroke)
                } else {
                    Shape::line(points, stroke)
                });
            }
            let loops: Vec<Vec<Pos2>> = sign
                .fills
                .iter()
                .map(|path| flattened(path, place))
                .collect();
            self.painter.extend(filled(&loops, self.colour));
            start += sign.advance * self.height;
        }
    }

    fn areas(&self, text: &str, along: f64) {
        let mut loops: Vec<Vec<Pos2>> = Vec::new();
        let place = |point: kurbo::Point| self.at(along + point.x, -point.y);
        flatten(outline(text, self.height), OFF, |element| match element {
            PathEl::MoveTo(point) => loops.push(vec![place(point)]),
            PathEl::LineTo(point) => {
                if let Some(last) = loops.last_mut() {
                    last.push(place(point));
                }
            }
            // What is flattened has lines alone.
            PathEl::QuadTo(..) | PathEl::CurveTo(..) | PathEl::ClosePath => {}
        });
        for points in &mut loops {
            let first = points.first().copied().unwrap_or(pos2(0.0, 0.0));
            if points.len() > 1
                && points
                    .last()
                    .is_some_and(|last| last.distance(first) < 1e-4)
            {
                points.pop();
            }
        }
        self.painter.extend(filled(&loops, self.colour));
    }
}
