//! The page Room: margins along a dimension with what a little more costs, the map over two, settling.

use egui::{Frame, Margin, Rect, RichText, Ui, UiBuilder};

use super::margin_plot::MarginPlot;
use super::missing_panel::{missing_ui, ring_is_whole};
use super::room_map::RoomMap;
use super::room_work::Subject;
use super::sensitivity_list::SensitivityList;
use super::settle_panel::SettlePanel;
use super::split::{Lie, Split};
use super::view::View;

/// What the page shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Tool {
    /// Margins along one dimension, and sensitivities.
    #[default]
    Margins,
    /// The map over two dimensions.
    Map,
    /// The nearest ring without a clash.
    Settle,
}

impl Tool {
    const ALL: [Self; 3] = [Self::Margins, Self::Map, Self::Settle];

    const fn title(self) -> &'static str {
        match self {
            Self::Margins => "Margins",
            Self::Map => "Map",
            Self::Settle => "Settle",
        }
    }

    const fn explains(self) -> &'static str {
        match self {
            Self::Margins => {
                "every margin along one dimension, and what a little more costs or gains"
            }
            Self::Map => {
                "two dimensions against each other: where the ring is free, and where it clashes"
            }
            Self::Settle => "the nearest ring without a clash, moving only what is let go",
        }
    }
}

/// The page.
pub struct RoomPage {
    tool: Tool,
    margins: MarginPlot,
    sensitivities: SensitivityList,
    map: RoomMap,
    settle: SettlePanel,
    beside_margins: Split,
    beside_outcome: Split,
}

impl Default for RoomPage {
    fn default() -> Self {
        let split = |name, share| Split::new(Lie::SideBySide, name, share, (300.0, 280.0));
        Self {
            tool: Tool::default(),
            margins: MarginPlot::default(),
            sensitivities: SensitivityList::default(),
            map: RoomMap::default(),
            settle: SettlePanel::default(),
            beside_margins: split("Edge between margins and what they cost", 0.66),
            beside_outcome: split("Edge between what may move and what came of it", 0.36),
        }
    }
}

impl RoomPage {
    /// The page over all the room there is, for this subject.
    pub fn room_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, subject: &Subject) {
        if !ring_is_whole(view) {
            missing_ui(ui, view);
            return;
        }
        let frame = Frame::new().inner_margin(Margin::symmetric(8, 4));
        frame.show(ui, |ui| {
            ui.horizontal(|ui| {
                for tool in Tool::ALL {
                    let words = RichText::new(tool.title()).strong();
                    let chosen = ui.selectable_label(self.tool == tool, words);
                    if chosen.on_hover_text(tool.explains()).clicked() {
                        self.tool = tool;
                    }
                }
                ui.label(RichText::new(self.tool.explains()).small().weak());
            });
            ui.separator();
            match self.tool {
                Tool::Margins => self.margins_ui(ui, view, subject),
                Tool::Map => self.map.map_ui(ui, view, subject),
                Tool::Settle => self.settle_ui(ui, view, subject),
            }
        });
    }

    fn margins_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, subject: &Subject) {
        let room = ui.available_rect_before_wrap();
        let (left, right) = self.beside_margins.split_ui(ui, room, view.palette);
        let height = (room.height() * 0.62).max(180.0);
        part_ui(ui, left, |ui| {
            egui::ScrollArea::vertical()
                .id_salt("margins")
                .auto_shrink([false, false])
                .show(ui, |ui| self.margins.plot_ui(ui, view, subject, height));
        });
        let mut clicked = None;
        part_ui(ui, right, |ui| {
            clicked = self.sensitivities.list_ui(ui, view, subject);
        });
        if let Some((dimension, finding)) = clicked {
            self.margins.look_at(dimension, finding);
            ui.ctx().request_repaint();
        }
        ui.advance_cursor_after_rect(room);
    }

    fn settle_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, subject: &Subject) {
        let room = ui.available_rect_before_wrap();
        let (left, right) = self.beside_outcome.split_ui(ui, room, view.palette);
        part_ui(ui, left, |ui| self.settle.list_ui(ui, view));
        part_ui(ui, right, |ui| self.settle.outcome_ui(ui, view, subject));
        ui.advance_cursor_after_rect(room);
    }
}

fn part_ui(ui: &mut Ui, rect: Rect, add: impl FnOnce(&mut Ui)) {
    let inner = rect.shrink2(egui::vec2(5.0, 2.0));
    ui.scope_builder(UiBuilder::new().max_rect(inner), |ui| {
        ui.shrink_clip_rect(rect);
        add(ui);
    });
}
