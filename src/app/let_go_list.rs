//! Which dimensions may move when a ring is settled: check boxes, each with bounds and a weight.

use std::collections::BTreeMap;

use egui::{Id, RichText, ScrollArea, Ui};

use super::dimension_axis::present_of;
use super::field::refusal_ui;
use super::free_number::{FreeNumber, free_number_ui};
use super::view::View;
use crate::checks::{Change, Severity};
use crate::document::RingKey;
use crate::mount::Unit;
use crate::settle::LetGo;

/// Weights that the search takes.
const WEIGHTS: (f64, f64) = (0.001, 1000.0);

/// How far one dimension may move.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Freedom {
    low: Option<f64>,
    high: Option<f64>,
    weight: Option<f64>,
}

/// The choice.
#[derive(Clone, Debug, Default)]
pub struct LetGoList {
    free: BTreeMap<RingKey, Freedom>,
}

impl LetGoList {
    /// What is let go, in the order of the ring's dimensions.
    #[must_use]
    pub fn let_go(&self) -> Vec<LetGo> {
        self.free
            .iter()
            .map(|(key, freedom)| {
                let whole = LetGo::over_its_range(*key);
                LetGo {
                    low: freedom.low.unwrap_or(whole.low),
                    high: freedom.high.unwrap_or(whole.high),
                    weight: freedom.weight.unwrap_or(whole.weight),
                    ..whole
                }
            })
            .collect()
    }

    /// The list over the room there is.
    pub fn list_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        ui.label(RichText::new("May move").heading());
        ui.horizontal_wrapped(|ui| {
            let named = ui.button("What the findings would change");
            if named
                .on_hover_text("lets go what the remedies of clashes and cautions name")
                .clicked()
            {
                self.free
                    .extend(named_by_remedies(view).map(|key| (key, Freedom::default())));
            }
            if ui.button("Nothing").clicked() {
                self.free.clear();
            }
        });
        ScrollArea::vertical()
            .id_salt("may move")
            .auto_shrink([false, false])
            .show(ui, |ui| {
                ui.set_max_width(ui.available_width() - 12.0);
                for key in RingKey::ALL {
                    self.row_ui(ui, view, *key);
                }
            });
    }

    fn row_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, key: RingKey) {
        let Some(present) = present_of(view, key) else {
            return;
        };
        let mut on = self.free.contains_key(&key);
        let words = format!("{}  {}", key.label(), key.unit().show(present));
        if ui.checkbox(&mut on, words).changed() {
            if on {
                self.free.insert(key, Freedom::default());
            } else {
                self.free.remove(&key);
            }
        }
        if let Some(freedom) = self.free.get_mut(&key) {
            freedom_ui(ui, view, key, freedom);
        }
    }
}

fn freedom_ui(ui: &mut Ui, view: &mut View<'_>, key: RingKey, freedom: &mut Freedom) {
    let salt = Id::unique(("let go", key));
    let boxes = [
        ("from", "lowest", &mut freedom.low, key.unit(), key.range()),
        ("to", "highest", &mut freedom.high, key.unit(), key.range()),
        ("weight", "1", &mut freedom.weight, Unit::One, WEIGHTS),
    ];
    let mut ids = Vec::new();
    ui.horizontal_wrapped(|ui| {
        ui.add_space(18.0);
        for (word, hint, place, unit, range) in boxes {
            ui.label(RichText::new(word).small().weak());
            let name = format!("{} may move: {word}", key.label());
            let number = FreeNumber {
                id: salt.with(word),
                name: &name,
                value: *place,
                unit,
                hint,
                range,
            };
            free_number_ui(ui, view, number, place);
            ids.push(number.id);
        }
    });
    for id in ids {
        refusal_ui(ui, view, id);
    }
}

/// The dimensions that remedies would set.
fn named_by_remedies(view: &View<'_>) -> impl Iterator<Item = RingKey> {
    view.evaluation.findings.iter().filter_map(|finding| {
        let asks = matches!(finding.severity, Severity::Clash | Severity::Caution);
        match finding.remedy.as_ref().filter(|_| asks)?.change {
            Some(Change::Dimension(key, _) | Change::LetGo(key)) => Some(key),
            Some(
                Change::Lugs(_) | Change::LetLugsGo | Change::ThreadHold(_) | Change::Cutter(_),
            )
            | None => None,
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_box_stands_for_all_that_a_dimension_may_be() {
        let mut list = LetGoList::default();
        let freedom = Freedom {
            low: Some(0.9),
            weight: Some(4.0),
            ..Freedom::default()
        };
        list.free.insert(RingKey::LipThickness, freedom);
        let [one] = list.let_go()[..] else {
            panic!("one was let go")
        };
        let (_, highest) = RingKey::LipThickness.range();
        assert_eq!((one.low, one.high, one.weight), (0.9, highest, 4.0));
    }
}
