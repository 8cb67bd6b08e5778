//! A line of working laid open: formula, numbers, inputs to jump to, source, what would make it wrong.

use egui::{RichText, Ui};

use super::view::View;
use crate::document::{FieldRef, Working};
use crate::mount::Standing;

/// The working, over the width there is.
pub fn working_ui(ui: &mut Ui, view: &mut View<'_>, working: &Working) {
    let small = |text: String| RichText::new(text).small();
    let value = working.unit.show(working.term.value());
    let (formula, numbers) = (working.term.formula(), working.term.numbers());
    ui.label(small(format!("{} = {value}", working.result)).strong());
    if formula != numbers {
        ui.label(small(format!("= {formula}")));
    }
    if numbers != value {
        ui.label(small(format!("= {numbers}")));
    }
    inputs_ui(ui, view, working);
    ui.label(small(format!("source: {}", working.source)).color(view.palette.faint_ink));
    ui.label(small(holds_if(view, working)).color(view.palette.faint_ink));
    ui.add_space(4.0);
}

/// Every input with its number; one that stands in a field leads there.
fn inputs_ui(ui: &mut Ui, view: &mut View<'_>, working: &Working) {
    let inputs = working.term.inputs();
    if inputs.is_empty() {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 8.0;
        ui.label(RichText::new("from").small().color(view.palette.faint_ink));
        for input in inputs {
            let number = format!("{} {}", input.name, input.unit.show(input.value));
            match input.field {
                Some(field) => link_ui(ui, view, field, &number),
                None => {
                    ui.label(RichText::new(number).small());
                }
            }
        }
    });
}

/// A link to a field; pointing at it lights the field.
pub fn link_ui(ui: &mut Ui, view: &mut View<'_>, field: FieldRef, words: &str) {
    let response = ui.link(RichText::new(words).small());
    if response.hovered() {
        view.selection.point_at(super::view::Lit::Field(field));
    }
    if response
        .on_hover_text(format!("go to {}", field.long_label()))
        .clicked()
    {
        view.go_to(field);
    }
}

/// What the line takes for granted: its own assumption, and inputs that nobody has measured.
fn holds_if(view: &View<'_>, working: &Working) -> String {
    let doubtful: Vec<String> = working
        .term
        .inputs()
        .iter()
        .filter_map(|input| {
            let standing = standing_of(view, input.field?)?;
            standing
                .wants_measuring()
                .then(|| format!("{} ({})", input.name, standing.word()))
        })
        .collect();
    let own = if working.assumption.is_empty() {
        "the inputs are right".to_owned()
    } else {
        working.assumption.to_owned()
    };
    if doubtful.is_empty() {
        format!("holds if {own}")
    } else {
        format!("holds if {own}; and it rests on {}", doubtful.join(", "))
    }
}

/// How far a value of lens or body can be trusted.
fn standing_of(view: &View<'_>, field: FieldRef) -> Option<Standing> {
    match field {
        FieldRef::Lens(key) => Some(view.design.lens.field(key).standing()),
        FieldRef::Body(key) => Some(view.design.body.field(key).standing()),
        FieldRef::LensThread => Some(view.design.lens.thread.standing()),
        FieldRef::BarrelAtInfinity => Some(view.design.lens.barrel_at_infinity.standing()),
        FieldRef::BarrelAtCloseFocus => Some(view.design.lens.barrel_at_close_focus.standing()),
        FieldRef::Ears => Some(view.design.body.ears.standing()),
        FieldRef::TwistHand => Some(view.design.body.twist_hand.standing()),
        FieldRef::FreeDepth => Some(view.design.body.free_depth.standing()),
        FieldRef::Obstacles => Some(view.design.body.obstacles.standing()),
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
        | FieldRef::Pieces => None,
    }
}

/// Fields that are unknown, each with how to measure it and a way to its place.
pub fn lacks_ui(ui: &mut Ui, view: &mut View<'_>, lacks: &[FieldRef]) {
    if lacks.is_empty() {
        ui.label("There is no whole ring to look at yet; the page Design says why.");
        return;
    }
    ui.label("To measure first:");
    for field in lacks {
        ui.horizontal_wrapped(|ui| {
            link_ui(ui, view, *field, &field.long_label());
            ui.label(
                RichText::new(field.how())
                    .small()
                    .color(view.palette.faint_ink),
            );
        });
    }
}
