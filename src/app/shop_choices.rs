//! How the ring is made: hold, milling, cutter, material, finish, pieces.

use egui::{Id, Ui};

use super::edit::Edit;
use super::field::{NumberField, number_ui};
use super::rows::salt_of;
use super::text_field::choice_ui;
use super::view::View;
use crate::document::{FieldRef, Finish, MillingMethod, Pieces, ThreadHold};
use crate::mount::Unit;

/// The rows of making and material.
pub fn shop_ui(ui: &mut Ui, view: &mut View<'_>) {
    let ring = &view.design.ring;
    let holds = ThreadHold::ALL.map(|hold| (hold, hold.word().to_owned()));
    let salt = salt_of(FieldRef::ThreadHold);
    if let Some(hold) = choice_ui(
        ui,
        salt,
        view.selection.take_jump(FieldRef::ThreadHold),
        "Thread hold",
        &ring.thread_hold,
        &holds,
        "what keeps the lens from turning in the ring",
    ) {
        view.wish_from(salt, Edit::Hold(hold));
    }
    let ways = MillingMethod::ALL.map(|way| (way, way.word().to_owned()));
    let salt = Id::unique("milling");
    if let Some(way) = choice_ui(
        ui,
        salt,
        false,
        "Gaps milled by",
        &ring.milling,
        &ways,
        "how the gaps between the lugs are milled",
    ) {
        view.wish_from(salt, Edit::Milling(way));
    }
    let cutters = names(view.workshop.cutters.iter().map(|cutter| &cutter.name));
    let salt = salt_of(FieldRef::Cutter);
    if let Some(name) = choice_ui(
        ui,
        salt,
        view.selection.take_jump(FieldRef::Cutter),
        "Milling cutter",
        &ring.cutter,
        &cutters,
        "the end mill for the gaps",
    ) {
        view.wish_from(salt, Edit::Cutter(name));
    }
    let stuffs = names(view.workshop.materials.iter().map(|stuff| &stuff.name));
    let salt = salt_of(FieldRef::Material);
    if let Some(name) = choice_ui(
        ui,
        salt,
        view.selection.take_jump(FieldRef::Material),
        "Material",
        &ring.material,
        &stuffs,
        "from the workshop's list",
    ) {
        view.wish_from(salt, Edit::Material(name));
    }
    finish_ui(ui, view);
    pieces_ui(ui, view);
}

/// The names with "the first" for none in front.
fn names<'a>(all: impl Iterator<Item = &'a String>) -> Vec<(String, String)> {
    let mut choices: Vec<(String, String)> = all.map(|name| (name.clone(), name.clone())).collect();
    let first = choices
        .first()
        .map_or("none in the workshop", |(name, _)| name.as_str());
    choices.insert(0, (String::new(), format!("the first: {first}")));
    choices
}

fn finish_ui(ui: &mut Ui, view: &mut View<'_>) {
    let finish = view.design.ring.finish.clone();
    let number = NumberField {
        label: "Finish build-up",
        salt: salt_of(FieldRef::Finish),
        field: Some(FieldRef::Finish),
        value: Some(finish.build_up_mm),
        unit: Unit::Mm,
        label_width: None,
        hover: "what a coating adds on each face; 0 for bare metal".to_owned(),
        step: 0.001,
    };
    number_ui(
        ui,
        view,
        &number,
        |build_up_mm| {
            Edit::Finish(Finish {
                build_up_mm,
                ..finish.clone()
            })
        },
        |_, _| {},
    );
    let mut masked = finish.faces_masked;
    if ui.checkbox(&mut masked, "seat and flange masked").changed() {
        view.wish_from(
            Id::unique("masked"),
            Edit::Finish(Finish {
                faces_masked: masked,
                ..finish.clone()
            }),
        );
    }
    let mut black = finish.inside_blackened;
    if ui
        .checkbox(&mut black, "inside blackened or stepped")
        .changed()
    {
        view.wish_from(
            Id::unique("blackened"),
            Edit::Finish(Finish {
                inside_blackened: black,
                ..finish
            }),
        );
    }
}

fn pieces_ui(ui: &mut Ui, view: &mut View<'_>) {
    const TWO: Pieces = Pieces::Two {
        clamp_wall_mm: 2.0,
        screw_diameter_mm: 2.0,
        screw_count: 3,
    };
    let now = view.design.ring.pieces;
    let is_two = now != Pieces::One;
    let choices = [
        (false, "one piece".to_owned()),
        (true, "two: a clamped threaded insert".to_owned()),
    ];
    let salt = Id::unique("pieces");
    let hover = "an insert is turned to the mark and clamped by set-screws";
    if let Some(two) = choice_ui(
        ui,
        salt,
        view.selection.take_jump(FieldRef::Pieces),
        "Made of",
        &is_two,
        &choices,
        hover,
    ) {
        view.wish_from(salt, Edit::Pieces(if two { TWO } else { Pieces::One }));
    }
    two_pieces_ui(ui, view, now);
}

/// Wall and set-screws of a clamped insert.
fn two_pieces_ui(ui: &mut Ui, view: &mut View<'_>, now: Pieces) {
    let Pieces::Two {
        clamp_wall_mm,
        screw_diameter_mm,
        screw_count,
    } = now
    else {
        return;
    };
    let row = |label, value, unit, hover: &str, step| NumberField {
        label,
        salt: Id::unique(("pieces", label)),
        field: None,
        value: Some(value),
        unit,
        label_width: None,
        hover: hover.to_owned(),
        step,
    };
    let wall = row(
        "Clamp wall",
        clamp_wall_mm,
        Unit::Mm,
        "wall of the ring around the insert",
        0.1,
    );
    number_ui(
        ui,
        view,
        &wall,
        |clamp_wall_mm| {
            Edit::Pieces(Pieces::Two {
                clamp_wall_mm,
                screw_diameter_mm,
                screw_count,
            })
        },
        |_, _| {},
    );
    let screw = row(
        "Set-screw diameter",
        screw_diameter_mm,
        Unit::Mm,
        "thread diameter of the set-screws",
        0.1,
    );
    number_ui(
        ui,
        view,
        &screw,
        |screw_diameter_mm| {
            Edit::Pieces(Pieces::Two {
                clamp_wall_mm,
                screw_diameter_mm,
                screw_count,
            })
        },
        |_, _| {},
    );
    let count = row(
        "Set-screws",
        f64::from(screw_count),
        Unit::One,
        "how many set-screws",
        1.0,
    );
    number_ui(
        ui,
        view,
        &count,
        |count| {
            Edit::Pieces(Pieces::Two {
                clamp_wall_mm,
                screw_diameter_mm,
                screw_count: whole(count),
            })
        },
        |_, _| {},
    );
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "`as` stops at the ends of the range, and the range is checked after"
)]
fn whole(count: f64) -> u32 {
    count.round() as u32
}
