//! Room to move, worked beside the window for the design as it stands.

use std::sync::Arc;
use std::time::Duration;

use egui::{Context, RichText, Ui};

use super::command::Command;
use super::long_work::LongWork;
use super::page::Page;
use super::room_bar::legend_ui;
use super::view::View;
use super::window::Window;
use super::workspace::Workspace;
use crate::checks::{FindingKey, Severity};
use crate::document::{Design, RingKey};
use crate::evaluate::Evaluation;
use crate::settle::{Room, rooms};
use crate::workshop::Workshop;

/// A design that changes is not worked on: it has to keep still for so long.
pub const STILL: Duration = Duration::from_millis(160);

/// What room, margins, map and settling are worked from: of a design, what bears on its ring.
#[derive(Clone, Debug)]
pub struct Subject {
    /// Goes up with every change that bears on the ring.
    pub number: u64,
    /// The design.
    pub design: Arc<Design>,
    /// The workshop.
    pub workshop: Arc<Workshop>,
}

impl PartialEq for Subject {
    fn eq(&self, other: &Self) -> bool {
        self.number == other.number
    }
}

/// What can be asked of the room to move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoomWish {
    /// Show it, or leave it.
    Toggle,
    /// Whether findings that clash already are left out.
    SetAside(bool),
    /// Work it after it was called off.
    Again,
}

/// A state to work rooms for: the design, and the findings set aside.
type Wanted = (u64, Vec<FindingKey>);

/// The rooms of every dimension, as far as they are known.
pub struct RoomWork {
    subject: Option<Subject>,
    work: LongWork<Wanted, Vec<Room>>,
    /// Whether findings that clash already are set aside.
    sets_aside: bool,
    wanted: Wanted,
    is_on: bool,
}

impl Default for RoomWork {
    fn default() -> Self {
        Self {
            subject: None,
            work: LongWork::new("room to move"),
            sets_aside: false,
            wanted: (0, Vec::new()),
            is_on: true,
        }
    }
}

impl RoomWork {
    /// Whether rooms are worked at all.
    #[must_use]
    pub const fn is_on(&self) -> bool {
        self.is_on
    }

    /// Works rooms from now on, or leaves it.
    pub fn turn(&mut self, on: bool) {
        self.is_on = on;
        if !on {
            self.work.forget();
        }
    }

    /// The design as a subject; only a change that bears on the ring makes a new one. Designs are compared and not their
    /// revisions, for tabs number theirs apart from each other.
    pub fn subject(&mut self, design: &Design, workshop: &Workshop) -> Subject {
        if let Some(known) = &self.subject
            && bears_alike(&known.design, design)
            && *known.workshop == *workshop
        {
            return known.clone();
        }
        // The bars of one design mean nothing beside another one.
        if self
            .subject
            .as_ref()
            .is_some_and(|known| !is_of_one(&known.design, design))
        {
            self.work.forget();
        }
        let subject = Subject {
            number: self.subject.as_ref().map_or(1, |known| known.number + 1),
            design: Arc::new(design.clone()),
            workshop: Arc::new(workshop.clone()),
        };
        self.subject = Some(subject.clone());
        subject
    }

    /// Sees to it that the rooms of this design come.
    pub fn follow(&mut self, context: &Context, workspace: &Workspace) {
        let evaluation = workspace.evaluation();
        if !self.is_on || evaluation.derivation.ring.is_none() {
            return;
        }
        let subject = self.subject(workspace.design(), workspace.workshop());
        let aside = if self.sets_aside {
            clashing(evaluation)
        } else {
            Vec::new()
        };
        self.wanted = (subject.number, aside.clone());
        self.work.want(context, &self.wanted, STILL, || {
            Box::new(move |cancel, told| {
                let (design, workshop) = (&subject.design, &subject.workshop);
                rooms(design, workshop, RingKey::ALL, &aside, cancel, told)
            })
        });
    }

    /// The room of a dimension as it was last worked, and whether it is that of the design as it stands.
    #[must_use]
    pub fn of(&self, key: RingKey) -> Option<(&Room, bool)> {
        let (worked, rooms) = self.work.result()?;
        let room = rooms.iter().find(|room| room.key == key)?;
        Some((room, *worked == self.wanted))
    }

    /// Whether the rooms shown are those of the design as it stands.
    #[must_use]
    pub fn is_current(&self) -> bool {
        self.work.is_known(&self.wanted)
    }

    /// Sees to the rooms on the pages that show them; gives the subject of the page Room.
    pub fn on_page(
        &mut self,
        context: &Context,
        workspace: &Workspace,
        page: Page,
    ) -> Option<Subject> {
        if matches!(page, Page::Design | Page::Room) {
            self.follow(context, workspace);
        }
        (page == Page::Room).then(|| self.subject(workspace.design(), workspace.workshop()))
    }

    /// Does what was asked for.
    pub fn take(&mut self, wish: RoomWish) {
        match wish {
            RoomWish::Toggle => self.turn(!self.is_on),
            RoomWish::SetAside(aside) => self.sets_aside = aside,
            RoomWish::Again => self.work.forget(),
        }
    }
}

impl Window {
    /// Works the room to move beside the window from now on, or leaves it.
    pub fn show_room(&mut self, on: bool) {
        self.room.turn(on);
    }
}

/// What the bars mean; how far they are; whether clashes are set aside.
pub fn head_ui(ui: &mut Ui, view: &mut View<'_>) {
    let room = view.room;
    if !room.is_on || view.evaluation.derivation.ring.is_none() {
        return;
    }
    // One line for both: what stands under it must not move while one works on it.
    let height = ui.spacing().interact_size.y;
    let line = egui::vec2(ui.available_width(), height);
    ui.allocate_ui(line, |ui| {
        ui.set_min_height(height);
        if room.work.is_long(ui.ctx()) {
            room.work.progress_ui(ui, "room to move");
        } else {
            legend_ui(ui, view.palette);
        }
    });
    let mut aside = room.sets_aside;
    if aside || view.evaluation.count(Severity::Clash) > 0 {
        let words = RichText::new("leave out what clashes now").small();
        let asked = ui.checkbox(&mut aside, words).on_hover_text(
            "findings that are a clash at present do not count: the room that the others leave",
        );
        if asked.changed() {
            view.wish(Command::Room(RoomWish::SetAside(aside)));
        }
    }
    if room.work.is_called_off(&room.wanted) {
        ui.horizontal(|ui| {
            ui.label(RichText::new("room to move was called off").small());
            let again = ui
                .small_button("Work it out")
                .accessible_name("Work out the room to move");
            if again.clicked() {
                view.wish(Command::Room(RoomWish::Again));
            }
        });
    }
    room.work.fault_ui(ui);
}

/// Whether two designs are one and the same at different times.
fn is_of_one(a: &Design, b: &Design) -> bool {
    a.name == b.name && a.lens.name == b.lens.name && a.body.name == b.body.name
}

/// Whether two designs make the same ring between the same mounts under the same limits.
fn bears_alike(a: &Design, b: &Design) -> bool {
    a.ring == b.ring && a.lens == b.lens && a.body == b.body && a.limits == b.limits
}

/// The findings that are a clash.
fn clashing(evaluation: &Evaluation) -> Vec<FindingKey> {
    evaluation
        .findings
        .iter()
        .filter(|finding| finding.severity == Severity::Clash)
        .map(|finding| finding.key)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Choice, demo_designs};

    #[test]
    fn only_what_bears_on_the_ring_makes_a_new_subject() {
        let workshop = Workshop::default_set().unwrap();
        let mut design = demo_designs().unwrap().swap_remove(0);
        let mut work = RoomWork::default();
        let first = work.subject(&design, &workshop);
        design.notes.push_str("turned on a Sunday");
        design.sheet.section_angle_deg += 5.0;
        assert_eq!(work.subject(&design, &workshop), first);
        design.ring.dimensions.lip_thickness.value = Choice::Set(1.1);
        let second = work.subject(&design, &workshop);
        assert_ne!(second, first);
        let mut other = workshop.clone();
        other.cutters.clear();
        assert_ne!(work.subject(&design, &other), second);
    }
}
