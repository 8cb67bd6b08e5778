//! Where the lock hole goes: into the flange rear face, and out of the front where it is deep enough.

use crate::mount::Sector;
use crate::ring::{Hole, ResolvedRing};

use super::profile::{Profile, edges};

/// The lock hole as the mesh has it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LockHole {
    /// Its place in the plan.
    pub(super) hole: Hole,
    /// The edge of the section that is the flange rear face.
    pub(super) rear: (usize, usize),
    /// The edge it comes out of, or the depth at which it ends, mm.
    pub(super) bottom: Bottom,
}

/// How a hole ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Bottom {
    /// It goes through this edge of the section.
    Through((usize, usize)),
    /// It ends at this z, mm.
    Blind(f64),
}

/// What the mesh makes of the ring's lock hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Made {
    /// There is none.
    None,
    /// As it is.
    Whole(LockHole),
    /// Stopped short of a step in the front face.
    Shortened(LockHole),
    /// Not at all: it breaks out of the flange rear face.
    LeftOut,
}

/// Metal left under a hole that stops short, and the least depth that is worth making, mm.
const SKIN_MM: f64 = 0.2;

/// Flat to this, mm.
const FLAT_MM: f64 = 1e-7;

/// Fits the lock hole into the sections, which must be `margin_mm` larger than it all round.
pub(super) fn lock_hole(ring: &ResolvedRing, profile: &Profile, margin_mm: f64) -> Made {
    let sizes = &ring.sizes;
    if sizes.lock_hole_diameter <= 0.0 || sizes.lock_hole_depth <= 0.0 {
        return Made::None;
    }
    let hole = Hole {
        angle_deg: sizes.lock_hole_angle,
        radius_mm: sizes.lock_hole_circle / 2.0,
        diameter_mm: sizes.lock_hole_diameter,
    };
    let reach = hole.diameter_mm / 2.0 + margin_mm;
    let band = (hole.radius_mm - reach, hole.radius_mm + reach);
    let spans = |edge: (usize, usize)| {
        let (a, b) = (profile.at(edge.0), profile.at(edge.1));
        (a.x - b.x).abs() < FLAT_MM && a.y.min(b.y) < band.0 && a.y.max(b.y) > band.1
    };
    let rear = edges(&profile.between_lugs)
        .find(|edge| profile.at(edge.0).x.abs() < FLAT_MM && spans(*edge));
    let Some(rear) = rear else {
        return Made::LeftOut;
    };
    let made = |bottom| LockHole { hole, rear, bottom };
    let Some((edge, front)) = nearest_ahead(profile, rear, band) else {
        return Made::LeftOut;
    };
    if sizes.lock_hole_depth < -front - FLAT_MM {
        Made::Whole(made(Bottom::Blind(-sizes.lock_hole_depth)))
    } else if spans(edge) {
        Made::Whole(made(Bottom::Through(edge)))
    } else if -front > 2.0 * SKIN_MM {
        Made::Shortened(made(Bottom::Blind(front + SKIN_MM)))
    } else {
        Made::LeftOut
    }
}

/// The edge ahead of the rear face that comes nearest to it within a band of radii, and the z where it does.
fn nearest_ahead(
    profile: &Profile,
    rear: (usize, usize),
    band: (f64, f64),
) -> Option<((usize, usize), f64)> {
    edges(&profile.between_lugs)
        .filter(|edge| *edge != rear)
        .filter_map(|edge| {
            let (a, b) = (profile.at(edge.0), profile.at(edge.1));
            let (low, high) = (a.y.min(b.y).max(band.0), a.y.max(b.y).min(band.1));
            if low > high {
                return None;
            }
            let z_at = |radius: f64| {
                if (b.y - a.y).abs() < FLAT_MM {
                    a.x.max(b.x)
                } else {
                    a.x + (b.x - a.x) * (radius - a.y) / (b.y - a.y)
                }
            };
            let z = z_at(low).max(z_at(high));
            (z < -FLAT_MM).then_some((edge, z))
        })
        .max_by(|a, b| a.1.total_cmp(&b.1))
}

impl Made {
    /// The hole, where there is one in the mesh.
    pub(super) fn hole(&self) -> Option<&LockHole> {
        match self {
            Self::Whole(hole) | Self::Shortened(hole) => Some(hole),
            Self::None | Self::LeftOut => None,
        }
    }

    /// What the file says of it.
    pub(super) fn note(&self) -> Option<String> {
        match self {
            Self::None | Self::Whole(_) => None,
            Self::Shortened(_) => Some(format!(
                "The lock hole stops {SKIN_MM} mm short of a step in the front face: drill it through."
            )),
            Self::LeftOut => {
                Some("The lock hole is left out: it breaks out of the flange rear face.".to_owned())
            }
        }
    }
}

impl LockHole {
    /// The stretch of the turn that holds the hole with `margin_mm` beside it.
    pub(super) fn window(&self, margin_mm: f64) -> Sector {
        let reach = (self.hole.diameter_mm / 2.0 + margin_mm) / self.hole.radius_mm;
        let half_deg = reach.min(1.0).asin().to_degrees();
        Sector {
            start_deg: self.hole.angle_deg - half_deg,
            extent_deg: 2.0 * half_deg,
        }
    }
}
