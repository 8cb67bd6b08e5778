//! The page Compare: designs and variants side by side or over each other, and what differs about them.

use std::path::Path;

use egui::{Rect, RichText, Ui, UiBuilder, pos2, vec2};

use super::compare_choices::{Choices, Mode};
use super::compare_column::{HEAD, head_ui};
use super::compare_overlay::CompareOverlay;
use super::compare_table::{CompareTable, Lanes};
use super::compare_views::CompareViews;
use super::compared::{Column, Compared, Open};
use super::files::FileError;
use super::sight::Sight;
use super::split::{Lie, Split};
use super::view::View;
use crate::compare::{Subject, distinct_names};
use crate::document::Design;
use crate::geometry::Side;

/// The page.
pub struct ComparePage {
    compared: Compared,
    /// What is chosen.
    choices: Choices,
    views: CompareViews,
    overlay: CompareOverlay,
    table: CompareTable,
    split: Split,
}

impl Default for ComparePage {
    fn default() -> Self {
        Self {
            compared: Compared::default(),
            choices: Choices::default(),
            views: CompareViews::default(),
            overlay: CompareOverlay::default(),
            table: CompareTable::default(),
            split: Split::new(
                Lie::Stacked,
                "Edge between views and tables",
                0.66,
                (330.0, 150.0),
            ),
        }
    }
}

/// Width of the choices and of the names of the rows, points.
const NAMES: f32 = 196.0;
/// Widest column: two designs on a wide screen stand side by side, not at its ends.
const WIDEST: f32 = 900.0;

impl ComparePage {
    /// What is chosen, for an export of what is seen.
    #[must_use]
    pub const fn choices(&self) -> Choices {
        self.choices
    }

    /// Brings the design of a file in; false where it waits among those left out.
    ///
    /// # Errors
    /// The file cannot be read; nothing is changed then.
    pub fn bring_in(&mut self, path: &Path, open: &Design) -> Result<bool, FileError> {
        self.compared.bring_in(path, open)
    }

    /// Takes a design that was brought in out again.
    pub fn take_out(&mut self, number: u64) {
        self.compared.take_out(number);
    }

    /// What stands on the page, each under its name; also where the page was not looked at since the last change.
    pub fn shown<'a>(&'a mut self, open: Open<'a>, revision: u64) -> Vec<Subject<'a>> {
        while self.compared.follow(open, revision) {}
        self.compared.shown(open).1
    }

    /// Looks at the same in all drawings.
    pub const fn look(&mut self, at: Sight) {
        self.views.sections.sight = at;
        self.views.plans.sight = at;
    }

    /// Zooms all half-sections by a factor.
    pub const fn zoom_by(&mut self, factor: f64) {
        self.views.sections.zoom_by(factor);
    }

    /// Sees the lug patterns from the other side.
    pub const fn turn(&mut self) {
        self.choices.side = match self.choices.side {
            Side::Lens => Side::Body,
            Side::Body => Side::Lens,
        };
    }

    /// The page over all the room there is, for this revision of the design.
    pub fn compare_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let open = Open::of(view);
        if self.compared.follow(open, revision) {
            ui.ctx().request_repaint();
        }
        let state = self.compared.state();
        let room = ui.available_rect_before_wrap();
        let (upper, lower) = self.split.split_ui(ui, room, view.palette);
        let names = self.names(open);
        let most = names.len().saturating_sub(1);
        self.choices.pair = (self.choices.pair.0.min(most), self.choices.pair.1.min(most));
        let choices = Rect::from_min_size(upper.min, vec2(NAMES, upper.height()));
        part_ui(ui, choices.shrink2(vec2(6.0, 3.0)), |ui| {
            let areas = self.overlay.areas();
            self.choices
                .choices_ui(ui, view, &mut self.compared, &names, areas);
        });
        let (columns, subjects) = self.compared.shown(open);
        self.table.work(&subjects, state);
        let lanes = lanes(room, columns.len());
        let upper = Upper {
            rect: upper,
            lanes,
            lit: self.table.lit(),
        };
        heads_ui(ui, view, &columns, &subjects, upper);
        let below = upper.below();
        match self.choices.mode {
            Mode::SideBySide => {
                self.views.draw(&columns, &subjects, self.choices);
                let rects = upper.columns(subjects.len(), below);
                self.views
                    .views_ui(ui, view, &subjects, &rects, self.choices, upper.lit);
            }
            Mode::Overlay => {
                self.overlay.draw(&subjects, self.choices, state);
                let sights = (&mut self.views.sections, &mut self.views.plans);
                self.overlay
                    .overlay_ui(ui, view, &subjects, below, upper.lit, sights);
            }
        }
        part_ui(ui, lower.shrink2(vec2(4.0, 3.0)), |ui| {
            if subjects.len() < 2 {
                alone_ui(ui);
            } else {
                self.table.table_ui(ui, view, &names, lanes);
            }
        });
        ui.advance_cursor_after_rect(room);
    }

    fn names(&self, open: Open<'_>) -> Vec<String> {
        let (_, subjects) = self.compared.shown(open);
        distinct_names(subjects.iter().map(|subject| subject.name))
    }
}

/// The upper part of the page, right of the choices.
#[derive(Clone, Copy)]
struct Upper {
    rect: Rect,
    lanes: Lanes,
    lit: Option<super::view::Lit>,
}

impl Upper {
    /// What is left under the heads.
    fn below(&self) -> Rect {
        let left = self.rect.left() + self.lanes.names;
        Rect::from_min_max(pos2(left, self.rect.top() + HEAD), self.rect.max)
    }

    /// The columns of a stretch.
    fn columns(&self, count: usize, within: Rect) -> Vec<Rect> {
        let lefts =
            std::iter::successors(Some(within.left()), |left| Some(left + self.lanes.column));
        lefts
            .take(count)
            .map(|left| Rect::from_x_y_ranges(left..=left + self.lanes.column, within.y_range()))
            .collect()
    }
}

fn heads_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    columns: &[&Column],
    subjects: &[Subject<'_>],
    upper: Upper,
) {
    let top = upper.rect.top();
    let left = upper.rect.left() + upper.lanes.names;
    let heads = Rect::from_min_max(pos2(left, top), pos2(upper.rect.right(), top + HEAD));
    let rects = upper.columns(subjects.len(), heads);
    for ((column, subject), rect) in columns.iter().zip(subjects).zip(rects) {
        part_ui(ui, rect.shrink2(vec2(4.0, 3.0)), |ui| {
            head_ui(ui, view, column, subject);
        });
        let edge = egui::Stroke::new(1.0, view.palette.border);
        ui.painter().vline(rect.left(), upper.rect.y_range(), edge);
    }
}

/// How wide the columns are.
fn lanes(room: Rect, count: usize) -> Lanes {
    let count = u16::try_from(count.max(1)).unwrap_or(1);
    let column = ((room.width() - NAMES - 8.0) / f32::from(count)).min(WIDEST);
    Lanes {
        names: NAMES,
        column,
    }
}

fn alone_ui(ui: &mut Ui) {
    ui.label(RichText::new("There is one design on the page.").strong());
    ui.label(
        "Keep the ring as a variant and change it on the page Design, or bring in the design of another file: by the \
         button, or drop the file here. Both then stand side by side, with everything that differs in this place.",
    );
}

fn part_ui(ui: &mut Ui, rect: Rect, add: impl FnOnce(&mut Ui)) {
    ui.scope_builder(UiBuilder::new().max_rect(rect), |ui| {
        ui.shrink_clip_rect(rect);
        add(ui);
    });
}
