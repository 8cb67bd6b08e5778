//! The views of the compared designs, each by itself, all in one scale and looking at the same place.

use egui::{Rect, Ui, UiBuilder, vec2};

use super::canvas::{Canvas, Showing, scope_of};
use super::compare_choices::Choices;
use super::compared::Column;
use super::pick::Picked;
use super::places::Light;
use super::scene_paint::painted;
use super::sight::{Scope, Sight};
use super::view::{Lit, View};
use crate::compare::scenes::{plan_scene, section_scene};
use crate::compare::{Subject, places_of};
use crate::document::FieldRef;
use crate::drawing::Scene;

/// A column at least so much wider than high has its two views beside each other.
const WIDE: f32 = 1.15;
/// Share of the half-section in a column.
const SECTION_SHARE: f32 = 0.56;

/// One drawing that looks where the others look.
#[derive(Default)]
pub struct SharedSight {
    /// Where all of a kind look.
    pub sight: Sight,
    zoom: Option<f64>,
}

impl SharedSight {
    /// Zooms all by a factor.
    pub const fn zoom_by(&mut self, factor: f64) {
        self.zoom = Some(factor);
    }

    /// Draws a canvas that looks where the others do, and lets them follow where it was moved.
    pub fn canvas_ui(
        &mut self,
        ui: &mut Ui,
        canvas: &mut Canvas,
        scope: Scope,
        showing: &Showing<'_>,
    ) -> super::canvas::Shown {
        let given = self.sight.at_place(ui.available_rect_before_wrap(), scope);
        canvas.sight = given;
        if let Some(factor) = self.zoom.take() {
            canvas.zoom_by(factor);
        }
        let shown = canvas.canvas_ui(ui, showing);
        if canvas.sight != given {
            self.sight = canvas.sight;
            // Those that were drawn before it follow in the next frame.
            ui.ctx().request_repaint();
        }
        shown
    }
}

/// The views of one column.
#[derive(Default)]
struct Slot {
    drawn: Option<Drawn>,
    section: Canvas,
    plan: Canvas,
}

struct Drawn {
    version: u64,
    choices: Choices,
    serial: u64,
    section: Scene,
    plan: Scene,
}

/// The views of all columns.
#[derive(Default)]
pub struct CompareViews {
    /// Where the half-sections look.
    pub sections: SharedSight,
    /// Where the lug patterns look.
    pub plans: SharedSight,
    slots: Vec<Slot>,
    serial: u64,
}

/// What lights up on the page: what is pointed at, else the row that was picked.
pub fn lit_now(view: &View<'_>, picked: Option<Lit>) -> Option<Lit> {
    view.selection.lit().or(picked)
}

/// The field that lights up, if it is one.
pub const fn field_of(lit: Option<Lit>) -> Option<FieldRef> {
    match lit {
        Some(Lit::Field(field)) => Some(field),
        Some(Lit::Finding(_)) | None => None,
    }
}

impl CompareViews {
    /// Draws the scenes anew whose design or choice has changed.
    pub fn draw(&mut self, columns: &[&Column], subjects: &[Subject<'_>], choices: Choices) {
        self.slots.resize_with(columns.len(), Slot::default);
        for ((slot, column), subject) in self.slots.iter_mut().zip(columns).zip(subjects) {
            let holds = slot.drawn.as_ref().is_some_and(|drawn| {
                drawn.version == column.version && drawn.choices.looks_like(&choices)
            });
            if !holds {
                self.serial += 1;
                slot.drawn = Some(Drawn {
                    version: column.version,
                    choices,
                    serial: self.serial,
                    section: section_scene(subject, choices.cut, choices.partners),
                    plan: plan_scene(subject, choices.side, choices.partners),
                });
            }
        }
    }

    fn scopes(&self) -> (Scope, Scope) {
        let drawn = self.slots.iter().filter_map(|slot| slot.drawn.as_ref());
        let none = (Scope::default(), Scope::default());
        drawn.fold(none, |(section, plan), drawn| {
            (
                section.union(scope_of(&drawn.section)),
                plan.union(scope_of(&drawn.plan)),
            )
        })
    }

    /// The two views of every column, each in its rectangle.
    pub fn views_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        subjects: &[Subject<'_>],
        rects: &[Rect],
        choices: Choices,
        picked: Option<Lit>,
    ) {
        let lit = lit_now(view, picked);
        let (section_scope, plan_scope) = self.scopes();
        for ((slot, subject), rect) in self.slots.iter_mut().zip(subjects).zip(rects) {
            let Some(drawn) = &slot.drawn else { continue };
            let light = Light::of_lit(lit, subject.evaluation);
            let own = field_of(lit).map(|field| places_of(subject, field, choices.side));
            let own = own.unwrap_or_default();
            let (above, below) = parts(*rect);
            let name = format!("Half-section of {}", subject.name);
            let mut one = OneView {
                view,
                light: &light,
                serial: drawn.serial,
            };
            one.one_ui(
                ui,
                (above, &name, ["z", "r"]),
                (&mut self.sections, &mut slot.section, section_scope),
                &drawn.section,
                [&light.in_section(), &own.section],
            );
            let name = format!("Lug pattern of {}", subject.name);
            one.one_ui(
                ui,
                (below, &name, ["x", "y"]),
                (&mut self.plans, &mut slot.plan, plan_scope),
                &drawn.plan,
                [&light.in_plan(choices.side), &own.plan],
            );
        }
    }
}

/// The rectangles of half-section and lug pattern in a column.
fn parts(rect: Rect) -> (Rect, Rect) {
    if rect.width() > WIDE * rect.height() {
        rect.split_left_right_at_fraction(SECTION_SHARE)
    } else {
        rect.split_top_bottom_at_fraction(SECTION_SHARE)
    }
}

/// What the views of one column have in common.
pub struct OneView<'a, 'v> {
    /// The view of the window.
    pub view: &'a mut View<'v>,
    /// What lights up.
    pub light: &'a Light,
    /// Goes up with every new scene.
    pub serial: u64,
}

impl OneView<'_, '_> {
    /// One drawing: where, under which name, with which axes; how it looks; what it shows; what is lit over it.
    pub fn one_ui(
        &mut self,
        ui: &mut Ui,
        (rect, name, axes): (Rect, &str, [&str; 2]),
        (shared, canvas, scope): (&mut SharedSight, &mut Canvas, Scope),
        scene: &Scene,
        lit: [&Scene; 2],
    ) {
        let inside = rect.shrink2(vec2(1.0, 1.0));
        ui.scope_builder(UiBuilder::new().max_rect(inside), |ui| {
            ui.shrink_clip_rect(inside);
            let showing = Showing {
                name,
                scene,
                revision: self.serial,
                axes,
                is_lit: &|tag| self.light.falls_on(tag),
                light: self.light.number,
                grabs: &|_, _| false,
                palette: self.view.palette,
                sheet: None,
            };
            let shown = shared.canvas_ui(ui, canvas, scope, &showing);
            for places in lit.into_iter().filter(|places| !places.items.is_empty()) {
                painted(places, &shown.way, self.view.palette, &|_| false)
                    .paint(&shown.painter, &shown.way);
            }
            let picked = shown.tag.and_then(Picked::of);
            if let Some(field) = picked.and_then(Picked::field) {
                self.view.selection.point_at(Lit::Field(field));
            }
            if let Some(picked) = picked
                && !shown.response.dragged()
            {
                shown.response.show_tooltip_ui(|ui| {
                    ui.label(picked.label());
                });
            }
        });
    }
}
