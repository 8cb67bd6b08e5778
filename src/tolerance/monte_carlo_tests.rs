use std::sync::Mutex;

use super::*;
use crate::tolerance::{Contributor, Distribution};

fn six() -> Stack {
    let spreads = [
        Distribution::NormalWithin { half_mm: 0.02 },
        Distribution::Normal { sigma_mm: 0.006 },
        Distribution::Uniform { half_mm: 0.02 },
        Distribution::Uniform { half_mm: 0.01 },
        Distribution::Uniform { half_mm: 0.005 },
        Distribution::Triangular { half_mm: 0.03 },
    ];
    let contributors = spreads
        .map(|spread| Contributor::new("part", 1.0, 0.1, spread))
        .to_vec();
    Stack { contributors }
}

fn trial(samples: u32) -> Trial {
    Trial {
        samples,
        seed: 41,
        low_mm: f64::NEG_INFINITY,
        high_mm: 0.63,
        coverage: 0.95,
    }
}

fn run(stack: &Stack, trial: &Trial) -> Outcome {
    simulate(stack, trial, &AtomicBool::new(false), |_| ()).unwrap()
}

#[test]
fn the_same_digits_at_any_number_of_threads() {
    let outcomes: Vec<Outcome> = [1, 2, 7]
        .into_iter()
        .map(|threads| {
            let pool = rayon::ThreadPoolBuilder::new()
                .num_threads(threads)
                .build()
                .unwrap();
            pool.install(|| run(&six(), &trial(123_456)))
        })
        .collect();
    let bits = |outcome: &Outcome| {
        let (from, to) = outcome.shortest_mm;
        [
            outcome.mean_mm,
            outcome.deviation_mm,
            from,
            to,
            outcome.share_inside,
        ]
        .map(f64::to_bits)
    };
    for other in &outcomes[1..] {
        assert_eq!(bits(&outcomes[0]), bits(other));
        assert_eq!(outcomes[0], *other);
    }
    let other_seed = run(
        &six(),
        &Trial {
            seed: 42_000,
            ..trial(123_456)
        },
    );
    assert_ne!(other_seed.mean_mm.to_bits(), outcomes[0].mean_mm.to_bits());
}

/// The closed form of the stack: mean, standard uncertainty, share inside.
#[test]
fn it_agrees_with_the_closed_form() {
    let stack = six();
    let outcome = run(&stack, &trial(1_000_000));
    let u = stack.standard_uncertainty_mm();
    assert!((outcome.mean_mm - 0.6).abs() < 0.004 * u);
    assert!((outcome.deviation_mm / u - 1.0).abs() < 0.004);
    let closed = stack.share_inside(f64::NEG_INFINITY, 0.63);
    assert!(
        (outcome.share_inside - closed).abs() < 0.005,
        "{} {closed}",
        outcome.share_inside
    );
    let (from, to) = outcome.shortest_mm;
    let (low, high) = outcome.symmetric_mm;
    assert!(to - from <= high - low + 1e-12 && to - from > 3.7 * u);
    let counted = outcome.histogram.bins(50);
    assert!(counted.len() <= 50 && counted.len() > 40);
    assert_eq!(counted.iter().map(|bin| bin.count).sum::<u32>(), 1_000_000);
}

#[test]
fn progress_rises_to_the_end_and_a_set_flag_ends_it() {
    let seen = Mutex::new(Vec::new());
    let note = |share: f64| seen.lock().unwrap().push(share);
    simulate(&six(), &trial(200_000), &AtomicBool::new(false), note).unwrap();
    let mut shares = seen.into_inner().unwrap();
    shares.sort_by(f64::total_cmp);
    assert_eq!(shares.len(), 20);
    assert!((shares[19] - 1.0).abs() < 1e-12 && (shares[0] - 0.05).abs() < 1e-12);

    let cancel = AtomicBool::new(false);
    let stop_at_once = |_| cancel.store(true, Ordering::Relaxed);
    let pool = rayon::ThreadPoolBuilder::new()
        .num_threads(2)
        .build()
        .unwrap();
    let stopped = pool.install(|| simulate(&six(), &trial(1_000_000), &cancel, stop_at_once));
    assert_eq!(stopped.unwrap_err(), Cancelled);
}

#[test]
fn few_samples_and_stacks_without_spread() {
    let exact = Contributor::new("shim", 1.0, 0.5, Distribution::Uniform { half_mm: 0.0 });
    let still = run(
        &Stack {
            contributors: vec![exact],
        },
        &trial(1),
    );
    assert_eq!(
        (still.samples, still.mean_mm, still.deviation_mm),
        (2, 0.5, 0.0)
    );
    assert_eq!((still.share_inside, still.shortest_mm), (1.0, (0.5, 0.5)));
    let nothing = run(&Stack::default(), &trial(15_000));
    assert_eq!((nothing.samples, nothing.mean_mm), (15_000, 0.0));
}
