use super::*;
use crate::document::{Choice, demo_designs};
use crate::evaluate::evaluate;
use crate::mount::Interface;
use crate::tolerance::RegisterStack;
use crate::workshop::Workshop;

fn demo() -> Design {
    demo_designs().unwrap().remove(0)
}

fn seated(height_mm: f64) -> Design {
    let mut design = demo();
    design.ring.dimensions.get_mut(RingKey::SeatHeight).value = Choice::Set(height_mm);
    design
}

fn numbers(design: &Design, scale_mm: f64) -> Vec<FocusNumber> {
    let evaluation = evaluate(design, &Workshop::default_set().unwrap());
    focus_numbers(design, &evaluation, scale_mm)
}

fn value(numbers: &[FocusNumber], label: &str) -> f64 {
    let number = numbers.iter().find(|number| number.label == label).unwrap();
    number.working.as_ref().unwrap().term.value()
}

/// 36 x 24 over 1500 is 0.02884; times f/2 is 0.0577: worked by hand.
#[test]
fn depth_of_focus_of_the_demo() {
    let numbers = numbers(&demo(), 580.0);
    assert!((value(&numbers, "Half depth of focus, widest stop") - 0.057_69).abs() < 1e-5);
    assert!((value(&numbers, "Circle of two pixels") - 0.012).abs() < 1e-12);
    assert!(numbers.iter().all(|number| number.working.is_ok()));
}

/// Thin lens, worked by hand: f²/e + f with f 58 and e 0.05 is 67.338 m.
#[test]
fn thick_and_thin_rings_say_what_happens_to_infinity() {
    let thick = numbers(&seated(1.51), 580.0);
    assert!((value(&thick, "Farthest sharp distance") - 67_338.0).abs() < 1e-3);
    assert!((value(&thick, "Blur of a star, lens at its infinity mark") - 25.0).abs() < 1e-6);
    let thin = numbers(&seated(1.41), 580.0);
    assert!((value(&thin, "Infinity mark") - 67_338.0).abs() < 1e-3);
}

/// The same as the scale of the optics floor, which is checked against printed conjugates.
#[test]
fn a_mark_of_the_scale_moves_as_the_scale_says() {
    let label = "Where that mark of the scale is really sharp";
    let found = value(&numbers(&seated(1.56), 600.0), label);
    let by_scale = FocusScale::thin(58.0).sharp_at_mm(600.0, 0.1).unwrap();
    assert!((found - by_scale).abs() < 1e-9);
    let too_near = numbers(&demo(), 100.0);
    let near = too_near
        .iter()
        .find(|number| number.label == label)
        .unwrap();
    assert!(
        near.working.is_err() && near.says.contains("0.232 m"),
        "{}",
        near.says
    );
}

#[test]
fn the_focus_error_is_the_nominal_of_the_stack() {
    let mut design = seated(1.50);
    design.ring.finish.build_up_mm = 0.01;
    let workshop = Workshop::default_set().unwrap();
    let evaluation = evaluate(&design, &workshop);
    let stack = RegisterStack::of(&design, &evaluation.derivation, &workshop, 20.0).unwrap();
    let error = focus_error(&design, &evaluation).unwrap().value();
    assert!((error - stack.stack.nominal_mm()).abs() < 1e-12);
    assert!((error - 0.06).abs() < 1e-9);
}

#[test]
fn unknown_optics_are_named() {
    let mut design = demo();
    design.lens.focal_length = Interface::Unknown;
    let numbers = numbers(&design, 580.0);
    let lacking = numbers
        .iter()
        .filter(|number| number.working.is_err())
        .count();
    assert_eq!(lacking, 2);
}
