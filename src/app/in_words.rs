//! The drawings in words, for those who do not see them.

use crate::checks::Severity;
use crate::document::RingKey;
use crate::evaluate::Evaluation;
use crate::mount::Unit;

/// The sizes that make up the half-section, from the lens to the sensor.
const OF_THE_SECTION: [RingKey; 11] = [
    RingKey::SeatHeight,
    RingKey::FlangeDiameter,
    RingKey::PlateThickness,
    RingKey::ThreadLength,
    RingKey::ReliefWidth,
    RingKey::LipFaceDepth,
    RingKey::LipBore,
    RingKey::GrooveWidth,
    RingKey::LugDiameter,
    RingKey::LugThickness,
    RingKey::SpigotLength,
];

/// The half-section in words.
#[must_use]
pub fn section_in_words(evaluation: &Evaluation) -> String {
    let Some(ring) = &evaluation.derivation.ring else {
        return "no ring yet: values are missing".to_owned();
    };
    let sizes: Vec<String> = OF_THE_SECTION
        .into_iter()
        .map(|key| format!("{} {}", key.label(), key.unit().show(ring.sizes.get(key))))
        .collect();
    format!("{}; {}", sizes.join(", "), verdict(evaluation))
}

/// The lug pattern in words.
#[must_use]
pub fn plan_in_words(evaluation: &Evaluation) -> String {
    let Some(ring) = &evaluation.derivation.ring else {
        return "no ring yet: values are missing".to_owned();
    };
    let lugs: Vec<String> = ring
        .lugs
        .iter()
        .map(|lug| {
            format!(
                "from {} to {}",
                Unit::Deg.show(lug.start_deg.rem_euclid(360.0)),
                Unit::Deg.show(lug.end_deg().rem_euclid(360.0))
            )
        })
        .collect();
    format!(
        "{} lugs when locked, clock angles seen from the lens side: {}; {}",
        lugs.len(),
        lugs.join(", "),
        verdict(evaluation)
    )
}

fn verdict(evaluation: &Evaluation) -> String {
    format!(
        "{} clashes, {} cautions",
        evaluation.count(Severity::Clash),
        evaluation.count(Severity::Caution)
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::evaluate::evaluate;
    use crate::workshop::Workshop;

    #[test]
    fn both_drawings_are_told_with_their_numbers() {
        let workshop = Workshop::default_set().unwrap();
        let demo = demo_designs().unwrap().remove(0);
        let evaluation = evaluate(&demo, &workshop);
        let section = section_in_words(&evaluation);
        assert!(section.contains("Seat height 1.46 mm"), "{section}");
        let plan = plan_in_words(&evaluation);
        assert!(plan.starts_with("3 lugs when locked"), "{plan}");
        assert!(plan.ends_with("0 clashes, 0 cautions"), "{plan}");
    }
}
