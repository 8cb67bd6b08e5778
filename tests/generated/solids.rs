//! Volume and mass against cylinders and cones added up by hand.

use std::f64::consts::PI;

use flangewright::document::{Choice, SeatKind};
use flangewright::evaluate::evaluate;
use flangewright::geometry::{OutlineBuilder, Point, revolve};
use flangewright::mount::{Presence, Sector};
use flangewright::ring::ResolvedRing;
use flangewright::workshop::Workshop;

use crate::pairs::plausible;

fn cylinder(diameter: f64, length: f64) -> f64 {
    PI / 4.0 * diameter * diameter * length
}

/// Frustum of a cone between two diameters.
fn cone(one: f64, other: f64, length: f64) -> f64 {
    PI / 12.0 * (one * one + one * other + other * other) * length
}

/// What is turned away inside: thread chamfer and thread, relief, bores.
fn inside(ring: &ResolvedRing) -> f64 {
    let s = &ring.sizes;
    let minor = ring.thread_minor;
    let whole = s.seat_height + s.spigot_length;
    let mouth = cone(minor + 2.0 * s.thread_chamfer, minor, s.thread_chamfer);
    if ring.thread_runs_through {
        return mouth + cylinder(minor, whole - s.thread_chamfer);
    }
    let lip_rear = (s.lip_face_depth + s.lip_thickness).min(whole);
    mouth
        + cylinder(minor, s.thread_length - s.thread_chamfer)
        + cylinder(s.relief_diameter, s.lip_face_depth - s.thread_length)
        + cylinder(s.lip_bore, lip_rear - s.lip_face_depth)
        + cone(s.lip_bore, s.rear_bore, whole - lip_rear)
}

/// The ring between its lugs, solid: boss or plate less counterbore, and the spigot.
fn outside(ring: &ResolvedRing) -> f64 {
    let s = &ring.sizes;
    let spigot = cylinder(s.groove_root_diameter, s.groove_width)
        + cylinder(s.nose_diameter, s.spigot_length - s.groove_width);
    let plate = cylinder(s.flange_diameter, s.plate_thickness);
    let front = s.seat_height - s.plate_thickness;
    match ring.seat {
        SeatKind::Flush => plate + spigot,
        // Ahead of the plate a boss is added, behind its front a counterbore taken away.
        SeatKind::Boss | SeatKind::Counterbore => plate + spigot + cylinder(s.seat_diameter, front),
    }
}

#[test]
fn a_ring_with_hardly_a_lug_is_a_sum_of_cylinders_and_cones() {
    let workshop = Workshop::default_set().unwrap();
    let mut judged = 0;
    for index in 0..300 {
        let mut design = plausible(70, index);
        // The least lug that a design may have; without a pin, so that there is no pocket, and without a hole.
        design.ring.lugs = Choice::Set(vec![Sector {
            start_deg: 10.0,
            extent_deg: 0.1,
        }]);
        design.ring.milling = flangewright::document::MillingMethod::RadialCutter;
        design.body.lock_pin = Presence::Absent;
        design.ring.pin = Choice::Derived;
        let evaluation = evaluate(&design, &workshop);
        let (Some(ring), Some(solid)) = (&evaluation.derivation.ring, evaluation.solid) else {
            continue;
        };
        let s = &ring.sizes;
        let tip = s.lug_diameter;
        let lug = (cylinder(tip, s.lug_thickness - s.lug_lead_in)
            + cone(tip, tip - 2.0 * s.lug_lead_in, s.lug_lead_in)
            - cylinder(s.nose_diameter, s.lug_thickness))
            * 0.1
            / 360.0;
        let by_hand = outside(ring) - inside(ring) + lug;
        // A radial cutter leaves true flanks, so nothing else stands.
        let off = (solid.volume_mm3 - by_hand).abs() / by_hand;
        assert!(
            off < 1e-9,
            "{index}: {} by Pappus, {by_hand} by hand",
            solid.volume_mm3
        );
        let density = workshop
            .material(&design.ring.material)
            .unwrap()
            .density_kg_m3;
        assert!(
            (solid.mass_g - by_hand * 1e-9 * density * 1e3).abs() < 1e-9 * solid.mass_g,
            "{index}"
        );
        judged += 1;
    }
    assert!(judged >= 250, "{judged}");
}

/// Common practice, no source: a plain aluminium ring of 60 and 42 mm, 10 mm long, has 0.0389 kg; bars of 65 mm and
/// 30 mm length have 0.2688 kg in aluminium and 0.8452 kg in brass (densities 2700 and 8490 kg/m3).
#[test]
fn masses_that_were_worked_by_hand() {
    let workshop = Workshop::default_set().unwrap();
    let mass = |inner: f64, outer: f64, length: f64, material: &str| {
        let corner = |x, y| Point { x, y };
        let outline = OutlineBuilder::start(corner(0.0, inner / 2.0))
            .line_to(corner(length, inner / 2.0), ())
            .line_to(corner(length, outer / 2.0), ())
            .line_to(corner(0.0, outer / 2.0), ())
            .close(())
            .unwrap();
        let stuff = workshop
            .materials
            .iter()
            .find(|row| row.name.contains(material))
            .unwrap();
        revolve(&outline).unwrap().mass(stuff.density_kg_m3)
    };
    assert!((mass(42.0, 60.0, 10.0, "6061") - 0.0389).abs() < 0.00005);
    assert!((mass(0.0, 65.0, 30.0, "6061") - 0.2688).abs() < 0.00005);
    assert!((mass(0.0, 65.0, 30.0, "brass") - 0.8452).abs() < 0.00005);
}
