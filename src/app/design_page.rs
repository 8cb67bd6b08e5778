//! The page Design: half-section, lug pattern, values, findings.

use egui::{Rect, Ui, UiBuilder};

use super::findings_panel::findings_ui;
use super::missing_panel::{missing_ui, ring_is_whole};
use super::plan_panel::PlanPanel;
use super::section_panel::SectionPanel;
use super::sight::Sight;
use super::split::{Lie, Split};
use super::values_panel::values_ui;
use super::view::View;

/// The parts of the page.
pub struct DesignPage {
    /// The half-section.
    pub section: SectionPanel,
    /// The lug pattern.
    pub plan: PlanPanel,
    side: Split,
    values: Split,
    findings: Split,
}

impl Default for DesignPage {
    fn default() -> Self {
        Self {
            section: SectionPanel::default(),
            plan: PlanPanel::default(),
            side: Split::new(
                Lie::SideBySide,
                "Edge between values and findings",
                0.71,
                (660.0, 270.0),
            ),
            values: Split::new(
                Lie::Stacked,
                "Edge between half-section and values",
                0.54,
                (180.0, 170.0),
            ),
            findings: Split::new(
                Lie::Stacked,
                "Edge between plan and findings",
                0.46,
                (180.0, 170.0),
            ),
        }
    }
}

impl DesignPage {
    /// Looks at the same in both drawings.
    pub const fn look(&mut self, at: Sight) {
        self.section.canvas.sight = at;
        self.plan.canvas.sight = at;
    }

    /// The page over all the room there is.
    pub fn design_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let room = ui.available_rect_before_wrap();
        let (left, right) = self.side.split_ui(ui, room, view.palette);
        let (drawing, values) = self.values.split_ui(ui, left, view.palette);
        let (plan, findings) = self.findings.split_ui(ui, right, view.palette);
        part_ui(ui, drawing, |ui| {
            if ring_is_whole(view) {
                self.section.section_ui(ui, view, revision);
            } else {
                missing_ui(ui, view);
            }
        });
        // The columns come before the findings, so that the keyboard goes along the optical axis.
        part_ui(ui, values, |ui| values_ui(ui, view));
        part_ui(ui, plan, |ui| self.plan.plan_ui(ui, view, revision));
        part_ui(ui, findings, |ui| findings_ui(ui, view));
        ui.advance_cursor_after_rect(room);
    }
}

fn part_ui(ui: &mut Ui, rect: Rect, add: impl FnOnce(&mut Ui)) {
    ui.scope_builder(
        UiBuilder::new().max_rect(rect.shrink2(egui::vec2(6.0, 3.0))),
        |ui| {
            ui.shrink_clip_rect(rect);
            add(ui);
        },
    );
}
