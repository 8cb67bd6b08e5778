//! A correction of the finished ring with everything that follows from it: clocking, infinity, new clashes.

use super::proposal::{Action, Measured, Proposal, propose};
use crate::checks::Severity;
use crate::document::{Choice, Correction, Design, RingKey, SeatKind};
use crate::evaluate::{Evaluation, evaluate};
use crate::mount::Unit;
use crate::optics::object_distance_mm;
use crate::ring::{ResolvedRing, clockwise_deg_per_mm};
use crate::tolerance::{DecisionRule, Limits};
use crate::workshop::Workshop;

/// A skim comes out within so much either way, mm, where it is watched on an indicator; common practice, no source.
const CUT_ERROR_MM: f64 = 0.005;

/// Depths that are measured from the seat: they lose what is taken off it.
const FROM_THE_SEAT: [RingKey; 3] = [
    RingKey::LipFaceDepth,
    RingKey::ThreadLength,
    RingKey::AnnulusDepth,
];

/// A correction and what follows from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Corrected {
    /// What to do, and the error then to be expected.
    pub proposal: Proposal,
    /// How far the lens's mark turns on clockwise, seen from the lens side, degrees; negative the other way.
    pub clockwise_deg: f64,
    /// Where infinity lies then, if the whole uncertainty goes one way: the farthest sharp distance of a ring too
    /// thick, and the same mark of the scale for a ring too thin, mm. `None` while the focal length is unknown.
    pub infinity_mark_mm: Option<f64>,
}

impl Corrected {
    /// The entry for the design's history.
    #[must_use]
    pub fn record(&self, date: &str, note: &str) -> Correction {
        Correction {
            date: date.to_owned(),
            note: note.to_owned(),
            skim_mm: self.proposal.skim_mm(),
        }
    }

    /// What to do and what follows, in words.
    #[must_use]
    pub fn text(&self) -> String {
        let proposal = &self.proposal;
        let action = match &proposal.action {
            Action::Leave => "Leave it.".to_owned(),
            Action::Skim(depth) => format!("Skim {} off the seat.", mm(*depth)),
            Action::Shim(thickness) => format!("Lay a shim of {} on the seat.", mm(*thickness)),
            Action::Remake(why) => format!("Make the ring again: {why}."),
        };
        let turn = match proposal.skim_mm().total_cmp(&0.0) {
            std::cmp::Ordering::Equal => String::new(),
            std::cmp::Ordering::Less | std::cmp::Ordering::Greater => format!(
                " The lens then stops {} {} (seen from the lens side).",
                Unit::Deg.show(self.clockwise_deg.abs()),
                if self.clockwise_deg > 0.0 {
                    "further clockwise"
                } else {
                    "further anticlockwise"
                }
            ),
        };
        let infinity = self.infinity_mark_mm.map_or_else(String::new, |mark| {
            format!(
                " At worst the farthest sharp distance is {:.1} m (too thick), or infinity is sharp at that mark (too \
                 thin).",
                mark / 1000.0
            )
        });
        format!(
            "{action}{turn} Register error then {} give or take {}.{infinity}",
            mm(proposal.expected_mm),
            mm(proposal.doubt.expanded)
        )
    }
}

/// The correction of a ring whose register is off by what was measured. `None` where the design makes no whole ring.
#[must_use]
pub fn correct(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    measured: Measured,
    rule: DecisionRule,
) -> Option<Corrected> {
    let ring = evaluation.derivation.ring.as_ref()?;
    let (low_mm, high_mm) = evaluation
        .derivation
        .dimension(RingKey::SeatHeight)?
        .deviations;
    let guard = rule.guard_mm(measured.doubt.standard);
    let mut proposal = propose(measured, Limits { low_mm, high_mm }, guard, CUT_ERROR_MM);
    let clashes = new_clashes(
        design,
        workshop,
        ring,
        measured.error_mm,
        proposal.skim_mm(),
    );
    if !clashes.is_empty() {
        proposal = Proposal {
            action: Action::Remake(clashes.join(", ")),
            expected_mm: measured.error_mm,
            doubt: measured.doubt,
        };
    }
    let worst = proposal.expected_mm.abs() + proposal.doubt.expanded;
    Some(Corrected {
        clockwise_deg: clockwise_deg_per_mm(&ring.thread) * proposal.skim_mm(),
        infinity_mark_mm: design
            .lens
            .focal_length
            .number()
            .filter(|_| worst > 0.0)
            .map(|focal_length| object_distance_mm(focal_length, worst)),
        proposal,
    })
}

/// The checks that clash after the correction and did not before it.
fn new_clashes(
    design: &Design,
    workshop: &Workshop,
    ring: &ResolvedRing,
    error_mm: f64,
    skim_mm: f64,
) -> Vec<String> {
    if skim_mm.to_bits() == 0.0_f64.to_bits() {
        return Vec::new();
    }
    let before = evaluate(&as_cut(design, ring, 0.0, 0.0), workshop);
    let after = evaluate(&as_cut(design, ring, error_mm, skim_mm), workshop);
    after
        .findings
        .iter()
        .filter(|finding| finding.severity == Severity::Clash)
        .filter(|finding| {
            before
                .finding(finding.key)
                .is_none_or(|old| old.severity != Severity::Clash)
        })
        .map(|finding| format!("{}: {}", finding.key.name(), finding.message))
        .collect()
}

/// The ring with every size nailed down, its seat off by `error_mm`, then skimmed. What is measured from the seat moves
/// with it; the plate goes with a flush seat.
fn as_cut(design: &Design, ring: &ResolvedRing, error_mm: f64, skim_mm: f64) -> Design {
    let mut cut = design.clone();
    for key in RingKey::ALL {
        let goes_with_seat = *key == RingKey::SeatHeight
            || (*key == RingKey::PlateThickness && ring.seat == SeatKind::Flush);
        let change = if goes_with_seat {
            error_mm - skim_mm
        } else if FROM_THE_SEAT.contains(key) && ring.sizes.get(*key) > 0.0 {
            -skim_mm
        } else {
            0.0
        };
        cut.ring.dimensions.get_mut(*key).value = Choice::Set(ring.sizes.get(*key) + change);
    }
    cut.ring.seat = Choice::Set(ring.seat);
    cut.ring.lugs = Choice::Set(ring.lugs.clone());
    cut
}

fn mm(value: f64) -> String {
    Unit::Mm.show(value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::inspection::{DEFAULT_RULE, Doubt};

    fn corrected(error_mm: f64) -> Corrected {
        let design = demo_designs().unwrap().remove(0);
        let workshop = Workshop::default_set().unwrap();
        let evaluation = evaluate(&design, &workshop);
        let measured = Measured {
            error_mm,
            doubt: Doubt {
                standard: 0.003,
                expanded: 0.006,
            },
        };
        correct(&design, &workshop, &evaluation, measured, DEFAULT_RULE).unwrap()
    }

    /// 0.1 mm off a seat with a pitch of 1 mm: 36 degrees (360 s / P).
    #[test]
    fn a_skim_turns_the_lens_on_and_is_recorded() {
        let done = corrected(0.1);
        assert_eq!(done.proposal.action, Action::Skim(0.1));
        assert!((done.clockwise_deg - 36.0).abs() < 1e-9);
        let entry = done.record("first of May", "infinity not reached");
        assert!((entry.skim_mm - 0.1).abs() < 1e-12 && entry.date == "first of May");
        let text = done.text();
        assert!(
            text.contains("Skim 0.10 mm") && text.contains("36.00°"),
            "{text}"
        );
    }

    #[test]
    fn a_shim_turns_it_back_and_a_good_ring_is_left() {
        let done = corrected(-0.1);
        assert!((done.clockwise_deg + 36.0).abs() < 1e-9);
        assert!(done.text().contains("anticlockwise"));
        let left = corrected(0.001);
        assert_eq!(left.proposal.action, Action::Leave);
        assert!((left.record("", "").skim_mm).abs() < 1e-12);
    }

    #[test]
    fn a_skim_that_brings_a_clash_is_a_remake() {
        let done = corrected(1.2);
        match &done.proposal.action {
            Action::Remake(why) => assert!(!why.is_empty()),
            other => panic!("{other:?}"),
        }
    }

    /// Thin lens: f² / e + f.
    #[test]
    fn the_new_infinity_follows_from_what_is_left_in_doubt() {
        let done = corrected(0.1);
        let design = demo_designs().unwrap().remove(0);
        let f = design.lens.focal_length.number().unwrap();
        let worst = done.proposal.doubt.expanded;
        assert!((done.infinity_mark_mm.unwrap() - (f * f / worst + f)).abs() < 1e-6);
    }
}
