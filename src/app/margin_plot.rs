//! The margins of findings against one dimension.

use std::collections::BTreeSet;

use egui::{Color32, RichText, Ui};
use egui_plot::{
    Axis as PlotAxis, HLine, HoverPosition, Legend, Line, LineStyle, Plot, PlotPoints, Span, VLine,
};

use super::dimension_axis::{DimensionAxis, present_of};
use super::long_work::LongWork;
use super::palette::Palette;
use super::plot_grid::{mark_words, marks};
use super::room_work::{STILL, Subject};
use super::view::View;
use crate::checks::FindingKey;
use crate::document::RingKey;
use crate::mount::show_number;
use crate::settle::{Axis, Level, MarginCurve, Profile, profile};

/// Values that are judged along the plot.
const VALUES: u32 = 161;
/// The plot shows margins between these, % of the limit.
const FLOOR: f64 = -60.0;
const CEILING: f64 = 140.0;

/// The plot with its choices.
pub struct MarginPlot {
    /// What it runs along.
    pub along: DimensionAxis,
    /// Findings shown though they do not move, or hidden though they do.
    flipped: BTreeSet<FindingKey>,
    /// The finding that is drawn strong.
    pub strong: Option<FindingKey>,
    work: LongWork<(u64, Axis), Profile>,
}

impl Default for MarginPlot {
    fn default() -> Self {
        Self {
            along: DimensionAxis::of(RingKey::LipThickness),
            flipped: BTreeSet::new(),
            strong: None,
            work: LongWork::new("margins"),
        }
    }
}

impl MarginPlot {
    /// Shows one finding against one dimension.
    pub fn look_at(&mut self, dimension: RingKey, finding: FindingKey) {
        if dimension != self.along.key {
            self.flipped.clear();
        }
        self.along.choose(dimension);
        self.strong = Some(finding);
    }

    /// The plot over the room there is.
    pub fn plot_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, subject: &Subject, height: f32) {
        self.along.choose_ui(ui, view, "Along");
        let axis = self.along.axis(view, VALUES);
        let key = (subject.number, axis);
        let of = subject.clone();
        self.work.want(ui.ctx(), &key, STILL, || {
            Box::new(move |cancel, told| profile(&of.design, &of.workshop, axis, cancel, told))
        });
        self.work.progress_ui(ui, "margins");
        let Some((worked, found)) = self.work.result() else {
            ui.allocate_space(egui::vec2(ui.available_width(), height));
            return;
        };
        if found.axis.key != self.along.key {
            ui.allocate_space(egui::vec2(ui.available_width(), height));
            return;
        }
        let fade = if *worked == key { 1.0 } else { 0.4 };
        let shown: Vec<&MarginCurve> = found
            .curves
            .iter()
            .filter(|curve| self.is_shown(curve))
            .collect();
        let drawing = Drawing {
            palette: view.palette,
            fade,
            strong: self.strong,
        };
        drawing.draw(ui, found, &shown, present_of(view, self.along.key), height);
        let found = found.clone();
        self.findings_ui(ui, view, &found);
    }

    fn is_shown(&self, curve: &MarginCurve) -> bool {
        curve.moves() != self.flipped.contains(&curve.finding)
    }

    /// One box for each finding: those that move along the dimension first.
    fn findings_ui(&mut self, ui: &mut Ui, view: &View<'_>, found: &Profile) {
        let moving = found.curves.iter().filter(|curve| curve.moves());
        let still = found.curves.iter().filter(|curve| !curve.moves());
        for (words, curves) in [
            ("move along it", moving.collect::<Vec<_>>()),
            ("do not", still.collect()),
        ] {
            ui.horizontal_wrapped(|ui| {
                ui.label(RichText::new(words).small().weak());
                for curve in curves {
                    let mut on = self.is_shown(curve);
                    let colour = line_of(curve.finding, view.palette).0;
                    let name = RichText::new(curve.finding.title()).small();
                    let name = if on { name.color(colour) } else { name };
                    let asked = ui
                        .checkbox(&mut on, name)
                        .on_hover_text(curve.finding.asks());
                    if asked.changed() && !self.flipped.remove(&curve.finding) {
                        self.flipped.insert(curve.finding);
                    }
                }
            });
        }
    }
}

/// How the curves are drawn.
struct Drawing {
    palette: Palette,
    fade: f32,
    strong: Option<FindingKey>,
}

impl Drawing {
    fn draw(
        &self,
        ui: &mut Ui,
        found: &Profile,
        curves: &[&MarginCurve],
        present: Option<f64>,
        height: f32,
    ) {
        let unit = found.axis.key.unit();
        let key = found.axis.key;
        let plot = Plot::new("margins along a dimension")
            .height(height)
            .legend(Legend::default().follow_insertion_order(true))
            .allow_drag(false)
            .allow_zoom(false)
            .allow_scroll(false)
            .allow_boxed_zoom(false)
            .x_grid_spacer(marks)
            .y_grid_spacer(marks)
            .x_axis_formatter(mark_words)
            .y_axis_formatter(mark_words)
            .default_x_bounds(found.axis.from, found.axis.to)
            .default_y_bounds(FLOOR, CEILING)
            .x_axis_label(format!("{}, {}", key.label().to_lowercase(), unit.sign()))
            .y_axis_label("margin, % of the limit it is judged by")
            .label_formatter(move |position: &HoverPosition<'_>| match position {
                HoverPosition::NearDataPoint {
                    plot_name,
                    position,
                    ..
                } => Some(format!(
                    "{plot_name}: {} % of its limit\nat {} {}",
                    show_number(position.y, 1),
                    key.label().to_lowercase(),
                    unit.show(position.x)
                )),
                HoverPosition::Elsewhere { .. } => None,
            });
        plot.show(ui, |plot| {
            plot.set_plot_bounds_x(found.axis.from..=found.axis.to);
            plot.set_plot_bounds_y(FLOOR..=CEILING);
            for (from, to, level) in stretches(found) {
                let colour = self.faded(match level {
                    Level::Free => self.palette.fine,
                    Level::Caution => self.palette.caution,
                    Level::Clash => self.palette.clash,
                });
                let band = Span::new("", from..=to)
                    .axis(PlotAxis::X)
                    .fill(colour.gamma_multiply(0.16))
                    .border_width(0.0);
                plot.span(band);
            }
            let limit = HLine::new("the limit", 0.0)
                .color(self.faded(self.palette.ink))
                .width(1.0);
            plot.hline(limit);
            for curve in curves {
                let (colour, style) = line_of(curve.finding, self.palette);
                let width = if self.strong == Some(curve.finding) {
                    3.5
                } else {
                    1.6
                };
                for run in curve.runs() {
                    let points: PlotPoints<'_> =
                        run.iter().map(|one| [one.at, 100.0 * one.share]).collect();
                    let line = Line::new(curve.finding.title(), points)
                        .color(self.faded(colour))
                        .style(style)
                        .width(width);
                    plot.line(line);
                }
            }
            if let Some(present) = present {
                let here = VLine::new("the ring as it stands", present)
                    .color(self.palette.accent)
                    .style(LineStyle::dashed_loose())
                    .width(2.0);
                plot.vline(here);
            }
        });
    }

    fn faded(&self, colour: Color32) -> Color32 {
        colour.gamma_multiply(self.fade)
    }
}

/// Runs of one level, from half-way before their first value to half-way behind their last.
fn stretches(found: &Profile) -> Vec<(f64, f64, Level)> {
    let values = found.axis.values();
    let half = match (values.first(), values.get(1)) {
        (Some(first), Some(second)) => (second - first) / 2.0,
        _ => 0.0,
    };
    let mut runs: Vec<(f64, f64, Level)> = Vec::new();
    for (value, level) in values.iter().zip(&found.levels) {
        match runs.last_mut() {
            Some((_, to, known)) if known == level => *to = value + half,
            Some(_) | None => runs.push((value - half, value + half, *level)),
        }
    }
    runs
}

/// Curves differ by their dashes as well as by their colour.
fn line_of(finding: FindingKey, palette: Palette) -> (Color32, LineStyle) {
    let place = FindingKey::ALL
        .iter()
        .position(|key| *key == finding)
        .unwrap_or(0);
    let colours = [
        palette.accent,
        palette.caution,
        palette.note,
        palette.fine,
        palette.clash,
        palette.ink,
    ];
    let styles = [
        LineStyle::Solid,
        LineStyle::dashed_dense(),
        LineStyle::dotted_loose(),
        LineStyle::dashed_loose(),
    ];
    let colour = colours.get(place % colours.len()).copied();
    let style = styles.get((place / colours.len()) % styles.len()).copied();
    (
        colour.unwrap_or(palette.ink),
        style.unwrap_or(LineStyle::Solid),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn levels_make_bands_that_meet_half_way() {
        let found = Profile {
            axis: Axis {
                key: RingKey::LipThickness,
                from: 0.0,
                to: 3.0,
                cells: 4,
            },
            levels: vec![Level::Clash, Level::Free, Level::Free, Level::Caution],
            curves: Vec::new(),
        };
        let bands = stretches(&found);
        assert_eq!(
            bands,
            [
                (-0.5, 0.5, Level::Clash),
                (0.5, 2.5, Level::Free),
                (2.5, 3.5, Level::Caution)
            ]
        );
    }

    #[test]
    fn no_two_findings_are_drawn_alike_within_a_page() {
        let palette = Palette::of(egui::Theme::Light, false);
        for (place, a) in FindingKey::ALL.iter().enumerate() {
            for b in FindingKey::ALL.iter().skip(place + 1).take(23) {
                let (x, y) = (line_of(*a, palette), line_of(*b, palette));
                assert!(x.0 != y.0 || x.1 != y.1, "{a:?} {b:?}");
            }
        }
    }
}
