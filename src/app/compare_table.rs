//! The tables of the page Compare: what differs, and every finding with its margin in each design.

use egui::{Align, Align2, FontId, Layout, Rect, RichText, ScrollArea, Sense, Ui, UiBuilder, vec2};

use super::palette::{BODY, SMALL};
use super::severity_sign::{SIGN, sign_ui};
use super::view::{Lit, View};
use crate::checks::FindingKey;
use crate::compare::{
    DifferingRow, EntryId, FindingRow, Subject, Value, differing, finding_rows, signed,
};

/// Which table is seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Which {
    #[default]
    Differs,
    Findings,
}

/// A picked row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Picked {
    Entry(EntryId),
    Finding(FindingKey),
}

/// The tables and what is picked in them.
#[derive(Default)]
pub struct CompareTable {
    which: Which,
    only_differing: bool,
    picked: Option<Picked>,
    state: Option<u64>,
    rows: Vec<DifferingRow>,
    findings: Vec<FindingRow>,
}

/// Height of a row, points.
const ROW: f32 = 20.0;
/// Narrower cells leave the difference to the first design out, points.
const ROOM_FOR_CHANGE: f32 = 150.0;

/// Where the columns stand: the names of the rows, and one for each design.
#[derive(Clone, Copy, Debug)]
pub struct Lanes {
    /// Width of the names, points.
    pub names: f32,
    /// Width of a column, points.
    pub column: f32,
}

impl CompareTable {
    /// Works the tables anew where a design has changed.
    pub fn work(&mut self, subjects: &[Subject<'_>], state: u64) {
        if self.state != Some(state) {
            self.state = Some(state);
            self.rows = differing(subjects);
            self.findings = finding_rows(subjects);
        }
    }

    /// What the picked row lights.
    #[must_use]
    pub fn lit(&self) -> Option<Lit> {
        self.picked.map(|picked| match picked {
            Picked::Entry(id) => Lit::Field(id.field),
            Picked::Finding(key) => Lit::Finding(key),
        })
    }

    /// The table over all the room there is.
    pub fn table_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, names: &[String], lanes: Lanes) {
        self.choice_ui(ui);
        heads_ui(ui, names, lanes);
        match self.which {
            Which::Differs => self.differing_ui(ui, view, lanes),
            Which::Findings => self.findings_ui(ui, view, lanes),
        }
    }

    fn choice_ui(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            let differs = format!("What differs ({})", self.rows.len());
            ui.selectable_value(&mut self.which, Which::Differs, differs)
                .on_hover_text(
                    "every dimension, choice, mating value and limit that is not the same in all",
                );
            let findings = format!("Findings ({})", self.findings.len());
            ui.selectable_value(&mut self.which, Which::Findings, findings)
                .on_hover_text(
                    "every check with its margin in each, the worst in any of them first",
                );
            if self.which == Which::Findings {
                ui.checkbox(&mut self.only_differing, "only where they differ");
            }
            if self.picked.is_some() && ui.button("Put the light out").clicked() {
                self.picked = None;
            }
        });
    }

    fn differing_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, lanes: Lanes) {
        if self.rows.is_empty() {
            ui.label(
                "Nothing differs: every dimension, mating value and limit is the same in all.",
            );
            return;
        }
        let mut toggled = None;
        lines_ui(ui, "differing", self.rows.len(), |ui, place| {
            let Some(row) = self.rows.get(place) else {
                return;
            };
            let picked = self.picked == Some(Picked::Entry(row.id));
            let name = format!("{}: {}", row.id.group.word(), row.id.label());
            let lit = Lit::Field(row.id.field);
            if line_ui(ui, view, (&name, lit, picked), lanes, |ui, view, column| {
                entry_ui(ui, view, row, column, lanes.column);
            }) {
                toggled = Some(Picked::Entry(row.id));
            }
        });
        self.toggle(toggled);
    }

    fn findings_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, lanes: Lanes) {
        let only = self.only_differing;
        let wanted = |row: &&FindingRow| !only || row.differs();
        let rows: Vec<&FindingRow> = self.findings.iter().filter(wanted).collect();
        if rows.is_empty() {
            ui.label("No finding differs.");
            return;
        }
        let mut toggled = None;
        lines_ui(ui, "compared findings", rows.len(), |ui, place| {
            let Some(row) = rows.get(place) else {
                return;
            };
            let picked = self.picked == Some(Picked::Finding(row.key));
            let lit = Lit::Finding(row.key);
            if line_ui(
                ui,
                view,
                (row.key.title(), lit, picked),
                lanes,
                |ui, view, column| {
                    finding_ui(ui, view, row, column);
                },
            ) {
                toggled = Some(Picked::Finding(row.key));
            }
        });
        self.toggle(toggled);
    }

    fn toggle(&mut self, row: Option<Picked>) {
        if row.is_some() {
            self.picked = if self.picked == row { None } else { row };
        }
    }
}

/// The names of the designs over their columns.
fn heads_ui(ui: &mut Ui, names: &[String], lanes: Lanes) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 16.0), Sense::HOVER);
    let ink = ui.visuals().weak_text_color();
    for (name, cell) in names.iter().zip(cells(rect, lanes, names.len())) {
        let painter = ui.painter().with_clip_rect(cell);
        let font = FontId::proportional(SMALL);
        painter.text(cell.left_center(), Align2::LEFT_CENTER, name, font, ink);
    }
}

fn cells(rect: Rect, lanes: Lanes, count: usize) -> impl Iterator<Item = Rect> {
    let first = rect.left() + lanes.names;
    let step = lanes.column;
    let lefts = std::iter::successors(Some(first), move |left| Some(left + step)).take(count);
    lefts.map(move |left| {
        let cell = Rect::from_x_y_ranges(left..=left + step, rect.y_range());
        cell.shrink2(vec2(3.0, 0.0))
    })
}

fn lines_ui(ui: &mut Ui, salt: &str, count: usize, mut line: impl FnMut(&mut Ui, usize)) {
    ui.spacing_mut().item_spacing.y = 0.0;
    ScrollArea::vertical()
        .id_salt(salt)
        .auto_shrink([false, false])
        .show_rows(ui, ROW, count, |ui, range| {
            for place in range {
                line(ui, place);
            }
        });
}

/// One row: its name is a button that lights its place, its cells follow. True where it was pressed.
fn line_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    (name, lit, picked): (&str, Lit, bool),
    lanes: Lanes,
    mut cell_ui: impl FnMut(&mut Ui, &View<'_>, usize),
) -> bool {
    let width = ui.available_width();
    let (rect, row) = ui.allocate_exact_size(vec2(width, ROW), Sense::CLICK);
    if picked || row.contains_pointer() {
        let ground = if picked {
            view.palette.accent_ground
        } else {
            view.palette.border.gamma_multiply(0.4)
        };
        ui.painter().rect_filled(rect, 0.0, ground);
    }
    let of_name = Rect::from_min_size(rect.min, vec2(lanes.names, ROW)).shrink2(vec2(2.0, 0.0));
    let label = within(ui, of_name, |ui| {
        let words = RichText::new(name).size(BODY);
        let button = egui::Button::selectable(picked, words).truncate();
        ui.add(button)
            .on_hover_text("lights its place in every view until it is pressed again")
    });
    let columns = ((rect.width() - lanes.names) / lanes.column.max(1.0) + 0.5).floor();
    for (column, cell) in cells(rect, lanes, whole(columns)).enumerate() {
        within(ui, cell, |ui| cell_ui(ui, view, column));
    }
    if row.contains_pointer() || label.has_focus() {
        view.selection.point_at(lit);
    }
    label.clicked() || row.clicked()
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a count of columns on a screen, not negative; `as` stops at the ends of the range"
)]
fn whole(count: f32) -> usize {
    count.max(0.0) as usize
}

fn within<R>(ui: &mut Ui, rect: Rect, add: impl FnOnce(&mut Ui) -> R) -> R {
    let builder = UiBuilder::new()
        .max_rect(rect)
        .layout(Layout::left_to_right(Align::Center));
    ui.scope_builder(builder, |ui| {
        ui.shrink_clip_rect(rect);
        ui.spacing_mut().item_spacing.x = 4.0;
        add(ui)
    })
    .inner
}

fn entry_ui(ui: &mut Ui, view: &View<'_>, row: &DifferingRow, column: usize, width: f32) {
    let Some(cell) = row.cells.get(column) else {
        return;
    };
    let Some(entry) = cell else {
        ui.label(RichText::new("-").weak())
            .on_hover_text("this design has none");
        return;
    };
    let words = entry.value.words(entry.unit);
    let change = change_words(row, column);
    let hover = match (&change, entry.origin) {
        (Some(change), "") => format!("{words}, {change} against the first"),
        (Some(change), origin) => format!("{words} {origin}, {change} against the first"),
        (None, "") => words.clone(),
        (None, origin) => format!("{words} {origin}"),
    };
    ui.add(egui::Label::new(&words).truncate().selectable(false))
        .on_hover_text(hover);
    if let Some(change) = change.filter(|_| width > ROOM_FOR_CHANGE) {
        let words = RichText::new(change).small().color(view.palette.faint_ink);
        ui.add(egui::Label::new(words).truncate().selectable(false));
    }
}

/// By how much a number differs from that of the first design, where it does.
fn change_words(row: &DifferingRow, column: usize) -> Option<String> {
    let number = |place: usize| {
        let entry = row.cells.get(place)?.as_ref()?;
        match entry.value {
            Value::Number(number) => Some((number, entry.unit)),
            Value::Words(_) | Value::Unknown => None,
        }
    };
    let ((first, _), (own, unit)) = (number(0)?, number(column)?);
    let change = own - first;
    (column > 0 && change.abs() > crate::compare::entry::SAME).then(|| signed(change, unit))
}

fn finding_ui(ui: &mut Ui, view: &View<'_>, row: &FindingRow, column: usize) {
    let Some(Some(cell)) = row.cells.get(column) else {
        return;
    };
    let colour = view.palette.severity(cell.severity);
    sign_ui(ui, view.palette, cell.severity);
    let word = RichText::new(cell.severity.word()).small().color(colour);
    ui.add(egui::Label::new(word).selectable(false));
    let left = (ui.available_width() - SIGN).max(0.0);
    let margin = cell
        .margin
        .map_or_else(String::new, |margin| signed(margin, cell.unit));
    if left > 10.0 && !margin.is_empty() {
        ui.add(egui::Label::new(margin).truncate().selectable(false))
            .on_hover_text(&cell.message);
    }
}
