//! Two designs over each other, with the metal that one has more or less.

use egui::{Rect, Ui};

use super::canvas::{Canvas, scope_of};
use super::compare_choices::Choices;
use super::compare_views::{OneView, SharedSight, field_of, lit_now};
use super::places::Light;
use super::view::{Lit, View};
use crate::compare::scenes::{plan_overlay, section_overlay};
use crate::compare::{
    Difference, OverlayError, Subject, pattern_difference, places_of, section_difference,
};
use crate::drawing::Scene;

/// What a difference comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Areas {
    /// Of which picture.
    pub what: &'static str,
    /// Metal added and removed, mm2, or why that is not known.
    pub found: Result<[f64; 2], String>,
}

/// The overlay and what it was drawn from.
#[derive(Default)]
pub struct CompareOverlay {
    section: Canvas,
    plan: Canvas,
    drawn: Option<Drawn>,
    serial: u64,
}

struct Drawn {
    state: u64,
    choices: Choices,
    section: Scene,
    plan: Scene,
    /// What the differences come to.
    areas: Vec<Areas>,
}

impl CompareOverlay {
    /// Draws the overlay anew where a design or a choice has changed.
    pub fn draw(&mut self, subjects: &[Subject<'_>], choices: Choices, state: u64) {
        let holds = self
            .drawn
            .as_ref()
            .is_some_and(|drawn| drawn.state == state && drawn.choices == choices);
        if holds {
            return;
        }
        let pair = (subjects.get(choices.pair.0), subjects.get(choices.pair.1));
        let (Some(first), Some(second)) = pair else {
            self.drawn = None;
            return;
        };
        let in_section = section_difference(first, second, choices.cut);
        let in_plan = pattern_difference(first, second);
        let drawn_of = |found: &Result<Difference, OverlayError>| found.clone().unwrap_or_default();
        self.serial += 1;
        self.drawn = Some(Drawn {
            state,
            choices,
            section: section_overlay(first, second, choices.cut, &drawn_of(&in_section)),
            plan: plan_overlay(first, second, choices.side, &drawn_of(&in_plan)),
            areas: vec![
                areas_of("Half-section", &in_section),
                areas_of("Nose and lugs in the plan", &in_plan),
            ],
        });
    }

    /// What the differences come to.
    #[must_use]
    pub fn areas(&self) -> &[Areas] {
        self.drawn
            .as_ref()
            .map_or(&[], |drawn| drawn.areas.as_slice())
    }

    /// The overlay over a rectangle.
    pub fn overlay_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        subjects: &[Subject<'_>],
        rect: Rect,
        picked: Option<Lit>,
        (sections, plans): (&mut SharedSight, &mut SharedSight),
    ) {
        let Some(drawn) = &self.drawn else { return };
        let Some(second) = subjects.get(drawn.choices.pair.1) else {
            return;
        };
        let lit = lit_now(view, picked);
        let light = Light::of_lit(lit, second.evaluation);
        let side = drawn.choices.side;
        let own = field_of(lit).map(|field| places_of(second, field, side));
        let own = own.unwrap_or_default();
        let (left, right) = rect.split_left_right_at_fraction(0.55);
        let mut one = OneView {
            view,
            light: &light,
            serial: self.serial,
        };
        one.one_ui(
            ui,
            (left, "Half-sections over each other", ["z", "r"]),
            (sections, &mut self.section, scope_of(&drawn.section)),
            &drawn.section,
            [&light.in_section(), &own.section],
        );
        one.one_ui(
            ui,
            (right, "Lug patterns over each other", ["x", "y"]),
            (plans, &mut self.plan, scope_of(&drawn.plan)),
            &drawn.plan,
            [&light.in_plan(side), &own.plan],
        );
    }
}

fn areas_of(what: &'static str, found: &Result<Difference, OverlayError>) -> Areas {
    let found = match found {
        Ok(found) => Ok([found.added.area(), found.removed.area()]),
        Err(error) => Err(error.to_string()),
    };
    Areas { what, found }
}
