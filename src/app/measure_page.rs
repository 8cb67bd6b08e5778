//! The page Measure: what to measure on lens and body, a sketch of where, and the readings.

use egui::{Button, Frame, Label, Margin, Rect, RichText, ScrollArea, Sense, Ui, WidgetInfo, vec2};

use super::command::Command;
use super::readings_editor::ReadingsEditor;
use super::scene_paint::painted;
use super::sight::{Scope, Sight};
use super::view::View;
use crate::document::FieldRef;
use crate::drawing::sketch_of;
use crate::mount::{BodyField, LensField, Standing};

/// The page.
pub struct MeasurePage {
    asked: FieldRef,
    readings: ReadingsEditor,
}

impl Default for MeasurePage {
    fn default() -> Self {
        Self {
            asked: FieldRef::Lens(LensField::Register),
            readings: ReadingsEditor::default(),
        }
    }
}

const LIST_WIDTH: f32 = 250.0;
const EDITOR_WIDTH: f32 = 310.0;

/// Everything of the lens that is measured.
fn of_the_lens() -> Vec<FieldRef> {
    let numbers = LensField::ALL.iter().map(|key| FieldRef::Lens(*key));
    let others = [
        FieldRef::LensThread,
        FieldRef::BarrelAtInfinity,
        FieldRef::BarrelAtCloseFocus,
    ];
    numbers.chain(others).collect()
}

/// Everything of the body that is measured.
fn of_the_body() -> Vec<FieldRef> {
    let numbers = BodyField::ALL.iter().map(|key| FieldRef::Body(*key));
    let others = [
        FieldRef::Ears,
        FieldRef::TwistHand,
        FieldRef::FreeDepth,
        FieldRef::Obstacles,
    ];
    numbers.chain(others).collect()
}

/// How far a value can be trusted, and the value.
fn held(view: &View<'_>, field: FieldRef) -> (Standing, Option<f64>) {
    let (lens, body) = (&view.design.lens, &view.design.body);
    match field {
        FieldRef::Lens(key) => (lens.field(key).standing(), lens.field(key).number()),
        FieldRef::Body(key) => (body.field(key).standing(), body.field(key).number()),
        FieldRef::LensThread => (lens.thread.standing(), None),
        FieldRef::BarrelAtInfinity => (lens.barrel_at_infinity.standing(), None),
        FieldRef::BarrelAtCloseFocus => (lens.barrel_at_close_focus.standing(), None),
        FieldRef::Ears => (body.ears.standing(), None),
        FieldRef::TwistHand => (body.twist_hand.standing(), None),
        FieldRef::FreeDepth => (body.free_depth.standing(), None),
        FieldRef::Obstacles => (body.obstacles.standing(), None),
        FieldRef::Ring(_)
        | FieldRef::Limit(_)
        | FieldRef::ApertureRing
        | FieldRef::StopDownPin
        | FieldRef::Springs
        | FieldRef::Stop
        | FieldRef::LockPin
        | FieldRef::Lugs
        | FieldRef::SeatKind
        | FieldRef::PinHandling
        | FieldRef::Trim
        | FieldRef::Finish
        | FieldRef::ThreadHold
        | FieldRef::Cutter
        | FieldRef::Material
        | FieldRef::Clocking
        | FieldRef::Pieces => (Standing::Unknown, None),
    }
}

impl MeasurePage {
    /// The page over all the room there is.
    pub fn measure_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        let wanted = view.selection.measure.take();
        let jumped = wanted.is_some();
        self.asked = wanted.unwrap_or(self.asked);
        let room = ui.available_rect_before_wrap().shrink2(vec2(10.0, 6.0));
        let (list, rest) = room.split_left_right_at_x(room.left() + LIST_WIDTH);
        let (middle, editor) = rest.split_left_right_at_x(rest.right() - EDITOR_WIDTH);
        part_ui(ui, list, "values to measure", |ui| {
            self.list_ui(ui, view, jumped);
        });
        part_ui(ui, editor, "readings", |ui| {
            self.readings.readings_ui(ui, view, self.asked);
            keep_ui(ui, view);
        });
        sketch_ui(ui, view, middle.shrink2(vec2(10.0, 0.0)), self.asked);
        ui.advance_cursor_after_rect(room);
    }

    fn list_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, jumped: bool) {
        for (title, fields) in [("Lens", of_the_lens()), ("Body", of_the_body())] {
            let open = fields
                .iter()
                .filter(|field| held(view, **field).0.wants_measuring())
                .count();
            ui.label(RichText::new(title).heading());
            ui.label(
                RichText::new(format!(
                    "{open} of {} unknown, assumed or disputed",
                    fields.len()
                ))
                .small()
                .weak(),
            );
            for field in fields {
                let row = self.row_ui(ui, view, field);
                if jumped && field == self.asked {
                    row.scroll_to_me(Some(egui::Align::Center));
                    row.request_focus();
                }
            }
            ui.add_space(8.0);
        }
    }

    fn row_ui(&mut self, ui: &mut Ui, view: &View<'_>, field: FieldRef) -> egui::Response {
        let (standing, value) = held(view, field);
        let number = value.map_or_else(String::new, |value| field.unit().show(value));
        let words = format!("{}  {}", standing.mark(), field.label());
        let button = Button::selectable(self.asked == field, RichText::new(words).small())
            .right_text(RichText::new(number).small())
            .truncate()
            .min_size(vec2(ui.available_width(), 18.0));
        let response =
            ui.add(button)
                .accessible_name(format!("{}, {}", field.long_label(), standing.word()));
        if response.clicked() {
            self.asked = field;
        }
        response.on_hover_text(format!("{}: {}", field.long_label(), standing.word()))
    }
}

fn part_ui(ui: &mut Ui, room: Rect, name: &str, add: impl FnOnce(&mut Ui)) {
    let builder = egui::UiBuilder::new().id_salt(name).max_rect(room);
    ui.scope_builder(builder, |ui| {
        ScrollArea::vertical()
            .id_salt(name)
            .auto_shrink([false, false])
            .show(ui, |ui| {
                let margin = Margin {
                    right: 12,
                    ..Margin::ZERO
                };
                Frame::new().inner_margin(margin).show(ui, add);
            });
    });
}

/// How to measure in words, and where in a sketch.
fn sketch_ui(ui: &mut Ui, view: &View<'_>, room: Rect, field: FieldRef) {
    let builder = egui::UiBuilder::new().id_salt("sketch").max_rect(room);
    ui.scope_builder(builder, |ui| {
        ui.label(RichText::new(field.label()).heading());
        ui.add(Label::new(field.how()).wrap());
        let rect = ui.available_rect_before_wrap();
        let response = ui.allocate_rect(rect, Sense::HOVER);
        let name = format!("Sketch: {}", field.long_label());
        response.widget_info(|| WidgetInfo::labeled(egui::Role::Image, true, &name));
        let painter = ui.painter_at(rect);
        painter.rect_filled(rect, 3.0, view.palette.paper);
        let Some(scene) = sketch_of(field) else {
            return;
        };
        let scope = Scope {
            ring: None,
            everything: scene.frame(),
        };
        let way = Sight::Everything.to_screen(rect, scope);
        painted(&scene, &way, view.palette, &|_| false).paint(&painter, &way);
        painter.text(
            rect.left_bottom() + vec2(6.0, -4.0),
            egui::Align2::LEFT_BOTTOM,
            "sketch, not to scale; what is asked for is coloured",
            egui::FontId::proportional(super::palette::SMALL),
            view.palette.faint_ink,
        );
    });
}

/// The two mounts as they are now, for the user's own list.
fn keep_ui(ui: &mut Ui, view: &mut View<'_>) {
    ui.separator();
    ui.label(RichText::new("My mounts").heading());
    ui.label(
        RichText::new("A measured mount is kept with its readings and comes back in the list of a new design.")
            .small()
            .weak(),
    );
    for command in [Command::KeepLens, Command::KeepBody, Command::ImportMounts] {
        let button = ui.button(command.label());
        if button.on_hover_text(command.explains()).clicked() {
            view.wish(command);
        }
    }
}
