use super::*;
use crate::checks::fixture::{cured, design, judged, lacking, with};
use crate::document::{Choice, Design, MillingMethod};
use crate::mount::Interface;

fn with_obstacle(
    mut design: Design,
    angles: (f64, f64),
    radii: (f64, f64),
    z: (f64, f64),
) -> Design {
    let obstacle = Obstacle {
        name: "post".to_owned(),
        sector: Sector {
            start_deg: angles.0,
            extent_deg: angles.1,
        },
        inner_radius_mm: radii.0,
        outer_radius_mm: radii.1,
        from_z_mm: z.0,
        to_z_mm: z.1,
    };
    design.body.obstacles = Interface::measured(vec![obstacle], "depth micrometer");
    design
}

/// One lug without fillets, 100..110 degrees at entry and 162..172 when locked.
fn one_lug() -> Design {
    let mut design = design();
    design.ring.lugs = Choice::Set(vec![Sector {
        start_deg: 162.0,
        extent_deg: 10.0,
    }]);
    design.ring.milling = MillingMethod::RadialCutter;
    design
}

#[test]
fn a_contact_block_behind_the_nose_is_missed() {
    let finding = judged(check, &design());
    assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
}

// A spigot of 8.0: distances along the axis are plain differences.
#[test]
fn a_block_near_the_nose_is_a_caution_and_one_in_it_a_clash() {
    let before = |z| {
        with_obstacle(
            with(&[(RingKey::SpigotLength, 8.0)]),
            (170.0, 20.0),
            (18.5, 23.0),
            (z, 12.0),
        )
    };
    let near = before(8.15);
    let finding = judged(check, &near);
    assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
    assert!((finding.value.unwrap() - 0.15).abs() < 1e-9);
    assert_eq!(
        judged(check, &cured(&near, &finding)).severity,
        Severity::Ok
    );
    let inside = before(7.5);
    let finding = judged(check, &inside);
    assert_eq!(finding.severity, Severity::Clash);
    assert!(
        (finding.value.unwrap() + 0.5).abs() < 1e-5,
        "{:?}",
        finding.value
    );
    assert_eq!(
        judged(check, &cured(&inside, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn a_post_that_only_the_turning_lug_meets_is_found() {
    let met = with_obstacle(one_lug(), (130.0, 2.0), (25.3, 26.5), (3.9, 4.3));
    let finding = judged(check, &met);
    assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
    assert!(
        finding.message.starts_with("post to the lugs"),
        "{}",
        finding.message
    );
    assert!(finding.value.unwrap() < 0.0);
    let beyond = with_obstacle(one_lug(), (176.0, 2.0), (25.3, 26.5), (3.9, 4.3));
    assert_eq!(judged(check, &beyond).severity, Severity::Ok);
}

#[test]
fn a_post_ahead_of_the_lugs_is_met_only_where_they_drop_in() {
    let at_entry = with_obstacle(one_lug(), (104.0, 2.0), (25.3, 26.5), (0.5, 1.5));
    let finding = judged(check, &at_entry);
    assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
    let on_the_way = with_obstacle(one_lug(), (130.0, 2.0), (25.3, 26.5), (0.5, 1.5));
    let finding = judged(check, &on_the_way);
    assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
}

#[test]
fn a_flange_does_not_drop_past_an_overhang() {
    let wide = with(&[(RingKey::FlangeDiameter, 64.0)]);
    let under = with_obstacle(wide, (318.0, 84.0), (31.6, 60.0), (-30.0, -8.0));
    let finding = judged(check, &under);
    assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
    assert!(
        (finding.value.unwrap() + 0.4).abs() < 1e-5,
        "{:?}",
        finding.value
    );
    assert_eq!(
        judged(check, &cured(&under, &finding)).severity,
        Severity::Ok
    );
}

#[test]
fn a_lens_too_wide_for_the_body_has_no_remedy_by_dimension() {
    let narrow = with(&[(RingKey::FlangeDiameter, 61.0)]);
    // The aperture ring is 62 wide.
    let finding = judged(
        check,
        &with_obstacle(narrow, (318.0, 84.0), (31.12, 60.0), (-30.0, -8.0)),
    );
    assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
    assert!((finding.value.unwrap() - 0.12).abs() < 1e-9);
    assert_eq!(finding.remedy.unwrap().change, None);
}

#[test]
fn no_obstacle_is_well_and_nobody_looked_is_named() {
    let mut bare = design();
    bare.body.obstacles = Interface::measured(Vec::new(), "caliper");
    assert_eq!(judged(check, &bare).severity, Severity::Ok);
    bare.body.obstacles = Interface::Unknown;
    assert_eq!(lacking(check, &bare), NotJudged(vec![FieldRef::Obstacles]));
}

#[test]
fn an_aperture_ring_nobody_has_looked_for_is_named() {
    let mut unseen = design();
    unseen.lens.aperture_ring = Presence::Unknown;
    let finding = judged(check, &unseen);
    assert_eq!(finding.severity, Severity::Note);
    assert_eq!(finding.message, "not judged: lens aperture ring unknown");
}
