//! Shear areas and tensile stress areas: FED-STD-H28/2B table II.B.1 as the MIT-licensed package screw-thread-lib
//! 0.0.6 computes it, ISO 898-1 table for M10, handbook areas of 1/4-20 and 1/2-13.

use flangewright::standards::Thread;
use flangewright::standards::shear_area::{
    least_shear_areas, simplified_shear_areas, tensile_stress_area_mm2,
};

use crate::close;

#[test]
fn quarter_20_in_square_inches_per_inch() {
    let thread: Thread = "1/4-20 UNC".parse().unwrap();
    let (ring, lens) = (thread.internal().unwrap(), thread.external().unwrap());
    let areas = least_shear_areas(&ring, &lens, thread.pitch_mm(), 30.0).unwrap();
    close("ASn", areas.internal_mm2_per_mm / 25.4, 0.53898, 1e-5);
    close("ASs", areas.external_mm2_per_mm / 25.4, 0.36796, 1e-5);
}

#[test]
fn m42x1() {
    // By the formulas, 6H and 6g.
    let thread: Thread = "M42x1".parse().unwrap();
    let (ring, lens) = (thread.internal().unwrap(), thread.external().unwrap());
    let areas = least_shear_areas(&ring, &lens, 1.0, 30.0).unwrap();
    close("ASn", areas.internal_mm2_per_mm, 86.42, 5e-3);
    close("ASs", areas.external_mm2_per_mm, 68.08, 5e-3);
    let rough = simplified_shear_areas(thread.basic().pitch_diameter);
    close("0.75 pi D2", rough.internal_mm2_per_mm, 97.43, 5e-3);
    close("0.625 pi d2", rough.external_mm2_per_mm, 81.19, 5e-3);
}

#[test]
fn threads_that_do_not_reach_each_other_carry_nothing() {
    let (ring, lens): (Thread, Thread) = ("M45x1".parse().unwrap(), "M42x1".parse().unwrap());
    let areas = least_shear_areas(
        &ring.internal().unwrap(),
        &lens.external().unwrap(),
        1.0,
        30.0,
    );
    close("ASn", areas.unwrap().internal_mm2_per_mm, 0.0, 0.0);
}

#[test]
fn without_tolerances_there_is_no_least_area() {
    let thread: Thread = "39 x 26 tpi Whitworth".parse().unwrap();
    let (ring, lens) = (thread.internal().unwrap(), thread.external().unwrap());
    assert_eq!(
        least_shear_areas(&ring, &lens, thread.pitch_mm(), 27.5),
        None
    );
}

#[test]
fn tensile_stress_areas() {
    let area = |text: &str| tensile_stress_area_mm2(&text.parse::<Thread>().unwrap());
    close("M10", area("M10x1.5").unwrap(), 58.0, 0.05);
    close("1/4-20", area("1/4-20 UNC").unwrap() / 645.16, 0.0318, 5e-5);
    close("1/2-13", area("1/2-13 UNC").unwrap() / 645.16, 0.1419, 5e-5);
    assert_eq!(area("39 x 26 tpi Whitworth"), None);
}
