//! Whatever is designed, the evaluation comes back whole: no panic, no number that is none, the same every time.

use flangewright::checks::FindingKey;
use flangewright::document::{Design, SeatKind, faults_of};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::mount::Hand;
use flangewright::ring::PinUse;
use flangewright::workshop::Workshop;

use crate::distort::{half_known, hostile};
use crate::pairs::{Stand, plausible, stand_of};

const SEED: u64 = 20;
const COUNT: usize = 300;

fn is_a_number_that_is_none(token: &str) -> bool {
    matches!(token, "NaN" | "inf" | "nan")
}

fn judge(name: &str, design: &Design, workshop: &Workshop) -> Evaluation {
    assert_eq!(
        faults_of(design),
        [],
        "{name}: the generator made a design that the document refuses"
    );
    let evaluation = evaluate(design, workshop);
    let text = format!("{evaluation:?}");
    let wrong = text
        .split(|letter: char| !letter.is_alphanumeric())
        .position(is_a_number_that_is_none);
    assert_eq!(wrong, None, "{name}: {}", around(&text));
    assert_eq!(
        text,
        format!("{:?}", evaluate(design, workshop)),
        "{name}: twice is not the same"
    );
    let mut keys: Vec<FindingKey> = evaluation
        .findings
        .iter()
        .map(|finding| finding.key)
        .collect();
    keys.sort_unstable();
    assert_eq!(keys, FindingKey::ALL, "{name}");
    evaluation
}

/// The text round the first number that is none.
fn around(text: &str) -> String {
    let at = ["NaN", " inf", "-inf"]
        .iter()
        .filter_map(|word| text.find(word))
        .min()
        .unwrap_or(0);
    text.chars()
        .skip(at.saturating_sub(600))
        .take(700)
        .collect()
}

#[test]
fn plausible_designs_of_every_kind() {
    let workshop = Workshop::default_set().unwrap();
    let mut seats = std::collections::HashMap::new();
    let (mut pins, mut hands, mut lugs, mut refused) = ([0; 3], [0; 2], [0; 7], 0);
    for index in 0..COUNT {
        let design = plausible(SEED, index);
        let evaluation = judge(&format!("plausible {index}"), &design, &workshop);
        let Some(ring) = &evaluation.derivation.ring else {
            assert_eq!(
                stand_of(index, SEED),
                Stand::Refused,
                "{index}: {:?}",
                evaluation.derivation.refusal
            );
            assert!(
                evaluation.derivation.refusal.is_some(),
                "{index}: {:?}",
                evaluation.derivation.missing
            );
            refused += 1;
            continue;
        };
        assert_eq!(
            evaluation.shape_fault, None,
            "{index}: {:?} of {:?}",
            ring.sizes, design.lens
        );
        *seats.entry(ring.seat).or_insert(0) += 1;
        lugs[ring.lugs.len()] += 1;
        pins[match ring.pin {
            PinUse::None => 0,
            PinUse::Pressed => 1,
            PinUse::LeftFree => 2,
        }] += 1;
        hands[usize::from(ring.twist.unwrap().hand == Hand::Clockwise)] += 1;
    }
    // A generator that stops making a kind proves nothing about it.
    for kind in [SeatKind::Boss, SeatKind::Flush, SeatKind::Counterbore] {
        assert!(
            seats.get(&kind).is_some_and(|count| *count >= 20),
            "{seats:?}"
        );
    }
    assert!(lugs[1..=6].iter().all(|count| *count >= 20), "{lugs:?}");
    assert!(
        pins.iter().all(|count| *count >= 50) && hands.iter().all(|count| *count >= 50),
        "{pins:?} {hands:?}"
    );
    assert!(refused >= 10, "{refused}");
}

#[test]
fn designs_of_which_something_is_not_known() {
    let workshop = Workshop::default_set().unwrap();
    let mut stopped = 0;
    for index in 0..COUNT {
        let design = half_known(SEED, index);
        if !faults_of(&design).is_empty() {
            continue;
        }
        let evaluation = judge(&format!("half known {index}"), &design, &workshop);
        if evaluation.derivation.ring.is_none() && evaluation.derivation.refusal.is_none() {
            assert!(
                !evaluation.derivation.missing.is_empty(),
                "{index}: no ring, and nothing is said to be missing"
            );
            stopped += 1;
        }
    }
    assert!(stopped > COUNT / 10, "{stopped}");
}

#[test]
fn hostile_designs() {
    let workshop = Workshop::default_set().unwrap();
    let mut whole = 0;
    for index in 0..2 * COUNT {
        let evaluation = judge(
            &format!("hostile {index}"),
            &hostile(SEED, index),
            &workshop,
        );
        whole += usize::from(evaluation.parts.is_some());
    }
    assert!(whole > COUNT / 10, "{whole}");
}
