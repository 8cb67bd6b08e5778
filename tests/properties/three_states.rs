//! For every check a design where it passes, one where it is a caution and one where it is a clash, each one change
//! away from the archive portrait ring, which passes them all.

use flangewright::checks::{FindingKey, Severity};
use flangewright::document::{Choice, Design, LimitKey, Pieces, RingKey, ThreadHold};
use flangewright::evaluate::evaluate;
use flangewright::mount::{BarrelStep, BodyField, Hand, Interface, LensField, Obstacle, Sector};
use flangewright::workshop::{ToolDuty, Workshop};

use super::remedies::demo;

/// One change of design or workshop.
enum Change {
    Ring(RingKey, f64),
    Lens(LensField, f64),
    Body(BodyField, f64),
    Limit(LimitKey, f64),
    /// Mass and material of a lens that hangs 400 mm out.
    Heavy(f64, &'static str),
    /// Every lug grown by so many degrees on each side.
    Lugs(f64),
    /// The ears, start and extent.
    Ears(&'static [(f64, f64)]),
    /// One step of the rear barrel.
    Barrel(f64, f64),
    /// A grip beside the flange, its inner radius.
    Grip(f64),
    /// Run-out of the male thread, the ring's chamfer left as it is, mm.
    RunOut(f64),
    Hand(Hand),
    Trial(f64),
    TwoPieces,
    Assumed,
    Unknown,
    JawForce(f64),
    /// Reach of every outside tool.
    Blade(f64),
}

/// What a check needs to pass, to be a caution, to be a clash; `None` where it cannot come to that, with the reason
/// beside it.
type States = (Option<Change>, Option<Change>, Option<Change>);

fn states(key: FindingKey) -> States {
    use Change as C;
    use FindingKey as K;
    use LensField as L;
    use RingKey as R;
    let both = |caution, clash| (None, Some(caution), Some(clash));
    match key {
        K::Register => both(C::Ring(R::SeatHeight, 1.472), C::Ring(R::SeatHeight, 1.51)),
        K::AssumedValues => both(C::Assumed, C::Unknown),
        K::LipThickness => both(C::Ring(R::LipThickness, 0.9), C::Ring(R::LipThickness, 0.7)),
        K::PinLanding => both(C::Ring(R::LipBore, 35.9), C::Ring(R::LipBore, 36.3)),
        K::PinTravel => both(
            C::Ring(R::LipFaceDepth, 5.93),
            C::Ring(R::LipFaceDepth, 5.7),
        ),
        K::ThreadBottoming => both(
            C::Ring(R::LipFaceDepth, 4.2),
            C::Ring(R::LipFaceDepth, 4.05),
        ),
        K::ThreadEngagement => both(C::Ring(R::ThreadLength, 3.5), C::Ring(R::ThreadLength, 2.5)),
        K::Relief => both(C::Ring(R::ReliefWidth, 2.0), C::Ring(R::ReliefWidth, 1.2)),
        K::ThinWall => both(
            C::Ring(R::ReliefDiameter, 46.2),
            C::Ring(R::ReliefDiameter, 46.8),
        ),
        K::FlangeStrength => both(C::Lens(L::Mass, 2500.0), C::Lens(L::Mass, 6000.0)),
        K::LugStrength => both(C::Lens(L::Mass, 9000.0), C::Lens(L::Mass, 18_000.0)),
        K::ThreadStrength => both(
            C::Heavy(2000.0, "acetal copolymer"),
            C::Heavy(6000.0, "acetal copolymer"),
        ),
        K::ApertureRing => both(
            C::Lens(L::ApertureRingAhead, 0.2),
            C::Lens(L::ApertureRingAhead, 0.1),
        ),
        K::LensBarrel => both(C::Barrel(5.5, 40.75), C::Barrel(5.5, 40.95)),
        K::Throat => both(
            C::Ring(R::NoseDiameter, 47.75),
            C::Ring(R::NoseDiameter, 47.9),
        ),
        K::EarRoom => both(C::Ring(R::GrooveWidth, 2.7), C::Ring(R::GrooveWidth, 2.45)),
        K::NoseDepth => both(C::Ring(R::SpigotLength, 7.7), C::Ring(R::SpigotLength, 8.2)),
        K::Obstacles => both(C::Grip(31.65), C::Grip(31.3)),
        K::FlangeBearing => both(
            C::Body(BodyField::FlangeInner, 58.2),
            C::Body(BodyField::FlangeInner, 60.5),
        ),
        K::SeatBearing => both(
            C::Lens(L::ShoulderDiameter, 44.0),
            C::Lens(L::ShoulderDiameter, 43.2),
        ),
        K::ThreadHand => both(C::Hand(Hand::Clockwise), C::Hand(Hand::Anticlockwise)),
        K::LensStart => both(C::RunOut(0.95), C::Ring(R::ThreadChamfer, 0.3)),
        K::LugEntry => both(C::Lugs(0.15), C::Lugs(0.3)),
        K::LugEngagement => both(C::Lugs(-6.0), C::Lugs(-13.0)),
        K::LugStop => both(
            C::Body(BodyField::StopAngle, 197.2),
            C::Body(BodyField::StopAngle, 190.0),
        ),
        K::SingleEntry => both(
            C::Ears(&[(20.0, 60.0), (140.0, 60.0), (260.0, 60.0)]),
            C::Lugs(3.0),
        ),
        K::LockHole => both(
            C::Ring(R::LockHoleDiameter, 2.1),
            C::Ring(R::LockHoleDiameter, 1.7),
        ),
        K::Vignetting => both(C::Ring(R::LipBore, 30.0), C::Ring(R::LipBore, 24.0)),
        K::FocusTolerance => both(C::Ring(R::SeatHeight, 1.51), C::Ring(R::SeatHeight, 1.55)),
        K::Tilt => both(
            C::Limit(LimitKey::Parallelism, 0.12),
            C::Limit(LimitKey::Parallelism, 0.2),
        ),
        // A mark off its place spoils no picture; only a clamp that cannot hold is a clash.
        K::IndexMark => (
            Some(C::Trial(2.0)),
            Some(C::Trial(30.0)),
            Some(C::TwoPieces),
        ),
        K::ToolAccess => both(C::Blade(4.0), C::Blade(1.0)),
        K::Chucking => (
            Some(C::JawForce(10.0)),
            Some(C::JawForce(100.0)),
            Some(C::JawForce(400.0)),
        ),
    }
}

fn measured<T>(value: T) -> Interface<T> {
    Interface::measured(value, "caliper 0.02")
}

fn sectors(list: &[(f64, f64)]) -> Vec<Sector> {
    let one = |&(start_deg, extent_deg)| Sector {
        start_deg,
        extent_deg,
    };
    list.iter().map(one).collect()
}

fn grown_lugs(design: &Design, workshop: &Workshop, by_deg: f64) -> Vec<Sector> {
    let lugs = evaluate(design, workshop).derivation.ring.unwrap().lugs;
    let grown = |lug: Sector| Sector {
        start_deg: lug.start_deg - by_deg,
        extent_deg: lug.extent_deg + 2.0 * by_deg,
    };
    lugs.into_iter().map(grown).collect()
}

fn apply(change: &Change, design: &mut Design, workshop: &mut Workshop) {
    match *change {
        Change::Ring(key, value) => design.ring.dimensions.get_mut(key).value = Choice::Set(value),
        Change::Lens(key, value) => {
            let flange = evaluate(design, workshop)
                .derivation
                .ring
                .unwrap()
                .sizes
                .flange_diameter;
            design.ring.dimensions.flange_diameter.value = Choice::Set(flange);
            *design.lens.field_mut(key) = measured(value);
        }
        Change::Body(key, value) => {
            design.ring.lugs = Choice::Set(grown_lugs(design, workshop, 0.0));
            *design.body.field_mut(key) = measured(value);
        }
        Change::Limit(key, value) => *design.limits.get_mut(key) = value,
        Change::Heavy(mass, material) => {
            design.lens.mass = measured(mass);
            design.lens.centre_of_gravity_ahead = measured(400.0);
            material.clone_into(&mut design.ring.material);
        }
        Change::Lugs(by_deg) => {
            design.ring.lugs = Choice::Set(grown_lugs(design, workshop, by_deg))
        }
        Change::Ears(list) => design.body.ears = measured(sectors(list)),
        Change::Barrel(depth_mm, diameter_mm) => {
            design.lens.barrel_at_infinity = measured(vec![BarrelStep {
                depth_mm,
                diameter_mm,
            }]);
        }
        Change::Grip(inner_radius_mm) => {
            design.body.obstacles = measured(vec![Obstacle {
                name: "grip".to_owned(),
                sector: sectors(&[(60.0, 20.0)])[0],
                inner_radius_mm,
                outer_radius_mm: 50.0,
                from_z_mm: -1.2,
                to_z_mm: -0.3,
            }]);
        }
        Change::RunOut(run_out_mm) => {
            design.ring.dimensions.thread_chamfer.value = Choice::Set(0.9);
            design.lens.thread_run_out = measured(run_out_mm);
        }
        Change::Hand(hand) => {
            design.ring.thread_hold = ThreadHold::Friction;
            design.body.twist_hand = measured(hand);
        }
        Change::Trial(mark_deg) => design.ring.clocking.trial_reading_deg = Some(mark_deg),
        Change::TwoPieces => {
            design.ring.pieces = Pieces::Two {
                clamp_wall_mm: 1.0,
                screw_diameter_mm: 2.0,
                screw_count: 3,
            };
        }
        Change::Assumed => design.body.throat = Interface::assumed(48.0, "for the test"),
        Change::Unknown => design.body.throat = Interface::Unknown,
        Change::JawForce(force) => workshop.chuck.jaw_force_n = Some(force),
        Change::Blade(reach_mm) => {
            let blades = workshop.turning_tools.iter_mut();
            blades
                .filter(|tool| tool.duty() == ToolDuty::OutsideGroove)
                .for_each(|tool| tool.reach_mm = reach_mm);
        }
    }
}

#[test]
fn every_check_passes_cautions_and_clashes() {
    let mut wrong = Vec::new();
    for key in FindingKey::ALL {
        let (pass, caution, clash) = states(*key);
        let wanted = [
            (pass, Severity::Ok),
            (caution, Severity::Caution),
            (clash, Severity::Clash),
        ];
        for (change, severity) in wanted {
            let (mut design, mut workshop) =
                (demo("archive_portrait"), Workshop::default_set().unwrap());
            if let Some(change) = change {
                apply(&change, &mut design, &mut workshop);
            }
            let evaluation = evaluate(&design, &workshop);
            let finding = evaluation.finding(*key).unwrap();
            if finding.severity != severity {
                wrong.push(format!(
                    "{} is no {}: {} {}",
                    key.name(),
                    severity.word(),
                    finding.severity.word(),
                    finding.message
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
