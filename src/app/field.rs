//! The one field for a number: label, unit, comma, commit on Enter or leaving, Escape gives up.
//!
//! Nothing else in the window shows a bare number widget. The field keeps its own text, never clamps and
//! never rounds what is stored, and says under itself why a text was refused.

use egui::text::{CCursor, CCursorRange};
use egui::{Align, Id, Layout, Response, RichText, Sense, TextEdit, Ui, WidgetInfo, vec2};

use super::command::Command;
use super::view::{Lit, Typed, View, Wish};
use crate::document::{FieldRef, parse_quantity};
use crate::mount::{Unit, show_number};

/// Width of the box for a number, points.
pub const NUMBER_WIDTH: f32 = 56.0;
/// Room for a unit, points.
const UNIT_WIDTH: f32 = 24.0;
/// Room for the grip, points.
const GRIP_WIDTH: f32 = 10.0;
/// Room for the mark at the end of the row, points.
const MARK_WIDTH: f32 = 24.0;

/// A label with less room than this is set in small print, points.
const NARROW: f32 = 110.0;

/// What a number field shows.
#[derive(Clone, Debug)]
pub struct NumberField<'a> {
    /// The label.
    pub label: &'a str,
    /// What sets it apart from other fields of the same label.
    pub salt: Id,
    /// The field of the design it stands for, if it is one: pointing at it lights its edges.
    pub field: Option<FieldRef>,
    /// The number it holds; none shows an empty box.
    pub value: Option<f64>,
    /// Its unit.
    pub unit: Unit,
    /// Rule, source, how to measure.
    pub hover: String,
    /// Room for the label where it shall not take all there is, points.
    pub label_width: Option<f32>,
    /// How far a press of an arrow key or a point of drag moves it, in its unit; 0 for not at all.
    pub step: f64,
}

/// The step of a unit that a hand can use: a hundredth of a millimetre, a twentieth of a degree.
#[must_use]
pub const fn step_of(unit: Unit) -> f64 {
    match unit {
        Unit::Mm | Unit::One | Unit::S => 0.01,
        Unit::M | Unit::Um | Unit::Mm2 | Unit::N | Unit::Turns | Unit::Stops => 0.1,
        Unit::Deg => 0.05,
        Unit::G | Unit::Mpa | Unit::Percent | Unit::K | Unit::Nmm => 1.0,
    }
}

/// The number as the field shows it: as many decimals as it holds, at most those of its unit and one more.
#[must_use]
pub fn shown(value: f64, unit: Unit) -> String {
    if unit == Unit::One && value.fract() == 0.0 {
        return format!("{value:.0}");
    }
    let more = usize::from(unit.decimals() >= 3);
    show_number(value, unit.decimals() + more)
}

/// The id of the text box of a field, for jumping to it.
#[must_use]
pub fn box_id(salt: Id) -> Id {
    salt.with("box")
}

/// A whole row: label, box, unit, grip, and whatever `mark_ui` puts at the end.
pub fn number_ui<W: Wish>(
    ui: &mut Ui,
    view: &mut View<'_>,
    number: &NumberField<'_>,
    edit: impl Fn(f64) -> W,
    mark_ui: impl FnOnce(&mut Ui, &mut View<'_>),
) {
    let id = box_id(number.salt);
    let lit = number
        .field
        .is_some_and(|field| view.selection.is_lit(field));
    let row = ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        let width = number.label_width.unwrap_or_else(|| label_width(ui));
        let label = label_ui(ui, view, number.label, width, lit);
        let response = text_box_ui(ui, view, number, id, label.id, &edit);
        let sign = number.unit.sign();
        // Where labels have a width of their own the rows stand in columns, long units and short ones.
        let wide = sign.len() > 3 || number.label_width.is_some();
        let unit_width = if wide { 1.5 * UNIT_WIDTH } else { UNIT_WIDTH };
        fixed_ui(ui, unit_width, |ui| {
            ui.label(RichText::new(sign).small().weak())
        });
        grip_ui(ui, view, number, &edit);
        mark_ui(ui, view);
        if let Some(field) = number.field {
            if view.selection.jump == Some(field) {
                response.request_focus();
                response.scroll_to_me(Some(Align::Center));
                view.selection.jump = None;
            }
            if view.selection.reveal == Some(field) {
                response.scroll_to_me(Some(Align::Center));
                view.selection.reveal = None;
            }
            if response.has_focus() {
                view.selection.point_at(Lit::Field(field));
            }
        }
    });
    let row = row.response.interact(Sense::HOVER);
    if let Some(field) = number.field.filter(|_| row.contains_pointer()) {
        view.selection.point_at(Lit::Field(field));
    }
    refusal_ui(ui, view, id);
}

/// Width left for the label of a row.
fn label_width(ui: &Ui) -> f32 {
    let others = NUMBER_WIDTH + UNIT_WIDTH + GRIP_WIDTH + MARK_WIDTH + 5.0 * 4.0;
    (ui.available_width() - others).max(60.0)
}

/// The label of a row; it wraps where it is long.
fn label_ui(ui: &mut Ui, view: &View<'_>, text: &str, width: f32, lit: bool) -> Response {
    let mut words = RichText::new(text);
    if width < NARROW {
        words = words.small();
    }
    if lit {
        words = words.color(view.palette.accent);
    }
    ui.allocate_ui_with_layout(
        vec2(width, 20.0),
        Layout::left_to_right(Align::Center),
        |ui| {
            ui.set_min_width(width);
            ui.add(egui::Label::new(words).wrap().selectable(false))
        },
    )
    .inner
}

fn fixed_ui<R>(ui: &mut Ui, width: f32, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.allocate_ui_with_layout(
        vec2(width, 20.0),
        Layout::left_to_right(Align::Center),
        |ui| {
            ui.set_min_width(width);
            add(ui)
        },
    )
    .inner
}

fn text_box_ui<W: Wish>(
    ui: &mut Ui,
    view: &mut View<'_>,
    number: &NumberField<'_>,
    id: Id,
    label: Id,
    edit: &impl Fn(f64) -> W,
) -> Response {
    let holds = number
        .value
        .map(|value| shown(value, number.unit))
        .unwrap_or_default();
    let before = ui
        .memory(|memory| memory.has_focus(id))
        .then(|| arrow_steps(ui))
        .flatten();
    let (response, typed) = typed_ui(ui, view, id, &holds, NUMBER_WIDTH, "?");
    let response = response.labelled_by(label).on_hover_text(&number.hover);
    if let Typed::Finished(text) = typed {
        match parse_quantity(&text, number.unit) {
            Ok(value) => view.wish_from(id, edit(value)),
            Err(error) => view.typing.refuse(id, error.to_string()),
        }
    } else if let (Some(steps), Some(value)) = (before.filter(|_| number.step > 0.0), number.value)
    {
        view.wish_from(id, edit(on_grid(value + steps * number.step, number.step)));
        view.typing.finish(id, true);
    }
    response
}

/// How many steps the arrow keys ask for; with Shift ten at a time.
fn arrow_steps(ui: &Ui) -> Option<f64> {
    ui.input_mut(|input| {
        let mut steps = 0.0;
        for (key, sign) in [(egui::Key::ArrowUp, 1.0), (egui::Key::ArrowDown, -1.0)] {
            if input.consume_key(egui::Modifiers::SHIFT, key) {
                steps += sign * 10.0;
            } else if input.consume_key(egui::Modifiers::NONE, key) {
                steps += sign;
            }
        }
        (steps != 0.0).then_some(steps)
    })
}

/// A stepped or dragged value lands on whole steps, so that a hand leaves no crumbs.
fn on_grid(value: f64, step: f64) -> f64 {
    let per_unit = (1.0 / step).round();
    if per_unit >= 1.0 {
        (value * per_unit).round() / per_unit
    } else {
        (value / step).round() * step
    }
}

/// A text box with its own text.
pub fn typed_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    id: Id,
    holds: &str,
    width: f32,
    hint: &'static str,
) -> (Response, Typed) {
    let mut text = view.typing.text_for(id, holds);
    let response = ui.add(
        TextEdit::singleline(&mut text)
            .id(id)
            .desired_width(width)
            .hint_text(hint),
    );
    if response.has_focus() {
        if response.gained_focus() {
            select_all(ui, id, text.chars().count());
        }
        view.typing.keep(id, text, holds);
        return (response, Typed::Nothing);
    }
    let given_up = ui.input(|input| input.key_pressed(egui::Key::Escape));
    if response.lost_focus() && !given_up && response.changed() {
        view.typing.keep(id, text, holds);
    }
    let typed = view.typing.finish(id, given_up);
    (response, typed)
}

/// Whoever comes to a field wants to type it anew.
fn select_all(ui: &Ui, id: Id, length: usize) {
    let Some(mut state) = TextEdit::load_state(ui.ctx(), id) else {
        return;
    };
    let (start, end) = (CCursor::new(0), CCursor::new(length));
    state
        .cursor
        .set_char_range(Some(CCursorRange::two(start, end)));
    TextEdit::store_state(ui.ctx(), id, state);
}

/// The reason under a field whose last text was refused.
pub fn refusal_ui(ui: &mut Ui, view: &View<'_>, id: Id) {
    if let Some(why) = view.typing.refusal(id) {
        ui.label(
            RichText::new(format!("refused: {why}"))
                .color(view.palette.clash)
                .small(),
        );
    }
}

/// A small grip: dragged left and right it moves the number, live, as one step of undo.
fn grip_ui<W: Wish>(
    ui: &mut Ui,
    view: &mut View<'_>,
    number: &NumberField<'_>,
    edit: &impl Fn(f64) -> W,
) {
    let (rect, _) = ui.allocate_exact_size(vec2(GRIP_WIDTH, 16.0), Sense::HOVER);
    let Some(value) = number.value.filter(|_| number.step > 0.0) else {
        return;
    };
    // Not in the way of the keyboard: the arrow keys in the box do the same.
    let response = ui.interact(rect, number.salt.with("grip"), Sense::DRAG);
    response.widget_info(|| {
        WidgetInfo::labeled(egui::Role::Splitter, true, format!("Drag {}", number.label))
    });
    let colour = if response.hovered() || response.dragged() {
        view.palette.accent
    } else {
        view.palette.faint_ink
    };
    for offset in [-2.5, 0.0, 2.5] {
        let x = rect.center().x + offset;
        ui.painter().vline(
            x,
            rect.shrink(3.5).y_range(),
            egui::Stroke::new(1.0, colour),
        );
    }
    let response = response.on_hover_cursor(egui::CursorIcon::ResizeHorizontal);
    let start = number.salt.with("grip start");
    if response.drag_started() {
        ui.data_mut(|data| data.insert_temp(start, value));
    }
    if response.dragged() {
        let from = ui.data(|data| data.get_temp(start)).unwrap_or(value);
        let target = edit(drag_target(ui, &response, from, number.step, number.step));
        // A drag that runs into a fault stops there; the box says why only to what is typed.
        if target.refusal(view).is_none() {
            view.wish(target.dragged());
        }
    }
    if response.drag_stopped() {
        view.wish(Command::DragEnded);
    }
    if !response.dragged() {
        response.on_hover_text("drag to change; with Shift ten times finer");
    }
}

/// Where a drag along something has brought a value: `per_point` for each point of the screen, landing on whole steps;
/// with Shift ten times finer.
#[must_use]
pub fn drag_target(ui: &Ui, response: &Response, from: f64, per_point: f64, step: f64) -> f64 {
    let moved = response
        .total_drag_delta()
        .map_or(0.0, |delta| f64::from(delta.x));
    let fine = if ui.input(|input| input.modifiers.shift) {
        0.1
    } else {
        1.0
    };
    on_grid(from + moved * per_point * fine, step * fine)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_leave_no_crumbs() {
        assert_eq!(on_grid(1.449_999_999_7, 0.01).to_string(), "1.45");
        assert_eq!(on_grid(0.1 + 0.2, 0.01).to_string(), "0.3");
        assert_eq!(on_grid(17.33, 0.05).to_string(), "17.35");
    }

    #[test]
    fn a_shown_number_keeps_what_a_lathe_can_hold() {
        assert_eq!(shown(17.526, Unit::Mm), "17.526");
        assert_eq!(shown(1.4625, Unit::Mm), "1.4625");
        assert_eq!(shown(2.0, Unit::Mm), "2.00");
        assert_eq!(shown(300.0, Unit::One), "300");
        assert_eq!(shown(1.8, Unit::One), "1.80");
    }
}
