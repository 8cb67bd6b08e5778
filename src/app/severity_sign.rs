//! The sign of a severity: a shape of its own for each, so that colour is never the only sign.

use egui::{Color32, Painter, Pos2, Rect, Sense, Shape, Stroke, Ui, pos2, vec2};

use super::palette::Palette;
use crate::checks::Severity;

/// Side of the square that a sign fills, points.
pub const SIGN: f32 = 14.0;

/// Puts the sign of a severity where the layout stands.
pub fn sign_ui(ui: &mut Ui, palette: Palette, severity: Severity) {
    let (rect, _) = ui.allocate_exact_size(vec2(SIGN, SIGN), Sense::HOVER);
    paint(ui.painter(), rect, severity, palette.severity(severity));
}

/// A crossed octagon, a triangle, a circled i, a tick.
fn paint(painter: &Painter, rect: Rect, severity: Severity, colour: Color32) {
    let at = |x: f32, y: f32| rect.left_top() + vec2(x, y) * (rect.width() / 14.0);
    let line = Stroke::new(1.6, colour);
    let outline = |points: Vec<Pos2>| painter.add(Shape::closed_line(points, line));
    match severity {
        Severity::Clash => {
            let corners = [
                (4.2, 1.0),
                (9.8, 1.0),
                (13.0, 4.2),
                (13.0, 9.8),
                (9.8, 13.0),
                (4.2, 13.0),
                (1.0, 9.8),
                (1.0, 4.2),
            ];
            outline(corners.map(|(x, y)| at(x, y)).to_vec());
            painter.line_segment([at(4.5, 4.5), at(9.5, 9.5)], line);
            painter.line_segment([at(9.5, 4.5), at(4.5, 9.5)], line);
        }
        Severity::Caution => {
            outline(vec![at(7.0, 1.2), at(13.2, 12.6), at(0.8, 12.6)]);
            painter.line_segment([at(7.0, 5.0), at(7.0, 8.6)], line);
            painter.circle_filled(at(7.0, 10.6), 0.9, colour);
        }
        Severity::Note => {
            painter.circle_stroke(rect.center(), rect.width() * 0.43, line);
            painter.line_segment([at(7.0, 6.4), at(7.0, 10.2)], line);
            painter.circle_filled(pos2(at(7.0, 4.2).x, at(7.0, 4.2).y), 0.9, colour);
        }
        Severity::Ok => {
            painter.add(Shape::line(
                vec![at(2.0, 7.4), at(5.6, 11.2), at(12.2, 2.8)],
                line,
            ));
        }
    }
}
