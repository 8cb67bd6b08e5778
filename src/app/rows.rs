//! One row for each kind of value: lens, body, ring; what opens below it.

use egui::{Align, Button, Id, RichText, Ui};

use super::command::Command;
use super::edit::{Edit, Fitted};
use super::explain_panel::{field_lines, wrong_line};
use super::field::{NumberField, number_ui, step_of};
use super::origin::retyped;
use super::origin_editor::number_origin_ui;
use super::room_bar::room_bar_ui;
use super::text_field::choice_ui;
use super::tolerance_editor::dimension_ui;
use super::view::View;
use crate::document::{FieldRef, RingKey};
use crate::mount::{BodyField, Interface, LensField, Presence, Unit};
use crate::ring::DimensionState;

/// The salt of everything that belongs to a field.
#[must_use]
pub fn salt_of(field: FieldRef) -> Id {
    Id::unique(("field", field))
}

/// A small button with one letter that opens what lies below a row.
pub fn mark_ui(ui: &mut Ui, view: &mut View<'_>, field: FieldRef, mark: &str, name: String) {
    let open = view.selection.open_field == Some(field);
    let button = Button::new(RichText::new(mark).small())
        .selected(open)
        .min_size(egui::vec2(20.0, 18.0));
    let response = ui.add(button).accessible_name(&name).on_hover_text(name);
    if response.clicked() {
        view.selection.toggle(field);
    }
}

/// A number of the lens.
pub fn lens_row_ui(ui: &mut Ui, view: &mut View<'_>, key: LensField) {
    let held = view.design.lens.field(key);
    let edit = move |value| Edit::Lens(key, value);
    interface_row_ui(ui, view, FieldRef::Lens(key), held, &edit);
}

/// A number of the body.
pub fn body_row_ui(ui: &mut Ui, view: &mut View<'_>, key: BodyField) {
    let held = view.design.body.field(key);
    let edit = move |value| Edit::Body(key, value);
    interface_row_ui(ui, view, FieldRef::Body(key), held, &edit);
}

fn interface_row_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    field: FieldRef,
    held: &Interface<f64>,
    edit: &dyn Fn(Interface<f64>) -> Edit,
) {
    let salt = salt_of(field);
    let standing = held.standing();
    let number = NumberField {
        label: field.label(),
        salt,
        field: Some(field),
        value: held.number(),
        unit: field.unit(),
        label_width: None,
        hover: format!("{}\n{}", held.origin_text(), field_lines(field).join("\n")),
        step: step_of(field.unit()),
    };
    let name = format!("Origin of {}: {}", field.label(), standing.word());
    number_ui(
        ui,
        view,
        &number,
        |value| edit(retyped(held, value)),
        |ui, view| {
            mark_ui(ui, view, field, standing.mark(), name);
        },
    );
    if view.selection.open_field == Some(field) {
        below_ui(ui, |ui| {
            ui.label(
                RichText::new(format!("{}. {}", standing.word(), field.how()))
                    .small()
                    .weak(),
            );
            let measure = ui
                .small_button("Measure…")
                .accessible_name(format!("Measure {}", field.long_label()));
            if measure
                .on_hover_text("a sketch of where, readings, instrument, uncertainty")
                .clicked()
            {
                view.measure(field);
            }
            number_origin_ui(ui, view, salt.with("origin"), held, field.unit(), edit);
        });
    }
}

/// What opens below a row stands back a little.
pub fn below_ui(ui: &mut Ui, add: impl FnOnce(&mut Ui)) {
    egui::Frame::new()
        .fill(ui.visuals().faint_bg_color)
        .inner_margin(6.0)
        .corner_radius(3.0)
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            add(ui);
        });
}

/// A dimension of the ring.
pub fn ring_row_ui(ui: &mut Ui, view: &mut View<'_>, key: RingKey) {
    let field = FieldRef::Ring(key);
    let evaluation = view.evaluation;
    let Some(state) = evaluation.derivation.dimension(key) else {
        return;
    };
    let number = NumberField {
        label: key.label(),
        salt: salt_of(field),
        field: Some(field),
        value: state.value,
        unit: key.unit(),
        label_width: None,
        hover: ring_hover(state),
        step: step_of(key.unit()),
    };
    let (mark, word) = if state.is_set {
        ("H", "set by hand")
    } else {
        ("R", "by its rule")
    };
    number_ui(
        ui,
        view,
        &number,
        |value| Edit::Dimension(key, value),
        |ui, view| {
            mark_ui(
                ui,
                view,
                field,
                mark,
                format!("Rule of {}: {word}", key.label()),
            );
        },
    );
    room_bar_ui(ui, view, key, state.value);
    if state.is_set {
        let_go_ui(ui, view, key, state);
    }
    if view.selection.open_field == Some(field) {
        below_ui(ui, |ui| dimension_ui(ui, view, key, state));
    }
}

fn let_go_ui(ui: &mut Ui, view: &mut View<'_>, key: RingKey, state: &DimensionState) {
    ui.horizontal_wrapped(|ui| {
        let rule = state.by_rule.map_or_else(
            || "lacks values".to_owned(),
            |value| format!("gives {}", key.unit().show(value)),
        );
        ui.label(
            RichText::new(format!("set by hand; the rule {rule}"))
                .small()
                .color(view.palette.accent),
        );
        let button = ui
            .small_button("let go")
            .accessible_name(format!("Let {} go", key.label()));
        if button.on_hover_text("follow the rule again").clicked() {
            view.wish(Command::Edit(Edit::LetGo(key)));
        }
    });
}

fn ring_hover(state: &DimensionState) -> String {
    let mut text = format!("rule: {}", state.key.rule());
    if let Some(working) = &state.working {
        text.push('\n');
        text.push_str(&working.text());
    }
    if !state.missing.is_empty() {
        let names: Vec<String> = state
            .missing
            .iter()
            .map(|field| field.long_label())
            .collect();
        text.push_str("\nlacks: ");
        text.push_str(&names.join(", "));
    }
    text.push_str("\ntolerance: ");
    text.push_str(&state.tolerance_text);
    text.push('\n');
    text.push_str(&wrong_line(FieldRef::Ring(state.key)));
    text
}

/// The question whether a part is there.
pub fn presence_ui(ui: &mut Ui, view: &mut View<'_>, part: Fitted) {
    let choices = [
        (Presence::Unknown, "nobody has looked".to_owned()),
        (Presence::Absent, "no".to_owned()),
        (Presence::Present, "yes".to_owned()),
    ];
    let now = part.of(view.design);
    let salt = Id::unique(("presence", part));
    if let Some(presence) = choice_ui(
        ui,
        salt,
        part != Fitted::Mirror && view.selection.take_jump(part.field()),
        part.label(),
        &now,
        &choices,
        &wrong_line(part.field()),
    ) {
        view.wish_from(salt, Edit::Presence(part, presence));
    }
}

/// The trim: a number of the ring that is no dimension.
pub fn trim_row_ui(ui: &mut Ui, view: &mut View<'_>) {
    let number = NumberField {
        label: "Trim",
        salt: salt_of(FieldRef::Trim),
        field: Some(FieldRef::Trim),
        value: Some(view.design.ring.trim_mm),
        unit: Unit::Mm,
        label_width: None,
        hover: format!(
            "added to the seat height on purpose; -0.03 lets the lens focus a little past infinity\n{}",
            wrong_line(FieldRef::Trim)
        ),
        step: 0.01,
    };
    number_ui(ui, view, &number, Edit::Trim, |_, _| {});
}

/// A heading that jumps are led to, for fields that are no numbers.
pub fn anchor_ui(ui: &mut Ui, view: &mut View<'_>, field: FieldRef) {
    let lit = view.selection.is_lit(field);
    let colour = if lit {
        view.palette.accent
    } else {
        view.palette.ink
    };
    let response = ui
        .label(RichText::new(field.label()).color(colour))
        .on_hover_text(field_lines(field).join("\n"));
    if [view.selection.jump, view.selection.reveal].contains(&Some(field)) {
        response.scroll_to_me(Some(Align::Center));
        view.selection.jump = None;
        view.selection.reveal = None;
    }
    if response.hovered() {
        view.selection.point_at(super::view::Lit::Field(field));
    }
}
