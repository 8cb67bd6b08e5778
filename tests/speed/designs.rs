//! The designs that are timed: the one that opens by default, and the worst ones.

use flangewright::document::{Choice, Design, RingKey, Variant, read_design};
use flangewright::mount::{BarrelStep, Interface, Sector};

/// The design that opens by default.
pub fn default_design() -> Design {
    read_design(include_str!("../../assets/demos/archive_portrait.ron")).unwrap()
}

fn around(count: u32, from_deg: f64, share: f64) -> Vec<Sector> {
    let pitch = 360.0 / f64::from(count);
    (0..count)
        .map(|place| Sector {
            start_deg: from_deg + pitch * f64::from(place),
            extent_deg: pitch * share,
        })
        .collect()
}

/// As many lugs as ears, a tenth of a pitch narrower.
pub fn with_lugs(count: u32) -> Design {
    let mut design = default_design();
    let pitch_deg = 360.0 / f64::from(count);
    design.body.ears = Interface::assumed(around(count, 0.0, 0.5), "invented");
    design.body.twist = Interface::assumed(pitch_deg / 2.0, "invented");
    design.ring.lugs = Choice::Set(around(count, 0.05 * pitch_deg, 0.4));
    design
}

/// A rear barrel of so many steps, two pieces of outline each, at both ends of the focus.
pub fn with_barrel_steps(count: u32) -> Design {
    let mut design = default_design();
    let steps = |end_mm: f64| {
        (1..=count)
            .map(|step| BarrelStep {
                depth_mm: end_mm * f64::from(step) / f64::from(count),
                diameter_mm: 36.0 - 5.0 * f64::from(step) / f64::from(count),
            })
            .collect()
    };
    design.lens.barrel_at_infinity = Interface::assumed(steps(6.0), "invented");
    design.lens.barrel_at_close_focus = Interface::assumed(steps(3.0), "invented");
    design
}

/// Five variants beside the ring at work, each with another lip, flange and lug.
pub fn six_variants() -> Design {
    let mut design = default_design();
    design.variants = (1..=5)
        .map(|place| {
            let step = f64::from(place);
            let mut ring = design.ring.clone();
            let sizes = [
                (RingKey::LipThickness, 1.0 + 0.05 * step),
                (RingKey::FlangeDiameter, 60.0 + 0.2 * step),
                (RingKey::LugThickness, 1.0 + 0.03 * step),
            ];
            for (key, size) in sizes {
                ring.dimensions.get_mut(key).value = Choice::Set(size);
            }
            Variant {
                name: format!("trial {place}"),
                note: String::new(),
                ring,
            }
        })
        .collect();
    design
}
