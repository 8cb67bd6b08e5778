//! The flank that the chosen cutter leaves on a lug, and the radius at which a demand on it is greatest.

use crate::document::MillingMethod;
use crate::geometry::{Flank, Method};

use super::resolved::ResolvedRing;

/// Radii looked at before the search narrows down: a flank has at most two kinks between root and tip.
const STATIONS: u32 = 32;
/// Steps of the golden section: 0.618 ^ 40 of a station is far under a nanometre.
const STEPS: u32 = 40;

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

/// The flank that the ring's cutter leaves; `None` where the sizes make no lug or the cutter cannot mill it.
#[must_use]
pub fn lug_flank(ring: &ResolvedRing) -> Option<Flank> {
    LugFlank::of(ring).flank
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

/// The radius at which `what` is greatest, and its value there: stations first, then a golden section between the
/// neighbours of the best one.
#[must_use]
pub fn most_in((inner_mm, outer_mm): (f64, f64), what: impl Fn(f64) -> f64) -> (f64, f64) {
    let step = (outer_mm - inner_mm) / f64::from(STATIONS);
    let at = |index: u32| {
        if index == STATIONS {
            outer_mm
        } else {
            inner_mm + f64::from(index) * step
        }
    };
    let (best, most) = (0..=STATIONS).map(|index| (index, what(at(index)))).fold(
        (0, f64::NEG_INFINITY),
        |best, next| {
            if next.1 > best.1 { next } else { best }
        },
    );
    let (mut low, mut high) = (at(best.saturating_sub(1)), at((best + 1).min(STATIONS)));
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    for _ in 0..STEPS {
        let (left, right) = (high - golden * (high - low), low + golden * (high - low));
        if what(left) > what(right) {
            high = right;
        } else {
            low = left;
        }
    }
    let middle = f64::midpoint(low, high);
    let found = what(middle);
    if found > most {
        (middle, found)
    } else {
        (at(best), most)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_greatest_is_found_inside_and_at_an_end() {
        let (radius, most) = most_in((1.0, 4.0), |x| -(x - 2.345) * (x - 2.345));
        assert!((radius - 2.345).abs() < 1e-6 && most.abs() < 1e-9);
        assert_eq!(most_in((1.0, 4.0), |x| -x), (1.0, -1.0));
        assert_eq!(most_in((1.0, 4.0), |x| x), (4.0, 4.0));
    }
}
