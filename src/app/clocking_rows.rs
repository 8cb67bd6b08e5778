//! Where the threads begin, what a trial fit showed, and the ways out.

use egui::{Id, RichText, Ui};

use super::edit::Edit;
use super::field::{NumberField, number_ui};
use super::rows::anchor_ui;
use super::view::View;
use crate::checks::FindingKey;
use crate::document::{Clocking, FieldRef};
use crate::mount::Unit;

/// One of the three angles: label, hover, how it is read and how it is set.
struct Angle {
    label: &'static str,
    hover: &'static str,
    get: fn(&Clocking) -> Option<f64>,
    set: fn(&mut Clocking, Option<f64>),
}

const ANGLES: [Angle; 3] = [
    Angle {
        label: "Lens mark, trial fit",
        hover: "where the lens's mark came to rest in the locked ring: clock angle seen from the lens side",
        get: |clocking| clocking.trial_reading_deg,
        set: |clocking, angle| clocking.trial_reading_deg = angle,
    },
    Angle {
        label: "Ring thread start",
        hover: "where the groove of the ring's thread, carried on, meets the plane of the flange rear face: clock angle of the locked ring seen from the lens side",
        get: |clocking| clocking.thread_start_deg,
        set: |clocking, angle| clocking.thread_start_deg = angle,
    },
    Angle {
        label: "Lens thread start",
        hover: "where the ridge of the lens's thread, carried on, meets the shoulder: clockwise from the lens's mark, seen from the front of the lens",
        get: |clocking| clocking.lens_start_deg,
        set: |clocking, angle| clocking.lens_start_deg = angle,
    },
];

/// The three angles, and what the check of the marks makes of them.
pub fn clocking_ui(ui: &mut Ui, view: &mut View<'_>) {
    anchor_ui(ui, view, FieldRef::Clocking);
    let now = view.design.ring.clocking;
    for angle in &ANGLES {
        let row = NumberField {
            label: angle.label,
            salt: Id::unique(("clocking", angle.label)),
            field: None,
            value: (angle.get)(&now),
            unit: Unit::Deg,
            label_width: None,
            hover: angle.hover.to_owned(),
            step: 0.0,
        };
        let changed = |value: Option<f64>| {
            let mut next = now;
            (angle.set)(&mut next, value);
            Edit::Clocking(next)
        };
        number_ui(
            ui,
            view,
            &row,
            |value| changed(Some(value)),
            |ui, view| {
                if (angle.get)(&now).is_some()
                    && ui
                        .small_button("×")
                        .on_hover_text(format!("forget: {}", angle.label))
                        .clicked()
                {
                    view.wish_from(row.salt, changed(None));
                }
            },
        );
    }
    if let Some(finding) = view.evaluation.finding(FindingKey::IndexMark) {
        ui.label(RichText::new(&finding.message).small());
        if let Some(remedy) = &finding.remedy {
            ui.label(RichText::new(&remedy.text).small());
        }
    }
}
