//! The note that a correction was done: what, how much, when, why.

use egui::{Button, Id, RichText, Ui};

use super::edit::Edit;
use super::field::{refusal_ui, shown, typed_ui};
use super::inspection_edit::InspectionEdit;
use super::text_field::{choice_ui, text_ui};
use super::view::{Typed, View};
use crate::document::parse_quantity;
use crate::inspection::{Action, Corrected, Done};
use crate::mount::Unit;

/// What was done, without its amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Skimmed,
    Shimmed,
    MadeAgain,
}

const KINDS: [(Kind, &str); 3] = [
    (Kind::Skimmed, "skimmed off the seat"),
    (Kind::Shimmed, "shim laid on the seat"),
    (Kind::MadeAgain, "ring made again"),
];

/// What is typed before the note is taken; until then it is no part of the design.
#[derive(Default)]
pub struct CorrectionNote {
    /// The revision for which kind and amount were typed: for another they are proposed anew.
    revision: u64,
    kind: Option<Kind>,
    amount_mm: Option<f64>,
    date: String,
    reason: String,
}

impl CorrectionNote {
    /// The note over the width there is.
    pub fn note_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        corrected: &Corrected,
        revision: u64,
    ) {
        if self.revision != revision {
            self.revision = revision;
            self.kind = None;
            self.amount_mm = None;
        }
        ui.label(RichText::new("When it is done").strong());
        let (usual, usual_mm) = proposed(&corrected.proposal.action);
        let kind = self.kind.unwrap_or(usual);
        self.kind_ui(ui, kind);
        if kind != Kind::MadeAgain {
            self.amount_ui(ui, view, usual_mm);
        }
        let salt = Id::unique("note of a correction");
        let date = text_ui(
            ui,
            view,
            salt.with("date"),
            "When",
            &self.date,
            "the date, as you write it",
        );
        if let Some(date) = date {
            self.date = date;
        }
        let hint = "the reason, for whoever reads it later";
        let reason = text_ui(ui, view, salt.with("reason"), "Why", &self.reason, hint);
        if let Some(reason) = reason {
            self.reason = reason;
        }
        let amount = self.amount_mm.or(usual_mm);
        let done = match kind {
            Kind::Skimmed => amount.map(Done::Skimmed),
            Kind::Shimmed => amount.map(Done::Shimmed),
            Kind::MadeAgain => Some(Done::MadeAgain),
        };
        let button = Button::new("Take note of it as done");
        let hover = "keeps it in the history, as one step of undo; what was read before of the sizes that it changes is \
                     kept as history too";
        let button = ui.add_enabled(done.is_some(), button).on_hover_text(hover);
        if button.clicked()
            && let Some(done) = done
        {
            let entry = corrected.record(done, &self.date, &self.reason);
            view.wish_from(salt, Edit::Inspection(InspectionEdit::Done(entry)));
        }
        refusal_ui(ui, view, salt);
    }

    fn kind_ui(&mut self, ui: &mut Ui, now: Kind) {
        let choices = KINDS.map(|(kind, words)| (kind, words.to_owned()));
        let salt = Id::unique("what was done");
        let hover = "what was really done, which may be other than what was proposed";
        if let Some(kind) = choice_ui(ui, salt, false, "Done", &now, &choices, hover) {
            self.kind = Some(kind);
        }
    }

    /// How much was really taken off or laid on.
    fn amount_ui(&mut self, ui: &mut Ui, view: &mut View<'_>, usual_mm: Option<f64>) {
        let field = Id::unique("amount of a correction");
        let now = self.amount_mm.or(usual_mm);
        let holds = now.map_or_else(String::new, |amount| shown(amount, Unit::Mm));
        let typed = ui
            .horizontal(|ui| {
                let label = ui.label("How much");
                let (response, typed) = typed_ui(ui, view, field, &holds, 84.0, "type, Enter");
                response.labelled_by(label.id);
                ui.label(RichText::new(Unit::Mm.sign()).small().weak());
                typed
            })
            .inner;
        if let Typed::Finished(text) = typed {
            match parse_quantity(&text, Unit::Mm) {
                Ok(amount) if amount > 0.0 => {
                    view.typing.forget_refusal(field);
                    self.amount_mm = Some(amount);
                }
                Ok(_) => view.typing.refuse(field, "type more than 0".to_owned()),
                Err(error) => view.typing.refuse(field, error.to_string()),
            }
        }
        refusal_ui(ui, view, field);
    }
}

/// What is proposed as done, and how much of it.
const fn proposed(action: &Action) -> (Kind, Option<f64>) {
    match action {
        Action::Leave | Action::MeasureAgain => (Kind::Skimmed, None),
        Action::Skim(depth) => (Kind::Skimmed, Some(*depth)),
        Action::Shim(thickness) => (Kind::Shimmed, Some(*thickness)),
        Action::Remake(_) => (Kind::MadeAgain, None),
    }
}
