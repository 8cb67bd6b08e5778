//! JCGM 100:2008 and JCGM 101:2008 worked examples (inputs and printed results from memory, reproduced), tables of
//! Student's t as any general library gives them, and readings worked by hand.

use std::sync::atomic::AtomicBool;

use flangewright::tolerance::{
    Combined, Component, Conformity, Contributor, Coverage, DecisionRule, Distribution, Limits,
    Outcome, Stack, Trial, TypeA, combine, of_resolution, rectangular, simulate, student_factor,
};

use crate::close;

/// JCGM 100 4.4.3, table 1: twenty temperatures; mean 100.145, s 1.489, s / √20 0.333.
#[test]
fn twenty_temperatures() {
    let readings = [
        96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42,
        100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
    ];
    let found = TypeA::of(&readings).unwrap();
    close("mean", found.mean, 100.145, 5e-4);
    close("s", found.deviation, 1.489, 5e-4);
    close("s / √n", found.standard_uncertainty, 0.333, 5e-4);
    close("dof", found.dof, 19.0, 1e-12);
}

/// JCGM 100 4.3.7 and 4.3.9: limits of 1 either way.
#[test]
fn limits_alone() {
    close("rectangular", rectangular(1.0), 0.577_350, 5e-7);
    close("step of 0.01", of_resolution(0.01), 0.002_887, 5e-7);
    let triangular = Distribution::Triangular { half_mm: 1.0 };
    close(
        "triangular",
        triangular.standard_uncertainty_mm(),
        0.408_248,
        5e-7,
    );
}

/// JCGM 100 table E.1: doubt of a standard deviation from n readings (24 % at 10; 50 % at 3 and 35 % at 5 by its
/// formula).
#[test]
fn doubt_of_a_standard_deviation() {
    for (count, percent) in [(3, 50.0), (5, 35.0), (10, 24.0)] {
        let readings: Vec<f64> = (0..count).map(f64::from).collect();
        let doubt = TypeA::of(&readings).unwrap().doubt_of_deviation();
        close("doubt", doubt * 100.0, percent, 0.5);
    }
}

/// Student's t as a general library of statistics gives it, and JCGM 100 table G.2.
#[test]
fn factors_of_student() {
    for (count, by_9545, by_95) in [
        (3.0, 4.53, 4.303),
        (5.0, 2.87, 2.776),
        (10.0, 2.32, 2.262),
        (20.0, 2.14, 2.093),
    ] {
        close(
            "95.45 %",
            student_factor(0.9545, count - 1.0),
            by_9545,
            5e-3,
        );
        close("95 %", student_factor(0.95, count - 1.0), by_95, 5e-4);
    }
    for (dof, by_99) in [(1.0, 63.66), (10.0, 3.17), (50.0, 2.68)] {
        close("99 %", student_factor(0.99, dof), by_99, 5e-3);
    }
}

fn drawn(spreads: &[Distribution]) -> Outcome {
    let contributors = spreads
        .iter()
        .map(|spread| Contributor::new("X", 1.0, 0.0, *spread));
    let stack = Stack {
        contributors: contributors.collect(),
    };
    let trial = Trial {
        samples: 1_000_000,
        seed: 9,
        low_mm: -3.92,
        high_mm: 3.92,
        coverage: 0.95,
    };
    simulate(&stack, &trial, &AtomicBool::new(false), |_| ()).unwrap()
}

fn uniform(deviation: f64) -> Distribution {
    Distribution::Uniform {
        half_mm: deviation * 3.0_f64.sqrt(),
    }
}

/// JCGM 101 9.2.2: four unit normals; u 2.00, 95 % within 3.92, which is 1.96 x 2.
#[test]
fn four_normals() {
    let found = drawn(&[Distribution::Normal { sigma_mm: 1.0 }; 4]);
    // Three standard errors of a million draws: 0.006 for the mean, 0.016 for a 95 % end.
    close("mean", found.mean_mm, 0.0, 0.006);
    close("u", found.deviation_mm, 2.00, 0.005);
    close("low", found.symmetric_mm.0, -1.96 * 2.0, 0.02);
    close("high", found.symmetric_mm.1, 1.96 * 2.0, 0.02);
    let (from, to) = found.shortest_mm;
    close("shortest", to - from, 2.0 * 3.92, 0.03);
    close("inside", found.share_inside, 0.95, 7e-4);
}

/// JCGM 101 9.2.3: four uniform inputs of unit standard deviation; u 2.00, 95 % within 3.88.
#[test]
fn four_uniform() {
    let found = drawn(&[uniform(1.0); 4]);
    close("u", found.deviation_mm, 2.00, 0.005);
    close("low", found.symmetric_mm.0, -3.88, 0.02);
    close("high", found.symmetric_mm.1, 3.88, 0.02);
}

/// JCGM 101 9.2.4: the same with one of ten; u 10.15, 95 % within 17.0 where the normal way says 19.9.
#[test]
fn one_uniform_that_rules() {
    let spreads = [uniform(1.0), uniform(1.0), uniform(1.0), uniform(10.0)];
    let found = drawn(&spreads);
    close("u", found.deviation_mm, 10.15, 0.02);
    close("low", found.symmetric_mm.0, -17.0, 0.05);
    close("high", found.symmetric_mm.1, 17.0, 0.05);
    let causes: Vec<Component> = spreads
        .iter()
        .map(|spread| Component::within("X", spread.half_mm()))
        .collect();
    close(
        "normal way",
        combine(&causes).expanded(Coverage::Share(0.95)),
        19.9,
        0.05,
    );
}

/// Five readings with the spread `deviation`, um.
fn five(deviation: f64) -> TypeA {
    // -1, -1, 0, 1, 1 has s = 1.
    let found = TypeA::of(&[-1.0, -1.0, 0.0, 1.0, 1.0].map(|step| step * deviation)).unwrap();
    close("s", found.deviation, deviation, 1e-9);
    found
}

fn read_with(limit: f64, deviation: f64) -> Combined {
    combine(&[
        five(deviation).component(),
        Component::within("permissible error", limit),
    ])
}

/// Worked by hand, um: micrometer with 4, s 1.5 of 5; caliper with 20, s 10 of 5.
#[test]
fn micrometer_and_caliper() {
    close("u_A", five(1.5).standard_uncertainty, 0.671, 5e-4);
    close("u_B", rectangular(4.0), 2.309, 5e-4);
    let micrometer = read_with(4.0, 1.5);
    close("u_c", micrometer.standard_uncertainty, 2.405, 5e-4);
    close("U", micrometer.expanded(Coverage::Factor(2.0)), 4.81, 5e-3);
    close("dof", micrometer.dof, 661.0, 0.5);
    let caliper = read_with(20.0, 10.0);
    close("u_c", caliper.standard_uncertainty, 12.4, 0.05);
    close("U", caliper.expanded(Coverage::Factor(2.0)), 24.8, 0.05);
    let two_hundredths = Limits {
        low_mm: -0.02,
        high_mm: 0.02,
    };
    let guard = caliper.expanded(Coverage::Factor(2.0)) / 1e3;
    assert_eq!(two_hundredths.acceptance(guard), None);
}

/// ISO 14253-1 as public summaries tell it: 1.460 ±0.020 with an uncertainty of 2.405 um; 10.00
/// ±0.05 with 0.04 expanded.
#[test]
fn guard_bands() {
    let seat = Limits {
        low_mm: 1.440,
        high_mm: 1.480,
    };
    for (rule, guard_um, low, high) in [
        (DecisionRule::Likelihood(0.95), 3.96, 1.444, 1.476),
        (DecisionRule::Expanded(2.0), 4.81, 1.4448, 1.4752),
        (DecisionRule::Simple, 0.0, 1.440, 1.480),
    ] {
        let guard = rule.guard_mm(2.405e-3);
        close("guard band", guard * 1e3, guard_um, 5e-3);
        let zone = seat.acceptance(guard).unwrap();
        close("low", zone.low_mm, low, 5e-5);
        close("high", zone.high_mm, high, 5e-5);
    }
    let public = Limits {
        low_mm: 9.95,
        high_mm: 10.05,
    };
    assert_eq!(public.judge(10.03, 0.04), Conformity::NotProvable);
    assert_eq!(public.judge(10.00, 0.04), Conformity::Inside);
    assert_eq!(public.judge(10.10, 0.04), Conformity::Outside);
}
