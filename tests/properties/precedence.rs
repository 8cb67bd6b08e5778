//! Whatever ring and workshop: the plan breaks no rule of what must come before what, and where there is none it names
//! what is really missing. The rules are written down here a second time, common practice, no source.

use flangewright::document::{Choice, Design, MillingMethod, Pieces, PinHandling};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::mount::{Interface, Presence, Sector};
use flangewright::plan::{
    Operation as Op, PlanError, Route, Setting, ShopPlan, Shortfall, shop_plan, shop_plan_on,
};
use flangewright::ring::ResolvedRing;
use flangewright::workshop::Workshop;
use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::{RngCore, SeedableRng};

use crate::remedies::demo;

/// Whole rings looked at, and cases that may be tried to come by them.
const WHOLE_RINGS: u32 = 300;
const MOST_CASES: u64 = 1000;

struct Chance(Xoshiro256PlusPlus);

impl Chance {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * f64::from(self.0.next_u32()) / f64::from(u32::MAX)
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[usize::try_from(self.0.next_u64() % all.len() as u64).unwrap()]
    }

    fn in_ten(&mut self, times: u32) -> bool {
        self.0.next_u32() % 10 < times
    }
}

fn design(chance: &mut Chance) -> Design {
    let mut design = demo(chance.one_of(&["archive_portrait", "tall_ring", "cine_interface"]));
    let pitch = chance.one_of(&["M42x1", "M39x1", "M42x0.75", "M40x0.5", "1.537-26 UNS"]);
    design.lens.thread = Interface::measured(pitch.parse().unwrap(), "gauge");
    let measured = |value: f64| Interface::measured(value, "depth micrometer");
    let register = design.body.register.number().unwrap() + chance.between(1.0, 12.0);
    design.lens.register = measured(register);
    design.lens.stop_down_pin = chance.one_of(&[Presence::Present, Presence::Absent]);
    if design.lens.pin_circle == Interface::Unknown {
        let core = design.lens.thread.value().unwrap().nominal_mm();
        design.lens.pin_circle = measured(core - 5.0);
        design.lens.pin_diameter = measured(1.6);
        design.lens.pin_free = measured(8.2);
        design.lens.pin_stopped_down = measured(7.4);
        design.lens.pin_bottom = measured(6.6);
    }
    design.ring.pin = chance.one_of(&[
        Choice::Derived,
        Choice::Set(PinHandling::LeftFree),
        Choice::Set(PinHandling::Pressed),
    ]);
    design.ring.milling = chance.one_of(&MillingMethod::ALL);
    design.ring.finish.build_up_mm = chance.one_of(&[0.0, 0.01]);
    if chance.in_ten(3) {
        design.ring.pieces = Pieces::Two {
            clamp_wall_mm: 2.0,
            screw_diameter_mm: 2.0,
            screw_count: 3,
        };
    }
    if chance.in_ten(3) {
        let width = chance.between(15.0, 50.0);
        let ears = [0.0, 115.0, 245.0].map(|start_deg| Sector {
            start_deg,
            extent_deg: width,
        });
        design.body.ears = Interface::measured(ears.to_vec(), "photograph");
    }
    design
}

fn workshop(chance: &mut Chance) -> Workshop {
    let mut shop = Workshop::default_set().unwrap();
    shop.turning_tools.retain(|_| !chance.in_ten(1));
    shop.cutters.retain(|_| !chance.in_ten(2));
    shop.dividing_head.takes_lathe_chuck = chance.in_ten(6);
    shop.lathe.leadscrew_pitch_mm = chance.one_of(&[1.5, 2.0, 3.0, 25.4 / 8.0]);
    if chance.in_ten(2) {
        shop.lathe.change_gears = vec![20, 40, 60];
    }
    if chance.in_ten(1) {
        shop.rotary_table = None;
        shop.dividing_head.plates.clear();
    }
    shop
}

/// What must come before what, whatever the route.
const BEFORE: [(Op, Op); 40] = [
    (Op::FaceEnd, Op::RoughOutside),
    (Op::FaceEnd, Op::RoughBore),
    (Op::RoughOutside, Op::Rim),
    (Op::RoughOutside, Op::BayonetDiameters),
    (Op::RoughBore, Op::ThreadBore),
    (Op::RoughBore, Op::RearBore),
    (Op::RoughBore, Op::PartOff),
    (Op::RoughBore, Op::SeatFace),
    (Op::ThreadBore, Op::Relief),
    (Op::ThreadBore, Op::ThreadChamfer),
    (Op::ThreadChamfer, Op::Thread),
    (Op::Relief, Op::Thread),
    (Op::SetScrews, Op::Thread),
    (Op::SeatFace, Op::ThreadBore),
    (Op::Thread, Op::ThreadMouth),
    (Op::ThreadMouth, Op::FinalSkim),
    (Op::SeatFace, Op::FinalSkim),
    (Op::FlangeRear, Op::FinalSkim),
    (Op::Groove, Op::FinalSkim),
    (Op::PlateFront, Op::FinalSkim),
    (Op::Relief, Op::FinalSkim),
    (Op::PinAnnulus, Op::FinalSkim),
    (Op::FaceSecondSide, Op::FinalSkim),
    (Op::BayonetDiameters, Op::Groove),
    (Op::Groove, Op::MillGaps),
    (Op::LugLeadIn, Op::MillGaps),
    (Op::AngleMark, Op::MillGaps),
    (Op::AngleMark, Op::LockHole),
    (Op::AngleMark, Op::IndexMark),
    (Op::MillGaps, Op::DeburrLugs),
    (Op::PartOff, Op::FaceSecondSide),
    (Op::PartOff, Op::MakeArbor),
    (Op::BoreJaws, Op::FaceSecondSide),
    (Op::MakeArbor, Op::FaceSecondSide),
    (Op::DeburrLugs, Op::DeburrAndWash),
    (Op::LockHole, Op::DeburrAndWash),
    (Op::DeburrAndWash, Op::Measure),
    (Op::Measure, Op::TrialFit),
    (Op::TrialFit, Op::Coat),
    (Op::FinalSkim, Op::Measure),
];

/// What is cut in one setting, because it must stand true to each other.
const TOGETHER: [&[Op]; 3] = [
    &[Op::Thread, Op::SeatFace],
    &[Op::BayonetDiameters, Op::FlangeRear, Op::Groove],
    &[Op::AngleMark, Op::MillGaps, Op::LockHole, Op::IndexMark],
];

fn check(plan: &ShopPlan, case: u64) {
    let place = |op: Op| plan.steps.iter().position(|step| step.operation == op);
    for (before, after) in BEFORE {
        if let (Some(first), Some(second)) = (place(before), place(after)) {
            assert!(first < second, "{case}: {after} before {before}");
        }
    }
    for rule in &plan.rules {
        assert!(place(rule.before) < place(rule.after), "{case}: {rule}");
    }
    let settings: Vec<Setting> = plan.steps.iter().map(|step| step.setting).collect();
    assert!(settings.is_sorted(), "{case}: back to an earlier setting");
    for group in TOGETHER {
        let mut of_group: Vec<Setting> = group
            .iter()
            .filter_map(|op| place(*op).map(|place| settings[place]))
            .collect();
        of_group.dedup();
        assert!(of_group.len() <= 1, "{case}: {group:?}");
    }
    let gaps = place(Op::MillGaps).unwrap();
    let parted = place(Op::PartOff).unwrap();
    assert_eq!(gaps < parted, plan.route == Route::LugsInTheBar, "{case}");
    // Every neighbour that is said to be free must still be right when changed round.
    for (one, next) in &plan.exchangeable {
        assert!(
            !BEFORE.contains(&(*one, *next)),
            "{case}: {one} and {next} may not change places"
        );
    }
}

/// Step by step less metal, and at the end the ring and nothing else.
fn check_stages(plan: &ShopPlan, evaluation: &Evaluation, case: u64) {
    let stages = plan.stages(evaluation);
    assert_eq!(stages.len(), plan.steps.len(), "{case}: {:?}", plan.route);
    let areas: Vec<f64> = stages.iter().map(|stage| stage.metal.area()).collect();
    for (pair, step) in areas.windows(2).zip(plan.steps.iter().skip(1)) {
        assert!(pair[1] < pair[0] + 1e-6, "{case}: {}", step.operation);
    }
    let ring = evaluation.parts.as_ref().unwrap().through_lug.area();
    let left = areas.last().unwrap();
    assert!((left - ring).abs() < 1e-3, "{case}: {left} against {ring}");
}

fn is_really_missing(lacking: &Shortfall, ring: &ResolvedRing, shop: &Workshop) -> bool {
    let tools = &shop.turning_tools;
    match lacking {
        Shortfall::Speeds => shop.lathe.spindle_rpm.is_empty(),
        Shortfall::BoringBar { .. } => !tools.iter().any(|tool| tool.name.contains("boring")),
        Shortfall::ThreadingTool { .. } => !tools.iter().any(|tool| tool.name.contains("thread")),
        Shortfall::ReliefTool { width_mm, .. } => !tools.iter().any(|tool| {
            tool.name.contains("inside groove") && tool.width_mm <= *width_mm && tool.reach_mm > 1.0
        }),
        Shortfall::GrooveTool { width_mm, depth_mm } => !tools.iter().any(|tool| {
            tool.least_bore_mm <= 0.0 && tool.width_mm <= *width_mm && tool.reach_mm >= *depth_mm
        }),
        // Twenty, forty and sixty teeth make only simple parts of the leadscrew.
        Shortfall::ChangeGears { .. } => {
            shop.lathe.change_gears.len() == 3 || ring.thread.tpi().is_some()
        }
        Shortfall::Dividing => shop.rotary_table.is_none(),
        Shortfall::NoEndMill => shop.cutters.is_empty(),
        Shortfall::EndMill {
            gap_deg, least_deg, ..
        } => gap_deg < least_deg,
        Shortfall::ChuckOnHead => !shop.dividing_head.takes_lathe_chuck,
    }
}

#[test]
fn no_plan_breaks_a_rule_and_no_refusal_is_made_up() {
    let (mut planned, mut refused, mut no_ring, mut whole) = (0, 0, 0, 0);
    for case in 0..MOST_CASES {
        if whole >= WHOLE_RINGS {
            break;
        }
        let mut chance = Chance(Xoshiro256PlusPlus::seed_from_u64(case));
        let (design, shop) = (design(&mut chance), workshop(&mut chance));
        let evaluation = evaluate(&design, &shop);
        whole += u32::from(evaluation.parts.is_some());
        let mut routes_free = 0;
        for route in Route::ALL {
            match shop_plan_on(route, &design, &shop, &evaluation) {
                Ok(plan) => {
                    check(&plan, case);
                    check_stages(&plan, &evaluation, case);
                    planned += 1;
                    routes_free += 1;
                }
                Err(PlanError::Lacking(lacking)) => {
                    refused += 1;
                    let ring = evaluation.derivation.ring.as_ref().unwrap();
                    for one in &lacking {
                        assert!(is_really_missing(one, ring, &shop), "{case}: {one}");
                    }
                }
                Err(PlanError::NoRing(reason)) => {
                    no_ring += 1;
                    assert!(!reason.is_empty());
                    assert!(evaluation.parts.is_none(), "{case}: {reason}");
                }
                Err(PlanError::Cycle(cycle)) => panic!("{case}: {cycle}"),
            }
        }
        let best = shop_plan(&design, &shop, &evaluation);
        assert_eq!(best.is_ok(), routes_free > 0, "{case}");
    }
    println!("{planned} planned, {refused} refused, {no_ring} without a ring");
    assert_eq!(whole, WHOLE_RINGS);
    assert!(
        planned > 300 && refused > 200,
        "{planned} planned, {refused} refused"
    );
}
