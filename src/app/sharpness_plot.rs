//! What a ring too thin or too thick does to a far point, with the depth of focus and the ring as drawn.

use egui::{RichText, Ui};
use egui_plot::{Axis, Corner, HLine, Legend, Line, LineStyle, Plot, PlotPoints, Span, VLine};

use super::light_plot::stop_words;
use super::plot_grid::{mark_words, marks};
use super::view::View;
use crate::evaluate::Sharpness;
use crate::mount::show_number;

/// What is plotted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Shown {
    /// The blur of a star.
    #[default]
    Blur,
    /// The farthest distance that can be sharp.
    Farthest,
}

/// The plot and its one choice.
#[derive(Default)]
pub struct SharpnessPlot {
    shown: Shown,
}

/// The farthest distances are cut off at so many times the one at the end of the depth of focus.
const FARTHEST_SHOWN: f64 = 4.0;

impl SharpnessPlot {
    /// The plot with its words.
    pub fn sharpness_ui(&mut self, ui: &mut Ui, view: &View<'_>, found: &Sharpness, height: f32) {
        ui.horizontal(|ui| {
            ui.radio_value(&mut self.shown, Shown::Blur, "blur of a star, µm");
            ui.radio_value(&mut self.shown, Shown::Farthest, "farthest sharp, m");
        });
        let shown = self.shown;
        let (unit, label, corner) = match shown {
            Shown::Blur => ("µm", "blur on the sensor, µm", Corner::RightBottom),
            Shown::Farthest => ("m", "farthest sharp distance, m", Corner::RightTop),
        };
        let points = points_of(found, shown);
        let plot = Plot::new(("sharpness", label))
            .height(height)
            .legend(
                Legend::default()
                    .follow_insertion_order(true)
                    .position(corner),
            )
            .allow_drag(false)
            .allow_zoom(false)
            .allow_scroll(false)
            .allow_boxed_zoom(false)
            .x_grid_spacer(marks)
            .y_grid_spacer(marks)
            .x_axis_formatter(mark_words)
            .y_axis_formatter(mark_words)
            .include_y(0.0)
            .x_axis_label("ring too thin (-) or too thick (+), mm")
            .y_axis_label(label)
            .label_formatter(move |position| told(position, unit));
        let half = found.half_depth_mm;
        plot.show(ui, |plot| {
            let band = Span::new("depth of focus", -half..=half)
                .axis(Axis::X)
                .fill(view.palette.fine.gamma_multiply(0.18))
                .border_color(view.palette.fine);
            plot.span(band);
            let name = match shown {
                Shown::Blur => "blur, lens at infinity",
                Shown::Farthest => "farthest sharp",
            };
            let curve = Line::new(name, PlotPoints::from(points));
            plot.line(curve.color(view.palette.accent).width(2.0));
            if shown == Shown::Blur {
                let circle = HLine::new("circle of confusion", found.circle_um)
                    .color(view.palette.caution)
                    .style(LineStyle::dashed_dense());
                plot.hline(circle);
            }
            let here = VLine::new("the ring as drawn", found.error_mm)
                .color(view.palette.clash)
                .style(LineStyle::dashed_loose())
                .width(2.0);
            plot.vline(here);
        });
        for words in told_here(found, shown) {
            ui.label(RichText::new(words).small());
        }
    }
}

fn points_of(found: &Sharpness, shown: Shown) -> Vec<[f64; 2]> {
    let blur = found.points.iter().map(|at| [at.error_mm, at.blur_um]);
    let farthest = found
        .points
        .iter()
        .filter_map(|at| Some([at.error_mm, at.farthest_m?]));
    match shown {
        Shown::Blur => blur.collect(),
        Shown::Farthest => {
            let at_the_end = farthest
                .clone()
                .find(|[error, _]| *error >= found.half_depth_mm)
                .map_or(f64::INFINITY, |[_, distance]| distance);
            farthest
                .filter(|[_, distance]| *distance <= FARTHEST_SHOWN * at_the_end)
                .collect()
        }
    }
}

/// The value under the pointer, with its units.
fn told(position: &egui_plot::HoverPosition<'_>, unit: &str) -> Option<String> {
    match position {
        egui_plot::HoverPosition::NearDataPoint {
            plot_name,
            position,
            ..
        } => Some(format!(
            "{plot_name}\n{} mm: {} {unit}",
            show_number(position.x, 3),
            show_number(position.y, 2)
        )),
        egui_plot::HoverPosition::Elsewhere { .. } => None,
    }
}

/// What the plot comes to for the ring as drawn.
fn told_here(found: &Sharpness, shown: Shown) -> Vec<String> {
    // Under half a micrometre is nothing that anybody can see or measure.
    let off = if found.error_mm.abs() < 5e-4 {
        "just right".to_owned()
    } else {
        let side = if found.error_mm < 0.0 {
            "thin"
        } else {
            "thick"
        };
        format!("{} mm too {side}", show_number(found.error_mm.abs(), 3))
    };
    let inside = if found.error_mm.abs() <= found.half_depth_mm {
        "inside"
    } else {
        "outside"
    };
    let mut lines = vec![format!(
        "the ring as drawn is {off}: {inside} the depth of focus of ±{} mm at f/{} (N c, c {} µm)",
        show_number(found.half_depth_mm, 3),
        stop_words(found.f_number),
        show_number(found.circle_um, 1)
    )];
    lines.push(match shown {
        Shown::Blur => "the blur is the error over the f-number, by similar triangles; the lens stands at its infinity mark".to_owned(),
        Shown::Farthest => "f² over the error, plus f (thin lens); a ring too thin reaches infinity before its mark, so nothing is drawn there".to_owned(),
    });
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::evaluate::SharpPoint;

    fn found() -> Sharpness {
        let point = |step: i32| {
            let error_mm = f64::from(step) / 100.0;
            SharpPoint {
                error_mm,
                blur_um: error_mm.abs() * 500.0,
                farthest_m: (step > 0).then(|| 3.364 / error_mm),
            }
        };
        Sharpness {
            f_number: 2.0,
            half_depth_mm: 0.05,
            circle_um: 25.0,
            error_mm: -0.02,
            points: (-20..=20).map(point).collect(),
        }
    }

    #[test]
    fn far_distances_are_cut_off_and_thin_rings_have_none() {
        let points = points_of(&found(), Shown::Farthest);
        assert!(points.iter().all(|[error, _]| *error > 0.0));
        let most = 4.0 * 3.364 / 0.05;
        assert!(points.iter().all(|[_, distance]| *distance <= most + 1e-9));
        assert_eq!(points_of(&found(), Shown::Blur).len(), 41);
    }

    #[test]
    fn the_words_say_where_the_ring_stands() {
        let lines = told_here(&found(), Shown::Blur);
        assert!(
            lines[0].contains("0.02 mm too thin: inside"),
            "{}",
            lines[0]
        );
    }
}
