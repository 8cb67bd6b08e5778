use super::*;
use crate::document::{Choice, demo_designs};

fn of_demo(change: impl FnOnce(&mut Design)) -> Vec<Sensitivity> {
    let mut design = demo_designs().unwrap().swap_remove(0);
    change(&mut design);
    let workshop = Workshop::default_set().unwrap();
    sensitivities(&design, &workshop, &AtomicBool::new(false)).unwrap()
}

fn find(all: &[Sensitivity], dimension: RingKey, finding: FindingKey) -> &Sensitivity {
    all.iter()
        .find(|one| one.dimension == dimension && one.finding == finding)
        .unwrap()
}

/// A lip of 0.9: a millimetre more of it is a millimetre more of margin, and 0.1 of its limit of 1.0 for each 0.1.
#[test]
fn a_thicker_lip_gains_what_it_is_thicker() {
    let all = of_demo(|design| {
        design.ring.dimensions.lip_thickness.value = Choice::Set(0.9);
    });
    let lip = find(&all, RingKey::LipThickness, FindingKey::LipThickness);
    assert!((lip.slope - 1.0).abs() < 1e-9, "{lip:?}");
    assert!((lip.gain(0.1) - 0.1).abs() < 1e-9 && (lip.share_slope - 1.0).abs() < 1e-9);
    assert_eq!(lip.kind, Kind::Smooth);
}

/// The lip stops the pin in the middle of its travel: nearer either end costs, a millimetre for each.
#[test]
fn a_kink_tells_both_sides() {
    let all = of_demo(|design| {
        design.ring.dimensions.lip_face_depth.value = Choice::Set(6.3);
    });
    let pin = find(&all, RingKey::LipFaceDepth, FindingKey::PinTravel);
    let Kind::Kink { below, above } = pin.kind else {
        panic!("{pin:?}")
    };
    assert!(
        (below - 1.0).abs() < 1e-6 && (above + 1.0).abs() < 1e-6,
        "{pin:?}"
    );
}

#[test]
fn the_strongest_comes_first_and_nothing_still_is_listed() {
    let all = of_demo(|_| {});
    let strength = |one: &Sensitivity| one.share_slope.abs();
    assert!(all.is_sorted_by(|a, b| strength(a) >= strength(b)));
    assert!(all.len() > 20, "{}", all.len());
    let kinked = |one: &Sensitivity| matches!(one.kind, Kind::Kink { .. });
    assert!(
        all.iter()
            .all(|one| one.slope.abs() > NOTHING || kinked(one))
    );
}
