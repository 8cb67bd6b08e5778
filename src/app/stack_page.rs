//! The page Tolerance: what adds up between the lens's infinity and the sensor, and how many rings reach infinity.

use egui::{Frame, Grid, Margin, RichText, ScrollArea, Sense, Ui, vec2};

use super::trial_panel::TrialPanel;
use super::view::View;
use super::working_panel::{lacks_ui, link_ui, working_ui};
use crate::document::{FieldRef, LimitKey, Working};
use crate::mount::{Unit, show_number};
use crate::optics::half_depth_of_focus;
use crate::tolerance::{Contributor, Distribution, RegisterStack, Stack};

/// The page.
#[derive(Default)]
pub struct StackPage {
    trial: TrialPanel,
}

const TITLE: &str = "What adds up at infinity";
/// Width of a full share bar, points.
const BAR: f32 = 90.0;

impl StackPage {
    /// The page over all the room there is, for this revision of the design.
    pub fn stack_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let span = view.design.limits.temperature_span;
        let found = RegisterStack::of(
            view.design,
            &view.evaluation.derivation,
            view.workshop,
            span,
        );
        ScrollArea::vertical()
            .id_salt("tolerance")
            .auto_shrink([false, false])
            .show(ui, |ui| {
                let frame = Frame::new().inner_margin(Margin::symmetric(12, 6));
                frame.show(ui, |ui| match found {
                    Ok(found) => self.found_ui(ui, view, &found, revision),
                    Err(lacks) => {
                        ui.label(RichText::new(TITLE).heading());
                        lacks_ui(ui, view, &lacks);
                    }
                });
            });
    }

    fn found_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, found: &RegisterStack, revision: u64) {
        let depth = half_depth_of_focus(view.design).map(|term| term.value());
        ui.columns_const(|[left, right]| {
            left.vertical(|ui| {
                ui.label(RichText::new(TITLE).heading());
                table_ui(ui, view, &found.stack);
                ui.add_space(6.0);
                sums_ui(ui, view, found);
                reach_ui(ui, view, found, depth.as_ref());
            });
            let limit = depth.as_ref().ok().copied();
            right.vertical(|ui| {
                self.trial.trial_ui(ui, view, &found.stack, limit, revision);
            });
        });
    }
}

fn table_ui(ui: &mut Ui, view: &mut View<'_>, stack: &Stack) {
    Grid::new("stack")
        .striped(true)
        .num_columns(4)
        .show(ui, |ui| {
            for title in ["size", "± mm", "spread", "share of the whole"] {
                ui.label(RichText::new(title).small().strong());
            }
            ui.end_row();
            for (one, share) in stack.contributors.iter().zip(stack.shares()) {
                name_ui(ui, view, one);
                ui.label(show_number(one.reach_mm(), 3));
                ui.label(RichText::new(spread_words(&one.distribution)).small())
                    .on_hover_text(spread_reason(&one.distribution));
                bar_ui(ui, view, share);
                ui.end_row();
            }
        });
}

fn name_ui(ui: &mut Ui, view: &mut View<'_>, one: &Contributor) {
    match one.field {
        Some(field) => link_ui(ui, view, field, &one.name),
        None => {
            ui.label(RichText::new(one.name.as_ref()).small());
        }
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a share from 0 to 1 as a length on the screen"
)]
fn bar_ui(ui: &mut Ui, view: &View<'_>, share: f64) {
    ui.horizontal(|ui| {
        let (rect, _) = ui.allocate_exact_size(vec2(BAR, 10.0), Sense::HOVER);
        let painter = ui.painter();
        painter.rect_filled(rect, 2.0, view.palette.border.gamma_multiply(0.6));
        let mut filled = rect.shrink(2.0);
        filled.set_width(filled.width() * share.clamp(0.0, 1.0) as f32);
        painter.rect_filled(filled, 1.0, view.palette.accent);
        ui.label(RichText::new(format!("{:.1} %", share * 100.0)).small());
    });
}

/// The kind of spread in a word.
const fn spread_words(spread: &Distribution) -> &'static str {
    match spread {
        Distribution::Uniform { .. } => "uniform",
        Distribution::Triangular { .. } => "triangular",
        Distribution::Skewed { .. } => "leaning",
        Distribution::NormalWithin { .. } => "normal, cut off",
        Distribution::Normal { .. } => "normal",
    }
}

/// Why a size spreads so.
const fn spread_reason(spread: &Distribution) -> &'static str {
    match spread {
        Distribution::Uniform { .. } => {
            "only the limits are known: anywhere between them alike (JCGM 100 4.3.7)"
        }
        Distribution::Triangular { .. } => {
            "the turner works toward the middle: rather there than at the limits (JCGM 100 4.3.9)"
        }
        Distribution::Skewed { .. } => "leans toward the limit that leaves metal to take off",
        Distribution::NormalWithin { .. } => {
            "the tolerance as three standard deviations, cut off at the limits"
        }
        Distribution::Normal { .. } => {
            "a measured value: normal by its standard uncertainty; ± is three of them"
        }
    }
}

fn sums_ui(ui: &mut Ui, view: &mut View<'_>, found: &RegisterStack) {
    let stack = &found.stack;
    let (least, greatest) = stack.worst_cases_mm();
    // A tenth of a micrometre: sums of hundredths need it to be told apart.
    let mm = |value| format!("{} mm", show_number(value, 4));
    let rows = [
        (
            "focus error as drawn",
            mm(stack.nominal_mm()),
            "positive: ring too thick, lens too far out".to_owned(),
        ),
        (
            "mean focus error",
            mm(stack.mean_mm()),
            "with the middles of all tolerances".to_owned(),
        ),
        (
            "worst case",
            format!("±{}", mm(stack.worst_case_mm())),
            format!(
                "every size at its limit at once: {} to {}",
                mm(least),
                mm(greatest)
            ),
        ),
        (
            "root sum square",
            format!("±{}", mm(stack.root_sum_square_mm())),
            format!(
                "99.7 % where every spread is centred and normal; {} inflated by 1.5 for others",
                mm(stack.inflated_mm())
            ),
        ),
        (
            "standard uncertainty",
            mm(stack.standard_uncertainty_mm()),
            "by the spread of each size (JCGM 100 5.1.2)".to_owned(),
        ),
    ];
    Grid::new("sums").num_columns(3).show(ui, |ui| {
        for (name, value, says) in rows {
            ui.label(RichText::new(name).small());
            ui.label(RichText::new(value).strong());
            ui.add(egui::Label::new(RichText::new(says).small().weak()).wrap());
            ui.end_row();
        }
    });
    ui.collapsing("Working of worst case and root sum square", |ui| {
        let source = "tolerance stacking, University of Washington, 1995";
        let worst = stack.worst_case().map(|term| ("worst case", term));
        let square = stack
            .root_sum_square()
            .map(|term| ("root sum square", term));
        for (name, term) in worst.into_iter().chain(square) {
            let working = Working::new(name, term, Unit::Mm, source)
                .assuming("the sizes vary independently of each other");
            working_ui(ui, view, &working);
        }
    });
    left_out_ui(ui, view, &found.left_out);
}

fn left_out_ui(ui: &mut Ui, view: &mut View<'_>, left_out: &[FieldRef]) {
    if left_out.is_empty() {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("not counted, because unknown:").small());
        for field in left_out {
            link_ui(ui, view, *field, &field.long_label());
        }
    });
}

fn reach_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    found: &RegisterStack,
    depth: Result<&f64, &Vec<FieldRef>>,
) {
    ui.separator();
    match depth {
        Ok(depth) => {
            let share = found.share_reaching_infinity(*depth) * 100.0;
            ui.label(RichText::new(format!("{share:.1} % of such rings reach infinity")).heading());
            ui.label(
                RichText::new(format!(
                    "in closed form: normal with the mean and the standard uncertainty above (JCGM 100 G.2); a ring counts whose focus error is at most the half depth of focus of {}. A thinner one focuses past infinity and counts.",
                    Unit::Mm.show(*depth)
                ))
                .small(),
            );
        }
        Err(lacks) => {
            ui.label("How many rings reach infinity is not known without the depth of focus.");
            lacks_ui(ui, view, lacks);
        }
    }
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("used warmer or colder than the workshop by").small());
        let field = FieldRef::Limit(LimitKey::TemperatureSpan);
        let span = Unit::K.show(view.design.limits.temperature_span);
        link_ui(ui, view, field, &span);
    });
}
