//! Where the order of cuts is free, what the other routes cost, and why the order is so.

use egui::{RichText, Ui};

use super::command::Command;
use super::edit::Edit;
use super::view::View;
use crate::document::Choice;
use crate::plan::{Alternative, ShopPlan, exchange_words, reason_words};

/// The part of the page.
pub fn order_ui(ui: &mut Ui, view: &mut View<'_>, plan: &ShopPlan) {
    ui.set_width(ui.available_width().max(400.0));
    ui.label(RichText::new("Other routes").heading());
    for other in &plan.alternatives {
        route_ui(ui, view, other);
    }
    ui.label(RichText::new("Neighbours that may change places").heading());
    let free = exchange_words(plan);
    if free.is_empty() {
        ui.label("none");
    }
    for words in free {
        ui.label(words);
    }
    ui.add_space(6.0);
    ui.label(RichText::new("Why this order").heading());
    for reason in reason_words(plan) {
        ui.add(egui::Label::new(RichText::new(reason.reason).strong()).wrap());
        let words = format!("{}; then {}", reason.befores, reason.afters);
        ui.add(egui::Label::new(RichText::new(words).small()).wrap());
    }
}

fn route_ui(ui: &mut Ui, view: &mut View<'_>, other: &Alternative) {
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(other.route.word()).strong());
        let button = egui::Button::new("Take this route").small();
        let response = ui
            .add_enabled(other.lacking.is_empty(), button)
            .on_hover_text("one step of undo takes it back");
        if response.clicked() {
            view.wish(Command::Edit(Edit::Route(Choice::Set(other.route))));
        }
    });
    ui.add(egui::Label::new(format!("It costs {}.", other.route.cost())).wrap());
    for lacking in &other.lacking {
        let words = format!("Not with this workshop, {lacking}.");
        ui.label(RichText::new(words).color(view.palette.caution));
    }
    ui.add_space(4.0);
}
