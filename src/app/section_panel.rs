//! The half-section, large and live.

use egui::{RichText, Ui};

use super::canvas::{Canvas, Showing};
use super::pick::Picked;
use super::places::Light;
use super::scene_paint::painted;
use super::view::{Lit, View};
use crate::document::FieldRef;
use crate::drawing::Scene;
use crate::drawing::section_view::{SectionOptions, section_view};

/// The half-section on the screen.
#[derive(Default)]
pub struct SectionPanel {
    /// The canvas, for zooming by command.
    pub canvas: Canvas,
    scene: Option<(u64, Scene)>,
}

impl SectionPanel {
    /// Draws the half-section of this revision of the design.
    pub fn section_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        heading_ui(ui, view);
        if self
            .scene
            .as_ref()
            .is_none_or(|(drawn, _)| *drawn != revision)
        {
            let options = SectionOptions::on_screen(view.design.sheet.section_angle_deg);
            self.scene = Some((
                revision,
                section_view(view.design, view.evaluation, &options),
            ));
        }
        let Some((_, scene)) = &self.scene else {
            return;
        };
        let light = Light::of(view.selection, view.evaluation);
        let showing = Showing {
            name: "Half-section drawing",
            scene,
            revision,
            axes: ["z", "r"],
            is_lit: &|tag| light.falls_on(tag),
            light: light.number,
            grabs: &|_, _| false,
            palette: view.palette,
            sheet: None,
        };
        let shown = self.canvas.canvas_ui(ui, &showing);
        painted(&light.in_section(), &shown.way, view.palette, &|_| false)
            .paint(&shown.painter, &shown.way);
        if let Some(picked) = shown.tag.and_then(Picked::of) {
            pick_ui(view, picked, &shown.response);
        }
    }
}

/// Lights the field behind what is pointed at; a click goes to it.
pub fn pick_ui(view: &mut View<'_>, picked: Picked, response: &egui::Response) {
    if let Some(field) = picked.field() {
        view.selection.point_at(Lit::Field(field));
        if response.clicked() {
            view.go_to(field);
        }
    }
    if !response.dragged() {
        response.show_tooltip_ui(|ui| {
            ui.label(told(view, picked));
        });
    }
}

fn told(view: &View<'_>, picked: Picked) -> String {
    let ring_key = if let Some(FieldRef::Ring(key)) = picked.field() {
        Some(key)
    } else {
        None
    };
    let state = ring_key.and_then(|key| view.evaluation.derivation.dimension(key));
    let value = state.and_then(|state| {
        Some(format!(
            "{}: {}",
            state.key.label(),
            state.key.unit().show(state.value?)
        ))
    });
    match value {
        Some(value) => format!("{}\n{value}\nclick to edit", picked.label()),
        None => picked.label(),
    }
}

fn heading_ui(ui: &mut Ui, view: &View<'_>) {
    ui.horizontal(|ui| {
        ui.strong("Half-section");
        let angle = view.design.sheet.section_angle_deg;
        ui.label(
            RichText::new(format!(
                "cut at {angle:.1}°, light from the left, z = 0 at the flange rear face"
            ))
            .weak()
            .small(),
        );
    });
}
