//! Relative illumination over the image height, one curve for each f-number, the lens's own fall-off apart.

use egui::{Color32, RichText, Ui};
use egui_plot::{Legend, Line, LineStyle, Plot, PlotPoints};

use super::palette::Palette;
use super::plot_grid::{mark_words, marks};
use super::view::View;
use crate::evaluate::LightReport;
use crate::mount::show_number;
use crate::optics::{Light, LightCurve, lost_stops};

/// The plot and its one choice.
#[derive(Default)]
pub struct LightPlot {
    /// Whether the lens's own fall-off is multiplied in.
    with_slant: bool,
}

impl LightPlot {
    /// The plot with its words.
    pub fn light_ui(&mut self, ui: &mut Ui, view: &View<'_>, report: &LightReport, height: f32) {
        ui.checkbox(&mut self.with_slant, "with the lens's own fall-off (cos⁴)")
            .on_hover_text(
                "cos⁴ of the slant to the exit pupil: the lens's own and no fault of the ring",
            );
        let with_slant = self.with_slant;
        let plot = Plot::new("light over height")
            .height(height)
            .legend(
                Legend::default()
                    .follow_insertion_order(true)
                    .position(egui_plot::Corner::LeftBottom),
            )
            .allow_drag(false)
            .allow_zoom(false)
            .allow_scroll(false)
            .allow_boxed_zoom(false)
            .x_grid_spacer(marks)
            .y_grid_spacer(marks)
            .x_axis_formatter(mark_words)
            .y_axis_formatter(mark_words)
            .default_x_bounds(0.0, report.corner_mm)
            .default_y_bounds(0.0, 105.0)
            .x_axis_label("image height, mm from the middle")
            .y_axis_label("light, % of the middle")
            .label_formatter(told);
        plot.show(ui, |plot| {
            for (place, curve) in report.curves.iter().enumerate() {
                plot.line(line_of(curve, place, with_slant, view.palette));
            }
            if !with_slant {
                plot.line(slant(report, view.palette));
            }
        });
        for words in told_corner(report) {
            ui.label(RichText::new(words).small());
        }
    }
}

/// The value under the pointer, with its units.
fn told(position: &egui_plot::HoverPosition<'_>) -> Option<String> {
    match position {
        egui_plot::HoverPosition::NearDataPoint {
            plot_name,
            position,
            ..
        } => Some(format!(
            "{plot_name}\n{} mm from the middle: {} %",
            show_number(position.x, 2),
            show_number(position.y, 1)
        )),
        egui_plot::HoverPosition::Elsewhere { .. } => None,
    }
}

/// Curves differ by their dashes as well as by their colour.
fn style(place: usize, palette: Palette) -> (LineStyle, Color32) {
    let colours = [
        palette.clash,
        palette.caution,
        palette.fine,
        palette.note,
        palette.accent,
    ];
    let styles = [
        LineStyle::Solid,
        LineStyle::dashed_loose(),
        LineStyle::dashed_dense(),
        LineStyle::dotted_loose(),
        LineStyle::dotted_dense(),
    ];
    let place = place % colours.len();
    (
        styles.get(place).copied().unwrap_or(LineStyle::Solid),
        colours.get(place).copied().unwrap_or(palette.ink),
    )
}

fn line_of(curve: &LightCurve, place: usize, with_slant: bool, palette: Palette) -> Line<'static> {
    let (style, colour) = style(place, palette);
    let share = |light: &Light| {
        let slant = if with_slant { light.slant_share } else { 1.0 };
        100.0 * light.clear_share * slant
    };
    let points: PlotPoints<'_> = curve
        .points
        .iter()
        .map(|light| [light.height_mm, share(light)])
        .collect();
    Line::new(format!("f/{}", stop_words(curve.f_number)), points)
        .color(colour)
        .style(style)
        .width(2.0)
}

fn slant(report: &LightReport, palette: Palette) -> Line<'static> {
    let lights = report.curves.first().map(|curve| curve.points.as_slice());
    let points: PlotPoints<'_> = lights
        .unwrap_or_default()
        .iter()
        .map(|light| [light.height_mm, 100.0 * light.slant_share])
        .collect();
    Line::new("cos⁴, the lens alone", points)
        .color(palette.faint_ink)
        .style(LineStyle::Dashed { length: 3.0 })
        .width(1.5)
}

/// An f-number as it is engraved.
#[must_use]
pub fn stop_words(stop: f64) -> String {
    if stop.fract() == 0.0 {
        format!("{stop:.0}")
    } else {
        show_number(stop, 1)
    }
}

/// What the plot comes to, in words.
fn told_corner(report: &LightReport) -> Vec<String> {
    let mut lines = Vec::new();
    let widest = report
        .curves
        .first()
        .and_then(|curve| Some((curve.f_number, curve.points.last()?)));
    let Some((stop, corner)) = widest else {
        return lines;
    };
    let stop = stop_words(stop);
    let at = format!(
        "corner, {} mm from the middle, at f/{stop}",
        show_number(report.corner_mm, 2)
    );
    lines.push(if corner.clear_share > 1.0 - 1e-9 {
        format!("{at}: the ring's bores cut nothing off")
    } else {
        let bore = report
            .worst
            .map(|feature| format!(", most of it by the {}", feature.label()))
            .unwrap_or_default();
        let ends = report.clipping_ends_at.map_or_else(
            || "stopping down never clears it".to_owned(),
            |ends| format!("gone from f/{} on", show_number(ends, 1)),
        );
        format!(
            "{at}: the ring cuts off {} stops{bore}; {ends}",
            show_number(corner.lost_stops, 2)
        )
    });
    lines.push(format!(
        "the lens's own slant takes {} stops there (cos⁴, exit pupil {} mm from the image); a stop is a halving",
        show_number(lost_stops(corner.slant_share), 2),
        show_number(report.pupil_mm, 1)
    ));
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::evaluate::{evaluate, light_of};
    use crate::workshop::Workshop;

    #[test]
    fn an_f_number_is_told_as_engraved() {
        assert_eq!(stop_words(2.0), "2");
        assert_eq!(stop_words(2.8), "2.8");
    }

    #[test]
    fn the_words_say_what_the_lens_alone_takes() {
        let design = demo_designs().unwrap().remove(0);
        let evaluation = evaluate(&design, &Workshop::default_set().unwrap());
        let lines = told_corner(&light_of(&design, &evaluation).unwrap());
        // 0.7832 of the light is log2(1 / 0.7832) = 0.35 stops less.
        assert!(lines[1].contains("0.35 stops"), "{}", lines[1]);
    }
}
