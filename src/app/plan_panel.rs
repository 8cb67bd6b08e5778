//! The lug pattern, live, with the cutting line that turns the half-section.

use egui::{Pos2, RichText, Ui};

use super::canvas::{Canvas, Showing, distance_to_line};
use super::command::Command;
use super::edit::{Edit, edited};
use super::hand::{Graspable, Hand};
use super::in_words::plan_in_words;
use super::pick::Picked;
use super::places::{Light, in_plan};
use super::plan_hand::{places, taken_at};
use super::scene_paint::painted;
use super::section_panel::hover_ui;
use super::sight::ToScreen;
use super::view::View;
use crate::drawing::Scene;
use crate::drawing::plan_view::{PlanOptions, plan_view};
use crate::geometry::{Point, Side};

/// The plan on the screen.
pub struct PlanPanel {
    /// The canvas.
    pub canvas: Canvas,
    /// From which side it is seen.
    pub side: Side,
    hand: Hand,
    /// Whether the cutting line is in the hand.
    turning: bool,
    scene: Option<(u64, Side, Scene)>,
}

impl Default for PlanPanel {
    fn default() -> Self {
        Self {
            canvas: Canvas::default(),
            side: Side::Lens,
            hand: Hand::default(),
            turning: false,
            scene: None,
        }
    }
}

const CENTRE: Point = Point { x: 0.0, y: 0.0 };
/// Nearer than this to the cutting line a press takes hold of it, points.
const HOLD: f32 = 9.0;
/// Nearer than this to the edge of a lug a press takes hold of it, points.
const NEAR: f64 = 6.0;

impl PlanPanel {
    /// Sees the plan from the other side.
    pub fn turn(&mut self) {
        self.side = match self.side {
            Side::Lens => Side::Body,
            Side::Body => Side::Lens,
        };
        self.hand = Hand::default();
    }

    /// Draws the plan of this revision of the design.
    pub fn plan_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        self.heading_ui(ui, view);
        if self
            .scene
            .as_ref()
            .is_none_or(|(drawn, side, _)| (*drawn, *side) != (revision, self.side))
        {
            let scene = plan_view(view.design, view.evaluation, &self.options(view));
            self.scene = Some((revision, self.side, scene));
        }
        let Some((_, side, scene)) = &self.scene else {
            return;
        };
        let side = *side;
        let cut_deg = view.design.sheet.section_angle_deg;
        let reach = view
            .evaluation
            .derivation
            .ring
            .as_ref()
            .map_or(30.0, |ring| ring.sizes.flange_diameter / 2.0 + 6.0);
        let whole = view.evaluation.plan.is_some();
        let evaluation = view.evaluation;
        let on_cut = |way: &ToScreen, at: Pos2| whole && near_cut(way, at, cut_deg, reach, side);
        let thing = |way: &ToScreen, at: Pos2| {
            taken_at(evaluation, way.back(at), side, NEAR / way.points_per_mm)
        };
        let grabs = |way: &ToScreen, at: Pos2| on_cut(way, at) || thing(way, at).is_some();
        let light = Light::of(view.selection, view.evaluation);
        let showing = Showing {
            name: "Plan of the lugs",
            scene,
            revision: revision * 2 + u64::from(side == Side::Body),
            axes: ["x", "y"],
            is_lit: &|tag| light.falls_on(tag),
            light: light.number,
            grabs: &grabs,
            palette: view.palette,
            sheet: None,
        };
        let shown = self.canvas.canvas_ui(ui, &showing);
        let words = plan_in_words(view.evaluation);
        let node = |node: &mut egui::accesskit::Node| node.set_description(words);
        ui.ctx().accesskit_node_builder(shown.response.id, node);
        painted(&light.in_plan(side), &shown.way, view.palette, &|_| false)
            .paint(&shown.painter, &shown.way);
        let at_cut = |at: Pos2| on_cut(&shown.way, at);
        if shown.response.hover_pos().is_some_and(at_cut) || self.turning {
            ui.ctx().set_cursor_icon(egui::CursorIcon::Grab);
        }
        if let Some(at) = shown.grabbed_at {
            let pressed = ui.input(|input| input.pointer.press_origin());
            self.turning |= !self.hand.holds() && pressed.is_some_and(at_cut);
            if self.turning {
                turn_cut(view, &shown.way, at, side);
            }
        }
        if shown.let_go && std::mem::take(&mut self.turning) {
            view.wish(Command::DragEnded);
        }
        if let Some(picked) = shown.tag.and_then(Picked::of) {
            hover_ui(view, picked, &shown.response);
        }
        let take = |at: Pos2| thing(&shown.way, at).filter(|_| !on_cut(&shown.way, at));
        let things = Graspable {
            take: &take,
            places: &places(evaluation, side),
        };
        self.hand
            .hand_ui(ui, view, &mut self.canvas, &shown, &things);
    }

    const fn options(&self, view: &View<'_>) -> PlanOptions {
        PlanOptions {
            side: self.side,
            body: true,
            entry: true,
            cut_deg: Some(view.design.sheet.section_angle_deg),
        }
    }

    fn heading_ui(&self, ui: &mut Ui, view: &mut View<'_>) {
        ui.horizontal_wrapped(|ui| {
            ui.strong("Lug pattern");
            ui.label(RichText::new("seen from the").small().weak());
            for (side, words) in [(Side::Lens, "lens side"), (Side::Body, "body side")] {
                let hover = match side {
                    Side::Lens => "angles run clockwise, as on a clock",
                    Side::Body => "every angle runs the other way, as the lugs are milled",
                };
                let button = ui
                    .selectable_label(self.side == side, RichText::new(words).small())
                    .on_hover_text(hover);
                if button.clicked() && self.side != side {
                    view.wish(Command::TurnPlan);
                }
            }
        });
    }
}

fn near_cut(way: &ToScreen, at: Pos2, cut_deg: f64, reach: f64, side: Side) -> bool {
    let end = in_plan(reach, cut_deg, side);
    // Near the middle every direction is near: there the picture is moved instead.
    let from = Point {
        x: end.x * 0.12,
        y: end.y * 0.12,
    };
    distance_to_line(way.at(from), way.at(end), at) <= HOLD
}

/// Turns the cut toward a place of the screen, in half degrees.
fn turn_cut(view: &mut View<'_>, way: &ToScreen, at: Pos2, side: Side) {
    let place = way.back(at);
    let across = match side {
        Side::Lens => place.x - CENTRE.x,
        Side::Body => CENTRE.x - place.x,
    };
    let angle_deg = across.atan2(place.y - CENTRE.y).to_degrees();
    let edit = Edit::SectionAngle((angle_deg * 2.0).round() / 2.0);
    if edited(view.design, &edit).is_ok() {
        view.wish(Command::Drag(edit));
    }
}
