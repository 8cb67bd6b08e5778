//! What every panel is given: the design and what follows from it to read, and a list for its wishes.

use std::collections::BTreeSet;

use egui::Id;

use super::command::Command;
use super::edit::{Edit, edited};
use super::page::Page;
use super::palette::Palette;
use super::room_work::RoomWork;
use super::shop_edit::ShopEdit;
use crate::checks::FindingKey;
use crate::document::{Design, FieldRef};
use crate::evaluate::Evaluation;
use crate::workshop::Workshop;

/// What is pointed at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lit {
    /// A finding: its places light up.
    Finding(FindingKey),
    /// A field: its edges light up, and its row.
    Field(FieldRef),
}

/// What is pointed at, opened and jumped to; not part of the design.
#[derive(Debug, Default)]
pub struct Selection {
    /// Lit in this frame, as pointed at in the frame before.
    lit: Option<Lit>,
    /// Pointed at in this frame.
    pointed: Option<Lit>,
    /// The findings whose working is shown.
    pub open_findings: BTreeSet<FindingKey>,
    /// The field whose origin or rule is shown.
    pub open_field: Option<FieldRef>,
    /// The field to bring into sight and into the keyboard's reach.
    pub jump: Option<FieldRef>,
    /// The field to bring into sight; the keyboard stays where it is.
    pub reveal: Option<FieldRef>,
    /// The value of lens or body to be measured next.
    pub measure: Option<FieldRef>,
}

impl Selection {
    /// What is lit.
    #[must_use]
    pub const fn lit(&self) -> Option<Lit> {
        self.lit
    }

    /// Whether this field is lit.
    #[must_use]
    pub fn is_lit(&self, field: FieldRef) -> bool {
        self.lit == Some(Lit::Field(field))
    }

    /// Says what the pointer is at.
    pub const fn point_at(&mut self, what: Lit) {
        self.pointed = Some(what);
    }

    /// Ends the frame; true where the light has moved and must be painted anew.
    pub fn end_frame(&mut self) -> bool {
        let pointed = self.pointed.take();
        let moved = pointed != self.lit;
        self.lit = pointed;
        moved
    }

    /// Whether this field is jumped to; asked once a jump.
    pub fn take_jump(&mut self, field: FieldRef) -> bool {
        let here = self.jump == Some(field);
        if here {
            self.jump = None;
        }
        here
    }

    /// Opens the row below a field, or closes it.
    pub fn toggle(&mut self, field: FieldRef) {
        self.open_field = if self.open_field == Some(field) {
            None
        } else {
            Some(field)
        };
    }
}

/// The text under the keyboard, and the last one that was refused.
#[derive(Debug, Default)]
pub struct Typing {
    field: Option<Id>,
    text: String,
    began_as: String,
    refused: Option<(Id, String)>,
}

/// What typing came to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Typed {
    /// Nothing yet, or nothing new.
    Nothing,
    /// A finished text that differs from what was shown.
    Finished(String),
}

impl Typing {
    /// The text to show in a field: what is being typed there, else what the field holds.
    #[must_use]
    pub fn text_for(&self, field: Id, holds: &str) -> String {
        if self.field == Some(field) {
            self.text.clone()
        } else {
            holds.to_owned()
        }
    }

    /// Keeps what is being typed; the first time, what the field held is kept beside it.
    pub fn keep(&mut self, field: Id, text: String, holds: &str) {
        if self.field != Some(field) {
            self.field = Some(field);
            holds.clone_into(&mut self.began_as);
            self.forget_refusal(field);
        }
        self.text = text;
    }

    /// Ends typing in a field.
    pub fn finish(&mut self, field: Id, given_up: bool) -> Typed {
        if self.field != Some(field) {
            return Typed::Nothing;
        }
        self.field = None;
        let text = std::mem::take(&mut self.text);
        if given_up || text == self.began_as {
            Typed::Nothing
        } else {
            Typed::Finished(text)
        }
    }

    /// Remembers why a text was refused.
    pub fn refuse(&mut self, field: Id, why: String) {
        self.refused = Some((field, why));
    }

    /// Why the last text of a field was refused.
    #[must_use]
    pub fn refusal(&self, field: Id) -> Option<&str> {
        self.refused
            .as_ref()
            .filter(|(refused, _)| *refused == field)
            .map(|(_, why)| why.as_str())
    }

    /// Forgets why a text was refused.
    pub fn forget_refusal(&mut self, field: Id) {
        if self.refusal(field).is_some() {
            self.refused = None;
        }
    }
}

/// A change that can be wished for from a field.
pub trait Wish {
    /// Why it is refused; none where it may be done.
    fn refusal(&self, view: &View<'_>) -> Option<String>;
    /// The wish, as one step of undo.
    fn wished(self) -> Command;
    /// The wish while something is dragged.
    fn dragged(self) -> Command;
}

impl Wish for Edit {
    fn refusal(&self, view: &View<'_>) -> Option<String> {
        edited(view.design, self)
            .err()
            .map(|fault| fault.to_string())
    }

    fn wished(self) -> Command {
        Command::Edit(self)
    }

    fn dragged(self) -> Command {
        Command::Drag(self)
    }
}

impl Wish for ShopEdit {
    fn refusal(&self, view: &View<'_>) -> Option<String> {
        self.checked(view.workshop)
            .err()
            .map(|fault| fault.to_string())
    }

    fn wished(self) -> Command {
        Command::Shop(self)
    }

    /// Numbers of the workshop are typed, not dragged; a drag would be a step each.
    fn dragged(self) -> Command {
        Command::Shop(self)
    }
}

/// The view of the design that a panel is given.
pub struct View<'a> {
    /// The design.
    pub design: &'a Design,
    /// What follows from it.
    pub evaluation: &'a Evaluation,
    /// The workshop.
    pub workshop: &'a Workshop,
    /// Room to move, as far as it is worked.
    pub room: &'a RoomWork,
    /// What is pointed at and opened.
    pub selection: &'a mut Selection,
    /// What is being typed.
    pub typing: &'a mut Typing,
    /// The wishes, done when the frame is drawn.
    pub commands: &'a mut Vec<Command>,
    /// The colours.
    pub palette: Palette,
}

impl View<'_> {
    /// Wishes for something.
    pub fn wish(&mut self, command: Command) {
        self.commands.push(command);
    }

    /// Goes to a field, on whatever page it stands.
    pub fn go_to(&mut self, field: FieldRef) {
        self.selection.jump = Some(field);
        let page = match field {
            FieldRef::Limit(_) => Page::Limits,
            FieldRef::Lens(_)
            | FieldRef::Body(_)
            | FieldRef::Ring(_)
            | FieldRef::LensThread
            | FieldRef::BarrelAtInfinity
            | FieldRef::BarrelAtCloseFocus
            | FieldRef::ApertureRing
            | FieldRef::StopDownPin
            | FieldRef::Ears
            | FieldRef::TwistHand
            | FieldRef::Springs
            | FieldRef::Stop
            | FieldRef::LockPin
            | FieldRef::FreeDepth
            | FieldRef::Obstacles
            | FieldRef::Lugs
            | FieldRef::SeatKind
            | FieldRef::PinHandling
            | FieldRef::Trim
            | FieldRef::Finish
            | FieldRef::ThreadHold
            | FieldRef::Cutter
            | FieldRef::Material
            | FieldRef::Clocking
            | FieldRef::Pieces => Page::Design,
        };
        self.wish(Command::Show(page));
    }

    /// Goes to the page where a value of lens or body is measured.
    pub fn measure(&mut self, field: FieldRef) {
        self.selection.measure = Some(field);
        self.wish(Command::Show(Page::Measure));
    }

    /// Wishes for a change, or says why it is refused.
    ///
    /// # Errors
    /// The text of the fault.
    pub fn wish_edit(&mut self, edit: Edit) -> Result<(), String> {
        edited(self.design, &edit).map_err(|fault| fault.to_string())?;
        self.wish(Command::Edit(edit));
        Ok(())
    }

    /// Wishes for a change from a field; a refusal is shown under it.
    pub fn wish_from(&mut self, field: Id, change: impl Wish) {
        match change.refusal(self) {
            None => {
                self.wish(change.wished());
                self.typing.forget_refusal(field);
            }
            Some(why) => self.typing.refuse(field, why),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_that_was_not_changed_is_nothing() {
        let (mut typing, field) = (Typing::default(), Id::unique("field"));
        typing.keep(field, "1.46".to_owned(), "1.46");
        assert_eq!(typing.finish(field, false), Typed::Nothing);
        typing.keep(field, "1.5".to_owned(), "1.46");
        typing.keep(field, "1.52".to_owned(), "1.46");
        assert_eq!(typing.text_for(field, "1.46"), "1.52");
        assert_eq!(
            typing.finish(field, false),
            Typed::Finished("1.52".to_owned())
        );
        assert_eq!(typing.text_for(field, "1.46"), "1.46");
    }

    #[test]
    fn escape_gives_up() {
        let (mut typing, field) = (Typing::default(), Id::unique("field"));
        typing.keep(field, "99".to_owned(), "1.46");
        assert_eq!(typing.finish(field, true), Typed::Nothing);
    }

    #[test]
    fn the_light_moves_once() {
        let mut selection = Selection::default();
        selection.point_at(Lit::Field(FieldRef::Trim));
        assert!(selection.end_frame() && selection.is_lit(FieldRef::Trim));
        selection.point_at(Lit::Field(FieldRef::Trim));
        assert!(!selection.end_frame());
        assert!(selection.end_frame() && !selection.is_lit(FieldRef::Trim));
    }
}
