//! Measurement over wires: Machinery's Handbook 31 pp. 2129-2131 (inches), a turning textbook of 1915 and a
//! model engineers' page for single rows. Internal balls: own derivation, mirror of the above.

use flangewright::standards::Thread;
use flangewright::standards::wires::{
    ball_centres_mm, best_wire_mm, between_balls_mm, lead_correction_mm, over_balls_mm,
    over_wires_mm, pitch_diameter_from_wires_mm, staggered_ball_centres_mm, usable_wires_mm,
};

use crate::close;

/// Pitch diameter of the old American form, D - 0.6495 P, and of the Whitworth form, D - 0.6403 P.
fn american(diameter: f64, tpi: f64) -> f64 {
    diameter - 0.649_519 / tpi
}

fn whitworth(diameter: f64, tpi: f64) -> f64 {
    diameter - 0.640_327 / tpi
}

#[test]
fn constants_by_threads_per_inch() {
    // What is taken off 3 w (60 degrees) and 3.1657 w (55 degrees), p. 2129.
    for (tpi, constant) in [
        (20.0, 0.04330),
        (24.0, 0.03608),
        (26.0, 0.03331),
        (32.0, 0.02706),
    ] {
        close(
            "60 deg",
            -over_wires_mm(0.0, 1.0 / tpi, 30.0, 0.0),
            constant,
            6e-6,
        );
    }
    for (tpi, constant) in [(20.0, 0.04803), (26.0, 0.03694), (32.0, 0.03002)] {
        close(
            "55 deg",
            -over_wires_mm(0.0, 1.0 / tpi, 27.5, 0.0),
            constant,
            6e-6,
        );
    }
    close("3 w", over_wires_mm(0.0, 0.0, 30.0, 1.0), 3.0, 1e-12);
    close(
        "3.1657 w",
        over_wires_mm(0.0, 0.0, 27.5, 1.0),
        3.165_681,
        5e-7,
    );
}

#[test]
fn printed_measurements() {
    // p. 2130, wire 0.035; 1915 textbook, wire 0.140; 7/16-14, wire 0.045. Inches.
    for (diameter, tpi, wire, over) in [
        (0.25, 18.0, 0.035, 0.2708),
        (0.25, 20.0, 0.035, 0.2792),
        (1.5, 6.0, 0.140, 1.6674),
    ] {
        let got = over_wires_mm(american(diameter, tpi), 1.0 / tpi, 30.0, wire);
        close("60 deg", got, over, 1e-4);
    }
    let got = over_wires_mm(american(0.4375, 14.0), 1.0 / 14.0, 30.0, 0.045);
    close("7/16-14", got, 0.464, 5e-4);
    // p. 2131, Whitworth form.
    for (diameter, tpi, wire, over) in [(0.25, 20.0, 0.035, 0.2808), (1.0, 8.0, 0.090, 1.0848)] {
        let got = over_wires_mm(whitworth(diameter, tpi), 1.0 / tpi, 27.5, wire);
        close("55 deg", got, over, 1e-4);
    }
}

#[test]
fn best_wires() {
    close("60 deg", best_wire_mm(1.0, 30.0), 0.577_350, 5e-7);
    close("55 deg", best_wire_mm(1.0, 27.5), 0.563_691, 5e-7);
}

#[test]
fn m42x1_over_wires() {
    let wire = best_wire_mm(1.0, 30.0);
    for (pitch_diameter, over) in [(41.324, 42.190), (41.199, 42.065)] {
        close(
            "M",
            over_wires_mm(pitch_diameter, 1.0, 30.0, wire),
            over,
            5.1e-4,
        );
        let back = pitch_diameter_from_wires_mm(
            over_wires_mm(pitch_diameter, 1.0, 30.0, wire),
            1.0,
            30.0,
            wire,
        );
        close("back", back, pitch_diameter, 1e-12);
    }
    close(
        "basic",
        over_wires_mm(41.350_481, 1.0, 30.0, wire),
        42.2165,
        5.1e-5,
    );
    close(
        "lead correction",
        lead_correction_mm(wire, 0.4411, 30.0),
        0.000_03,
        5e-6,
    );
}

#[test]
fn usable_wires_of_the_basic_profile() {
    let (least, greatest) = usable_wires_mm(&Thread::metric(42.0, 1.0).unwrap());
    close("least", least, 0.505, 5e-4);
    close("greatest", greatest, 1.010, 5e-4);
    let whitworth: Thread = "39 x 26 tpi Whitworth".parse().unwrap();
    let (least, greatest) = usable_wires_mm(&whitworth);
    let best = best_wire_mm(whitworth.pitch_mm(), 27.5);
    assert!(least < best && best < greatest);
}

#[test]
fn balls_in_an_internal_thread() {
    // M42x1 at basic D2 with balls of 0.57735.
    let (basic, ball) = (41.350_481, best_wire_mm(1.0, 30.0));
    let over = over_balls_mm(basic, 1.0, 30.0, ball);
    close("over", over, 41.6392, 5.1e-5);
    close("as D2 + 0.288675 P", over, basic + 0.288_675, 1e-6);
    let centres = ball_centres_mm(basic, 1.0, 30.0, ball);
    close("centres", centres, 41.0618, 5.1e-5);
    close(
        "between",
        between_balls_mm(basic, 1.0, 30.0, ball),
        2.0 * centres - over,
        1e-9,
    );
    close(
        "staggered",
        staggered_ball_centres_mm(centres, 1.0) - centres,
        0.0030,
        5.1e-5,
    );
}
