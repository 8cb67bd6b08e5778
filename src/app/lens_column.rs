//! The values of the lens.

use egui::{Id, Ui};

use super::edit::{Edit, Fitted, Focus};
use super::group::group_ui;
use super::list_editor::{STEPS, list_ui};
use super::origin::revised;
use super::origin_editor::origin_ui;
use super::rows::{anchor_ui, below_ui, lens_row_ui, mark_ui, presence_ui, salt_of};
use super::text_field::{read_ui, text_ui};
use super::view::View;
use crate::document::FieldRef;
use crate::mount::{Interface, LensField, Presence};
use crate::standards::Thread;

const SEAT: [LensField; 5] = [
    LensField::Register,
    LensField::MaleThreadLength,
    LensField::ThreadRunOut,
    LensField::ShoulderFillet,
    LensField::ShoulderDiameter,
];
const APERTURE: [LensField; 3] = [
    LensField::ApertureRingInner,
    LensField::ApertureRingOuter,
    LensField::ApertureRingAhead,
];
const PIN: [LensField; 6] = [
    LensField::PinCircle,
    LensField::PinDiameter,
    LensField::PinFree,
    LensField::PinStoppedDown,
    LensField::PinBottom,
    LensField::PinForce,
];
const OPTICS: [LensField; 6] = [
    LensField::FocalLength,
    LensField::FNumber,
    LensField::ExitPupilDistance,
    LensField::PupilMagnification,
    LensField::Mass,
    LensField::CentreOfGravityAhead,
];

fn fields(keys: &[LensField], others: &[FieldRef]) -> Vec<FieldRef> {
    keys.iter()
        .copied()
        .map(FieldRef::Lens)
        .chain(others.iter().copied())
        .collect()
}

/// The column of the lens.
pub fn lens_ui(ui: &mut Ui, view: &mut View<'_>) {
    if let Some(name) = text_ui(
        ui,
        view,
        Id::unique("lens name"),
        "Lens name",
        &view.design.lens.name.clone(),
        "your own name",
    ) {
        view.wish_from(Id::unique("lens name"), Edit::LensName(name));
    }
    group_ui(
        ui,
        view,
        "Register, thread, shoulder",
        true,
        &fields(&SEAT, &[FieldRef::LensThread]),
        |ui, view| {
            rows_ui(ui, view, SEAT.get(..1));
            thread_ui(ui, view);
            rows_ui(ui, view, SEAT.get(1..));
        },
    );
    let barrel = [FieldRef::BarrelAtInfinity, FieldRef::BarrelAtCloseFocus];
    group_ui(ui, view, "Rear barrel", false, &barrel, |ui, view| {
        barrel_ui(ui, view, Focus::Infinity, FieldRef::BarrelAtInfinity);
        barrel_ui(ui, view, Focus::Close, FieldRef::BarrelAtCloseFocus);
    });
    let group = fields(&APERTURE, &[FieldRef::ApertureRing]);
    group_ui(
        ui,
        view,
        "Aperture ring of the lens",
        false,
        &group,
        |ui, view| fitted_ui(ui, view, Fitted::ApertureRing, &APERTURE),
    );
    let group = fields(&PIN, &[FieldRef::StopDownPin]);
    group_ui(
        ui,
        view,
        "Stop-down pin of the lens",
        false,
        &group,
        |ui, view| fitted_ui(ui, view, Fitted::StopDownPin, &PIN),
    );
    group_ui(
        ui,
        view,
        "Optics and mass",
        false,
        &fields(&OPTICS, &[]),
        |ui, view| rows_ui(ui, view, Some(&OPTICS)),
    );
}

fn rows_ui(ui: &mut Ui, view: &mut View<'_>, keys: Option<&[LensField]>) {
    for key in keys.into_iter().flatten() {
        lens_row_ui(ui, view, *key);
    }
}

fn fitted_ui(ui: &mut Ui, view: &mut View<'_>, part: Fitted, keys: &[LensField]) {
    presence_ui(ui, view, part);
    match part.of(view.design) {
        Presence::Present | Presence::Unknown => rows_ui(ui, view, Some(keys)),
        Presence::Absent => {}
    }
}

fn thread_ui(ui: &mut Ui, view: &mut View<'_>) {
    let field = FieldRef::LensThread;
    let held = view.design.lens.thread.clone();
    let shown = held.value().map(ToString::to_string).unwrap_or_default();
    let salt = salt_of(field);
    ui.horizontal_top(|ui| {
        let width = ui.available_width() - 28.0;
        ui.allocate_ui(egui::vec2(width, 20.0), |ui| {
            ui.vertical(|ui| {
                read_ui(
                    ui,
                    view,
                    salt,
                    field.label(),
                    &shown,
                    "M42x1 or 1-32 UN",
                    |text| {
                        if text.trim().is_empty() {
                            return Ok(Edit::Thread(Interface::Unknown));
                        }
                        let thread: Thread =
                            text.parse()
                                .map_err(|error: crate::standards::DesignationError| {
                                    error.to_string()
                                })?;
                        Ok(Edit::Thread(revised(&held, thread)))
                    },
                );
            });
        });
        let standing = held.standing();
        mark_ui(
            ui,
            view,
            field,
            standing.mark(),
            format!("Origin of {}: {}", field.label(), standing.word()),
        );
    });
    if view.selection.jump == Some(field) {
        ui.memory_mut(|memory| memory.request_focus(salt.with("box")));
        view.selection.jump = None;
    }
    if view.selection.open_field == Some(field) {
        below_ui(ui, |ui| {
            origin_ui(ui, view, salt.with("origin"), &held, None, &Edit::Thread);
        });
    }
}

fn barrel_ui(ui: &mut Ui, view: &mut View<'_>, focus: Focus, field: FieldRef) {
    let held = match focus {
        Focus::Infinity => &view.design.lens.barrel_at_infinity,
        Focus::Close => &view.design.lens.barrel_at_close_focus,
    };
    let held = held.clone();
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
    });
    let rows = held.value().cloned().unwrap_or_default();
    list_ui(
        ui,
        view,
        salt_of(field),
        field.label(),
        &STEPS,
        &rows,
        &|rows| Edit::Barrel(focus, revised(&held, rows)),
    );
    if view.selection.open_field == Some(field) {
        let edit = move |value| Edit::Barrel(focus, value);
        below_ui(ui, |ui| {
            origin_ui(ui, view, salt_of(field).with("origin"), &held, None, &edit);
        });
    }
}
