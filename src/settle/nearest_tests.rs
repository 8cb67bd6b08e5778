use std::sync::atomic::{AtomicU64, Ordering};

use rand_distr::{Distribution as _, StandardUniform};
use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::{RngCore, SeedableRng};
use rayon::prelude::*;

use super::*;
use crate::document::{Choice, demo_designs};
use crate::settle::{Member, Standing};

fn demo(number: usize) -> Design {
    demo_designs().unwrap().swap_remove(number)
}

fn workshop() -> Workshop {
    Workshop::default_set().unwrap()
}

fn settle_now(design: &Design, let_go: &[LetGo]) -> Outcome {
    settle(design, &workshop(), let_go, &AtomicBool::new(false), |_| {}).unwrap()
}

fn clashes(design: &Design) -> usize {
    evaluate(design, &workshop()).count(Severity::Clash)
}

fn set(design: &mut Design, key: RingKey, value: f64) {
    design.ring.dimensions.get_mut(key).value = Choice::Set(value);
}

fn settled_now(design: &Design, let_go: &[LetGo]) -> Settled {
    match settle_now(design, let_go) {
        Outcome::Settled(settled) => *settled,
        Outcome::None(why) => panic!("{why:?}"),
    }
}

/// A lip of 0.5 under a limit of 0.8 moves by 0.3 and by nothing else.
#[test]
fn a_thin_lip_becomes_just_thick_enough() {
    let mut design = demo(0);
    set(&mut design, RingKey::LipThickness, 0.5);
    let let_go = [
        LetGo::between(RingKey::LipThickness, 0.2, 3.0),
        LetGo::between(RingKey::FlangeDiameter, 60.0, 66.0),
    ];
    let settled = settled_now(&design, &let_go);
    let [only] = settled.moves.as_slice() else {
        panic!("{:?}", settled.moves)
    };
    assert_eq!(only.key, RingKey::LipThickness);
    assert!((only.to - 0.8).abs() < 1e-9, "{only:?}");
    assert_eq!(clashes(&settled.design), 0);
    assert!(
        settled
            .design
            .ring
            .dimensions
            .flange_diameter
            .value
            .is_derived()
    );
    assert_eq!(settled.before.count(Severity::Clash), clashes(&design));
}

/// Spigot and lip face bound the lip together: seat 1.46 + spigot - face = 0.5 asks for 0.3 more of one and less of the
/// other. Equal weights share it, 0.15 each; a face four times as dear moves a quarter as far, 0.06 and 0.24.
#[test]
fn a_condition_on_two_dimensions_is_shared_by_weight() {
    let mut design = demo(0);
    set(&mut design, RingKey::SpigotLength, 5.34);
    set(&mut design, RingKey::LipFaceDepth, 6.3);
    let mut let_go = [
        LetGo::between(RingKey::SpigotLength, 4.0, 8.0),
        LetGo::between(RingKey::LipFaceDepth, 5.0, 8.0),
    ];
    for (weight, spigot, face) in [(1.0, 5.49, 6.15), (4.0, 5.58, 6.24)] {
        let_go[1].weight = weight;
        let settled = settled_now(&design, &let_go);
        let to = |key| settled.moves.iter().find(|one| one.key == key).unwrap().to;
        assert!(
            (to(RingKey::SpigotLength) - spigot).abs() < 0.0015,
            "{:?}",
            settled.moves
        );
        assert!(
            (to(RingKey::LipFaceDepth) - face).abs() < 0.0015,
            "{:?}",
            settled.moves
        );
    }
}

#[test]
fn a_ring_without_a_clash_stays_as_it_is() {
    let settled = settled_now(&demo(0), &[LetGo::over_its_range(RingKey::LipThickness)]);
    assert!(settled.moves.is_empty() && settled.measure == 0.0);
    assert_eq!(settled.design, demo(0));
}

#[test]
fn nonsense_is_refused_and_a_run_can_be_called_off() {
    let (design, shop) = (demo(3), workshop());
    let key = RingKey::LipThickness;
    let with = |let_go: &[LetGo], stop: bool| {
        settle(&design, &shop, let_go, &AtomicBool::new(stop), |_| {}).unwrap_err()
    };
    assert_eq!(with(&[], false), SettleError::NothingLetGo);
    let one = LetGo::between(key, 0.5, 2.0);
    assert_eq!(with(&[one, one], false), SettleError::Twice(key));
    let (low, high) = (2.0, 0.5);
    assert_eq!(
        with(&[LetGo::between(key, low, high)], false),
        SettleError::Bounds { key, low, high }
    );
    let weight = -1.0;
    assert_eq!(
        with(&[LetGo { weight, ..one }], false),
        SettleError::Weight { key, weight }
    );
    assert_eq!(
        with(&[one], true),
        SettleError::Cancelled(crate::settle::Cancelled)
    );
}

/// What a contradiction says is tried: without any one member a ring keeps all the others.
fn is_proved(design: &Design, let_go: &[LetGo], why: &Contradiction) {
    let members = why.members();
    for release in &why.releases {
        let mut ring = design.clone();
        for (key, value) in &release.sizes {
            set(&mut ring, *key, *value);
            let held =
                members.contains(&Member::Held(*key)) && release.member != Member::Held(*key);
            assert!(
                !held,
                "{key} is held, and moved without {:?}",
                release.member
            );
            let bound =
                members.contains(&Member::Bounds(*key)) && release.member != Member::Bounds(*key);
            let bounds = let_go.iter().find(|one| one.key == *key);
            assert!(!bound || bounds.is_some_and(|one| (one.low..=one.high).contains(value)));
        }
        let after = evaluate(&ring, &workshop());
        assert!(
            after.parts.is_some(),
            "no ring without {:?}",
            release.member
        );
        for member in &members {
            if let Member::Finding(key) = member
                && release.member != *member
            {
                let severity = after.finding(*key).unwrap().severity;
                assert!(
                    severity > Severity::Clash,
                    "{key:?} without {:?}",
                    release.member
                );
            }
        }
    }
}

#[test]
fn a_contradiction_names_the_finding_and_what_is_held() {
    let mut design = demo(0);
    set(&mut design, RingKey::LipThickness, 0.5);
    let let_go = [LetGo::between(RingKey::FlangeDiameter, 60.0, 66.0)];
    let Outcome::None(why) = settle_now(&design, &let_go) else {
        panic!("a lip of 0.5 was let through")
    };
    assert_eq!(
        why.members(),
        [
            Member::Finding(FindingKey::LipThickness),
            Member::Held(RingKey::LipThickness)
        ]
    );
    assert_eq!(why.standing, Standing::Smallest);
    is_proved(&design, &let_go, &why);
}

#[test]
fn a_contradiction_names_bounds_that_are_too_tight() {
    let mut design = demo(0);
    set(&mut design, RingKey::LipThickness, 0.5);
    let let_go = [LetGo::between(RingKey::LipThickness, 0.2, 0.6)];
    let Outcome::None(why) = settle_now(&design, &let_go) else {
        panic!("a lip of 0.6 was let through")
    };
    assert_eq!(
        why.members(),
        [
            Member::Finding(FindingKey::LipThickness),
            Member::Bounds(RingKey::LipThickness)
        ]
    );
    is_proved(&design, &let_go, &why);
}

/// Dimensions that a case may set wrong and let go.
const MOVABLE: [RingKey; 12] = [
    RingKey::PlateThickness,
    RingKey::GrooveRootDiameter,
    RingKey::NoseDiameter,
    RingKey::LugDiameter,
    RingKey::GrooveWidth,
    RingKey::LugThickness,
    RingKey::LipFaceDepth,
    RingKey::ReliefWidth,
    RingKey::ReliefDiameter,
    RingKey::LipBore,
    RingKey::SpigotLength,
    RingKey::FlangeDiameter,
];

/// A demo with two to four dimensions set wrong, and those with another let go round their rule.
fn broken(random: &mut Xoshiro256PlusPlus) -> (Design, Vec<LetGo>) {
    loop {
        let designs = demo_designs().unwrap().into_iter();
        let mut design = designs.min_by_key(|_| random.next_u64()).unwrap();
        let derivation = crate::ring::derive(&design, &workshop());
        let mut keys = MOVABLE.to_vec();
        keys.sort_by_cached_key(|_| random.next_u64());
        let wrong = 2 + usize::try_from(random.next_u64() % 3).unwrap();
        let mut even = || -> f64 { StandardUniform.sample(&mut *random) };
        let mut let_go = Vec::new();
        for (index, key) in keys.into_iter().take(wrong + 1).enumerate() {
            let rule = derivation.dimension(key).unwrap().by_rule.unwrap();
            let mut off = 0.0;
            if index < wrong {
                off = (even() - 0.5) * 3.0;
                set(&mut design, key, rule + off);
            }
            let (least, greatest) = key.range();
            let low = (rule - 1.6 - even()).max(least);
            let high = (rule + 1.6 + even()).min(greatest);
            if rule + off > low && rule + off < high {
                let_go.push(LetGo {
                    weight: 0.5 + even() * 2.0,
                    ..LetGo::between(key, low, high)
                });
            }
        }
        if clashes(&design) > 0 && !let_go.is_empty() {
            return (design, let_go);
        }
    }
}

/// The least measure of all random rings without a clash. Only a point nearer than the best so far is judged, which
/// changes nothing about the least.
fn best_of_random(design: &Design, let_go: &[LetGo], points: u64) -> Option<f64> {
    let (shop, never) = (workshop(), AtomicBool::new(false));
    let trial = Trial {
        design,
        workshop: &shop,
        aside: &[],
    };
    let problem = Problem::new(trial, let_go.to_vec(), &never).unwrap();
    // Numbers that are not negative are in the order of their bits.
    let best = AtomicU64::new(f64::INFINITY.to_bits());
    (0..points / 100).into_par_iter().for_each(|chunk| {
        let mut random = Xoshiro256PlusPlus::seed_from_u64(chunk);
        for _ in 0..100 {
            let at: Vec<f64> = let_go
                .iter()
                .map(|one| {
                    let share: f64 = StandardUniform.sample(&mut random);
                    one.low + (one.high - one.low) * share
                })
                .collect();
            let measure = problem.measure(&at);
            let is_nearer = measure.to_bits() < best.load(Ordering::Relaxed);
            if is_nearer && problem.is_free(&at).unwrap() {
                best.fetch_min(measure.to_bits(), Ordering::Relaxed);
            }
        }
    });
    let best = f64::from_bits(best.into_inner());
    best.is_finite().then_some(best)
}

/// Whole micrometres may cost up to a micrometre in each dimension.
fn measure_with_rounding(settled: &Settled, let_go: &[LetGo]) -> f64 {
    let cost = |one: &LetGo| {
        let moved = settled.moves.iter().find(|moved| moved.key == one.key);
        let far = moved.map_or(0.0, |moved| (moved.to - moved.from).abs());
        one.weight * (far - 0.001).max(0.0) * (far - 0.001).max(0.0)
    };
    let_go.iter().map(cost).sum()
}

/// Settles broken designs and holds each against a random search.
fn campaign(seed: u64, designs: usize, points: u64) {
    let mut random = Xoshiro256PlusPlus::seed_from_u64(seed);
    let (mut solved, mut beaten, mut smallest, mut members) = (0, 0, 0, 0);
    for number in 0..designs {
        let (design, let_go) = broken(&mut random);
        if number % 10 == 0 {
            println!("{number} of {designs} tried, {solved} settled");
        }
        let best = best_of_random(&design, &let_go, points);
        match settle_now(&design, &let_go) {
            Outcome::Settled(settled) => {
                solved += 1;
                beaten += usize::from(best.is_some());
                assert_eq!(clashes(&settled.design), 0, "case {number}");
                let least = measure_with_rounding(&settled, &let_go);
                assert!(
                    best.is_none_or(|best| least <= best),
                    "case {number}: settled by {}, {best:?} is there\n{let_go:?}\n{:?}",
                    settled.measure,
                    settled.moves
                );
            }
            Outcome::None(why) => {
                assert_eq!(best, None, "case {number}: none found\n{let_go:?}\n{why:?}");
                is_proved(&design, &let_go, &why);
                smallest += usize::from(why.standing == Standing::Smallest);
                members += why.releases.len();
            }
        }
    }
    println!(
        "{solved} of {designs} settled, {beaten} of them also by {points} random rings and never nearer; of {} \
         contradictions with {members} members in all {smallest} are proved smallest",
        designs - solved
    );
    assert!(
        solved * 3 > designs,
        "only {solved} of {designs} can be settled at all"
    );
}

#[test]
fn broken_designs_settle_as_near_as_random_search() {
    campaign(1, 12, 2000);
}

/// How many, from a variable of the environment, else all.
fn count(name: &str, all: u64) -> u64 {
    std::env::var(name).map_or(all, |text| text.parse().unwrap())
}

#[test]
#[ignore = "hours: 200 designs against 100 000 random rings each; SETTLE_DESIGNS and SETTLE_POINTS ask for fewer"]
fn two_hundred_broken_designs_settle_as_near_as_dense_random_search() {
    let designs = usize::try_from(count("SETTLE_DESIGNS", 200)).unwrap();
    campaign(
        count("SETTLE_SEED", 2),
        designs,
        count("SETTLE_POINTS", 100_000),
    );
}
