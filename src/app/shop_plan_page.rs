//! The page Shop plan: the order of cuts with pictures, settings of the head, the thread, and why the order is so.

use egui::{Frame, Id, Margin, Rect, RichText, ScrollArea, Ui, UiBuilder, vec2};

use super::canvas::{Canvas, Showing};
use super::command::Command;
use super::edit::Edit;
use super::missing_panel::{missing_ui, ring_is_whole};
use super::page::Page;
use super::print_out::PrintOut;
use super::shop_plan_order::order_ui;
use super::shop_plan_tables::{dividing_ui, thread_ui};
use super::text_field::choice_ui;
use super::view::View;
use crate::document::{Choice, Route};
use crate::drawing::Scene;
use crate::paper::step_picture::{caption, step_picture};
use crate::plan::{CAUTIONS, PlanError, SPEEDS_ARE, ShopPlan, Stage, Step, shop_plan, stock_words};

/// Width of the list of steps, points.
const LIST_WIDTH: f32 = 310.0;
/// With more room than this text and picture stand side by side, points.
const WIDE: f32 = 860.0;

/// A part of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Part {
    #[default]
    Steps,
    Dividing,
    Thread,
    Order,
}

impl Part {
    const ALL: [(Self, &'static str); 4] = [
        (Self::Steps, "Steps"),
        (Self::Dividing, "Dividing"),
        (Self::Thread, "Thread"),
        (Self::Order, "Order and why"),
    ];
}

/// The page.
#[derive(Default)]
pub struct ShopPlanPage {
    made: Option<(u64, Result<Planned, PlanError>)>,
    part: Part,
    /// The step in sight, from 1; 0 is what comes before all of them.
    chosen: usize,
    /// The picture of the step, for zooming by command.
    pub canvas: Canvas,
}

/// A plan with the picture in sight.
struct Planned {
    plan: ShopPlan,
    stages: Vec<Stage>,
    scene: Option<(usize, Scene)>,
}

impl ShopPlanPage {
    /// The page over all the room there is, for this revision of the design.
    pub fn shop_plan_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        if !ring_is_whole(view) {
            missing_ui(ui, view);
            return;
        }
        self.make(view, revision);
        Frame::new()
            .inner_margin(Margin::symmetric(12, 6))
            .show(ui, |ui| {
                self.head_ui(ui, view);
                match &mut self.made {
                    Some((_, Ok(_))) => self.part_ui(ui, view, revision),
                    Some((_, Err(error))) => no_plan_ui(ui, view, error),
                    None => {}
                }
            });
    }

    /// Plans anew where the design or the workshop has changed.
    fn make(&mut self, view: &View<'_>, revision: u64) {
        if self
            .made
            .as_ref()
            .is_some_and(|(made, _)| *made == revision)
        {
            return;
        }
        let made = shop_plan(view.design, view.workshop, view.evaluation).map(|plan| Planned {
            stages: plan.stages(view.evaluation),
            plan,
            scene: None,
        });
        self.made = Some((revision, made));
    }

    fn head_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new("Shop plan").heading());
            for (part, words) in Part::ALL {
                if ui.selectable_label(self.part == part, words).clicked() {
                    self.part = part;
                }
            }
            let print = Command::Print(PrintOut::Plan);
            let is_made = matches!(&self.made, Some((_, Ok(_))));
            let button = egui::Button::new(print.label());
            if ui
                .add_enabled(is_made, button)
                .on_hover_text(print.explains())
                .clicked()
            {
                view.wish(print);
            }
        });
        let made = self.made.as_ref();
        route_ui(ui, view, made.and_then(|(_, made)| made.as_ref().ok()));
        ui.add_space(4.0);
    }

    fn part_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let part = self.part;
        if part == Part::Steps {
            self.steps_ui(ui, view, revision);
            return;
        }
        let Some((_, Ok(planned))) = &self.made else {
            return;
        };
        ScrollArea::both()
            .id_salt(("plan", part.word()))
            .auto_shrink([false, false])
            .show(ui, |ui| match part {
                Part::Steps => {}
                Part::Dividing => dividing_ui(ui, view, &planned.plan),
                Part::Thread => thread_ui(ui, view, &planned.plan),
                Part::Order => order_ui(ui, view, &planned.plan),
            });
    }

    fn steps_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let room = ui.available_rect_before_wrap();
        let (list, rest) = room.split_left_right_at_x(room.left() + LIST_WIDTH);
        let Some((_, Ok(planned))) = &mut self.made else {
            return;
        };
        let chosen = &mut self.chosen;
        *chosen = (*chosen).min(planned.plan.steps.len());
        scrolled_ui(ui, list, "steps", |ui| {
            list_ui(ui, view, &planned.plan, chosen);
        });
        let rest = rest.with_min_x(rest.left() + 10.0);
        let Some(step) = chosen
            .checked_sub(1)
            .and_then(|index| planned.plan.steps.get(index))
        else {
            scrolled_ui(ui, rest, "start", |ui| start_ui(ui, view, &planned.plan));
            ui.advance_cursor_after_rect(room);
            return;
        };
        let stage = planned.stages.get(*chosen - 1);
        let (words, picture) = if rest.width() > WIDE {
            rest.split_left_right_at_fraction(0.45)
        } else {
            rest.split_top_bottom_at_fraction(0.5)
        };
        scrolled_ui(ui, words, "step", |ui| {
            step_ui(ui, view, *chosen, step, &planned.plan);
        });
        if let Some(stage) = stage {
            if planned
                .scene
                .as_ref()
                .is_none_or(|(drawn, _)| drawn != chosen)
            {
                planned.scene = Some((*chosen, step_picture(stage, view.evaluation)));
            }
            if let Some((_, scene)) = &planned.scene {
                let number = u64::try_from(*chosen).unwrap_or(u64::MAX);
                let key = revision.wrapping_mul(1000).wrapping_add(number);
                picture_ui(
                    ui,
                    view,
                    picture,
                    &mut self.canvas,
                    (scene, key, caption(stage)),
                );
            }
        }
        ui.advance_cursor_after_rect(room);
    }
}

impl Part {
    const fn word(self) -> &'static str {
        match self {
            Self::Steps => "steps",
            Self::Dividing => "dividing",
            Self::Thread => "thread",
            Self::Order => "order",
        }
    }
}

fn scrolled_ui(ui: &mut Ui, room: Rect, name: &str, add: impl FnOnce(&mut Ui)) {
    ui.scope_builder(UiBuilder::new().id_salt(name).max_rect(room), |ui| {
        ScrollArea::vertical()
            .id_salt(name)
            .auto_shrink([false, false])
            .show(ui, |ui| {
                let margin = Margin {
                    right: 12,
                    ..Margin::ZERO
                };
                Frame::new().inner_margin(margin).show(ui, add);
            });
    });
}

/// The route taken, with what it costs.
fn route_ui(ui: &mut Ui, view: &mut View<'_>, planned: Option<&Planned>) {
    let found = planned.map_or("the first that the workshop can take", |planned| {
        planned.plan.route.word()
    });
    let now = view.design.ring.route;
    let mut choices = vec![(Choice::Derived, format!("by itself: {found}"))];
    if now != Choice::Derived {
        choices = vec![(
            Choice::Derived,
            "by itself: the first that the workshop can take".to_owned(),
        )];
    }
    choices.extend(Route::ALL.map(|route| (Choice::Set(route), route.word().to_owned())));
    let salt = Id::unique("route");
    let hover = "lugs before or after the thread, and where the gaps are milled";
    if let Some(route) = choice_ui(ui, salt, false, "Route", &now, &choices, hover) {
        view.wish_from(salt, Edit::Route(route));
    }
    if let Some(planned) = planned {
        let words = format!("It costs {}.", planned.plan.route.cost());
        ui.add(egui::Label::new(RichText::new(words).weak()).wrap());
    }
}

/// What is missing, where no order exists.
fn no_plan_ui(ui: &mut Ui, view: &mut View<'_>, error: &PlanError) {
    ui.label(RichText::new("No order of cuts").heading());
    match error {
        PlanError::Lacking(lacking) => {
            ui.label("This workshop lacks, for the route chosen:");
            for one in lacking {
                ui.label(RichText::new(format!("- {one}")).color(view.palette.clash));
            }
            if ui
                .button("To the workshop")
                .on_hover_text("enter the tool there, where you have it")
                .clicked()
            {
                view.wish(Command::Show(Page::Workshop));
            }
        }
        PlanError::NoRing(_) | PlanError::Cycle(_) => {
            ui.label(RichText::new(error.to_string()).color(view.palette.clash));
        }
    }
}

fn list_ui(ui: &mut Ui, view: &View<'_>, plan: &ShopPlan, chosen: &mut usize) {
    let mut row = |ui: &mut Ui, index: usize, words: String| {
        let button = egui::Button::selectable(*chosen == index, words)
            .wrap()
            .min_size(vec2(ui.available_width(), 20.0));
        if ui.add(button).clicked() {
            *chosen = index;
        }
    };
    row(ui, 0, "Before you start".to_owned());
    let mut setting = None;
    for (index, step) in plan.steps.iter().enumerate() {
        if setting != Some(step.setting) {
            setting = Some(step.setting);
            ui.add_space(6.0);
            let held = RichText::new(step.setting.word())
                .strong()
                .color(view.palette.accent);
            ui.label(held)
                .on_hover_text(plan.route.holding(step.setting));
        }
        let sign = if step.caution.is_empty() { "" } else { "  !" };
        row(
            ui,
            index + 1,
            format!("{}  {}{sign}", index + 1, step.operation.label()),
        );
    }
}

/// Cautions, what must be put right, and the bar.
fn start_ui(ui: &mut Ui, view: &mut View<'_>, plan: &ShopPlan) {
    for text in CAUTIONS {
        caution_ui(ui, view, text);
    }
    if !plan.before_cutting.is_empty() {
        ui.add_space(6.0);
        ui.label(RichText::new("Do not cut before this is put right or measured").strong());
        for fault in &plan.before_cutting {
            ui.label(RichText::new(format!("- {fault}")).color(view.palette.clash));
        }
    }
    ui.add_space(6.0);
    ui.label(RichText::new("Material").strong());
    for line in stock_words(view.design, view.workshop, plan) {
        ui.label(line);
    }
    ui.label(RichText::new(SPEEDS_ARE).small().weak());
}

/// A caution: prominent, and calm.
pub fn caution_ui(ui: &mut Ui, view: &View<'_>, text: &str) {
    Frame::new()
        .fill(ui.visuals().faint_bg_color)
        .inner_margin(Margin::symmetric(8, 4))
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            ui.horizontal_wrapped(|ui| {
                ui.label(
                    RichText::new("Caution")
                        .strong()
                        .color(view.palette.caution),
                );
                ui.label(text);
            });
        });
    ui.add_space(2.0);
}

fn step_ui(ui: &mut Ui, view: &View<'_>, number: usize, step: &Step, plan: &ShopPlan) {
    ui.label(RichText::new(format!("{number}  {}", step.operation.label())).heading());
    if !step.caution.is_empty() {
        caution_ui(ui, view, step.caution);
    }
    let line = |ui: &mut Ui, head: &str, text: &str| {
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new(head).weak());
            ui.label(text);
        });
    };
    for (head, text) in step.details(view.workshop.lathe.dials) {
        line(ui, head, &text);
    }
    line(ui, "held", plan.route.holding(step.setting));
    ui.add_space(4.0);
    let mut reasons = plan.reasons(step.operation).peekable();
    if reasons.peek().is_some() {
        ui.label(RichText::new("Why here").strong());
    }
    for rule in reasons {
        let words = format!("after \"{}\": {}", rule.before.label(), rule.reason);
        ui.label(RichText::new(words).small());
    }
}

fn picture_ui(
    ui: &mut Ui,
    view: &View<'_>,
    room: Rect,
    canvas: &mut Canvas,
    (scene, revision, words): (&Scene, u64, &str),
) {
    ui.scope_builder(UiBuilder::new().id_salt("picture").max_rect(room), |ui| {
        ui.shrink_clip_rect(room);
        ui.label(RichText::new(words).small().weak());
        let showing = Showing {
            name: "The workpiece after this step",
            scene,
            revision,
            axes: ["z", "r"],
            is_lit: &|_| false,
            light: 0,
            grabs: &|_, _| false,
            palette: view.palette,
            sheet: None,
        };
        canvas.canvas_ui(ui, &showing);
    });
}
