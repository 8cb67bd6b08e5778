//! The page Optics: light in the corners, sharpness over thickness, the numbers of focus.

use egui::{Frame, Margin, ScrollArea, Ui};

use super::focus_table::FocusTable;
use super::light_plot::LightPlot;
use super::sharpness_plot::SharpnessPlot;
use super::view::View;
use super::working_panel::lacks_ui;
use crate::document::FieldRef;
use crate::evaluate::{LightReport, Sharpness, light_of, sharpness_of};

/// What was worked for one revision of the design.
struct Worked {
    revision: u64,
    light: Result<LightReport, Vec<FieldRef>>,
    sharpness: Result<Sharpness, Vec<FieldRef>>,
}

/// The page.
#[derive(Default)]
pub struct OpticsPage {
    worked: Option<Worked>,
    light: LightPlot,
    sharpness: SharpnessPlot,
    focus: FocusTable,
}

impl OpticsPage {
    /// The page over all the room there is, for this revision of the design.
    pub fn optics_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, revision: u64) {
        let is_old = |worked: &Worked| worked.revision != revision;
        if self.worked.as_ref().is_none_or(is_old) {
            self.worked = Some(Worked {
                revision,
                light: light_of(view.design, view.evaluation),
                sharpness: sharpness_of(view.design, view.evaluation),
            });
        }
        let Some(worked) = &self.worked else { return };
        let height = plot_height(ui);
        ScrollArea::vertical()
            .id_salt("optics")
            .auto_shrink([false, false])
            .show(ui, |ui| {
                let frame = Frame::new().inner_margin(Margin::symmetric(12, 6));
                frame.show(ui, |ui| {
                    ui.columns_const(|[left, right]| {
                        left.vertical(|ui| {
                            ui.label(heading("Light over the image height"));
                            match &worked.light {
                                Ok(report) => self.light.light_ui(ui, view, report, height),
                                Err(lacks) => lacks_ui(ui, view, lacks),
                            }
                        });
                        right.vertical(|ui| {
                            ui.label(heading("Sharpness over the error of thickness"));
                            match &worked.sharpness {
                                Ok(found) => self.sharpness.sharpness_ui(ui, view, found, height),
                                Err(lacks) => lacks_ui(ui, view, lacks),
                            }
                        });
                    });
                    ui.separator();
                    self.focus.focus_ui(ui, view);
                });
            });
    }
}

fn heading(words: &str) -> egui::RichText {
    egui::RichText::new(words).heading()
}

/// Plots take a good third of the window, within what can be read, points.
fn plot_height(ui: &Ui) -> f32 {
    (ui.ctx().content_rect().height() * 0.38).clamp(230.0, 460.0)
}
