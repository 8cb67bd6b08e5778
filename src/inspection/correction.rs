//! A correction of the finished ring with everything that follows from it: clocking, infinity, new clashes.

use super::doubt::Doubt;
use super::proposal::{Action, Done, Measured, Proposal, propose};
use crate::checks::Severity;
use crate::document::{Choice, Correction, Design, RegisterError, RingKey, SeatKind};
use crate::evaluate::{Evaluation, evaluate};
use crate::mount::Unit;
use crate::optics::object_distance_mm;
use crate::ring::{ResolvedRing, clockwise_deg_per_mm, rest_of};
use crate::tolerance::{Component, DecisionRule, Limits};
use crate::workshop::Workshop;

/// A skim comes out within so much either way, mm, where it is watched on an indicator; common practice, no source.
const CUT_ERROR_MM: f64 = 0.005;

/// Depths that are measured from the seat: they lose what is taken off it.
const FROM_THE_SEAT: [RingKey; 3] = [
    RingKey::LipFaceDepth,
    RingKey::ThreadLength,
    RingKey::AnnulusDepth,
];

/// Where the lens's mark comes to rest, clock degrees seen from the lens side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MarkRest {
    /// Before the correction.
    pub before_deg: f64,
    /// After it.
    pub after_deg: f64,
    /// The index mark, at which it should stand.
    pub wanted_deg: f64,
}

/// A correction and what follows from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Corrected {
    /// The error it rests on.
    pub measured: Measured,
    /// The errors that are allowed, mm.
    pub limits: Limits,
    /// What to do, and the error then to be expected.
    pub proposal: Proposal,
    /// How far the lens's mark turns on clockwise, seen from the lens side, degrees; negative the other way.
    pub clockwise_deg: f64,
    /// Where the mark comes to rest, as far as a trial fit or the thread starts tell it.
    pub mark: Option<MarkRest>,
    /// Where infinity lies then. `None` while the focal length is unknown.
    pub infinity: Option<Infinity>,
    /// What lies on the seat already, mm: a thinner shim does what a skim would.
    pub shims_mm: f64,
}

/// Where infinity lies at both ends of what is left in doubt, by the thin-lens equation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Infinity {
    /// The farthest sharp distance at the thick end, mm; none where infinity is reached there too.
    pub farthest_mm: Option<f64>,
    /// What the scale reads when infinity is sharp at the thin end, mm; none where it is never too thin.
    pub mark_mm: Option<f64>,
}

impl Infinity {
    /// For a lens of this focal length and an error that lies between two ends, mm.
    fn of(focal_length_mm: f64, low_mm: f64, high_mm: f64) -> Self {
        let at = |extension_mm: f64| {
            (extension_mm > 0.0).then(|| object_distance_mm(focal_length_mm, extension_mm))
        };
        Self {
            farthest_mm: at(high_mm),
            mark_mm: at(-low_mm),
        }
    }
}

impl Corrected {
    /// The entry for the design's history, of what was really done.
    #[must_use]
    pub fn record(&self, done: Done, date: &str, note: &str) -> Correction {
        let (skim_mm, remade) = (done.skim_mm(), done == Done::MadeAgain);
        let Doubt { expanded, .. } = self.measured.doubt.and(cut());
        Correction {
            date: date.to_owned(),
            note: note.to_owned(),
            skim_mm,
            remade,
            found: Some(RegisterError {
                error_mm: self.measured.error_mm,
                expanded_mm: self.measured.doubt.expanded,
            }),
            expected: (!remade).then_some(RegisterError {
                error_mm: self.measured.error_mm - skim_mm,
                expanded_mm: expanded,
            }),
            mark_before_deg: self.mark.map(|mark| mark.before_deg),
        }
    }

    /// What to do, in a sentence.
    #[must_use]
    pub fn action_text(&self) -> String {
        match &self.proposal.action {
            Action::Leave => "Leave it.".to_owned(),
            Action::MeasureAgain => {
                "Measure again, better, before anything is cut: what was found is less than its own uncertainty.".to_owned()
            }
            Action::Skim(depth) if self.shims_mm >= *depth => format!(
                "Skim {} off the seat, or take a shim thinner by as much.",
                mm(*depth)
            ),
            Action::Skim(depth) => format!("Skim {} off the seat.", mm(*depth)),
            Action::Shim(thickness) => format!("Lay a shim of {} on the seat.", mm(*thickness)),
            Action::Remake(why) => format!("Make the ring again: {why}."),
        }
    }

    /// How the lens then stops; none where nothing turns.
    #[must_use]
    pub fn turn_text(&self) -> Option<String> {
        let way = match self.clockwise_deg.total_cmp(&0.0) {
            std::cmp::Ordering::Equal => return None,
            std::cmp::Ordering::Less => "anticlockwise",
            std::cmp::Ordering::Greater => "clockwise",
        };
        let mark = self.mark.map_or_else(
            || " Where its mark then stands is not known: read it in a trial fit.".to_owned(),
            |mark| {
                format!(
                    " Its mark goes from {} to {}, the index stands at {}.",
                    Unit::Deg.show(mark.before_deg),
                    Unit::Deg.show(mark.after_deg),
                    Unit::Deg.show(mark.wanted_deg.rem_euclid(360.0))
                )
            },
        );
        Some(format!(
            "The lens then stops {} further {way} (seen from the lens side).{mark}",
            Unit::Deg.show(self.clockwise_deg.abs())
        ))
    }

    /// What error is then left.
    #[must_use]
    pub fn left_text(&self) -> String {
        let word = match self.proposal.action {
            Action::Leave | Action::MeasureAgain | Action::Remake(_) => "is",
            Action::Skim(_) | Action::Shim(_) => "then",
        };
        format!(
            "Register error {word} {} give or take {} (95 %).",
            mm(self.proposal.expected_mm),
            mm(self.proposal.doubt.expanded)
        )
    }

    /// What becomes of infinity; none while the focal length is unknown.
    #[must_use]
    pub fn infinity_text(&self) -> Option<String> {
        let Infinity {
            farthest_mm,
            mark_mm,
        } = self.infinity?;
        let metres = |distance_mm: f64| format!("{:.1} m", distance_mm / 1000.0);
        Some(match (farthest_mm, mark_mm) {
            (Some(farthest), Some(mark)) => format!(
                "Infinity: at the thick end of that the farthest sharp distance is {}, at the thin end infinity is sharp \
                 where the scale reads {}.",
                metres(farthest),
                metres(mark)
            ),
            (None, Some(mark)) => format!(
                "Infinity is reached; it is sharp where the scale reads {} or farther.",
                metres(mark)
            ),
            (Some(farthest), None) => format!(
                "Infinity is not reached; the farthest sharp distance is {} at worst.",
                metres(farthest)
            ),
            (None, None) => "Infinity stands at its mark.".to_owned(),
        })
    }

    /// What to do and what follows, in words.
    #[must_use]
    pub fn text(&self) -> String {
        let turn = self.turn_text();
        let infinity = self.infinity_text();
        [
            Some(self.action_text()),
            turn,
            Some(self.left_text()),
            infinity,
        ]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join(" ")
    }
}

/// The correction of a ring whose register is off by what was measured, with these errors allowed. `None` where the
/// design makes no whole ring.
#[must_use]
pub fn correct(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    measured: Measured,
    limits: Limits,
    rule: DecisionRule,
) -> Option<Corrected> {
    let ring = evaluation.derivation.ring.as_ref()?;
    let guard = rule.guard_mm(measured.doubt.standard);
    let mut proposal = propose(measured, limits, guard, CUT_ERROR_MM);
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
    let clockwise_deg = clockwise_deg_per_mm(&ring.thread) * proposal.skim_mm();
    Some(Corrected {
        measured,
        limits,
        clockwise_deg,
        mark: rest_of(design, ring).map(|rest| MarkRest {
            before_deg: rest.mark_deg,
            after_deg: (rest.mark_deg + clockwise_deg).rem_euclid(360.0),
            wanted_deg: rest.wanted_deg,
        }),
        infinity: design.lens.focal_length.number().map(|focal_length| {
            let (expected, doubt) = (proposal.expected_mm, proposal.doubt.expanded);
            Infinity::of(focal_length, expected - doubt, expected + doubt)
        }),
        shims_mm: design.shims_mm(),
        proposal,
    })
}

/// What a skim or a shim makes uncertain.
fn cut() -> Component {
    Component::within("depth of the cut", CUT_ERROR_MM)
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
#[path = "correction_tests.rs"]
mod tests;
