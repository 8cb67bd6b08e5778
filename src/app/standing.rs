//! What is said of an edge or a value under the pointer: name, value, rule, and how it stands.

use super::field::shown;
use super::pick::Picked;
use super::view::View;
use crate::checks::{Change, Finding, Place, Severity};
use crate::document::{FieldRef, RingKey};
use crate::evaluate::Evaluation;
use crate::ring::Feature;

/// The worst finding that touches what was picked; the findings stand worst first.
#[must_use]
pub fn worst_touching(evaluation: &Evaluation, picked: Picked) -> Option<&Finding> {
    worst(
        evaluation,
        |feature| picked == Picked::Feature(feature),
        |field| picked.belongs_to(field),
    )
}

/// How a field stands, in one line.
#[must_use]
pub fn field_standing(evaluation: &Evaluation, field: FieldRef) -> String {
    let finding = worst(
        evaluation,
        |feature| Picked::Feature(feature).belongs_to(field),
        |other| other == field,
    );
    words_of(finding)
}

fn worst(
    evaluation: &Evaluation,
    is_feature: impl Fn(Feature) -> bool,
    is_field: impl Fn(FieldRef) -> bool,
) -> Option<&Finding> {
    evaluation
        .findings
        .iter()
        .find(|finding| touches(finding, &is_feature, &is_field))
}

fn touches(
    finding: &Finding,
    is_feature: &impl Fn(Feature) -> bool,
    is_field: &impl Fn(FieldRef) -> bool,
) -> bool {
    let at_a_place = finding.places.iter().any(|place| match place {
        Place::Feature(feature) => is_feature(*feature),
        Place::Field(field) => is_field(*field),
        Place::Span { .. } | Place::Plan { .. } | Place::Hole { .. } => false,
    });
    let change = finding
        .remedy
        .as_ref()
        .and_then(|remedy| remedy.change.as_ref());
    let by_remedy = change.is_some_and(|change| match change {
        Change::Dimension(key, _) | Change::LetGo(key) => is_field(FieldRef::Ring(*key)),
        Change::Lugs(_) | Change::LetLugsGo => is_field(FieldRef::Lugs),
        Change::ThreadHold(_) | Change::Cutter(_) => false,
    });
    at_a_place || by_remedy
}

fn words_of(finding: Option<&Finding>) -> String {
    match finding {
        Some(finding) if finding.severity == Severity::Ok => {
            format!("stands well: {}", finding.key.title())
        }
        Some(finding) => format!(
            "{}: {}: {}",
            finding.severity.word(),
            finding.key.title(),
            finding.message
        ),
        None => "no finding is about it".to_owned(),
    }
}

/// Name, value, rule, standing and what can be done, for the hover text.
#[must_use]
pub fn told(view: &View<'_>, picked: Picked) -> String {
    let mut lines = vec![picked.label()];
    if let Some(FieldRef::Ring(key)) = picked.field() {
        lines.extend(value_lines(view.evaluation, key));
    }
    if picked == Picked::Cut {
        return lines.concat();
    }
    lines.push(words_of(worst_touching(view.evaluation, picked)));
    let how = if matches!(picked, Picked::Feature(Feature::FlangeRearFace)) {
        "everything is measured from here: drag the seat instead"
    } else {
        "drag to change, click to pick, double-click to type"
    };
    lines.push(how.to_owned());
    lines.join("\n")
}

fn value_lines(evaluation: &Evaluation, key: RingKey) -> Vec<String> {
    let Some(state) = evaluation.derivation.dimension(key) else {
        return Vec::new();
    };
    let value = state.value.map_or_else(
        || format!("{}: not known yet", key.label()),
        |value| {
            format!(
                "{}: {} {}",
                key.label(),
                shown(value, key.unit()),
                key.unit().sign()
            )
        },
    );
    let rule = if state.is_set {
        let by_rule = state.by_rule.map_or_else(String::new, |value| {
            format!("; the rule gives {}", key.unit().show(value))
        });
        format!("set by hand{by_rule}")
    } else {
        format!("by its rule: {}", key.rule())
    };
    vec![value, rule]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::evaluate::evaluate;
    use crate::workshop::Workshop;

    #[test]
    fn the_worst_finding_that_touches_an_edge_is_told() {
        let workshop = Workshop::default_set().unwrap();
        let clashing = demo_designs()
            .unwrap()
            .into_iter()
            .map(|design| evaluate(&design, &workshop))
            .find(|evaluation| evaluation.count(Severity::Clash) > 2)
            .unwrap();
        let told: Vec<Severity> = [
            Picked::Feature(Feature::Rim),
            Picked::Feature(Feature::LipFace),
            Picked::Feature(Feature::LipBore),
            Picked::LockHole,
        ]
        .into_iter()
        .filter_map(|picked| worst_touching(&clashing, picked))
        .map(|finding| finding.severity)
        .collect();
        assert!(told.contains(&Severity::Clash), "{told:?}");
        for finding in &clashing.findings {
            for place in &finding.places {
                if let Place::Feature(feature) = place {
                    let worst = worst_touching(&clashing, Picked::Feature(*feature)).unwrap();
                    // Severities are in order, the worst first.
                    assert!(worst.severity <= finding.severity);
                }
            }
        }
    }
}
