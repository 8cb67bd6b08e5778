//! Corrections of the default ring, against numbers worked by hand.

use super::*;
use crate::document::demo_designs;
use crate::inspection::{Basis, DEFAULT_RULE, allowed_errors};

fn corrected_with(error_mm: f64, change: impl FnOnce(&mut Design)) -> Corrected {
    let mut design = demo_designs().unwrap().remove(0);
    change(&mut design);
    let workshop = Workshop::default_set().unwrap();
    let evaluation = evaluate(&design, &workshop);
    let measured = Measured {
        error_mm,
        doubt: Doubt {
            standard: 0.003,
            expanded: 0.006,
        },
    };
    let limits = allowed_errors(Basis::SeatReadings, &design, &evaluation).unwrap();
    correct(
        &design,
        &workshop,
        &evaluation,
        measured,
        limits,
        DEFAULT_RULE,
    )
    .unwrap()
}

fn corrected(error_mm: f64) -> Corrected {
    corrected_with(error_mm, |_| {})
}

/// 0.1 mm off a seat with a pitch of 1 mm: 36 degrees (360 s / P).
#[test]
fn a_skim_turns_the_lens_on_and_is_recorded() {
    let done = corrected(0.1);
    assert_eq!(done.proposal.action, Action::Skim(0.1));
    assert!((done.clockwise_deg - 36.0).abs() < 1e-9);
    let entry = done.record(Done::Skimmed(0.09), "first of May", "infinity not reached");
    assert!((entry.skim_mm - 0.09).abs() < 1e-12 && entry.date == "first of May");
    let (found, expected) = (entry.found.unwrap(), entry.expected.unwrap());
    assert!((found.error_mm - 0.1).abs() < 1e-12 && (found.expanded_mm - 0.006).abs() < 1e-12);
    // 0.006 and 1.96 times 0.005/√3, as squares.
    let by_hand = 0.006_f64.hypot(1.96 * 0.005 / 3.0_f64.sqrt());
    assert!((expected.error_mm - 0.01).abs() < 1e-12);
    assert!((expected.expanded_mm - by_hand).abs() < 1e-5);
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
    assert_eq!(left.turn_text(), None);
}

#[test]
fn a_skim_that_brings_a_clash_is_a_remake() {
    let done = corrected(1.2);
    match &done.proposal.action {
        Action::Remake(why) => assert!(!why.is_empty()),
        other => panic!("{other:?}"),
    }
    let entry = done.record(Done::MadeAgain, "", "");
    assert!(entry.remade && entry.skim_mm.abs() < 1e-15 && entry.expected.is_none());
}

/// A mark read at 20° in the trial fit stands 36° further on after 0.1 mm at a pitch of 1 mm.
#[test]
fn the_mark_goes_on_with_the_lens() {
    let done = corrected_with(0.1, |design| {
        design.ring.clocking.trial_reading_deg = Some(350.0);
    });
    let mark = done.mark.unwrap();
    assert!((mark.before_deg - 350.0).abs() < 1e-9 && (mark.after_deg - 26.0).abs() < 1e-9);
    assert!(done.turn_text().unwrap().contains("from 350.00° to 26.00°"));
    assert_eq!(
        done.record(Done::Skimmed(0.1), "", "").mark_before_deg,
        Some(350.0)
    );
}

/// Thin lens: f² / e + f at either end.
#[test]
fn the_new_infinity_follows_from_what_is_left_in_doubt() {
    let done = corrected(0.1);
    let f = demo_designs()
        .unwrap()
        .remove(0)
        .lens
        .focal_length
        .number()
        .unwrap();
    let by_hand = |extension: f64| f * f / extension + f;
    let half = done.proposal.doubt.expanded;
    let infinity = done.infinity.unwrap();
    assert!((infinity.farthest_mm.unwrap() - by_hand(half)).abs() < 1e-6);
    assert!((infinity.mark_mm.unwrap() - by_hand(half)).abs() < 1e-6);
    assert!(done.infinity_text().unwrap().contains("at the thick end"));
    // A ring that is left 0.012 thin, give or take 0.006, reaches infinity for certain.
    let thin = corrected_with(-0.012, |design| {
        design
            .ring
            .dimensions
            .get_mut(RingKey::SeatHeight)
            .tolerance = crate::document::Tolerance::PlusMinus(0.05);
    });
    assert_eq!(thin.proposal.action, Action::Leave);
    let infinity = thin.infinity.unwrap();
    assert_eq!(infinity.farthest_mm, None);
    assert!((infinity.mark_mm.unwrap() - by_hand(0.018)).abs() < 1e-6);
    assert!(
        thin.infinity_text()
            .unwrap()
            .contains("Infinity is reached")
    );
}

#[test]
fn where_a_shim_lies_already_a_thinner_one_does_as_well() {
    let done = corrected_with(0.1, |design| {
        design.corrections.push(Correction {
            date: String::new(),
            note: String::new(),
            skim_mm: -0.2,
            remade: false,
            found: None,
            expected: None,
            mark_before_deg: None,
        });
    });
    assert!(done.text().contains("a shim thinner by as much"));
}
