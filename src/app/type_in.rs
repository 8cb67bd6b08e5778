//! The small field at the pointer for a value that was picked in a drawing.

use egui::{Area, Id, Order, Pos2, RichText, Ui};

use super::field::{shown, typed_ui};
use super::grip::Grip;
use super::view::{Typed, View};
use crate::document::parse_quantity;

/// Width of the box, points.
const WIDTH: f32 = 80.0;

/// A field that is open at the pointer.
#[derive(Clone, Debug)]
pub struct TypeIn {
    grip: Grip,
    at: Pos2,
    fresh: bool,
    /// Why the last text was refused; the box has the keyboard again, so its own memory of it is gone.
    refused: Option<String>,
}

/// How far the typing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// It goes on.
    NotYet,
    /// The value was taken, or given up.
    Over,
}

impl TypeIn {
    /// A field for a value, opened at a place of the screen.
    #[must_use]
    pub const fn new(grip: Grip, at: Pos2) -> Self {
        Self {
            grip,
            at,
            fresh: true,
            refused: None,
        }
    }

    /// The field; Enter takes the value, Escape or a click elsewhere closes it.
    pub fn type_in_ui(&mut self, ui: &Ui, view: &mut View<'_>) -> Ended {
        let Some(value) = self.grip.value(view.evaluation) else {
            return Ended::Over;
        };
        let unit = self.grip.unit();
        let id = Id::unique(("type in", self.grip.label()));
        let mut ended = Ended::NotYet;
        Area::new(Id::unique("type in"))
            .order(Order::Foreground)
            .fixed_pos(self.at + egui::vec2(10.0, 10.0))
            .constrain(true)
            .show(ui.ctx(), |ui| {
                egui::Frame::popup(ui.style())
                    .inner_margin(8.0)
                    .show(ui, |ui| {
                        ui.set_max_width(300.0);
                        ended = ui
                            .horizontal(|ui| {
                                let label = ui.label(RichText::new(self.grip.label()).strong());
                                let (response, typed) =
                                    typed_ui(ui, view, id, &shown(value, unit), WIDTH, "?");
                                let response = response.labelled_by(label.id);
                                ui.label(unit.sign());
                                self.answer(view, &response, typed)
                            })
                            .inner;
                        if let Some(why) = &self.refused {
                            let words = RichText::new(format!("refused: {why}")).small();
                            ui.label(words.color(view.palette.clash));
                        }
                        ui.label(
                            RichText::new("Enter takes it, Escape gives up")
                                .small()
                                .weak(),
                        );
                    });
            });
        ended
    }

    fn answer(&mut self, view: &mut View<'_>, response: &egui::Response, typed: Typed) -> Ended {
        if std::mem::take(&mut self.fresh) {
            response.request_focus();
            return Ended::NotYet;
        }
        let refused = match typed {
            Typed::Nothing if response.has_focus() => return Ended::NotYet,
            Typed::Nothing => return Ended::Over,
            Typed::Finished(text) => parse_quantity(&text, self.grip.unit())
                .map_err(|error| error.to_string())
                .and_then(|value| match self.grip.edit(view.evaluation, value) {
                    Some(edit) => view.wish_edit(edit),
                    None => Ok(()),
                }),
        };
        match refused {
            Ok(()) => Ended::Over,
            Err(why) => {
                self.refused = Some(why);
                response.request_focus();
                Ended::NotYet
            }
        }
    }
}
