use super::*;
use crate::mount::{Body, Citation, Known, Lens};
use crate::ring::DimensionState;

fn known(value: f64, uncertainty: f64, origin: Origin) -> Interface<f64> {
    Interface::Known(Known {
        value,
        uncertainty,
        origin,
    })
}

/// Registers 45.46 and 44.00, sprung body, f/1.8: invented parts.
fn design() -> Design {
    let lens = Lens {
        register: Interface::standard(45.46, "print"),
        ..Lens::default()
    };
    let body = Body {
        register: Interface::standard(44.0, "print"),
        ear_front_depth: Interface::measured(1.5, "gauge"),
        ear_thickness: Interface::measured(1.8, "gauge"),
        springs: Presence::Present,
        ..Body::default()
    };
    let mut design = Design::new(lens, body);
    design.ring.material = "aluminium 6061-T6".to_owned();
    design
}

fn state(key: RingKey, value: f64, deviations: (f64, f64)) -> DimensionState {
    DimensionState {
        key,
        value: Some(value),
        by_rule: Some(value),
        is_set: false,
        deviations,
        tolerance_text: String::new(),
        working: None,
        missing: Vec::new(),
    }
}

fn derivation(seat: f64, seat_deviations: (f64, f64)) -> Derivation {
    Derivation {
        dimensions: vec![
            state(RingKey::SeatHeight, seat, seat_deviations),
            state(RingKey::GrooveWidth, 3.31, (0.0, 0.02)),
        ],
        lug_working: Vec::new(),
        lugs_by_rule: None,
        ring: None,
        missing: Vec::new(),
        refusal: None,
    }
}

fn stack_of(design: &Design, derivation: &Derivation) -> RegisterStack {
    let workshop = Workshop::default_set().unwrap();
    RegisterStack::of(design, derivation, &workshop, TEMPERATURE_SPAN_K).unwrap()
}

/// Worked by hand: 0.01 + 0.02 + 0.02 and 23.6e-6 x 1.46 x 20 = 0.00069.
#[test]
fn the_plain_ring() {
    let found = stack_of(&design(), &derivation(1.46, (-0.01, 0.01)));
    assert!(found.left_out.is_empty());
    assert_eq!(found.stack.contributors.len(), 4);
    assert!(found.stack.nominal_mm().abs() < 1e-12);
    let growth = 23.6e-6 * 1.46 * 20.0;
    assert!((found.stack.worst_case_mm() - 0.05 - growth).abs() < 1e-12);
    assert!((found.worst_case().value() - found.stack.worst_case_mm()).abs() < 1e-15);
    let square = (0.01_f64.powi(2) + 2.0 * 0.02_f64.powi(2) + growth * growth).sqrt();
    assert!((found.stack.root_sum_square_mm() - square).abs() < 1e-12);
    // f/1.8 and c 0.029: 0.0522, beyond the worst case.
    assert!(found.share_reaching_infinity(0.0522) > 0.9989);
    assert!((found.share_reaching_infinity(0.0) - 0.5).abs() < 1e-12);
}

#[test]
fn a_thick_seat_and_a_lopsided_tolerance_move_the_mean() {
    let found = stack_of(&design(), &derivation(1.48, (0.0, 0.02)));
    assert!((found.stack.nominal_mm() - 0.02).abs() < 1e-12);
    assert!((found.stack.mean_mm() - 0.03).abs() < 1e-12);
    assert!(found.share_reaching_infinity(0.03) < 0.51);
}

/// Groove 3.31 + 0.02 less 3.30 of ear: anything from 0 to 0.03 off the flange.
#[test]
fn play_counts_only_where_no_spring_takes_it_up() {
    for springs in [Presence::Absent, Presence::Unknown] {
        let mut design = design();
        design.body.springs = springs;
        let found = stack_of(&design, &derivation(1.46, (-0.01, 0.01)));
        assert!((found.stack.mean_mm() - 0.015).abs() < 1e-12);
        let play = found
            .stack
            .contributors
            .iter()
            .find(|one| one.name.contains("play"))
            .unwrap();
        assert!((play.distribution.half_mm() - 0.015).abs() < 1e-12);
    }
    let mut unknown = design();
    unknown.body.springs = Presence::Absent;
    unknown.body.ear_thickness = Interface::Unknown;
    let found = stack_of(&unknown, &derivation(1.46, (-0.01, 0.01)));
    assert_eq!(found.left_out, [FieldRef::Body(BodyField::EarThickness)]);
}

#[test]
fn a_measured_register_counts_by_its_own_uncertainty() {
    let mut design = design();
    let origin = Origin::Measured {
        readings: Vec::new(),
        instrument: "depth micrometer".into(),
    };
    design.lens.register = known(45.46, 0.003, origin);
    let found = stack_of(&design, &derivation(1.46, (-0.01, 0.01)));
    let lens = &found.stack.contributors[2];
    assert_eq!(lens.distribution, Distribution::Normal { sigma_mm: 0.003 });
    assert!(lens.sensitivity < 0.0);
}

/// Two prints of one register, 27.80 and 27.95: anything from 27.78 to 27.97.
#[test]
fn prints_that_disagree_spread_the_register() {
    let mut design = design();
    let citation = |says| Citation {
        says,
        source: "print".into(),
    };
    design.body.register = known(
        27.80,
        0.0,
        Origin::Published(vec![citation(27.80), citation(27.95)]),
    );
    let found = stack_of(&design, &derivation(17.66, (-0.01, 0.01)));
    let body = &found.stack.contributors[1];
    assert!((body.distribution.half_mm() - 0.095).abs() < 1e-12);
    assert!((body.mean_mm() - 27.875).abs() < 1e-12);
}

#[test]
fn a_coat_on_both_faces_counts_twice() {
    let mut design = design();
    design.ring.finish.build_up_mm = 0.01;
    let found = stack_of(&design, &derivation(1.44, (-0.01, 0.01)));
    assert!(found.stack.nominal_mm().abs() < 1e-12);
    design.ring.finish.faces_masked = true;
    let found = stack_of(&design, &derivation(1.44, (-0.01, 0.01)));
    assert!((found.stack.nominal_mm() + 0.02).abs() < 1e-12);
}

#[test]
fn unknown_registers_are_named() {
    let design = Design::new(Lens::default(), Body::default());
    let mut ring = derivation(1.46, (0.0, 0.0));
    ring.dimensions.clear();
    let workshop = Workshop::default_set().unwrap();
    let lacking = RegisterStack::of(&design, &ring, &workshop, TEMPERATURE_SPAN_K).unwrap_err();
    let wanted = [
        FieldRef::Ring(RingKey::SeatHeight),
        FieldRef::Lens(LensField::Register),
        FieldRef::Body(BodyField::Register),
    ];
    assert_eq!(lacking, wanted);
}

/// Handbook expansion, 27.46 mm over 40 K, worked by hand: 25.9 um for 6061, 12.9 um for steel.
#[test]
fn growth_of_tall_rings() {
    assert!((growth_mm(23.6, 27.46, 40.0) - 0.0259).abs() < 5e-5);
    assert!((growth_mm(11.7, 27.46, 40.0) - 0.0129).abs() < 5e-5);
}
