//! The trial print: closed, of the right volume, and readable by `trimesh`.

use flangewright::document::{Choice, Design, RingKey};
use flangewright::drawing::export::{ExportOptions, Format};
use flangewright::drawing::mesh::{Mesh, MeshOptions, trial_print};
use flangewright::evaluate::Evaluation;
use flangewright::mount::{Interface, Presence, Sector};
use flangewright::ring::ResolvedRing;

use super::bench::{DEMOS, demo, evaluated, file, on_disk, python};

const COARSE: MeshOptions = MeshOptions {
    chord_mm: 0.05,
    thread_allowance_mm: 0.0,
};

/// The mesh, closed, with its bore and at most the lock hole through it.
fn made(evaluation: &Evaluation, options: MeshOptions) -> Mesh {
    let mesh = trial_print(evaluation, options).unwrap();
    assert!(mesh.is_closed());
    // Euler and Poincare: 2 - 2 x holes; the bore is one, a lock hole that goes through is another.
    assert!([0, -2].contains(&mesh.euler()), "{}", mesh.euler());
    mesh
}

/// Our own volume, by Pappus and Guldin, against the volume of the facets by the divergence theorem.
fn share_off(evaluation: &Evaluation, mesh: &Mesh) -> f64 {
    mesh.volume_mm3() / evaluation.solid.unwrap().volume_mm3 - 1.0
}

fn set(design: &mut Design, key: RingKey, value: f64) {
    design.ring.dimensions.get_mut(key).value = Choice::Set(value);
}

fn resolved(evaluation: &Evaluation) -> &ResolvedRing {
    evaluation.derivation.ring.as_ref().unwrap()
}

#[test]
fn demos_are_closed_and_weigh_what_they_should() {
    for name in DEMOS {
        let evaluation = evaluated(&demo(name));
        let mesh = made(&evaluation, MeshOptions::default());
        let off = share_off(&evaluation, &mesh);
        assert!(off.abs() < 0.005, "{name}: {off}");
    }
}

#[test]
fn finer_facets_come_nearer_to_the_round_ring() {
    let evaluation = evaluated(&demo("tall_ring"));
    let volume = |chord_mm| made(&evaluation, MeshOptions { chord_mm, ..COARSE }).volume_mm3();
    let (coarse, fine, finest) = (volume(0.1), volume(0.01), volume(0.001));
    assert!((coarse - finest).abs() > 5.0 * (fine - finest).abs());
}

#[test]
fn any_lug_pattern_closes() {
    let mut design = demo("archive_portrait");
    let lug = |start_deg, extent_deg| Sector {
        start_deg,
        extent_deg,
    };
    let patterns = [
        vec![lug(0.0, 10.0)],
        vec![lug(350.0, 20.0), lug(90.0, 0.3)],
        // Touching, overlapping, the same twice, all round, and round more than once.
        vec![lug(10.0, 30.0), lug(40.0, 30.0)],
        vec![lug(10.0, 40.0), lug(30.0, 50.0)],
        vec![lug(200.0, 50.0), lug(200.0, 50.0)],
        vec![lug(0.0, 180.0), lug(180.0, 180.0)],
        vec![lug(5.0, 360.0)],
        (0..6)
            .map(|index| lug(60.0 * f64::from(index), 25.0))
            .collect(),
        (0..60)
            .map(|index| lug(6.0 * f64::from(index), 2.0))
            .collect(),
    ];
    for pattern in patterns {
        design.ring.lugs = Choice::Set(pattern.clone());
        let evaluation = evaluated(&design);
        // A design may be refused before it comes to a mesh; what has parts has a mesh.
        if evaluation.parts.is_some() {
            let mesh = made(&evaluation, COARSE);
            assert!(mesh.volume_mm3() > 0.0, "{pattern:?}");
        }
    }
}

/// Seats of every kind: flush, on a boss, in a counterbore.
#[test]
fn every_seat_kind_closes() {
    let mut sunk = demo("archive_portrait");
    let register = sunk.body.register.number().unwrap();
    sunk.lens.register = Interface::measured(register + 0.4, "depth micrometer");
    sunk.lens.shoulder_diameter = Interface::measured(44.0, "caliper");
    sunk.lens.aperture_ring = Presence::Absent;
    let designs = DEMOS.map(demo).into_iter().chain([sunk]);
    let mut kinds = std::collections::BTreeSet::new();
    for design in designs {
        let evaluation = evaluated(&design);
        kinds.insert(format!("{:?}", resolved(&evaluation).seat));
        let mesh = made(&evaluation, MeshOptions::default());
        assert!(
            share_off(&evaluation, &mesh).abs() < 0.005,
            "{}",
            design.name
        );
    }
    assert_eq!(kinds.len(), 3, "{kinds:?}");
}

#[test]
fn the_lock_hole_may_stand_at_any_angle_and_depth() {
    let mut design = demo("archive_portrait");
    for step in 0..72_u8 {
        set(&mut design, RingKey::LockHoleAngle, 5.0 * f64::from(step));
        let evaluation = evaluated(&design);
        let mesh = made(&evaluation, COARSE);
        assert_eq!(mesh.euler(), -2, "at {step}");
    }
    let plate = resolved(&evaluated(&design)).sizes.plate_thickness;
    for (depth, euler) in [(0.2, 0), (plate - 0.01, 0), (plate, -2), (plate + 1.0, -2)] {
        set(&mut design, RingKey::LockHoleDepth, depth);
        assert_eq!(
            made(&evaluated(&design), COARSE).euler(),
            euler,
            "{depth} deep"
        );
    }
}

/// A hole of diameter d and depth t takes pi/4 d2 t.
#[test]
fn a_blind_lock_hole_takes_its_volume() {
    let mut design = demo("tall_ring");
    set(&mut design, RingKey::LockHoleDepth, 1.0);
    let fine = MeshOptions {
        chord_mm: 0.001,
        ..COARSE
    };
    let diameter = resolved(&evaluated(&design)).sizes.lock_hole_diameter;
    let volume = |design: &Design| made(&evaluated(design), fine).volume_mm3();
    let shallow = volume(&design);
    set(&mut design, RingKey::LockHoleDepth, 1.5);
    let taken = shallow - volume(&design);
    let round = std::f64::consts::FRAC_PI_4 * diameter * diameter * 0.5;
    assert!((taken / round - 1.0).abs() < 0.005, "{taken} of {round}");
}

#[test]
fn a_lock_hole_that_breaks_out_is_left_out_and_said_so() {
    let mut design = demo("archive_portrait");
    let flange = resolved(&evaluated(&design)).sizes.flange_diameter;
    set(&mut design, RingKey::FlangeDiameter, flange);
    set(&mut design, RingKey::LockHoleCircle, flange - 0.5);
    let mesh = made(&evaluated(&design), COARSE);
    assert_eq!(mesh.euler(), 0);
    assert!(
        mesh.notes
            .iter()
            .any(|note| note.contains("left out: it breaks out")),
        "{:?}",
        mesh.notes
    );
}

/// Under the edge of a boss a hole through the plate would come out in a step: it stops short of it.
#[test]
fn a_lock_hole_under_the_edge_of_the_boss_stops_short_and_says_so() {
    let mut design = demo("tall_ring");
    let sizes = resolved(&evaluated(&design)).sizes.clone();
    set(&mut design, RingKey::SeatDiameter, sizes.lock_hole_circle);
    set(
        &mut design,
        RingKey::LockHoleDepth,
        sizes.plate_thickness + 1.0,
    );
    let evaluation = evaluated(&design);
    let mesh = made(&evaluation, COARSE);
    assert_eq!(mesh.euler(), 0);
    assert!(
        mesh.notes
            .iter()
            .any(|note| note.contains("stops 0.2 mm short")),
        "{:?}",
        mesh.notes
    );
}

#[test]
fn a_bore_with_allowance_is_wider_by_it() {
    let evaluation = evaluated(&demo("archive_portrait"));
    let minor = resolved(&evaluation).thread_minor;
    for allowance in [-0.5, 0.0, 0.3, 1.2] {
        let mesh = made(
            &evaluation,
            MeshOptions {
                thread_allowance_mm: allowance,
                ..COARSE
            },
        );
        let wanted = (minor + allowance) / 2.0;
        let there = mesh
            .vertices
            .iter()
            .any(|[x, y, _]| (x.hypot(*y) - wanted).abs() < 1e-9);
        assert!(there, "{allowance}");
        let said = mesh.notes.iter().any(|note| note.contains("plain bore"));
        assert!(said, "{:?}", mesh.notes);
    }
}

/// 80 bytes of head, a count, 50 bytes a triangle (the common description of binary STL, no standard).
#[test]
fn a_binary_stl_has_the_size_of_its_count() {
    let bytes = file("archive_portrait", Format::Stl, &ExportOptions::default());
    let count = u32::from_le_bytes(bytes[80..84].try_into().unwrap());
    assert_eq!(bytes.len(), 84 + 50 * usize::try_from(count).unwrap());
    assert!(bytes[..80].starts_with(b"Flangewright, mm. "));
}

#[test]
#[ignore = "needs Python with trimesh"]
fn trimesh_finds_both_files_watertight_and_of_the_right_volume() {
    for name in DEMOS {
        let solid = evaluated(&demo(name)).solid.unwrap();
        for format in [Format::Stl, Format::ThreeMf] {
            let bytes = file(name, format, &ExportOptions::default());
            let (_folder, path) = on_disk(&format!("ring.{}", format.ending()), &bytes);
            let said = python("read_mesh.py", &path);
            let words: Vec<&str> = said.split_whitespace().collect();
            assert_eq!(
                words[..2],
                ["True", "True"],
                "{name} {format:?}: watertight, consistent winding"
            );
            let volume: f64 = words[3].parse().unwrap();
            assert!(
                (volume / solid.volume_mm3 - 1.0).abs() < 0.005,
                "{name} {format:?}: {volume}"
            );
            if format == Format::ThreeMf {
                assert_eq!(words[4], "millimeter");
            }
        }
    }
}
