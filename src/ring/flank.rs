//! The flank that the chosen cutter leaves on a lug, and the radius at which a demand on it is greatest.

use crate::document::MillingMethod;
use crate::geometry::{Flank, Method};

use super::resolved::ResolvedRing;

/// Radii at which a flank is looked at before the worst one is closed in on.
const STATIONS: u32 = 96;
/// Halvings of the stretch round the worst station; 30 leave a thousandth of a micrometre.
const REFINEMENTS: u32 = 30;

const fn method_of(milling: MillingMethod) -> Method {
    match milling {
        MillingMethod::OffsetFeed => Method::OffsetFeed,
        MillingMethod::CentreFeed => Method::CentreFeed,
        MillingMethod::PlungeAndTurn => Method::PlungeAndTurn,
        MillingMethod::RadialCutter => Method::RadialOffset,
    }
}

/// One flank of a lug; a plain radial line where the sizes make no lug.
#[derive(Clone, Copy, Debug)]
pub(super) struct LugFlank {
    flank: Option<Flank>,
    root: f64,
    tip: f64,
}

impl LugFlank {
    /// The flank from `root` to `tip` radius with a cutter of `cutter` radius, all mm.
    pub(super) fn new(milling: MillingMethod, cutter: f64, root: f64, tip: f64) -> Self {
        Self {
            flank: Flank::new(method_of(milling), root, tip, cutter).ok(),
            root,
            tip,
        }
    }

    /// The flank of a resolved ring.
    pub(super) fn of(ring: &ResolvedRing) -> Self {
        let sizes = &ring.sizes;
        Self::new(
            ring.milling,
            ring.cutter_radius,
            sizes.nose_diameter / 2.0,
            sizes.lug_diameter / 2.0,
        )
    }

    /// How far the lug still stands beyond its true radial edge at a radius, mm; radii off the lug count as its end.
    pub(super) fn intrusion(&self, radius: f64) -> f64 {
        let on_lug = radius.clamp(self.root.min(self.tip), self.tip.max(self.root));
        self.flank
            .and_then(|flank| flank.intrusion(on_lug))
            .unwrap_or(0.0)
    }
}

/// How far a lug still stands beyond its true radial edge at a radius, mm: the root fillet that the cutter leaves;
/// negative where the method takes too much.
#[must_use]
pub fn lug_intrusion(ring: &ResolvedRing, radius_mm: f64) -> f64 {
    LugFlank::of(ring).intrusion(radius_mm)
}

/// The narrowest gap between lugs, degrees, that a cutter of this radius in mm mills by the ring's method; `None`
/// where the sizes make no lug or the cutter cannot mill it.
#[must_use]
pub fn least_gap_deg(ring: &ResolvedRing, cutter_radius_mm: f64) -> Option<f64> {
    let (root, tip) = (
        ring.sizes.nose_diameter / 2.0,
        ring.sizes.lug_diameter / 2.0,
    );
    let flank = Flank::new(method_of(ring.milling), root, tip, cutter_radius_mm).ok()?;
    Some(flank.least_gap_rad().to_degrees())
}

/// The radius between two at which `demand` is greatest, and what it is there: the worst of evenly spaced
/// stations, closed in on from both sides.
pub(super) fn most_in(radii: (f64, f64), demand: impl Fn(f64) -> f64) -> (f64, f64) {
    let step = (radii.1 - radii.0) / f64::from(STATIONS);
    let mut best = (radii.0, demand(radii.0));
    for station in 1..=STATIONS {
        let radius = radii.0 + step * f64::from(station);
        let here = demand(radius);
        if here > best.1 {
            best = (radius, here);
        }
    }
    let mut reach = step;
    for _ in 0..REFINEMENTS {
        reach /= 2.0;
        for radius in [best.0 - reach, best.0 + reach] {
            let here = demand(radius.clamp(radii.0.min(radii.1), radii.1.max(radii.0)));
            if here > best.1 {
                best = (radius, here);
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worst_radius_is_found_to_a_nanometre() {
        let (at, most) = most_in((20.0, 26.0), |radius| 5.0 - (radius - 23.456_789).powi(2));
        assert!((at - 23.456_789).abs() < 1e-6 && (most - 5.0).abs() < 1e-11);
        assert!((most_in((20.0, 26.0), |radius| -radius).0 - 20.0).abs() < 1e-12);
    }
}
