//! The page Workshop: the user's machines, tools, instruments and materials, kept apart from the designs.

use egui::{CollapsingHeader, Frame, Margin, RichText, ScrollArea, Ui, vec2};

use super::command::Command;
use super::machine_rows::{head_ui, lathe_ui, mill_ui, table_ui};
use super::shop_edit::ShopEdit;
use super::shop_lists::{cutters_ui, instruments_ui, materials_ui, tools_ui};
use super::view::View;
use crate::document::Design;
use crate::workshop::Workshop;

/// Where the workshop is kept, as the page tells it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kept {
    /// In this file, written with every change.
    InFile(String),
    /// Nowhere: the system names no folder.
    Nowhere,
    /// Not over this file, which cannot be read.
    BesideBroken(String),
}

impl Kept {
    fn words(&self) -> String {
        match self {
            Self::InFile(path) => {
                format!("Every change is kept in {path}, apart from the designs.")
            }
            Self::Nowhere => {
                "This system names no folder for it: changes last till the window closes."
                    .to_owned()
            }
            Self::BesideBroken(path) => format!(
                "{path} cannot be read and is left alone: changes last till the window closes. Repair or move the file \
                 and start again."
            ),
        }
    }
}

/// The page over all the room there is.
pub fn workshop_ui(ui: &mut Ui, view: &mut View<'_>, kept: &Kept) {
    Frame::new()
        .inner_margin(Margin::symmetric(12, 6))
        .show(ui, |ui| {
            head_line_ui(ui, view, kept);
            ui.add_space(4.0);
            let room = ui.available_rect_before_wrap();
            let (left, right) = room.split_left_right_at_fraction(0.47);
            side_ui(ui, left, "machines", |ui| machines_ui(ui, view));
            side_ui(ui, right, "tools", |ui| lists_ui(ui, view));
            ui.advance_cursor_after_rect(room);
        });
}

fn side_ui(ui: &mut Ui, room: egui::Rect, name: &str, add: impl FnOnce(&mut Ui)) {
    let builder = egui::UiBuilder::new()
        .id_salt(name)
        .max_rect(room.shrink2(vec2(4.0, 0.0)));
    ui.scope_builder(builder, |ui| {
        ScrollArea::vertical()
            .id_salt(name)
            .auto_shrink([false, false])
            .show(ui, |ui| {
                let margin = Margin {
                    right: 14,
                    ..Margin::ZERO
                };
                Frame::new().inner_margin(margin).show(ui, add);
            });
    });
}

fn head_line_ui(ui: &mut Ui, view: &mut View<'_>, kept: &Kept) {
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Workshop").heading());
        let is_shipped = Workshop::default_set().is_ok_and(|shipped| shipped == *view.workshop);
        let button = egui::Button::new("Back to the shipped set");
        let back = ui
            .add_enabled(!is_shipped, button)
            .on_hover_text("everything on this page; Undo brings yours back");
        if back.clicked()
            && let Ok(shipped) = Workshop::default_set()
        {
            view.wish(Command::Shop(ShopEdit::to(shipped)));
        }
        ui.label(RichText::new(kept.words()).small().weak());
    });
    assumes_ui(ui, view);
}

/// What the open design takes from the workshop.
fn assumes_ui(ui: &mut Ui, view: &View<'_>) {
    let (taken, missing) = assumed(view.design, view.workshop);
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("The open design assumes:").strong());
        ui.label(taken.join("; "));
    });
    for what in missing {
        ui.label(
            RichText::new(format!("Caution: {what}"))
                .color(view.palette.caution)
                .small(),
        );
    }
}

/// What a design takes from the workshop, and what it names that is not there.
fn assumed(design: &Design, workshop: &Workshop) -> (Vec<String>, Vec<String>) {
    let mut taken = vec![
        workshop.lathe.name.clone(),
        workshop.dividing_head.name.clone(),
    ];
    let mut missing = Vec::new();
    let mut named = |kind: &str, name: &str, served: Option<&String>| {
        let Some(served) = served else {
            missing.push(format!("there is no {kind} in the workshop"));
            return;
        };
        taken.push(served.clone());
        if !name.is_empty() && served != name {
            missing.push(format!(
                "the design names the {kind} \"{name}\", which is not there; \"{served}\" serves in its place"
            ));
        }
    };
    let ring = &design.ring;
    let cutter = workshop.cutter(&ring.cutter).map(|cutter| &cutter.name);
    named("end mill", &ring.cutter, cutter);
    let material = workshop.material(&ring.material).map(|stuff| &stuff.name);
    named("material", &ring.material, material);
    for reading in &design.readings {
        let is_there = workshop
            .instruments
            .iter()
            .any(|instrument| instrument.name == reading.instrument);
        let told = format!(
            "readings of {} name the instrument \"{}\", which is not there",
            reading.dimension, reading.instrument
        );
        if !is_there && !missing.contains(&told) {
            missing.push(told);
        }
    }
    (taken, missing)
}

fn group_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    title: &str,
    add: impl FnOnce(&mut Ui, &mut View<'_>),
) {
    CollapsingHeader::new(RichText::new(title).strong())
        .default_open(true)
        .show_unindented(ui, |ui| add(ui, view));
}

fn machines_ui(ui: &mut Ui, view: &mut View<'_>) {
    group_ui(ui, view, "Lathe and chuck", lathe_ui);
    group_ui(ui, view, "Mill", mill_ui);
    group_ui(ui, view, "Dividing head", head_ui);
    group_ui(ui, view, "Rotary table", table_ui);
}

fn lists_ui(ui: &mut Ui, view: &mut View<'_>) {
    group_ui(ui, view, "End mills", cutters_ui);
    group_ui(ui, view, "Lathe tools", tools_ui);
    group_ui(ui, view, "Instruments", instruments_ui);
    group_ui(ui, view, "Materials", materials_ui);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;

    #[test]
    fn a_design_says_what_it_assumes_and_what_is_not_there() {
        let mut design = demo_designs().unwrap().remove(0);
        let workshop = Workshop::default_set().unwrap();
        design.readings.clear();
        design.ring.cutter = "end mill 3".to_owned();
        let (taken, missing) = assumed(&design, &workshop);
        assert!(taken.contains(&"end mill 3".to_owned()) && missing.is_empty());
        design.ring.cutter = "end mill 99".to_owned();
        let (taken, missing) = assumed(&design, &workshop);
        assert!(taken.contains(&"end mill 4".to_owned()));
        assert!(missing[0].contains("end mill 99") && missing[0].contains("serves"));
    }
}
