//! Laws of lug patterns: turned as a whole or seen in a mirror, a bayonet behaves the same; and every number that a
//! check gives agrees with counting it out on the clock face.

use flangewright::checks::{Finding, FindingKey, Severity};
use flangewright::document::{Choice, Design, MillingMethod};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::geometry::{Side, seen_from};
use flangewright::mount::{BarrelStep, Body, FreeDepth, Hand, Interface, Lens, Presence, Sector};
use flangewright::workshop::Workshop;
use proptest::prelude::*;

const KEYS: [FindingKey; 6] = [
    FindingKey::LugEntry,
    FindingKey::LugEngagement,
    FindingKey::LugStop,
    FindingKey::SingleEntry,
    FindingKey::LockHole,
    FindingKey::FlangeBearing,
];

fn known<T>(value: T) -> Interface<T> {
    Interface::measured(value, "caliper 0.02")
}

/// An invented lens without pin and aperture ring.
fn lens() -> Lens {
    Lens {
        name: "lens of the patterns".to_owned(),
        register: known(45.46),
        thread: known("M42x1".parse().unwrap()),
        male_thread_length: known(4.0),
        thread_run_out: known(0.3),
        shoulder_fillet: known(0.2),
        shoulder_diameter: known(47.0),
        barrel_at_infinity: known(vec![BarrelStep {
            depth_mm: 4.5,
            diameter_mm: 33.0,
        }]),
        barrel_at_close_focus: known(vec![BarrelStep {
            depth_mm: 3.0,
            diameter_mm: 33.0,
        }]),
        aperture_ring: Presence::Absent,
        stop_down_pin: Presence::Absent,
        ..Lens::default()
    }
}

/// An invented body with the given ears, twist and hand, and no stop.
fn body(ears: Vec<Sector>, twist_deg: f64, hand: Hand) -> Body {
    Body {
        name: "body of the patterns".to_owned(),
        register: known(44.0),
        throat: known(50.0),
        slot_diameter: known(54.0),
        flange_inner: known(54.5),
        flange_outer: known(64.0),
        ear_front_depth: known(1.5),
        ear_thickness: known(1.8),
        ears: known(ears),
        springs: Presence::Present,
        twist: known(twist_deg),
        twist_hand: known(hand),
        stop: Presence::Absent,
        lock_pin: Presence::Present,
        lock_pin_circle: known(59.0),
        lock_pin_diameter: known(2.0),
        lock_pin_protrusion: known(1.0),
        lock_pin_angle: known(230.0),
        index_angle: known(10.0),
        free_depth: known(vec![
            FreeDepth {
                radius_mm: 0.0,
                depth_mm: 14.0,
            },
            FreeDepth {
                radius_mm: 32.0,
                depth_mm: 14.0,
            },
        ]),
        mirror: Presence::Absent,
        obstacles: known(Vec::new()),
        ..Body::default()
    }
}

fn judged(design: &Design) -> Evaluation {
    evaluate(design, &Workshop::default_set().unwrap())
}

fn finding(evaluation: &Evaluation, key: FindingKey) -> &Finding {
    evaluation.finding(key).unwrap()
}

fn wrapped(angle_deg: f64) -> f64 {
    angle_deg.rem_euclid(360.0)
}

/// The angle between two clock angles, 0 to 180 degrees.
fn apart(a: f64, b: f64) -> f64 {
    let turn = wrapped(a - b);
    turn.min(360.0 - turn)
}

fn changed_angle(value: &Interface<f64>, change: impl Fn(f64) -> f64) -> Interface<f64> {
    value
        .number()
        .map_or(Interface::Unknown, |angle| known(wrapped(change(angle))))
}

fn changed(body: &Body, sector: impl Fn(Sector) -> Sector, angle: impl Fn(f64) -> f64) -> Body {
    let ears = body
        .ears
        .value()
        .unwrap()
        .iter()
        .map(|ear| sector(*ear))
        .collect();
    Body {
        ears: known(ears),
        stop_angle: changed_angle(&body.stop_angle, &angle),
        lock_pin_angle: changed_angle(&body.lock_pin_angle, &angle),
        index_angle: changed_angle(&body.index_angle, &angle),
        ..body.clone()
    }
}

/// The whole body turned clockwise.
fn turned(body: &Body, by_deg: f64) -> Body {
    let sector = |ear: Sector| Sector {
        start_deg: wrapped(ear.start_deg + by_deg),
        ..ear
    };
    changed(body, sector, |angle| angle + by_deg)
}

/// The body as a mirror shows it: every angle and the hand run the other way.
fn mirrored(body: &Body) -> Body {
    let sector = |ear: Sector| Sector {
        start_deg: wrapped(-ear.end_deg()),
        ..ear
    };
    let hand = match body.twist_hand.value().unwrap() {
        Hand::Clockwise => Hand::Anticlockwise,
        Hand::Anticlockwise => Hand::Clockwise,
    };
    Body {
        twist_hand: known(hand),
        ..changed(body, sector, |angle| -angle)
    }
}

/// Three or four unequal ears with unequal slots between them, in whole degrees.
fn ears() -> impl Strategy<Value = Vec<Sector>> {
    let three = (
        prop::collection::vec(40..58_i32, 3),
        prop::collection::vec(58..66_i32, 2),
    );
    let four = (
        prop::collection::vec(34..42_i32, 4),
        prop::collection::vec(46..52_i32, 3),
    );
    (0..360_i32, prop_oneof![three, four]).prop_map(|(first, (extents, slots))| {
        let mut start = f64::from(first);
        let slots = slots.into_iter().map(f64::from).chain(std::iter::once(0.0));
        extents
            .into_iter()
            .zip(slots)
            .map(|(extent, slot)| {
                let ear = Sector {
                    start_deg: wrapped(start),
                    extent_deg: f64::from(extent),
                };
                start += ear.extent_deg + slot;
                ear
            })
            .collect()
    })
}

fn bodies() -> impl Strategy<Value = Body> {
    (
        ears(),
        36.0..50.0_f64,
        any::<bool>(),
        prop::option::of(0.0..360.0_f64),
    )
        .prop_map(|(ears, twist, hand, stop)| {
            let hand = if hand {
                Hand::Clockwise
            } else {
                Hand::Anticlockwise
            };
            let mut body = body(ears, twist, hand);
            if let Some(stop) = stop {
                body.stop = Presence::Present;
                body.stop_angle = known(stop);
                body.stop_radius = known(26.5);
                body.stop_depth = known(4.0);
            }
            body
        })
}

fn same(one: &Evaluation, other: &Evaluation) -> Result<(), TestCaseError> {
    for key in KEYS {
        let (a, b) = (finding(one, key), finding(other, key));
        prop_assert_eq!(
            a.severity,
            b.severity,
            "{:?}: {} / {}",
            key,
            &a.message,
            &b.message
        );
        match (a.value, b.value) {
            (Some(a), Some(b)) => prop_assert!((a - b).abs() < 1e-6, "{key:?}: {a} {b}"),
            (a, b) => prop_assert_eq!(a, b),
        }
    }
    Ok(())
}

fn lugs(evaluation: &Evaluation) -> Vec<Sector> {
    evaluation.derivation.ring.as_ref().unwrap().lugs.clone()
}

/// Every sector of one list has its equal in the other.
fn same_sectors(one: &[Sector], other: &[Sector]) -> bool {
    let is_same = |a: &Sector, b: &Sector| {
        apart(a.start_deg, b.start_deg) < 1e-6 && (a.extent_deg - b.extent_deg).abs() < 1e-6
    };
    one.len() == other.len() && one.iter().all(|a| other.iter().any(|b| is_same(a, b)))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_body_turned_as_a_whole_is_the_same_bayonet(body in bodies(), by_deg in 0.0..360.0_f64) {
        let one = judged(&Design::new(lens(), body.clone()));
        let other = judged(&Design::new(lens(), turned(&body, by_deg)));
        let expected: Vec<Sector> =
            lugs(&one).iter().map(|lug| Sector { start_deg: lug.start_deg + by_deg, ..*lug }).collect();
        prop_assert!(same_sectors(&expected, &lugs(&other)));
        same(&one, &other)?;
    }

    /// Turning a plan round to the body side is mirroring it: the ring for the mirrored body, read as stored, is the
    /// first ring read from the body side.
    #[test]
    fn a_mirrored_body_is_the_same_bayonet_seen_from_the_body_side(body in bodies()) {
        let one = judged(&Design::new(lens(), body.clone()));
        let other = judged(&Design::new(lens(), mirrored(&body)));
        let from_behind: Vec<Sector> = lugs(&one)
            .iter()
            .map(|lug| Sector {
                start_deg: seen_from(Side::Body, lug.end_deg().to_radians()).to_degrees(),
                extent_deg: lug.extent_deg,
            })
            .collect();
        prop_assert!(same_sectors(&from_behind, &lugs(&other)));
        same(&one, &other)?;
    }

    #[test]
    fn the_rule_gives_lugs_that_enter(body in bodies()) {
        let evaluation = judged(&Design::new(lens(), body));
        let entry = finding(&evaluation, FindingKey::LugEntry);
        prop_assert_eq!(entry.severity, Severity::Ok, "{}", &entry.message);
        prop_assert!(finding(&evaluation, FindingKey::SingleEntry).severity > Severity::Clash);
    }

    /// Entry angles counted in steps of a tenth of a degree. Lug edges stand a quarter of a degree off whole
    /// degrees and ears on them, so no entry is narrower than half a degree.
    #[test]
    fn entries_agree_with_trying_every_angle(ears in ears(), shrink in 1..16_i32, hand in any::<bool>()) {
        let hand = if hand { Hand::Clockwise } else { Hand::Anticlockwise };
        let twist = 40.0;
        let slots = flangewright::ring::gaps_between(&ears);
        let off = f64::from(shrink) + 0.25;
        let entry: Vec<Sector> = slots
            .iter()
            .map(|slot| Sector { start_deg: slot.start_deg + off, extent_deg: slot.extent_deg - 2.0 * off })
            .collect();
        let locked = entry
            .iter()
            .map(|lug| Sector { start_deg: lug.start_deg + hand.sign() * twist, ..*lug })
            .collect();
        let mut design = Design::new(lens(), body(ears.clone(), twist, hand));
        design.ring.lugs = Choice::Set(locked);
        // No fillet: the flanks are where their angles say.
        design.ring.milling = MillingMethod::RadialCutter;
        let evaluation = judged(&design);
        let enters: Vec<bool> = (0..3600).map(|step| {
            let turn = (f64::from(step) + 0.5) / 10.0;
            !entry.iter().any(|lug| ears.iter().any(|ear| {
                let lug_start = wrapped(lug.start_deg + turn);
                wrapped(lug_start - ear.start_deg) < ear.extent_deg || wrapped(ear.start_deg - lug_start) < lug.extent_deg
            }))
        }).collect();
        let before = enters.iter().cycle().skip(3599);
        let begins: f64 = enters.iter().zip(before).map(|(here, before)| f64::from(*here && !*before)).sum();
        let counted = finding(&evaluation, FindingKey::SingleEntry).value.unwrap();
        prop_assert!((counted - begins).abs() < 1e-9, "{counted} against {begins}");
    }

    /// The covered share of each ear, counted out in steps of a hundredth of a degree.
    #[test]
    fn engagement_agrees_with_counting(body in bodies()) {
        let mut design = Design::new(lens(), body);
        design.ring.milling = MillingMethod::RadialCutter;
        let evaluation = judged(&design);
        let lugs = lugs(&evaluation);
        let ears = design.body.ears.value().unwrap();
        let worst = ears.iter().map(|ear| {
            // Ears are whole degrees.
            let angles: Vec<f64> = (0..40_000_u32)
                .map(|step| (f64::from(step) + 0.5) / 100.0)
                .take_while(|angle| *angle < ear.extent_deg)
                .collect();
            let is_covered = |angle: &f64| {
                let angle = ear.start_deg + angle;
                lugs.iter().any(|lug| wrapped(angle - lug.start_deg) < lug.extent_deg)
            };
            let covered: f64 = angles.iter().map(|angle| f64::from(is_covered(angle))).sum();
            covered / ear.extent_deg
        }).fold(f64::INFINITY, f64::min);
        let value = finding(&evaluation, FindingKey::LugEngagement).value.unwrap();
        prop_assert!((value - worst).abs() < 0.1, "{value} against {worst}");
    }
}

#[test]
fn an_asymmetric_pattern_does_not_fit_back_to_front() {
    let ears = [(0.0, 52.0), (118.0, 44.0), (226.0, 60.0)];
    let ears: Vec<Sector> = ears
        .map(|(start_deg, extent_deg)| Sector {
            start_deg,
            extent_deg,
        })
        .to_vec();
    let mut design = Design::new(lens(), body(ears, 45.0, Hand::Clockwise));
    let by_rule = lugs(&judged(&design));
    // The same angles read off the wrong side of the ring.
    let wrong = by_rule.iter().map(|lug| Sector {
        start_deg: seen_from(Side::Body, lug.end_deg().to_radians()).to_degrees(),
        extent_deg: lug.extent_deg,
    });
    let wrong: Vec<Sector> = wrong.collect();
    assert!(!same_sectors(&by_rule, &wrong));
    design.ring.lugs = Choice::Set(wrong);
    assert_eq!(
        finding(&judged(&design), FindingKey::LugEntry).severity,
        Severity::Clash
    );
}
