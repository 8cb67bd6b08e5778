//! `thread-hand`: locking or unlocking the bayonet must not turn the lens out of its thread.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy, Severity};
use crate::document::{FieldRef, ThreadHold};
use crate::mount::Hand;
use crate::ring::Feature;
use crate::standards::Thread;

const KEY: FindingKey = FindingKey::ThreadHand;

/// Judges the hands of thread and twist. The ring is turned by the lens unless something holds the two together.
///
/// # Errors
/// [`NotJudged`] while the hand of the twist or the lens thread is unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let hand = cx.known(FieldRef::TwistHand, &cx.design.body.twist_hand);
    let thread = cx.known(FieldRef::LensThread, &cx.design.lens.thread);
    let (hand, thread) = both(hand, thread)?;
    let lock_unscrews = *hand == unscrewing(thread);
    let turn = if lock_unscrews {
        "locking"
    } else {
        "unlocking"
    };
    let facts = format!(
        "{turn} turns the lens {} (seen from the lens side), which unscrews its {}-hand thread",
        unscrewing(thread).word(),
        if thread.is_left_hand() {
            "left"
        } else {
            "right"
        },
    );
    let hold = cx.design.ring.thread_hold;
    let finding = match hold {
        ThreadHold::Friction => {
            let severity = if lock_unscrews {
                Severity::Clash
            } else {
                Severity::Caution
            };
            Finding::said(
                KEY,
                severity,
                format!("{facts}: only the friction of the seat holds it"),
            )
        }
        ThreadHold::GripOnRing => Finding::said(
            KEY,
            Severity::Ok,
            format!("{facts}, but the ring has a grip of its own and is turned by it"),
        ),
        ThreadHold::SetScrew | ThreadHold::ThreadLocking => Finding::said(
            KEY,
            Severity::Ok,
            format!("{facts}, but the {} holds it", hold.word()),
        ),
    };
    Ok(finding.at(Place::Feature(Feature::Thread)).at(Place::Field(FieldRef::ThreadHold)).cured_by(Remedy {
        text: "give the ring a grip and turn it by that; or hold the thread with a set-screw or removable thread locking"
            .to_owned(),
        change: Some(Change::ThreadHold(ThreadHold::GripOnRing)),
    }))
}

/// The way the lens is turned to come out of the ring, seen from the lens side: a right-hand thread goes in clockwise.
fn unscrewing(thread: &Thread) -> Hand {
    if thread.is_left_hand() {
        Hand::Clockwise
    } else {
        Hand::Anticlockwise
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, lacking};
    use crate::document::{Choice, Design};
    use crate::mount::Interface;

    fn with_hands(twist: Hand, left_hand_thread: bool) -> Design {
        let mut design = design();
        design.body.twist_hand = Interface::measured(twist, "by eye");
        let thread = design
            .lens
            .thread
            .value()
            .unwrap()
            .with_left_hand(left_hand_thread);
        design.lens.thread = Interface::measured(thread, "by eye");
        design
    }

    /// A right-hand screw goes in clockwise as seen by who drives it: by definition of the hand (ISO 5408).
    #[test]
    fn the_turn_that_unscrews_is_found_for_all_four_pairs() {
        for (twist, left, severity, turn) in [
            (
                Hand::Clockwise,
                false,
                Severity::Caution,
                "unlocking turns the lens anticlockwise",
            ),
            (
                Hand::Anticlockwise,
                false,
                Severity::Clash,
                "locking turns the lens anticlockwise",
            ),
            (
                Hand::Clockwise,
                true,
                Severity::Clash,
                "locking turns the lens clockwise",
            ),
            (
                Hand::Anticlockwise,
                true,
                Severity::Caution,
                "unlocking turns the lens clockwise",
            ),
        ] {
            let design = with_hands(twist, left);
            let finding = judged(check, &design);
            assert_eq!(finding.severity, severity);
            assert!(finding.message.starts_with(turn), "{}", finding.message);
            assert_eq!(
                judged(check, &cured(&design, &finding)).severity,
                Severity::Ok
            );
        }
    }

    #[test]
    fn every_other_hold_cures_it_and_is_named() {
        for hold in ThreadHold::ALL
            .into_iter()
            .filter(|hold| *hold != ThreadHold::Friction)
        {
            let mut design = with_hands(Hand::Anticlockwise, false);
            design.ring.thread_hold = hold;
            let finding = judged(check, &design);
            assert_eq!(finding.severity, Severity::Ok);
            let named = hold == ThreadHold::GripOnRing || finding.message.contains(hold.word());
            assert!(named, "{}", finding.message);
        }
    }

    #[test]
    fn an_unknown_twist_is_named() {
        let mut design = design();
        design.body.twist_hand = Interface::Unknown;
        design.ring.lugs = Choice::Set(design.body.ears.value().unwrap().clone());
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![FieldRef::TwistHand])
        );
    }
}
