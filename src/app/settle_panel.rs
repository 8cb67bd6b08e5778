//! Settling in the window: what may move, the search, what came of it.

use egui::{RichText, ScrollArea, Ui};

use super::let_go_list::LetGoList;
use super::long_work::LongWork;
use super::room_work::Subject;
use super::settled_view::{SettledView, none_ui};
use super::view::View;
use crate::settle::{LetGo, Outcome, SettleError, settle};

/// What is settled: the design, and what was let go.
type Asked = (u64, Vec<LetGo>);

/// The panel.
pub struct SettlePanel {
    list: LetGoList,
    work: LongWork<Asked, Result<Outcome, SettleError>>,
    settled: SettledView,
}

impl Default for SettlePanel {
    fn default() -> Self {
        Self {
            list: LetGoList::default(),
            work: LongWork::new("settle"),
            settled: SettledView::default(),
        }
    }
}

impl SettlePanel {
    /// The list of what may move.
    pub fn list_ui(&mut self, ui: &mut Ui, view: &mut View<'_>) {
        self.list.list_ui(ui, view);
    }

    /// The search and what came of it.
    pub fn outcome_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, subject: &Subject) {
        self.work.poll();
        ui.label(RichText::new("The nearest ring without a clash").heading());
        ui.add(
            egui::Label::new(
                RichText::new(
                    "moves only what is let go, by the least sum of weight x move squared; what is found is judged as every ring is",
                )
                .small()
                .weak(),
            )
            .wrap(),
        );
        self.begin_ui(ui, subject);
        self.work.progress_ui(ui, "settling");
        let Some((asked, result)) = self.work.result() else {
            return;
        };
        let is_current = asked.0 == subject.number;
        match result {
            Err(error) => {
                ui.colored_label(view.palette.clash, error.to_string());
            }
            Ok(Outcome::Settled(settled)) => {
                self.settled
                    .settled_ui(ui, view, settled, asked.0, is_current);
            }
            Ok(Outcome::None(why)) => {
                ScrollArea::vertical()
                    .id_salt("contradiction")
                    .auto_shrink([false, false])
                    .show(ui, |ui| none_ui(ui, view, why, is_current));
            }
        }
    }

    fn begin_ui(&mut self, ui: &mut Ui, subject: &Subject) {
        let let_go = self.list.let_go();
        ui.horizontal(|ui| {
            let may = !let_go.is_empty() && !self.work.is_running();
            let count = let_go.len();
            let find = ui.add_enabled(may, egui::Button::new("Find the nearest ring"));
            let words = match count {
                0 => "let something go first".to_owned(),
                1 => "1 dimension may move".to_owned(),
                several => format!("{several} dimensions may move"),
            };
            ui.label(RichText::new(words).small());
            if find.clicked() {
                let of = subject.clone();
                let key = (subject.number, let_go.clone());
                let work = Box::new(
                    move |cancel: &std::sync::atomic::AtomicBool, told: &(dyn Fn(f64) + Sync)| {
                        match settle(&of.design, &of.workshop, &let_go, cancel, told) {
                            Err(SettleError::Cancelled(cancelled)) => Err(cancelled),
                            other => Ok(other),
                        }
                    },
                );
                self.work.begin(ui.ctx(), key, work);
            }
        });
        let key = (subject.number, self.list.let_go());
        if self.work.is_called_off(&key) {
            ui.label(RichText::new("called off").small());
        }
    }
}
