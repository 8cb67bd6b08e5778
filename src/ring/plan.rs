//! The plan: lugs, ears, slots and holes on the clock face seen from the lens side.

use crate::document::Design;
use crate::mount::{Presence, Sector};

use super::clocking::{Rest, rest_of};
use super::resolved::ResolvedRing;

/// A round hole or pin in the plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hole {
    /// Clock angle of its centre, degrees.
    pub angle_deg: f64,
    /// Distance of its centre from the axis, mm.
    pub radius_mm: f64,
    /// Diameter, mm.
    pub diameter_mm: f64,
}

/// Everything that has a place in the plan, ring locked. Clock degrees seen from the lens side, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The lugs, locked.
    pub lugs: Vec<Sector>,
    /// The lugs where they drop in; empty while the twist is unknown.
    pub lugs_at_entry: Vec<Sector>,
    /// The ears; empty while unknown.
    pub ears: Vec<Sector>,
    /// The slots between the ears.
    pub slots: Vec<Sector>,
    /// The ring's lock hole, ring locked.
    pub lock_hole: Option<Hole>,
    /// The body's lock pin.
    pub lock_pin: Option<Hole>,
    /// The ring's index mark, ring locked.
    pub index_deg: f64,
    /// The body's index mark.
    pub body_index_deg: Option<f64>,
    /// Where the lens's mark comes to rest, and where it should, ring locked; none before anybody knows.
    pub lens_mark: Option<Rest>,
    /// The body's stop: clock angle and radius.
    pub stop: Option<(f64, f64)>,
}

/// The gaps between sectors on the full circle, in clock order.
#[must_use]
pub fn gaps_between(sectors: &[Sector]) -> Vec<Sector> {
    let mut sorted = sectors.to_vec();
    sorted.sort_by(|a, b| {
        a.start_deg
            .rem_euclid(360.0)
            .total_cmp(&b.start_deg.rem_euclid(360.0))
    });
    let nexts = sorted.iter().cycle().skip(1);
    sorted
        .iter()
        .zip(nexts)
        .filter_map(|(this, next)| {
            let start_deg = this.end_deg().rem_euclid(360.0);
            let mut extent_deg = (next.start_deg - this.end_deg()).rem_euclid(360.0);
            if sorted.len() == 1 {
                extent_deg = 360.0 - this.extent_deg;
            }
            (extent_deg > 1e-9).then_some(Sector {
                start_deg,
                extent_deg,
            })
        })
        .collect()
}

impl Plan {
    /// The plan of a resolved ring and what is known of its body.
    #[must_use]
    pub fn of(design: &Design, ring: &ResolvedRing) -> Self {
        let body = &design.body;
        let ears = body.ears.value().cloned().unwrap_or_default();
        let back = ring.twist.map(|twist| -twist.signed_deg());
        let lugs_at_entry = back.map_or_else(Vec::new, |turn| {
            ring.lugs
                .iter()
                .map(|lug| Sector {
                    start_deg: lug.start_deg + turn,
                    ..*lug
                })
                .collect()
        });
        let sizes = &ring.sizes;
        let lock_hole = (sizes.lock_hole_diameter > 0.0).then_some(Hole {
            angle_deg: sizes.lock_hole_angle,
            radius_mm: sizes.lock_hole_circle / 2.0,
            diameter_mm: sizes.lock_hole_diameter,
        });
        let lock_pin = match body.lock_pin {
            Presence::Present => hole_of(
                body.lock_pin_angle.number(),
                body.lock_pin_circle.number(),
                body.lock_pin_diameter.number(),
            ),
            Presence::Absent | Presence::Unknown => None,
        };
        let stop = match body.stop {
            Presence::Present => body.stop_angle.number().zip(body.stop_radius.number()),
            Presence::Absent | Presence::Unknown => None,
        };
        Self {
            lugs: ring.lugs.clone(),
            lugs_at_entry,
            slots: gaps_between(&ears),
            ears,
            lock_hole,
            lock_pin,
            index_deg: sizes.index_mark_angle,
            body_index_deg: body.index_angle.number(),
            lens_mark: rest_of(design, ring),
            stop,
        }
    }
}

fn hole_of(
    angle_deg: Option<f64>,
    circle_mm: Option<f64>,
    diameter_mm: Option<f64>,
) -> Option<Hole> {
    Some(Hole {
        angle_deg: angle_deg?,
        radius_mm: circle_mm? / 2.0,
        diameter_mm: diameter_mm?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_close_the_circle() {
        let ears = [
            Sector {
                start_deg: 350.0,
                extent_deg: 60.0,
            },
            Sector {
                start_deg: 120.0,
                extent_deg: 50.0,
            },
            Sector {
                start_deg: 240.0,
                extent_deg: 40.0,
            },
        ];
        let gaps = gaps_between(&ears);
        let total: f64 = gaps
            .iter()
            .chain(&ears)
            .map(|sector| sector.extent_deg)
            .sum();
        assert!((total - 360.0).abs() < 1e-9);
        assert_eq!(gaps.len(), 3);
        assert_eq!(
            gaps_between(&ears[..1]),
            vec![Sector {
                start_deg: 50.0,
                extent_deg: 300.0
            }]
        );
    }
}
