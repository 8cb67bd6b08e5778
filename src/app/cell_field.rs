//! A small number box inside a line of others, for the lists: the same habits as the field for a number.

use egui::{Id, RichText, Ui};

use super::field::{shown, typed_ui};
use super::view::{Typed, View, Wish};
use crate::document::parse_quantity;
use crate::mount::Unit;

/// Width of the box, points.
const WIDTH: f32 = 60.0;

/// What a small box shows.
#[derive(Clone, Copy, Debug)]
pub struct Cell<'a> {
    /// What sets it apart.
    pub id: Id,
    /// The word in front.
    pub word: &'a str,
    /// The whole name for a screen reader.
    pub name: &'a str,
    /// The number it holds.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
}

/// The word, the box and the unit; a finished number goes through `edit`, a refusal is remembered under the cell's id.
pub fn cell_ui<W: Wish>(
    ui: &mut Ui,
    view: &mut View<'_>,
    cell: Cell<'_>,
    edit: impl FnOnce(f64) -> W,
) {
    ui.label(RichText::new(cell.word).small().weak());
    box_ui(ui, view, cell, WIDTH, edit);
    ui.label(RichText::new(cell.unit.sign()).small().weak());
}

/// The box alone, for a table whose head says word and unit.
pub fn box_ui<W: Wish>(
    ui: &mut Ui,
    view: &mut View<'_>,
    cell: Cell<'_>,
    width: f32,
    edit: impl FnOnce(f64) -> W,
) {
    let (response, typed) = typed_ui(ui, view, cell.id, &shown(cell.value, cell.unit), width, "");
    response.accessible_name(cell.name).on_hover_text(cell.name);
    if let Typed::Finished(text) = typed {
        match parse_quantity(&text, cell.unit) {
            Ok(value) => view.wish_from(cell.id, edit(value)),
            Err(error) => view.typing.refuse(cell.id, error.to_string()),
        }
    }
}
