//! What opens below a ring dimension: its rule and working, its tolerance with the rule of that, and a way to set it.

use egui::{RichText, Ui};

use super::edit::Edit;
use super::rows::salt_of;
use super::text_field::{choice_ui, read_ui};
use super::tolerance_text::{read_tolerance, tolerance_words};
use super::view::View;
use super::working_panel::{link_ui, working_ui};
use crate::document::{FieldRef, RingKey, Tolerance};
use crate::mount::{Unit, show_number};
use crate::ring::{DimensionState, tolerance_rule};

/// The ways to give a tolerance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    Rule,
    PlusMinus,
    Deviations,
    Fit,
}

impl Way {
    const fn of(tolerance: &Tolerance) -> Self {
        match tolerance {
            Tolerance::Derived => Self::Rule,
            Tolerance::PlusMinus(_) => Self::PlusMinus,
            Tolerance::Deviations(..) => Self::Deviations,
            Tolerance::Fit(_) => Self::Fit,
        }
    }

    /// A tolerance of this kind that begins with what is in force.
    fn beginning(self, deviations: (f64, f64)) -> Tolerance {
        let (lower, upper) = deviations;
        match self {
            Self::Rule => Tolerance::Derived,
            Self::PlusMinus => Tolerance::PlusMinus((upper - lower) / 2.0),
            Self::Deviations => Tolerance::Deviations(lower, upper),
            Self::Fit => Tolerance::Fit("h9".to_owned()),
        }
    }

    const fn hint(self) -> &'static str {
        match self {
            Self::Rule => "by its rule",
            Self::PlusMinus => "±0.02",
            Self::Deviations => "+0.05/0",
            Self::Fit => "h9, H7",
        }
    }
}

/// Rule, working and tolerance of a dimension.
pub fn dimension_ui(ui: &mut Ui, view: &mut View<'_>, key: RingKey, state: &DimensionState) {
    ui.label(RichText::new(format!("rule: {}", key.rule())).small());
    if let Some(working) = &state.working {
        working_ui(ui, view, working);
    }
    for missing in &state.missing {
        link_ui(
            ui,
            view,
            *missing,
            &format!("lacks {}", missing.long_label()),
        );
    }
    tolerance_ui(ui, view, key, state);
}

fn tolerance_ui(ui: &mut Ui, view: &mut View<'_>, key: RingKey, state: &DimensionState) {
    let tolerance = &view.design.ring.dimensions.get(key).tolerance;
    ui.label(RichText::new(in_force(key, state)).small());
    ui.label(
        RichText::new(format!("rule of the tolerance: {}", tolerance_rule(key)))
            .small()
            .color(view.palette.faint_ink),
    );
    let now = Way::of(tolerance);
    let mut ways = vec![
        (Way::Rule, "by its rule".to_owned()),
        (Way::PlusMinus, "plus and minus".to_owned()),
        (Way::Deviations, "two deviations".to_owned()),
    ];
    if key.unit() == Unit::Mm {
        ways.push((Way::Fit, "ISO 286 fit".to_owned()));
    }
    let salt = salt_of(FieldRef::Ring(key)).with("tolerance");
    let hover = "how the tolerance is given";
    if let Some(way) = choice_ui(ui, salt, false, "Tolerance", &now, &ways, hover) {
        view.wish_from(salt, Edit::Tolerance(key, way.beginning(state.deviations)));
    }
    if now != Way::Rule {
        let held = tolerance_words(tolerance);
        read_ui(
            ui,
            view,
            salt,
            "Tolerance as written",
            &held,
            now.hint(),
            |text| {
                read_tolerance(text, key.unit()).map(|tolerance| Edit::Tolerance(key, tolerance))
            },
        );
    }
    super::field::refusal_ui(ui, view, salt);
}

/// The tolerance in force with its two deviations.
fn in_force(key: RingKey, state: &DimensionState) -> String {
    let (lower, upper) = state.deviations;
    let signed = |value: f64| {
        let sign = if value > 0.0 { "+" } else { "" };
        format!("{sign}{}", show_number(value, 3))
    };
    let printed = if state.tolerance_text.is_empty() {
        "general tolerance".to_owned()
    } else {
        state.tolerance_text.clone()
    };
    format!(
        "tolerance {printed}: {} to {} {}",
        signed(lower),
        signed(upper),
        key.unit().sign()
    )
}
