//! The page Inspection: what is read on the finished ring, what it proves, and what puts the ring right.

use egui::{Button, Frame, Margin, Rect, RichText, ScrollArea, Ui, UiBuilder, vec2};

use super::command::Command;
use super::correction_panel::CorrectionPanel;
use super::corrections_list::corrections_ui;
use super::finished_picture::FinishedPicture;
use super::finished_readings::{FinishedReadings, SEAT, severity_of};
use super::missing_panel::missing_ui;
use super::print_out::PrintOut;
use super::severity_sign::{SIGN, sign_ui};
use super::trial_readings::trial_ui;
use super::view::View;
use crate::checks::Severity;
use crate::document::SizeOf;
use crate::inspection::{Basis, InspectedSize, Inspection, Unjudged, inspect};
use crate::tolerance::Conformity;

/// What is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Asked {
    /// A size.
    Size(SizeOf),
    /// The infinity trial.
    Trial,
    /// What puts the register right.
    Correction,
}

/// The page.
pub struct InspectionPage {
    asked: Asked,
    found: Option<(u64, Option<Inspection>)>,
    readings: FinishedReadings,
    correction: CorrectionPanel,
    picture: FinishedPicture,
}

impl Default for InspectionPage {
    fn default() -> Self {
        Self {
            asked: Asked::Size(SEAT),
            found: None,
            readings: FinishedReadings::default(),
            correction: CorrectionPanel::default(),
            picture: FinishedPicture::default(),
        }
    }
}

const LIST_WIDTH: f32 = 256.0;
const EDITOR_WIDTH: f32 = 330.0;

impl InspectionPage {
    /// The page over all the room there is, for this revision of the design.
    pub fn inspection_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let fresh = self.found.as_ref().is_some_and(|(at, _)| *at == revision);
        if !fresh {
            let found = inspect(view.design, view.workshop, view.evaluation);
            self.found = Some((revision, found));
        }
        let room = ui.available_rect_before_wrap().shrink2(vec2(10.0, 6.0));
        // Taken out and put back: the parts below change the page while they read it.
        let found = self.found.take();
        match found.as_ref().and_then(|(_, found)| found.as_ref()) {
            Some(inspection) => self.parts_ui(ui, view, room, (inspection, revision)),
            None => {
                ui.scope_builder(UiBuilder::new().max_rect(room), |ui| missing_ui(ui, view));
            }
        }
        self.found = found;
        ui.advance_cursor_after_rect(room);
    }

    fn parts_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        room: Rect,
        (found, revision): (&Inspection, u64),
    ) {
        let (list, rest) = room.split_left_right_at_x(room.left() + LIST_WIDTH);
        let (middle, editor) = rest.split_left_right_at_x(rest.right() - EDITOR_WIDTH);
        part_ui(ui, list, "sizes to inspect", |ui| {
            self.list_ui(ui, view, found);
        });
        // A size that the ring no longer has is asked about no more.
        if let Asked::Size(size) = self.asked
            && found.size(size).is_none()
        {
            self.asked = Asked::Size(SEAT);
        }
        part_ui(ui, editor, "what is known of it", |ui| match self.asked {
            Asked::Size(size) => {
                if let Some(one) = found.size(size) {
                    self.readings.readings_ui(ui, view, found, one);
                }
            }
            Asked::Trial => trial_ui(ui, view, found),
            Asked::Correction => {
                let first = self.correction.correction_ui(ui, view, found, revision);
                ui.separator();
                corrections_ui(ui, view, found);
                match first {
                    Some(Basis::SeatReadings) => self.asked = Asked::Size(SEAT),
                    Some(Basis::Trial) => self.asked = Asked::Trial,
                    None => {}
                }
            }
        });
        let middle = middle.shrink2(vec2(10.0, 0.0));
        self.picture
            .picture_ui(ui, view, middle, (found, self.asked, revision));
    }

    fn list_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, found: &Inspection) {
        ui.label(RichText::new("Finished ring").heading());
        tally_ui(ui, found);
        let print = Command::Print(PrintOut::Inspection);
        let button = ui.button(print.label());
        if button.on_hover_text(print.explains()).clicked() {
            view.wish(print);
        }
        ui.add_space(4.0);
        let mut sizes = found.sizes.iter();
        if let Some(seat) = sizes.next() {
            self.size_ui(ui, view, seat);
        }
        let trial = match &found.trial {
            None => (None, "to make"),
            Some(Ok(_)) => (Some(Severity::Ok), "read"),
            Some(Err(_)) => (Some(Severity::Note), "says nothing yet"),
        };
        self.row_ui(ui, view, Asked::Trial, "Infinity trial", trial);
        let made = view.design.corrections.len();
        let words = match (found.usual_basis(), made) {
            (None, 0) => "after readings".to_owned(),
            (_, 1) => "1 made".to_owned(),
            (Some(_), 0) => "proposed".to_owned(),
            (_, made) => format!("{made} made"),
        };
        self.row_ui(ui, view, Asked::Correction, "Correction", (None, &words));
        ui.add_space(6.0);
        ui.label(RichText::new("Other sizes").strong());
        for one in sizes {
            self.size_ui(ui, view, one);
        }
    }

    fn size_ui(&mut self, ui: &mut Ui, view: &View<'_>, one: &InspectedSize) {
        let standing = match &one.judged {
            Ok(judged) => (
                Some(severity_of(judged.verdict)),
                match judged.verdict {
                    Conformity::Inside => "in",
                    Conformity::Outside => "OUT",
                    Conformity::NotProvable => "not provable",
                },
            ),
            Err(Unjudged::NoReadings) => (None, "to read"),
            Err(Unjudged::Readings(_)) => (Some(Severity::Note), "read again"),
            Err(Unjudged::NoInstrument(_)) => (Some(Severity::Note), "no such instrument"),
        };
        let of = one.size.of;
        self.row_ui(ui, view, Asked::Size(of), &of.label(), standing);
    }

    fn row_ui(
        &mut self,
        ui: &mut Ui,
        view: &View<'_>,
        asked: Asked,
        name: &str,
        (severity, standing): (Option<Severity>, &str),
    ) {
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            match severity {
                Some(severity) => sign_ui(ui, view.palette, severity),
                None => {
                    ui.add_space(SIGN + 4.0);
                }
            }
            let button = Button::selectable(self.asked == asked, RichText::new(name).small())
                .right_text(RichText::new(standing).small())
                .truncate()
                .min_size(vec2(ui.available_width(), 18.0));
            let response = ui
                .add(button)
                .accessible_name(format!("{name}, {standing}"));
            if response.clicked() {
                self.asked = asked;
            }
        });
    }
}

/// How many sizes stand how.
fn tally_ui(ui: &mut Ui, found: &Inspection) {
    let tally = found.tally();
    let words = format!(
        "{} in, {} out, {} not provable, {} to read",
        tally.inside, tally.outside, tally.not_provable, tally.to_read
    );
    ui.label(RichText::new(words).small().weak());
}

fn part_ui(ui: &mut Ui, room: Rect, name: &str, add: impl FnOnce(&mut Ui)) {
    let builder = UiBuilder::new().id_salt(name).max_rect(room);
    ui.scope_builder(builder, |ui| {
        ScrollArea::vertical()
            .id_salt(name)
            .auto_shrink([false, false])
            .show(ui, |ui| {
                let margin = Margin {
                    right: 12,
                    ..Margin::ZERO
                };
                Frame::new().inner_margin(margin).show(ui, add);
            });
    });
}
