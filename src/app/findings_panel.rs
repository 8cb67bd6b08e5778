//! The findings, worst first, each with its sign, its word and a bar for the margin.

use egui::{Button, RichText, ScrollArea, Sense, Stroke, Ui, vec2};

use super::edit::Edit;
use super::explain_panel::finding_lines;
use super::palette::Palette;
use super::rows::below_ui;
use super::severity_sign::sign_ui;
use super::view::{Lit, View};
use super::working_panel::{link_ui, working_ui};
use crate::checks::{Finding, Place, Severity};

/// The list over all the room there is.
pub fn findings_ui(ui: &mut Ui, view: &mut View<'_>) {
    heading_ui(ui, view);
    let evaluation = view.evaluation;
    ScrollArea::vertical()
        .id_salt("findings")
        .auto_shrink([false, false])
        .show(ui, |ui| {
            egui::Frame::new()
                .inner_margin(egui::Margin {
                    right: 10,
                    bottom: 8,
                    ..egui::Margin::ZERO
                })
                .show(ui, |ui| {
                    for finding in &evaluation.findings {
                        finding_ui(ui, view, finding);
                    }
                });
        });
}

fn heading_ui(ui: &mut Ui, view: &View<'_>) {
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Findings").heading());
        for severity in [
            Severity::Clash,
            Severity::Caution,
            Severity::Note,
            Severity::Ok,
        ] {
            let count = view.evaluation.count(severity);
            ui.label(
                RichText::new(counted(count, severity))
                    .small()
                    .color(view.palette.severity(severity)),
            );
        }
    });
}

fn counted(count: usize, severity: Severity) -> String {
    match (severity, count) {
        (Severity::Ok, _) | (Severity::Clash | Severity::Caution | Severity::Note, 1) => {
            format!("{count} {}", severity.word())
        }
        (Severity::Clash, _) => format!("{count} clashes"),
        (Severity::Caution, _) => format!("{count} cautions"),
        (Severity::Note, _) => format!("{count} notes"),
    }
}

fn finding_ui(ui: &mut Ui, view: &mut View<'_>, finding: &Finding) {
    let open = view.selection.open_findings.contains(&finding.key);
    let lit = view.selection.lit() == Some(Lit::Finding(finding.key));
    let ground = if lit {
        view.palette.accent_ground
    } else {
        egui::Color32::TRANSPARENT
    };
    let row = egui::Frame::new()
        .fill(ground)
        .inner_margin(3.0)
        .corner_radius(3.0)
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            let mut focused = false;
            ui.horizontal(|ui| {
                sign_ui(ui, view.palette, finding.severity);
                let colour = view.palette.severity(finding.severity);
                ui.label(
                    RichText::new(finding.severity.word())
                        .color(colour)
                        .strong(),
                );
                let bar = finding.share.map(|_| BAR_WIDTH + 6.0).unwrap_or_default();
                let title = Button::new(RichText::new(finding.key.title()).strong())
                    .frame(false)
                    .truncate();
                let width = (ui.available_width() - bar).max(40.0);
                let response = ui
                    .allocate_ui_with_layout(
                        vec2(width, 18.0),
                        egui::Layout::left_to_right(egui::Align::Center),
                        |ui| {
                            ui.set_min_width(width);
                            ui.add(title)
                        },
                    )
                    .inner;
                focused = response.has_focus();
                if response
                    .on_hover_text(finding_lines(finding.key).join("\n"))
                    .clicked()
                {
                    toggle(view, finding);
                }
                if let Some(share) = finding.share {
                    bar_ui(ui, view.palette, finding, share);
                }
            });
            ui.label(RichText::new(&finding.message).small());
            focused
        });
    if row.response.contains_pointer() || row.inner {
        view.selection.point_at(Lit::Finding(finding.key));
    }
    if row.response.interact(Sense::CLICK).clicked() {
        toggle(view, finding);
    }
    if open {
        below_ui(ui, |ui| opened_ui(ui, view, finding));
    }
    ui.separator();
}

fn toggle(view: &mut View<'_>, finding: &Finding) {
    if !view.selection.open_findings.remove(&finding.key) {
        view.selection.open_findings.insert(finding.key);
    }
}

const BAR_WIDTH: f32 = 64.0;

/// A bar from the limit in its middle: to the right inside it, to the left outside.
fn bar_ui(ui: &mut Ui, palette: Palette, finding: &Finding, share: f64) {
    let (rect, response) = ui.allocate_exact_size(vec2(BAR_WIDTH, 10.0), Sense::HOVER);
    ui.painter()
        .rect_filled(rect, 2.0, palette.border.gamma_multiply(0.6));
    let middle = rect.center().x;
    let reach = bar_reach(share) * rect.width() / 2.0;
    let (left, right) = if reach < 0.0 {
        (middle + reach, middle)
    } else {
        (middle, middle + reach)
    };
    let filled = egui::Rect::from_x_y_ranges(left..=right, rect.shrink(2.0).y_range());
    ui.painter()
        .rect_filled(filled, 1.0, palette.severity(finding.severity));
    ui.painter()
        .vline(middle, rect.y_range(), Stroke::new(1.5, palette.ink));
    response.on_hover_text(margin_words(finding, share));
}

/// Half the bar stands for a margin of the whole limit.
#[expect(clippy::cast_possible_truncation, reason = "clamped to one before")]
fn bar_reach(share: f64) -> f32 {
    if share.is_nan() {
        -1.0
    } else {
        share.clamp(-1.0, 1.0) as f32
    }
}

fn margin_words(finding: &Finding, share: f64) -> String {
    let side = if share < 0.0 { "outside" } else { "inside" };
    let margin = finding.margin.map_or_else(String::new, |margin| {
        format!("{} ", finding.unit.show(margin.abs()))
    });
    format!(
        "{margin}{side} the limit, {:.0} % of it",
        share.abs() * 100.0
    )
}

fn opened_ui(ui: &mut Ui, view: &mut View<'_>, finding: &Finding) {
    for line in finding_lines(finding.key) {
        ui.label(RichText::new(line).small().italics());
    }
    let numbers = [
        ("value", finding.value),
        ("limit", finding.limit),
        ("margin", finding.margin),
    ];
    let shown: Vec<String> = numbers
        .into_iter()
        .filter_map(|(word, number)| {
            number.map(|number| format!("{word} {}", finding.unit.show(number)))
        })
        .collect();
    if !shown.is_empty() {
        let share = finding.share.map_or_else(String::new, |share| {
            format!(" ({:.0} % of the limit)", share * 100.0)
        });
        ui.label(RichText::new(format!("{}{share}", shown.join(", "))).small());
    }
    for working in &finding.working {
        working_ui(ui, view, working);
    }
    for place in &finding.places {
        if let Place::Field(field) = place {
            link_ui(ui, view, *field, &format!("go to {}", field.long_label()));
        }
    }
    remedy_ui(ui, view, finding);
}

fn remedy_ui(ui: &mut Ui, view: &mut View<'_>, finding: &Finding) {
    let Some(remedy) = &finding.remedy else {
        return;
    };
    let id = egui::Id::unique(("remedy", finding.key));
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Remedy:").strong());
        ui.label(&remedy.text);
    });
    if let Some(change) = &remedy.change {
        let button = ui
            .button("Apply")
            .accessible_name(format!("Apply the remedy of {}", finding.key.title()));
        if button.on_hover_text(&remedy.text).clicked() {
            match view.wish_edit(Edit::Remedy(change.clone())) {
                Ok(()) => view.typing.forget_refusal(id),
                Err(why) => view.typing.refuse(id, why),
            }
        }
    }
    super::field::refusal_ui(ui, view, id);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_stays_on_its_track() {
        assert!((bar_reach(7.0) - 1.0).abs() < f32::EPSILON);
        assert!((bar_reach(-0.25) + 0.25).abs() < f32::EPSILON);
        assert!((bar_reach(f64::NAN) + 1.0).abs() < f32::EPSILON);
    }

    #[test]
    fn counts_are_said_in_words() {
        assert_eq!(counted(1, Severity::Clash), "1 clash");
        assert_eq!(counted(0, Severity::Caution), "0 cautions");
        assert_eq!(counted(12, Severity::Ok), "12 ok");
    }
}
