//! What the window works on: the design, its file, what follows from it, and the steps back.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

use super::edit::{Edit, edited};
use super::files::{Held, Seen};
use super::history::History;
use crate::checks::Severity;
use crate::document::{Design, Fault};
use crate::evaluate::{Evaluation, evaluate};
use crate::mount::{Body, Lens};
use crate::ring::cut_through_a_lug;
use crate::workshop::Workshop;

/// Numbers that are given once in a run, to designs and to their revisions: two designs never share one.
fn next_number() -> u64 {
    static GIVEN: AtomicU64 = AtomicU64::new(1);
    GIVEN.fetch_add(1, Ordering::Relaxed)
}

/// A design at work.
#[derive(Debug)]
pub struct Workspace {
    number: u64,
    pub(super) design: Design,
    pub(super) path: Option<PathBuf>,
    pub(super) saved: Option<Design>,
    /// What was last seen in the file.
    pub(super) seen: Option<Seen>,
    /// The mark, for other windows of this program, that the file is open here.
    pub(super) in_use: Option<Held>,
    workshop: Workshop,
    evaluation: Evaluation,
    history: History<Design>,
    revision: u64,
    dragging: bool,
    /// The design as it was when the drag began.
    before_drag: Option<Design>,
}

impl Workspace {
    /// A workspace with a design that has no file yet.
    #[must_use]
    pub fn new(design: Design, workshop: Workshop) -> Self {
        let evaluation = evaluate(&design, &workshop);
        let history = History::starting_at(&design);
        let saved = Some(design.clone());
        Self {
            number: next_number(),
            design,
            path: None,
            saved,
            seen: None,
            in_use: None,
            workshop,
            evaluation,
            history,
            revision: next_number(),
            dragging: false,
            before_drag: None,
        }
    }

    /// A workspace with nothing known yet.
    #[must_use]
    pub fn empty(workshop: Workshop) -> Self {
        Self::new(nothing_known(), workshop)
    }

    /// The design.
    #[must_use]
    pub const fn design(&self) -> &Design {
        &self.design
    }

    /// Everything that follows from it; worked out once a change.
    #[must_use]
    pub const fn evaluation(&self) -> &Evaluation {
        &self.evaluation
    }

    /// The workshop.
    #[must_use]
    pub const fn workshop(&self) -> &Workshop {
        &self.workshop
    }

    /// The file of the design, if it has one.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// The number of the design, its own in this run of the program.
    #[must_use]
    pub const fn number(&self) -> u64 {
        self.number
    }

    /// Goes up with every change of the design; no other design ever has the same.
    #[must_use]
    pub const fn revision(&self) -> u64 {
        self.revision
    }

    /// Whether the design differs from what is saved.
    #[must_use]
    pub fn is_changed(&self) -> bool {
        self.saved.as_ref() != Some(&self.design)
    }

    /// The name of the design at work: the file's, else the design's own.
    #[must_use]
    pub fn title_name(&self) -> String {
        let of_file = self
            .path
            .as_deref()
            .and_then(Path::file_stem)
            .map(|stem| stem.to_string_lossy().into_owned());
        let name = of_file.unwrap_or_else(|| self.design.name.clone());
        if name.trim().is_empty() {
            return "new design".to_owned();
        }
        // A name may hold what would break the line it stands in.
        name.replace(char::is_control, "?")
    }

    /// The title of the window; a star stands for unsaved changes.
    #[must_use]
    pub fn title(&self) -> String {
        let star = if self.is_changed() { " *" } else { "" };
        let verdict = match self.evaluation.count(Severity::Clash) {
            0 => "no clash".to_owned(),
            1 => "1 clash".to_owned(),
            several => format!("{several} clashes"),
        };
        format!("{}{star} - {verdict} - Flangewright", self.title_name())
    }

    /// Changes the design as one step of undo.
    ///
    /// # Errors
    /// The fault that the edit would bring; nothing is changed then.
    pub fn edit(&mut self, edit: &Edit) -> Result<(), Fault> {
        self.end_drag();
        let next = edited(&self.design, edit)?;
        self.put_worked_on(next);
        self.history.end_step(&self.design);
        Ok(())
    }

    /// Changes the design within a step that goes on until [`Self::end_drag`].
    ///
    /// # Errors
    /// As [`Self::edit`].
    pub fn drag(&mut self, edit: &Edit) -> Result<(), Fault> {
        let next = edited(&self.design, edit)?;
        if !std::mem::replace(&mut self.dragging, true) {
            self.before_drag = Some(self.design.clone());
        }
        self.put_worked_on(next);
        Ok(())
    }

    /// Ends the step of a drag, if one is going on.
    pub fn end_drag(&mut self) {
        if std::mem::take(&mut self.dragging) {
            self.history.end_step(&self.design);
        }
    }

    /// Gives up the drag that is going on: the design is as it was when it began, and no step is left behind.
    pub fn give_up_drag(&mut self) {
        if std::mem::take(&mut self.dragging)
            && let Some(before) = self.before_drag.take()
        {
            self.put(before);
        }
    }

    /// One step back; false where there is none.
    pub fn undo(&mut self) -> bool {
        self.end_drag();
        let back = self.history.undo(&self.design);
        self.put_if(back)
    }

    /// One step forward; false where there is none.
    pub fn redo(&mut self) -> bool {
        self.end_drag();
        let forward = self.history.redo(&self.design);
        self.put_if(forward)
    }

    /// Whether there is a step back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        self.history.can_undo(&self.design)
    }

    /// Whether there is a step forward.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        self.history.can_redo(&self.design)
    }

    /// Starts a new design from two mounts, as one that nobody has saved.
    pub fn start(&mut self, lens: Lens, body: Body) {
        self.start_from(Design::new(lens, body));
        self.cut_through_a_lug();
        self.history = History::starting_at(&self.design);
    }

    /// Starts from a design, as one that nobody has saved.
    pub fn start_from(&mut self, design: Design) {
        self.replace(design, None);
        self.saved = None;
    }

    /// Works with another workshop from now on.
    pub fn use_workshop(&mut self, workshop: Workshop) {
        self.workshop = workshop;
        self.evaluation = evaluate(&self.design, &self.workshop);
        self.revision = next_number();
    }

    /// Puts a design in the place of another, as one that is saved under `path`.
    pub(super) fn replace(&mut self, design: Design, path: Option<PathBuf>) {
        self.dragging = false;
        self.seen = None;
        self.in_use = None;
        self.history = History::starting_at(&design);
        self.saved = Some(design.clone());
        self.path = path;
        self.put(design);
    }

    /// Puts a design as one step of undo.
    pub(super) fn put_as_step(&mut self, design: Design) {
        self.end_drag();
        self.put(design);
        self.history.end_step(&self.design);
    }

    fn put_if(&mut self, design: Option<Design>) -> bool {
        match design {
            Some(design) => {
                self.put(design);
                true
            }
            None => false,
        }
    }

    /// Puts a design that was worked on; the first time the ring is whole, it is cut where a lug shows.
    fn put_worked_on(&mut self, design: Design) {
        let was_whole = self.evaluation.derivation.ring.is_some();
        self.put(design);
        if !was_whole {
            self.cut_through_a_lug();
        }
    }

    /// Turns a cutting line that nobody has turned yet through the first lug.
    fn cut_through_a_lug(&mut self) {
        let angle = &mut self.design.sheet.section_angle_deg;
        // Exact on purpose: any other angle was chosen.
        if let Some(ring) = &self.evaluation.derivation.ring
            && angle.to_bits() == 0.0_f64.to_bits()
        {
            *angle = cut_through_a_lug(ring);
            self.revision = next_number();
        }
    }

    fn put(&mut self, design: Design) {
        if design != self.design {
            self.design = design;
            self.evaluation = evaluate(&self.design, &self.workshop);
            self.revision = next_number();
        }
    }
}

fn nothing_known() -> Design {
    Design {
        name: String::new(),
        ..Design::new(Lens::default(), Body::default())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Choice, RingKey};

    fn workspace() -> Workspace {
        Workspace::empty(Workshop::default_set().unwrap())
    }

    fn lip(workspace: &Workspace) -> Choice<f64> {
        workspace
            .design()
            .ring
            .dimensions
            .get(RingKey::LipThickness)
            .value
    }

    #[test]
    fn a_drag_is_one_step_of_undo() {
        let mut workspace = workspace();
        workspace
            .edit(&Edit::Dimension(RingKey::LipThickness, 1.0))
            .unwrap();
        for step in 1..20 {
            workspace
                .drag(&Edit::Dimension(
                    RingKey::LipThickness,
                    1.0 + 0.01 * f64::from(step),
                ))
                .unwrap();
        }
        workspace.end_drag();
        assert!(workspace.undo());
        assert_eq!(lip(&workspace), Choice::Set(1.0));
        assert!(workspace.undo());
        assert_eq!(lip(&workspace), Choice::Derived);
        assert!(!workspace.undo());
        assert!(workspace.redo() && workspace.redo());
        assert_eq!(lip(&workspace), Choice::Set(1.19));
    }

    #[test]
    fn a_drag_that_is_given_up_leaves_nothing_behind() {
        let mut workspace = workspace();
        workspace
            .edit(&Edit::Dimension(RingKey::LipThickness, 1.0))
            .unwrap();
        for value in [1.1, 1.2] {
            workspace
                .drag(&Edit::Dimension(RingKey::LipThickness, value))
                .unwrap();
        }
        workspace.give_up_drag();
        assert_eq!(lip(&workspace), Choice::Set(1.0));
        workspace.end_drag();
        assert!(!workspace.redo());
        assert!(workspace.undo());
        assert_eq!(lip(&workspace), Choice::Derived);
    }

    #[test]
    fn a_refused_edit_leaves_design_revision_and_history_alone() {
        let mut workspace = workspace();
        let (before, revision) = (workspace.design().clone(), workspace.revision());
        assert!(
            workspace
                .edit(&Edit::Dimension(RingKey::LipThickness, -3.0))
                .is_err()
        );
        assert_eq!(workspace.design(), &before);
        assert_eq!(workspace.revision(), revision);
        assert!(!workspace.can_undo() && !workspace.is_changed());
    }
}
