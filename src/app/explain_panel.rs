//! Help in place: what a field or a finding is, how it is measured, what happens if it is wrong, how it stands.

use egui::{RichText, Ui};

use super::if_wrong::{if_unheeded, if_wrong};
use super::palette::Palette;
use super::standing::field_standing;
use super::view::Lit;
use crate::checks::FindingKey;
use crate::document::FieldRef;
use crate::evaluate::Evaluation;

/// What is said of a field, in lines.
#[must_use]
pub fn field_lines(field: FieldRef) -> Vec<String> {
    let mut lines = Vec::new();
    match field {
        FieldRef::Ring(key) => lines.push(format!("rule: {}", key.rule())),
        FieldRef::Limit(key) => lines.push(format!(
            "default {}: {}",
            key.unit().show(key.default_value()),
            key.why()
        )),
        FieldRef::Lens(_)
        | FieldRef::Body(_)
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
        | FieldRef::Clocking => lines.push(format!("how to measure: {}", field.how())),
        FieldRef::Lugs
        | FieldRef::SeatKind
        | FieldRef::PinHandling
        | FieldRef::Trim
        | FieldRef::Finish
        | FieldRef::ThreadHold
        | FieldRef::Cutter
        | FieldRef::Material
        | FieldRef::Pieces => {}
    }
    lines.push(wrong_line(field));
    lines
}

/// The line that says what happens if a field is wrong.
#[must_use]
pub fn wrong_line(field: FieldRef) -> String {
    format!("if it is wrong: {}", if_wrong(field))
}

/// What is said of a finding, in lines.
#[must_use]
pub fn finding_lines(key: FindingKey) -> Vec<String> {
    vec![
        key.asks().to_owned(),
        format!("if nobody heeds it: {}", if_unheeded(key)),
    ]
}

/// The explanation of what had the keyboard, or the pointer, when help was asked for.
pub fn explain_ui(ui: &mut Ui, evaluation: &Evaluation, about: Lit, palette: Palette) {
    let (title, mut lines) =
        match about {
            Lit::Field(field) => {
                let mut lines = field_lines(field);
                lines.push(format!("now: {}", field_standing(evaluation, field)));
                (field.long_label(), lines)
            }
            Lit::Finding(key) => {
                let mut lines = finding_lines(key);
                lines.extend(evaluation.finding(key).map(|finding| {
                    format!("now: {}: {}", finding.severity.word(), finding.message)
                }));
                (key.title().to_owned(), lines)
            }
        };
    if let Some(first) = lines.first_mut() {
        let mut letters = first.chars();
        if let Some(letter) = letters.next() {
            *first = letter.to_uppercase().chain(letters).collect();
        }
    }
    ui.label(RichText::new(title).strong().color(palette.accent));
    for line in lines {
        ui.add(egui::Label::new(line).wrap());
    }
    ui.separator();
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{LimitKey, RingKey};
    use crate::mount::{BodyField, LensField};

    #[test]
    fn every_value_of_lens_and_body_says_how_it_is_measured_and_what_it_spoils() {
        let lens = LensField::ALL.iter().map(|key| FieldRef::Lens(*key));
        let body = BodyField::ALL.iter().map(|key| FieldRef::Body(*key));
        for field in lens.chain(body) {
            let lines = field_lines(field);
            assert!(lines[0].starts_with("how to measure: ") && lines[0].len() > 20);
            assert!(
                lines[1].starts_with("if it is wrong: "),
                "{}",
                field.label()
            );
        }
    }

    #[test]
    fn every_dimension_and_limit_says_its_rule_or_reason() {
        for key in RingKey::ALL {
            let lines = field_lines(FieldRef::Ring(*key));
            assert!(lines[0].contains(key.rule()) && lines.len() == 2);
        }
        for key in LimitKey::ALL {
            let lines = field_lines(FieldRef::Limit(*key));
            assert!(lines[0].contains(key.why()) && lines.len() == 2);
        }
    }

    #[test]
    fn every_finding_says_what_it_asks_and_what_it_leads_to() {
        for key in FindingKey::ALL {
            let lines = finding_lines(*key);
            assert!(lines[0].ends_with('?') && lines[1].len() > 40, "{key:?}");
        }
    }
}
