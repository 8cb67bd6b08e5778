//! The values of the ring.

use egui::{Id, RichText, Ui};

use super::clocking_rows::clocking_ui;
use super::command::Command;
use super::edit::Edit;
use super::group::group_ui;
use super::list_editor::{LUGS, list_ui};
use super::room_work::head_ui;
use super::rows::{anchor_ui, below_ui, mark_ui, ring_row_ui, salt_of, trim_row_ui};
use super::shop_choices::shop_ui;
use super::text_field::{choice_ui, text_ui};
use super::view::View;
use super::working_panel::working_ui;
use crate::document::{Choice, FieldRef, PinHandling, RingKey, SeatKind};
use crate::mount::Presence;

const SEAT: [RingKey; 2] = [RingKey::SeatHeight, RingKey::SeatDiameter];
const FLANGE: [RingKey; 2] = [RingKey::PlateThickness, RingKey::FlangeDiameter];
const BAYONET: [RingKey; 7] = [
    RingKey::GrooveWidth,
    RingKey::GrooveRootDiameter,
    RingKey::LugDiameter,
    RingKey::LugThickness,
    RingKey::LugLeadIn,
    RingKey::NoseDiameter,
    RingKey::SpigotLength,
];
const THREAD: [RingKey; 4] = [
    RingKey::ThreadLength,
    RingKey::ThreadChamfer,
    RingKey::ReliefWidth,
    RingKey::ReliefDiameter,
];
const LIP: [RingKey; 7] = [
    RingKey::LipFaceDepth,
    RingKey::LipThickness,
    RingKey::LipBore,
    RingKey::RearBore,
    RingKey::AnnulusInner,
    RingKey::AnnulusOuter,
    RingKey::AnnulusDepth,
];
const LOCK: [RingKey; 6] = [
    RingKey::LockHoleDiameter,
    RingKey::LockHoleDepth,
    RingKey::LockHoleCircle,
    RingKey::LockHoleAngle,
    RingKey::IndexMarkAngle,
    RingKey::EdgeBreak,
];

fn fields(keys: &[RingKey], others: &[FieldRef]) -> Vec<FieldRef> {
    keys.iter()
        .copied()
        .map(FieldRef::Ring)
        .chain(others.iter().copied())
        .collect()
}

/// The column of the ring; the seat height comes first.
pub fn ring_ui(ui: &mut Ui, view: &mut View<'_>) {
    head_ui(ui, view);
    lens_side_ui(ui, view);
    body_side_ui(ui, view);
    making_ui(ui, view);
}

fn lens_side_ui(ui: &mut Ui, view: &mut View<'_>) {
    group_ui(
        ui,
        view,
        "Seat",
        true,
        &fields(&SEAT, &[FieldRef::Trim, FieldRef::SeatKind]),
        |ui, view| {
            rows_ui(ui, view, &SEAT);
            seat_ui(ui, view);
            trim_row_ui(ui, view);
        },
    );
    group_ui(
        ui,
        view,
        "Flange",
        true,
        &fields(&FLANGE, &[]),
        |ui, view| rows_ui(ui, view, &FLANGE),
    );
    group_ui(
        ui,
        view,
        "Thread and relief",
        true,
        &fields(&THREAD, &[]),
        |ui, view| rows_ui(ui, view, &THREAD),
    );
    group_ui(
        ui,
        view,
        "Lip and bores",
        true,
        &fields(&LIP, &[FieldRef::PinHandling]),
        |ui, view| {
            pin_ui(ui, view);
            rows_ui(ui, view, &LIP);
        },
    );
}

fn body_side_ui(ui: &mut Ui, view: &mut View<'_>) {
    group_ui(
        ui,
        view,
        "Spigot, groove and lugs",
        true,
        &fields(&BAYONET, &[FieldRef::Lugs]),
        |ui, view| {
            rows_ui(ui, view, &BAYONET);
            lugs_ui(ui, view);
        },
    );
    group_ui(
        ui,
        view,
        "Lock hole, mark, edges",
        false,
        &fields(&LOCK, &[]),
        |ui, view| rows_ui(ui, view, &LOCK),
    );
    group_ui(
        ui,
        view,
        "Marks of lens and ring",
        false,
        &[FieldRef::Clocking],
        clocking_ui,
    );
}

fn making_ui(ui: &mut Ui, view: &mut View<'_>) {
    let shop = [
        FieldRef::ThreadHold,
        FieldRef::Cutter,
        FieldRef::Material,
        FieldRef::Finish,
        FieldRef::Pieces,
    ];
    group_ui(ui, view, "Making and material", false, &shop, shop_ui);
    group_ui(ui, view, "Name and notes", false, &[], |ui, view| {
        let salt = Id::unique("design name");
        if let Some(name) = text_ui(
            ui,
            view,
            salt,
            "Design name",
            &view.design.name.clone(),
            "your own name",
        ) {
            view.wish_from(salt, Edit::Name(name));
        }
        let salt = Id::unique("design notes");
        if let Some(notes) = text_ui(
            ui,
            view,
            salt,
            "Notes",
            &view.design.notes.clone(),
            "anything worth keeping",
        ) {
            view.wish_from(salt, Edit::Notes(notes));
        }
    });
}

fn rows_ui(ui: &mut Ui, view: &mut View<'_>, keys: &[RingKey]) {
    for key in keys {
        ring_row_ui(ui, view, *key);
    }
}

fn seat_ui(ui: &mut Ui, view: &mut View<'_>) {
    let by_rule = view
        .evaluation
        .derivation
        .ring
        .as_ref()
        .filter(|_| view.design.ring.seat.is_derived());
    let rule = by_rule.map_or_else(
        || "by its rule".to_owned(),
        |ring| format!("rule: {}", ring.seat.word()),
    );
    let mut choices = vec![(None, rule)];
    let kinds = [SeatKind::Boss, SeatKind::Flush, SeatKind::Counterbore];
    choices.extend(kinds.map(|kind| (Some(kind), format!("set: {}", kind.word()))));
    let now = view.design.ring.seat.set().copied();
    let salt = salt_of(FieldRef::SeatKind);
    if let Some(kind) = choice_ui(
        ui,
        salt,
        view.selection.take_jump(FieldRef::SeatKind),
        "Seat stands",
        &now,
        &choices,
        "how the lens seat stands to the flange",
    ) {
        view.wish_from(salt, Edit::Seat(kind.map_or(Choice::Derived, Choice::Set)));
    }
}

fn pin_ui(ui: &mut Ui, view: &mut View<'_>) {
    let rule = match view.design.lens.stop_down_pin {
        Presence::Present => "rule: pressed by a lip",
        Presence::Absent => "rule: no pin",
        Presence::Unknown => "rule: not known whether there is a pin",
    };
    let choices = [
        (None, rule.to_owned()),
        (
            Some(PinHandling::Pressed),
            "set: pressed by a lip".to_owned(),
        ),
        (
            Some(PinHandling::LeftFree),
            "set: left free in an annulus".to_owned(),
        ),
    ];
    let now = view.design.ring.pin.set().copied();
    let salt = salt_of(FieldRef::PinHandling);
    if let Some(pin) = choice_ui(
        ui,
        salt,
        view.selection.take_jump(FieldRef::PinHandling),
        "Pin is",
        &now,
        &choices,
        "what the ring does with a stop-down pin",
    ) {
        view.wish_from(salt, Edit::Pin(pin.map_or(Choice::Derived, Choice::Set)));
    }
}

fn lugs_ui(ui: &mut Ui, view: &mut View<'_>) {
    ui.horizontal_wrapped(|ui| {
        anchor_ui(ui, view, FieldRef::Lugs);
        let set = !view.design.ring.lugs.is_derived();
        ui.weak(if set {
            "set by hand, locked"
        } else {
            "by their rule, locked"
        });
        if set
            && ui
                .small_button("let go")
                .accessible_name("Let the lugs go")
                .on_hover_text("follow the rule again")
                .clicked()
        {
            view.wish(Command::Edit(Edit::Lugs(Choice::Derived)));
        }
        let (mark, word) = if set {
            ("H", "set by hand")
        } else {
            ("R", "by their rule")
        };
        mark_ui(
            ui,
            view,
            FieldRef::Lugs,
            mark,
            format!("Rule of Lugs: {word}"),
        );
    });
    let evaluation = view.evaluation;
    if view.selection.open_field == Some(FieldRef::Lugs) {
        below_ui(ui, |ui| lug_rule_ui(ui, view));
    }
    let rows = match &view.design.ring.lugs {
        Choice::Set(lugs) => lugs.clone(),
        Choice::Derived => evaluation
            .derivation
            .lugs_by_rule
            .clone()
            .unwrap_or_default(),
    };
    list_ui(
        ui,
        view,
        salt_of(FieldRef::Lugs),
        "Lugs",
        &LUGS,
        &rows,
        &|rows| Edit::Lugs(Choice::Set(rows)),
    );
}

/// How the rule of the lugs came to its angles.
fn lug_rule_ui(ui: &mut Ui, view: &mut View<'_>) {
    ui.label(
        RichText::new(
            "rule: each slot of the body shrunk until entry clears at every radius with the flank that the cutter leaves, then turned through the twist",
        )
        .small(),
    );
    let evaluation = view.evaluation;
    for working in &evaluation.derivation.lug_working {
        working_ui(ui, view, working);
    }
}
