//! What puts the register right, and what follows from it.

use egui::{Id, Label, RichText, Ui};

use super::correction_note::CorrectionNote;
use super::severity_sign::sign_ui;
use super::text_field::choice_ui;
use super::view::View;
use super::working_grid::working_grid_ui;
use crate::checks::Severity;
use crate::inspection::{
    Action, Basis, Corrected, DEFAULT_RULE, Inspection, allowed_errors, correct, correction_rows,
};

/// The panel; it keeps what is chosen and typed before the note is taken.
#[derive(Default)]
pub struct CorrectionPanel {
    basis: Option<Basis>,
    worked: Option<Worked>,
    note: CorrectionNote,
}

/// A correction worked out for one revision of the design.
struct Worked {
    revision: u64,
    basis: Basis,
    corrected: Option<Corrected>,
}

impl CorrectionPanel {
    /// The panel over the width there is; where nothing is known yet, what is asked for first comes back.
    pub fn correction_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        found: &Inspection,
        revision: u64,
    ) -> Option<Basis> {
        ui.label(RichText::new("Correction").heading());
        let known: Vec<Basis> = Basis::ALL
            .into_iter()
            .filter(|basis| found.error(*basis).is_some())
            .collect();
        let Some(usual) = found.usual_basis() else {
            return nothing_yet_ui(ui);
        };
        let chosen = self.basis.filter(|basis| known.contains(basis));
        let basis = chosen.unwrap_or(usual);
        self.basis_ui(ui, &known, basis);
        self.work(view, found, basis, revision);
        let worked = self.worked.as_ref();
        if let Some(corrected) = worked.and_then(|worked| worked.corrected.clone()) {
            told_ui(ui, view, &corrected);
            ui.separator();
            self.note.note_ui(ui, view, &corrected, revision);
            ui.separator();
            ui.label(RichText::new("Working").strong());
            working_grid_ui(ui, &correction_rows(&corrected));
        }
        None
    }

    fn basis_ui(&mut self, ui: &mut Ui, known: &[Basis], now: Basis) {
        if known.len() < 2 {
            ui.label(RichText::new(format!("by {}", now.words())).small());
            return;
        }
        let choices: Vec<(Basis, String)> = known
            .iter()
            .map(|basis| (*basis, basis.words().to_owned()))
            .collect();
        let hover = "the trial has seen lens and body too, the readings the ring alone";
        let salt = Id::unique("basis of the correction");
        if let Some(basis) = choice_ui(ui, salt, false, "By", &now, &choices, hover) {
            self.basis = Some(basis);
        }
    }

    /// Works the correction out anew where design or basis have changed.
    fn work(&mut self, view: &View<'_>, found: &Inspection, basis: Basis, revision: u64) {
        let holds = |worked: &Worked| (worked.revision, worked.basis) == (revision, basis);
        if self.worked.as_ref().is_some_and(holds) {
            return;
        }
        let (design, workshop, evaluation) = (view.design, view.workshop, view.evaluation);
        let corrected = found.error(basis).and_then(|measured| {
            let limits = allowed_errors(basis, design, evaluation)?;
            correct(design, workshop, evaluation, measured, limits, DEFAULT_RULE)
        });
        self.worked = Some(Worked {
            revision,
            basis,
            corrected,
        });
    }
}

/// What to do first.
fn nothing_yet_ui(ui: &mut Ui) -> Option<Basis> {
    let words = "Nothing is known of the register yet. Read the seat height round the finished ring, or mount lens and \
                 body and make an infinity trial; then it stands here what to skim or shim.";
    ui.add(Label::new(words).wrap());
    let to_readings = ui.button("Read the seat height");
    let to_trial = ui.button("Make an infinity trial");
    if to_readings.clicked() {
        Some(Basis::SeatReadings)
    } else if to_trial.clicked() {
        Some(Basis::Trial)
    } else {
        None
    }
}

/// The severity whose sign and colour an action has.
const fn severity_of(action: &Action) -> Severity {
    match action {
        Action::Leave => Severity::Ok,
        Action::MeasureAgain => Severity::Note,
        Action::Skim(_) | Action::Shim(_) => Severity::Caution,
        Action::Remake(_) => Severity::Clash,
    }
}

/// What to do, large, and what follows.
fn told_ui(ui: &mut Ui, view: &View<'_>, corrected: &Corrected) {
    let severity = severity_of(&corrected.proposal.action);
    ui.horizontal_wrapped(|ui| {
        sign_ui(ui, view.palette, severity);
        let words = RichText::new(corrected.action_text()).strong().size(16.0);
        ui.label(words.color(view.palette.severity(severity)));
    });
    let follows = [
        Some(corrected.left_text()),
        corrected.turn_text(),
        corrected.infinity_text(),
    ];
    for words in follows.into_iter().flatten() {
        ui.add(Label::new(words).wrap());
    }
}
