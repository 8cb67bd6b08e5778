//! The map: two dimensions against each other, the free region drawn, the present ring marked; a click sets both.

use egui::{Color32, ColorImage, ComboBox, RichText, TextureHandle, TextureOptions, Ui, vec2};
use egui_plot::{HLine, Plot, PlotImage, PlotPoint, PlotTransform, VLine};

use super::command::Command;
use super::dimension_axis::{DimensionAxis, present_of};
use super::edit::Edit;
use super::field::step_of;
use super::long_work::LongWork;
use super::palette::Palette;
use super::plot_grid::{mark_words, marks};
use super::room_work::{STILL, Subject};
use super::view::View;
use crate::document::RingKey;
use crate::settle::{Axis, Cell, Level, Map, map};

/// Cells along a side that may be chosen.
const SIDES: [u32; 3] = [50, 100, 200];

/// What a map is worked for.
type Wanted = (u64, Axis, Axis);

/// A picture of a map, made once.
struct Picture {
    of: Wanted,
    dark: bool,
    texture: TextureHandle,
}

/// The map with its choices.
pub struct RoomMap {
    across: DimensionAxis,
    up: DimensionAxis,
    side: u32,
    work: LongWork<Wanted, Map>,
    picture: Option<Picture>,
}

impl Default for RoomMap {
    fn default() -> Self {
        Self {
            across: DimensionAxis::of(RingKey::LipFaceDepth),
            up: DimensionAxis::of(RingKey::SpigotLength),
            side: 50,
            work: LongWork::new("map of the room"),
            picture: None,
        }
    }
}

impl RoomMap {
    /// The map over the room there is.
    pub fn map_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, subject: &Subject) {
        self.across.choose_ui(ui, view, "Across");
        self.up.choose_ui(ui, view, "Up");
        ui.horizontal_wrapped(|ui| {
            self.fineness_ui(ui);
            ui.label(
                RichText::new("plain: free; dotted: a caution; hatched: a clash")
                    .small()
                    .weak(),
            );
        });
        if self.across.key == self.up.key {
            ui.label("Choose two different dimensions.");
            return;
        }
        let axes = (
            self.across.axis(view, self.side),
            self.up.axis(view, self.side),
        );
        let wanted = (subject.number, axes.0, axes.1);
        let of = subject.clone();
        self.work.want(ui.ctx(), &wanted, STILL, || {
            Box::new(move |cancel, told| {
                map(&of.design, &of.workshop, axes.0, axes.1, cancel, told)
            })
        });
        ui.horizontal(|ui| {
            ui.set_min_height(20.0);
            ui.label(
                RichText::new("a click sets both dimensions; one step of undo")
                    .small()
                    .weak(),
            );
            if self.work.is_called_off(&wanted) && ui.small_button("Work the map out").clicked() {
                self.work.forget();
            }
            self.work.progress_ui(ui, "the map");
        });
        self.picture(ui, view.palette);
        self.plot_ui(ui, view, &wanted);
    }

    fn fineness_ui(&mut self, ui: &mut Ui) {
        let label = ui.label(RichText::new("rings along a side").small());
        let shown = ComboBox::from_id_salt("fineness of the map")
            .selected_text(self.side.to_string())
            .width(60.0)
            .show_ui(ui, |ui| {
                for side in SIDES {
                    ui.selectable_value(&mut self.side, side, side.to_string());
                }
            });
        shown.response.labelled_by(label.id);
    }

    /// Makes the picture of the last map, once for each theme.
    fn picture(&mut self, ui: &Ui, palette: Palette) {
        let Some((of, found)) = self.work.result() else {
            return;
        };
        let dark = ui.visuals().dark_mode;
        let is_there = |one: &Picture| one.of == *of && one.dark == dark;
        if self.picture.as_ref().is_some_and(is_there) {
            return;
        }
        let texture = ui.ctx().load_texture(
            "map of the room",
            image(found, palette),
            TextureOptions::NEAREST,
        );
        self.picture = Some(Picture {
            of: *of,
            dark,
            texture,
        });
    }

    fn plot_ui(&self, ui: &mut Ui, view: &mut View<'_>, wanted: &Wanted) {
        let (across, up) = (wanted.1, wanted.2);
        let size = ui.available_size();
        let plot = Plot::new("map of the room")
            .height((size.y - 30.0).max(160.0))
            .allow_drag(false)
            .allow_zoom(false)
            .allow_scroll(false)
            .allow_boxed_zoom(false)
            .allow_double_click_reset(false)
            .show_grid(false)
            .x_grid_spacer(marks)
            .y_grid_spacer(marks)
            .x_axis_formatter(mark_words)
            .y_axis_formatter(mark_words)
            .x_axis_label(named(across.key))
            .y_axis_label(named(up.key));
        let here = (present_of(view, across.key), present_of(view, up.key));
        let shown = plot.show(ui, |plot| {
            plot.set_plot_bounds_x(across.from..=across.to);
            plot.set_plot_bounds_y(up.from..=up.to);
            if let Some(picture) = &self.picture {
                plot.image(image_of(picture, wanted));
            }
            if let Some(present) = here.0 {
                plot.vline(VLine::new("the ring as it stands", present).color(view.palette.accent));
            }
            if let Some(present) = here.1 {
                plot.hline(HLine::new("the ring as it stands", present).color(view.palette.accent));
            }
        });
        let response = shown.response;
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Canvas, true, self.told()));
        mark_present(ui, &shown.transform, here, view.palette);
        let Some(at) = response.hover_pos().or(response.interact_pointer_pos()) else {
            return;
        };
        let place = shown.transform.value_from_position(at);
        if response.clicked() {
            let sizes = vec![
                (across.key, on_step(across.key, place.x)),
                (up.key, on_step(up.key, place.y)),
            ];
            view.wish(Command::Edit(Edit::Dimensions(sizes)));
        }
        let words = self.cell_words(wanted, place);
        response.on_hover_text_at_pointer(words);
    }

    /// What the ring at a place of the plot says.
    fn cell_words(&self, wanted: &Wanted, place: PlotPoint) -> String {
        let sizes = [(wanted.1.key, place.x), (wanted.2.key, place.y)];
        let mut lines: Vec<String> = sizes
            .iter()
            .map(|(key, value)| format!("{} {}", key.label(), key.unit().show(*value)))
            .collect();
        if let Some((_, found)) = self.work.result().filter(|(of, _)| *of == wanted)
            && let Some(cell) = cell_at(found, place)
        {
            lines.push(match cell.worst {
                Some(finding) => format!("{}: {}", cell.level.word(), finding.title()),
                None => cell.level.word().to_owned(),
            });
        }
        lines.join("\n")
    }

    /// The map for who cannot see it.
    fn told(&self) -> String {
        let Some((_, found)) = self.work.result() else {
            return "Map of the room: being worked".to_owned();
        };
        let cells = || found.rows.iter().flatten();
        let count = |level: Level| cells().filter(|cell| cell.level == level).count();
        format!(
            "Map of the room: {} rings, {} free, {} with a caution, {} with a clash",
            cells().count(),
            count(Level::Free),
            count(Level::Caution),
            count(Level::Clash)
        )
    }
}

/// The picture where it belongs in the plot; faint once it is of another design.
fn image_of(picture: &Picture, wanted: &Wanted) -> PlotImage {
    let (across, up) = (picture.of.1, picture.of.2);
    // A cell stands round its value: half a cell more on every side.
    let wide = |axis: Axis| {
        let cells = f64::from(axis.cells.max(2));
        (axis.to - axis.from) * cells / (cells - 1.0)
    };
    let middle = PlotPoint::new(
        f64::midpoint(across.from, across.to),
        f64::midpoint(up.from, up.to),
    );
    let size = vec2(single(wide(across)), single(wide(up)));
    let same_axes = picture.of.1.key == wanted.1.key && picture.of.2.key == wanted.2.key;
    let fade = match (same_axes, picture.of == *wanted) {
        (_, true) => Color32::WHITE,
        (true, false) => Color32::from_white_alpha(110),
        (false, false) => Color32::TRANSPARENT,
    };
    PlotImage::new("rings", &picture.texture, middle, size)
        .tint(fade)
        .allow_hover(false)
}

fn named(key: RingKey) -> String {
    format!("{}, {}", key.label().to_lowercase(), key.unit().sign())
}

/// A value that a hand can set.
fn on_step(key: RingKey, value: f64) -> f64 {
    let per_unit = (1.0 / step_of(key.unit())).round();
    let (low, high) = key.range();
    ((value * per_unit).round() / per_unit).clamp(low, high)
}

/// The present ring: a ring round where its two lines cross.
fn mark_present(
    ui: &Ui,
    way: &PlotTransform,
    (across, up): (Option<f64>, Option<f64>),
    palette: Palette,
) {
    let (Some(x), Some(y)) = (across, up) else {
        return;
    };
    let at = way.position_from_point(&PlotPoint::new(x, y));
    if way.frame().contains(at) {
        let painter = ui.painter();
        painter.circle_stroke(at, 6.0, egui::Stroke::new(4.0, palette.paper));
        painter.circle_stroke(at, 6.0, egui::Stroke::new(2.0, palette.accent));
    }
}

/// The cell that a place falls into.
fn cell_at(found: &Map, place: PlotPoint) -> Option<Cell> {
    let number = |axis: Axis, value: f64| nearest(&axis.values(), value);
    let row = found.rows.get(number(found.up, place.y)?)?;
    row.get(number(found.across, place.x)?).copied()
}

fn nearest(values: &[f64], value: f64) -> Option<usize> {
    let off = |one: &f64| (one - value).abs();
    let found = values
        .iter()
        .enumerate()
        .min_by(|a, b| off(a.1).total_cmp(&off(b.1)));
    found.map(|(place, _)| place)
}

/// A dot for each cell; the top row is the greatest value. Clashes are hatched and cautions dotted, so that colour is
/// never the only sign.
fn image(found: &Map, palette: Palette) -> ColorImage {
    // Several dots for a cell, or the hatching of a coarse map would be coarser still.
    let dots = 200_usize.div_ceil(found.rows.len().max(1));
    let width = found.rows.first().map_or(0, Vec::len) * dots;
    let height = found.rows.len() * dots;
    let mut image = ColorImage::filled([width, height], Color32::TRANSPARENT);
    for (place, dot) in image.pixels.iter_mut().enumerate() {
        let (x, y) = (place % width.max(1), place / width.max(1));
        let row = found.rows.iter().rev().nth(y / dots);
        let Some(cell) = row.and_then(|row| row.get(x / dots)) else {
            continue;
        };
        *dot = match cell.level {
            Level::Free => palette.fine.gamma_multiply(0.75),
            Level::Caution if x % 5 == 0 && y.is_multiple_of(5) => palette.ink,
            Level::Caution => palette.caution.gamma_multiply(0.45),
            Level::Clash if (x + y) % 8 < 2 => palette.clash.gamma_multiply(0.75),
            Level::Clash => palette.clash.gamma_multiply(0.3),
        };
    }
    image
}

#[expect(clippy::cast_possible_truncation, reason = "a width on the screen")]
fn single(value: f64) -> f32 {
    value as f32
}

#[cfg(test)]
mod tests {
    use super::*;

    fn small() -> Map {
        let axis = |key| Axis {
            key,
            from: 1.0,
            to: 2.0,
            cells: 2,
        };
        let cell = |level| Cell { level, worst: None };
        Map {
            across: axis(RingKey::LipThickness),
            up: axis(RingKey::LipFaceDepth),
            rows: vec![
                vec![cell(Level::Clash), cell(Level::Clash)],
                vec![cell(Level::Clash), cell(Level::Free)],
            ],
        }
    }

    #[test]
    fn the_greatest_values_are_at_the_top_right() {
        let palette = Palette::of(egui::Theme::Light, false);
        let image = image(&small(), palette);
        let [width, height] = image.size;
        let free = palette.fine.gamma_multiply(0.75);
        assert_eq!(image.pixels[width - 1], free);
        assert_ne!(image.pixels[0], free);
        assert_ne!(image.pixels[(height - 1) * width], free);
    }

    #[test]
    fn a_place_falls_into_the_nearest_cell() {
        let at = |x, y| cell_at(&small(), PlotPoint::new(x, y)).unwrap().level;
        assert_eq!(at(1.9, 1.6), Level::Free);
        assert_eq!(at(1.9, 1.4), Level::Clash);
    }

    #[test]
    fn a_click_sets_what_a_hand_can_set() {
        assert!((on_step(RingKey::LipThickness, 1.237_4) - 1.24).abs() < 1e-12);
        assert!(on_step(RingKey::LipThickness, -1.0) > 0.0);
    }
}
