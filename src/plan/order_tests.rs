use super::*;
use crate::document::demo_designs;
use crate::evaluate::evaluate;
use crate::plan::plan_sheet;

fn demo() -> (Design, Workshop) {
    (
        demo_designs().unwrap().remove(0),
        Workshop::default_set().unwrap(),
    )
}

fn planned(design: &Design, workshop: &Workshop) -> Result<ShopPlan, PlanError> {
    shop_plan(design, workshop, &evaluate(design, workshop))
}

#[test]
fn the_demo_is_planned_on_every_route() {
    let (design, workshop) = demo();
    let evaluation = evaluate(&design, &workshop);
    for route in Route::ALL {
        let plan = shop_plan_on(route, &design, &workshop, &evaluation).unwrap();
        assert_eq!(
            plan.steps.len(),
            route
                .operations(&design, evaluation.derivation.ring.as_ref().unwrap())
                .len()
        );
        assert_eq!(plan.alternatives.len(), 2);
        let text = plan_sheet(&design, &workshop, &plan);
        for told in [
            "[ ]",
            "rules of the workshop",
            "CAUTION",
            "seen from the body side",
            "constant area",
        ] {
            assert!(text.contains(told), "{told}");
        }
    }
}

#[test]
fn a_head_that_takes_no_chuck_leads_to_the_arbor() {
    let (design, mut workshop) = demo();
    assert_eq!(
        planned(&design, &workshop).unwrap().route,
        Route::LugsInTheBar
    );
    workshop.dividing_head.takes_lathe_chuck = false;
    let plan = planned(&design, &workshop).unwrap();
    assert_eq!(plan.route, Route::ThreadFirst);
    assert_eq!(plan.alternatives[0].lacking, [Shortfall::ChuckOnHead]);
}

#[test]
fn every_missing_tool_is_named() {
    let (design, shop) = demo();
    let told = |change: &dyn Fn(&mut Workshop)| {
        let mut workshop = shop.clone();
        change(&mut workshop);
        planned(&design, &workshop).unwrap_err().to_string()
    };
    let drop = |word: &'static str| {
        move |shop: &mut Workshop| shop.turning_tools.retain(|tool| !tool.name.contains(word))
    };
    assert!(told(&drop("threading")).contains("inside threading tool"));
    assert!(told(&drop("boring")).contains("boring bar"));
    assert!(told(&drop("inside groove")).contains("relief"));
    assert!(
        told(&|shop: &mut Workshop| {
            shop.turning_tools.retain(|tool| tool.least_bore_mm > 0.0);
        })
        .contains("outside grooving tool")
    );
    assert!(told(&|shop: &mut Workshop| shop.lathe.change_gears.clear()).contains("change gears"));
    assert!(told(&|shop: &mut Workshop| shop.lathe.spindle_rpm.clear()).contains("speeds"));
    assert!(told(&|shop: &mut Workshop| shop.cutters.clear()).contains("end mill"));
    assert!(
        told(&|shop: &mut Workshop| {
            shop.dividing_head.plates.clear();
            shop.rotary_table = None;
        })
        .contains("rotary table")
    );
}

#[test]
fn an_unknown_throat_is_no_ring_to_plan() {
    let (mut design, workshop) = demo();
    design.body.throat = crate::mount::Interface::Unknown;
    let error = planned(&design, &workshop).unwrap_err().to_string();
    assert!(error.contains("throat"), "{error}");
}

#[test]
fn the_thread_is_cut_slowly_enough_to_stop() {
    let (design, workshop) = demo();
    let plan = planned(&design, &workshop).unwrap();
    let step = plan
        .steps
        .iter()
        .find(|step| step.operation == Operation::Thread)
        .unwrap();
    let run_out = plan.threading.run_out.unwrap();
    let rpm = step.speed.unwrap().spindle.rpm;
    let most = run_out
        .fastest_rpm(&workshop.lathe.spindle_rpm)
        .unwrap_or(workshop.lathe.threading_rpm);
    assert!(rpm <= most, "{rpm} over {most}");
}

#[test]
fn without_a_cutting_group_there_is_a_plan_without_speeds() {
    let (design, mut workshop) = demo();
    for material in &mut workshop.materials {
        material.cutting = crate::workshop::CuttingGroup::Unknown;
    }
    let plan = planned(&design, &workshop).unwrap();
    assert!(plan.steps.iter().all(|step| step.speed.is_none()));
}
