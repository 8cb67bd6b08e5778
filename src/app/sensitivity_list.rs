//! What a tenth of a millimetre on one dimension costs or gains elsewhere, in words, strongest first.

use egui::{ComboBox, RichText, ScrollArea, Ui};

use super::long_work::LongWork;
use super::room_work::{STILL, Subject};
use super::view::View;
use crate::checks::FindingKey;
use crate::document::RingKey;
use crate::mount::Unit;
use crate::settle::{Kind, Sensitivity, sensitivities};

/// Height of one entry, points.
const ENTRY: f32 = 34.0;

/// The list with its filters.
pub struct SensitivityList {
    dimension: Option<RingKey>,
    finding: Option<FindingKey>,
    work: LongWork<u64, Vec<Sensitivity>>,
}

impl Default for SensitivityList {
    fn default() -> Self {
        Self {
            dimension: None,
            finding: None,
            work: LongWork::new("sensitivity"),
        }
    }
}

impl SensitivityList {
    /// The list over the room there is; gives the pair that was clicked.
    pub fn list_ui(
        &mut self,
        ui: &mut Ui,
        view: &View<'_>,
        subject: &Subject,
    ) -> Option<(RingKey, FindingKey)> {
        let of = subject.clone();
        self.work.want(ui.ctx(), &subject.number, STILL, || {
            Box::new(move |cancel, _| sensitivities(&of.design, &of.workshop, cancel))
        });
        ui.label(RichText::new("What a little more costs or gains").heading());
        ui.horizontal_wrapped(|ui| self.filters_ui(ui));
        self.work.progress_ui(ui, "sensitivity");
        let (worked, all) = self.work.result()?;
        let is_current = *worked == subject.number;
        let passes = |one: &&Sensitivity| {
            self.dimension.is_none_or(|key| key == one.dimension)
                && self.finding.is_none_or(|key| key == one.finding)
        };
        let listed: Vec<&Sensitivity> = all.iter().filter(passes).collect();
        let head = if is_current {
            format!(
                "{} of {}, the strongest first by share of the limit",
                listed.len(),
                all.len()
            )
        } else {
            "before the last change".to_owned()
        };
        ui.label(RichText::new(head).small().weak());
        let mut clicked = None;
        ScrollArea::vertical()
            .id_salt("sensitivities")
            .auto_shrink([false, false])
            .show_rows(ui, ENTRY, listed.len(), |ui, rows| {
                for one in listed.iter().skip(rows.start).take(rows.len()) {
                    if entry_ui(ui, view, one, is_current) {
                        clicked = Some((one.dimension, one.finding));
                    }
                }
            });
        clicked
    }

    fn filters_ui(&mut self, ui: &mut Ui) {
        let label = ui.label(RichText::new("of").small());
        let any = "any dimension";
        let shown = ComboBox::from_id_salt("sensitivity of dimension")
            .selected_text(self.dimension.map_or(any, RingKey::label))
            .width(150.0)
            .show_ui(ui, |ui| {
                ui.selectable_value(&mut self.dimension, None, any);
                for key in RingKey::ALL {
                    ui.selectable_value(&mut self.dimension, Some(*key), key.label());
                }
            });
        shown.response.labelled_by(label.id);
        let label = ui.label(RichText::new("at").small());
        let any = "any finding";
        let shown = ComboBox::from_id_salt("sensitivity at finding")
            .selected_text(self.finding.map_or(any, FindingKey::title))
            .width(130.0)
            .show_ui(ui, |ui| {
                ui.selectable_value(&mut self.finding, None, any);
                for key in FindingKey::ALL {
                    ui.selectable_value(&mut self.finding, Some(*key), key.title());
                }
            });
        shown.response.labelled_by(label.id);
    }
}

fn entry_ui(ui: &mut Ui, view: &View<'_>, one: &Sensitivity, is_current: bool) -> bool {
    let words = said(one);
    let colour = if is_current {
        view.palette.ink
    } else {
        view.palette.faint_ink
    };
    let size = egui::vec2(ui.available_width(), ENTRY - ui.spacing().item_spacing.y);
    let layout = egui::Layout::top_down_justified(egui::Align::LEFT);
    ui.allocate_ui_with_layout(size, layout, |ui| {
        ui.set_min_size(size);
        let button = egui::Button::new(RichText::new(&words).small().color(colour))
            .frame_when_inactive(false)
            .min_size(size)
            .wrap();
        ui.add(button)
            .on_hover_text("click to see it in the plot")
            .clicked()
    })
    .inner
}

/// The step that is talked of: a tenth of a millimetre, a degree.
const fn step_of(unit: Unit) -> (f64, &'static str) {
    if matches!(unit, Unit::Deg) {
        (1.0, "1°")
    } else {
        (0.1, "0.1 mm")
    }
}

/// "0.1 mm more lip thickness gains 0.10 mm at Lip thickness (10 % of the limit)".
fn said(one: &Sensitivity) -> String {
    let (step, step_words) = step_of(one.dimension.unit());
    let dimension = one.dimension.label().to_lowercase();
    let finding = one.finding.title();
    let change = |gain: f64| {
        let word = if gain < 0.0 { "costs" } else { "gains" };
        format!("{word} {}", amount(one.unit, gain.abs()))
    };
    let share = |slope: f64| {
        let scale = if one.slope == 0.0 {
            0.0
        } else {
            one.share_slope / one.slope
        };
        format!("{:.0} %", (100.0 * slope * scale * step).abs())
    };
    match one.kind {
        Kind::Kink { below, above } => format!(
            "{step_words} more {dimension} {} at {finding}, {step_words} less {}",
            change(above * step),
            change(-below * step)
        ),
        Kind::Smooth | Kind::BelowOnly | Kind::AboveOnly => {
            let only = match one.kind {
                Kind::BelowOnly => "; less only is judged alike",
                Kind::AboveOnly => "; more only is judged alike",
                Kind::Smooth | Kind::Kink { .. } => "",
            };
            format!(
                "{step_words} more {dimension} {} at {finding}, {} of its limit{only}",
                change(one.gain(step)),
                share(one.slope)
            )
        }
    }
}

/// A small amount with a digit more than its unit usually has.
fn amount(unit: Unit, value: f64) -> String {
    if unit == Unit::Mm {
        return format!("{value:.3} mm");
    }
    unit.show(value)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lip(slope: f64, kind: Kind) -> Sensitivity {
        Sensitivity {
            dimension: RingKey::LipThickness,
            finding: FindingKey::NoseDepth,
            unit: Unit::Mm,
            slope,
            share_slope: slope,
            kind,
        }
    }

    #[test]
    fn a_cost_and_a_gain_are_told_in_words() {
        assert_eq!(
            said(&lip(-0.4, Kind::Smooth)),
            "0.1 mm more lip thickness costs 0.040 mm at Nose depth, 4 % of its limit"
        );
        assert!(said(&lip(0.4, Kind::Smooth)).contains("gains 0.040 mm"));
    }

    /// In the middle of a span of two ends more and less both cost.
    #[test]
    fn a_kink_tells_both_ways() {
        let kind = Kind::Kink {
            below: 1.0,
            above: -1.0,
        };
        assert_eq!(
            said(&lip(0.0, kind)),
            "0.1 mm more lip thickness costs 0.100 mm at Nose depth, 0.1 mm less costs 0.100 mm"
        );
    }
}
