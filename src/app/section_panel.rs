//! The half-section, large and live; its edges are dragged, nudged and typed into.

use egui::{Pos2, RichText, Ui};

use super::canvas::{Canvas, Showing, tag_at};
use super::grip::{Follow, Grip, Taken};
use super::hand::{Graspable, Hand};
use super::in_words::section_in_words;
use super::pick::Picked;
use super::places::Light;
use super::scene_paint::painted;
use super::sight::ToScreen;
use super::standing::told;
use super::view::{Lit, View};
use crate::drawing::Scene;
use crate::drawing::section_view::{SectionOptions, section_view};
use crate::geometry::Point;
use crate::ring::{Cut, Feature, edge_motion, middle_of};

/// The half-section on the screen.
#[derive(Default)]
pub struct SectionPanel {
    /// The canvas, for zooming by command.
    pub canvas: Canvas,
    hand: Hand,
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
            grabs: &|way, at| edge_at(scene, way, at).is_some(),
            palette: view.palette,
            sheet: None,
        };
        let shown = self.canvas.canvas_ui(ui, &showing);
        let words = section_in_words(view.evaluation);
        let node = |node: &mut egui::accesskit::Node| node.set_description(words);
        ui.ctx().accesskit_node_builder(shown.response.id, node);
        painted(&light.in_section(), &shown.way, view.palette, &|_| false)
            .paint(&shown.painter, &shown.way);
        if let Some(picked) = shown.tag.and_then(Picked::of) {
            hover_ui(view, picked, &shown.response);
        }
        let cut = cut_of(view);
        let (design, workshop) = (view.design, view.workshop);
        let take = |at: Pos2| {
            let feature = edge_at(scene, &shown.way, at)?;
            let place = shown.way.back(at);
            let motion = edge_motion(design, workshop, feature, place, cut)?;
            Some(Taken {
                grip: Grip::Dimension(motion.key),
                follow: Follow::Edge(motion),
                place,
                value: motion.value,
            })
        };
        let places = places(view, cut);
        let things = Graspable {
            take: &take,
            places: &places,
        };
        self.hand
            .hand_ui(ui, view, &mut self.canvas, &shown, &things);
    }
}

/// The edge of the ring at a place of the screen.
fn edge_at(scene: &Scene, way: &ToScreen, at: Pos2) -> Option<Feature> {
    match Picked::of(tag_at(scene, way, at)?)? {
        Picked::Feature(feature) => Some(feature),
        Picked::Lug(_) | Picked::LockHole | Picked::Cut => None,
    }
}

/// Whether the section shown goes through a lug.
fn cut_of(view: &View<'_>) -> Cut {
    let angle_deg = view.design.sheet.section_angle_deg;
    let ring = view.evaluation.derivation.ring.as_ref();
    let through = ring.is_some_and(|ring| {
        ring.lugs
            .iter()
            .any(|lug| (angle_deg - lug.start_deg).rem_euclid(360.0) <= lug.extent_deg)
    });
    if through {
        Cut::ThroughLug
    } else {
        Cut::BetweenLugs
    }
}

/// The middle of every edge, in the order of the outline.
fn places(view: &View<'_>, cut: Cut) -> Vec<Point> {
    let parts = view.evaluation.parts.as_ref();
    parts.map_or_else(Vec::new, |parts| {
        let pieces = cut.outline(parts).pieces();
        pieces.map(|(segment, _)| middle_of(&segment)).collect()
    })
}

/// Lights the field behind what is pointed at and tells of it.
pub fn hover_ui(view: &mut View<'_>, picked: Picked, response: &egui::Response) {
    if let Some(field) = picked.field() {
        view.selection.point_at(Lit::Field(field));
    }
    if picked != Picked::Cut {
        response.ctx.set_cursor_icon(egui::CursorIcon::Grab);
    }
    if !response.dragged() {
        response.show_tooltip_ui(|ui| {
            ui.label(told(view, picked));
        });
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
