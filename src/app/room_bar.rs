//! A thin bar under a dimension: where no finding is a clash, where none is even a caution, and the present value.
//!
//! Height tells them apart as well as colour: a clash is a line, a caution an open bar, what is free a filled one.

use egui::{
    Color32, CursorIcon, Painter, Rect, Response, RichText, Sense, Shape, Stroke, StrokeKind, Ui,
    WidgetInfo, pos2, vec2,
};

use super::command::Command;
use super::edit::{Edit, edited};
use super::field::{drag_target, step_of};
use super::palette::Palette;
use super::room_scale::Scale;
use super::rows::salt_of;
use super::view::View;
use crate::document::{FieldRef, RingKey};
use crate::mount::Unit;
use crate::settle::{Beyond, End, Level, Room, Span};

/// Height of a bar, points.
const HEIGHT: f32 = 10.0;
/// Colours of a bar whose design has changed since stand back so far.
const DIMMED: f32 = 0.4;

/// The bar of a dimension; dragged along it the value follows, as one step of undo.
pub fn room_bar_ui(ui: &mut Ui, view: &mut View<'_>, key: RingKey, value: Option<f64>) {
    let Some(value) = value.filter(|_| view.room.is_on()) else {
        return;
    };
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), HEIGHT), Sense::HOVER);
    // A column is long: nothing is worked for bars out of sight.
    if !ui.is_rect_visible(rect) {
        return;
    }
    let Some((room, is_current)) = view.room.of(key) else {
        let line = Stroke::new(1.0, view.palette.border);
        ui.painter().hline(rect.x_range(), rect.center().y, line);
        return;
    };
    let salt = salt_of(FieldRef::Ring(key)).with("room");
    let response = ui.interact(rect, salt, Sense::DRAG);
    // While it is dragged the scale keeps still under the hand.
    let held = response
        .dragged()
        .then(|| ui.data(|data| data.get_temp::<Held>(salt)))
        .flatten();
    let scale = held.map_or_else(|| Scale::of(room, value), |held| held.scale);
    let fade = if is_current { 1.0 } else { DIMMED };
    let lane = Lane { rect, scale };
    paint(ui.painter(), &lane, room, view.palette, fade);
    mark(ui.painter(), &lane, value, &response, view.palette);
    let words = told(room, is_current);
    response.widget_info(|| {
        let name = format!("Room of {}: {}", key.label(), short(room, is_current));
        WidgetInfo::labeled(egui::Role::Splitter, true, name)
    });
    drag_ui(ui, view, key, Held { scale, value }, &lane, &response);
    if response.hovered() && !response.dragged() {
        response
            .on_hover_cursor(CursorIcon::ResizeHorizontal)
            .on_hover_text(words);
    }
}

/// What a drag began with.
#[derive(Clone, Copy, Debug)]
struct Held {
    scale: Scale,
    value: f64,
}

/// A bar on the screen.
struct Lane {
    rect: Rect,
    scale: Scale,
}

impl Lane {
    #[expect(clippy::cast_possible_truncation, reason = "a place on the screen")]
    fn x(&self, value: f64) -> f32 {
        let share = self.scale.share(value).clamp(0.0, 1.0) as f32;
        self.rect.left() + share * self.rect.width()
    }

    /// The part of a span that is in sight.
    fn stretch(&self, span: &Span) -> Option<Rect> {
        let in_sight = span.to >= self.scale.from && span.from <= self.scale.to;
        in_sight.then(|| {
            let (left, right) = (self.x(span.from), self.x(span.to));
            // What is only a point is shown as one.
            let right = right.max(left + 1.0);
            Rect::from_x_y_ranges(left..=right, self.rect.y_range())
        })
    }
}

fn drag_ui(
    ui: &Ui,
    view: &mut View<'_>,
    key: RingKey,
    now: Held,
    lane: &Lane,
    response: &Response,
) {
    let salt = salt_of(FieldRef::Ring(key)).with("room");
    if response.drag_started() {
        ui.data_mut(|data| data.insert_temp(salt, now));
    }
    if response.dragged() {
        let held = ui.data(|data| data.get_temp::<Held>(salt)).unwrap_or(now);
        let per_point = held.scale.length() / f64::from(lane.rect.width().max(1.0));
        let to = drag_target(ui, response, held.value, per_point, step_of(key.unit()));
        let target = Edit::Dimension(key, to);
        if edited(view.design, &target).is_ok() {
            view.wish(Command::Drag(target));
        }
    }
    if response.drag_stopped() {
        view.wish(Command::DragEnded);
    }
}

fn paint(painter: &Painter, lane: &Lane, room: &Room, palette: Palette, fade: f32) {
    let colour = |colour: Color32| colour.gamma_multiply(fade);
    let middle = lane.rect.center().y;
    let clash = Stroke::new(1.5, colour(palette.clash));
    painter.hline(lane.rect.x_range(), middle, clash);
    for rect in room
        .without_clash
        .iter()
        .filter_map(|span| lane.stretch(span))
    {
        let rect = rect.shrink2(vec2(0.0, 2.0));
        painter.rect_filled(rect, 1.0, palette.ground);
        let edge = Stroke::new(1.0, colour(palette.caution));
        painter.rect_stroke(rect, 1.0, edge, StrokeKind::Inside);
    }
    for rect in room
        .without_caution
        .iter()
        .filter_map(|span| lane.stretch(span))
    {
        painter.rect_filled(rect.shrink2(vec2(0.0, 2.0)), 1.0, colour(palette.fine));
    }
}

/// The present value: a line through the bar with a foot.
fn mark(painter: &Painter, lane: &Lane, value: f64, response: &Response, palette: Palette) {
    let colour = if response.hovered() || response.dragged() {
        palette.accent
    } else {
        palette.ink
    };
    let x = lane.x(value);
    painter.vline(x, lane.rect.y_range(), Stroke::new(2.0, colour));
    let foot = lane.rect.bottom() + 0.5;
    painter.add(Shape::convex_polygon(
        vec![
            pos2(x, foot - 4.0),
            pos2(x + 3.5, foot),
            pos2(x - 3.5, foot),
        ],
        colour,
        Stroke::NONE,
    ));
}

/// What the bars mean, once for a column of them.
pub fn legend_ui(ui: &mut Ui, palette: Palette) {
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("room to move:").small().weak());
        for (word, level) in [
            ("free", Level::Free),
            ("caution", Level::Caution),
            ("clash", Level::Clash),
        ] {
            let (rect, _) = ui.allocate_exact_size(vec2(16.0, HEIGHT), Sense::HOVER);
            let inner = rect.shrink2(vec2(0.0, 2.0));
            match level {
                Level::Free => {
                    ui.painter().rect_filled(inner, 1.0, palette.fine);
                }
                Level::Caution => {
                    let edge = Stroke::new(1.0, palette.caution);
                    ui.painter()
                        .rect_stroke(inner, 1.0, edge, StrokeKind::Inside);
                }
                Level::Clash => {
                    let line = Stroke::new(1.5, palette.clash);
                    ui.painter().hline(rect.x_range(), rect.center().y, line);
                }
            }
            ui.label(RichText::new(word).small().weak());
        }
    });
}

/// The bar in one line.
fn short(room: &Room, is_current: bool) -> String {
    let unit = room.key.unit();
    let spans: Vec<String> = room
        .without_clash
        .iter()
        .map(|span| format!("{} to {}", unit.show(span.from), unit.show(span.to)))
        .collect();
    let said = if spans.is_empty() {
        "no value without a clash".to_owned()
    } else {
        format!("no clash from {}", spans.join(", and from "))
    };
    if is_current {
        said
    } else {
        format!("{said} (before the last change)")
    }
}

/// The bar in words: every span with what ends it.
fn told(room: &Room, is_current: bool) -> String {
    let mut lines = Vec::new();
    if !is_current {
        lines.push("before the last change; being worked anew".to_owned());
    }
    let unit = room.key.unit();
    for (title, spans) in [
        ("no clash", &room.without_clash),
        ("no clash and no caution", &room.without_caution),
    ] {
        if spans.is_empty() {
            lines.push(format!("{title}: nowhere"));
        }
        for span in spans {
            lines.push(format!(
                "{title}: {} to {}",
                unit.show(span.from),
                unit.show(span.to)
            ));
            lines.push(format!("   below: {}", end_words(&span.below)));
            lines.push(format!("   above: {}", end_words(&span.above)));
        }
    }
    lines.push("drag along the bar to change; with Shift ten times finer".to_owned());
    lines.join("\n")
}

/// What ends a span, with its limit.
#[must_use]
pub fn end_words(end: &End) -> String {
    match end {
        End::Range => "as far as the dimension may go".to_owned(),
        End::Findings(beyond) => beyond
            .iter()
            .map(beyond_words)
            .collect::<Vec<_>>()
            .join("; "),
        End::Shape(reason) | End::Refused(reason) => reason.clone(),
        End::Lacking => "values are missing".to_owned(),
    }
}

fn beyond_words(beyond: &Beyond) -> String {
    let what = format!("{} {}", beyond.key.title(), beyond.level.word());
    match beyond.limit {
        Some(limit) if beyond.unit == Unit::One => format!("{what}, limit {limit}"),
        Some(limit) => format!("{what}, limit {}", beyond.unit.show(limit)),
        None => what,
    }
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::AtomicBool;

    use super::*;
    use crate::document::demo_designs;
    use crate::settle::rooms;
    use crate::workshop::Workshop;

    /// The default limits of a lip: 0.8 for a clash, 1.0 for a caution.
    #[test]
    fn the_words_name_spans_findings_and_limits() {
        let design = demo_designs().unwrap().swap_remove(0);
        let workshop = Workshop::default_set().unwrap();
        let never = AtomicBool::new(false);
        let keys = [RingKey::LipThickness];
        let room = rooms(&design, &workshop, &keys, &[], &never, |_| {})
            .unwrap()
            .swap_remove(0);
        let words = told(&room, true);
        assert!(words.contains("no clash: 0.80 mm to"), "{words}");
        assert!(
            words.contains("below: Lip thickness clash, limit 0.80 mm"),
            "{words}"
        );
        assert!(
            words.contains("below: Lip thickness caution, limit 1.00 mm"),
            "{words}"
        );
        assert!(short(&room, false).ends_with("(before the last change)"));
    }
}
