use super::*;
use crate::document::{Design, demo_designs};
use crate::evaluate::{Evaluation, evaluate};
use crate::plan::{ShopPlan, shop_plan_on};
use crate::workshop::Workshop;

fn plans() -> Vec<(Design, Evaluation, ShopPlan)> {
    let workshop = Workshop::default_set().unwrap();
    let mut all = Vec::new();
    for design in demo_designs().unwrap() {
        let evaluation = evaluate(&design, &workshop);
        for route in Route::ALL {
            if let Ok(plan) = shop_plan_on(route, &design, &workshop, &evaluation) {
                all.push((design.clone(), evaluation.clone(), plan));
            }
        }
    }
    assert!(all.len() >= 9);
    all
}

fn stages_of(evaluation: &Evaluation, plan: &ShopPlan) -> Vec<Stage> {
    let operations: Vec<Op> = plan.steps.iter().map(|step| step.operation).collect();
    stages(
        plan.route,
        &operations,
        evaluation.derivation.ring.as_ref().unwrap(),
        &evaluation.parts.as_ref().unwrap().through_lug,
        plan.stock.unwrap(),
    )
    .unwrap()
}

/// What is left when every step is done is the ring, and nothing else; and no step puts metal back.
#[test]
fn after_the_last_step_the_ring_is_left() {
    for (design, evaluation, plan) in plans() {
        let all = stages_of(&evaluation, &plan);
        let ring = evaluation.parts.as_ref().unwrap().through_lug.area();
        let last = all.last().unwrap();
        assert!(
            (last.metal.area() - ring).abs() < 1e-4,
            "{} {:?}: {} against {ring}",
            design.name,
            plan.route,
            last.metal.area()
        );
        for pair in all.windows(2) {
            let taken: f64 = pair[1].taken.iter().map(Outline::area).sum();
            let less = pair[0].metal.area() - pair[1].metal.area();
            assert!(less > -1e-6, "{:?}", pair[1].done.last());
            assert!((taken - less).abs() < 1e-4, "{:?}", pair[1].done.last());
        }
    }
}

/// Turning, boring and parting take metal off; every such step shows what.
#[test]
fn steps_that_cut_show_what_they_take() {
    for (design, evaluation, plan) in plans() {
        for stage in stages_of(&evaluation, &plan) {
            let operation = *stage.done.last().unwrap();
            let cuts = [
                Op::FaceEnd,
                Op::RoughOutside,
                Op::RoughBore,
                Op::Rim,
                Op::BayonetDiameters,
                Op::FlangeRear,
                Op::Groove,
                Op::PartOff,
                Op::ThreadBore,
                Op::Relief,
                Op::FinalSkim,
            ];
            if cuts.contains(&operation) {
                assert!(
                    !stage.taken.is_empty(),
                    "{} {:?} {operation}",
                    design.name,
                    plan.route
                );
            }
        }
    }
}
