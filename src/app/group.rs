//! A foldable group of rows; a jump to one of its fields unfolds it.

use egui::{CollapsingHeader, RichText, Ui};

use super::view::View;
use crate::document::FieldRef;

/// A foldable group with these fields in it.
pub fn group_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    title: &str,
    open: bool,
    fields: &[FieldRef],
    add: impl FnOnce(&mut Ui, &mut View<'_>),
) {
    let wanted = view
        .selection
        .jump
        .or(view.selection.reveal)
        .is_some_and(|wanted| fields.contains(&wanted));
    CollapsingHeader::new(RichText::new(title).strong())
        .default_open(open)
        .open(wanted.then_some(true))
        .show_unindented(ui, |ui| add(ui, view));
}
