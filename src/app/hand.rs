//! The hand on a drawing: drags what it holds, nudges what is picked, types into it, and says the value beside it.

use egui::{Area, Event, Id, Key, Order, Pos2, RichText, Ui};

use super::canvas::{Canvas, Shown};
use super::command::Command;
use super::edit::edited;
use super::field::shown;
use super::grip::{Taken, on_step};
use super::hand_keys::{ARROWS, BACK, NEXT, TYPE};
use super::standing::field_standing;
use super::type_in::{Ended, TypeIn};
use super::view::{Lit, View};
use crate::geometry::Point;

/// What one drawing knows of the hand on it.
#[derive(Default)]
pub struct Hand {
    held: Option<Held>,
    picked: Option<Taken>,
    typing: Option<TypeIn>,
    /// Whether an arrow key is down whose steps are one step of undo.
    nudging: bool,
}

/// What is being dragged.
#[derive(Clone, Debug)]
struct Held {
    taken: Taken,
    from: Point,
    /// Why it does not go farther.
    stopped: Option<String>,
}

/// What a drawing tells the hand.
pub struct Graspable<'a> {
    /// What a press at a place of the screen takes hold of.
    pub take: &'a dyn Fn(Pos2) -> Option<Taken>,
    /// A place on each thing that can be grasped, in the order in which the keyboard goes through them, mm.
    pub places: &'a [Point],
}

impl Hand {
    /// Whether something is in the hand.
    #[must_use]
    pub const fn holds(&self) -> bool {
        self.held.is_some()
    }

    /// What is picked, if anything is.
    #[must_use]
    pub const fn picked(&self) -> Option<Taken> {
        self.picked
    }

    /// Does what the pointer and the keys ask for.
    pub fn hand_ui(
        &mut self,
        ui: &Ui,
        view: &mut View<'_>,
        canvas: &mut Canvas,
        seen: &Shown,
        things: &Graspable<'_>,
    ) {
        self.drag(ui, view, canvas, seen, things);
        self.pick_ui(ui, view, canvas, seen, things);
    }

    /// Does what clicks and keys ask for; nothing is dragged.
    pub fn pick_ui(
        &mut self,
        ui: &Ui,
        view: &mut View<'_>,
        canvas: &mut Canvas,
        seen: &Shown,
        things: &Graspable<'_>,
    ) {
        if seen.response.clicked_by(egui::PointerButton::Primary)
            && let Some(at) = seen.response.interact_pointer_pos()
        {
            self.picked = (things.take)(at);
            if let Some(taken) = self.picked {
                seen.response.request_focus();
                view.selection.reveal = Some(taken.grip.field());
            }
        }
        if seen.response.double_clicked()
            && let Some(at) = seen.response.interact_pointer_pos()
        {
            self.typing = (things.take)(at).map(|taken| TypeIn::new(taken.grip, at));
        } else if let Some(typing) = &mut self.typing {
            let ended = typing.type_in_ui(ui, view);
            if ended != Ended::NotYet {
                self.typing = None;
                seen.response.request_focus();
            }
        } else if seen.response.has_focus() {
            self.keys(ui, view, seen, things);
        }
        self.end_nudging(ui, view);
        canvas.arrows_are_taken = self.picked.is_some();
        self.say(ui, view, seen);
    }

    fn drag(
        &mut self,
        ui: &Ui,
        view: &mut View<'_>,
        canvas: &mut Canvas,
        seen: &Shown,
        things: &Graspable<'_>,
    ) {
        if self.held.is_some() && given_up(ui) {
            self.held = None;
            canvas.let_go();
            view.wish(Command::DragGivenUp);
            return;
        }
        if let Some(at) = seen.grabbed_at {
            if self.held.is_none() {
                let pressed = ui.input(|input| input.pointer.press_origin()).unwrap_or(at);
                self.held = (things.take)(pressed).map(|taken| Held {
                    taken,
                    from: seen.way.back(pressed),
                    stopped: None,
                });
                self.picked = self.held.as_ref().map(|held| held.taken);
                self.typing = None;
            }
            if let Some(held) = &mut self.held {
                let fine = ui.input(|input| input.modifiers.shift);
                held.follow(view, seen.way.back(at), fine);
                ui.ctx().set_cursor_icon(egui::CursorIcon::Grabbing);
            }
        }
        if seen.let_go && self.held.take().is_some() {
            view.wish(Command::DragEnded);
            seen.response.request_focus();
        }
    }

    fn keys(&mut self, ui: &Ui, view: &mut View<'_>, seen: &Shown, things: &Graspable<'_>) {
        let pressed =
            |key: Key| ui.input(|input| input.key_pressed(key) && !input.modifiers.command);
        if given_up(ui) {
            self.picked = None;
        }
        let turn = i64::from(pressed(NEXT)) - i64::from(pressed(BACK));
        if turn != 0 {
            self.picked = self.turned(view, seen, things, turn > 0);
            if let Some(taken) = self.picked {
                view.selection.reveal = Some(taken.grip.field());
            }
        }
        let Some(taken) = self.picked else { return };
        if pressed(TYPE) {
            let at = seen.way.at(place_of(view, taken));
            self.typing = Some(TypeIn::new(taken.grip, at));
        }
        for (key, arrow) in ARROWS {
            if pressed(key)
                && let Some(sign) = taken.sign_of(arrow)
            {
                let fine = ui.input(|input| input.modifiers.shift);
                self.nudging |= nudge(view, taken, sign, fine);
            }
        }
    }

    /// The next thing in the order of the keyboard, or the one before; round the ends.
    fn turned(
        &self,
        view: &View<'_>,
        seen: &Shown,
        things: &Graspable<'_>,
        forward: bool,
    ) -> Option<Taken> {
        let count = things.places.len();
        let here = self.picked.and_then(|taken| {
            let at = place_of(view, taken);
            let away = |place: &Point| (place.x - at.x).hypot(place.y - at.y);
            let places = things.places.iter().enumerate();
            places
                .min_by(|(_, one), (_, other)| away(one).total_cmp(&away(other)))
                .map(|(place, _)| place)
        });
        let first = match (here, forward) {
            (None, true) => 0,
            (None, false) => count.checked_sub(1)?,
            (Some(here), true) => here + 1,
            (Some(here), false) => here + count.checked_sub(1)?,
        };
        // What cannot be moved, such as the datum, is passed over.
        (0..count).find_map(|more| {
            let place = if forward {
                first + more
            } else {
                (first + count).checked_sub(more)?
            };
            let at = things.places.get(place % count)?;
            (things.take)(seen.way.at(*at))
        })
    }

    /// The steps of a key that was held are one step of undo, as a drag is.
    fn end_nudging(&mut self, ui: &Ui, view: &mut View<'_>) {
        let down = ui.input(|input| ARROWS.iter().any(|(key, _)| input.key_down(*key)));
        if self.nudging && !down {
            self.nudging = false;
            view.wish(Command::DragEnded);
        }
    }

    /// Shows the value in the hand beside the pointer, or that of what is picked beside it.
    fn say(&self, ui: &Ui, view: &mut View<'_>, seen: &Shown) {
        if self.typing.is_some() {
            return;
        }
        let (taken, stopped, at) = if let Some(held) = &self.held {
            let at = seen.grabbed_at.or(seen.response.hover_pos());
            (held.taken, held.stopped.as_deref(), at)
        } else if let Some(taken) = self.picked.filter(|_| seen.response.has_focus()) {
            (taken, None, Some(seen.way.at(place_of(view, taken))))
        } else {
            return;
        };
        view.selection.point_at(Lit::Field(taken.grip.field()));
        let Some((at, value)) = at.zip(taken.grip.value(view.evaluation)) else {
            return;
        };
        let unit = taken.grip.unit();
        let moved = self.held.is_some() && (value - taken.value).abs() > 1e-9;
        let was = if moved {
            format!(", was {}", shown(taken.value, unit))
        } else {
            String::new()
        };
        let words = format!(
            "{} {} {}{was}",
            taken.grip.label(),
            shown(value, unit),
            unit.sign()
        );
        let standing = field_standing(view.evaluation, taken.grip.field());
        beside_ui(ui, view, seen, at, &words, stopped.unwrap_or(&standing));
    }
}

impl Held {
    fn follow(&mut self, view: &mut View<'_>, to: Point, fine: bool) {
        let step = self.taken.grip.step(fine);
        let value = on_step(self.taken.value_at(self.from, to), step);
        let now = self.taken.grip.value(view.evaluation);
        // Where the hand is back at its start the old value comes back, also one that stands on no step.
        let value = if (value - self.taken.value).abs() < step / 2.0 {
            self.taken.value
        } else {
            value
        };
        if now.is_some_and(|now| (now - value).abs() < 1e-9) {
            self.stopped = None;
            return;
        }
        let Some(edit) = self.taken.grip.edit(view.evaluation, value) else {
            return;
        };
        match edited(view.design, &edit) {
            Ok(_) => {
                self.stopped = None;
                view.wish(Command::Drag(edit));
            }
            Err(fault) => self.stopped = Some(fault.to_string()),
        }
    }
}

/// Where a picked thing is now, mm of the drawing.
fn place_of(view: &View<'_>, taken: Taken) -> Point {
    let value = taken.grip.value(view.evaluation).unwrap_or(taken.value);
    taken.place_at(value)
}

/// Moves what is picked to the next step; false where it cannot go there.
fn nudge(view: &mut View<'_>, taken: Taken, sign: f64, fine: bool) -> bool {
    let Some(value) = taken.grip.value(view.evaluation) else {
        return false;
    };
    let step = taken.grip.step(fine);
    let next = on_step(value + sign * step, step);
    let edit = taken.grip.edit(view.evaluation, next);
    match edit.filter(|edit| edited(view.design, edit).is_ok()) {
        Some(edit) => {
            view.wish(Command::Drag(edit));
            true
        }
        None => false,
    }
}

/// Whether Escape was pressed in this frame.
fn given_up(ui: &Ui) -> bool {
    ui.input(|input| {
        input.events.iter().any(|event| {
            matches!(
                event,
                Event::Key {
                    key: Key::Escape,
                    pressed: true,
                    ..
                }
            )
        })
    })
}

/// Words beside a place, kept inside the window.
fn beside_ui(ui: &Ui, view: &View<'_>, seen: &Shown, at: Pos2, words: &str, more: &str) {
    Area::new(Id::unique(("beside the hand", seen.response.id)))
        .order(Order::Tooltip)
        .interactable(false)
        .fixed_pos(at + egui::vec2(16.0, 14.0))
        .constrain(true)
        .show(ui.ctx(), |ui| {
            egui::Frame::popup(ui.style())
                .inner_margin(6.0)
                .show(ui, |ui| {
                    ui.set_max_width(320.0);
                    ui.add(egui::Label::new(RichText::new(words).strong()).extend());
                    ui.label(RichText::new(more).small().color(view.palette.faint_ink));
                });
        });
}
