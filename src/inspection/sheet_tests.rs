//! The sheet of the default ring, empty and filled in.

use super::*;
use crate::document::demo_designs;
use crate::document::{Reading, RingKey, SizeOf};
use crate::evaluate::evaluate;

fn sheet(change: impl FnOnce(&mut Design)) -> String {
    let workshop = Workshop::default_set().unwrap();
    let mut design = demo_designs().unwrap().remove(0);
    design.readings.clear();
    change(&mut design);
    inspection_sheet(&design, &workshop, &evaluate(&design, &workshop))
}

fn readings(dimension: RingKey, values: &[f64], instrument: &str) -> Reading {
    Reading {
        dimension: SizeOf::Ring(dimension),
        values: values.to_vec(),
        instrument: instrument.to_owned(),
        places: 0,
        after_corrections: 0,
    }
}

#[test]
fn an_empty_sheet_has_room_for_every_size() {
    let text = sheet(|_| {});
    assert!(
        text.contains("[ ]  Seat height") && text.contains(ROOM),
        "{text}"
    );
    assert!(text.contains("none yet") && text.contains("ISO 14253-1"));
    assert!(text.contains("Lug 1") && text.contains("Thread over balls"));
}

#[test]
fn a_thick_seat_is_judged_and_corrected() {
    let text = sheet(|design| {
        let values: Vec<f64> = [1.56, 1.57, 1.56, 1.57, 1.56, 1.56]
            .iter()
            .map(|value| value - 1.46)
            .map(|off| seat_of(design) + off)
            .collect();
        design
            .readings
            .push(readings(RingKey::SeatHeight, &values, "depth micrometer"));
    });
    for told in [
        "OUT",
        "thicker than drawn",
        "Skim 0.10",
        "clockwise",
        "parallel within",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
}

fn seat_of(design: &Design) -> f64 {
    let workshop = Workshop::default_set().unwrap();
    evaluate(design, &workshop)
        .derivation
        .dimension(RingKey::SeatHeight)
        .unwrap()
        .value
        .unwrap()
}

#[test]
fn an_instrument_that_is_not_there_is_named() {
    let text = sheet(|design| {
        let reading = readings(RingKey::LugDiameter, &[53.7, 53.7], "laser");
        design.readings.push(reading);
    });
    assert!(text.contains("no instrument called \"laser\""), "{text}");
}
