//! The choices of the page Compare, at its left edge.

use egui::{Id, RichText, ScrollArea, Sense, Stroke, Ui, pos2, vec2};

use super::command::Command;
use super::compare_overlay::Areas;
use super::compared::Compared;
use super::palette::Palette;
use super::text_field::choice_ui;
use super::view::View;
use crate::compare::scenes::ADDED_DEG;
use crate::compare::{Cut, MOST};
use crate::drawing::Role;
use crate::geometry::Side;
use crate::mount::Unit;

/// How the designs stand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Mode {
    /// Each by itself.
    #[default]
    SideBySide,
    /// Two of them over each other.
    Overlay,
}

/// What is chosen; not part of any design.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choices {
    /// How they stand.
    pub mode: Mode,
    /// Where the half-sections are cut.
    pub cut: Cut,
    /// From which side the lug patterns are seen.
    pub side: Side,
    /// Whether lens and body are drawn.
    pub partners: bool,
    /// The places of the two that are laid over each other: the second against the first.
    pub pair: (usize, usize),
}

impl Default for Choices {
    fn default() -> Self {
        Self {
            mode: Mode::default(),
            cut: Cut::default(),
            side: Side::Lens,
            partners: false,
            pair: (0, 1),
        }
    }
}

impl Choices {
    /// Whether a design by itself looks the same under both.
    #[must_use]
    pub fn looks_like(&self, other: &Self) -> bool {
        (self.cut, self.side, self.partners) == (other.cut, other.side, other.partners)
    }

    /// The choices over all the room there is; `areas` says by how much the two laid over each other differ.
    pub fn choices_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        compared: &mut Compared,
        names: &[String],
        areas: &[Areas],
    ) {
        ScrollArea::vertical()
            .id_salt("compare choices")
            .auto_shrink([false, false])
            .show(ui, |ui| {
                for command in [
                    Command::KeepVariant,
                    Command::BringIn,
                    Command::ExportComparison,
                ] {
                    let button = egui::Button::new(command.label()).truncate();
                    if ui.add(button).on_hover_text(command.explains()).clicked() {
                        view.wish(command);
                    }
                }
                ui.add_space(4.0);
                self.views_ui(ui);
                if self.mode == Mode::Overlay {
                    self.pair_ui(ui, view.palette, names, areas);
                }
                ui.add_space(4.0);
                shown_ui(ui, view, compared);
            });
    }

    fn views_ui(&mut self, ui: &mut Ui) {
        ui.horizontal_wrapped(|ui| {
            for (mode, words, hover) in [
                (
                    Mode::SideBySide,
                    "Side by side",
                    "every design by itself, in equal scale, aligned on the flange rear face",
                ),
                (
                    Mode::Overlay,
                    "Overlay",
                    "two designs over each other, with the metal that one has more or less",
                ),
            ] {
                ui.selectable_value(&mut self.mode, mode, words)
                    .on_hover_text(hover);
            }
        });
        ui.label(RichText::new("Half-sections cut").small().weak());
        ui.horizontal_wrapped(|ui| {
            for cut in Cut::ALL {
                ui.selectable_value(&mut self.cut, cut, RichText::new(cut.words()).small())
                    .on_hover_text("of each ring by its own lugs");
            }
        });
        ui.label(RichText::new("Lug patterns seen from the").small().weak());
        ui.horizontal_wrapped(|ui| {
            for (side, words) in [(Side::Lens, "lens side"), (Side::Body, "body side")] {
                ui.selectable_value(&mut self.side, side, RichText::new(words).small());
            }
        });
        if self.mode == Mode::SideBySide {
            ui.checkbox(&mut self.partners, "Lens and body");
        }
    }

    fn pair_ui(&mut self, ui: &mut Ui, palette: Palette, names: &[String], areas: &[Areas]) {
        let places: Vec<(usize, String)> = names.iter().cloned().enumerate().collect();
        let chosen = [
            ("From", self.pair.0, "drawn dashed"),
            ("To", self.pair.1, "drawn in full lines"),
        ]
        .map(|(label, now, hover)| {
            let salt = Id::unique(("overlay", label));
            choice_ui(ui, salt, false, label, &now, &places, hover)
        });
        let [from, to] = chosen;
        self.pair = (from.unwrap_or(self.pair.0), to.unwrap_or(self.pair.1));
        for one in areas {
            areas_ui(ui, palette, one);
        }
    }
}

/// Metal added and removed, each with its hatch as in the picture, its sign and its word.
fn areas_ui(ui: &mut Ui, palette: Palette, areas: &Areas) {
    let [added, removed] = match &areas.found {
        Ok([0.0, 0.0]) => {
            ui.label(format!("{}: no difference", areas.what));
            return;
        }
        Ok(found) => *found,
        Err(why) => {
            ui.label(format!("{}: {why}", areas.what));
            return;
        }
    };
    ui.label(format!("{}:", areas.what));
    for (role, angle_deg, words) in [
        (
            Role::Added,
            ADDED_DEG,
            format!("+ {} added", Unit::Mm2.show(added)),
        ),
        (
            Role::Removed,
            -ADDED_DEG,
            format!("\u{2212} {} removed", Unit::Mm2.show(removed)),
        ),
    ] {
        ui.horizontal(|ui| {
            swatch_ui(ui, palette, role, angle_deg);
            ui.label(words);
        });
    }
}

/// A patch hatched as in the picture.
fn swatch_ui(ui: &mut Ui, palette: Palette, role: Role, angle_deg: f64) {
    let (rect, _) = ui.allocate_exact_size(vec2(24.0, 12.0), Sense::HOVER);
    let painter = ui.painter().with_clip_rect(rect);
    painter.rect_filled(rect, 0.0, palette.tint(role));
    let line = Stroke::new(1.0, palette.line(role));
    let lean = if angle_deg > 0.0 {
        rect.height()
    } else {
        -rect.height()
    };
    let mut left = rect.left() - rect.height();
    while left < rect.right() + rect.height() {
        let (low, high) = (pos2(left, rect.bottom()), pos2(left + lean, rect.top()));
        painter.line_segment([low, high], line);
        left += 5.0;
    }
}

/// Which of all that can be compared stand on the page.
fn shown_ui(ui: &mut Ui, view: &View<'_>, compared: &mut Compared) {
    let candidates = compared.candidates(view.design);
    let shown = candidates.iter().filter(|one| one.is_shown).count();
    ui.label(
        RichText::new(format!("On the page, at most {MOST}"))
            .small()
            .weak(),
    );
    for candidate in candidates {
        let mut is_shown = candidate.is_shown;
        let may_change = is_shown || shown < MOST;
        let words = RichText::new(&candidate.name).small();
        let row = ui
            .add_enabled_ui(may_change, |ui| {
                ui.style_mut().wrap_mode = Some(egui::TextWrapMode::Truncate);
                ui.checkbox(&mut is_shown, words)
                    .on_hover_text(&candidate.name)
            })
            .inner;
        if row.changed() {
            compared.show(candidate.who, is_shown);
        }
    }
}
