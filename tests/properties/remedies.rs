//! Laws of remedies: a step toward what a finding asks for never makes that finding worse, and all of them together
//! clear the demo of clashes.

use std::fs;
use std::path::Path;

use flangewright::checks::{Change, Finding, FindingKey, Severity};
use flangewright::document::{Choice, Design, RingKey, read_design};
use flangewright::evaluate::evaluate;
use flangewright::workshop::Workshop;
use proptest::prelude::*;

const DEMOS: [&str; 4] = [
    "archive_portrait",
    "tall_ring",
    "cine_interface",
    "four_clashes",
];
/// Rounding of a margin.
const ROUNDING: f64 = 1e-9;
/// More rounds than there are checks would be going in circles.
const MOST_ROUNDS: usize = 40;

pub fn demo(name: &str) -> Design {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/demos");
    read_design(&fs::read_to_string(folder.join(format!("{name}.ron"))).unwrap()).unwrap()
}

pub fn findings(design: &Design, workshop: &Workshop) -> Option<Vec<Finding>> {
    let evaluation = evaluate(design, workshop);
    evaluation.parts.is_some().then_some(evaluation.findings)
}

fn finding_of(design: &Design, workshop: &Workshop, key: FindingKey) -> Option<Finding> {
    let all = findings(design, workshop)?;
    all.into_iter().find(|finding| finding.key == key)
}

fn apply(design: &Design, change: &Change) -> Design {
    let mut design = design.clone();
    let ring = &mut design.ring;
    match change.clone() {
        Change::Dimension(key, value) => ring.dimensions.get_mut(key).value = Choice::Set(value),
        Change::LetGo(key) => ring.dimensions.get_mut(key).value = Choice::Derived,
        Change::Lugs(lugs) => ring.lugs = Choice::Set(lugs),
        Change::LetLugsGo => ring.lugs = Choice::Derived,
        Change::ThreadHold(hold) => ring.thread_hold = hold,
        Change::Cutter(name) => ring.cutter = name,
    }
    design
}

/// Worse in words; or in numbers both by the margin and by its share: where another question of the same check has
/// become the worst one, one of the two alone compares what cannot be compared. So does a number with a bare sentence.
fn is_worse(after: &Finding, before: &Finding) -> bool {
    let less = |after: Option<f64>, before: Option<f64>| {
        after.is_some_and(|after| before.is_some_and(|before| after < before - ROUNDING))
    };
    match after.severity.cmp(&before.severity) {
        std::cmp::Ordering::Less => true,
        // What passes on both sides of a remedy passes.
        std::cmp::Ordering::Equal if after.severity == Severity::Ok => false,
        std::cmp::Ordering::Equal => {
            less(after.margin, before.margin) && less(after.share, before.share)
        }
        std::cmp::Ordering::Greater => false,
    }
}

/// The steps from what is there to what the remedy asks for: a dimension in quarters, anything else at once. A blind
/// hole that is drilled through passes every floor too thin on the way: that remedy is one step too.
fn steps(design: &Design, workshop: &Workshop, change: &Change) -> Vec<Design> {
    let Change::Dimension(key, wanted) = *change else {
        return vec![apply(design, change)];
    };
    if key == RingKey::LockHoleDepth {
        return vec![apply(design, change)];
    }
    let ring = evaluate(design, workshop).derivation.ring;
    let now = ring.map_or(wanted, |ring| ring.sizes.get(key));
    (1..=4)
        .map(|quarter| now + (wanted - now) * f64::from(quarter) / 4.0)
        .map(|value| apply(design, &Change::Dimension(key, value)))
        .collect()
}

/// How many remedies were followed; panics where one makes its own finding worse.
fn follow_every_remedy(design: &Design, workshop: &Workshop) -> usize {
    let mut followed = 0;
    for first in findings(design, workshop).unwrap_or_default() {
        let change = first
            .remedy
            .as_ref()
            .and_then(|remedy| remedy.change.clone());
        let Some(change) = change else { continue };
        let mut before = first.clone();
        for step in steps(design, workshop, &change) {
            // On the way another size may be in the way of the shape; that finding is another's.
            let Some(after) = finding_of(&step, workshop, first.key) else {
                continue;
            };
            assert!(
                !is_worse(&after, &before),
                "{:?} toward {change:?}\nbefore {}\nafter {}",
                first.key,
                before.message,
                after.message
            );
            before = after;
        }
        followed += 1;
    }
    followed
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Two dimensions of a demo set off their rules, each by up to 4 mm.
    #[test]
    fn a_step_toward_the_remedy_never_makes_its_finding_worse(
        name in prop::sample::select(DEMOS.to_vec()),
        keys in prop::array::uniform2(prop::sample::select(RingKey::ALL.to_vec())),
        off in prop::array::uniform2(-4.0..4.0_f64),
    ) {
        let workshop = Workshop::default_set().unwrap();
        let mut design = demo(name);
        let sizes = evaluate(&design, &workshop).derivation.ring.unwrap().sizes;
        for (key, off) in keys.into_iter().zip(off) {
            let (low, high) = key.range();
            let value = (sizes.get(key) + off).clamp(low, high);
            design.ring.dimensions.get_mut(key).value = Choice::Set(value);
        }
        follow_every_remedy(&design, &workshop);
    }
}

#[test]
fn the_property_follows_many_remedies() {
    let workshop = Workshop::default_set().unwrap();
    let mut followed = 0;
    for name in DEMOS {
        let design = demo(name);
        let sizes = evaluate(&design, &workshop).derivation.ring.unwrap().sizes;
        for key in RingKey::ALL {
            for off in [-1.5, -0.3, -0.05, 0.05, 0.3, 1.5] {
                let change = Change::Dimension(*key, sizes.get(*key) + off);
                followed += follow_every_remedy(&apply(&design, &change), &workshop);
            }
        }
    }
    assert!(followed > 300, "only {followed} remedies were followed");
}

#[test]
fn every_remedy_of_the_demo_one_after_another_leaves_no_clash() {
    let workshop = Workshop::default_set().unwrap();
    let mut design = demo("four_clashes");
    assert_eq!(evaluate(&design, &workshop).count(Severity::Clash), 4);
    for _ in 0..MOST_ROUNDS {
        let offered = findings(&design, &workshop)
            .unwrap()
            .into_iter()
            .find_map(|finding| finding.remedy.and_then(|remedy| remedy.change));
        let Some(change) = offered else { break };
        design = apply(&design, &change);
    }
    let evaluation = evaluate(&design, &workshop);
    let left: Vec<_> = evaluation
        .findings
        .iter()
        .filter(|finding| finding.severity <= Severity::Caution)
        .map(|finding| format!("{}: {}", finding.key.name(), finding.message))
        .collect();
    assert_eq!(evaluation.count(Severity::Clash), 0, "{left:?}");
}

#[test]
fn the_good_demos_have_neither_clash_nor_caution() {
    let workshop = Workshop::default_set().unwrap();
    for name in ["archive_portrait", "tall_ring", "cine_interface"] {
        let evaluation = evaluate(&demo(name), &workshop);
        assert_eq!(evaluation.count(Severity::Clash), 0, "{name}");
        assert_eq!(evaluation.count(Severity::Caution), 0, "{name}");
    }
}
