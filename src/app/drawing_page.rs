//! The page Drawing: the sheet as it prints, live, with everything that can be chosen for it.

use egui::{Pos2, Rect, RichText, ScrollArea, Ui, UiBuilder, vec2};

use super::canvas::{Canvas, Showing, Shown, tag_at};
use super::command::Command;
use super::dimension_list::DimensionList;
use super::edit::{Edit, edited};
use super::grip::{Follow, Grip, Taken};
use super::hand::{Graspable, Hand};
use super::missing_panel::{missing_ui, ring_is_whole};
use super::sheet_choices::sheet_choices_ui;
use super::sheet_edit::SheetEdit;
use super::sight::ToScreen;
use super::split::{Lie, Split};
use super::view::View;
use crate::document::{DimensionId, RingKey};
use crate::drawing::ring_sheet::{Laid, format_of, lay_out};
use crate::drawing::{RingSheet, SheetDimension, SheetError};
use crate::geometry::Point;

/// The page.
pub struct DrawingPage {
    /// The sheet, for zooming by command.
    pub canvas: Canvas,
    laid: Option<Laid>,
    drawn: Option<(u64, Result<RingSheet, SheetError>)>,
    dimensions: DimensionList,
    held: Option<Held>,
    hand: Hand,
    side: Split,
}

/// A dimension in the hand.
#[derive(Clone, Copy, Debug)]
struct Held {
    id: DimensionId,
    /// Where on the sheet it was taken hold of, mm.
    from: Point,
    /// How far it had been moved before, mm.
    moved_mm: (f64, f64),
}

impl Default for DrawingPage {
    fn default() -> Self {
        Self {
            canvas: Canvas::default(),
            laid: None,
            drawn: None,
            dimensions: DimensionList::default(),
            held: None,
            hand: Hand::default(),
            side: Split::new(
                Lie::SideBySide,
                "Edge between sheet and choices",
                0.76,
                (520.0, 290.0),
            ),
        }
    }
}

impl DrawingPage {
    /// The page over all the room there is, for this revision of the design.
    pub fn drawing_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let room = ui.available_rect_before_wrap();
        let (left, right) = self.side.split_ui(ui, room, view.palette);
        self.draw(view, revision);
        part_ui(ui, left, |ui| {
            if ring_is_whole(view) {
                self.sheet_ui(ui, view, revision);
            } else {
                missing_ui(ui, view);
            }
        });
        part_ui(ui, right, |ui| self.choices_ui(ui, view));
        ui.advance_cursor_after_rect(room);
    }

    /// Draws the sheet anew where the design has changed; where only dimensions were moved the views keep their places.
    fn draw(&mut self, view: &View<'_>, revision: u64) {
        if self
            .drawn
            .as_ref()
            .is_some_and(|(drawn, _)| *drawn == revision)
        {
            return;
        }
        let (design, evaluation) = (view.design, view.evaluation);
        let sheet = match self.laid.take().filter(|laid| laid.holds_for(design)) {
            Some(laid) => Ok(laid),
            None => lay_out(design, evaluation),
        };
        let drawn = sheet.and_then(|laid| {
            let drawn = laid.drawn(design, evaluation);
            self.laid = Some(laid);
            drawn
        });
        self.drawn = Some((revision, drawn));
    }

    fn sheet_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let Some((_, drawn)) = &self.drawn else {
            return;
        };
        let sheet = match drawn {
            Ok(sheet) => sheet,
            Err(error) => {
                ui.strong("Sheet");
                ui.label(RichText::new(error.to_string()).color(view.palette.clash));
                return;
            }
        };
        heading_ui(ui, view, sheet);
        let chosen = self.dimensions.chosen;
        let lit = |tag: u32| {
            let id = dimension_of(sheet, tag).map(|dimension| dimension.id);
            id.is_some() && (id == chosen || id == self.held.map(|held| held.id))
        };
        let grabs = |way: &ToScreen, at: Pos2| grabbed(sheet, way, at).is_some();
        let light = sheet
            .dimensions
            .iter()
            .find(|dimension| lit(dimension.tag))
            .map_or(0, |dimension| u64::from(dimension.tag));
        let showing = Showing {
            name: "Drawing as it prints",
            scene: &sheet.scene,
            revision,
            axes: ["x", "y"],
            is_lit: &lit,
            light,
            grabs: &grabs,
            palette: view.palette.printed(),
            sheet: Some(format_of(view.design).line_group()),
        };
        let shown = self.canvas.canvas_ui(ui, &showing);
        let under = shown
            .response
            .hover_pos()
            .and_then(|at| grabbed(sheet, &shown.way, at));
        if under.is_some() || self.held.is_some() {
            ui.ctx().set_cursor_icon(egui::CursorIcon::Grab);
        }
        if let Some(dimension) = under {
            if shown.response.clicked_by(egui::PointerButton::Primary) {
                self.dimensions.chosen = Some(dimension.id);
                self.dimensions.jump = true;
            }
            if !shown.response.dragged() {
                let words = format!(
                    "{}\ndrag to move it, click to choose it{}",
                    dimension.id.words(),
                    key_of(dimension.id).map_or("", |_| ", double-click to type its value")
                );
                shown.response.clone().on_hover_text_at_pointer(words);
            }
        }
        if let Some(at) = shown.grabbed_at {
            let pressed = ui.input(|input| input.pointer.press_origin());
            let held = self.held.or_else(|| {
                let from = pressed.unwrap_or(at);
                let dimension = grabbed(sheet, &shown.way, from)?;
                Some(Held {
                    id: dimension.id,
                    from: shown.way.back(from),
                    moved_mm: view.design.sheet.moved_mm(dimension.id),
                })
            });
            self.held = held;
            if let Some(held) = held {
                drag(view, held, shown.way.back(at));
            }
        }
        let given_up = ui.input(|input| input.key_pressed(egui::Key::Escape));
        if self.held.is_some() && given_up {
            self.held = None;
            self.canvas.let_go();
            view.wish(Command::DragGivenUp);
        } else if shown.let_go {
            self.held = None;
            view.wish(Command::DragEnded);
        }
        let on = OnSheet {
            hand: &mut self.hand,
            canvas: &mut self.canvas,
            dimensions: &mut self.dimensions,
        };
        on.pick_ui(ui, view, sheet, &shown);
    }

    fn choices_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        ui.horizontal_wrapped(|ui| {
            let is_drawn = matches!(&self.drawn, Some((_, Ok(_))));
            for (command, words) in [
                (Command::Export, "Export…"),
                (Command::CopyDrawing, "Copy picture"),
            ] {
                let button = egui::Button::new(words);
                let response = ui
                    .add_enabled(is_drawn, button)
                    .on_hover_text(command.explains());
                if response.clicked() {
                    view.wish(command);
                }
            }
        });
        let sheet = self
            .drawn
            .as_ref()
            .and_then(|(_, drawn)| drawn.as_ref().ok());
        let fitted = sheet.map(|sheet| sheet.scale);
        let on_sheet: Vec<DimensionId> = sheet.map_or_else(Vec::new, |sheet| {
            sheet
                .dimensions
                .iter()
                .map(|dimension| dimension.id)
                .collect()
        });
        ScrollArea::vertical()
            .id_salt("sheet choices")
            .auto_shrink([false, false])
            .show(ui, |ui| {
                sheet_choices_ui(ui, view, fitted);
                self.dimensions.list_ui(ui, view, &on_sheet);
            });
    }
}

/// The hand on the sheet, and what it picks.
struct OnSheet<'a> {
    hand: &'a mut Hand,
    canvas: &'a mut Canvas,
    dimensions: &'a mut DimensionList,
}

impl OnSheet<'_> {
    /// Values are picked, nudged and typed into where they are drawn; a drag moves the lettering instead.
    fn pick_ui(self, ui: &Ui, view: &mut View<'_>, sheet: &RingSheet, shown: &Shown) {
        let evaluation = view.evaluation;
        let take = |at: Pos2| {
            let grip = Grip::Dimension(key_of(grabbed(sheet, &shown.way, at)?.id)?);
            Some(Taken {
                grip,
                follow: Follow::Keys,
                place: shown.way.back(at),
                value: grip.value(evaluation)?,
            })
        };
        let sized = sheet
            .dimensions
            .iter()
            .filter(|dimension| key_of(dimension.id).is_some());
        let places: Vec<Point> = sized
            .filter_map(|dimension| Some(dimension.extent()?.centre()))
            .collect();
        let things = Graspable {
            take: &take,
            places: &places,
        };
        let before = self.hand.picked();
        self.hand.pick_ui(ui, view, self.canvas, shown, &things);
        if let Some(picked) = self.hand.picked().filter(|now| Some(*now) != before) {
            let under = grabbed(sheet, &shown.way, shown.way.at(picked.place));
            self.dimensions.chosen = under.map(|dimension| dimension.id);
            self.dimensions.jump = true;
        }
    }
}

/// Scale, paper, and what is not on the sheet.
fn heading_ui(ui: &mut Ui, view: &View<'_>, sheet: &RingSheet) {
    ui.horizontal_wrapped(|ui| {
        ui.strong("Sheet");
        let mut words = format!("{}, {}", format_of(view.design).words(), sheet.scale);
        if !sheet.left_out.is_empty() {
            words.push_str("; no room for ");
            words.push_str(&sheet.left_out.join(", "));
        }
        ui.label(RichText::new(words).small().weak());
        let hidden = view
            .design
            .sheet
            .overrides
            .iter()
            .filter(|own| own.hidden)
            .count();
        if hidden > 0 {
            let words = format!("{hidden} hidden by hand: the sheet may not be complete");
            ui.label(RichText::new(words).small().color(view.palette.caution));
        }
    });
}

/// The dimension of the ring that is typed into where this one is drawn.
const fn key_of(id: DimensionId) -> Option<RingKey> {
    match id {
        DimensionId::Size(key) => Some(key),
        DimensionId::Relief => Some(RingKey::ReliefWidth),
        DimensionId::LockHole => Some(RingKey::LockHoleDiameter),
        DimensionId::LeadIn => Some(RingKey::LugLeadIn),
        DimensionId::Thread
        | DimensionId::DatumFlange
        | DimensionId::DatumSpigot
        | DimensionId::SeatParallelism
        | DimensionId::ThreadRunOut
        | DimensionId::FlangeTexture
        | DimensionId::Between(..) => None,
    }
}

fn dimension_of(sheet: &RingSheet, tag: u32) -> Option<&SheetDimension> {
    sheet
        .dimensions
        .iter()
        .find(|dimension| dimension.tag == tag)
}

/// The dimension under the pointer: by its lettering first, then by its lines.
fn grabbed<'a>(sheet: &'a RingSheet, way: &ToScreen, at: Pos2) -> Option<&'a SheetDimension> {
    let place = way.back(at);
    let by_text = sheet.dimensions.iter().find(|dimension| {
        let covers = |text: &crate::drawing::TextBox| text.grown(0.8).meets_line(place, place);
        dimension.boxes.iter().any(covers)
    });
    by_text.or_else(|| dimension_of(sheet, tag_at(&sheet.scene, way, at)?))
}

/// Moves what is held to a place of the sheet, in quarters of a millimetre.
fn drag(view: &mut View<'_>, held: Held, to: Point) {
    let quarter = |mm: f64| (mm * 4.0).round() / 4.0;
    let (right, up) = held.moved_mm;
    let moved = (
        quarter(right + to.x - held.from.x),
        quarter(up + to.y - held.from.y),
    );
    let edit = Edit::Sheet(SheetEdit::Move(held.id, moved));
    if moved != view.design.sheet.moved_mm(held.id) && edited(view.design, &edit).is_ok() {
        view.wish(Command::Drag(edit));
    }
}

fn part_ui(ui: &mut Ui, rect: Rect, add: impl FnOnce(&mut Ui)) {
    ui.scope_builder(
        UiBuilder::new().max_rect(rect.shrink2(vec2(6.0, 3.0))),
        |ui| {
            ui.shrink_clip_rect(rect);
            add(ui);
        },
    );
}
