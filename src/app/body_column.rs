//! The values of the body.

use egui::{Id, Ui};

use super::edit::{Edit, Fitted};
use super::group::group_ui;
use super::list_editor::{DEPTHS, EARS, OBSTACLES, Rows, list_ui};
use super::origin::revised;
use super::origin_editor::origin_ui;
use super::rows::{anchor_ui, below_ui, body_row_ui, mark_ui, presence_ui, salt_of};
use super::text_field::{choice_ui, text_ui};
use super::view::View;
use crate::document::FieldRef;
use crate::mount::{BodyField, Hand, Interface, Presence};

const SEAT: [BodyField; 3] = [
    BodyField::Register,
    BodyField::FlangeInner,
    BodyField::FlangeOuter,
];
const BAYONET: [BodyField; 4] = [
    BodyField::Throat,
    BodyField::SlotDiameter,
    BodyField::EarFrontDepth,
    BodyField::EarThickness,
];
const SPRINGS: [BodyField; 2] = [BodyField::SpringCircle, BodyField::SpringForce];
const STOP: [BodyField; 3] = [
    BodyField::StopAngle,
    BodyField::StopRadius,
    BodyField::StopDepth,
];
const PIN: [BodyField; 4] = [
    BodyField::LockPinCircle,
    BodyField::LockPinDiameter,
    BodyField::LockPinProtrusion,
    BodyField::LockPinAngle,
];
const SENSOR: [BodyField; 3] = [
    BodyField::SensorWidth,
    BodyField::SensorHeight,
    BodyField::PixelPitch,
];

fn fields(keys: &[BodyField], others: &[FieldRef]) -> Vec<FieldRef> {
    keys.iter()
        .copied()
        .map(FieldRef::Body)
        .chain(others.iter().copied())
        .collect()
}

/// The column of the body.
pub fn body_ui(ui: &mut Ui, view: &mut View<'_>) {
    if let Some(name) = text_ui(
        ui,
        view,
        Id::unique("body name"),
        "Body name",
        &view.design.body.name.clone(),
        "your own name",
    ) {
        view.wish_from(Id::unique("body name"), Edit::BodyName(name));
    }
    bayonet_ui(ui, view);
    turning_ui(ui, view);
    surroundings_ui(ui, view);
}

fn bayonet_ui(ui: &mut Ui, view: &mut View<'_>) {
    group_ui(
        ui,
        view,
        "Register and flange",
        true,
        &fields(&SEAT, &[]),
        |ui, view| rows_ui(ui, view, &SEAT),
    );
    group_ui(
        ui,
        view,
        "Bayonet",
        true,
        &fields(&BAYONET, &[FieldRef::Ears]),
        |ui, view| {
            rows_ui(ui, view, &BAYONET);
            let held = view.design.body.ears.clone();
            sectors_ui(ui, view, FieldRef::Ears, &EARS, &held, &Edit::Ears);
        },
    );
    group_ui(
        ui,
        view,
        "Springs",
        false,
        &fields(&SPRINGS, &[FieldRef::Springs]),
        |ui, view| {
            fitted_ui(ui, view, Fitted::Springs, &SPRINGS);
        },
    );
}

fn turning_ui(ui: &mut Ui, view: &mut View<'_>) {
    let turn = fields(
        &STOP,
        &[
            FieldRef::TwistHand,
            FieldRef::Stop,
            FieldRef::Body(BodyField::Twist),
        ],
    );
    group_ui(ui, view, "Twist and stop", false, &turn, |ui, view| {
        body_row_ui(ui, view, BodyField::Twist);
        hand_ui(ui, view);
        fitted_ui(ui, view, Fitted::Stop, &STOP);
    });
    let lock = fields(
        &PIN,
        &[FieldRef::LockPin, FieldRef::Body(BodyField::IndexAngle)],
    );
    group_ui(ui, view, "Lock pin and index", false, &lock, |ui, view| {
        fitted_ui(ui, view, Fitted::LockPin, &PIN);
        body_row_ui(ui, view, BodyField::IndexAngle);
    });
}

fn surroundings_ui(ui: &mut Ui, view: &mut View<'_>) {
    group_ui(
        ui,
        view,
        "Behind the flange",
        false,
        &[FieldRef::FreeDepth],
        |ui, view| {
            presence_ui(ui, view, Fitted::Mirror);
            let held = view.design.body.free_depth.clone();
            sectors_ui(
                ui,
                view,
                FieldRef::FreeDepth,
                &DEPTHS,
                &held,
                &Edit::FreeDepth,
            );
        },
    );
    group_ui(
        ui,
        view,
        "Obstacles near the mount",
        false,
        &[FieldRef::Obstacles],
        |ui, view| {
            let held = view.design.body.obstacles.clone();
            sectors_ui(
                ui,
                view,
                FieldRef::Obstacles,
                &OBSTACLES,
                &held,
                &Edit::Obstacles,
            );
        },
    );
    group_ui(
        ui,
        view,
        "Sensor",
        false,
        &fields(&SENSOR, &[]),
        |ui, view| rows_ui(ui, view, &SENSOR),
    );
}

fn rows_ui(ui: &mut Ui, view: &mut View<'_>, keys: &[BodyField]) {
    for key in keys {
        body_row_ui(ui, view, *key);
    }
}

fn fitted_ui(ui: &mut Ui, view: &mut View<'_>, part: Fitted, keys: &[BodyField]) {
    presence_ui(ui, view, part);
    match part.of(view.design) {
        Presence::Present | Presence::Unknown => rows_ui(ui, view, keys),
        Presence::Absent => {}
    }
}

/// A list with its origin.
fn sectors_ui<T: Clone>(
    ui: &mut Ui,
    view: &mut View<'_>,
    field: FieldRef,
    rows: &Rows<T>,
    held: &Interface<Vec<T>>,
    edit: &dyn Fn(Interface<Vec<T>>) -> Edit,
) {
    ui.horizontal(|ui| {
        anchor_ui(ui, view, field);
        let standing = held.standing();
        mark_ui(
            ui,
            view,
            field,
            standing.mark(),
            format!("Origin of {}: {}", field.label(), standing.word()),
        );
        if held.value().is_none()
            && ui
                .small_button(format!("there is no {}", rows.one))
                .clicked()
        {
            view.wish_from(
                salt_of(field),
                edit(Interface::assumed(Vec::new(), "looked: there is none")),
            );
        }
    });
    if view.selection.open_field == Some(field) {
        below_ui(ui, |ui| {
            origin_ui(ui, view, salt_of(field).with("origin"), held, None, edit);
        });
    }
    let known = held.value().cloned().unwrap_or_default();
    list_ui(
        ui,
        view,
        salt_of(field),
        field.label(),
        rows,
        &known,
        &|rows| edit(revised(held, rows)),
    );
}

fn hand_ui(ui: &mut Ui, view: &mut View<'_>) {
    let field = FieldRef::TwistHand;
    let held = view.design.body.twist_hand.clone();
    let choices = [
        (None, "unknown".to_owned()),
        (Some(Hand::Clockwise), Hand::Clockwise.word().to_owned()),
        (
            Some(Hand::Anticlockwise),
            Hand::Anticlockwise.word().to_owned(),
        ),
    ];
    let now = held.value().copied();
    let salt = salt_of(field);
    if let Some(hand) = choice_ui(
        ui,
        salt,
        view.selection.take_jump(FieldRef::TwistHand),
        "Locks (from the lens side)",
        &now,
        &choices,
        field.how(),
    ) {
        let value = hand.map_or(Interface::Unknown, |hand| revised(&held, hand));
        view.wish_from(salt, Edit::TwistHand(value));
    }
}
