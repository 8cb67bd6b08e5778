//! One dimension and the stretch of it that a plot or a map shows: chosen, or that of its room to move.

use egui::{ComboBox, Id, RichText, Ui};

use super::field::refusal_ui;
use super::free_number::{FreeNumber, free_number_ui};
use super::room_scale::Scale;
use super::view::View;
use crate::document::RingKey;
use crate::mount::Unit;
use crate::settle::Axis;

/// The choice.
#[derive(Clone, Debug)]
pub struct DimensionAxis {
    /// The dimension.
    pub key: RingKey,
    from: Option<f64>,
    to: Option<f64>,
    /// The stretch in force when the dimension was chosen, or its room was first known, and whether it is that of the
    /// room: it does not jump about while the design changes.
    kept: Option<(Scale, bool)>,
}

impl DimensionAxis {
    /// The whole room of a dimension.
    #[must_use]
    pub const fn of(key: RingKey) -> Self {
        Self {
            key,
            from: None,
            to: None,
            kept: None,
        }
    }

    /// Takes another dimension.
    pub fn choose(&mut self, key: RingKey) {
        if key != self.key {
            *self = Self::of(key);
        }
    }

    /// The stretch to be shown.
    pub fn stretch(&mut self, view: &View<'_>) -> Scale {
        let present = present_of(view, self.key).unwrap_or(0.0);
        let room = view
            .room
            .of(self.key)
            .filter(|(_, current)| *current)
            .map(|(room, _)| room);
        // What stood in for a room that was not known gives way to it.
        let kept = self
            .kept
            .filter(|(_, by_room)| *by_room || room.is_none())
            .map(|(scale, _)| scale)
            .filter(|scale| (0.0..=1.0).contains(&scale.share(present)));
        let scale = kept.unwrap_or_else(|| {
            let found = room.map_or_else(
                || stand_in(self.key, present),
                |room| Scale::of(room, present),
            );
            self.kept = Some((found, room.is_some()));
            found
        });
        let (low, high) = self.key.range();
        let from = self.from.unwrap_or(scale.from).max(low);
        let to = self.to.unwrap_or(scale.to).min(high);
        Scale {
            from,
            to: to.max(from + 0.001),
        }
    }

    /// The stretch as so many values.
    pub fn axis(&mut self, view: &View<'_>, cells: u32) -> Axis {
        let Scale { from, to } = self.stretch(view);
        Axis {
            key: self.key,
            from,
            to,
            cells,
        }
    }

    /// The choice of the dimension and of its stretch, under a word such as "across".
    pub fn choose_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, word: &str) {
        let Scale { from, to } = self.stretch(view);
        let id = Id::unique(("stretch", word));
        ui.horizontal_wrapped(|ui| {
            let label = ui.label(word);
            let mut key = self.key;
            let shown = ComboBox::from_id_salt(id)
                .selected_text(key.label())
                .width(170.0)
                .height(420.0)
                .show_ui(ui, |ui| {
                    for one in RingKey::ALL {
                        ui.selectable_value(&mut key, *one, one.label());
                    }
                });
            shown.response.labelled_by(label.id);
            self.choose(key);
            for (end, value) in [("from", from), ("to", to)] {
                ui.label(RichText::new(end).small().weak());
                let name = format!("{word} {end}");
                let number = FreeNumber {
                    id: id.with(end),
                    name: &name,
                    value: Some(value),
                    unit: key.unit(),
                    hint: "",
                    range: key.range(),
                };
                let place = if end == "from" {
                    &mut self.from
                } else {
                    &mut self.to
                };
                free_number_ui(ui, view, number, place);
            }
            ui.label(RichText::new(key.unit().sign()).small().weak());
            if self.from.is_some() || self.to.is_some() {
                let whole = ui
                    .small_button("whole room")
                    .accessible_name(format!("{word}: whole room"));
                if whole.clicked() {
                    *self = Self::of(self.key);
                }
            }
        });
        for end in ["from", "to"] {
            refusal_ui(ui, view, id.with(end));
        }
    }
}

/// What is shown before the room of a dimension is known.
fn stand_in(key: RingKey, present: f64) -> Scale {
    let half = if key.unit() == Unit::Deg { 10.0 } else { 1.0 };
    Scale {
        from: present - half,
        to: present + half,
    }
}

/// The value of a dimension in force.
#[must_use]
pub fn present_of(view: &View<'_>, key: RingKey) -> Option<f64> {
    view.evaluation.derivation.dimension(key)?.value
}
