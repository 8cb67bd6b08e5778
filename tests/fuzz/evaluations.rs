//! Target: the evaluation of any design that a file may hold, and what is drawn, planned and inspected after it.

use flangewright::checks::FindingKey;
use flangewright::document::{Design, demo_designs, faults_of, read_design, write_ron};
use flangewright::drawing::plan_view::{PlanOptions, plan_view};
use flangewright::drawing::section_view::{SectionOptions, section_view};
use flangewright::drawing::{Scene, ring_sheet};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::geometry::Side;
use flangewright::inspection::inspection_sheet;
use flangewright::plan::{plan_sheet, shop_plan};
use flangewright::workshop::Workshop;

use crate::campaign::campaign;
use crate::dice::Dice;
use crate::distort::{half_known, hostile};
use crate::outcome::Outcome;
use crate::pairs::plausible;
use crate::tree::changed;

fn corpus() -> Vec<Design> {
    let mut designs = demo_designs().unwrap();
    for text in include_str!("corpus/evaluations.txt")
        .trim_end()
        .split("\n---\n")
    {
        designs.push(read_design(text).unwrap());
    }
    for index in 0..8 {
        for make in [plausible, hostile, half_known] {
            designs.push(make(70, index));
        }
    }
    designs.retain(|design| faults_of(design).is_empty());
    designs
}

/// A design of the pool changed in a few places, as long as every one of its values is allowed.
fn change(dice: &mut Dice, pool: &[Design]) -> Design {
    let mut design = pool[dice.below(pool.len())].clone();
    let times = dice.pick(&[1, 2, 3, 6, 12]);
    for _ in 0..times {
        let other = &pool[dice.below(pool.len())];
        // What no design may hold must be found to be so without a panic, and is not evaluated.
        if let Some(next) = changed(dice, &design, other)
            && faults_of(&next).is_empty()
        {
            design = next;
        }
    }
    design
}

fn is_no_number(text: &str) -> bool {
    text.split(|letter: char| !letter.is_alphanumeric())
        .any(|word| matches!(word, "NaN" | "inf"))
}

fn judge(design: &Design, evaluation: &Evaluation, workshop: &Workshop) {
    let mut keys: Vec<FindingKey> = evaluation
        .findings
        .iter()
        .map(|finding| finding.key)
        .collect();
    keys.sort_unstable();
    assert_eq!(keys, FindingKey::ALL);
    let words = format!("{evaluation:?}");
    assert!(!is_no_number(&words), "a number is none");
    assert_eq!(
        words,
        format!("{:?}", evaluate(design, workshop)),
        "twice is not the same"
    );
}

/// What the window and the command line make of an evaluation.
fn make_everything(design: &Design, evaluation: &Evaluation, workshop: &Workshop) {
    let _seen: Scene = section_view(
        design,
        evaluation,
        &SectionOptions::on_screen(design.sheet.section_angle_deg),
    );
    for side in [Side::Lens, Side::Body] {
        let options = PlanOptions {
            side,
            body: true,
            entry: true,
            cut_deg: Some(design.sheet.section_angle_deg),
        };
        let _seen: Scene = plan_view(design, evaluation, &options);
    }
    if let Err(error) = ring_sheet(design, evaluation) {
        assert!(!error.to_string().is_empty());
    }
    match shop_plan(design, workshop, evaluation) {
        Ok(plan) => assert!(
            !is_no_number(&plan_sheet(design, workshop, &plan)),
            "the plan has a number that is none"
        ),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
    let sheet = inspection_sheet(design, workshop, evaluation);
    assert!(
        !is_no_number(&sheet),
        "the inspection sheet has a number that is none"
    );
}

#[test]
fn evaluations() {
    let workshop = Workshop::default_set().unwrap();
    let mut count = 0_u32;
    let try_one = |design: &Design| {
        let evaluation = evaluate(design, &workshop);
        count += 1;
        // The rest takes longer than the evaluation itself: it is made of some.
        if count.is_multiple_of(4) {
            judge(design, &evaluation, &workshop);
        }
        if count.is_multiple_of(8) {
            make_everything(design, &evaluation, &workshop);
        }
        let ring = evaluation.derivation.ring.as_ref();
        let severities: Vec<u8> = evaluation
            .findings
            .iter()
            .map(|finding| finding.severity as u8)
            .collect();
        Outcome::of((
            ring.map(|ring| (ring.lugs.len(), format!("{:?}{:?}", ring.seat, ring.pin))),
            evaluation.shape_fault.is_some(),
            evaluation.derivation.missing.len(),
            severities,
        ))
    };
    campaign("evaluations", corpus(), change, try_one, |design| {
        write_ron(design).unwrap()
    });
}
