//! `assumed-values`: interface values that nobody has measured, and unknown ones that stop the ring.

use std::collections::BTreeSet;

use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::interface_values::{asked_for, standing_of};
use crate::document::{Choice, Design, FieldRef, RingKey};
use crate::mount::{Standing, Unit};
use crate::ring::Derivation;

const KEY: FindingKey = FindingKey::AssumedValues;

/// How many assumed or disputed values bear on a dimension of the ring: the drawing prints it.
#[must_use]
pub fn count_assumed(design: &Design, derivation: &Derivation) -> usize {
    let bearing = bearing_on_dimensions(design, derivation);
    bearing
        .into_iter()
        .filter(|field| is_doubtful(design, *field))
        .count()
}

/// Lists what must be measured, also where the ring is not whole.
#[must_use]
pub fn check(design: &Design, derivation: &Derivation) -> Finding {
    if derivation.ring.is_none() && !derivation.missing.is_empty() {
        return stopped(&derivation.missing);
    }
    let bearing = bearing_on_dimensions(design, derivation);
    let asked: BTreeSet<FieldRef> = asked_for(design)
        .into_iter()
        .chain(bearing.iter().copied())
        .collect();
    let doubtful: Vec<FieldRef> = bearing
        .iter()
        .copied()
        .filter(|field| is_doubtful(design, *field))
        .collect();
    if !doubtful.is_empty() {
        return counted(design, &doubtful, asked.len());
    }
    let open: Vec<FieldRef> = asked
        .iter()
        .copied()
        .filter(|field| standing_of(design, *field).is_some_and(Standing::wants_measuring))
        .collect();
    if open.is_empty() {
        let message =
            "every value that the ring rests on is measured, published or fixed by a standard";
        return Finding::said(KEY, Severity::Ok, message);
    }
    let message = format!(
        "no dimension rests on an assumption, but {} only for the checks: {}",
        values_are(open.len(), "unknown or assumed"),
        listed(design, &open)
    );
    let mut finding = at_fields(Finding::said(KEY, Severity::Note, message), &open);
    finding.remedy = Some(Remedy::words(how_to_measure(&open)));
    finding
}

/// Unknown values that leave the ring without a dimension.
fn stopped(missing: &[FieldRef]) -> Finding {
    let names: Vec<String> = missing.iter().map(|field| field.long_label()).collect();
    let message = format!(
        "{}, which stops the ring: {}",
        values_are(missing.len(), "unknown"),
        names.join(", ")
    );
    at_fields(Finding::said(KEY, Severity::Clash, message), missing)
        .cured_by(Remedy::words(how_to_measure(missing)))
}

/// Assumed or disputed values under dimensions.
fn counted(design: &Design, doubtful: &[FieldRef], asked: usize) -> Finding {
    let message = format!(
        "measure before cutting: {} under the ring's dimensions: {}",
        values_are(doubtful.len(), "assumed or disputed"),
        listed(design, doubtful)
    );
    let (count, all) = (
        counted_as_number(doubtful.len()),
        counted_as_number(asked.max(1)),
    );
    let mut finding = at_fields(Finding::said(KEY, Severity::Caution, message), doubtful);
    finding.value = Some(count);
    finding.limit = Some(0.0);
    finding.margin = Some(-count);
    finding.share = Some(-count / all);
    finding.unit = Unit::One;
    finding.cured_by(Remedy::words(how_to_measure(doubtful)))
}

/// A count of fields as a number; there are never more than a few hundred.
fn counted_as_number(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}

fn values_are(count: usize, what: &str) -> String {
    if count == 1 {
        format!("1 value is {what}")
    } else {
        format!("{count} values are {what}")
    }
}

fn listed(design: &Design, fields: &[FieldRef]) -> String {
    let named: Vec<String> = fields
        .iter()
        .map(|field| {
            let word = standing_of(design, *field).map_or("", Standing::word);
            format!("{} ({word})", field.long_label())
        })
        .collect();
    named.join(", ")
}

fn how_to_measure(fields: &[FieldRef]) -> String {
    let lines: Vec<String> = fields
        .iter()
        .map(|field| format!("{}: {}", field.long_label(), field.how()))
        .collect();
    format!("measure {}", lines.join("; "))
}

fn at_fields(mut finding: Finding, fields: &[FieldRef]) -> Finding {
    finding
        .places
        .extend(fields.iter().copied().map(Place::Field));
    finding
}

/// Whether a dimension of the ring follows, straight or through other dimensions, from a value that is only assumed or
/// disputed.
#[must_use]
pub fn rests_on_assumed(design: &Design, derivation: &Derivation, key: RingKey) -> bool {
    let mut asked = BTreeSet::new();
    let mut waiting = vec![key];
    while let Some(key) = waiting.pop() {
        let state = derivation.dimension(key).filter(|state| !state.is_set);
        let Some(working) = state.and_then(|state| state.working.as_ref()) else {
            continue;
        };
        for field in working.term.fields() {
            if is_doubtful(design, field) {
                return true;
            }
            if let FieldRef::Ring(other) = field
                && asked.insert(other)
            {
                waiting.push(other);
            }
        }
    }
    false
}

fn is_doubtful(design: &Design, field: FieldRef) -> bool {
    matches!(
        standing_of(design, field),
        Some(Standing::Assumed | Standing::Disputed)
    )
}

/// The interface values under the dimensions that follow their rules: the inputs of their workings, and the
/// lists that enter a working as one number.
fn bearing_on_dimensions(design: &Design, derivation: &Derivation) -> BTreeSet<FieldRef> {
    let by_rule = derivation.dimensions.iter().filter(|state| !state.is_set);
    let mut fields: BTreeSet<FieldRef> = by_rule
        .filter_map(|state| state.working.as_ref())
        .flat_map(|working| working.term.fields())
        .collect();
    fields.extend([
        FieldRef::LensThread,
        FieldRef::BarrelAtInfinity,
        FieldRef::BarrelAtCloseFocus,
        FieldRef::FreeDepth,
    ]);
    if design.ring.lugs == Choice::Derived {
        fields.extend(
            derivation
                .lug_working
                .iter()
                .flat_map(|line| line.term.fields()),
        );
        fields.extend([FieldRef::Ears, FieldRef::TwistHand]);
    }
    fields.retain(|field| standing_of(design, *field).is_some());
    fields
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{Bench, design, set, workshop};
    use crate::document::RingKey;
    use crate::mount::{Citation, Interface, Known, LensField, Origin};
    use crate::ring::derive;

    fn of(design: &Design) -> Finding {
        let bench = Bench::of(design.clone());
        check(&bench.design, &bench.derivation)
    }

    #[test]
    fn a_measured_pair_has_nothing_open() {
        let finding = of(&design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }

    #[test]
    fn an_assumed_value_under_a_dimension_is_counted() {
        let mut design = design();
        design.lens.register = Interface::assumed(45.46, "usual for this thread");
        let finding = of(&design);
        assert_eq!(finding.severity, Severity::Caution);
        assert!(
            finding.message.contains("lens register (assumed)"),
            "{}",
            finding.message
        );
        assert!(
            finding
                .message
                .starts_with("measure before cutting: 1 value is"),
            "{}",
            finding.message
        );
        assert_eq!(finding.value, Some(1.0));
        design.body.ears =
            Interface::assumed(design.body.ears.value().unwrap().clone(), "from a picture");
        let bench = Bench::of(design.clone());
        assert_eq!(count_assumed(&design, &bench.derivation), 2);
    }

    #[test]
    fn prints_that_disagree_are_disputed() {
        let mut design = design();
        let says = |says| Citation {
            says,
            source: "a print".to_owned(),
        };
        let origin = Origin::Published(vec![says(45.46), says(45.5)]);
        design.lens.register = Interface::Known(Known {
            value: 45.46,
            uncertainty: 0.0,
            origin,
        });
        let finding = of(&design);
        assert!(
            finding.message.contains("lens register (disputed)"),
            "{}",
            finding.message
        );
    }

    #[test]
    fn an_assumption_that_no_dimension_rests_on_is_a_note() {
        let mut design = design();
        design.lens.shoulder_fillet = Interface::assumed(0.0, "looks sharp");
        let finding = of(&design);
        assert_eq!(finding.severity, Severity::Note, "{}", finding.message);
        assert!(
            finding
                .message
                .contains("lens fillet at the shoulder (assumed)"),
            "{}",
            finding.message
        );
        design.lens.shoulder_fillet = Interface::Unknown;
        assert!(of(&design).message.contains("(unknown)"));
    }

    #[test]
    fn a_dimension_set_by_hand_rests_on_nothing() {
        let mut design = design();
        design.lens.pin_stopped_down = Interface::assumed(7.4, "guess");
        assert_eq!(of(&design).severity, Severity::Caution);
        set(&mut design, &[(RingKey::LipFaceDepth, 7.0)]);
        assert_eq!(of(&design).severity, Severity::Note);
    }

    #[test]
    fn unknown_values_that_stop_the_ring_are_a_clash_with_how_to_measure() {
        let mut design = design();
        design.lens.pin_bottom = Interface::Unknown;
        let derivation = derive(&design, &workshop());
        let finding = check(&design, &derivation);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            finding.message.contains("lens pin, at its bottom"),
            "{}",
            finding.message
        );
        assert!(
            finding
                .remedy
                .unwrap()
                .text
                .contains(LensField::PinBottom.how())
        );
    }
}
