use super::*;
use crate::checks::fixture::{cured, design, judged};
use crate::document::{Choice, Design};
use crate::mount::Interface;

/// Slots of the fixture at 80..152, 202..260 and 316..20 degrees; lugs given at entry, turned by 62 to lock.
fn with_lugs_at_entry(lugs: &[(f64, f64)]) -> Design {
    let mut design = design();
    let locked = lugs.iter().map(|(start_deg, extent_deg)| Sector {
        start_deg: start_deg + 62.0,
        extent_deg: *extent_deg,
    });
    design.ring.lugs = Choice::Set(locked.collect());
    design
}

#[test]
fn the_rule_enters_with_its_clearance() {
    let finding = judged(check, &design());
    assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    assert!(
        (finding.value.unwrap() - 0.15).abs() < 1e-9,
        "{:?}",
        finding.value
    );
}

// A radial cutter leaves a true radial flank without fillet, so the gap is radius x angle at the throat:
// 25 mm x 0.2 degrees = 0.0873 mm (plain arithmetic).
#[test]
fn without_a_fillet_the_gap_is_radius_times_angle() {
    let mut design = with_lugs_at_entry(&[(81.0, 70.0), (203.0, 56.8), (317.0, 62.0)]);
    design.ring.milling = crate::document::MillingMethod::RadialCutter;
    let finding = judged(check, &design);
    assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
    assert!(
        (finding.value.unwrap() - 0.087).abs() < 1e-9,
        "{:?}",
        finding.value
    );
    assert_eq!(
        judged(check, &cured(&design, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn a_root_fillet_counts() {
    // The same lugs, offset feed with a 4 mm end mill: the fillet alone is wider than the gap.
    let design = with_lugs_at_entry(&[(81.0, 70.0), (203.0, 56.8), (317.0, 62.0)]);
    let finding = judged(check, &design);
    assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
    assert_eq!(
        judged(check, &cured(&design, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn a_lug_over_an_ear_clashes_and_is_cut_back() {
    let mut design = with_lugs_at_entry(&[(79.0, 70.0), (206.0, 50.0), (320.0, 55.0)]);
    let finding = judged(check, &design);
    assert_eq!(finding.severity, Severity::Clash);
    assert!(
        finding.message.contains("runs onto an ear"),
        "{}",
        finding.message
    );
    assert_eq!(
        judged(check, &cured(&design, &finding)).severity,
        Severity::Ok
    );
    // Without lugs by rule to go back to, these lugs themselves are cut back.
    let bench = crate::checks::fixture::Bench::of(design.clone());
    let mut derivation = bench.derivation.clone();
    derivation.lugs_by_rule = None;
    let cut = check(&Context {
        derivation: &derivation,
        ..bench.cx()
    })
    .unwrap();
    let Some(Change::Lugs(lugs)) = cut.remedy.unwrap().change else {
        panic!("no lugs")
    };
    design.ring.lugs = Choice::Set(lugs);
    let again = judged(check, &design);
    assert_eq!(again.severity, Severity::Ok, "{}", again.message);
}

#[test]
fn the_place_is_found_across_twelve_o_clock() {
    // Third slot from 316 to 20: a lug to 22 degrees stands 2 degrees over the ear at 20.
    let design = with_lugs_at_entry(&[(86.0, 60.0), (208.0, 46.0), (322.0, 60.0)]);
    let finding = judged(check, &design);
    assert_eq!(finding.severity, Severity::Clash);
    assert!(finding.message.starts_with("lug 3"), "{}", finding.message);
}

#[test]
fn everything_unknown_is_named() {
    let mut unknown = with_lugs_at_entry(&[(86.0, 60.0)]);
    let bench = crate::checks::fixture::Bench::of(unknown.clone());
    unknown.body.ears = Interface::Unknown;
    unknown.body.twist_hand = Interface::Unknown;
    let lacking = check(&Context {
        design: &unknown,
        ..bench.cx()
    })
    .unwrap_err();
    assert_eq!(
        lacking,
        NotJudged(vec![FieldRef::Ears, FieldRef::TwistHand])
    );
}
