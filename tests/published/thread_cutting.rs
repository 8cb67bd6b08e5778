//! Infeed, gears and time to stop. Depths: ISO 68-1. Constant area and the rule of the softer first cut, as insert makers
//! print it (from memory); internal passes of a public insert catalogue for pitches 1.0 and 0.75; change gears by
//! arithmetic (5 x 25.4 = 127); time from the feed.

use flangewright::plan::{
    HalfNut, InfeedMethod, best_train, deeper_by_tip_mm, greatest_rpm, on_compound_mm,
    passes_for_first_cut, seconds_to_stop,
};
use flangewright::standards::Thread;

use crate::close;

const GEARS: [u32; 14] = [20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 127];

fn cuts(sums: &[f64]) -> Vec<f64> {
    let before = std::iter::once(0.0).chain(sums.iter().copied());
    sums.iter()
        .zip(before)
        .map(|(sum, before)| sum - before)
        .collect()
}

#[track_caller]
fn all_close(got: &[f64], printed: &[f64], tolerance: f64) {
    assert_eq!(got.len(), printed.len());
    for (got, printed) in got.iter().zip(printed) {
        close("pass", *got, *printed, tolerance);
    }
}

/// ISO 68-1: internal depth 5/8 H; on the compound at 29.5 degrees.
#[test]
fn depths_by_pitch() {
    for (pitch, internal, on_compound) in [
        (0.5, 0.2706, 0.3109),
        (0.75, 0.4059, 0.4664),
        (1.0, 0.5413, 0.6219),
        (1.5, 0.8119, 0.9328),
    ] {
        let depth = Thread::metric(42.0, pitch).unwrap().basic().internal_depth;
        close("depth", depth, internal, 6e-5);
        close("compound", on_compound_mm(depth, 29.5), on_compound, 6e-5);
    }
    // A sharp tool: H/8 deeper, 0.108 P; a tool with the basic flat: nothing.
    close("sharp", deeper_by_tip_mm(1.0, 0.0), 0.108, 5e-4);
    close("flat", deeper_by_tip_mm(1.0, 0.125), 0.0, 1e-12);
}

#[test]
fn constant_area() {
    let sums = InfeedMethod::ConstantArea.sums_mm(0.5413, 8);
    all_close(
        &sums,
        &[
            0.1914, 0.2707, 0.3315, 0.3828, 0.4279, 0.4688, 0.5063, 0.5413,
        ],
        6e-5,
    );
    all_close(
        &cuts(&sums),
        &[0.191, 0.079, 0.061, 0.051, 0.045, 0.041, 0.038, 0.035],
        6e-4,
    );
    assert_eq!(passes_for_first_cut(0.5413, 0.20), 8);
    let three = InfeedMethod::ConstantArea.sums_mm(0.577, 3);
    all_close(&cuts(&three), &[0.333, 0.138, 0.106], 6e-4);
}

#[test]
fn softer_first_cut() {
    let sums = InfeedMethod::SofterFirstCut.sums_mm(0.94, 6);
    all_close(&sums, &[0.230, 0.420, 0.594, 0.729, 0.841, 0.940], 1e-3);
    // The catalogue's total is 0.577 P.
    let one = InfeedMethod::SofterFirstCut.sums_mm(0.577, 3);
    all_close(&cuts(&one), &[0.224, 0.185, 0.168], 1.1e-3);
    let fine = InfeedMethod::SofterFirstCut.sums_mm(0.577 * 0.75, 3);
    all_close(&cuts(&fine), &[0.168, 0.138, 0.127], 1.1e-3);
}

/// Eight threads an inch on the leadscrew: 1 mm needs 40 : 127, exactly, and the half-nut stays closed (every 40 turns).
#[test]
fn a_metric_thread_on_an_inch_leadscrew() {
    let train = best_train(25.4 / 8.0, 1.0, &GEARS).unwrap();
    assert!(train.is_exact());
    assert_eq!(train.pairs, [(40, 127)]);
    assert_eq!(
        train.half_nut(&[14, 15, 16]),
        HalfNut::StopAndReverse { every: 40 }
    );
}

/// 20 threads an inch, 1.27 mm, on a leadscrew of 3 mm: 1.27 / 3 = 127 x 20 / (75 x 80), exactly; 26 threads an inch
/// are 127/390, which these gears only come near to.
#[test]
fn an_inch_thread_on_a_metric_leadscrew() {
    let exact = best_train(3.0, 1.27, &GEARS).unwrap();
    assert!(exact.is_exact(), "{exact}");
    let near = best_train(3.0, 25.4 / 26.0, &GEARS).unwrap();
    assert!(!near.is_exact() && near.error_share.abs() < 0.002, "{near}");
    close(
        "over 5 mm",
        near.error_mm(5.0),
        5.0 * near.error_share,
        1e-15,
    );
}

#[test]
fn seconds_in_the_relief() {
    close("2 mm", seconds_to_stop(2.0, 1.0, 100.0), 1.20, 5e-3);
    close("1.5 mm", seconds_to_stop(1.5, 0.75, 70.0), 1.71, 5e-3);
    close("cap", greatest_rpm(2.0, 1.0, 1.0), 120.0, 1e-9);
    close("cap", greatest_rpm(1.5, 0.75, 1.0), 120.0, 1e-9);
}
